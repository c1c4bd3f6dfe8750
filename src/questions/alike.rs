//! Setups grouped by what is shown of them, so that no sentence tells two apart that the reader sees as equal.

use super::{Analysis, Source};
pub use crate::problem::{either, listed};
use crate::sheet::said::marks;
use crate::units::number;

/// Setups of which the same figure is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Alike {
    /// The figure as it is read, without its unit.
    pub shown: String,
    /// The same as a number: what was rounded away is gone.
    pub value: f64,
    /// The setups, by their columns counted from 0.
    pub columns: Vec<usize>,
}

impl Alike {
    /// Their letters and what they do: `[A] turns`, `[A] and [B] turn`.
    pub fn say(&self, one: &str, many: &str) -> String {
        say(&self.columns, one, many)
    }

    /// By how much the shown figure differs from another, as it would be read off the two.
    pub fn less(&self, other: &Self, decimals: usize) -> String {
        number::show((self.value - other.value).abs(), decimals)
    }
}

/// The letters of setups and what they do: `[A] turns`, `[A] and [B] turn`.
pub fn say(columns: &[usize], one: &str, many: &str) -> String {
    format!("{} {}", marks(columns), if columns.len() == 1 { one } else { many })
}

/// The setups that have a figure, grouped by it as it is shown with so many decimals; the least figure first.
pub fn by_figure(source: Source<'_>, decimals: usize, figure: impl Fn(&Analysis) -> Option<f64>) -> Vec<Alike> {
    let mut groups: Vec<Alike> = Vec::new();
    for (column, analysis) in source.setups.iter().enumerate() {
        let Some(figure) = figure(analysis).filter(|figure| figure.is_finite()) else { continue };
        let shown = number::show(figure, decimals);
        match groups.iter_mut().find(|group| group.shown == shown) {
            Some(group) => group.columns.push(column),
            None => groups.push(Alike { shown, value: rounded(figure, decimals), columns: vec![column] }),
        }
    }
    crate::order::by(&mut groups, |a, b| a.value.total_cmp(&b.value));
    groups
}

/// Setups gathered by what holds of them, in the order in which it is first met.
pub fn gathered<T: PartialEq>(each: impl IntoIterator<Item = (usize, T)>) -> Vec<(T, Vec<usize>)> {
    let mut groups: Vec<(T, Vec<usize>)> = Vec::new();
    for (column, holds) in each {
        match groups.iter_mut().find(|(known, _)| *known == holds) {
            Some((_, columns)) => columns.push(column),
            None => groups.push((holds, vec![column])),
        }
    }
    groups
}

/// As [`gathered`], of all setups of which something holds.
pub fn together<T: PartialEq>(source: Source<'_>, holds: impl Fn(&Analysis) -> Option<T>) -> Vec<(T, Vec<usize>)> {
    gathered((0..).zip(source.setups).filter_map(|(column, analysis)| Some((column, holds(analysis)?))))
}

/// A number as it is shown.
pub fn rounded(value: f64, decimals: usize) -> f64 {
    let shown = format!("{:.decimals$}", value.abs());
    number::read_decimal(&shown).map_or(value, |shown| shown.copysign(value))
}
