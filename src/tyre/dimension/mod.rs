//! What a size means in millimetres, each dimension with how it was got and where the rule or table stands.
//!
//! Here: metric, flotation and letter sizes. `inch` has the sizes in inches and the beaded edge ones.

mod inch;

pub use inch::{Series, numeric_series};

use super::size::{Construction, Form, Hundredths, Rim, Size};
use super::table;
use crate::units::{Length, common, number};

worded! {
    /// How a dimension was got.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Basis {
        /// By the rule of a standard or the numbers moulded on the tyre.
        Rule => "by rule";
        /// From a table of sizes.
        Table => "from a table";
        /// By a rule of thumb, or from a size that stands in.
        Approximate => "approximate";
        /// Measured by the user.
        Measured => "measured";
    }
    /// The word for it on the sheet.
    pub fn word;
}

/// One dimension of a tyre, able to explain itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Measure {
    /// The dimension.
    pub value: Length,
    /// How it was got.
    pub basis: Basis,
    /// Where the rule or table stands.
    pub source: &'static str,
    /// The formula with this tyre's numbers.
    pub working: String,
}

/// The aspect ratio taken where a metric size leaves it out; the sources disagree, by up to 1.5 % of the diameter.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum OmittedAspect {
    /// 80 %: the European Commission's vehicle simulator; fits the UN R30 table for rims of 13 to 15 in (from memory).
    #[default]
    Eighty,
    /// 82 %: three trade sources; fits the UN R30 table for rims of 10 in (from memory).
    EightyTwo,
}

impl OmittedAspect {
    /// The ratio in percent.
    pub fn percent(self) -> u8 {
        match self {
            Self::Eighty => 80,
            Self::EightyTwo => 82,
        }
    }

    fn other(self) -> Self {
        match self {
            Self::Eighty => Self::EightyTwo,
            Self::EightyTwo => Self::Eighty,
        }
    }

    fn source(self) -> &'static str {
        match self {
            Self::Eighty => {
                "80 series where the size names none: European Commission vehicle simulator, version 4.3.7; other sources say 82"
            }
            Self::EightyTwo => "82 series where the size names none: three trade pages on tyre sizes; other sources say 80",
        }
    }
}

/// Everything a size says about the tyre's dimensions.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimensions {
    /// Overall diameter of the new, inflated, unloaded tyre.
    pub diameter: Measure,
    /// Section width without lettering and protective ribs.
    pub section_width: Measure,
    /// Section height: from the rim's nominal diameter to the tread.
    pub sidewall: Measure,
    /// Nominal rim diameter.
    pub rim: Measure,
    /// What other rules and tables give for the overall diameter.
    pub other_diameters: Vec<Measure>,
    /// The aspect ratio that was taken, percent, where the size leaves it out.
    pub omitted_aspect: Option<u8>,
}

const ISO: &str = "ISO 4000-1 and UN R30 paragraph 6.1.2 (from memory): D = d + 2H, H rounded to whole mm";
const RIM_CODE: &str =
    "rim code × 25.4 mm, rounded to whole mm: UN R30 paragraph 2 table (from memory); codes 10 and 25 read in Directive 92/23/EEC";
const MOULDED: &str = "as moulded on the tyre";
const MM_RIM: &str = "a rim number of 100 or more is millimetres: UN R30 paragraph 2 (from memory)";
const UNROUNDED: &str = "D = d + 2H without rounding, d = 25.4 mm × rim code";
const FLOTATION: &str =
    "the first number is the diameter in inches: vehicle owner manuals; European Commission vehicle simulator, version 4.3.7";
const STAND_IN: &str = "the metric size the trade fits in its place, from memory; good to some 2 %: measure the tyre where it matters";

/// The dimensions of a size; `None` for a letter size that no metric size is known to stand in for.
pub fn dimensions(size: &Size, omitted: OmittedAspect) -> Option<Dimensions> {
    match size.form {
        Form::Metric { width_mm, aspect_percent: Some(aspect) } => Some(metric(size, width_mm, aspect, None)),
        Form::Metric { width_mm, aspect_percent: None } => Some(metric(size, width_mm, omitted.percent(), Some(omitted))),
        Form::Flotation { diameter, width } => Some(flotation(size, diameter, width)),
        Form::Alpha { letter, series_percent } => alpha(size, letter, series_percent),
        Form::Numeric { width } => Some(inch::numeric(size, width)),
        Form::Dual { first, second } => Some(inch::dual(size, first, second)),
        Form::BeadedMetric { diameter_mm, width_mm } => Some(inch::beaded_metric(size, diameter_mm, width_mm)),
        Form::BeadedInch { diameter, width } => Some(inch::beaded_inch(size, diameter, width)),
    }
}

/// Nominal rim diameter in whole millimetres.
///
/// ```
/// use layshaft::tyre::{dimension::rim_mm, size::Rim};
/// // 14 × 25.4 = 355.6
/// assert_eq!(rim_mm(Rim::Code(140)), 356.0);
/// ```
pub fn rim_mm(rim: Rim) -> f64 {
    match rim {
        Rim::Code(tenths) => (2.54 * f64::from(tenths)).round(),
        Rim::Millimetres(mm) => f64::from(mm),
    }
}

/// Section height in whole millimetres: width × aspect ratio, half a millimetre rounded up.
///
/// ```
/// use layshaft::tyre::dimension::section_height_mm;
/// // 205 × 0.60 = 123; 185 × 0.70 = 129.5
/// assert_eq!((section_height_mm(205, 60), section_height_mm(185, 70)), (123, 130));
/// ```
pub fn section_height_mm(width_mm: u16, aspect_percent: u8) -> u32 {
    (u32::from(width_mm) * u32::from(aspect_percent) + 50) / 100
}

fn measure(mm: f64, basis: Basis, source: &'static str, working: String) -> Measure {
    Measure { value: common::millimetres(mm), basis, source, working }
}

fn rim_measure(rim: Rim) -> Measure {
    let mm = rim_mm(rim);
    match rim {
        Rim::Code(_) => measure(mm, Basis::Rule, RIM_CODE, format!("25.4 × {rim} = {mm:.0} mm")),
        Rim::Millimetres(_) => measure(mm, Basis::Rule, MM_RIM, format!("{mm:.0} mm")),
    }
}

fn metric(size: &Size, width_mm: u16, aspect: u8, omitted: Option<OmittedAspect>) -> Dimensions {
    let source = omitted.map_or(ISO, OmittedAspect::source);
    let basis = if omitted.is_some() { Basis::Approximate } else { Basis::Rule };
    let (height, rim) = (section_height_mm(width_mm, aspect), rim_mm(size.rim));
    let by_rule = |aspect: u8, basis, source| {
        let height = section_height_mm(width_mm, aspect);
        let diameter = rim + 2.0 * f64::from(height);
        measure(diameter, basis, source, format!("{rim:.0} + 2 × {height} = {diameter:.0} mm (H = {width_mm} × {aspect} %)"))
    };
    let exact = unrounded(size.rim, width_mm, aspect);
    let other = omitted.map(|taken| by_rule(taken.other().percent(), Basis::Approximate, taken.other().source()));
    Dimensions {
        diameter: by_rule(aspect, basis, source),
        section_width: measure(f64::from(width_mm), Basis::Rule, MOULDED, format!("{width_mm} mm")),
        sidewall: measure(f64::from(height), basis, source, format!("{width_mm} × {aspect} % = {height} mm")),
        rim: rim_measure(size.rim),
        other_diameters: tabled_diameter(size).into_iter().chain(other).chain([exact]).collect(),
        omitted_aspect: omitted.map(OmittedAspect::percent),
    }
}

fn unrounded(rim: Rim, width_mm: u16, aspect: u8) -> Measure {
    let height = f64::from(width_mm) * f64::from(aspect) / 100.0;
    let rim = match rim {
        Rim::Code(tenths) => 2.54 * f64::from(tenths),
        Rim::Millimetres(mm) => f64::from(mm),
    };
    let diameter = rim + 2.0 * height;
    measure(diameter, Basis::Rule, UNROUNDED, format!("{rim:.1} + 2 × {height:.2} = {diameter:.1} mm"))
}

fn tabled_diameter(size: &Size) -> Option<Measure> {
    table::row(size).map(|row| measure(row.diameter_mm, Basis::Table, row.source, format!("{:.0} mm", row.diameter_mm)))
}

/// Rim, width and diameter known: the sidewall is what is left.
fn around(size: &Size, diameter: Measure, section_width: Measure, other_diameters: Vec<Measure>) -> Dimensions {
    let (rim, across) = (rim_mm(size.rim), common::in_millimetres(diameter.value));
    let height = (across - rim) / 2.0;
    let working = format!("({} − {rim:.0}) / 2 = {} mm", number::show(across, 1), number::show(height, 1));
    let sidewall = measure(height, diameter.basis, diameter.source, working);
    Dimensions { sidewall, rim: rim_measure(size.rim), diameter, section_width, other_diameters, omitted_aspect: None }
}

fn inches(inches: f64, basis: Basis, source: &'static str) -> Measure {
    measure(25.4 * inches, basis, source, format!("25.4 × {inches:.2} in = {} mm", number::show(25.4 * inches, 1)))
}

fn flotation(size: &Size, diameter: Hundredths, width: Hundredths) -> Dimensions {
    let nominal = inches(diameter.inches(), Basis::Rule, FLOTATION);
    let width = inches(width.inches(), Basis::Rule, MOULDED);
    around(size, nominal, width, tabled_diameter(size).into_iter().collect())
}

fn alpha(size: &Size, letter: char, series: u8) -> Option<Dimensions> {
    let (width_mm, aspect) = table::stand_in(letter, series)?;
    let (rim, height) = (rim_mm(size.rim), section_height_mm(width_mm, aspect));
    let across = rim + 2.0 * f64::from(height);
    let like = format!("as {width_mm}/{aspect} on {}", size.rim);
    let diameter = measure(across, Basis::Approximate, STAND_IN, format!("{like}: {rim:.0} + 2 × {height} = {across:.0} mm"));
    let width = measure(f64::from(width_mm), Basis::Approximate, STAND_IN, format!("{like}: {width_mm} mm"));
    Some(around(size, diameter, width, Vec::new()))
}

/// The least and greatest overall diameter of a new tyre of a metric size.
///
/// Dmin = d + 2H × 0.97; Dmax = d + 2H × 1.04 for radial, 1.08 for diagonal and bias-belted tyres.
/// Source: UN R30 paragraph 6.1.4, from memory; light-truck sizes have other factors, so for them the limits are indicative.
pub fn new_tyre_limits(size: &Size, dimensions: &Dimensions) -> (Length, Length) {
    let above = if size.construction == Construction::Radial { 1.04 } else { 1.08 };
    let (rim, twice) = (dimensions.rim.value, dimensions.sidewall.value * 2.0);
    (rim + twice * 0.97, rim + twice * above)
}
