//! From a printed ladder back to every combination of tooth counts that shares one centre distance and rounds to it.
//!
//! Here: what is wished ([`Wish`]) and what is found ([`Outcome`]). [`search`] goes through the constant pairs in slices;
//! `window` finds, for one of them, the pairs of each gear by exact integer bounds, so that the work grows with the constant
//! pairs and not with the combinations.

pub mod search;
mod window;

pub use search::LadderSearch;

use super::printed::Figure;
use crate::gearing::GearNumber;
use crate::gearing::gearbox::{Gear, Gearbox, Layout};
use crate::gearing::hunting::Hunting;
use crate::gearing::part::Part;
use crate::gearing::teeth::{Mesh, Ratio, Teeth, decimal};
use crate::problem::Explain;
use crate::units::number;

/// What is known before the search.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wish {
    /// How the box is laid out. In line, a figure of exactly one is taken for direct.
    pub layout: Layout,
    /// The printed ratios.
    pub figures: Vec<Figure>,
    /// The fewest teeth of any gear.
    pub fewest: u16,
    /// The most teeth of any gear.
    pub most: u16,
    /// By how much the tooth sums may differ, 0 to 4: 0 asks for one sum throughout.
    pub tolerance: u16,
    /// Counts that are known already.
    pub known: Vec<(Part, Teeth)>,
    /// How many of the best are kept; the number found is told in any case.
    pub keep: usize,
}

impl Wish {
    /// A wish with the usual limits: 12 to 60 teeth, one tooth sum, the best 100 kept.
    pub fn new(layout: Layout, figures: Vec<Figure>) -> Self {
        Self { layout, figures, fewest: Self::FEWEST, most: Self::MOST, tolerance: 0, known: Vec::new(), keep: 100 }
    }

    /// The fewest teeth that are usual.
    pub const FEWEST: u16 = 12;
    /// The most teeth that are usual.
    pub const MOST: u16 = 60;
    /// The greatest tolerance that can be asked for.
    pub const MOST_TOLERANCE: u16 = 4;

    /// The figures that need a pair, with their gear.
    pub(super) fn geared(&self) -> impl Iterator<Item = (GearNumber, &Figure)> {
        GearNumber::each(&self.figures).filter(|(_, figure)| !self.is_direct(figure))
    }

    fn is_direct(&self, figure: &Figure) -> bool {
        self.layout != Layout::TwoShaft && figure.is_one()
    }

    fn known_at(&self, part: Part) -> Option<u16> {
        self.known.iter().find(|(at, _)| *at == part).map(|(_, teeth)| teeth.count())
    }

    /// The gears with these pairs put in where the figure is no direct one.
    pub(super) fn gears(&self, pairs: impl IntoIterator<Item = Mesh>) -> Vec<Gear> {
        let mut pairs = pairs.into_iter();
        let gear = |figure| if self.is_direct(figure) { Some(Gear::Direct) } else { pairs.next().map(Gear::Mesh) };
        self.figures.iter().filter_map(gear).collect()
    }
}

/// Why a wish cannot be searched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WishError {
    /// No figures.
    Nothing,
    /// Every figure is direct.
    OnlyDirect,
    /// Limits of teeth that leave nothing, or lie outside 8 to 150.
    Limits {
        /// The fewest teeth asked for.
        fewest: u16,
        /// The most teeth asked for.
        most: u16,
    },
    /// A tolerance that joins boxes of different sizes: what was asked.
    Tolerance(u16),
}

explain! { WishError:
    Self::Nothing => "no printed ratios are given", "type the ratios as they are printed, such as 2.47 1.67 1.24 1.00";
    Self::OnlyDirect => "a direct gear tells nothing of the teeth", "add the ratio of a lower gear";
    Self::Limits { fewest, most } => format!("no gear has {fewest} to {most} teeth"),
        format!("type limits from {} to {}, the fewer first, such as 12 to 60", Teeth::LEAST, Teeth::GREATEST);
    Self::Tolerance(given) => format!("tooth sums that differ by {given} do not share a centre distance"),
        format!("allow 0 to {}", Wish::MOST_TOLERANCE);
}

/// One combination that fits.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The constant pair, where the layout has one.
    pub constant: Option<Mesh>,
    /// The gears, lowest first.
    pub gears: Vec<Gear>,
    /// Where it ranks.
    pub rank: Rank,
}

impl Found {
    /// It, as a gearbox.
    pub fn gearbox(&self, layout: Layout) -> Option<Gearbox> {
        Gearbox::new(layout, self.constant, self.gears.clone(), None).ok()
    }

    /// Every pair, the constant pair first.
    pub fn pairs(&self) -> impl Iterator<Item = Mesh> + '_ {
        self.constant.into_iter().chain(self.gears.iter().filter_map(|gear| gear.mesh()))
    }
}

/// How combinations are ranked, the smaller first in this order.
///
/// Printed figures cannot tell the combinations apart; makers prefer one sum, hunting pairs and small gears (common practice,
/// no published source).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Rank {
    /// The greatest tooth sum less the least.
    pub spread: u16,
    /// Pairs whose counts have a common factor.
    pub not_hunting: usize,
    /// All teeth.
    pub teeth: u32,
}

impl Rank {
    /// Where pairs rank.
    pub fn of(pairs: impl Iterator<Item = Mesh>) -> Self {
        let (mut least, mut greatest) = (u16::MAX, 0);
        let mut rank = Self { spread: 0, not_hunting: 0, teeth: 0 };
        for mesh in pairs {
            (least, greatest) = (least.min(mesh.sum()), greatest.max(mesh.sum()));
            rank.not_hunting += usize::from(!Hunting::of(mesh).is_hunting());
            rank.teeth += u32::from(mesh.sum());
        }
        Self { spread: greatest.saturating_sub(least), ..rank }
    }
}

/// The ladder that comes nearest where none fits.
#[derive(Clone, Debug, PartialEq)]
pub struct Nearest {
    /// By how much the tooth sums were let differ.
    pub tolerance: u16,
    /// Its teeth.
    pub found: Found,
    /// The gear that is furthest off.
    pub gear: GearNumber,
    /// The figure of that gear in the list.
    pub printed: Figure,
    /// What the teeth give.
    pub ratio: Ratio,
    /// How far that is from the figure, in halves of its last place (1 and more does not round to it).
    pub off: f64,
}

impl Explain for Nearest {
    fn what(&self) -> String {
        none_fits(self.tolerance)
    }

    fn what_to_do(&self) -> String {
        let digits = usize::try_from(self.printed.decimals).unwrap_or_default() + 2;
        let pair = |mesh: Mesh| format!("{} to {}", mesh.driver, mesh.driven);
        format!(
            "widen the limits or check the figures; the nearest is {}, whose {} is {} where {} is printed",
            self.found.pairs().map(pair).collect::<Vec<_>>().join(", "),
            self.gear,
            number::show(decimal(self.ratio), digits),
            self.printed.shown()
        )
    }
}

/// What the search has found so far.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// By how much the tooth sums were let differ.
    pub tolerance: u16,
    /// Whether everything was gone through.
    pub complete: bool,
    /// How many combinations fit; more than are kept.
    pub count: u64,
    /// The best, in their order.
    pub best: Vec<Found>,
    /// Where none fits: which comes nearest.
    pub nearest: Option<Nearest>,
}

impl Outcome {
    /// What it comes to in a sentence without its full stop.
    ///
    /// That a single combination is left proves no teeth: helical pairs share a centre distance with sums a tooth or two apart, and
    /// some lists cut their figures off instead of rounding them.
    pub fn sentence(&self) -> String {
        let sums = sums(self.tolerance);
        match (self.complete, self.count) {
            (false, count) => format!("{} found so far", shown(count)),
            (true, 0) => none_fits(self.tolerance),
            (true, 1) if self.tolerance == 0 => format!(
                "one combination {sums} rounds to these ratios; sums of helical pairs may differ by a tooth or two, and some lists cut figures off: count one pair to be sure"
            ),
            (true, 1) => format!("one combination {sums} rounds to these ratios; some lists cut figures off: count one pair to be sure"),
            (true, count) => {
                format!("{} combinations {sums} round to these ratios: the figures alone cannot tell them apart", shown(count))
            }
        }
    }
}

/// Which sums were looked at, as part of a sentence.
fn sums(tolerance: u16) -> String {
    match tolerance {
        0 => "of one tooth sum".into(),
        1 => "of tooth sums up to 1 tooth apart".into(),
        teeth => format!("of tooth sums up to {teeth} teeth apart"),
    }
}

fn none_fits(tolerance: u16) -> String {
    format!("no combination {} inside the limits rounds to these ratios", sums(tolerance))
}

#[expect(clippy::cast_precision_loss, reason = "beyond 2^53 combinations the last digits are of no use")]
fn shown(count: u64) -> String {
    number::show(count as f64, 0)
}
