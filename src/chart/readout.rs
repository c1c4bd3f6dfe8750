//! What a picture says without being looked at: what stands under a pointer, its table, and lists of setups in words.
use super::palette;
use crate::problem::listed;
use crate::spreadsheet;

/// What stands under a pointer.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadOut {
    /// Where the pointer is, for instance `70.0 mph`.
    pub at: String,
    /// What each setup or series shows there.
    pub groups: Vec<Group>,
}

/// The readings of one setup or series.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Its place among the setups, where it is one: gives letter and colour.
    pub slot: Option<usize>,
    /// What the setup or series is called.
    pub name: String,
    /// Its readings in order.
    pub readings: Vec<Reading>,
}

/// A value under the pointer, as it is read.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Of what, for instance `2nd`.
    pub label: String,
    /// How much, with its unit.
    pub value: String,
    /// Whether it is the one to look at first, for instance the gear nearest the pointer.
    pub stands_out: bool,
    /// Whether it lies beyond what can be used, for instance past the shift point.
    pub is_beyond: bool,
}

impl Group {
    /// One value that is no setup's, under a name.
    pub fn alone(name: impl Into<String>, value: String) -> Self {
        Self { slot: None, name: name.into(), readings: vec![Reading::plain("", value)] }
    }
}

impl Reading {
    /// A value like any other.
    pub fn plain(label: impl Into<String>, value: String) -> Self {
        Self { label: label.into(), value, stands_out: false, is_beyond: false }
    }
}

/// The figures behind a picture. Heads carry units.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    /// The head of each column, for instance `speed_at_shift_mph`.
    pub heads: Vec<String>,
    /// The rows; figures in full, with a point and without marks at the thousands.
    pub rows: Vec<Vec<String>>,
}

impl Table {
    /// A table with these heads and no rows yet.
    pub fn new<const N: usize>(heads: [&str; N]) -> Self {
        Self { heads: heads.map(str::to_owned).to_vec(), rows: Vec::new() }
    }

    /// The table as a CSV file.
    pub fn csv(&self) -> String {
        spreadsheet::write(std::iter::once(&self.heads).chain(&self.rows))
    }
}

/// Setups by their letters: `A`, `A and B`, `A, B and C`.
///
/// ```
/// use layshaft::chart::readout::letters;
/// assert_eq!(letters(&[0, 1, 2]), "A, B and C");
/// ```
pub fn letters(slots: &[usize]) -> String {
    listed(&slots.iter().map(|slot| palette::letter(*slot).to_string()).collect::<Vec<_>>())
}

/// Setups by their letters where there is little room: `A B C`.
pub fn short_letters(slots: &[usize]) -> String {
    slots.iter().map(|slot| palette::letter(*slot).to_string()).collect::<Vec<_>>().join(" ")
}

/// Puts what belongs together into one group, keeping the order: each item joins the first group whose first item it matches.
pub fn groups<T: Copy>(items: impl IntoIterator<Item = T>, belong: impl Fn(T, T) -> bool) -> Vec<Vec<T>> {
    let mut groups: Vec<Vec<T>> = Vec::new();
    for item in items {
        match groups.iter_mut().find(|group| group.first().is_some_and(|first| belong(*first, item))) {
            Some(group) => group.push(item),
            None => groups.push(vec![item]),
        }
    }
    groups
}
