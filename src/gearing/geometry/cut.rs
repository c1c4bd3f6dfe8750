//! How a gear is cut: pitch, helix, pressure angle, tooth height.

use crate::units::{Angle, Length, System, common::in_millimetres, common::millimetres, limits, number, unit};

/// What one cutter makes: two gears mesh only where this is the same for both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    normal_module: Length,
    helix: Angle,
    pressure: Angle,
    addendum: f64,
    dedendum: f64,
}

/// Why a cut cannot be.
#[derive(Clone, Debug, PartialEq)]
pub enum CutError {
    /// A text that is neither a module nor a diametral pitch: what was typed.
    NotAPitch(String),
    /// A module that no gearbox has: the module given.
    Module(Length),
    /// A helix angle that no gearbox has: the angle given.
    Helix(Angle),
    /// A pressure angle that no gear has: the angle given.
    Pressure(Angle),
}

explain! { CutError:
    Self::NotAPitch(text) => format!("“{}” is neither a module nor a diametral pitch", number::clip(text)),
        "type a module such as 2.5 mm, or a normal diametral pitch such as 10 DP";
    Self::Module(given) => format!("a normal module of {} mm cannot be", number::show(in_millimetres(*given), 3)),
        {
                let [fine, coarse] = [limits::MODULE.least, limits::MODULE.greatest].map(|module| limits::shown(25.4 / module));
                format!("type {}, which is {fine} to {coarse} teeth per inch of diameter", limits::MODULE.range())
            };
    Self::Helix(given) => format!("a helix angle of {}° cannot be", number::show(degrees(*given), 1)),
        format!("type {}, 0 for straight teeth", limits::HELIX.range());
    Self::Pressure(given) => format!("a pressure angle of {}° cannot be", number::show(degrees(*given), 1)),
        format!("type {}, usually 14.5, 17.5 or 20", limits::PRESSURE_ANGLE.range());
}

fn degrees(angle: Angle) -> f64 {
    angle.get::<uom::si::angle::degree>()
}

impl Cut {
    /// A cut with teeth of full depth: addendum 1, dedendum 1.25 normal modules (ISO 53).
    ///
    /// # Errors
    /// When module, helix or pressure angle lies outside what gearboxes have. The sign of the helix (its hand) is dropped.
    pub fn new(normal_module: Length, helix: Angle, pressure: Angle) -> Result<Self, CutError> {
        if !limits::MODULE.allow(normal_module) {
            return Err(CutError::Module(normal_module));
        }
        if !limits::HELIX.allow(helix.abs()) {
            return Err(CutError::Helix(helix));
        }
        if !limits::PRESSURE_ANGLE.allow(pressure) {
            return Err(CutError::Pressure(pressure));
        }
        Ok(Self { normal_module, helix: helix.abs(), pressure, addendum: 1.0, dedendum: 1.25 })
    }

    /// The normal pressure angle that is taken where none is typed: 20° (ISO 53).
    pub fn usual_pressure_angle() -> Angle {
        unit::DEGREE.of(20.0)
    }

    /// The normal module of a normal diametral pitch, in teeth per inch of diameter: mₙ = 25.4 mm / Pₙ.
    ///
    /// ```
    /// use layshaft::gearing::geometry::Cut;
    /// use layshaft::units::{show, unit};
    /// assert_eq!(show(&Cut::module_of_diametral_pitch(10.0), &unit::MM, 2), "2.54 mm");
    /// ```
    pub fn module_of_diametral_pitch(per_inch: f64) -> Length {
        millimetres(25.4 / per_inch)
    }

    /// Reads a normal module or a normal diametral pitch: `2.5 mm`, `m 2.5`, `10 DP`; a bare number is a module in the metric
    /// system and a diametral pitch in the inch one.
    ///
    /// # Errors
    /// When it is neither, or outside what gearboxes have.
    pub fn read_module(text: &str, system: System) -> Result<Length, CutError> {
        let wrong = || CutError::NotAPitch(text.trim().to_owned());
        let lower = text.trim().to_ascii_lowercase();
        let (body, is_module) = lower.strip_prefix('m').map_or((lower.as_str(), false), |rest| (rest, true));
        let (readings, rest) = number::leading(body).ok_or_else(wrong)?;
        let per_inch = match rest.trim() {
            "" => !is_module && system == System::Inch,
            "mm" | "m" | "mod" | "module" => false,
            "dp" | "d.p." | "/in" | "1/in" | "pitch" if !is_module => true,
            _ => return Err(wrong()),
        };
        // No teeth on an inch are no pitch: their module would be without end.
        let readings = readings.into_iter().flatten().filter(|value| !per_inch || *value != 0.0);
        let modules = readings.map(|value| if per_inch { Self::module_of_diametral_pitch(value) } else { millimetres(value) });
        let mut outside = None;
        for module in modules {
            if limits::MODULE.allow(module) {
                return Ok(module);
            }
            outside.get_or_insert(module);
        }
        Err(outside.map_or_else(wrong, CutError::Module))
    }

    /// The same cut with another tooth height, in normal modules; values outside 0.5 to 1.8 are ignored.
    #[must_use]
    pub fn with_heights(mut self, addendum: f64, dedendum: f64) -> Self {
        let inside = |height: f64| (0.5..=1.8).contains(&height);
        if inside(addendum) && inside(dedendum) {
            (self.addendum, self.dedendum) = (addendum, dedendum);
        }
        self
    }

    /// Whether gears of the two cuts can mesh: module within half a percent, helix and pressure angle within half a degree
    /// (about what can be measured on the bench; common practice, no published source).
    pub fn meshes_with(&self, other: &Self) -> bool {
        let module = (self.normal_module / other.normal_module).value;
        let near = |one: Angle, other: Angle| (degrees(one) - degrees(other)).abs() <= 0.5;
        (module - 1.0).abs() <= 0.005 && near(self.helix, other.helix) && near(self.pressure, other.pressure)
    }

    /// The normal module mₙ.
    pub fn normal_module(&self) -> Length {
        self.normal_module
    }

    /// The helix angle β on the reference cylinder, without its hand.
    pub fn helix(&self) -> Angle {
        self.helix
    }

    /// The normal pressure angle αₙ.
    pub fn pressure(&self) -> Angle {
        self.pressure
    }

    /// The addendum in normal modules.
    pub fn addendum(&self) -> f64 {
        self.addendum
    }

    /// The dedendum in normal modules.
    pub fn dedendum(&self) -> f64 {
        self.dedendum
    }

    /// β in rad.
    pub fn helix_rad(&self) -> f64 {
        self.helix.get::<uom::si::angle::radian>()
    }

    /// αₙ in rad.
    pub fn pressure_rad(&self) -> f64 {
        self.pressure.get::<uom::si::angle::radian>()
    }

    /// mₜ = mₙ / cos β.
    pub fn transverse_module(&self) -> Length {
        self.normal_module / self.helix_rad().cos()
    }

    /// αₜ in rad, tan αₜ = tan αₙ / cos β.
    pub fn transverse_pressure_rad(&self) -> f64 {
        (self.pressure_rad().tan() / self.helix_rad().cos()).atan()
    }

    /// Teeth of the spur gear that has the same tooth form, z / cos³ β (the usual approximation).
    pub fn virtual_teeth(&self, teeth: f64) -> f64 {
        teeth / self.helix_rad().cos().powi(3)
    }

    /// The reference diameter of a gear, d = mₜ z.
    ///
    /// ```
    /// use layshaft::gearing::{Teeth, geometry::Cut};
    /// use layshaft::units::{show, unit};
    /// # fn example() -> Option<()> {
    /// let cut = Cut::new(unit::MM.of(2.5), unit::DEGREE.of(30.0), Cut::usual_pressure_angle()).ok()?;
    /// // 2.5 mm × 18 ÷ cos 30° = 45 ÷ 0.866025
    /// assert_eq!(show(&cut.reference_diameter(Teeth::new(18)?), &unit::MM, 2), "51.96 mm");
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn reference_diameter(&self, teeth: super::super::Teeth) -> Length {
        self.transverse_module() * f64::from(teeth.count())
    }
}
