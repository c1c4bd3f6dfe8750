//! The slope of a shaft as people say it: `3 down`, `2.5 up, 1 right`, `-3`, `level`, `nose 3 up`, `2 1/4 in down`.

use super::{Direction, Lean};
use crate::units::{Angle, Length, System, UnitError, limits, number, read, unit_typed};

mod tokens;

use tokens::Token;

/// How a shaft leans, as typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slope {
    /// In side view; positive where it falls towards the rear.
    pub side: Lean,
    /// In plan view; positive where it runs to the right towards the rear, seen looking forward.
    pub plan: Lean,
}

/// Which end of a shaft its slope is told by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The front: the nose of an axle points up.
    Front,
    /// The rear: a gearbox hangs down.
    Rear,
}

/// Why a text is no slope.
#[derive(Clone, Debug, PartialEq)]
pub enum SlopeError {
    /// A word or a mark that says nothing of a slope: the word.
    NotUnderstood(String),
    /// Up and down, or left and right, of one shaft; or a minus as well as a word: what was typed.
    BothWays(String),
    /// A word for the way and no number: what was typed.
    NoNumber(String),
    /// Two slopes in one view: what was typed.
    Twice(String),
    /// An angle that no driveline has, or an offset that is too long.
    Outside(UnitError),
    /// An offset instead of an angle where there is no length to set it against: what was typed.
    NeedsLength(String),
    /// An offset longer than the shaft: what was typed.
    LongerThanShaft(String),
    /// Not as many slopes as the shaft has pieces.
    Pieces {
        /// The slopes.
        slopes: usize,
        /// The pieces.
        pieces: usize,
    },
}

/// What to type where a text says nothing of a slope.
const AS_DEGREES: &str = "type degrees with up or down, such as 3 down or 2.5 up; add 1 right where it also runs sideways";

explain! { SlopeError:
    Self::NotUnderstood(text) => format!("“{}” is not understood in a slope", number::clip(text)), AS_DEGREES;
    Self::BothWays(text) => format!("“{}” says both ways at once", number::clip(text)), AS_DEGREES;
    Self::NoNumber(text) => format!("“{}” does not say how much", number::clip(text)), AS_DEGREES;
    Self::Twice(text) => format!("“{}” gives two slopes for one shaft", number::clip(text)),
        "type one slope, with right or left behind the sideways one; separate the pieces of a shaft by ;";
    Self::Outside(why) => why.what(), why.what_to_do();
    Self::NeedsLength(text) => format!("“{}” is an offset, not an angle", number::clip(text)),
        "type the angle in degrees, or the length between the joint centres of that shaft";
    Self::LongerThanShaft(text) => format!("“{}” is more than the shaft is long", number::clip(text)),
        "check the offset and the length between joint centres, and their units";
    Self::Pieces { slopes, pieces } =>
        format!("{slopes} {} for a shaft of {pieces} {}", counted(*slopes, ["slope", "slopes"]), counted(*pieces, ["piece", "pieces"])),
        "type a slope for each length, separated by ;";
}

fn counted(many: usize, [one, several]: [&'static str; 2]) -> &'static str {
    if many == 1 { one } else { several }
}

impl Slope {
    /// Where the shaft points, given its length between joint centres where that is known; `typed` is what its slope was read from.
    ///
    /// # Errors
    /// Where an offset has no length to be set against, or is longer.
    pub fn direction(self, length: Option<Length>, typed: &str) -> Result<Direction, SlopeError> {
        let text = || typed.trim().to_owned();
        match (length, self.side, self.plan) {
            (_, Lean::Angle(side), Lean::Angle(plan)) => Ok(Direction::new(side, plan)),
            (None, ..) => Err(SlopeError::NeedsLength(text())),
            (Some(length), side, plan) => Direction::leaning(side, plan, length).ok_or_else(|| SlopeError::LongerThanShaft(text())),
        }
    }
}

/// Reads the slope of one shaft, told by `end`: for a gearbox `3 down` is its rear, for an axle `3 up` its nose, and both fall towards the
/// rear. A bare number falls, or runs to the right behind a slope in side view; below nothing it rises.
///
/// # Errors
/// For a text that is no slope, with what was typed.
pub fn read_one(text: &str, end: End) -> Result<Slope, SlopeError> {
    let whole = || text.trim().to_owned();
    let parts = parts_of(text)?;
    let (mut side, mut plan) = (None, None);
    for part in &parts {
        let Some(lean) = part.lean(text, end)? else {
            let is_told = parts.iter().any(|other| other.number.is_some() && other.is_sideways() == part.is_sideways());
            return Err(if is_told && part.way.is_some() { SlopeError::BothWays(whole()) } else { SlopeError::NoNumber(whole()) });
        };
        let view = if part.is_sideways() { &mut plan } else { &mut side };
        if view.replace(lean).is_some() {
            return Err(SlopeError::Twice(whole()));
        }
    }
    if side.is_none() && plan.is_none() {
        return Err(SlopeError::NoNumber(whole()));
    }
    let level = Lean::Angle(Angle::default());
    Ok(Slope { side: side.unwrap_or(level), plan: plan.unwrap_or(level) })
}

/// The words of a text, those of one view together.
fn parts_of(text: &str) -> Result<Vec<Part>, SlopeError> {
    let mut parts: Vec<Part> = Vec::new();
    for token in tokens::of(text).map_err(SlopeError::NotUnderstood)? {
        if parts.last_mut().and_then(|part| part.take(&token)).is_none() {
            let mut part = Part::default();
            part.take(&token).ok_or_else(|| SlopeError::NotUnderstood(token.typed()))?;
            parts.push(part);
        }
    }
    Ok(parts)
}

/// Reads the slopes of the pieces of a shaft, separated by semicolons, each told by its rear end.
///
/// # Errors
/// For the first that cannot be read, with what was typed of it.
pub fn read_pieces(text: &str) -> Result<Vec<Slope>, SlopeError> {
    let parts = text.split(';').map(str::trim).filter(|part| !part.is_empty());
    parts.map(|part| read_one(part, End::Rear)).collect()
}

/// What was typed of one view.
#[derive(Clone, Debug, Default, PartialEq)]
struct Part {
    number: Option<String>,
    unit: Option<String>,
    way: Option<tokens::Way>,
    end: Option<End>,
    is_level: bool,
}

impl Part {
    /// Takes a token that still belongs to this part; none where it begins the next.
    fn take(&mut self, token: &Token) -> Option<()> {
        match token {
            Token::Number(typed) => match &mut self.number {
                // The quarter of 2 1/4.
                Some(whole) if typed.contains('/') && !whole.contains(['/', '.', ',']) && self.unit.is_none() && self.way.is_none() => {
                    *whole = format!("{whole} {typed}");
                }
                Some(_) => return None,
                None if self.is_level => return None,
                None => self.number = Some(typed.clone()),
            },
            Token::Unit(typed) => match (&self.number, &self.unit) {
                (Some(_), None) => self.unit = Some(typed.clone()),
                _ => return None,
            },
            Token::Way(way) if self.way.is_none() && !self.is_level => self.way = Some(*way),
            Token::End(end) if self.end.is_none() => self.end = Some(*end),
            Token::Level if *self == Self::default() => self.is_level = true,
            Token::Way(_) | Token::End(_) | Token::Level => return None,
        }
        Some(())
    }

    fn is_sideways(&self) -> bool {
        self.way.is_some_and(tokens::Way::is_sideways)
    }

    /// How the shaft leans in this view; none where no number says how much.
    fn lean(&self, text: &str, end: End) -> Result<Option<Lean>, SlopeError> {
        if self.is_level {
            return Ok(Some(Lean::Angle(Angle::default())));
        }
        let Some(typed) = &self.number else { return Ok(None) };
        if self.way.is_some() && typed.starts_with(['-', '−']) {
            return Err(SlopeError::BothWays(text.trim().to_owned()));
        }
        let end = self.end.unwrap_or(if self.is_sideways() { End::Rear } else { end });
        let sign = self.way.map_or(1.0, |way| way.sign(end));
        let quantity = format!("{typed} {}", self.unit.as_deref().unwrap_or(""));
        let lean = if self.unit.is_some() && unit_typed::<Length>(&quantity, System::Inch).is_some() {
            read(&quantity, System::Inch, &limits::JOINT_OFFSET).map(|offset| Lean::Offset(offset * sign))
        } else {
            read(&quantity, System::Inch, &limits::SLOPE).map(|angle| Lean::Angle(angle * sign))
        };
        lean.map(Some).map_err(SlopeError::Outside)
    }
}
