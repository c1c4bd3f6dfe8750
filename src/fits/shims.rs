//! Which shims, of those that are left, bring the play into the range that is wanted.

use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// The most shims in one pack: a thicker pack springs, so one thick spacer is put instead (common practice, no published source).
pub const MOST_IN_A_PACK: u32 = 5;
/// The most sizes of a kit that are looked at.
pub const MOST_SIZES: usize = 24;

/// One size of a kit.
#[derive(Clone, Debug, PartialEq)]
pub struct Shim {
    /// What stands on its bag: `0.10 mm`.
    pub label: String,
    /// How thick it is.
    pub thickness: Length,
    /// How many are left.
    pub left: u32,
}

/// Lays shims into a kit: the same size twice is one size.
pub fn lay(kit: &mut Vec<Shim>, shim: Shim) {
    let is_same = |other: &&mut Shim| (other.thickness - shim.thickness).abs() < millimetres(1e-6);
    match kit.iter_mut().find(is_same) {
        Some(known) => known.left = known.left.saturating_add(shim.left),
        None => kit.push(shim),
    }
}

/// The play that is wanted; below nothing it is preload.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlayRange {
    /// The least.
    pub least: Length,
    /// The greatest.
    pub greatest: Length,
}

impl PlayRange {
    /// Halfway between.
    pub fn middle(self) -> Length {
        (self.least + self.greatest) / 2.0
    }

    /// Whether a play lies inside, the ends with it, to the nanometre.
    pub fn holds(self, play: Length) -> bool {
        (nanometres(self.least)..=nanometres(self.greatest)).contains(&nanometres(play))
    }
}

/// Where shims stand, and so what one of them does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShimsGo {
    /// Between the parts: each takes play up.
    InTheStack,
    /// Under the cover that closes the stack: each gives play.
    UnderTheCover,
}

impl ShimsGo {
    /// The play with shims of this thickness in place.
    pub fn play(self, gap: Length, shims: Length) -> Length {
        match self {
            Self::InTheStack => gap - shims,
            Self::UnderTheCover => gap + shims,
        }
    }

    /// The least and the greatest thickness that leaves the play wanted.
    pub fn needed(self, gap: Length, wanted: PlayRange) -> [Length; 2] {
        match self {
            Self::InTheStack => [gap - wanted.greatest, gap - wanted.least],
            Self::UnderTheCover => [wanted.least - gap, wanted.greatest - gap],
        }
    }
}

/// Shims taken together.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pack {
    /// Places in the kit, thickest first; none where no shim is wanted.
    pub sizes: Vec<usize>,
    thickness_nm: i64,
}

impl Pack {
    /// How thick they are together.
    #[expect(clippy::cast_precision_loss, reason = "a pack is some millimetres thick: a thousandth of what an f64 tells apart")]
    pub fn thickness(&self) -> Length {
        millimetres(self.thickness_nm as f64 * 1e-6)
    }
}

/// What a search found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// Packs that land in the range: fewest shims first, then nearest the middle.
    pub landing: Vec<Pack>,
    /// Where none lands, the pack that comes nearest to it.
    pub nearest: Option<Pack>,
}

/// The packs of at most [`MOST_IN_A_PACK`] shims that bring `gap` into the range; `most` of them at most.
///
/// Model: every pack is tried, smallest first; a branch is left where even the thickest shims still to come cannot reach the range, or
/// where it is overshot already. Thicknesses are whole nanometres, so a pack that hits an end of the range is inside. A pack of none
/// counts too.
pub fn search(gap: Length, wanted: PlayRange, kit: &[Shim], go: ShimsGo, most: usize) -> Found {
    let [low, high] = go.needed(gap, wanted).map(nanometres);
    let mut walk = Walk { sizes: sizes(kit), low, high, slack: 0, is_for_nearest: false, pack: Pack::default(), landed: Vec::new() };
    let mut landing = Vec::new();
    for shims in 0..=MOST_IN_A_PACK {
        walk.go(0, shims);
        let mut landed = std::mem::take(&mut walk.landed);
        crate::order::by_key(&mut landed, |pack| (walk.off_middle(pack.thickness_nm), pack.sizes.clone()));
        landing.extend(landed);
        if landing.len() >= most {
            break;
        }
    }
    landing.truncate(most);
    let nearest = if landing.is_empty() { nearest(walk) } else { None };
    Found { landing, nearest }
}

/// The pack that comes nearest to the range, the fewest shims of those as near.
fn nearest(mut walk: Walk) -> Option<Pack> {
    (walk.slack, walk.is_for_nearest) = (i64::MAX / 4, true);
    for shims in 0..=MOST_IN_A_PACK {
        walk.go(0, shims);
    }
    walk.landed.pop().filter(|pack| !pack.sizes.is_empty())
}

/// Thickness, how many are left and the place in the kit, thickest first.
fn sizes(kit: &[Shim]) -> Vec<(i64, u32, usize)> {
    let mut sizes: Vec<_> = kit.iter().take(MOST_SIZES).enumerate().map(|(at, shim)| (nanometres(shim.thickness), shim.left, at)).collect();
    crate::order::by_key(&mut sizes, |(thickness, _, at)| (-thickness, *at));
    sizes.retain(|(thickness, ..)| *thickness > 0);
    sizes
}

/// A walk through the packs of one number of shims.
struct Walk {
    sizes: Vec<(i64, u32, usize)>,
    low: i64,
    high: i64,
    /// How far outside the range a pack may still lie.
    slack: i64,
    /// Whether only the nearest is kept: the slack shrinks with each that is nearer.
    is_for_nearest: bool,
    pack: Pack,
    landed: Vec<Pack>,
}

impl Walk {
    /// Tries every pack that adds so many shims to the one in hand, of the sizes from a place on.
    fn go(&mut self, from: usize, shims: u32) {
        if shims == 0 {
            self.land();
            return;
        }
        for at in from..self.sizes.len() {
            let Some(&(thickness, left, place)) = self.sizes.get(at) else { return };
            if self.pack.thickness_nm + thickness * i64::from(shims) < self.low - self.slack {
                return; // what follows is thinner still
            }
            let taken = self.pack.sizes.iter().filter(|other| **other == place).count();
            let is_used_up = u32::try_from(taken).is_ok_and(|taken| taken >= left);
            if is_used_up || self.pack.thickness_nm + thickness > self.high + self.slack {
                continue;
            }
            self.pack.sizes.push(place);
            self.pack.thickness_nm += thickness;
            self.go(at, shims - 1);
            self.pack.thickness_nm -= thickness;
            self.pack.sizes.pop();
        }
    }

    /// Keeps the pack in hand where it lies inside, or nearer than any before.
    fn land(&mut self) {
        let off = (self.low - self.pack.thickness_nm).max(self.pack.thickness_nm - self.high);
        if off > self.slack {
            return;
        }
        if self.is_for_nearest {
            self.landed.clear();
            self.slack = off - 1;
        }
        self.landed.push(self.pack.clone());
    }

    /// Twice the distance from the middle of the range, so that it is whole.
    fn off_middle(&self, thickness_nm: i64) -> i64 {
        (2 * thickness_nm - self.low - self.high).abs()
    }
}

/// A length in whole nanometres: a ten-thousandth of an inch is 2,540 of them.
#[expect(clippy::cast_possible_truncation, reason = "limits keep lengths to some metres, and a float beyond an i64 becomes its end")]
fn nanometres(length: Length) -> i64 {
    (in_millimetres(length) * 1e6).round() as i64
}
