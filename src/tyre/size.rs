//! A tyre size as its sidewall says it: the parts, and how they are written back.
//!
//! What the parts mean in millimetres is in [`dimension`](super::dimension), how they are read in `grammar`.

use std::fmt;

/// A number of inches to the hundredth, exactly as moulded: `10.50` is 1,050.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Hundredths(pub u16);

impl Hundredths {
    /// The number of inches.
    pub fn inches(self) -> f64 {
        f64::from(self.0) / 100.0
    }
}

impl fmt::Display for Hundredths {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{:02}", self.0 / 100, self.0 % 100)
    }
}

/// Inches as old marks write them: `30`, `3 1/2`.
struct Quarters(Hundredths);

impl fmt::Display for Quarters {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Hundredths(hundredths) = self.0;
        let fraction = match hundredths % 100 {
            25 => " 1/4",
            50 => " 1/2",
            75 => " 3/4",
            _ => "",
        };
        write!(f, "{}{fraction}", hundredths / 100)
    }
}

/// The nominal rim diameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Rim {
    /// An inch code in tenths: 14 is 140, 16.5 is 165. 8 to 30 in.
    Code(u16),
    /// Millimetres, 200 to 650: a rim number of 100 or more is millimetres (UN R30 paragraph 2, from memory).
    Millimetres(u16),
}

impl fmt::Display for Rim {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Code(tenths) if tenths % 10 == 0 => write!(f, "{}", tenths / 10),
            Self::Code(tenths) => write!(f, "{}.{}", tenths / 10, tenths % 10),
            Self::Millimetres(mm) => mm.fmt(f),
        }
    }
}

worded! {
    /// How the carcass is built.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
    pub enum Construction {
        /// Radial plies (R).
        Radial => "radial", "R";
        /// Diagonal, also called bias or cross, plies (D or a dash).
        Diagonal => "diagonal", "-";
        /// Diagonal plies under a belt (B).
        BiasBelted => "bias-belted", "B";
    }
    /// The trade's word for it.
    pub fn word;
    fn mark;
}

worded! {
    /// The letters in front of a metric size.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
    pub enum Prefix {
        /// P: passenger car, US standard.
        Passenger => "P";
        /// LT: light truck, US standard.
        LightTruck => "LT";
        /// ST: trailer.
        Trailer => "ST";
        /// T (or S): temporary spare.
        Temporary => "T";
    }
    /// As moulded.
    pub fn mark;
}

/// The family a size belongs to, with the numbers that family moulds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Form {
    /// ISO metric, `185/70R14`; the aspect ratio may be missing, `165R13`.
    Metric {
        /// Nominal section width, 100 to 455 mm.
        width_mm: u16,
        /// Aspect ratio in percent, 20 to 100.
        aspect_percent: Option<u8>,
    },
    /// Light-truck flotation, `31x10.50R15LT`.
    Flotation {
        /// Nominal overall diameter.
        diameter: Hundredths,
        /// Nominal section width.
        width: Hundredths,
    },
    /// Load letter and series, `E78-14` or `GR70-15`.
    Alpha {
        /// The load letter, A to N.
        letter: char,
        /// The series, an aspect ratio in percent, 45 to 83.
        series_percent: u8,
    },
    /// Numeric inches, `6.00-16`.
    Numeric {
        /// Nominal section width, 2 to 14 in.
        width: Hundredths,
    },
    /// One tyre made to serve for two sizes, `6.00/6.50-16`.
    Dual {
        /// The smaller section width.
        first: Hundredths,
        /// The larger one.
        second: Hundredths,
    },
    /// Beaded edge in millimetres, `710x90`: the rim is not named.
    BeadedMetric {
        /// Overall diameter as marked, 500 to 1,100 mm.
        diameter_mm: u16,
        /// Section width as marked, 55 to 190 mm.
        width_mm: u16,
    },
    /// Beaded edge, clincher or high pressure in inches, `30x3 1/2`: the rim is not named.
    BeadedInch {
        /// Overall diameter as marked, 20 to 42 in.
        diameter: Hundredths,
        /// Section width as marked, 2 to 8 in in quarters.
        width: Hundredths,
    },
}

/// The rim that diameter and section leave, in whole millimetres or half inches; a size without its rim is taken to stand on it.
pub(super) fn rim_left(form: Form) -> Option<Rim> {
    match form {
        Form::BeadedMetric { diameter_mm, width_mm } => diameter_mm.checked_sub(2 * width_mm).map(Rim::Millimetres),
        Form::BeadedInch { diameter, width } => diameter.0.checked_sub(2 * width.0).map(|left| Rim::Code(left / 10)),
        _ => None,
    }
}

/// What is moulded behind the size.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Service {
    /// Load index of a single tyre.
    pub load_index: Option<u16>,
    /// Load index of each of a pair on one hub.
    pub dual_index: Option<u16>,
    /// Speed symbol, B to Z.
    pub speed: Option<char>,
    /// The symbol stands in brackets: faster than its speed, ask the maker.
    pub beyond: bool,
    /// C or LT behind the size.
    pub commercial: Option<Commercial>,
    /// Load range letter, B to N.
    pub load_range: Option<char>,
    /// Ply rating.
    pub ply: Option<u8>,
    /// XL, reinforced or extra load.
    pub reinforced: bool,
    /// M+S.
    pub winter: bool,
}

/// The mark of a tyre made for light trucks, moulded behind the rim.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Commercial {
    /// C, European.
    C,
    /// LT, US.
    Lt,
}

/// A tyre size with everything that is moulded beside it.
///
/// Its `Display` is the usual way of writing it, and reads back as the same size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Size {
    /// The letters in front.
    pub prefix: Option<Prefix>,
    /// The family and its numbers.
    pub form: Form,
    /// How the carcass is built.
    pub construction: Construction,
    /// The speed letter that old sizes carry before the R, such as the S of `185/70SR14` or the Z of `205/60ZR15`.
    pub early_speed: Option<char>,
    /// The nominal rim.
    pub rim: Rim,
    /// What stands behind.
    pub service: Service,
}

impl Size {
    /// The speed symbol, from behind the size or else from before the R.
    pub fn speed_symbol(&self) -> Option<char> {
        self.service.speed.or(self.early_speed)
    }

    /// Whether it is built for light trucks.
    pub fn is_light_truck(&self) -> bool {
        self.prefix == Some(Prefix::LightTruck) || self.service.commercial.is_some() || matches!(self.form, Form::Flotation { .. })
    }
}

impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.prefix.map_or("", Prefix::mark))?;
        let early = self.early_speed.map(String::from).unwrap_or_default();
        let (mark, rim) = (self.construction.mark(), self.rim);
        match self.form {
            Form::Metric { width_mm, aspect_percent: Some(aspect) } => write!(f, "{width_mm}/{aspect}{early}{mark}{rim}")?,
            Form::Metric { width_mm, aspect_percent: None } => write!(f, "{width_mm}{early}{mark}{rim}")?,
            Form::Flotation { diameter, width } if diameter.0.is_multiple_of(100) => {
                write!(f, "{}x{width}{early}{mark}{rim}", diameter.0 / 100)?;
            }
            Form::Flotation { diameter, width } => write!(f, "{diameter}x{width}{early}{mark}{rim}")?,
            Form::Alpha { letter, series_percent } => match self.construction {
                Construction::Radial => write!(f, "{letter}R{series_percent}-{rim}")?,
                Construction::Diagonal | Construction::BiasBelted => write!(f, "{letter}{series_percent}{mark}{rim}")?,
            },
            Form::Numeric { width } => write!(f, "{width}{early}{mark}{rim}")?,
            Form::Dual { first, second } => write!(f, "{first}/{second}{early}{mark}{rim}")?,
            Form::BeadedMetric { diameter_mm, width_mm } => write!(f, "{diameter_mm}x{width_mm}")?,
            Form::BeadedInch { diameter, width } => write!(f, "{}x{}", Quarters(diameter), Quarters(width))?,
        }
        self.service.fmt(f)
    }
}

impl fmt::Display for Service {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.commercial {
            Some(Commercial::C) => f.write_str("C")?,
            Some(Commercial::Lt) => f.write_str("LT")?,
            None => {}
        }
        let single = self.load_index.map(|index| index.to_string()).unwrap_or_default();
        let dual = self.dual_index.map(|index| format!("/{index}")).unwrap_or_default();
        let speed = self.speed.map(String::from).unwrap_or_default();
        let description = format!("{single}{dual}{speed}");
        match (description.is_empty(), self.beyond) {
            (true, _) => {}
            (false, true) => write!(f, " ({description})")?,
            (false, false) => write!(f, " {description}")?,
        }
        if let Some(range) = self.load_range {
            write!(f, " load range {range}")?;
        }
        if let Some(ply) = self.ply {
            write!(f, " {ply}PR")?;
        }
        f.write_str(if self.reinforced { " XL" } else { "" })?;
        f.write_str(if self.winter { " M+S" } else { "" })
    }
}
