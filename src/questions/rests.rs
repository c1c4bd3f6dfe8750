//! What figures rest on, each value once: typed or usual, with its source, in the reader's units.

use super::{Analysis, Source};
use crate::motion::car::{Origin, Sourced};
use crate::questions::alike::together;
use crate::sheet::Rest;
use crate::sheet::said::{Said, marks};

/// Where a typed value comes from.
pub const TYPED: &str = "as typed";

/// Where a value comes from that the trade uses and nobody published.
pub const PRACTICE: &str = "common practice, no published source";

/// A value that was typed.
pub fn typed(label: impl Into<String>, value: impl Into<String>) -> Rest {
    Rest { label: label.into(), value: value.into(), source: TYPED.into(), is_typed: true }
}

/// A value that was not typed, and where it comes from.
pub fn usual(label: impl Into<String>, value: impl Into<String>, source: impl Into<String>) -> Rest {
    Rest { label: label.into(), value: value.into(), source: source.into(), is_typed: false }
}

/// A value that was typed, or the usual one where it was not, and where that comes from.
pub fn typed_or(is_typed: bool, label: impl Into<String>, value: impl Into<String>, source: impl Into<String>) -> Rest {
    if is_typed { typed(label, value) } else { usual(label, value, source) }
}

/// A value that was typed or stands in for one, as it is shown.
pub fn of<T>(label: &str, value: &Sourced<T>, shown: impl Into<String>) -> Rest {
    match value.origin {
        Origin::Given => typed(label, shown),
        Origin::Default(why) => usual(label, shown, why),
    }
}

/// A value of each setup: once where all have the same, else once for each that differs, with the letters of its setups.
pub fn by_setup(source: Source<'_>, rest: impl Fn(&Analysis) -> Option<Rest>) -> Vec<Rest> {
    let named = |(rest, columns): (Rest, Vec<usize>)| {
        if columns.len() == source.setups.len() {
            return rest;
        }
        Rest { label: format!("{}, {}", rest.label, Said::new(marks(&columns)).plain()), ..rest }
    };
    together(source, rest).into_iter().map(named).collect()
}
