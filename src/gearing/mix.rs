//! Gears from different sets in one box: which pairs share the centre distance, which cannot, and what ratios the mixture has.

use super::check::SUM_TOLERANCE;
use super::gearbox::{Gear, Gearbox, GearboxError, Layout, Reverse, ReverseGears};
use super::geometry::{Cut, Setting, geometry};
use super::teeth::{Mesh, Teeth};
use crate::gearing::GearNumber;
use crate::problem::Explain;
use crate::units::{Length, number};

/// A set that gives parts.
#[derive(Clone, Copy, Debug)]
pub struct Donor<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Its counts.
    pub gearbox: &'a Gearbox,
    /// How it is cut, where that is known.
    pub cut: Option<Cut>,
}

/// Which set each part comes from.
#[derive(Clone, Copy, Debug)]
pub struct Mixture<'a> {
    /// The input shaft with its gear; where the box is reduced at the output, the output gear. A two-shaft box has none, and it is not looked at.
    pub constant: Donor<'a>,
    /// The cluster; in a two-shaft box the input shaft.
    pub cluster: Donor<'a>,
    /// The set that each forward gear on the mainshaft (input line, output shaft) comes from, lowest first.
    pub gears: &'a [Donor<'a>],
    /// The tooth sum that the case's centre distance takes; `None` takes the cluster's own most common one.
    pub sum: Option<u16>,
    /// The case's centre distance, where it is known.
    pub centre: Option<Length>,
}

/// Which pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Place {
    /// The constant pair.
    Constant,
    /// A forward gear, 0 is first.
    Gear(GearNumber),
}

/// Whether a pair can mesh in that case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fit {
    /// Its tooth sum is the case's.
    Shares,
    /// Its tooth sum is off by a few teeth, which profile shift can take up if the gears were cut for it: the pair's sum less the case's.
    WithShift(i32),
    /// Its tooth sum is too far off: the pair's sum less the case's.
    Apart(i32),
    /// The two gears are cut differently, whatever their sum.
    DifferentCut,
    /// By the cut and the centre distance the flanks cannot work, or by so much profile shift that no pair has it.
    WrongCentre,
}

impl Fit {
    /// Whether the pair can be fitted.
    pub fn can_mesh(self) -> bool {
        matches!(self, Self::Shares | Self::WithShift(_))
    }
}

/// One pair of the mixture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// Which pair of the box it is.
    pub place: Place,
    /// Its counts.
    pub mesh: Mesh,
    /// Whether it can mesh.
    pub fit: Fit,
    /// The sum of the profile shifts it asks for, where cut and centre distance are known.
    pub shift_sum: Option<f64>,
    /// The sum that the case takes.
    pub wanted_sum: u16,
}

impl Explain for Pair {
    fn what(&self) -> String {
        let name = match self.place {
            Place::Constant => "the constant pair".to_owned(),
            Place::Gear(gear) => format!("the {gear} pair"),
        };
        let Mesh { driver, driven } = self.mesh;
        let (sum, wanted) = (self.mesh.sum(), self.wanted_sum);
        match self.fit {
            Fit::Shares => format!("{name} {driver} and {driven} shares the case's centre distance"),
            Fit::WithShift(_) => format!("{name} {driver} and {driven} sums to {sum} where the case takes {wanted}"),
            Fit::Apart(_) => format!("{name} {driver} and {driven} sums to {sum} and cannot mesh where the case takes {wanted}"),
            Fit::DifferentCut => format!("{name} {driver} and {driven} is cut with two different modules, helix or pressure angles"),
            Fit::WrongCentre => format!("{name} {driver} and {driven} does not suit the case's centre distance"),
        }
    }

    fn what_to_do(&self) -> String {
        let partner = self.wanted_sum.checked_sub(self.mesh.driver.count()).and_then(Teeth::new);
        match self.fit {
            Fit::Shares => "nothing need be done".into(),
            Fit::WithShift(_) => "check backlash and contact before use: only gears cut for it take that up".into(),
            Fit::Apart(_) => partner.map_or_else(
                || "take both gears of the pair from one set".into(),
                |partner| format!("the {}-tooth gear wants a partner of {partner} teeth", self.mesh.driver),
            ),
            Fit::DifferentCut => "use both gears of the pair from one set".into(),
            Fit::WrongCentre => "use both gears of the pair from a set made for this case".into(),
        }
    }
}

/// A mixture: its box, and each pair judged.
#[derive(Clone, Debug, PartialEq)]
pub struct Mixed {
    /// The box with the mixture's counts, for its ratios; whether it can be built is said by its pairs.
    pub gearbox: Gearbox,
    /// Each pair, the constant pair first.
    pub pairs: Vec<Pair>,
}

impl Mixed {
    /// Whether every pair can mesh.
    pub fn can_mesh(&self) -> bool {
        self.pairs.iter().all(|pair| pair.fit.can_mesh())
    }
}

/// Why parts make no mixture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MixError {
    /// Sets of different layouts.
    Layouts {
        /// The cluster's set.
        cluster: String,
        /// The set that differs.
        other: String,
    },
    /// A gear whose partner is not on the cluster, or that its set does not have.
    NoSuchGear {
        /// The set that lacks it.
        set: String,
        /// The gear.
        gear: GearNumber,
    },
    /// A gear that is known by its printed ratio alone.
    NotCounted {
        /// What the set is called.
        set: String,
        /// The gear.
        gear: GearNumber,
    },
    /// A set that was chosen and is not in the catalogue any longer: what the set is called.
    NoSuchSet(String),
    /// The parts make no gearbox.
    NoGearbox(GearboxError),
}

explain! { MixError:
    Self::Layouts { cluster, other } => format!("{cluster} and {other} are laid out differently"), "mix sets of one layout";
    Self::NoSuchGear { set, gear } => format!("{set} has no gears for {gear}"), format!("take {gear} from another set, or leave it out");
    Self::NotCounted { set, gear } => format!("{gear} of {set} is known by its ratio, not by its teeth"),
        "count its teeth, or take parts that are counted";
    Self::NoSuchSet(set) => format!("“{}” is no gear set of the catalogue any longer", number::clip(set)), "choose another set";
    Self::NoGearbox(_) => "these parts make no gearbox", "take at least one forward gear, and at most eight";
}

/// Puts the parts together and judges each pair.
///
/// # Errors
/// When the sets are laid out differently, or a gear is missing.
pub fn mix(mixture: &Mixture<'_>) -> Result<Mixed, MixError> {
    let layout = mixture.cluster.gearbox.layout();
    check_layouts(mixture, layout)?;
    let wanted_sum = mixture.sum.unwrap_or_else(|| common_sum(mixture.cluster.gearbox));
    let judge = |place, mesh, donors: [&Donor<'_>; 2]| judge(place, mesh, donors, wanted_sum, mixture.centre);
    let constant = constant(mixture);
    let mut pairs: Vec<Pair> =
        constant.map(|mesh| judge(Place::Constant, mesh, [&mixture.constant, &mixture.cluster])).into_iter().collect();
    let mut gears = Vec::new();
    for (at, donor) in GearNumber::each(mixture.gears) {
        let gear = gear(mixture, donor, at)?;
        if let Gear::Mesh(mesh) = gear {
            pairs.push(judge(Place::Gear(at), mesh, [donor, &mixture.cluster]));
        }
        gears.push(gear);
    }
    let gearbox = Gearbox::new(layout, constant, gears, reverse(mixture)).map_err(MixError::NoGearbox)?;
    Ok(Mixed { gearbox, pairs })
}

fn check_layouts(mixture: &Mixture<'_>, layout: Layout) -> Result<(), MixError> {
    let constant = (layout != Layout::TwoShaft).then_some(&mixture.constant);
    match constant.into_iter().chain(mixture.gears).find(|donor| donor.gearbox.layout() != layout) {
        Some(other) => Err(MixError::Layouts { cluster: mixture.cluster.name.to_owned(), other: other.name.to_owned() }),
        None => Ok(()),
    }
}

/// The most common tooth sum of a set, the least of them where several are as common.
fn common_sum(gearbox: &Gearbox) -> u16 {
    let sums: Vec<u16> = super::check::ToothSums::of(gearbox).all().collect();
    let count = |sum: u16| sums.iter().filter(|other| **other == sum).count();
    sums.iter().copied().max_by_key(|sum| (count(*sum), std::cmp::Reverse(*sum))).unwrap_or_default()
}

fn constant(mixture: &Mixture<'_>) -> Option<Mesh> {
    let (line, cluster) = (mixture.constant.gearbox.constant()?, mixture.cluster.gearbox.constant()?);
    Some(match mixture.cluster.gearbox.layout() {
        Layout::OutputReduced => Mesh { driver: cluster.driver, driven: line.driven },
        Layout::InputReduced | Layout::TwoShaft => Mesh { driver: line.driver, driven: cluster.driven },
    })
    .filter(|_| mixture.cluster.gearbox.layout() != Layout::TwoShaft)
}

fn gear(mixture: &Mixture<'_>, donor: &Donor<'_>, at: GearNumber) -> Result<Gear, MixError> {
    let missing = |donor: &Donor<'_>| MixError::NoSuchGear { set: donor.name.to_owned(), gear: at };
    let not_counted = |donor: &Donor<'_>| MixError::NotCounted { set: donor.name.to_owned(), gear: at };
    let line = match *at.of(donor.gearbox.gears()).ok_or_else(|| missing(donor))? {
        Gear::Mesh(mesh) => mesh,
        Gear::Direct => return Ok(Gear::Direct),
        Gear::Printed(_) => return Err(not_counted(donor)),
    };
    let cluster = match at.of(mixture.cluster.gearbox.gears()) {
        Some(Gear::Mesh(mesh)) => *mesh,
        Some(Gear::Printed(_)) => return Err(not_counted(&mixture.cluster)),
        Some(Gear::Direct) | None => return Err(missing(&mixture.cluster)),
    };
    Ok(Gear::Mesh(match mixture.cluster.gearbox.layout() {
        Layout::OutputReduced => Mesh { driver: line.driver, driven: cluster.driven },
        Layout::InputReduced | Layout::TwoShaft => Mesh { driver: cluster.driver, driven: line.driven },
    }))
}

/// Reverse with the cluster's gear and idler, and the other gear of the set that gives 1st.
fn reverse(mixture: &Mixture<'_>) -> Option<Reverse> {
    let (cluster, line) = (mixture.cluster.gearbox.reverse_gears()?, mixture.gears.first()?.gearbox.reverse_gears()?);
    let pair = match mixture.cluster.gearbox.layout() {
        Layout::OutputReduced => Mesh { driver: line.pair.driver, driven: cluster.pair.driven },
        Layout::InputReduced | Layout::TwoShaft => Mesh { driver: cluster.pair.driver, driven: line.pair.driven },
    };
    Some(Reverse::Geared(ReverseGears { pair, idler: cluster.idler }))
}

fn judge(place: Place, mesh: Mesh, donors: [&Donor<'_>; 2], wanted_sum: u16, centre: Option<Length>) -> Pair {
    let [one, other] = donors.map(|donor| donor.cut);
    let teeth = i32::from(mesh.sum()) - i32::from(wanted_sum);
    let by_sum = match teeth.unsigned_abs() {
        0 => Fit::Shares,
        few if few <= u32::from(SUM_TOLERANCE) => Fit::WithShift(teeth),
        _ => Fit::Apart(teeth),
    };
    let pair = |fit, shift_sum| Pair { place, mesh, fit, shift_sum, wanted_sum };
    let (Some(one), Some(other)) = (one, other) else { return pair(by_sum, None) };
    if !one.meshes_with(&other) {
        return pair(Fit::DifferentCut, None);
    }
    if centre.is_none() {
        return pair(by_sum, None);
    }
    // Where cut and centre distance are known they decide, and the sums only name the difference.
    match geometry(&Setting { mesh, cut: one, centre, driver_shift: None, face_width: None }) {
        Ok(found) => pair(if teeth == 0 { Fit::Shares } else { Fit::WithShift(teeth) }, Some(found.shift_sum)),
        Err(_) => pair(Fit::WrongCentre, None),
    }
}
