//! The grammar of what is moulded on a sidewall or written in an old manual.
//!
//! Five families are tried; where none takes the whole text, the one that came farthest tells which part was not understood.
//! What stands behind the size is in `tail`.

use winnow::ascii::{digit1, space0, space1};
use winnow::combinator::{alt, eof, not, opt, preceded, terminated};
use winnow::prelude::*;
use winnow::token::one_of;

use super::size::{Commercial, Construction, Form, Hundredths, Prefix, Rim, Service, Size};
use super::tail::tail;

/// Where reading stopped.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Stuck {
    /// The part that was not understood, in capitals; empty where the text ended too early.
    pub(super) rest: String,
    /// Examples of the families that came farthest.
    pub(super) nearest: Vec<&'static str>,
}

type Family = fn(&mut &str) -> winnow::Result<Size>;

const FAMILIES: [(&str, Family); 5] = [
    ("31x10.50R15LT", flotation),
    ("185/70R14", metric),
    ("165R13", metric_without_aspect),
    ("E78-14 or GR70-15", alpha),
    ("6.00-16", numeric),
];

/// Reads a size.
pub(super) fn size(text: &str) -> Result<Size, Stuck> {
    let text = plain(text);
    let mut farthest = 0;
    let mut nearest = Vec::new();
    for (example, family) in FAMILIES {
        match whole(family).parse(text.as_str()) {
            Ok(size) => return Ok(size),
            Err(stuck) if stuck.offset() > farthest => (farthest, nearest) = (stuck.offset(), vec![example]),
            Err(stuck) if stuck.offset() == farthest => nearest.push(example),
            Err(_) => {}
        }
    }
    // One letter that fits is chance, not a size begun.
    if farthest < 2 {
        (farthest, nearest) = (0, FAMILIES.map(|(example, _)| example).to_vec());
    }
    Err(Stuck { rest: text.get(farthest..).unwrap_or("").trim().to_owned(), nearest })
}

fn whole<'s>(mut family: Family) -> impl Parser<&'s str, Size, winnow::error::ContextError> {
    move |input: &mut &'s str| {
        let size = family.parse_next(input)?;
        let commercial = commercial(input)?;
        let service = tail(input)?;
        eof.parse_next(input)?;
        Ok(with_service(size, commercial, service))
    }
}

/// The text in capitals, with plain dashes, points and crosses, and no more than one blank at a time.
fn plain(text: &str) -> String {
    let words = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let one = |c| match c {
        '×' | '*' => 'X',
        ',' => '.',
        '–' | '—' | '−' | '‐' | '‑' => '-',
        '\\' => '/',
        c => c.to_ascii_uppercase(),
    };
    words.chars().map(one).collect()
}

/// Puts the parts behind a size where they belong: on a light-truck or inch size a lone letter, or a C, is the load range.
fn with_service(size: Size, commercial: Option<Commercial>, service: Service) -> Size {
    let size = Size { service: Service { commercial, ..service }, ..size };
    let by_range = matches!(size.form, Form::Flotation { .. } | Form::Alpha { .. })
        || matches!(size.prefix, Some(Prefix::LightTruck | Prefix::Trailer));
    let mut service = size.service;
    if by_range && commercial == Some(Commercial::C) && service.load_range.is_none() {
        service = Service { commercial: None, load_range: Some('C'), ..service };
    }
    let takes_range = by_range || size.is_light_truck() || matches!(size.form, Form::Numeric { .. });
    if let (true, false, Some(letter @ 'B'..='N'), None, None) =
        (takes_range, service.beyond, service.speed, service.load_index, service.load_range)
    {
        service = Service { speed: None, load_range: Some(letter), ..service };
    }
    if (service.speed, service.load_index, service.beyond) == (Some('C'), None, false) {
        service = Service { speed: None, commercial: Some(Commercial::C), ..service };
    }
    Size { service, ..size }
}

fn metric(input: &mut &str) -> winnow::Result<Size> {
    let (prefix, width_mm) = (opt(terminated(prefix, space0)), width_mm).parse_next(input)?;
    let after_slash = preceded((space0, '/', space0), percent(20, 100));
    // Parted otherwise, a number that can be a rim is one: 165-23 is no 23 series.
    let after_gap = preceded(gap, percent(31, 100));
    let aspect_percent = Some(alt((after_slash, after_gap)).parse_next(input)?);
    let (early_speed, construction) = joint(Construction::Radial, input)?;
    sized(prefix, Form::Metric { width_mm, aspect_percent }, construction, early_speed, input)
}

fn metric_without_aspect(input: &mut &str) -> winnow::Result<Size> {
    let (prefix, width_mm) = (opt(terminated(prefix, space0)), width_mm).parse_next(input)?;
    let (early_speed, construction) = joint(Construction::Radial, input)?;
    sized(prefix, Form::Metric { width_mm, aspect_percent: None }, construction, early_speed, input)
}

fn flotation(input: &mut &str) -> winnow::Result<Size> {
    let diameter = hundredths.verify(|d| (1_800..=5_400).contains(&d.0)).parse_next(input)?;
    (space0, one_of(['X', '/']), space0).parse_next(input)?;
    let width = hundredths.verify(|w| (500..=2_500).contains(&w.0)).parse_next(input)?;
    let (early_speed, construction) = joint(Construction::Radial, input)?;
    sized(None, Form::Flotation { diameter, width }, construction, early_speed, input)
}

fn alpha(input: &mut &str) -> winnow::Result<Size> {
    let letter = one_of('A'..='N').parse_next(input)?;
    let radial = preceded(space0, opt('R')).parse_next(input)?.is_some();
    let series_percent = preceded((space0, opt('-'), space0), percent(45, 83)).parse_next(input)?;
    let (_, joined) = joint(Construction::Diagonal, input)?;
    let construction = if radial { Construction::Radial } else { joined };
    sized(None, Form::Alpha { letter, series_percent }, construction, None, input)
}

fn numeric(input: &mut &str) -> winnow::Result<Size> {
    // Manuals leave the point out: 600-16, 520x10.
    let pointless = digits(3).map(Hundredths);
    let width = alt((terminated(hundredths, not(one_of('0'..='9'))).verify(|w| w.0 < 2_000), pointless))
        .verify(|w| (400..=1_400).contains(&w.0))
        .parse_next(input)?;
    let (early_speed, construction) = joint(Construction::Diagonal, input)?;
    sized(None, Form::Numeric { width }, construction, early_speed, input)
}

fn sized(
    prefix: Option<Prefix>,
    form: Form,
    construction: Construction,
    early_speed: Option<char>,
    input: &mut &str,
) -> winnow::Result<Size> {
    let rim = rim(input)?;
    Ok(Size { prefix, form, construction, early_speed, rim, service: Service::default() })
}

fn prefix(input: &mut &str) -> winnow::Result<Prefix> {
    alt((
        "LT".value(Prefix::LightTruck),
        "ST".value(Prefix::Trailer),
        "P".value(Prefix::Passenger),
        one_of(['T', 'S']).value(Prefix::Temporary),
    ))
    .parse_next(input)
}

/// What parts width and aspect ratio where it is not a slash.
fn gap(input: &mut &str) -> winnow::Result<()> {
    alt(((space0, one_of(['-', 'X']), space0).void(), space1.void())).parse_next(input)
}

/// The construction letter or sign before the rim, with an old speed letter before it; `usual` where only a blank or a cross parts them.
fn joint(usual: Construction, input: &mut &str) -> winnow::Result<(Option<char>, Construction)> {
    let early = opt(preceded(space0, one_of(['H', 'N', 'P', 'Q', 'S', 'T', 'U', 'V', 'W', 'Y', 'Z']))).parse_next(input)?;
    let sign = alt((
        'R'.value(Construction::Radial),
        'B'.value(Construction::BiasBelted),
        one_of(['D', '-']).value(Construction::Diagonal),
        one_of(['X', '/']).value(usual),
    ));
    let gap = space1.value(usual);
    let construction = alt(((space0, sign, space0).map(|(_, sign, _)| sign), gap)).parse_next(input)?;
    Ok((early, construction))
}

fn rim(input: &mut &str) -> winnow::Result<Rim> {
    let millimetres = digits(3).verify(|mm| (200..=650).contains(mm)).map(Rim::Millimetres);
    let code = hundredths.verify(|code| (800..=3_000).contains(&code.0) && code.0.is_multiple_of(50)).map(|code| Rim::Code(code.0 / 10));
    alt((code, millimetres)).parse_next(input)
}

fn commercial(input: &mut &str) -> winnow::Result<Option<Commercial>> {
    let mark = alt(("LT".value(Commercial::Lt), 'C'.value(Commercial::C)));
    opt(preceded(space0, terminated(mark, not(one_of(|c: char| c.is_ascii_alphanumeric()))))).parse_next(input)
}

fn width_mm(input: &mut &str) -> winnow::Result<u16> {
    digits(3).verify(|width| (100..=455).contains(width)).parse_next(input)
}

fn percent<'s>(least: u8, greatest: u8) -> impl Parser<&'s str, u8, winnow::error::ContextError> {
    digit1
        .verify(|digits: &str| digits.len() <= 3)
        .verify_map(move |digits: &str| digits.parse::<u8>().ok().filter(|percent| (least..=greatest).contains(percent)))
}

/// A whole number of exactly so many digits.
fn digits<'s>(count: usize) -> impl Parser<&'s str, u16, winnow::error::ContextError> {
    digit1.verify_map(move |digits: &str| if digits.len() == count { digits.parse().ok() } else { None })
}

/// A number of at most two digits before and two behind the point.
fn hundredths(input: &mut &str) -> winnow::Result<Hundredths> {
    let behind = opt(preceded('.', digit1.verify(|digits: &str| digits.len() <= 2)));
    let value = |(whole, behind): (&str, Option<&str>)| {
        let hundredths: u16 = format!("{:0<2}", behind.unwrap_or("")).parse().ok()?;
        Some(Hundredths(whole.parse::<u16>().ok()? * 100 + hundredths))
    };
    (digit1.verify(|digits: &str| digits.len() <= 2), behind).verify_map(value).parse_next(input)
}
