//! Every tone of a driveline in every gear: pairs, idle ones included, shafts, bearings, joints, ring and pinion, tyres, firing.
//!
//! Model: no slip of clutch or tyres, so all hangs on the turns of the engine and of the box's output. Orders are turns or events for
//! one turn of the engine. Source of the orders: elementary kinematics; mesh z · n, joint twice and unbalance once a turn of its shaft,
//! firing half as often as a four-stroke engine has cylinders (service manuals and any textbook of machine diagnosis).

use super::bearing::RollingBearing;
use super::tone::{Origin, Pair, Race, Seat, Times, Tone};
use crate::gearing::part::{Part, Shaft};
use crate::gearing::speeds::{Arrangement, ReverseMesh, Selected, Share, Turning};
use crate::gearing::stage::Switch;
use crate::gearing::teeth::{Mesh, Teeth};
use crate::gearing::{FinalDrive, GearNumber, Gearbox, Layout, Place, Ratio, Stage, StageKind};

/// A bearing whose geometry is given.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// What it is called.
    pub name: String,
    /// The shaft it sits on.
    pub seat: Seat,
    /// Its geometry.
    pub bearing: RollingBearing,
}

/// All that turns, from the crankshaft to the tyre.
#[derive(Clone, Copy, Debug)]
pub struct Rotating<'a> {
    /// The gearbox.
    pub gearbox: &'a Gearbox,
    /// The extra stages, in order.
    pub stages: &'a [Stage],
    /// Those of them that are switched in, by their places, in every gear in which they can be.
    pub stages_in: &'a [usize],
    /// The final drive, where it is known.
    pub axle: Option<FinalDrive>,
    /// The cylinders of a four-stroke engine.
    pub cylinders: u8,
    /// The bearings whose geometry is given.
    pub bearings: &'a [Fitted],
    /// Whether a driveshaft with joints stands between box and axle.
    pub has_driveshaft: bool,
}

/// How often a bearing of unknown geometry strikes in one turn of its shaft: 0.4 for each ball of an outer race, nine balls.
///
/// Source: approximations of a balancer's manual (0.4 N, ± 20 %); nine balls are common practice, no published source.
pub const ANY_BEARING: f64 = 3.6;

/// The tones in every gear.
#[derive(Clone, Debug, PartialEq)]
pub struct Orders {
    each: Vec<Gear>,
}

/// One gear: its tones, and which extra stages are in.
#[derive(Clone, Debug, PartialEq)]
struct Gear {
    selected: Selected,
    stages_in: Vec<usize>,
    tones: Vec<Tone>,
}

/// What a tone keeps step with while gears change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Follows {
    /// The engine.
    Engine,
    /// The road.
    Road,
}

impl Orders {
    /// The tones of a driveline in its forward gears, in neutral, and in reverse where it has one.
    pub fn of(rotating: &Rotating<'_>) -> Self {
        let forward = rotating.gearbox.numbers().map(Selected::Gear);
        let all = forward.chain([Selected::Neutral, Selected::Reverse]);
        let gear = |selected| {
            let is_in = |at: &usize| rotating.stages.get(*at).is_some_and(|stage| rotating.is_in(*at, stage, selected));
            let stages_in = rotating.stages_in.iter().copied().filter(is_in).collect();
            Gear { selected, stages_in, tones: rotating.tones(selected) }
        };
        Self { each: all.map(gear).filter(|gear| !gear.tones.is_empty()).collect() }
    }

    fn gear(&self, selected: Selected) -> Option<&Gear> {
        self.each.iter().find(|gear| gear.selected == selected)
    }

    /// The tones in a gear; none where the box does not have it.
    pub fn tones(&self, selected: Selected) -> &[Tone] {
        self.gear(selected).map_or(&[], |gear| &gear.tones)
    }

    /// Whether the same extra stages are in in two gears, so that the same road speed turns the box's output alike.
    pub fn are_alike_behind(&self, one: Selected, other: Selected) -> bool {
        self.gear(one).zip(self.gear(other)).is_some_and(|(one, other)| one.stages_in == other.stages_in)
    }

    /// One tone in a gear; none where it does not turn there.
    pub fn tone(&self, selected: Selected, origin: Origin) -> Option<&Tone> {
        self.tones(selected).iter().find(|tone| tone.origin == origin)
    }

    /// The forward gears, the lowest first.
    pub fn gears(&self) -> impl Iterator<Item = GearNumber> + '_ {
        self.each.iter().filter_map(|gear| if let Selected::Gear(gear) = gear.selected { Some(gear) } else { None })
    }

    /// Whether the power goes through something in a gear.
    pub fn carries(&self, selected: Selected, origin: Origin) -> bool {
        self.tone(selected, origin).is_some_and(|tone| tone.carries)
    }

    /// What something keeps step with when the gear is changed: what it hangs on in neutral.
    ///
    /// The gears of reverse, which mesh in reverse alone, keep step with the engine.
    pub fn follows(&self, origin: Origin) -> Follows {
        let free = self.tone(Selected::Neutral, origin);
        if free.is_some_and(|tone| tone.turn.of_input == Ratio::from_integer(0)) { Follows::Road } else { Follows::Engine }
    }
}

impl Rotating<'_> {
    /// Whether a stage is switched in while a gear is: in neutral and reverse, of which nothing is said, as it is asked.
    fn is_in(&self, at: usize, stage: &Stage, selected: Selected) -> bool {
        let can_be = |switch: Switch| match selected {
            Selected::Gear(gear) => switch.used_in.contains(gear),
            Selected::Neutral | Selected::Reverse => true,
        };
        self.stages_in.contains(&at) && stage.switch.is_some_and(can_be)
    }

    /// The tones in a gear: the box's own from the input on, then what stands behind it; none where the box does not have that gear.
    pub fn tones(&self, selected: Selected) -> Vec<Tone> {
        let arrangement = Arrangement::usual(self.gearbox);
        let Some(turning) = Turning::new(self.gearbox, &arrangement, selected) else { return Vec::new() };
        let engaged = selected != Selected::Neutral;
        let mut tones = vec![
            Tone::new(Origin::Firing, Share::INPUT, Times::Counted(Ratio::new(i128::from(self.cylinders), 2))),
            Tone::new(Origin::Engine, Share::INPUT, once()),
            Tone::new(Origin::ReleaseBearing, Share::INPUT, once()),
        ];
        tones.extend(pairs(self.gearbox, &turning, arrangement.reverse));
        tones.extend(shaft(&turning, Shaft::Countershaft).map(|turn| Tone::new(Origin::Countershaft, turn, once())));
        let output = shaft(&turning, Shaft::Output).unwrap_or(Share::OUTPUT);
        tones.push(Tone { carries: engaged, ..Tone::new(Origin::Mainshaft, output, once()) });
        let behind = self.behind_box(output, selected, &mut tones);
        tones.extend(self.bearings_of(&turning, output, behind, engaged));
        tones
    }

    /// What stands behind the box; answers the turns of pinion and wheel.
    fn behind_box(&self, output: Share, selected: Selected, tones: &mut Vec<Tone>) -> (Share, Option<Share>) {
        let engaged = selected != Selected::Neutral;
        let pinion = self.stages_at(Place::BeforeAxle, output, selected, tones);
        if self.has_driveshaft {
            tones.push(Tone::new(Origin::Driveshaft, pinion, once()));
            tones.push(Tone { carries: engaged, ..Tone::new(Origin::Joint, pinion, Times::Counted(Ratio::from_integer(2))) });
        }
        let Some(axle) = self.axle else { return (pinion, None) };
        if let FinalDrive::Pair(mesh) = axle {
            let ring = pinion / mesh.ratio();
            tones.push(Tone { carries: engaged, ..toothed(Origin::FinalDrive, mesh, pinion, vec![pinion, ring]) });
        }
        let wheel = self.stages_at(Place::BehindAxle, pinion / axle.ratio(), selected, tones);
        tones.push(Tone::new(Origin::Tyre, wheel, once()));
        (pinion, Some(wheel))
    }

    /// Goes through the extra stages of a place; those that are always in and whose teeth are counted have a tone.
    fn stages_at(&self, place: Place, mut turn: Share, selected: Selected, tones: &mut Vec<Tone>) -> Share {
        let engaged = selected != Selected::Neutral;
        for (at, stage) in self.stages.iter().enumerate().filter(|(_, stage)| stage.place == place) {
            let after = turn / if self.is_in(at, stage, selected) { stage.drive.ratio() } else { stage.at_rest() };
            // An overdrive is epicyclic and a transfer box has two meshes: two counts do not tell their tones.
            let is_pair = matches!(stage.kind, None | Some(StageKind::DropGears | StageKind::HubReduction)) && stage.switch.is_none();
            if let (FinalDrive::Pair(mesh), true) = (stage.drive, is_pair) {
                tones.push(Tone { carries: engaged, ..toothed(Origin::Stage(at), mesh, turn, vec![turn, after]) });
            }
            turn = after;
        }
        turn
    }

    /// The bearings: four tones of each whose geometry is given, one of every other seat.
    fn bearings_of(&self, turning: &Turning, output: Share, behind: (Share, Option<Share>), engaged: bool) -> Vec<Tone> {
        let countershaft = turning.part(Part::Shaft(Shaft::Countershaft));
        let turn = |seat: Seat| match seat {
            Seat::Input => Some((Share::INPUT, engaged)),
            Seat::Countershaft => countershaft.map(|shaft| (shaft.speed, shaft.in_path)),
            Seat::Output => Some((output, engaged)),
            Seat::Pinion => Some((behind.0, engaged)),
            Seat::Wheel => behind.1.map(|wheel| (wheel, true)),
        };
        let mut tones = Vec::new();
        for (at, fitted) in self.bearings.iter().enumerate() {
            let Some((turn, carries)) = turn(fitted.seat) else { continue };
            let bearing = fitted.bearing;
            let each = [
                (Race::Outer, bearing.outer()),
                (Race::Inner, bearing.inner()),
                (Race::Element, bearing.element()),
                (Race::Cage, bearing.cage()),
            ];
            let tone = |(race, order)| Tone {
                carries,
                seat: Some(fitted.seat),
                beside: if race == Race::Inner { vec![turn] } else { Vec::new() },
                ..Tone::new(Origin::Bearing(at, race), turn, Times::Measured(order))
            };
            tones.extend(each.map(tone));
        }
        let is_given = |seat: Seat| self.bearings.iter().any(|fitted| fitted.seat == seat);
        let others = Seat::ALL.into_iter().filter(|seat| !is_given(*seat)).filter_map(|seat| {
            let (turn, carries) = turn(seat)?;
            Some(Tone { carries, seat: Some(seat), ..Tone::new(Origin::AnyBearing(seat), turn, Times::About(ANY_BEARING)) })
        });
        tones.extend(others);
        tones
    }
}

fn once() -> Times {
    Times::Counted(Ratio::from_integer(1))
}

fn shaft(turning: &Turning, shaft: Shaft) -> Option<Share> {
    turning.part(Part::Shaft(shaft)).map(|turns| turns.speed)
}

/// The tone of a pair: the teeth of the driving gear for each of its turns.
fn toothed(origin: Origin, mesh: Mesh, driver: Share, beside: Vec<Share>) -> Tone {
    let teeth = |teeth: Teeth| Times::Counted(Ratio::from_integer(i128::from(teeth.count())));
    Tone { mesh: Some(mesh), beside, ..Tone::new(origin, driver, teeth(mesh.driver)) }
}

/// Every pair of the box in mesh, those that run idle included.
fn pairs(gearbox: &Gearbox, turning: &Turning, reverse: ReverseMesh) -> Vec<Tone> {
    let forward = gearbox.numbers().map(|gear| (Pair::Gear(gear), Part::Driver(gear), Part::Driven(gear)));
    let exit = if turning.part(Part::IdlerExit).is_some() { Part::IdlerExit } else { Part::IdlerEntry };
    let idler = [(Pair::ReverseEntry, Part::ReverseDriver, Part::IdlerEntry), (Pair::ReverseExit, exit, Part::ReverseDriven)];
    let in_mesh = reverse == ReverseMesh::Constant || turning.selected == Selected::Reverse;
    let constant = (gearbox.layout() != Layout::TwoShaft).then_some((Pair::Constant, Part::ConstantDriver, Part::ConstantDriven));
    let all = constant.into_iter().chain(forward).chain(idler.into_iter().filter(|_| in_mesh));
    let tone = |(pair, driver, driven): (Pair, Part, Part)| {
        let (driver, driven) = (turning.part(driver)?, turning.part(driven)?);
        let mesh = Mesh { driver: driver.teeth?, driven: driven.teeth? };
        let carries = driver.in_path && driven.in_path;
        Some(Tone { carries, ..toothed(Origin::Pair(pair), mesh, driver.speed, vec![driver.speed, driven.speed]) })
    };
    all.filter_map(tone).collect()
}
