//! Quantities and their units: what people type, what is computed with, what is shown.
//!
//! Inside the project a quantity is a [`uom`] type in SI; a unit is named only here, when text is read ([`read`])
//! or a figure is shown ([`show`]). [`mod@unit`] is the table of units; [`number`] reads and writes bare numbers, [`limits`] is the table of least and greatest values.

pub mod limits;
pub mod number;
pub mod unit;

use serde::{Deserialize, Serialize};

pub use limits::{AnyLimits, Limits};
pub use unit::{Altitude, Measured, Plain, PowerPerArea, Share, TurnsPerDistance, Unit, WorkPerArea, common};
pub use uom::si::f64::{
    Acceleration, Angle, AngularAcceleration, AngularVelocity, Area, Energy, Force, Frequency, Length, Mass, MassDensity, MomentOfInertia,
    Power, Pressure, ThermodynamicTemperature, Time, Torque, Velocity, Volume,
};

/// The two ways people read figures: the inch world and the metric one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum System {
    /// Inches, mph, lbf·ft, pounds.
    #[default]
    Inch,
    /// Millimetres, km/h, N·m, kilograms.
    Metric,
}

/// A text as it was typed, with the system its bare numbers were meant in.
///
/// Switching the units of the sheet later must not change what `70` meant when it was typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Typed {
    /// The text, untouched.
    pub text: String,
    /// What a bare number in it means.
    #[serde(default)]
    pub units: System,
}

impl Typed {
    /// A text typed under one system.
    pub fn new(text: impl Into<String>, units: System) -> Self {
        Self { text: text.into(), units }
    }

    /// Whether nothing but blanks stands in it.
    pub fn is_blank(&self) -> bool {
        self.text.trim().is_empty()
    }

    /// Reads the text as a quantity inside `limits`.
    ///
    /// # Errors
    /// When the text is no number with a known unit, or lies outside the limits.
    ///
    /// ```
    /// use layshaft::units::{System, Typed, UnitError, limits, show, unit};
    /// // Typed while the sheet was read in mph: 70 × 1.609344 = 112.65 km/h.
    /// let cruise = Typed::new("70", System::Inch).read(&limits::CRUISE_SPEED)?;
    /// assert_eq!(show(&cruise, &unit::KM_H, 1), "112.7 km/h");
    /// # Ok::<(), UnitError>(())
    /// ```
    pub fn read<Q: Measured>(&self, limits: &Limits<Q>) -> Result<Q, UnitError> {
        read(&self.text, self.units, limits)
    }
}

/// Why a text is no quantity.
#[derive(Clone, Debug, PartialEq)]
pub enum UnitError {
    /// Nothing was typed: the quantity's name.
    Blank(&'static str),
    /// The number could not be read.
    NotANumber {
        /// The quantity's name.
        word: &'static str,
        /// What was typed.
        text: String,
    },
    /// The number is fine, the unit behind it is not known here.
    UnknownUnit {
        /// The quantity's name.
        word: &'static str,
        /// The unit as typed.
        unit: String,
        /// The units that would do.
        known: String,
    },
    /// The value is outside what can be.
    Outside {
        /// The quantity's name.
        word: &'static str,
        /// Why the bounds stand where they do.
        why: &'static str,
        /// What was typed.
        text: String,
        /// The bounds, in the unit that was typed.
        range: String,
    },
}

explain! { UnitError:
    Self::Blank(word) => format!("no {word} is given"), "type a number, with its unit if it is not the one shown";
    Self::NotANumber { word, text } => format!("“{}” cannot be read as the {word}", number::clip(text)),
        "type a number such as 6,500 or 2 1/4 or 19,05, with its unit if it is not the one shown";
    Self::UnknownUnit { word, unit, known, .. } => format!("“{}” is no unit for the {word}", number::clip(unit)),
        format!("use one of {known}");
    Self::Outside { word, text, why, range, .. } => format!("“{}” is outside what the {word} can be", number::clip(text)),
        format!("type {range} ({why})");
}

/// Reads what a person typed as a quantity, bare numbers in the usual unit of `system`.
///
/// A comma may mark thousands or decimals; where both readings are possible, the one inside the limits is taken,
/// thousands first (`6,500` rpm is six and a half thousand, `3,909` as a ratio is just under four).
///
/// # Errors
/// When the text is no number with a known unit, or lies outside the limits.
///
/// ```
/// use layshaft::units::{System, UnitError, limits, read, show, unit};
/// let shift = read("6,500", System::Inch, &limits::SHIFT_SPEED)?;
/// assert_eq!(show(&shift, &unit::RPM, 0), "6,500 rpm");
/// // A unit that is typed goes before the reader's own: 1 7/8 in = 1.875 × 25.4 mm.
/// let wall = read("1 7/8 in", System::Metric, &limits::TUBE_WALL)?;
/// assert_eq!(show(&wall, &unit::MM, 3), "47.625 mm");
/// assert!(read("500 mph", System::Inch, &limits::CRUISE_SPEED).is_err());
/// # Ok::<(), UnitError>(())
/// ```
pub fn read<Q: Measured>(text: &str, system: System, limits: &Limits<Q>) -> Result<Q, UnitError> {
    let (readings, rest) = numbers(text, limits.word)?;
    let Some(unit) = unit::find::<Q>(rest, system) else {
        return Err(no_unit(limits.word, text.trim(), rest.trim(), &mut Q::units().iter().map(|unit| unit.symbol)));
    };
    let inside = |value: f64| Some(unit.of(value)).filter(|quantity| limits.allow(*quantity));
    let [first, second] = readings;
    first
        .and_then(inside)
        .or_else(|| second.and_then(inside))
        .ok_or_else(|| outside((limits.word, limits.why), text, limits.range_in(unit)))
}

// What is the same for every quantity stands by itself: of the rest the main program holds a copy for each.

/// What a text may mean as a number, and what stands behind it.
fn numbers<'a>(text: &'a str, word: &'static str) -> Result<(number::Readings, &'a str), UnitError> {
    if text.trim().is_empty() {
        return Err(UnitError::Blank(word));
    }
    number::leading(text).ok_or_else(|| UnitError::NotANumber { word, text: text.trim().to_owned() })
}

fn outside((word, why): (&'static str, &'static str), text: &str, range: String) -> UnitError {
    UnitError::Outside { word, why, text: text.trim().to_owned(), range }
}

/// The unit that a typed text names behind its number, the usual one where nothing stands there; `None` where it names none that is known.
///
/// ```
/// use layshaft::units::{System, Velocity, unit_typed};
/// let symbol = |text| unit_typed::<Velocity>(text, System::Inch).map(|unit| unit.symbol);
/// assert_eq!(symbol("110 km/h"), Some("km/h"));
/// assert_eq!(symbol("70"), Some("mph"));
/// ```
pub fn unit_typed<Q: Measured>(text: &str, system: System) -> Option<&'static Unit<Q>> {
    number::leading(text).and_then(|(_, rest)| unit::find::<Q>(rest, system))
}

/// More digits behind the number, as in `1/0`, `1e9` or a pasted table, make the whole text no number; letters alone are a unit not known.
fn no_unit(word: &'static str, text: &str, rest: &str, known: &mut dyn Iterator<Item = &'static str>) -> UnitError {
    if rest.contains(|c: char| c.is_ascii_digit()) {
        return UnitError::NotANumber { word, text: text.to_owned() };
    }
    let known = known.collect::<Vec<_>>().join(", ");
    UnitError::UnknownUnit { word, unit: rest.to_owned(), known }
}

/// A quantity in a unit, with the digits a person uses: `1,878.8 mm`.
///
/// ```
/// use layshaft::units::{show, unit};
/// // 24 1/4 × 25.4
/// assert_eq!(show(&unit::INCH.of(24.25), &unit::MM, 2), "615.95 mm");
/// ```
pub fn show<Q: Measured>(quantity: &Q, unit: &Unit<Q>, decimals: usize) -> String {
    format!("{} {}", number::show((unit.take)(quantity), decimals), unit.symbol)
}
