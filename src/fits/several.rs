//! Several lengths in a line: floats read at three places, a dial read round the clock.

use super::clock::Clock;
use super::error::FitTextError;
use super::token::{Token, measure, tokens};
use crate::units::{Length, Limits, Typed};

/// Reads lengths parted by blanks, commas or semicolons, each with a sign where it has one; a bare figure takes the last unit of the line.
///
/// # Errors
/// When something is no length, or lies outside the limits.
pub fn lengths(typed: &Typed, limits: &Limits<Length>) -> Result<Vec<Length>, FitTextError> {
    let spaced = typed.text.replace([';', '\n'], " ").replace(", ", " ");
    let tokens = tokens(&spaced);
    let none = || FitTextError::NoReading(typed.text.trim().to_owned());
    let last_unit = tokens.iter().rev().find_map(|token| if let Token::Unit(unit) = token { Some(*unit) } else { None });
    let mut lengths = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let sign = match tokens.get(at) {
            Some(Token::Minus) => "-",
            Some(Token::Plus) => "+",
            _ => "",
        };
        let (mut read, next) = measure(&tokens, at + sign.len()).ok_or_else(none)?;
        read.figure = format!("{}{}", sign.trim_start_matches('+'), read.figure);
        let wrong = |why| FitTextError::Quantity { line: read.text(last_unit), why };
        lengths.push(read.read(last_unit, typed.units, limits).map_err(wrong)?);
        at = next;
    }
    if lengths.is_empty() { Err(none()) } else { Ok(lengths) }
}

/// Reads a dial at twelve, three, six and nine o'clock.
///
/// # Errors
/// When there are not four readings, or one is no length.
pub fn clock(typed: &Typed, limits: &Limits<Length>) -> Result<Clock, FitTextError> {
    let read = lengths(typed, limits)?;
    let many = read.len();
    read.try_into().map(Clock).map_err(|_| FitTextError::NotFour(many))
}
