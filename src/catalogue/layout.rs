//! How is a gear set laid out whose file does not say? By its counts, where they leave no choice.
//!
//! Counts are typed as the gear on the input or output line over the countershaft's. With a constant pair a/b and a gear c/d, reduction
//! at the input gives b/a · c/d and reduction at the output the reciprocal of it; a first gear turns the output slower than the input.

use super::{Column, Entry, PartKind};
use crate::gearing::{Gear, Layout, read};

impl Entry {
    /// The layout that the counts leave no choice about; none where they do, or cannot be read.
    pub(super) fn plain_layout(&self) -> Option<Layout> {
        if self.kind != PartKind::GearSet {
            return None;
        }
        let gears = self.gears();
        let constant = self.text(Column::Constant).trim();
        if constant.is_empty() {
            // A direct gear does not read in a box of two shafts; ratios as printed tell nothing.
            let read = gears.iter().map(|gear| read::gear(gear, Layout::TwoShaft).ok()).collect::<Option<Vec<Gear>>>()?;
            return read.iter().any(|gear| gear.mesh().is_some()).then_some(Layout::TwoShaft);
        }
        let (a, b) = read::counts(constant).ok()?;
        let (c, d) = gears.iter().find_map(|gear| read::counts(gear).ok())?;
        let [a, b, c, d] = [a, b, c, d].map(|teeth| u32::from(teeth.count()));
        match (b * c).cmp(&(a * d)) {
            std::cmp::Ordering::Greater => Some(Layout::InputReduced),
            std::cmp::Ordering::Less => Some(Layout::OutputReduced),
            std::cmp::Ordering::Equal => None,
        }
    }
}
