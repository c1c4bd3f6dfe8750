//! What the figures of Find rest on: what is given for all setups, axles and tyres; for times and grades the engine and the car too.

use super::Asked;
use crate::finder::Wish;
use crate::questions::gears::rests::{axle, shift};
use crate::questions::rests::{by_setup, typed};
use crate::questions::short::cruise_text;
use crate::questions::{Source, pull, road};
use crate::sheet::Rest;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let (_, asked) = Asked::of_source(source);
    let wishes: &[Wish] = asked.wishes.get(..asked.rows.len()).unwrap_or_default();
    if wishes.is_empty() {
        return Vec::new();
    }
    let mut rests: Vec<Rest> = shift(source).filter(|_| wishes.iter().any(|wish| wish.measure.needs_shift())).into_iter().collect();
    rests.extend(source.conditions.cruise.map(|_| typed("Cruise at", cruise_text(source))));
    if wishes.iter().any(|wish| wish.measure.needs_engine()) {
        rests.extend(pull::rests::rests(source));
    } else {
        rests.extend(by_setup(source, axle));
        rests.extend(road::rests::rolling(source));
    }
    rests
}
