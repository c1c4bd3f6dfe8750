//! A gear set as a picture the size of a word: its cluster on one shaft, each gear as high as its count.

use std::fmt::Write as _;

use crate::gearing::{Gearbox, Layout, Mesh};

/// How high the largest gear stands.
pub const HEIGHT: u32 = 24;
/// How wide a gear is, and the gap behind it.
const GEAR: u32 = 6;
const GAP: u32 = 3;

/// The outline of a cluster, in a box [`HEIGHT`] high.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Silhouette {
    /// As an SVG path has it.
    pub path: String,
    /// How wide the box is.
    pub width: u32,
}

impl Silhouette {
    /// The cluster of a gearbox, or the input shaft of one without a countershaft; none where its teeth are not all counted.
    ///
    /// ```
    /// use layshaft::gearing::{Gear, Gearbox, Layout, Mesh};
    /// use layshaft::sheet::silhouette::Silhouette;
    /// # fn example() -> Option<()> {
    /// let gears = vec![Gear::Mesh(Mesh::new(15, 30)?), Gear::Direct];
    /// let gearbox = Gearbox::new(Layout::InputReduced, Mesh::new(20, 30), gears, None).ok()?;
    /// // On the cluster 30 and 15 teeth: 24 high, and 24 × 15/30 = 12.
    /// let outline = Silhouette::of(&gearbox)?.path;
    /// assert!(outline.contains("v24.0h6") && outline.contains("v12.0h6"), "{outline}");
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn of(gearbox: &Gearbox) -> Option<Self> {
        let counts = cluster(gearbox).filter(|counts| !counts.is_empty())?;
        let (mut path, mut at, largest) = (String::new(), GAP, *counts.iter().max()?);
        for count in counts {
            let high = f64::from(HEIGHT) * f64::from(count) / f64::from(largest);
            let top = (f64::from(HEIGHT) - high) / 2.0;
            let _ = write!(path, "M{at} {top:.1}v{high:.1}h{GEAR}v-{high:.1}z");
            at += GEAR + GAP;
        }
        let _ = write!(path, "M0 {}h{at}v2h-{at}z", HEIGHT / 2 - 1);
        Some(Self { path, width: at })
    }
}

/// The counts along the shaft as it lies in the box: in line the constant pair at its end and the gears from high to low, of two shafts
/// from low to high; reverse stands last.
fn cluster(gearbox: &Gearbox) -> Option<Vec<u16>> {
    if !gearbox.is_counted() {
        return None;
    }
    // Reduced at the output, the gears drive the countershaft and the constant pair takes from it; else the other way round.
    let is_driven = gearbox.layout() == Layout::OutputReduced;
    let of_gear = |mesh: Mesh| if is_driven { mesh.driven.count() } else { mesh.driver.count() };
    let of_constant = |mesh: Mesh| if is_driven { mesh.driver.count() } else { mesh.driven.count() };
    let mut counts: Vec<u16> = gearbox.gears().iter().filter_map(|gear| gear.mesh()).map(of_gear).collect();
    if gearbox.layout() != Layout::TwoShaft {
        counts.reverse();
    }
    counts.extend(gearbox.reverse_gears().map(|reverse| of_gear(reverse.pair)));
    match (gearbox.layout(), gearbox.constant().map(of_constant)) {
        (Layout::InputReduced, Some(constant)) => counts.insert(0, constant),
        (_, constant) => counts.extend(constant),
    }
    Some(counts)
}
