//! The grammar of the oldest sizes and of tyres that serve for two: `710x90`, `30x3 1/2`, `6.00/6.50-16`.

use winnow::ascii::{space0, space1};
use winnow::combinator::{alt, not, separated_pair};
use winnow::error::ContextError;
use winnow::prelude::*;
use winnow::token::one_of;

use super::grammar::{digits, hundredths, joint, sized};
use super::size::{Construction, Form, Hundredths, Service, Size, rim_left};

/// `710x90`: millimetres, which no inch size reaches.
pub(super) fn beaded_metric(input: &mut &str) -> winnow::Result<Size> {
    let diameter_mm = alt((digits(3), digits(4))).verify(|mm| (500..=1_100).contains(mm)).parse_next(input)?;
    (space0, 'X', space0).parse_next(input)?;
    let width_mm = alt((digits(3), digits(2))).verify(|mm| (55..=190).contains(mm)).parse_next(input)?;
    without_rim(Form::BeadedMetric { diameter_mm, width_mm })
}

/// `30x3 1/2`, `30x3.5`, `28x3`: the width in quarters of an inch, and nothing of a rim behind it.
pub(super) fn beaded_inch(input: &mut &str) -> winnow::Result<Size> {
    let diameter = digits(2).verify(|inches| (20..=42).contains(inches)).map(|inches| Hundredths(100 * inches)).parse_next(input)?;
    (space0, 'X', space0).parse_next(input)?;
    let width = alt((in_quarters, hundredths)).verify(|w| (200..=800).contains(&w.0) && w.0.is_multiple_of(25)).parse_next(input)?;
    not((space0, one_of(|c: char| c.is_ascii_digit() || matches!(c, '-' | 'X' | '/' | '.')))).parse_next(input)?;
    without_rim(Form::BeadedInch { diameter, width })
}

/// `3 1/2` or `3-1/2`.
fn in_quarters(input: &mut &str) -> winnow::Result<Hundredths> {
    let apart = alt((space1.void(), '-'.void()));
    separated_pair(digits(1), apart, fraction).map(|(whole, part)| Hundredths(100 * whole + part)).parse_next(input)
}

/// A quarter, a half or three quarters, in hundredths.
fn fraction(input: &mut &str) -> winnow::Result<u16> {
    alt(("1/4".value(25), "1/2".value(50), "3/4".value(75))).parse_next(input)
}

fn without_rim(form: Form) -> winnow::Result<Size> {
    let rim = rim_left(form).ok_or_else(ContextError::new)?;
    Ok(Size { prefix: None, form, construction: Construction::Diagonal, early_speed: None, rim, service: Service::default() })
}

/// `6.00/6.50-16`: the second width is larger by no more than a step between sizes.
pub(super) fn dual(input: &mut &str) -> winnow::Result<Size> {
    let inches = || hundredths.verify(|width| (400..=1_400).contains(&width.0));
    let first: Hundredths = inches().parse_next(input)?;
    (space0, one_of(['/', '-']), space0).parse_next(input)?;
    let second = inches().verify(|second| (1..=75).contains(&second.0.saturating_sub(first.0))).parse_next(input)?;
    let (early_speed, construction) = joint(Construction::Diagonal, input)?;
    sized(None, Form::Dual { first, second }, construction, early_speed, input)
}
