//! Worn or usable: what is measured of a part on the bench, and from where on it is watched or renewed.

use std::sync::OnceLock;

use super::TableError;
use super::read::Lines;
use crate::checklist::{Amount, Range};

/// A part that wears, and how much it may.
#[derive(Clone, Debug, PartialEq)]
pub struct Wear {
    /// Its name in the table.
    pub id: String,
    /// What is measured.
    pub name: String,
    /// What is good.
    pub good: Range,
    /// What can still be used.
    pub usable: Range,
    /// What is renewed or looked at with it.
    pub together: String,
    /// Where the ranges come from.
    pub source: String,
}

/// How a part stands; the worse is greater.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum State {
    /// It goes in again.
    Good,
    /// It goes in again, and is measured at the next strip.
    Watch,
    /// It is renewed.
    Scrap,
}

impl Wear {
    /// The built-in parts, read when first asked for.
    pub fn built_in() -> &'static [Self] {
        static WEAR: OnceLock<Vec<Wear>> = OnceLock::new();
        // That they can be read is proved by the tests.
        WEAR.get_or_init(|| Self::read(include_str!("data/wear.csv")).unwrap_or_default())
    }

    /// Reads a table of parts.
    ///
    /// # Errors
    /// The first line that cannot be used.
    pub fn read(text: &str) -> Result<Vec<Self>, TableError> {
        let mut problems = Vec::new();
        let wear = Lines::of("worn parts", text, |_| false, &mut problems).wear(&mut problems);
        problems.into_iter().next().map_or(Ok(wear), Err)
    }

    /// How a reading stands.
    ///
    /// ```
    /// use layshaft::checklist::Amount;
    /// use layshaft::faults::wear::{State, Wear};
    /// let gap = Wear::built_in().iter().find(|wear| wear.id == "ring-gap").ok_or("no such part")?;
    /// let state = |text: &str| Amount::read(text, Some(&gap.good)).map(|amount| gap.state(&amount)).ok();
    /// // 0.025 in are 0.635 mm: under 0.8 mm, over 0.5 mm.
    /// assert_eq!([state("1.1"), state("0.025 in"), state("0.3")], [Some(State::Good), Some(State::Watch), Some(State::Scrap)]);
    /// # Ok::<(), &str>(())
    /// ```
    pub fn state(&self, amount: &Amount) -> State {
        match (self.good.holds(amount), self.usable.holds(amount)) {
            (true, _) => State::Good,
            (false, true) => State::Watch,
            (false, false) => State::Scrap,
        }
    }
}
