//! A forward gear by its number.

use std::fmt::{Display, Formatter, Result};

use super::gearbox::Gearbox;
use crate::units::number::ordinal;

/// A forward gear by its number: made from its place in a row of gears, shown as it is spoken.
///
/// ```
/// use layshaft::gearing::GearNumber;
/// let third = GearNumber::at(2);
/// assert_eq!((third.to_string(), third.number()), ("3rd".to_owned(), 3));
/// assert_eq!([GearNumber::read("3"), GearNumber::read("3rd")], [Some(third); 2]);
/// assert_eq!(["0", "9", "third"].map(GearNumber::read), [None; 3]);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct GearNumber(usize);

impl GearNumber {
    /// The lowest gear.
    pub const FIRST: Self = Self(0);
    /// 2nd gear.
    pub const SECOND: Self = Self(1);

    /// The gear at a place in a row of gears, places counted from 0.
    pub const fn at(place: usize) -> Self {
        Self(place)
    }

    /// The lowest gears, so many of them.
    pub fn lowest(many: usize) -> impl DoubleEndedIterator<Item = Self> + ExactSizeIterator + Clone {
        (0..many).map(Self)
    }

    /// The shifts of a box of so many gears from each to its neighbours, those up first; those down begin at the top.
    pub fn shifts(many: usize) -> impl Iterator<Item = (Self, Self)> {
        let up = Self::lowest(many.saturating_sub(1)).map(|from| (from, from.next()));
        up.clone().chain(up.rev().map(|(lower, upper)| (upper, lower)))
    }

    /// What stands in a row of gears, each with its gear.
    pub fn each<T>(row: &[T]) -> impl DoubleEndedIterator<Item = (Self, &T)> + ExactSizeIterator {
        row.iter().enumerate().map(|(place, of)| (Self(place), of))
    }

    /// What stands for it in a row of gears; none beyond the row.
    pub fn of<T>(self, row: &[T]) -> Option<&T> {
        row.get(self.0)
    }

    /// The gear that a text names, 1 to 8, with or without letters behind: `3`, `3rd`.
    pub fn read(text: &str) -> Option<Self> {
        let number: usize = text.trim_end_matches(char::is_alphabetic).parse().ok()?;
        number.checked_sub(1).filter(|place| *place < Gearbox::MOST_GEARS).map(Self)
    }

    /// Its place in a row of gears, counted from 0.
    pub const fn place(self) -> usize {
        self.0
    }

    /// Its number as it is written: 1 for the lowest.
    pub const fn number(self) -> usize {
        self.0.saturating_add(1)
    }

    /// The gear above it.
    #[must_use]
    pub const fn next(self) -> Self {
        Self(self.0.saturating_add(1))
    }

    /// The gear below it; none below the lowest.
    pub fn below(self) -> Option<Self> {
        self.0.checked_sub(1).map(Self)
    }
}

impl From<GearNumber> for String {
    fn from(gear: GearNumber) -> Self {
        gear.to_string()
    }
}

impl Display for GearNumber {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        f.write_str(&ordinal(self.0))
    }
}
