//! What Build record rests on: where the lists to begin with come from.

use super::read::Typed;
use crate::questions::Source;
use crate::questions::rests::usual;
use crate::sheet::Rest;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    if Typed::of(source.job).steps.is_empty() {
        return Vec::new();
    }
    vec![
        usual("The lists to begin with", "usual order of work", "common practice, no published source: the box’s own manual rules"),
        usual("Ranges in them", "as many makers give them", "makers’ manuals of several boxes; put your box’s own in their place"),
        usual("A step counts as done", "ticked, and its last reading inside", "outside, it stays open until a note says why it may stay"),
    ]
}
