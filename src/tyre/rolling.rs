//! How far a tyre rolls in one turn, and how that was got.

use std::f64::consts::PI;

use super::dimension::{Basis, Measure};
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

/// By which way a rolling circumference was got.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum How {
    /// Diameter × 3.05.
    Radial,
    /// Diameter × 2.99.
    Diagonal,
    /// π × diameter: turning free of the road.
    Free,
    /// The measured circumference.
    Circumference,
    /// A measured way over a number of turns.
    RollOut,
    /// Measured or published turns over a distance.
    Turns,
    /// 2π × the measured standing radius.
    LoadedRadius,
}

impl How {
    /// A few words that name the way.
    pub fn words(self) -> &'static str {
        match self {
            Self::Radial => "radial, 3.05 × diameter",
            Self::Diagonal => "diagonal, 2.99 × diameter",
            Self::Free => "free of the road, π × diameter",
            Self::Circumference => "measured circumference",
            Self::RollOut => "measured roll-out",
            Self::Turns => "turns per distance",
            Self::LoadedRadius => "2π × loaded radius",
        }
    }

    /// Where the rule stands.
    pub fn source(self) -> &'static str {
        match self {
            Self::Radial => {
                "European Commission vehicle simulator, version 4.3.7 (3.05 / 3.14 of the free radius); European tyre and rim standards manual, from memory"
            }
            Self::Diagonal => "European tyre and rim standards manual, from memory and unsure (2.99 to 3.0)",
            Self::Free => "geometry",
            Self::Circumference | Self::RollOut => "measured",
            Self::Turns => "turns per distance are the inverse of the rolling circumference (tyre-trade glossaries)",
            Self::LoadedRadius => "geometry; a radial rolls somewhat farther than its standing radius says (trade pages, part from memory)",
        }
    }
}

/// The way rolled in one turn of the wheel.
#[derive(Clone, Debug, PartialEq)]
pub struct Rolling {
    /// Rolling circumference.
    pub circumference: Length,
    /// By which way it was got.
    pub how: How,
    /// How sure it is.
    pub basis: Basis,
    /// The formula with this tyre's numbers.
    pub working: String,
}

impl Rolling {
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

/// The way rolled by a tyre of a known diameter.
pub(super) fn from_diameter(diameter: &Measure, how: How) -> Rolling {
    let (factor, sign) = match how {
        How::Radial => (RADIAL_FACTOR, "3.05"),
        How::Diagonal => (DIAGONAL_FACTOR, "2.99"),
        _ => (PI, "π"),
    };
    let circumference = diameter.value * factor;
    let shown = number::show(common::in_millimetres(diameter.value), 1);
    Rolling { circumference, how, basis: diameter.basis, working: format!("{sign} × {shown} = {} mm", mm(circumference)) }
}

/// The way that belongs to a construction; a measured diameter of unknown construction is taken as radial.
pub(super) fn usual(construction: Option<Construction>) -> How {
    match construction {
        Some(Construction::Diagonal | Construction::BiasBelted) => How::Diagonal,
        Some(Construction::Radial) | None => How::Radial,
    }
}

/// A diameter as it was measured.
pub(super) fn measured_diameter(value: Length) -> Measure {
    let working = format!("{} mm", number::show(common::in_millimetres(value), 1));
    Measure { value, basis: Basis::Measured, source: "measured", working }
}

/// The way rolled as measured; where only a diameter was, by the factor of the construction.
pub(super) fn from_measurement(measurement: &Measurement, usual: How) -> Rolling {
    let tenths = |length| number::show(common::in_millimetres(length), 1);
    let (circumference, how, working) = match *measurement {
        Measurement::Diameter(diameter) => return from_diameter(&measured_diameter(diameter), usual),
        Measurement::Circumference(circumference) => (circumference, How::Circumference, format!("{} mm", mm(circumference))),
        Measurement::LoadedRadius(radius) => {
            let around = radius * (2.0 * PI);
            (around, How::LoadedRadius, format!("2π × {} = {} mm", tenths(radius), mm(around)))
        }
        Measurement::Turns(turns) => {
            let around = common::way_per_turn(turns);
            (around, How::Turns, format!("1 km / {} turns = {} mm", number::show(1_000.0 / around.value, 1), mm(around)))
        }
        Measurement::RollOut { turns, distance } => {
            let around = distance / turns;
            (around, How::RollOut, format!("{} mm / {} turns = {} mm", mm(distance), number::show(turns, 2), mm(around)))
        }
    };
    let basis = if how == How::LoadedRadius { Basis::Approximate } else { Basis::Measured };
    Rolling { circumference, how, basis, working }
}
