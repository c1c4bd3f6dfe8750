//! A gear set that does not exist yet: tooth counts for a centre distance whose ladder comes nearest to the one wished for.
//!
//! [`ladder`] gives the ratios to be aimed at; [`solve_design`] finds the teeth; [`brief`] is what it must keep to.

pub mod brief;
pub mod ladder;

use crate::catalogue::{Column, Entry, PartKind};
use crate::gearing::hunting::Hunting;
use crate::gearing::teeth::decimal;
use crate::gearing::{Gear, Gearbox, Layout, Mesh, write};

pub use brief::{Brief, BriefError};
pub use ladder::Target;

/// A pair whose teeth share a factor is taken only where it is nearer than a hunting one by more than this (in natural logarithm
/// of the ratio, 0.004 is 0.4 %). Common practice, no published source.
const HUNTING_WORTH: f64 = 0.004;

/// How many designs are kept.
const KEPT: usize = 20;

/// A gear set that could be made.
#[derive(Clone, Debug, PartialEq)]
pub struct Design {
    /// The counts found, as a box of the layout asked for; without reverse.
    pub gearbox: Gearbox,
    /// The ratios aimed at, lowest gear first.
    pub aims: Vec<f64>,
    /// The largest share by which a ratio is off its aim.
    pub worst: f64,
    /// Root of the mean square share by which the ratios are off.
    pub mean: f64,
    /// Pairs whose teeth share a factor, counted.
    pub not_hunting: usize,
}

/// The designs found, and how many constant pairs were tried.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Designs {
    /// The best first.
    pub best: Vec<Design>,
    /// Constant pairs tried, each with every pair of the tooth sum for each gear; all there are.
    pub judged: usize,
}

/// Finds the tooth counts whose ladder comes nearest to the one wished for.
///
/// Method: for each constant pair of the tooth sum, the pair of the sum nearest to each gear's ratio (by the logarithm, hunting pairs
/// preferred), or direct drive where that is nearer; then the constant pairs by the sum of squares. Gears do not depend on each other
/// once the constant pair is chosen, so this tries every combination.
///
/// ```
/// use layshaft::finder::design::{Brief, Target, solve_design};
/// use layshaft::gearing::{Layout, Ratio};
/// let target = Target::Ratios(vec![2.0, 1.0]);
/// let brief = Brief { sum: 60, least_teeth: 20, most_teeth: 40, layout: Layout::TwoShaft, target };
/// // 20 + 40 and 30 + 30 hit both exactly; two shafts turn against each other.
/// let best = solve_design(&brief).best.into_iter().next();
/// assert_eq!(best.map(|design| design.gearbox.ratios()), Some(vec![Ratio::new(-2, 1), Ratio::new(-1, 1)]));
/// ```
pub fn solve_design(brief: &Brief) -> Designs {
    let aims = brief.target.ratios();
    let constants: Vec<Option<Mesh>> = match brief.layout {
        Layout::TwoShaft => vec![None],
        _ => pairs(brief).into_iter().map(Some).collect(),
    };
    let mut found: Vec<(f64, Design)> = constants.iter().filter_map(|constant| with_constant(brief, *constant, &aims)).collect();
    crate::order::by(&mut found, |a, b| a.0.total_cmp(&b.0));
    found.truncate(KEPT);
    Designs { best: found.into_iter().map(|(_, design)| design).collect(), judged: constants.len() }
}

/// Every pair of the tooth sum inside the limits.
///
/// ```
/// use layshaft::finder::design::{Brief, Target, pairs};
/// use layshaft::gearing::{Layout, Mesh};
/// let target = Target::Ratios(vec![1.0]);
/// let brief = Brief { sum: 40, least_teeth: 19, most_teeth: 30, layout: Layout::TwoShaft, target };
/// let expected: Vec<Mesh> = [(19, 21), (20, 20), (21, 19)].into_iter().filter_map(|(driver, driven)| Mesh::new(driver, driven)).collect();
/// assert_eq!(pairs(&brief), expected);
/// ```
pub fn pairs(brief: &Brief) -> Vec<Mesh> {
    let fits = |driver: &u16| {
        let driven = brief.sum.checked_sub(*driver)?;
        (brief.least_teeth..=brief.most_teeth).contains(&driven).then(|| Mesh::new(*driver, driven))?
    };
    (brief.least_teeth..=brief.most_teeth).filter_map(|driver| fits(&driver)).collect()
}

/// What a pair costs: squared distance from the aim, and something for teeth that share a factor.
fn cost(mesh: Mesh, off: f64) -> f64 {
    off * off + if Hunting::of(mesh).is_hunting() { 0.0 } else { HUNTING_WORTH * HUNTING_WORTH }
}

fn with_constant(brief: &Brief, constant: Option<Mesh>, aims: &[f64]) -> Option<(f64, Design)> {
    let first = constant.map_or(1.0, |mesh| decimal(mesh.ratio()));
    let pairs = pairs(brief);
    let mut total = constant.map_or(0.0, |mesh| cost(mesh, 0.0));
    let mut gears = Vec::with_capacity(aims.len());
    for aim in aims {
        let best = pairs.iter().map(|mesh| (Gear::Mesh(*mesh), cost(*mesh, (first * decimal(mesh.ratio()) / aim).ln())));
        let direct = (brief.layout != Layout::TwoShaft).then(|| (Gear::Direct, aim.ln() * aim.ln()));
        let (gear, cost) = best.chain(direct).min_by(|a, b| a.1.total_cmp(&b.1))?;
        total += cost;
        gears.push(gear);
    }
    let gearbox = Gearbox::new(brief.layout, constant, gears, None).ok()?;
    let off: Vec<f64> = gearbox.ratios().iter().zip(aims).map(|(ratio, aim)| decimal(*ratio).abs() / aim - 1.0).collect();
    let worst = off.iter().fold(0.0, |worst: f64, off| worst.max(off.abs()));
    let squares: f64 = off.iter().map(|off| off * off).sum();
    let count: f64 = off.iter().map(|_| 1.0).sum();
    let not_hunting = gearbox.pairs().filter(|mesh| !Hunting::of(*mesh).is_hunting()).count();
    Some((total, Design { aims: aims.to_vec(), worst, mean: (squares / count).sqrt(), not_hunting, gearbox }))
}

impl Design {
    /// The design as an entry of the shop's catalogue: a drawing to be made, not in stock.
    pub fn as_set(&self, name: &str) -> Entry {
        let layout = self.gearbox.layout();
        let constant = self.gearbox.constant().map(|mesh| write::constant(mesh, layout)).unwrap_or_default();
        let set = Entry::new(PartKind::GearSet)
            .with(Column::Name, name)
            .with(Column::Layout, layout.id())
            .with(Column::Constant, constant)
            .with(Column::Note, "a drawing to be made")
            .with(Column::InStock, "no");
        Column::GEARS.into_iter().zip(self.gearbox.gears()).fold(set, |set, (column, teeth)| set.with(column, write::gear(*teeth, layout)))
    }
}
