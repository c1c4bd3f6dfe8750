//! Tyres of every age: what a sidewall says, the dimensions behind it, and how far the tyre rolls in one turn.
//!
//! Things first: [`size`] (the parts moulded on a tyre), [`dimension`] (millimetres, each with its basis), [`measurement`]
//! (a tyre given by a tape), [`service`] and [`table`] (tabled values). Questions: [`read`] a text, [`Tyre::rolling`].
//! Road speeds are not here.

pub mod dimension;
mod early;
mod error;
mod grammar;
mod loaded;
pub mod measurement;
mod rolling;
pub mod service;
pub mod size;
pub mod table;
mod tail;

use crate::units::{Length, Mass, System, Velocity, common};
pub use dimension::{Basis, Dimensions, Measure, OmittedAspect};
pub use error::{MEASURED_FORMS, TyreError};
use grammar::Sidewall;
pub use measurement::Measurement;
pub use rolling::{DIAGONAL_FACTOR, How, RADIAL_FACTOR, Rolling};
pub use size::Size;

/// A tyre: its size, a measurement of it, or both.
#[derive(Clone, Debug, PartialEq)]
pub struct Tyre {
    known: Known,
}

#[derive(Clone, Debug, PartialEq)]
enum Known {
    Size(Box<Moulded>),
    Measured(Measurement),
    Both(Box<Moulded>, Measurement),
}

#[derive(Clone, Debug, PartialEq)]
struct Moulded {
    size: Size,
    dimensions: Dimensions,
    passed_over: String,
}

/// Reads any sidewall text, a measurement, or a size with a measurement behind it (`185/70R14 rolls 1,865 mm`).
///
/// A metric size without aspect ratio is taken as 80 series; see [`read_with`]. Words behind a size that say nothing of it are
/// passed over; see [`Tyre::passed_over`].
///
/// # Errors
/// When the text is neither, names an unknown letter size, or measures what no tyre can be.
///
/// ```
/// use layshaft::tyre::{TyreError, read};
/// use layshaft::units::{System, show, unit};
/// let tyre = read("205/60R15", System::Inch)?;
/// // A rim of 15 in is 381 mm, a sidewall 0.60 × 205 = 123 mm: 381 + 2 × 123 = 627.
/// assert_eq!(show(&tyre.diameter_or_rolled(), &unit::MM, 0), "627 mm");
/// // What a tape says goes before the rule.
/// let measured = read("205/60R15 rolls 1,905 mm", System::Inch)?;
/// assert_eq!(show(&measured.rolling().circumference, &unit::MM, 0), "1,905 mm");
/// # Ok::<(), TyreError>(())
/// ```
pub fn read(text: &str, system: System) -> Result<Tyre, TyreError> {
    read_with(text, system, OmittedAspect::default())
}

/// As [`read`], with the aspect ratio that a metric size stands for when it leaves it out.
///
/// # Errors
/// As [`read`].
///
/// ```
/// use layshaft::tyre::{OmittedAspect, TyreError, read_with};
/// use layshaft::units::{System, show, unit};
/// let height = |omitted| read_with("165R13", System::Metric, omitted).map(|tyre| show(&tyre.diameter_or_rolled(), &unit::MM, 0));
/// // 330 + 2 × 132, and 330 + 2 × 135 (0.82 × 165 = 135.3)
/// assert_eq!(height(OmittedAspect::Eighty)?, "594 mm");
/// assert_eq!(height(OmittedAspect::EightyTwo)?, "600 mm");
/// # Ok::<(), TyreError>(())
/// ```
pub fn read_with(text: &str, system: System, omitted: OmittedAspect) -> Result<Tyre, TyreError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(TyreError::Blank);
    }
    let plain = measurement::plain(text);
    let words: Vec<&str> = plain.split(' ').collect();
    if words.iter().any(|word| measurement::is_measuring(word)) {
        return measured(text, &words, system, omitted);
    }
    if measurement::is_bare_length(text) {
        let measured = measurement::of_one_reading(text, system).ok_or_else(|| TyreError::WhichLength(text.to_owned()))?;
        return Ok(Tyre { known: Known::Measured(measured) });
    }
    Ok(Tyre { known: Known::Size(Box::new(sized(text, omitted)?)) })
}

/// A measurement, behind a size where the first words are one.
fn measured(text: &str, words: &[&str], system: System, omitted: OmittedAspect) -> Result<Tyre, TyreError> {
    /// No size has more words than this.
    const MOST_WORDS: usize = 10;
    for count in (1..words.len().min(MOST_WORDS)).rev() {
        let (front, behind) = words.split_at(count);
        let front = front.join(" ");
        if let Ok(sized) = sized(front.trim_end_matches([',', ';', ':', '=']), omitted) {
            let measured = measurement::read(&behind.join(" "), system)?;
            return Ok(Tyre { known: Known::Both(Box::new(sized), measured) });
        }
    }
    Ok(Tyre { known: Known::Measured(measurement::read(text, system)?) })
}

fn sized(text: &str, omitted: OmittedAspect) -> Result<Moulded, TyreError> {
    let Sidewall { size, passed_over } = grammar::size(text).map_err(|stuck| TyreError::NotUnderstood {
        text: text.to_owned(),
        part: stuck.rest,
        nearest: stuck.nearest,
    })?;
    let dimensions = dimension::dimensions(&size, omitted).ok_or_else(|| TyreError::UnknownLetter(size.to_string()))?;
    if dimensions.sidewall.value <= common::metres(0.0) {
        return Err(TyreError::RimTooLarge(size.to_string()));
    }
    Ok(Moulded { size, dimensions, passed_over })
}

impl Tyre {
    fn sized(&self) -> Option<&Moulded> {
        match &self.known {
            Known::Size(sized) | Known::Both(sized, _) => Some(sized),
            Known::Measured(_) => None,
        }
    }

    /// The size, where one was given.
    pub fn size(&self) -> Option<&Size> {
        self.sized().map(|sized| &sized.size)
    }

    /// Every dimension the size tells, where one was given.
    pub fn dimensions(&self) -> Option<&Dimensions> {
        self.sized().map(|sized| &sized.dimensions)
    }

    /// The words behind the size that were not needed, in capitals.
    pub fn passed_over(&self) -> Option<&str> {
        self.sized().map(|sized| sized.passed_over.as_str()).filter(|words| !words.is_empty())
    }

    /// What was measured, where anything was.
    pub fn measurement(&self) -> Option<&Measurement> {
        match &self.known {
            Known::Measured(measurement) | Known::Both(_, measurement) => Some(measurement),
            Known::Size(_) => None,
        }
    }

    /// Overall diameter: as measured, or else from the size; `None` where only the roll-out distance is known.
    pub fn diameter(&self) -> Option<Measure> {
        match self.measurement() {
            Some(Measurement::Diameter(value)) => Some(rolling::measured_diameter(*value)),
            _ => self.dimensions().map(|dimensions| dimensions.diameter.clone()),
        }
    }

    /// Overall diameter; where only the roll-out distance is known, that of a radial tyre which rolls so far, C / 3.05.
    pub fn diameter_or_rolled(&self) -> Length {
        self.diameter().map_or_else(|| self.rolling().circumference / rolling::RADIAL_FACTOR, |diameter| diameter.value)
    }

    /// Section width, where a size was given.
    pub fn section_width(&self) -> Option<&Measure> {
        self.dimensions().map(|dimensions| &dimensions.section_width)
    }

    /// Sidewall height, where a size was given.
    pub fn sidewall(&self) -> Option<&Measure> {
        self.dimensions().map(|dimensions| &dimensions.sidewall)
    }

    /// Nominal rim diameter, where a size was given.
    pub fn rim(&self) -> Option<&Measure> {
        self.dimensions().map(|dimensions| &dimensions.rim)
    }

    /// The roll-out distance when new: as measured, or else by the published factor of the construction.
    ///
    /// ```
    /// use layshaft::tyre::{TyreError, read};
    /// use layshaft::units::{System, show, unit};
    /// let rolling = read("185/70R14", System::Inch)?.rolling();
    /// // The rim is 356 mm, a sidewall 0.70 × 185 = 129.5, rounded to 130: 3.05 × (356 + 2 × 130).
    /// assert_eq!(show(&rolling.circumference, &unit::MM, 1), "1,878.8 mm");
    /// // 1,000,000 ÷ 1,878.8
    /// assert_eq!(show(&rolling.turns(), &unit::TURNS_KM, 1), "532.3 turns/km");
    /// # Ok::<(), TyreError>(())
    /// ```
    pub fn rolling(&self) -> Rolling {
        match &self.known {
            Known::Size(sized) => rolling::from_diameter(&sized.dimensions.diameter, self.usual()),
            Known::Measured(measurement) => rolling::from_measurement(measurement, self.usual(), None),
            Known::Both(sized, measurement) => rolling::from_measurement(measurement, self.usual(), Some(&sized.dimensions.diameter)),
        }
    }

    /// What the other ways would have given: the other factors on the same diameter, then other rules and tables for the diameter.
    pub fn alternatives(&self) -> Vec<Rolling> {
        let (usual, used) = (self.usual(), self.rolling().how);
        let diameter = self.diameter();
        let ways = [usual].into_iter().chain([How::Radial, How::Diagonal, How::Free].into_iter().filter(|how| *how != usual));
        let factors = ways.filter(|how| *how != used).filter_map(|how| Some(rolling::from_diameter(diameter.as_ref()?, how)));
        let moulded = self.dimensions().map(|dimensions| &dimensions.diameter).filter(|moulded| diameter.as_ref() != Some(moulded));
        let others = self.dimensions().map_or(&[][..], |dimensions| &dimensions.other_diameters);
        factors.chain(moulded.into_iter().chain(others).map(|diameter| rolling::from_diameter(diameter, usual))).collect()
    }

    fn usual(&self) -> How {
        rolling::usual(self.size().map(|size| size.construction))
    }

    /// The speed symbol and the speed it allows; `None` where there is none, or where it is a Z without further symbol.
    ///
    /// ```
    /// use layshaft::tyre::{TyreError, read};
    /// use layshaft::units::{System, show, unit};
    /// let tyre = read("185/70R14 88H", System::Inch)?;
    /// // H is 210 km/h, index 88 is 560 kg (ISO 4000-1).
    /// let (symbol, speed) = tyre.speed_limit().unzip();
    /// assert_eq!((symbol, speed.map(|speed| show(&speed, &unit::KM_H, 0)).as_deref()), (Some('H'), Some("210 km/h")));
    /// let (index, load) = tyre.load_limit().unzip();
    /// assert_eq!((index, load.map(|load| show(&load, &unit::KG, 0)).as_deref()), (Some(88), Some("560 kg")));
    /// # Ok::<(), TyreError>(())
    /// ```
    pub fn speed_limit(&self) -> Option<(char, Velocity)> {
        let symbol = self.size()?.speed_symbol()?;
        Some((symbol, service::speed_of(symbol)?))
    }

    /// The load index and the mass it allows on a single tyre.
    pub fn load_limit(&self) -> Option<(u16, Mass)> {
        loaded(self.size()?.service.load_index?)
    }

    /// The load index and the mass it allows on each tyre of a pair on one hub; `None` where the size carries none.
    pub fn pair_load_limit(&self) -> Option<(u16, Mass)> {
        loaded(self.size()?.service.dual_index?)
    }
}

fn loaded(index: u16) -> Option<(u16, Mass)> {
    Some((index, service::load_of(index)?))
}
