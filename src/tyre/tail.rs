//! The grammar of what stands behind a size: load index, speed symbol, load range, ply rating, XL, M+S, and words of other kinds.

use winnow::ascii::{digit1, space0, space1};
use winnow::combinator::{alt, delimited, eof, not, opt, peek, preceded, terminated};
use winnow::prelude::*;
use winnow::stream::Stream;
use winnow::token::{one_of, rest};

use super::measurement::belongs;
use super::size::Service;

/// One mark behind the size.
#[derive(Clone, Copy)]
enum Mark {
    Description {
        single: Option<u16>,
        dual: Option<u16>,
        speed: Option<char>,
        beyond: bool,
    },
    LoadRange(char),
    Ply(u8),
    Reinforced,
    Winter,
    /// With or without tube: it changes no figure.
    Tube,
}

/// Every mark up to the end, or to the first that is not understood or says again what was said.
pub(super) fn tail(input: &mut &str) -> winnow::Result<Service> {
    let mut service = Service::default();
    loop {
        let before = input.checkpoint();
        let found = opt(preceded(space0, mark)).parse_next(input)?;
        let Some(fuller) = found.and_then(|mark| taken(service, mark)) else {
            input.reset(&before);
            space0.parse_next(input)?;
            return Ok(service);
        };
        service = fuller;
    }
}

/// The service with one mark more; `None` where that mark is there already.
fn taken(service: Service, mark: Mark) -> Option<Service> {
    match mark {
        // 120/116Q E: the second letter is the load range.
        Mark::Description { single: None, speed: Some(letter @ 'B'..='N'), beyond: false, .. } if service.speed.is_some() => {
            service.load_range.is_none().then_some(Service { load_range: Some(letter), ..service })
        }
        Mark::Description { single, dual, speed, beyond } => {
            let first = (service.load_index.is_none() || single.is_none()) && (service.speed.is_none() || speed.is_none());
            let (load_index, dual_index, speed) = (single.or(service.load_index), dual.or(service.dual_index), speed.or(service.speed));
            first.then_some(Service { load_index, dual_index, speed, beyond: beyond || service.beyond, ..service })
        }
        Mark::LoadRange(letter) => service.load_range.is_none().then_some(Service { load_range: Some(letter), ..service }),
        Mark::Ply(ply) => service.ply.is_none().then_some(Service { ply: Some(ply), ..service }),
        Mark::Reinforced => Some(Service { reinforced: true, ..service }),
        Mark::Winter => Some(Service { winter: true, ..service }),
        Mark::Tube => Some(service),
    }
}

fn mark(input: &mut &str) -> winnow::Result<Mark> {
    let words = alt((
        alt(("M+S", "M&S", "M/S", "MS")).value(Mark::Winter),
        alt(("EXTRA LOAD", "REINFORCED", "REINF", "XL", "RF")).value(Mark::Reinforced),
        alt(("TUBELESS", "TUBE TYPE", "TUBED", "TL", "TT")).value(Mark::Tube),
        preceded((alt(("LOAD RANGE", "LR", "/")), space0), one_of('B'..='N')).map(Mark::LoadRange),
    ));
    alt((terminated(words, word_end), terminated(ply, word_end), bracketed, description)).parse_next(input)
}

fn ply(input: &mut &str) -> winnow::Result<Mark> {
    let rating = alt(("PR", "PLY RATING", "PLY"));
    terminated(number(1, 24), (space0, rating)).verify_map(|ply| u8::try_from(ply).ok().map(Mark::Ply)).parse_next(input)
}

/// `(Y)`, `(104Y)` or `(121/118S)`.
fn bracketed(input: &mut &str) -> winnow::Result<Mark> {
    let indices = opt(terminated((index, opt(preceded('/', index))), space0));
    delimited(('(', space0), (indices, symbol), (space0, ')'))
        .map(|(indices, speed)| {
            let (single, dual) = indices.map_or((None, None), |(single, dual)| (Some(single), dual));
            Mark::Description { single, dual, speed: Some(speed), beyond: true }
        })
        .parse_next(input)
}

/// `88S`, `121/118 S`, `88`, or a lone `S`.
fn description(input: &mut &str) -> winnow::Result<Mark> {
    let lone = terminated(symbol, word_end).map(|speed| (None, None, Some(speed)));
    let dual = opt(preceded((space0, '/', space0), index));
    let speed = opt(terminated(preceded(space0, symbol), word_end));
    let indexed = (peek(digit1), index, dual, speed).map(|(_, single, dual, speed)| (Some(single), dual, speed));
    let (single, dual, speed) = alt((lone, terminated(indexed, alt((space1.void(), eof.void(), peek('(').void()))))).parse_next(input)?;
    Ok(Mark::Description { single, dual, speed, beyond: false })
}

fn index(input: &mut &str) -> winnow::Result<u16> {
    number(0, 279).parse_next(input)
}

fn number<'s>(least: u16, greatest: u16) -> impl Parser<&'s str, u16, winnow::error::ContextError> {
    digit1
        .verify(|digits: &str| digits.len() <= 3)
        .verify_map(move |digits: &str| digits.parse().ok().filter(|n| (least..=greatest).contains(n)))
}

/// A speed symbol: the letters of the table and Z.
fn symbol(input: &mut &str) -> winnow::Result<char> {
    one_of(|c: char| matches!(c, 'B'..='H' | 'J'..='N' | 'P'..='W' | 'Y' | 'Z')).parse_next(input)
}

/// Words that are none of the marks, up to the end: two letters or more each, no digit, none that says what was measured.
///
/// A lone letter is left to be refused: it is a symbol that no tyre has.
pub(super) fn words<'s>(input: &mut &'s str) -> winnow::Result<&'s str> {
    let is_word = |word: &str| {
        let letters = word.chars().filter(|c| c.is_alphabetic()).count();
        let is_sign = letters == 0 && !word.contains(|c: char| c.is_alphanumeric());
        (letters > 1 || is_sign) && !word.contains(|c: char| c.is_numeric()) && !belongs(&word.to_ascii_lowercase())
    };
    let begins = |text: &str| text.starts_with(|c: char| c.is_alphabetic() || c == '(');
    rest.verify(|text: &str| begins(text) && text.split_whitespace().all(is_word)).parse_next(input)
}

/// The mark is not the beginning of a longer word, nor the M of M+S.
fn word_end(input: &mut &str) -> winnow::Result<()> {
    not(one_of(|c: char| c.is_ascii_alphanumeric() || matches!(c, '+' | '&' | '/'))).parse_next(input)
}
