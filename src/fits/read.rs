//! What people write: a stack, a part a line (`case depth 112.40 ±0.02`, `- thrust washer 3.05 x2`), and what is left in a kit of shims
//! (`0.10 x3, 0.15, 0.20 x2`).

use super::error::FitTextError;
use super::shims::{self, MOST_SIZES, Shim};
use super::stack::{Part, Stack};
use super::token::{Measure, Token, measure, tokens};
use crate::units::{Length, Measured, Typed, limits, number};

/// Reads a stack, a part a line or parted by semicolons; a blank text is an empty one.
///
/// A part with a minus before its name or its length takes room up, one with a plus makes it. Where no line has a minus, the first is the
/// space and all others without a plus are taken off it; where one has, what has no sign makes room.
///
/// # Errors
/// Every line that cannot be read, and a stack in which nothing makes room; the lines that can be read are answered beside them.
pub fn stack(typed: &Typed) -> (Stack, Vec<FitTextError>) {
    let lines = typed.text.split(['\n', ';']).map(str::trim).filter(|line| !line.is_empty());
    let (mut signs, mut stack, mut errors) = (Vec::new(), Stack::default(), Vec::new());
    for line in lines {
        match part(line, typed) {
            Ok((sign, part)) => {
                signs.push(sign);
                stack.parts.push(part);
            }
            Err(why) => errors.push(why),
        }
    }
    let has_minus = signs.contains(&Some(false));
    for (at, (part, sign)) in stack.parts.iter_mut().zip(&signs).enumerate() {
        part.makes_room = sign.unwrap_or(has_minus || at == 0);
        if part.name.is_empty() {
            part.name = format!("part {}", at + 1);
        }
    }
    if errors.is_empty() && !stack.parts.is_empty() && !stack.parts.iter().any(|part| part.makes_room) {
        errors.push(FitTextError::NothingMakesRoom);
    }
    (stack, errors)
}

/// One part, and whether it was typed with a plus (`true`) or a minus.
fn part(line: &str, typed: &Typed) -> Result<(Option<bool>, Part), FitTextError> {
    let mut tokens = tokens(line);
    let count = tokens.iter().find_map(|token| if let Token::Times(times) = token { Some(*times) } else { None }).unwrap_or(1);
    tokens.retain(|token| !matches!(token, Token::Times(_)));
    let cut = tokens.iter().position(|token| *token == Token::PlusMinus);
    let off = cut.and_then(|at| measure(&tokens, at + 1)).map(|(measure, _)| measure);
    if cut.is_some() && off.is_none() {
        return Err(FitTextError::NoLength(line.to_owned()));
    }
    tokens.truncate(cut.unwrap_or(tokens.len()));
    let (length, range) = length_of(&tokens, line)?;
    let sign = tokens.first().and_then(sign).or_else(|| range.start.checked_sub(1).and_then(|at| tokens.get(at)).and_then(sign));
    let name = tokens.iter().enumerate().filter(|(at, _)| !range.contains(at)).filter_map(|(_, token)| word(token));
    let name = name.collect::<Vec<_>>().join(" ").trim_matches([':', ',', '=', ' ']).to_owned();
    // A bare length takes the unit behind its tolerance where that is one of lengths: `112.40 ±0.02 mm`, but not `4.425 ±2 thou`.
    let shared = off.as_ref().and_then(|off| off.unit).filter(|unit| matches!(*unit, "mm" | "in" | "cm"));
    let wrong = |why| FitTextError::Quantity { line: line.to_owned(), why };
    let read = length.read(shared, typed.units, &limits::STACK_LENGTH).map_err(wrong)?;
    let tolerance = match &off {
        Some(off) => off.read(length.unit, typed.units, &limits::STACK_TOLERANCE).map_err(wrong)?,
        None => Length::default(),
    };
    Ok((sign, Part { name, length: read, tolerance, count, makes_room: true }))
}

/// The length of a line: its last figure where the line ends with one, else its first or only one; and where it stands.
fn length_of(tokens: &[Token], line: &str) -> Result<(Measure, std::ops::Range<usize>), FitTextError> {
    let mut found: Vec<(Measure, std::ops::Range<usize>)> = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        match measure(tokens, at) {
            Some((measure, next)) => {
                found.push((measure, at..next));
                at = next;
            }
            None => at += 1,
        }
    }
    let with_unit = found.iter().filter(|(measure, _)| measure.unit.is_some()).count();
    if with_unit > 1 {
        return Err(FitTextError::TwoLengths(line.to_owned()));
    }
    let begins = |(_, range): &(Measure, std::ops::Range<usize>)| tokens.iter().take(range.start).all(|token| word(token).is_none());
    let place = match found.as_slice() {
        [] => None,
        _ if with_unit == 1 => found.iter().position(|(measure, _)| measure.unit.is_some()),
        [.., (_, last)] if last.end == tokens.len() => Some(found.len() - 1),
        [first, ..] if begins(first) => Some(0),
        [_] => Some(0),
        _ => None,
    };
    place.map(|at| found.swap_remove(at)).ok_or_else(|| FitTextError::NoLength(line.to_owned()))
}

/// Whether a sign makes room.
fn sign(token: &Token) -> Option<bool> {
    match token {
        Token::Plus => Some(true),
        Token::Minus => Some(false),
        _ => None,
    }
}

/// What a token says in a name.
fn word(token: &Token) -> Option<&str> {
    match token {
        Token::Number(text) | Token::Word(text) => Some(text),
        Token::Unit(symbol) => Some(symbol),
        Token::To => Some("to"),
        Token::Times(_) | Token::PlusMinus | Token::Minus | Token::Plus => None,
    }
}

/// Reads a kit of shims: thicknesses with how many are left of each (one where that is not said), parted by commas, semicolons, blanks or
/// lines. A bare figure takes the next unit behind it. The same size twice is one size.
///
/// # Errors
/// Every word that is no thickness; the sizes that can be read are answered beside them.
pub fn kit(typed: &Typed) -> (Vec<Shim>, Vec<FitTextError>) {
    let tokens = tokens(&parted(&typed.text));
    let (mut kit, mut errors): (Vec<Shim>, Vec<FitTextError>) = (Vec::new(), Vec::new());
    let mut at = 0;
    while at < tokens.len() {
        let Some((measure, next)) = measure(&tokens, at) else {
            errors.extend(tokens.get(at).and_then(stray));
            at += 1;
            continue;
        };
        let left = if let Some(Token::Times(left)) = tokens.get(next) { Some(*left) } else { None };
        at = next + usize::from(left.is_some());
        let behind = tokens.iter().skip(at).find_map(|token| if let Token::Unit(unit) = token { Some(*unit) } else { None });
        match measure.read(behind, typed.units, &limits::SHIM) {
            Ok(thickness) => shims::lay(&mut kit, Shim { label: label(&measure, behind, typed), thickness, left: left.unwrap_or(1) }),
            Err(why) => errors.push(FitTextError::Quantity { line: measure.text(behind), why }),
        }
    }
    if kit.len() > MOST_SIZES {
        kit.truncate(MOST_SIZES);
        errors.push(FitTextError::TooManySizes(MOST_SIZES));
    }
    (kit, errors)
}

/// A list in which commas part nothing but sizes: where figures have decimal commas, only a comma before a blank parts.
fn parted(text: &str) -> String {
    if text.contains('.') || text.contains(';') && !text.contains(',') {
        text.replace([',', ';'], " ")
    } else {
        text.replace(", ", " ").replace(';', " ")
    }
}

/// What stands in a kit and is neither thickness nor count; small words are passed over.
fn stray(token: &Token) -> Option<FitTextError> {
    match token {
        Token::Word(word) if !matches!(word.to_lowercase().as_str(), "and" | "of" | "shim" | "shims" | "left") => {
            Some(FitTextError::NoShim(word.clone()))
        }
        _ => None,
    }
}

/// What stands on the bag: the figure as typed, with its unit.
fn label(measure: &Measure, behind: Option<&'static str>, typed: &Typed) -> String {
    let unit = measure.unit.or(behind).unwrap_or(Length::usual(typed.units).symbol);
    format!("{} {unit}", number::clip(&measure.figure))
}
