//! Which gears of the shelf make the speedometer read true: every combination that fits together, ranked.

use std::collections::BTreeMap;

use super::dial::Dial;
use super::reading::Speedometer;
use super::train::{Adapter, Train};
use super::{Hand, Role, SpeedoGear};
use crate::units::TurnsPerDistance;

/// What to look for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// Turns over a distance of the shaft that carries the drive gear.
    pub shaft: TurnsPerDistance,
    /// What the cable drives.
    pub dial: Dial,
    /// Only the drive gear of this place in the shelf, where one is chosen.
    pub drive: Option<usize>,
    /// Whether adapters are tried too.
    pub adapters: bool,
    /// Only gears in stock.
    pub in_stock: bool,
    /// No more than so many of the best are kept.
    pub keep: usize,
}

/// One combination.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate {
    /// The drive gear's place in the shelf.
    pub drive: usize,
    /// The driven gear's place in the shelf.
    pub driven: usize,
    /// The adapter's place in the shelf, where there is one.
    pub adapter: Option<usize>,
    /// The gears together.
    pub train: Train,
    /// By how much the dial reads high, as a share of the true speed; negative where it reads low.
    pub error: f64,
}

/// The best combinations, and how many there were.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ranking {
    /// The best first; where two are as good, that with fewer parts, then the earlier in the shelf.
    pub best: Vec<Candidate>,
    /// How many combinations fit together and were judged: all of them.
    pub judged: usize,
}

/// Whether a driven gear meshes with a drive gear: same housing, and hands that do not contradict each other.
///
/// Two helical gears whose shafts cross at a right angle, as here, are of the same hand; a hand that is not known is no objection.
/// Source: geometry of crossed helical gears (β₁ + β₂ = 90°).
pub fn fits(drive: &SpeedoGear, driven: &SpeedoGear) -> bool {
    let hands: Option<(Hand, Hand)> = drive.hand.zip(driven.hand);
    drive.housing == driven.housing && hands.is_none_or(|(drive, driven)| drive == driven)
}

/// Whether an adapter goes on a housing: one of its own group, or one that names none or any.
pub fn adapter_fits(adapter: &SpeedoGear, housing: &str) -> bool {
    let named = adapter.housing.trim();
    named.is_empty() || named.eq_ignore_ascii_case("any") || named == housing
}

type Placed<'s> = (usize, &'s SpeedoGear);

/// Ranks every combination of the shelf that fits together by the size of its error.
///
/// Only gears of one housing are ever paired, so the work is the sum over the groups and not the product of the shelf.
///
/// ```
/// use layshaft::speedometer::{Dial, Role, SpeedoGear, Wanted, dial::per_mile, rank_shelf};
/// let gear = |role: Role, teeth: u16| SpeedoGear {
///     name: format!("{} {teeth}", role.word()),
///     role,
///     teeth,
///     second: None,
///     housing: "small".into(),
///     hand: None,
///     in_stock: true,
///     own: false,
///     note: String::new(),
/// };
/// let shelf = [gear(Role::Drive, 8), gear(Role::Driven, 25), gear(Role::Driven, 26)];
/// let wanted = Wanted { shaft: per_mile(3_200.0), dial: Dial::default(), drive: None, adapters: false, in_stock: true, keep: 1 };
/// // 25.6 teeth would read true: 25 reads 2.4 % high, 26 reads 1.5 % low.
/// let ranking = rank_shelf(&shelf, &wanted);
/// assert_eq!(ranking.judged, 2);
/// assert_eq!(ranking.best.first().map(|best| best.train.driven()), Some(26));
/// ```
pub fn rank_shelf(shelf: &[SpeedoGear], wanted: &Wanted) -> Ranking {
    let on_hand = || shelf.iter().enumerate().filter(|(_, gear)| gear.in_stock || !wanted.in_stock);
    let of = |role| on_hand().filter(move |(_, gear)| gear.role == role);
    let mut driven_of: BTreeMap<&str, Vec<Placed<'_>>> = BTreeMap::new();
    for (at, gear) in of(Role::Driven) {
        driven_of.entry(&gear.housing).or_default().push((at, gear));
    }
    let adapters: Vec<Placed<'_>> = if wanted.adapters { of(Role::Adapter).collect() } else { Vec::new() };
    let drives = of(Role::Drive).filter(|(at, _)| wanted.drive.is_none_or(|chosen| chosen == *at));
    let mut found = Vec::new();
    for (at, drive) in drives {
        let fitting = driven_of.get(drive.housing.as_str()).into_iter().flatten().filter(|(_, driven)| fits(drive, driven));
        found.extend(fitting.flat_map(|driven| combinations((at, drive), *driven, &adapters, wanted)));
    }
    let judged = found.len();
    Ranking { best: best_of(found, wanted.keep), judged }
}

/// A pair without an adapter, and with each that goes on its housing.
fn combinations(drive: Placed<'_>, driven: Placed<'_>, adapters: &[Placed<'_>], wanted: &Wanted) -> Vec<Candidate> {
    let Some(plain) = Train::new(drive.1.teeth, driven.1.teeth) else { return Vec::new() };
    let candidate = |adapter: Option<usize>, train: Train| {
        let error = Speedometer { shaft: wanted.shaft, train, dial: wanted.dial }.error();
        Candidate { drive: drive.0, driven: driven.0, adapter, train, error }
    };
    let with = adapters.iter().filter(|(_, adapter)| adapter_fits(adapter, &drive.1.housing)).filter_map(|(at, gear)| {
        let adapter = Adapter::new(gear.teeth, gear.second?)?;
        Some(candidate(Some(*at), plain.with_adapter(Some(adapter))))
    });
    std::iter::once(candidate(None, plain)).chain(with).collect()
}

/// The best of all, in order; the rest is never sorted.
fn best_of(mut found: Vec<Candidate>, keep: usize) -> Vec<Candidate> {
    let order = |a: &Candidate, b: &Candidate| {
        let parts = |candidate: &Candidate| (candidate.adapter.is_some(), candidate.drive, candidate.driven, candidate.adapter);
        a.error.abs().total_cmp(&b.error.abs()).then_with(|| parts(a).cmp(&parts(b)))
    };
    if keep < found.len() {
        found.select_nth_unstable_by(keep, order);
        found.truncate(keep);
    }
    found.sort_unstable_by(order);
    found
}
