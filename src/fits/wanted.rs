//! What people write for what they want: a range of play or clearance (`0.002 to 0.006`, `preload 2-4 thou`), a fit (`H7/g6`).

use super::error::FitTextError;
use super::iso286::Code;
use super::seat::Wanted;
use super::shims::PlayRange;
use super::token::{Measure, Token, measure, tokens};
use crate::units::{Length, Limits, Typed, limits};

/// Words that turn a range round: what they name is the opposite of play.
const BELOW: [&str; 6] = ["preload", "nip", "interference", "press", "tight", "shrink"];

/// Reads the range of play wanted: two ends, or a middle and how far off it may be. `preload`, `nip` or a minus makes it preload.
///
/// A bare end takes the unit of the other.
///
/// # Errors
/// When the text is no range, or an end lies outside what end play can be.
pub fn play(typed: &Typed) -> Result<PlayRange, FitTextError> {
    range(typed, &limits::PLAY, || FitTextError::NoRange(typed.text.trim().to_owned()))
}

/// Reads the fit wanted: a code of ISO 286, or a range of clearance, in which `interference`, `press` or a minus makes it interference.
///
/// # Errors
/// When it is neither, the code is not known, or an end lies outside what a clearance can be.
pub fn fit(typed: &Typed) -> Result<Wanted, FitTextError> {
    let text = typed.text.trim();
    if is_code(text) {
        return Code::read(text).map(Wanted::Code).map_err(FitTextError::Code);
    }
    range(typed, &limits::CLEARANCE, || FitTextError::NoFit(text.to_owned())).map(Wanted::Range)
}

/// Whether a text begins as a code does: a letter or two, then a figure.
fn is_code(text: &str) -> bool {
    let letters = text.chars().take_while(char::is_ascii_alphabetic).count();
    (1..=2).contains(&letters) && text.chars().nth(letters).is_some_and(|c| c.is_ascii_digit())
}

fn range(typed: &Typed, limits: &Limits<Length>, none: impl Fn() -> FitTextError) -> Result<PlayRange, FitTextError> {
    let text = typed.text.trim();
    let tokens = tokens(text);
    let is_turned = text.to_lowercase().split(|c: char| !c.is_alphabetic()).any(|word| BELOW.contains(&word));
    let ends = ends(&tokens);
    let [(first_below, first), (second_below, second)] = ends.as_slice() else { return Err(none()) };
    let wrong = |why| FitTextError::Quantity { line: text.to_owned(), why };
    let read = |below: bool, measure: &Measure, other: &Measure| {
        let sign = if below || is_turned { "-" } else { "" };
        let signed = Measure { figure: format!("{sign}{}", measure.figure), unit: measure.unit };
        signed.read(other.unit, typed.units, limits).map_err(wrong)
    };
    let (one, other) = (read(*first_below, first, second)?, read(*second_below, second, first)?);
    if tokens.contains(&Token::PlusMinus) {
        let off = other.abs();
        return Ok(PlayRange { least: one - off, greatest: one + off });
    }
    Ok(PlayRange { least: one.min(other), greatest: one.max(other) })
}

/// The figures of a range, each with whether a minus makes it less than nothing.
fn ends(tokens: &[Token]) -> Vec<(bool, Measure)> {
    let mut ends: Vec<(bool, Measure)> = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let Some((measure, next)) = measure(tokens, at) else {
            at += 1;
            continue;
        };
        // The dash of `2-6` stands between the ends; that of `-0.05` before the first figure, or behind `to`.
        let before = at.checked_sub(1).and_then(|at| tokens.get(at));
        let two_before = at.checked_sub(2).and_then(|at| tokens.get(at));
        let is_below = before == Some(&Token::Minus) && !matches!(two_before, Some(Token::Number(_) | Token::Unit(_)));
        ends.push((is_below, measure));
        at = next;
    }
    ends
}
