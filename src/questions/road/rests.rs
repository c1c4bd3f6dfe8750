//! What the figures of Road speed rest on: shift rpm, cruise, axle, and what each tyre rolls and how that was got.

use crate::questions::gears::rests::{axle, shift};
use crate::questions::rests::{by_setup, typed, usual};
use crate::questions::short::cruise_text;
use crate::questions::{Analysis, Source};
use crate::sheet::Rest;
use crate::tyre::How;
use crate::units::System;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let mut rests: Vec<Rest> = shift(source).into_iter().collect();
    rests.extend(source.conditions.cruise.map(|_| typed("Cruise at", cruise_text(source))));
    rests.extend(by_setup(source, axle));
    rests.extend(rolling(source));
    rests
}

/// What the tyres roll in one turn.
pub fn rolling(source: Source<'_>) -> Vec<Rest> {
    by_setup(source, |analysis| rolling_of(source, analysis))
}

fn rolling_of(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    let rolling = analysis.setup.rolling.as_ref()?;
    let decimals = if source.reader.units == System::Inch { 2 } else { 0 };
    let value = source.show(&rolling.circumference, decimals);
    let how = rolling.words();
    Some(match rolling.how {
        How::Radial | How::Diagonal | How::Free => usual("Rolling circumference", value, format!("{how}; {}", rolling.how.source())),
        _ => Rest { source: how, ..typed("Rolling circumference", value) },
    })
}
