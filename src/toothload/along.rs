//! Where gears and bearings sit along a shaft, as it is typed: `input 22; 3rd 65; 2nd 110; 1st 150`, and `0 28 kN ball; 175 24 kN roller`.
//!
//! Places are told from any one end, in one direction.

use super::bearing::Rolling;
use crate::gearing::geometry::pair_cuts::{PairAt, pair_named};
use crate::problem::Explain;
use crate::units::{Force, Length, System, Typed, limits, number};

/// A bearing of a shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftBearing {
    /// Where its middle sits.
    pub at: Length,
    /// Its basic dynamic load rating C (ISO 281).
    pub rating: Force,
    /// What rolls in it.
    pub rolling: Rolling,
}

/// Why a text says nothing of a shaft.
#[derive(Clone, Debug, PartialEq)]
pub enum AlongError {
    /// It is no bearing.
    NoBearing {
        /// What was typed.
        text: String,
    },
    /// There are not two bearings.
    NotTwo {
        /// How many are typed.
        many: usize,
    },
    /// Both bearings sit at one place.
    OnePlace,
    /// It begins with no gear of the box.
    NoGear {
        /// What was typed.
        text: String,
    },
    /// A place that no gearbox has.
    Place {
        /// What was typed.
        text: String,
    },
}

impl Explain for AlongError {
    fn what(&self) -> String {
        match self {
            Self::NoBearing { text } => format!("“{}” is no place, rating and kind of a bearing", number::clip(text)),
            Self::NotTwo { many } => {
                format!("a shaft is worked out on two bearings, and {many} {} typed", if *many == 1 { "is" } else { "are" })
            }
            Self::OnePlace => "both bearings sit at one place".into(),
            Self::NoGear { text } => format!("“{}” does not begin with a gear of this box", number::clip(text)),
            Self::Place { text } => format!("“{}” is no place along a shaft", number::clip(text)),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::NoBearing { .. } | Self::NotTwo { .. } | Self::OnePlace => {
                "type the place of each with its rating C and ball, roller or needle, such as 0 28 kN ball; 175 24 kN roller".into()
            }
            Self::NoGear { .. } => "type each gear with the place of its middle, such as input 22; 2nd 110; 1st 150".into(),
            Self::Place { .. } => format!("type {}, told from the same end as the bearings", limits::STATION.range()),
        }
    }
}

/// Reads the two bearings of a shaft, in the order of their places; none where nothing is typed. A bare place is in the unit of `system`, a
/// bare rating in kN.
///
/// # Errors
/// When there are not two, or one cannot be read.
pub fn read_bearings(text: &str, system: System) -> Result<Option<[ShaftBearing; 2]>, AlongError> {
    let all: Vec<ShaftBearing> = parts(text).map(|part| bearing(part, system)).collect::<Result<_, _>>()?;
    match all.as_slice() {
        [] => Ok(None),
        [one, two] if one.at < two.at => Ok(Some([*one, *two])),
        [one, two] if one.at > two.at => Ok(Some([*two, *one])),
        [_, _] => Err(AlongError::OnePlace),
        others => Err(AlongError::NotTwo { many: others.len() }),
    }
}

/// Reads where the middle of each pair of gears sits; of a pair that stands twice the last place counts.
///
/// # Errors
/// For the first that cannot be read.
pub fn read_places(text: &str, system: System, gears: usize) -> Result<Vec<(PairAt, Length)>, AlongError> {
    let one = |part: &str| {
        let (name, rest) = part.split_once([' ', '\t', ':', '=']).unwrap_or((part, ""));
        let at = pair_named(&name.to_ascii_lowercase(), gears).ok_or_else(|| AlongError::NoGear { text: part.to_owned() })?;
        Ok((at, place(rest, system)?))
    };
    parts(text).map(one).collect()
}

fn parts(text: &str) -> impl Iterator<Item = &str> {
    text.split([';', '\n']).map(str::trim).filter(|part| !part.is_empty())
}

fn bearing(part: &str, system: System) -> Result<ShaftBearing, AlongError> {
    let wrong = || AlongError::NoBearing { text: part.to_owned() };
    let lower = part.to_ascii_lowercase().replace([':', '='], " ");
    let mut words: Vec<&str> = lower.split_whitespace().collect();
    let rolling = match words.pop().ok_or_else(wrong)?.trim_end_matches('s') {
        "ball" => Rolling::Balls,
        "roller" | "needle" => Rolling::Rollers,
        _ => return Err(wrong()),
    };
    let behind = words.get(1).is_some_and(|word| matches!(*word, "mm" | "in" | "\"" | "inch"));
    let (at, rating) = words.split_at_checked(if behind { 2 } else { 1 }).ok_or_else(wrong)?;
    let mut rating = rating.join(" ").replace("kn", "kN");
    if !rating.contains(char::is_alphabetic) {
        rating.push_str(" kN");
    }
    let rating = Typed::new(rating.as_str(), system).read(&limits::BEARING_RATING).map_err(|_| wrong())?;
    Ok(ShaftBearing { at: place(&at.join(" "), system)?, rating, rolling })
}

fn place(typed: &str, system: System) -> Result<Length, AlongError> {
    Typed::new(typed.trim(), system).read(&limits::STATION).map_err(|_| AlongError::Place { text: typed.trim().to_owned() })
}
