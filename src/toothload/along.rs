//! Where gears and bearings sit along a shaft, as it is typed: `input 22; 3rd 65; 2nd 110; 1st 150`, and `0 28 kN ball; 175 24 kN roller`.
//!
//! Places are told from any one end, in one direction. Taper bearings come in twos, with Y and e of their catalogue where they are known:
//! `0 40 kN taper Y 1.6 e 0.37; 175 45 kN taper Y 1.5; back to back`.

use super::bearing::Rolling;
use super::taper::{Taper, USUAL_AXIAL_FACTOR};
use crate::gearing::geometry::pair_cuts::{PairAt, pair_named};
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
    /// Its cone, of a taper bearing.
    pub taper: Option<Taper>,
}

/// Why a text says nothing of a shaft.
#[derive(Clone, Debug, PartialEq)]
pub enum AlongError {
    /// It is no bearing: what was typed.
    NoBearing(String),
    /// There are not two bearings: how many are typed.
    NotTwo(usize),
    /// Both bearings sit at one place.
    OnePlace,
    /// One is a taper bearing and the other is none.
    OneTaper,
    /// It begins with no gear of the box: what was typed.
    NoGear(String),
    /// A place that no gearbox has: what was typed.
    Place(String),
}

explain! { AlongError:
    Self::NoBearing(text) => format!("“{}” is no place, rating and kind of a bearing", number::clip(text)),
        "type the place of each with its rating C and ball, roller, needle or taper, such as 0 28 kN ball; 175 24 kN roller";
    Self::NotTwo(many) => format!("a shaft is worked out on two bearings, and {many} {} typed", if *many == 1 { "is" } else { "are" }),
        "type the place of each with its rating C and ball, roller, needle or taper, such as 0 28 kN ball; 175 24 kN roller";
    Self::OnePlace => "both bearings sit at one place",
        "type the place of each with its rating C and ball, roller, needle or taper, such as 0 28 kN ball; 175 24 kN roller";
    Self::OneTaper => "one taper bearing holds its shaft one way only",
        "type taper for both, with Y of each, such as 0 40 kN taper Y 1.6; 175 45 kN taper Y 1.5";
    Self::NoGear(text) => format!("“{}” does not begin with a gear of this box", number::clip(text)),
        "type each gear with the place of its middle, such as input 22; 2nd 110; 1st 150";
    Self::Place(text) => format!("“{}” is no place along a shaft", number::clip(text)),
        format!("type {}, told from the same end as the bearings", limits::STATION.range());
}

/// Reads the two bearings of a shaft, in the order of their places; none where nothing is typed. A bare place is in the unit of `system`, a
/// bare rating in kN.
///
/// # Errors
/// When there are not two, or one cannot be read.
pub fn read_bearings(text: &str, system: System) -> Result<Option<[ShaftBearing; 2]>, AlongError> {
    let (arranged, told): (Vec<&str>, Vec<&str>) = parts(text).partition(|part| arrangement(part).is_some());
    let back_to_back = arranged.last().and_then(|part| arrangement(part)).unwrap_or_default();
    let all: Vec<ShaftBearing> = told.into_iter().map(|part| bearing(part, system, back_to_back)).collect::<Result<_, _>>()?;
    match all.as_slice() {
        [] => Ok(None),
        [one, two] if one.at == two.at => Err(AlongError::OnePlace),
        [one, two] if one.taper.is_some() != two.taper.is_some() => Err(AlongError::OneTaper),
        [one, two] if one.at < two.at => Ok(Some([*one, *two])),
        [one, two] => Ok(Some([*two, *one])),
        others => Err(AlongError::NotTwo(others.len())),
    }
}

/// Reads where the middle of each pair of gears sits; of a pair that stands twice the last place counts.
///
/// # Errors
/// For the first that cannot be read.
pub fn read_places(text: &str, system: System, gears: usize) -> Result<Vec<(PairAt, Length)>, AlongError> {
    let one = |part: &str| {
        let (name, rest) = part.split_once([' ', '\t', ':', '=']).unwrap_or((part, ""));
        let at = pair_named(&name.to_ascii_lowercase(), gears).ok_or_else(|| AlongError::NoGear(part.to_owned()))?;
        Ok((at, place(rest, system)?))
    };
    parts(text).map(one).collect()
}

fn parts(text: &str) -> impl Iterator<Item = &str> {
    text.split([';', '\n']).map(str::trim).filter(|part| !part.is_empty())
}

/// Whether taper bearings stand back to back; none of a part that says nothing of it.
fn arrangement(part: &str) -> Option<bool> {
    match part.to_ascii_lowercase().replace('-', " ").as_str() {
        "back to back" => Some(true),
        "face to face" => Some(false),
        _ => None,
    }
}

fn bearing(part: &str, system: System, back_to_back: bool) -> Result<ShaftBearing, AlongError> {
    let wrong = || AlongError::NoBearing(part.to_owned());
    let lower = part.to_ascii_lowercase().replace([':', '='], " ");
    let words: Vec<&str> = lower.split_whitespace().collect();
    let kind = words.iter().position(|word| kind_of(word).is_some()).ok_or_else(wrong)?;
    let (before, after) = words.split_at_checked(kind).ok_or_else(wrong)?;
    let (kind, after) = after.split_first().ok_or_else(wrong)?;
    let (rolling, taper) = match kind_of(kind).ok_or_else(wrong)? {
        Kind::Taper => {
            let after = after.strip_prefix(&["roller"]).or_else(|| after.strip_prefix(&["rollers"])).unwrap_or(after);
            (Rolling::Rollers, Some(cone(after, back_to_back).ok_or_else(wrong)?))
        }
        Kind::Rolls(rolling) if after.is_empty() => (rolling, None),
        Kind::Rolls(_) => return Err(wrong()),
    };
    let behind = before.get(1).is_some_and(|word| matches!(*word, "mm" | "in" | "\"" | "inch"));
    let (at, rating) = before.split_at_checked(if behind { 2 } else { 1 }).ok_or_else(wrong)?;
    let mut rating = rating.join(" ").replace("kn", "kN");
    if !rating.contains(char::is_alphabetic) {
        rating.push_str(" kN");
    }
    let rating = Typed::new(rating.as_str(), system).read(&limits::BEARING_RATING).map_err(|_| wrong())?;
    Ok(ShaftBearing { at: place(&at.join(" "), system)?, rating, rolling, taper })
}

/// What a word says of a bearing.
enum Kind {
    Rolls(Rolling),
    Taper,
}

fn kind_of(word: &str) -> Option<Kind> {
    match word.trim_end_matches('s') {
        "ball" => Some(Kind::Rolls(Rolling::Balls)),
        "roller" | "needle" => Some(Kind::Rolls(Rolling::Rollers)),
        "taper" | "tapered" => Some(Kind::Taper),
        _ => None,
    }
}

/// Y and e behind the word, in any order; the usual Y where it is not told.
fn cone(words: &[&str], back_to_back: bool) -> Option<Taper> {
    let (mut axial_factor, mut threshold) = (USUAL_AXIAL_FACTOR, None);
    for pair in words.chunks(2) {
        let [name, value] = pair else { return None };
        let value = number::read_decimal(&value.replace(',', "."))?;
        match *name {
            // Cones of 7° to 45°.
            "y" if (0.4..=3.3).contains(&value) => axial_factor = value,
            "e" if (0.18..=1.5).contains(&value) => threshold = Some(value),
            _ => return None,
        }
    }
    Some(Taper::new(axial_factor, threshold, back_to_back))
}

fn place(typed: &str, system: System) -> Result<Length, AlongError> {
    Typed::new(typed.trim(), system).read(&limits::STATION).map_err(|_| AlongError::Place(typed.trim().to_owned()))
}
