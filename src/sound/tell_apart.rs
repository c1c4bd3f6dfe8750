//! The one test that tells two suspects apart: the first of a list by which the one must do what the other does not.
//!
//! Order of the list: what needs no tool and no higher speed first. Common practice, no published source; two tones that keep step with
//! the same thing never part by speed or gear, so load, clutch or a swap must do it.

use super::noise::Heard;
use super::orders::{Follows, Orders};
use super::tone::{Moment, Origin, Seat, Tone};
use super::weights::Class;
use crate::gearing::speeds::Selected;
use crate::gearing::{GearNumber, Gearbox};
use crate::units::Frequency;

/// Which of the two.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// The first.
    First,
    /// The second.
    Second,
}

/// A test, and what it shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Test {
    /// Clutch down at the same speed: the engine's own tone leaves.
    Clutch {
        /// The one that leaves.
        leaves: Which,
    },
    /// Tyres changed front to rear: what the tyres make goes with them.
    Tyres {
        /// The one that is the tyres'.
        moves: Which,
    },
    /// The same rpm in another gear, in which the one carries the power and the other does not.
    SameRpm {
        /// The gear.
        gear: GearNumber,
        /// The one that is still there.
        stays: Which,
    },
    /// The same road speed in another gear: what hangs on the road keeps its pitch.
    SameRoad {
        /// The gear.
        gear: GearNumber,
        /// The one that keeps its pitch.
        keeps: Which,
        /// The pitch of the other there.
        moved: Frequency,
    },
    /// Rolling in neutral at the same road speed: what hangs on the engine drops to its idle.
    Rolling {
        /// The one that keeps its pitch.
        keeps: Which,
    },
    /// Standing in neutral, clutch up, at the same rpm: what needs load or the road is silent.
    Standing {
        /// The one that is still there.
        stays: Which,
    },
    /// Pull, then lift off at the same speed.
    Load {
        /// The one that changes.
        changes: Which,
    },
    /// The driveshaft turned half round on its flange.
    TurnShaft {
        /// The one that changes: what is out of balance.
        changes: Which,
    },
    /// The pitch matched by ear or recorded.
    Pitch,
    /// None but a look inside.
    Inside,
}

/// Tones nearer than this are not told apart by ear.
const NEAR: f64 = 0.06;

/// The test for two tones of the same gear at the same moment.
pub fn test(pair: [&Tone; 2], heard: &Heard, orders: &Orders, moment: Moment) -> Test {
    let two = Two { pair, classes: pair.map(Class::of), heard, orders, moment };
    let at_once = two.by_clutch().or_else(|| two.by_tyres()).or_else(|| two.by_shaft());
    let by_gear = at_once.or_else(|| two.by_step()).or_else(|| two.by_rpm());
    let by_load = by_gear.or_else(|| two.by_standing()).or_else(|| two.by_load());
    by_load.unwrap_or_else(|| if two.are_near() { Test::Inside } else { Test::Pitch })
}

/// The gear in which at the same rpm neither of two carries the power: gone there, it is one of them.
///
/// Direct gear where the box has it, else the nearest.
pub fn neither_carries(pair: [Origin; 2], selected: Selected, orders: &Orders) -> Option<GearNumber> {
    let Selected::Gear(own) = selected else { return None };
    let free = |gear: &GearNumber| *gear != own && pair.iter().all(|origin| !orders.carries(Selected::Gear(*gear), *origin));
    nearest(own, orders.gears().filter(free))
}

/// The gear nearest to one; of two as near, the lower, in which the car is slower at the same rpm.
fn nearest(own: GearNumber, gears: impl Iterator<Item = GearNumber>) -> Option<GearNumber> {
    gears.min_by_key(|gear| (gear.place().abs_diff(own.place()), *gear > own))
}

struct Two<'a> {
    pair: [&'a Tone; 2],
    classes: [Class; 2],
    heard: &'a Heard,
    orders: &'a Orders,
    moment: Moment,
}

/// The one of two for which something holds; none where it holds of both or of neither.
fn only([first, second]: [bool; 2]) -> Option<Which> {
    match (first, second) {
        (true, false) => Some(Which::First),
        (false, true) => Some(Which::Second),
        _ => None,
    }
}

impl Two<'_> {
    fn are_near(&self) -> bool {
        let [first, second] = self.pair.map(|tone| tone.frequency(self.moment));
        (first / second).value.ln().abs() < NEAR
    }

    fn by_clutch(&self) -> Option<Test> {
        let leaves = only(self.classes.map(Class::is_engine)).filter(|_| self.heard.selected != Selected::Neutral)?;
        Some(Test::Clutch { leaves })
    }

    /// The tyres against all that turns at their speed or a little faster; ring and pinion are told by load.
    fn by_tyres(&self) -> Option<Test> {
        let moves = only(self.pair.map(|tone| tone.origin == Origin::Tyre))?;
        let road = self.pair.iter().all(|tone| self.orders.follows(tone.origin) == Follows::Road);
        (road && !self.classes.contains(&Class::FinalDrive)).then_some(Test::Tyres { moves })
    }

    /// Driveshaft and joints turn together: no speed and no gear parts them.
    fn by_shaft(&self) -> Option<Test> {
        let both = [Origin::Driveshaft, Origin::Joint];
        let changes = only(self.pair.map(|tone| tone.origin == Origin::Driveshaft))?;
        self.pair.iter().all(|tone| both.contains(&tone.origin)).then_some(Test::TurnShaft { changes })
    }

    fn by_step(&self) -> Option<Test> {
        let keeps = only(self.pair.map(|tone| self.orders.follows(tone.origin) == Follows::Road))?;
        let Selected::Gear(own) = self.heard.selected else { return None };
        let [first, second] = self.pair;
        let other = if keeps == Which::First { second } else { first };
        let moved = |gear: GearNumber| -> Option<Frequency> {
            let per_output = self.orders.tone(Selected::Gear(gear), Origin::Mainshaft)?;
            let there = self.orders.tone(Selected::Gear(gear), other.origin)?;
            Some(turns(self.moment) * there.per(per_output)?)
        };
        let from = other.frequency(self.moment);
        // A higher gear first: the same road speed at fewer rpm.
        let taller = GearNumber::lowest(Gearbox::MOST_GEARS).skip(own.next().place());
        let gears = taller.clone().take(1).chain(GearNumber::lowest(own.place()).rev()).chain(taller.skip(1));
        let gears = gears.filter(|gear| self.orders.are_alike_behind(self.heard.selected, Selected::Gear(*gear)));
        let found = gears.filter_map(|gear| Some((gear, moved(gear)?))).find(|(_, to)| (*to / from).value.ln().abs() > NEAR);
        Some(found.map_or(Test::Rolling { keeps }, |(gear, moved)| Test::SameRoad { gear, keeps, moved }))
    }

    fn by_rpm(&self) -> Option<Test> {
        let Selected::Gear(own) = self.heard.selected else { return None };
        if !self.classes.iter().any(|class| class.needs_load()) {
            return None;
        }
        let told = |gear: GearNumber| only(self.pair.map(|tone| self.orders.carries(Selected::Gear(gear), tone.origin)));
        let gear = nearest(own, self.orders.gears().filter(|gear| *gear != own && told(*gear).is_some()))?;
        Some(Test::SameRpm { gear, stays: told(gear)? })
    }

    fn by_standing(&self) -> Option<Test> {
        if self.heard.stands {
            return None;
        }
        let engine = |tone: &Tone| self.orders.follows(tone.origin) == Follows::Engine;
        let still = self.pair.map(|tone| engine(tone) && !Class::of(tone).needs_load());
        Some(Test::Standing { stays: only(still)? })
    }

    fn by_load(&self) -> Option<Test> {
        // The bearings of a wheel carry the car, whatever the engine does.
        let feels = self.pair.map(|tone| Class::of(tone).feels_load() || matches!(tone.seat, Some(Seat::Countershaft | Seat::Pinion)));
        Some(Test::Load { changes: only(feels)? })
    }
}

fn turns(moment: Moment) -> Frequency {
    let per_second = moment.output.get::<uom::si::angular_velocity::revolution_per_second>().abs();
    Frequency::new::<uom::si::frequency::hertz>(per_second)
}
