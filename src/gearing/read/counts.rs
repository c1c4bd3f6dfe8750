//! Tooth counts as they are typed: one, or two with one mark between them.

use std::fmt;

use super::GearTextError;
use crate::gearing::teeth::Teeth;

/// Two tooth counts in the order typed, parted by one mark (a slash, colon, comma, dash, x or ×) or by blanks.
///
/// A point parts them too, as a number pad without a slash types it (`37.18`), where both sides have two digits or three;
/// whether the text could be a ratio as well is for the caller to say, and [`point_for_slash`] tells what was taken.
///
/// # Errors
/// When there are not two counts with one mark between them, or one is outside 8 to 150.
pub fn counts(text: &str) -> Result<(Teeth, Teeth), GearTextError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(GearTextError::Blank);
    }
    let Parted { first, second, .. } = parted(text).ok_or_else(|| GearTextError::NotAPair(text.to_owned()))?;
    Ok((teeth(first)?, teeth(second)?))
}

/// One tooth count.
///
/// # Errors
/// When it is no whole number from 8 to 150.
pub fn count(text: &str) -> Result<Teeth, GearTextError> {
    match text.trim() {
        "" => Err(GearTextError::Blank),
        digits if is_digits(digits) => teeth(digits),
        other => Err(GearTextError::NotACount(other.to_owned())),
    }
}

/// Two counts that were taken from a text whose mark also parts decimals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct PointForSlash {
    /// The first count.
    pub first: Teeth,
    /// The count behind the mark.
    pub second: Teeth,
}

impl fmt::Display for PointForSlash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "taken as {}/{}", self.first, self.second)
    }
}

/// What was taken where counts are typed with a point or comma between them: `37.18` is taken as 37/18.
///
/// To be asked of a text that was read as counts; `None` where another mark parts them, or where they are no counts.
pub fn point_for_slash(text: &str) -> Option<PointForSlash> {
    let (first, second) = counts(text).ok()?;
    parted(text.trim())?.is_decimal_mark().then_some(PointForSlash { first, second })
}

/// Two runs of digits and what stands between them.
pub(super) struct Parted<'a> {
    pub(super) first: &'a str,
    pub(super) second: &'a str,
    mark: Option<char>,
}

impl Parted<'_> {
    /// Whether the mark between them also parts decimals.
    pub(super) fn is_decimal_mark(&self) -> bool {
        matches!(self.mark, Some('.' | ','))
    }
}

/// Two runs of digits with one mark between them, or blanks alone.
pub(super) fn parted(text: &str) -> Option<Parted<'_>> {
    let (first, rest) = text.split_at_checked(text.find(|c: char| !c.is_ascii_digit())?)?;
    let between = rest.trim_start();
    let mark = between.chars().next().filter(|c| is_mark(*c));
    let second = match mark {
        Some(mark) => between.strip_prefix(mark)?.trim_start(),
        None => between,
    };
    let is_apart = mark.is_some() || between.len() < rest.len();
    let is_tight = || rest.len() == second.len() + 1 && [first, second].iter().all(|digits| (2..=3).contains(&digits.len()));
    let is_pair = is_digits(first) && is_digits(second) && is_apart && (mark != Some('.') || is_tight());
    is_pair.then_some(Parted { first, second, mark })
}

fn is_mark(c: char) -> bool {
    matches!(c, '/' | '\\' | ':' | ',' | '.' | '-' | '–' | '×' | 'x' | 'X')
}

fn is_digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit())
}

fn teeth(digits: &str) -> Result<Teeth, GearTextError> {
    digits.parse().ok().and_then(Teeth::new).ok_or_else(|| GearTextError::Count(digits.to_owned()))
}
