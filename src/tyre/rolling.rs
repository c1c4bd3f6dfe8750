//! How far a tyre rolls in one turn, and how that was got.

use std::f64::consts::PI;

use super::dimension::{Basis, Measure};
use super::loaded;
use super::measurement::Measurement;
use super::size::Construction;
use crate::units::{Length, TurnsPerDistance, common, number};

/// Rolling circumference over diameter of a radial tyre at about 60 km/h.
///
/// European tyre and rim standards manual, passenger section (from memory); the European Commission's vehicle simulator,
/// version 4.3.7, has the same as 3.05 / 3.14 of the free radius (read).
pub const RADIAL_FACTOR: f64 = 3.05;

/// Rolling circumference over diameter of a diagonal tyre: from memory and unsure (2.99 to 3.0).
pub const DIAGONAL_FACTOR: f64 = 2.99;

worded! {
    /// By which way a rolling circumference was got.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
    pub enum How {
        /// Diameter × 3.05.
        Radial => "radial, 3.05 × diameter";
        /// Diameter × 2.99.
        Diagonal => "diagonal, 2.99 × diameter";
        /// π × diameter: turning free of the road.
        Free => "free of the road, π × diameter";
        /// The measured circumference.
        Circumference => "measured circumference";
        /// A measured way over a number of turns.
        RollOut => "measured roll-out";
        /// Measured or published turns over a distance.
        Turns => "turns per distance";
        /// The standing radius, less than the tyre rolls on.
        LoadedRadius => "from the loaded radius";
        /// From the radius of the circle it rolls on, 2π times.
        RollingRadius => "2π × rolling radius";
    }
    /// A few words that name the way.
    pub fn words;
}

impl How {
    /// Whether a diameter was multiplied, which has a basis of its own.
    fn is_factor(self) -> bool {
        matches!(self, Self::Radial | Self::Diagonal | Self::Free)
    }

    /// Where the rule stands.
    pub fn source(self) -> &'static str {
        match self {
            Self::Radial => {
                "European Commission vehicle simulator, version 4.3.7 (3.05 / 3.14 of the free radius); European tyre and rim standards manual, from memory"
            }
            Self::Diagonal => "European tyre and rim standards manual, from memory and unsure (2.99 to 3.0)",
            Self::Free => "geometry",
            Self::Circumference | Self::RollOut | Self::RollingRadius => "measured",
            Self::Turns => "turns per distance are the inverse of the rolling circumference (tyre-trade glossaries)",
            Self::LoadedRadius => loaded::SOURCE,
        }
    }
}

/// The roll-out distance of the wheel.
#[derive(Clone, Debug, PartialEq)]
pub struct Rolling {
    /// How far it goes, new or worn.
    pub circumference: Length,
    /// By which way it was got.
    pub how: How,
    /// How sure it is.
    pub basis: Basis,
    /// By how much it may be off either way, as a share: 0.015 for ±1.5 %. Common practice, no published source.
    pub plus_minus: f64,
    /// The formula with this tyre's numbers.
    pub working: String,
}

impl Rolling {
    /// A few words on how it was got and how sure it is: `radial, 3.05 × diameter, by rule, ±1.5 %`.
    pub fn words(&self) -> String {
        let basis = if self.how.is_factor() { format!(", {}", self.basis.word()) } else { String::new() };
        format!("{}{basis}, ±{} %", self.how.words(), number::show(100.0 * self.plus_minus, 1))
    }

    /// Turns of the wheel over a distance: the inverse of the circumference.
    pub fn turns(&self) -> TurnsPerDistance {
        common::turns_of(self.circumference)
    }

    /// The rolling radius, C / 2π.
    pub fn radius(&self) -> Length {
        self.circumference / (2.0 * PI)
    }

    /// The same tyre with so much tread worn off.
    ///
    /// Model: the rolling radius falls by the depth lost, C − 2π·t; a stiff belt may take up part of it. Never below a tenth.
    /// Source: geometry; a car-club technical answer gives about 1 % for 1/8 in, which this agrees with.
    ///
    /// ```
    /// use layshaft::tyre::{TyreError, read};
    /// use layshaft::units::{System, common::millimetres, show, unit};
    /// let new = read("rolls 2,000 mm", System::Metric)?.rolling();
    /// // 2,000 − 2π × 5 = 2,000 − 31.42
    /// assert_eq!(show(&new.worn(millimetres(5.0)).circumference, &unit::MM, 1), "1,968.6 mm");
    /// # Ok::<(), TyreError>(())
    /// ```
    #[must_use]
    pub fn worn(&self, lost: Length) -> Self {
        let lost = if lost > common::metres(0.0) { lost } else { common::metres(0.0) };
        let circumference = (self.circumference - lost * (2.0 * PI)).max(self.circumference * 0.1);
        let (new, lost_mm, left) = (mm(self.circumference), number::show(common::in_millimetres(lost), 1), mm(circumference));
        Self { circumference, working: format!("{}; worn: {new} − 2π × {lost_mm} = {left} mm", self.working), ..self.clone() }
    }
}

fn mm(length: Length) -> String {
    number::show(common::in_millimetres(length), 0)
}

/// The roll-out distance of a tyre of a known diameter.
pub(super) fn from_diameter(diameter: &Measure, how: How) -> Rolling {
    let (factor, sign) = match how {
        How::Radial => (RADIAL_FACTOR, "3.05"),
        How::Diagonal => (DIAGONAL_FACTOR, "2.99"),
        _ => (PI, "π"),
    };
    let circumference = diameter.value * factor;
    let shown = number::show(common::in_millimetres(diameter.value), 1);
    let plus_minus = of_diameter(diameter.basis) + if how == How::Diagonal { 0.005 } else { 0.0 };
    let working = format!("{sign} × {shown} = {} mm", mm(circumference));
    Rolling { circumference, how, basis: diameter.basis, plus_minus, working }
}

/// How sure a diameter is, with half a percent for the factor: the limits of a new tyre are about −1.2 to +1.6 % (UN R30
/// paragraph 6.1.4, from memory).
fn of_diameter(basis: Basis) -> f64 {
    match basis {
        Basis::Measured => 0.01,
        Basis::Rule => 0.015,
        Basis::Table => 0.02,
        Basis::Approximate => 0.03,
    }
}

/// The way that belongs to a construction; a measured diameter of unknown construction is taken as radial.
pub(super) fn usual(construction: Option<Construction>) -> How {
    match construction {
        Some(Construction::Diagonal | Construction::BiasBelted) => How::Diagonal,
        Some(Construction::Radial) | None => How::Radial,
    }
}

pub(super) fn measured_diameter(value: Length) -> Measure {
    let working = format!("{} mm", number::show(common::in_millimetres(value), 1));
    Measure { value, basis: Basis::Measured, source: "measured", working }
}

/// The roll-out distance as measured; where only a diameter was, by the factor of the construction. `moulded` is the diameter that the size
/// beside the measurement says.
pub(super) fn from_measurement(measurement: &Measurement, usual: How, moulded: Option<&Measure>) -> Rolling {
    let (circumference, how, plus_minus, working) = match *measurement {
        Measurement::Diameter(diameter) => return from_diameter(&measured_diameter(diameter), usual),
        Measurement::LoadedRadius(radius) => return loaded::rolling(radius, usual, moulded),
        Measurement::Circumference(circumference) => (circumference, How::Circumference, 0.005, format!("{} mm", mm(circumference))),
        Measurement::RollingRadius(radius) => {
            let around = radius * (2.0 * PI);
            let shown = number::show(common::in_millimetres(radius), 1);
            (around, How::RollingRadius, 0.01, format!("2π × {shown} = {} mm", mm(around)))
        }
        Measurement::Turns(turns) => {
            let around = common::way_per_turn(turns);
            (around, How::Turns, 0.01, format!("1 km / {} turns = {} mm", number::show(1_000.0 / around.value, 1), mm(around)))
        }
        Measurement::RollOut { turns, distance } => {
            let around = distance / turns;
            (around, How::RollOut, 0.005, format!("{} mm / {} turns = {} mm", mm(distance), number::show(turns, 2), mm(around)))
        }
    };
    Rolling { circumference, how, basis: Basis::Measured, plus_minus, working }
}
