//! The pairs of each gear that round to its figure, for one constant pair and one window of tooth sums.

use super::Wish;
use crate::gearing::GearNumber;
use crate::gearing::part::Part;
use crate::gearing::teeth::{Mesh, Ratio};

/// A constant pair (or none) and the tooth sums that go with it: `least_sum` to `least_sum` + tolerance, the least occurring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Head {
    pub(super) constant: Option<Mesh>,
    pub(super) least_sum: u16,
}

impl Head {
    /// Every head of a wish, small sums first.
    pub(super) fn all(wish: &Wish) -> Vec<Self> {
        let counts = || wish.fewest..=wish.most;
        if wish.layout == crate::gearing::Layout::TwoShaft {
            return (2 * wish.fewest..=2 * wish.most).map(|least_sum| Self { constant: None, least_sum }).collect();
        }
        let allowed = |mesh: &Mesh| {
            let agrees = |part, teeth: u16| wish.known_at(part).is_none_or(|known| known == teeth);
            agrees(Part::ConstantDriver, mesh.driver.count()) && agrees(Part::ConstantDriven, mesh.driven.count())
        };
        let pairs = counts().flat_map(|driver| counts().filter_map(move |driven| Mesh::new(driver, driven))).filter(allowed);
        let mut heads: Vec<Self> = pairs
            .flat_map(|mesh| {
                let sums = mesh.sum().saturating_sub(wish.tolerance)..=mesh.sum();
                sums.map(move |least_sum| Self { constant: Some(mesh), least_sum })
            })
            .collect();
        crate::order::by_key(&mut heads, |head| (head.least_sum, head.constant.map(|mesh| (mesh.sum(), mesh.driver))));
        heads
    }

    /// What the constant pair multiplies each gear's own ratio by.
    fn times(self) -> Ratio {
        self.constant.map_or(Ratio::from_integer(1), Mesh::ratio)
    }

    /// How many combinations have this constant pair and exactly this least sum: those in the window less those in the window
    /// without its least sum.
    pub(super) fn count(self, wish: &Wish) -> u64 {
        let all = self.product(wish, self.least_sum, self.least_sum + wish.tolerance);
        if all == 0 || wish.tolerance == 0 || self.constant.is_some_and(|mesh| mesh.sum() == self.least_sum) {
            return all;
        }
        all.saturating_sub(self.product(wish, self.least_sum + 1, self.least_sum + wish.tolerance))
    }

    fn product(self, wish: &Wish, least_sum: u16, greatest_sum: u16) -> u64 {
        let mut product: u64 = 1;
        for (gear, _) in wish.geared() {
            let options: u64 = (least_sum..=greatest_sum).map(|sum| self.options(wish, gear, sum).len()).sum();
            if options == 0 {
                return 0;
            }
            product = product.saturating_mul(options);
        }
        product
    }

    /// The pairs of a gear with that sum that round to its figure.
    pub(super) fn options(self, wish: &Wish, gear: GearNumber, sum: u16) -> Options {
        let Some(figure) = gear.of(&wish.figures) else { return Options::none(sum) };
        let limits = Options::inside(wish, gear, sum);
        let times = self.times();
        // least ≤ times · q / (sum − q) < below, solved for the driven count q in whole numbers.
        let least = first_at_or_above(figure.least() / times, sum).max(i128::from(limits.least));
        let greatest = (first_at_or_above(figure.below() / times, sum) - 1).min(i128::from(limits.greatest));
        match (u16::try_from(least), u16::try_from(greatest)) {
            (Ok(least), Ok(greatest)) if least <= greatest => Options { sum, least, greatest },
            _ => Options::none(sum),
        }
    }

    /// The pair of a gear, over the sums of the window, whose ratio comes nearest to its figure, and how far off it is.
    pub(super) fn nearest(self, wish: &Wish, gear: GearNumber) -> Option<(Mesh, f64)> {
        let figure = gear.of(&wish.figures)?;
        let times = self.times();
        let near = |sum: u16| {
            let limits = Options::inside(wish, gear, sum);
            let above = first_at_or_above(figure.value / times, sum);
            let inside = move |driven: i128| u16::try_from(driven).unwrap_or(0).max(limits.least).min(limits.greatest);
            let tried = [above - 1, above].into_iter().filter(move |_| limits.len() > 0).map(inside);
            let pairs = tried.filter_map(move |driven| pair(sum, driven));
            pairs.map(move |mesh| (mesh, figure.off(times * mesh.ratio())))
        };
        let sums = self.least_sum..=self.least_sum + wish.tolerance;
        sums.flat_map(near).min_by(|one, other| one.1.total_cmp(&other.1))
    }
}

/// The least whole q with q / (sum − q) ≥ ratio: q ≥ ratio · sum / (1 + ratio).
fn first_at_or_above(ratio: Ratio, sum: u16) -> i128 {
    let (over, under) = (*ratio.numer(), *ratio.denom());
    num_integer::Integer::div_ceil(&(over * i128::from(sum)), &(under + over))
}

fn pair(sum: u16, driven: u16) -> Option<Mesh> {
    Mesh::new(sum.checked_sub(driven)?, driven)
}

/// The driven counts that a pair of one sum may have, ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Options {
    sum: u16,
    least: u16,
    greatest: u16,
}

impl Options {
    fn none(sum: u16) -> Self {
        Self { sum, least: 1, greatest: 0 }
    }

    /// What the limits and the known counts of a gear leave of a sum.
    fn inside(wish: &Wish, gear: GearNumber, sum: u16) -> Self {
        let mut least = wish.fewest.max(sum.saturating_sub(wish.most));
        let mut greatest = wish.most.min(sum.saturating_sub(wish.fewest));
        let driver = wish.known_at(Part::Driver(gear)).map(|driver| sum.saturating_sub(driver));
        for known in driver.into_iter().chain(wish.known_at(Part::Driven(gear))) {
            (least, greatest) = (least.max(known), greatest.min(known));
        }
        if least <= greatest { Self { sum, least, greatest } } else { Self::none(sum) }
    }

    pub(super) fn len(self) -> u64 {
        u64::from((self.greatest + 1).saturating_sub(self.least))
    }

    pub(super) fn pairs(self) -> impl Iterator<Item = Mesh> {
        (self.least..=self.greatest).filter_map(move |driven| pair(self.sum, driven))
    }
}
