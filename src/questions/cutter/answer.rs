//! The gear to be cut with its mate: profile shifts, allowances from the backlash, cautions.

use super::read::Wanted;
use crate::gearing::geometry::undercut::least_shift_of_tool;
use crate::gearing::geometry::{Cut, GeometryError};
use crate::gearing::hunting::Hunting;
use crate::gearing::{Mesh, Teeth};
use crate::job::Bench;
use crate::toothform::allowance::Allowance;
use crate::toothform::outline::{HalfTooth, straight_depth};
use crate::toothform::pair::Flank;
use crate::toothform::pins::{self, Laid};
use crate::toothform::relief::{self, Relief};
use crate::toothform::split::{Shared, Split, by_rule, with_first};
use crate::toothform::standard::Rack;
use crate::toothform::{CutGear, pair, span};
use crate::units::Length;
use crate::units::common::millimetres;

/// A gear as it is ordered.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// What was typed for it.
    pub wanted: Wanted,
    /// The gear, without backlash.
    pub gear: CutGear,
    /// The tool.
    pub rack: Rack,
    /// What its profile shift comes from.
    pub from: ShiftFrom,
    /// Its tips.
    pub tip: Length,
    /// The pair; none without a mate.
    pub pair: Option<Shared>,
    /// Why there is no pair, and the centre distance these counts want without profile shift.
    pub no_pair: Option<(GeometryError, Option<Length>)>,
    /// Least and most backlash on the working circle; none where a row of DIN 3967 thins a gear without its mate.
    pub backlash: Option<[Length; 2]>,
    /// The row of DIN 3967 by which it is thinned.
    pub row: Option<Allowance>,
    /// What its span and its mate's are less, at least and at most.
    pub thinner: [[Length; 2]; 2],
    /// Its tips, where they are relieved.
    pub relief: Option<Relief>,
    /// Over how many teeth.
    pub over: u16,
    /// The pins it is checked with.
    pub pin: Length,
}

/// What a profile shift comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShiftFrom {
    /// It was typed, or measured.
    Given,
    /// A rule splits what the centre distance asks for.
    Rule(Split),
    /// Nothing asks for any.
    Nothing,
}

/// Something that is wrong with a gear though it can be drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// The tool digs into the flank of the gear or its mate; the least profile shift without.
    Undercut(Teeth, f64),
    /// The tip is narrower than a fifth of a module, which hardening does not bear.
    Pointed(Teeth, Length),
    /// The mate's tips reach below the circle on which the involute of that gear begins.
    Interference(Teeth, Length),
    /// Fewer than 1.2 teeth share the load.
    Contact(f64),
    /// Fewer than 1.2 teeth share it before the relieved tips come in.
    RelievedContact(f64),
    /// A reference diameter beyond the rows of DIN 3967.
    NoRow(Length),
    /// Relief cannot begin on that circle: it lies between these.
    Relief(Length, [Length; 2]),
    /// The counts have a factor in common: the same teeth of the pair meet again and again.
    NotHunting(Mesh),
}

/// How many teeth of a pair share the load, on average and across the shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contact {
    /// From tip to tip (ISO 21771:2007).
    pub tip_to_tip: f64,
    /// The same without what the mate's tips find no involute for.
    pub involute: f64,
    /// What is left of that up to where this gear's tip relief begins; none without relief. Common practice, no published source: relieved
    /// flanks touch under load only.
    pub relieved: Option<f64>,
}

/// The narrowest tip, in modules. Common practice for hardened teeth.
const NARROWEST_TIP: f64 = 0.2;
/// The least contact ratio. Common practice.
pub const LEAST_CONTACT: f64 = 1.2;
/// Least and most backlash in modules where none is typed. Common practice, no published source.
pub const USUAL_BACKLASH: [f64; 2] = [0.03, 0.06];

impl Order {
    /// The gear that is typed; nothing without its count and pitch.
    pub fn of(bench: &Bench) -> Option<Self> {
        Self::of_wanted(Wanted::of(bench))
    }

    /// The same of what was read already.
    pub fn of_wanted(wanted: Wanted) -> Option<Self> {
        let (teeth, module, rack) = (wanted.teeth?, wanted.module?, wanted.rack?);
        let (addendum, dedendum, radius) = rack.sizes();
        let cut = Cut::new(module, wanted.helix, wanted.pressure).ok()?.with_heights(addendum, dedendum);
        let (pair, no_pair) = pair_of(&wanted, cut, teeth, radius);
        let (shift, from) = match (wanted.profile_shift, &pair, wanted.split) {
            (Some(given), ..) => (given, ShiftFrom::Given),
            (None, Some(shared), Some(rule)) => (first(shared).shift, ShiftFrom::Rule(rule)),
            _ => (0.0, ShiftFrom::Nothing),
        };
        let gear = CutGear { teeth, cut, shift };
        let tip = pair.as_ref().map_or_else(|| gear.tip_diameter(), |shared| tips(shared)[0]);
        let thinned = Thinned::of(&wanted, &gear, pair.as_ref());
        let relief = relief_of(&wanted, &gear, tip);
        let pin = wanted.pin.unwrap_or_else(|| pins::usual_pin(&gear));
        let over = span::teeth_to_span(&gear);
        let Thinned { backlash, row, thinner } = thinned;
        Some(Self { wanted, gear, rack, from, tip, pair, no_pair, backlash, row, thinner, relief, over, pin })
    }

    /// Span limits: the upper and the lower.
    pub fn span_limits(&self) -> [Length; 2] {
        let whole = span::over_teeth(&self.gear, self.over);
        self.own_thinner().map(|thinner| whole - thinner)
    }

    /// What its own span is less, at least and at most.
    pub fn own_thinner(&self) -> [Length; 2] {
        let [own, _] = self.thinner;
        own
    }

    /// The limits of its tooth thickness on the reference circle, square to the teeth: a span loses cos αₙ times as much.
    pub fn thickness_limits(&self) -> [Length; 2] {
        self.own_thinner().map(|thinner| self.gear.normal_thickness() - thinner / self.gear.cut.pressure_rad().cos())
    }

    /// The form of a tooth of so thick a gear, its tips relieved.
    pub fn tooth(&self, gear: &CutGear) -> HalfTooth {
        let (_, _, radius) = self.rack.sizes();
        let half = HalfTooth::of(gear, radius, self.tip);
        self.relief.map_or(half.clone(), |relief| relief.of(gear, half))
    }

    /// The gear as thin as a span this much less makes it.
    pub fn thinned(&self, thinner: Length) -> CutGear {
        let per_module = span::thinning(&self.gear, 1.0);
        self.gear.with_shift(self.gear.shift - (thinner / per_module).value)
    }

    /// The reading over pins at both limits; none where the pin does not lie on the flanks.
    pub fn pin_limits(&self) -> Option<[Laid; 2]> {
        let [upper, lower] = self.own_thinner().map(|thinner| pins::lay(&self.thinned(thinner), self.pin).ok());
        Some([upper?, lower?])
    }

    /// Everything that is wrong with it.
    pub fn faults(&self) -> Vec<Fault> {
        let gears =
            self.pair.as_ref().map_or_else(|| vec![(self.gear, self.tip)], |shared| shared.gears.into_iter().zip(tips(shared)).collect());
        let (_, _, radius) = self.rack.sizes();
        let straight = straight_depth(&self.gear.cut, radius);
        let mut faults = Vec::new();
        for (gear, tip) in gears {
            let least = least_shift_of_tool(&gear.cut, gear.teeth, straight);
            if gear.shift < least - 1e-3 {
                faults.push(Fault::Undercut(gear.teeth, least));
            }
            let relief = self.relief.filter(|_| gear == self.gear);
            let land = relief.map_or_else(|| gear.thickness_at(tip), |relief| relief.thickness_at(&gear, tip)).unwrap_or_default();
            if land < gear.cut.normal_module() * NARROWEST_TIP {
                faults.push(Fault::Pointed(gear.teeth, land.max(Length::default())));
            }
        }
        let gears = std::iter::once(self.gear).chain(self.pair.iter().map(mate));
        let beyond = gears.map(|gear| gear.reference_diameter()).find(|_| self.wanted.allowance.is_some() && self.row.is_none());
        faults.extend(beyond.map(Fault::NoRow));
        if let (Some((_, Some(from))), None) = (self.wanted.relief, self.relief) {
            faults.push(Fault::Relief(from, [self.gear.base_diameter(), self.tip]));
        }
        if let Some(shared) = &self.pair {
            faults.extend(self.of_pair(shared));
        }
        faults
    }

    fn of_pair(&self, shared: &Shared) -> Vec<Fault> {
        let reached = pair::reached(&shared.geometry, tips(shared));
        let each = self.flanks(shared).into_iter().zip(reached).zip(shared.gears);
        let interferes = each.filter_map(|((flank, reached), gear)| {
            // A rounding is no interference: a tool whose tip just leaves the flank whole leaves it to a micrometre.
            let is_below = reached.is_none_or(|reached| reached < flank.begins - millimetres(2e-3));
            is_below.then_some(Fault::Interference(gear.teeth, flank.begins))
        });
        let mut faults: Vec<Fault> = interferes.collect();
        let contact = self.contact_of(shared);
        if contact.involute < LEAST_CONTACT {
            faults.push(Fault::Contact(contact.involute));
        } else {
            faults.extend(contact.relieved.filter(|relieved| *relieved < LEAST_CONTACT).map(Fault::RelievedContact));
        }
        let [driver, driven] = shared.gears.map(|gear| gear.teeth);
        let mesh = Mesh { driver, driven };
        faults.extend((!Hunting::of(mesh).is_hunting()).then_some(Fault::NotHunting(mesh)));
        faults
    }

    /// How many teeth of the pair share the load; none without a mate.
    pub fn contact(&self) -> Option<Contact> {
        self.pair.as_ref().map(|shared| self.contact_of(shared))
    }

    fn contact_of(&self, shared: &Shared) -> Contact {
        let [own, other] = self.flanks(shared);
        let ratio = |own: Flank| pair::contact_ratio(&shared.geometry, [own, other]);
        let relieved = self.relief.map(|relief| ratio(Flank { ends: relief.from.min(own.ends), ..own }));
        Contact { tip_to_tip: shared.geometry.transverse_contact_ratio, involute: ratio(own), relieved }
    }

    /// The involutes of both gears, from where the root of the tool ends to the tips.
    fn flanks(&self, shared: &Shared) -> [Flank; 2] {
        let (_, _, radius) = self.rack.sizes();
        let ([one, two], [tip1, tip2]) = (shared.gears, tips(shared));
        let flank = |gear: &CutGear, tip: Length| Flank { begins: millimetres(2.0 * HalfTooth::of(gear, radius, tip).form_mm), ends: tip };
        [flank(&one, tip1), flank(&two, tip2)]
    }
}

fn first(shared: &Shared) -> &CutGear {
    let [first, _] = &shared.gears;
    first
}

/// The tips of a pair, lowered so that each keeps its clearance over the other's root.
pub fn tips(shared: &Shared) -> [Length; 2] {
    // Tips are lowered, never raised: an axis distance a hair short of the sum wants none of it.
    let [one, two] = &shared.gears;
    let [tip1, tip2] = shared.geometry.tip_diameters;
    [tip1.min(one.tip_diameter()), tip2.min(two.tip_diameter())]
}

fn pair_of(wanted: &Wanted, cut: Cut, teeth: Teeth, tip_radius: f64) -> (Option<Shared>, Option<(GeometryError, Option<Length>)>) {
    let Some(mate) = wanted.mate_teeth else { return (None, None) };
    let plain = [teeth, mate].map(|teeth| CutGear { teeth, cut, shift: 0.0 });
    let reference = pair::tightest_centre(plain);
    let Some(centre) =
        wanted.centre.or_else(|| pair::tightest_centre([plain[0].with_shift(wanted.profile_shift.unwrap_or(0.0)), plain[1]]))
    else {
        return (None, None);
    };
    let shared = match (wanted.profile_shift, wanted.split) {
        (Some(first), _) => with_first(cut, [teeth, mate], centre, first),
        (None, Some(rule)) => by_rule(cut, [teeth, mate], centre, rule, tip_radius),
        (None, None) => return (None, None),
    };
    match shared {
        Ok(shared) => (Some(shared), None),
        Err(why) => (None, Some((why, reference))),
    }
}

fn backlash(wanted: &Wanted, module: Length) -> [Length; 2] {
    let [least, most] = USUAL_BACKLASH.map(|share| module * share);
    match wanted.backlash {
        [Some(one), Some(other)] => [one.min(other), one.max(other)],
        [Some(least), None] => [least, least + module * 0.03],
        [None, Some(most)] => [most * 0.5, most],
        [None, None] => [least, most],
    }
}

/// How much thinner a pair is cut.
struct Thinned {
    backlash: Option<[Length; 2]>,
    row: Option<Allowance>,
    thinner: [[Length; 2]; 2],
}

impl Thinned {
    /// By a row of DIN 3967, where one is typed that reaches both gears, else half the backlash each.
    fn of(wanted: &Wanted, gear: &CutGear, pair: Option<&Shared>) -> Self {
        let by_row = |row: Allowance| {
            let mate = pair.map_or(*gear, mate);
            let both = [row.thinner(gear.reference_diameter())?, row.thinner(mate.reference_diameter())?];
            // W loses A_s cos αₙ; the backlash square to the flanks is what both lose.
            let thinner = both.map(|thinner| thinner.map(|thinner| thinner * gear.cut.pressure_rad().cos()));
            let [[own_least, own_most], [mate_least, mate_most]] = thinner;
            let backlash = pair.map(|_| [own_least + mate_least, own_most + mate_most].map(|square| square / to_flanks(gear, pair)));
            Some(Self { backlash, row: Some(row), thinner })
        };
        wanted.allowance.and_then(by_row).unwrap_or_else(|| {
            let backlash = backlash(wanted, gear.cut.normal_module());
            let half = backlash.map(|around| around * to_flanks(gear, pair) * 0.5);
            Self { backlash: Some(backlash), row: None, thinner: [half; 2] }
        })
    }
}

/// What a backlash on the working circle is times to be one square to the flanks: `j_bn` = `j_wt` cos `α_wt` cos `β_b`.
fn to_flanks(gear: &CutGear, pair: Option<&Shared>) -> f64 {
    let pressure = pair.map_or_else(|| gear.cut.transverse_pressure_rad(), |shared| shared.geometry.working_pressure_rad);
    pressure.cos() * gear.base_helix_rad().cos()
}

/// The second of a pair.
pub fn mate(shared: &Shared) -> CutGear {
    let [_, mate] = shared.gears;
    mate
}

/// Relief as typed; none where it would begin off the flank.
fn relief_of(wanted: &Wanted, gear: &CutGear, tip: Length) -> Option<Relief> {
    let (amount, from) = wanted.relief?;
    let from = from.unwrap_or_else(|| tip - gear.cut.normal_module() * (2.0 * relief::USUAL_DEPTH));
    (from > gear.base_diameter() && from < tip).then_some(Relief { amount, from, tip })
}
