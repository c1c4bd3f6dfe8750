//! The grammar of what is moulded on a sidewall or written in an old manual.
//!
//! Families are tried one after the other; where none takes the whole text, the one that came farthest tells which part was not
//! understood. What stands behind the size is in `tail`, the oldest families in `early`.

use winnow::ascii::{digit1, space0, space1};
use winnow::combinator::{alt, delimited, eof, not, opt, preceded, terminated};
use winnow::error::ContextError;
use winnow::prelude::*;
use winnow::token::one_of;

use super::early::{beaded_inch, beaded_metric, dual};
use super::size::{Commercial, Construction, Form, Hundredths, Prefix, Rim, Service, Size};
use super::tail::{tail, words};

/// Where reading stopped.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Stuck {
    /// The part that was not understood, in capitals; empty where the text ended too early.
    pub(super) rest: String,
    /// Examples of the families that came farthest.
    pub(super) nearest: Vec<&'static str>,
}

/// A size, and the words behind it that say nothing of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Sidewall {
    pub(super) size: Size,
    /// In capitals; empty where there are none.
    pub(super) passed_over: String,
}

type Family = fn(&mut &str) -> winnow::Result<Size>;

const FAMILIES: [(&str, Family); 8] = [
    ("31x10.50R15LT", flotation),
    ("185/70R14", metric),
    ("165R13", metric_without_aspect),
    ("E78-14 or GR70-15", alpha),
    ("6.00-16", numeric),
    ("6.00/6.50-16", dual),
    ("710x90", beaded_metric),
    ("30x3 1/2", beaded_inch),
];

pub(super) fn size(text: &str) -> Result<Sidewall, Stuck> {
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

fn whole<'s>(mut family: Family) -> impl Parser<&'s str, Sidewall, ContextError> {
    move |input: &mut &'s str| {
        let text = *input;
        let size = family.parse_next(input)?;
        let commercial = commercial(input)?;
        let service = tail(input)?;
        let is_apart = text.strip_suffix(*input).is_some_and(|before| before.ends_with(' '));
        let words = opt(words.verify(|_: &str| is_apart)).parse_next(input)?.unwrap_or("");
        eof.parse_next(input)?;
        Ok(with_words(with_service(size, commercial, service), words))
    }
}

/// Puts the words that name the carcass where they belong; the others are passed over.
fn with_words(size: Size, words: &str) -> Sidewall {
    let named = |word: &str| match word.trim_matches(['(', ')', '.']) {
        "RADIAL" | "RADIALS" => Some(Construction::Radial),
        "CROSSPLY" | "CROSS-PLY" | "CROSSPLIES" | "BIAS" | "BIAS-PLY" | "DIAGONAL" => Some(Construction::Diagonal),
        _ => None,
    };
    let construction = words.split(' ').find_map(named).unwrap_or(size.construction);
    let others: Vec<&str> = words.split(' ').filter(|word| named(word).is_none()).collect();
    Sidewall { size: Size { construction, ..size }, passed_over: others.join(" ") }
}

/// The text in capitals, with plain dashes, points and crosses, and no more than one blank at a time.
fn plain(text: &str) -> String {
    let words = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let fractions = words.replace('¼', " 1/4").replace('½', " 1/2").replace('¾', " 3/4").replace("  ", " ");
    let one = |c| match c {
        '×' | '*' => 'X',
        ',' => '.',
        '–' | '—' | '−' | '‐' | '‑' => '-',
        '\\' => '/',
        c => c.to_ascii_uppercase(),
    };
    fractions.chars().map(one).collect()
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
    // Wider ones name their aspect ratio: 400-19 is 4.00-19 without its point.
    let narrow = width_mm.verify(|width| *width <= 295);
    let (prefix, width_mm) = (opt(terminated(prefix, space0)), narrow).parse_next(input)?;
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
    let inches = alt((terminated(hundredths, not(one_of('0'..='9'))).verify(|w| w.0 < 2_000), pointless));
    // Below 4 in a width has its point or three digits: 3.50-19, 350-19, and not 3-19.
    let (width, _) = inches
        .with_taken()
        .verify(|(width, taken): &(Hundredths, &str)| (400..=1_400).contains(&width.0) || (width.0 >= 200 && taken.len() > 2))
        .parse_next(input)?;
    let (early_speed, construction) = joint(Construction::Diagonal, input)?;
    if width.0 < 400 && construction == Construction::Radial {
        return Err(ContextError::new());
    }
    sized(None, Form::Numeric { width }, construction, early_speed, input)
}

pub(super) fn sized(
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

/// The construction letter or sign before the rim, with an old speed letter before it; `usual` where only a blank, a cross or that
/// speed letter parts them.
pub(super) fn joint(usual: Construction, input: &mut &str) -> winnow::Result<(Option<char>, Construction)> {
    let early = opt(preceded(space0, one_of(['H', 'N', 'P', 'Q', 'S', 'T', 'U', 'V', 'W', 'Y', 'Z']))).parse_next(input)?;
    let letter = alt(('R'.value(Construction::Radial), 'B'.value(Construction::BiasBelted), 'D'.value(Construction::Diagonal)));
    // 185/70R-14 and 185/70-R14 are written too.
    let lettered = delimited(opt('-'), letter, opt('-'));
    let sign = alt((lettered, '-'.value(Construction::Diagonal), one_of(['X', '/']).value(usual)));
    let gap = space1.value(usual);
    let joined = opt(alt(((space0, sign, space0).map(|(_, sign, _)| sign), gap))).parse_next(input)?;
    // 165S13, 5.20S13: the letters that stood there alone.
    let alone = || matches!(early, Some('S' | 'H' | 'V')).then_some(usual);
    let construction = joined.or_else(alone).ok_or_else(ContextError::new)?;
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

fn percent<'s>(least: u8, greatest: u8) -> impl Parser<&'s str, u8, ContextError> {
    digit1
        .verify(|digits: &str| digits.len() <= 3)
        .verify_map(move |digits: &str| digits.parse::<u8>().ok().filter(|percent| (least..=greatest).contains(percent)))
}

/// A whole number of exactly so many digits.
pub(super) fn digits<'s>(count: usize) -> impl Parser<&'s str, u16, ContextError> {
    digit1.verify_map(move |digits: &str| if digits.len() == count { digits.parse().ok() } else { None })
}

/// A number of at most two digits before and two behind the point.
pub(super) fn hundredths(input: &mut &str) -> winnow::Result<Hundredths> {
    let behind = opt(preceded('.', digit1.verify(|digits: &str| digits.len() <= 2)));
    let value = |(whole, behind): (&str, Option<&str>)| {
        let hundredths: u16 = format!("{:0<2}", behind.unwrap_or("")).parse().ok()?;
        Some(Hundredths(whole.parse::<u16>().ok()? * 100 + hundredths))
    };
    (digit1.verify(|digits: &str| digits.len() <= 2), behind).verify_map(value).parse_next(input)
}
