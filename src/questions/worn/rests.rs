//! What Worn or usable rests on: the ranges of what was measured, each with its source.

use super::read::Typed;
use crate::questions::Source;
use crate::questions::rests::usual;
use crate::sheet::Rest;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let typed = Typed::of(source.job);
    let range = |(wear, ..): (&crate::faults::wear::Wear, _, _)| {
        usual(wear.name.clone(), format!("good {}, usable {}", wear.good.said(), wear.usable.said()), wear.source.clone())
    };
    typed.judged().into_iter().map(range).collect()
}
