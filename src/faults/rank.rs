//! Which cause is likelier: a sum of plain weights, every part of it shown.
//!
//! A cause has points for each symptom by how usual a cause of it is, for each condition that fits or speaks against it, for each test
//! answered as it would be or otherwise; less the further in it lies and the dearer its test is: outside before inside, cheap before dear.
//! The weights are common practice, no published source. As they are one sum, the order in which things were said does not matter, and a
//! test that speaks against a cause can never bring it up the list.

use super::table::{Cause, Cost, Reach, Table};
use super::told::Told;

/// Points for a symptom, times 1 to 3 by how usual.
pub const USUAL: i32 = 2;
/// Points for a condition that fits.
pub const FITS: i32 = 3;
/// Points for a condition that speaks against it.
pub const AGAINST: i32 = -4;
/// Points for a test answered as the cause would have it.
pub const SHOWN: i32 = 8;
/// Points for a test answered otherwise.
pub const REFUTED: i32 = -12;

/// A cause and how well it fits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ranked<'a> {
    /// The cause.
    pub cause: &'a Cause,
    /// Its points, the sum of its shares.
    pub points: i32,
    /// What they are made of.
    pub shares: Vec<Share>,
}

/// A part of a cause's points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Share {
    /// What it is for.
    pub why: Why,
    /// The points.
    pub points: i32,
}

/// What points are for; places are those of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// A symptom it makes.
    Symptom(usize),
    /// A condition that fits or speaks against it.
    Condition(usize),
    /// A test and its answer.
    Test(usize, bool),
    /// How far in it lies.
    Reach(Reach),
    /// What its first test costs.
    Cost(Cost),
}

/// The causes that make one of the symptoms, the likeliest first; of two alike the one that lies further out.
///
/// ```
/// use layshaft::faults::{Table, Told, rank};
/// use layshaft::gearing::GearNumber;
/// let table = Table::built_in();
/// let mut told = Told::default();
/// let said = ["jumps-out", "g3", "overrun"].into_iter().filter_map(|id| table.given(id));
/// said.for_each(|given| told.take(given));
/// told.imply(table, Some(GearNumber::at(3)));
/// let points = |cause| rank(table, &told).iter().find(|ranked| ranked.cause.id == cause).map(|ranked| ranked.points);
/// // By hand: the usual cause 3 × 2, on the overrun + 3, bolted on outside − 1, a tool or a helper − 1.
/// assert_eq!(points("mounts"), Some(7));
/// ```
pub fn rank<'a>(table: &'a Table, told: &Told) -> Vec<Ranked<'a>> {
    let mut ranked: Vec<Ranked<'_>> = table.causes.iter().filter_map(|cause| Ranked::of(table, told, cause)).collect();
    // What is alike in all stays in the order of the table.
    crate::order::by_key(&mut ranked, |ranked| (-ranked.points, ranked.cause.reach, cost(table, ranked.cause)));
    ranked
}

fn cost(table: &Table, cause: &Cause) -> Cost {
    let first = cause.shows.first().and_then(|(test, _)| table.tests.get(*test));
    first.map_or(Cost::Nothing, |test| test.cost)
}

impl<'a> Ranked<'a> {
    /// A cause that makes one of the symptoms; none where it makes none of them.
    fn of(table: &Table, told: &Told, cause: &'a Cause) -> Option<Self> {
        let made = cause.symptoms.iter().filter(|(symptom, _)| told.symptoms.contains(symptom));
        let mut shares: Vec<Share> =
            made.map(|(symptom, usual)| Share { why: Why::Symptom(*symptom), points: USUAL * i32::from(*usual) }).collect();
        if shares.is_empty() {
            return None;
        }
        for (conditions, points) in [(&cause.fits, FITS), (&cause.against, AGAINST)] {
            let there = conditions.iter().filter(|condition| told.conditions.contains(condition));
            shares.extend(there.map(|condition| Share { why: Why::Condition(*condition), points }));
        }
        for (test, shows) in &cause.shows {
            let Some(answer) = told.results.get(test) else { continue };
            shares.push(Share { why: Why::Test(*test, *answer), points: if answer == shows { SHOWN } else { REFUTED } });
        }
        let cost = cost(table, cause);
        shares.push(Share { why: Why::Reach(cause.reach), points: -(cause.reach as i32) });
        shares.push(Share { why: Why::Cost(cost), points: -(cost as i32) });
        shares.retain(|share| share.points != 0);
        Some(Self { cause, points: shares.iter().map(|share| share.points).sum(), shares })
    }

    /// Whether a test spoke against it.
    pub fn is_refuted(&self) -> bool {
        self.shares.iter().any(|share| share.points == REFUTED)
    }

    /// Whether a test spoke for it, and none against.
    pub fn is_backed(&self) -> bool {
        !self.is_refuted() && self.shares.iter().any(|share| share.points == SHOWN)
    }

    /// Whether the test of its own, the first, showed it, and none spoke against.
    pub fn is_shown(&self, told: &Told) -> bool {
        let is_answered_so = |(test, shows): &(usize, bool)| told.results.get(test) == Some(shows);
        !self.is_refuted() && self.cause.shows.first().is_some_and(is_answered_so)
    }

    /// The test to do next, with the answer that shows it: its first that is not answered yet.
    pub fn next_test(&self, told: &Told) -> Option<(usize, bool)> {
        self.cause.shows.iter().copied().find(|(test, _)| !told.results.contains_key(test))
    }
}
