//! What cannot be right about a gearbox: pairs that share a centre distance but not a tooth sum, gears out of order.

use super::gearbox::Gearbox;
use super::ladder::{Character, Ladder};
use super::teeth::Mesh;
use crate::gearing::GearNumber;

/// How far tooth sums on one centre distance may differ before profile shift cannot take it up.
///
/// Two teeth of sum are one module of centre distance; a pair takes up about one module by shifting its profiles
/// (Σx from −0.5 to +0.5 as in ordinary helical designs). Common practice, no published source.
pub const SUM_TOLERANCE: u16 = 2;

/// The tooth sums of the pairs that share the one centre distance of the box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToothSums {
    /// The sum of the constant pair, where there is one.
    pub constant: Option<u16>,
    /// The sum of each gear's pair, `None` for direct and for a gear that is not counted.
    pub gears: Vec<Option<u16>>,
    /// Whether every pair is counted.
    pub is_whole: bool,
}

impl ToothSums {
    /// The sums of a gearbox. Reverse is left out: its gears do not touch each other.
    pub fn of(gearbox: &Gearbox) -> Self {
        let gears = gearbox.gears().iter().map(|gear| gear.mesh().map(Mesh::sum));
        Self { constant: gearbox.constant().map(Mesh::sum), gears: gears.collect(), is_whole: gearbox.is_counted() }
    }

    /// Every sum that is known.
    pub fn all(&self) -> impl Iterator<Item = u16> + '_ {
        self.constant.into_iter().chain(self.gears.iter().copied().flatten())
    }

    /// The least and the greatest sum; `None` where a pair is not counted.
    pub fn range(&self) -> Option<(u16, u16)> {
        self.known_range().filter(|_| self.is_whole)
    }

    fn known_range(&self) -> Option<(u16, u16)> {
        Some((self.all().min()?, self.all().max()?))
    }
}

/// Something about a gearbox that wants a second look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// Pairs that must share a centre distance have tooth sums too far apart.
    SumsApart {
        /// The least sum.
        least: u16,
        /// The greatest sum.
        greatest: u16,
    },
    /// A gear is as low as or lower than the one before it: the lower gear.
    OutOfOrder(GearNumber),
}

explain! { Doubt:
    Self::SumsApart { least, greatest } =>
        format!("the pairs on one centre distance have tooth sums from {least} to {greatest}, more than a profile shift can take up"),
        "count the teeth again: parts of two sets may be mixed";
    Self::OutOfOrder(gear) => format!("gear {} is not faster than gear {}", gear.next().number(), gear.number()),
        "check the counts and the order of the gears";
}

/// Everything about a gearbox that wants a second look.
///
/// ```
/// use layshaft::gearing::check::{Doubt, doubts};
/// use layshaft::gearing::{Gear, Gearbox, Layout, Mesh};
/// # fn example() -> Option<()> {
/// let with_first = |driver, driven| {
///     let gears = vec![Gear::Mesh(Mesh::new(driver, driven)?), Gear::Direct];
///     Gearbox::new(Layout::InputReduced, Mesh::new(25, 30), gears, None).ok()
/// };
/// // 25 + 30 = 18 + 37 = 55, but 18 + 40 = 58
/// assert_eq!(doubts(&with_first(18, 37)?), []);
/// assert_eq!(doubts(&with_first(18, 40)?), [Doubt::SumsApart { least: 55, greatest: 58 }]);
/// # Some(())
/// # }
/// # assert!(example().is_some());
/// ```
pub fn doubts(gearbox: &Gearbox) -> Vec<Doubt> {
    let sums = ToothSums::of(gearbox).known_range().filter(|(least, greatest)| greatest - least > SUM_TOLERANCE);
    let sums = sums.map(|(least, greatest)| Doubt::SumsApart { least, greatest });
    let order = match Ladder::new(gearbox.ratios()).character() {
        Character::Inverted(gear) => Some(Doubt::OutOfOrder(gear)),
        _ => None,
    };
    sums.into_iter().chain(order).collect()
}
