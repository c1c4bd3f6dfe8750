//! What a downshift would spin the engine to.

use crate::gearing::GearNumber;
use crate::gearing::gearbox::Gearbox;
use crate::gearing::teeth::{Ratio, decimal};
use crate::problem::Explain;
use crate::units::{AngularVelocity, common::in_rpm, number};

/// A change to the next lower gear at a steady road speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Downshift {
    /// The gear left.
    pub from: GearNumber,
    /// The gear taken.
    pub to: GearNumber,
    /// Engine speed over engine speed: the lower gear’s ratio over the higher’s, exact and without sign.
    pub step: Ratio,
    /// The engine speed before the change.
    pub before: AngularVelocity,
    /// The engine speed the lower gear would force: before · step.
    pub after: AngularVelocity,
    /// The engine speed not to be passed.
    pub limit: AngularVelocity,
}

impl Downshift {
    /// Whether the engine would be spun beyond the limit. A thousandth of an rpm is not counted.
    pub fn is_over(&self) -> bool {
        in_rpm(self.after) > in_rpm(self.limit) + 1e-3
    }

    /// The highest engine speed in the gear left at which the change stays within the limit.
    pub fn safe_before(&self) -> AngularVelocity {
        self.limit / decimal(self.step)
    }
}

impl Explain for Downshift {
    fn what(&self) -> String {
        format!(
            "changing down from {} to {} at {} rpm would spin the engine to {} rpm, {} over the limit",
            self.from,
            self.to,
            number::show(in_rpm(self.before), 0),
            number::show(in_rpm(self.after), 0),
            number::show(in_rpm(self.after) - in_rpm(self.limit), 0)
        )
    }

    fn what_to_do(&self) -> String {
        format!("slow to {} rpm in {} before changing down", number::show(in_rpm(self.safe_before()), 0), self.from)
    }
}

/// Every change to the next lower gear when the engine turns at `engine` in the gear left.
///
/// ```
/// use layshaft::gearing::{Gear, Gearbox, Layout, Mesh, speeds::overrun::downshifts_at_engine};
/// use layshaft::units::common::{in_rpm, rpm};
/// # fn example() -> Option<()> {
/// let gears = vec![Gear::Mesh(Mesh::new(18, 37)?), Gear::Direct];
/// let gearbox = Gearbox::new(Layout::InputReduced, Mesh::new(25, 30), gears, None).ok()?;
/// let downshifts = downshifts_at_engine(&gearbox, rpm(3_000.0), rpm(6_475.0));
/// // 3,000 rpm × 37/15 is too fast; 6,475 rpm ÷ 37/15 is as fast as may be.
/// let to_first = downshifts.first()?;
/// assert!(to_first.is_over());
/// assert_eq!((in_rpm(to_first.after).round(), in_rpm(to_first.safe_before()).round()), (7_400.0, 2_625.0));
/// # Some(())
/// # }
/// # assert!(example().is_some());
/// ```
pub fn downshifts_at_engine(gearbox: &Gearbox, engine: AngularVelocity, limit: AngularVelocity) -> Vec<Downshift> {
    steps(gearbox).map(|(from, to, step, _)| Downshift { from, to, step, before: engine, after: engine * decimal(step), limit }).collect()
}

/// Every change to the next lower gear at one road speed, given as the speed of the output shaft.
pub fn downshifts_at_output(gearbox: &Gearbox, output: AngularVelocity, limit: AngularVelocity) -> Vec<Downshift> {
    steps(gearbox)
        .map(|(from, to, step, ratio)| {
            let before = output.abs() * decimal(ratio);
            Downshift { from, to, step, before, after: before * decimal(step), limit }
        })
        .collect()
}

/// Each gear but the first: the next lower one, the step down to it, and its own ratio without sign.
fn steps(gearbox: &Gearbox) -> impl Iterator<Item = (GearNumber, GearNumber, Ratio, Ratio)> + '_ {
    gearbox.numbers().filter_map(|from| {
        let to = from.below()?;
        let (lower, own) = (gearbox.ratio(to)?, gearbox.ratio(from)?);
        let without_sign = if own < Ratio::from_integer(0) { -own } else { own };
        Some((from, to, lower / own, without_sign))
    })
}
