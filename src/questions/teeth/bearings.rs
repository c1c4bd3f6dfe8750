//! What the two bearings of each shaft hold in every gear, and how long they last.

use crate::gearing::geometry::Hand;
use crate::gearing::geometry::pair_cuts::PairAt;
use crate::gearing::part::Shaft;
use crate::gearing::speeds::Selected;
use crate::gearing::teeth::decimal;
use crate::gearing::{GearNumber, Gearbox, Layout};
use crate::questions::Setup;
use crate::toothload::along::ShaftBearing;
use crate::toothload::bearing::{Rolling, damage, deep_groove_load, million_turns, shared_life};
use crate::toothload::duty::Duty;
use crate::toothload::path::{self, MeshLoad};
use crate::toothload::reactions::{Reaction, ShaftLoad, bearing_loads};
use crate::toothload::taper::axial_loads;
use crate::toothload::thrust::{Pushed, on_shaft};
use crate::units::{AngularVelocity, Force, Length, Time, Torque, unit};

/// The static rating of a deep-groove bearing, as a share of its dynamic one: from memory, 0.5 to 0.6 in the sizes of a gearbox.
pub const USUAL_STATIC_SHARE: f64 = 0.55;

/// The bearings of one shaft of a setup.
#[derive(Clone, Debug, PartialEq)]
pub struct Bearings {
    /// The shaft they hold.
    pub shaft: Shaft,
    /// As typed, the one nearer to the engine first.
    pub bearings: [ShaftBearing; 2],
    /// What they hold in each gear at the whole torque; none where the gear's places or cuts are not known.
    pub gears: Vec<Option<Held>>,
    /// Which of them takes the thrust, 0 or 1; none where neither has balls and washers take it.
    pub takes_thrust: Option<usize>,
    /// How long they last; none where a gear of the cycle is not known, or nothing loads them.
    pub life: Option<Life>,
}

/// What a shaft's bearings hold in one gear.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Held {
    /// Across the shaft, bearing by bearing.
    pub radial: [Force; 2],
    /// Along the shaft, above nothing away from the engine where the hands of the teeth are told.
    pub thrust: Force,
    /// Whether they are.
    pub is_told: bool,
    /// Turns of each bearing for one of the engine; 0 where no gear of the shaft carries power.
    pub turns: [f64; 2],
    /// What the front one holds, in axes fixed to the case.
    front: Reaction,
}

impl Held {
    /// Whether a gear of the shaft carries power.
    pub fn is_loaded(&self) -> bool {
        self.turns.iter().any(|turns| *turns > 0.0)
    }
}

/// What two taper bearings hold in one gear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TaperLoads {
    /// The thrust that each makes of its radial load.
    pub induced: [Force; 2],
    /// What each holds along the shaft; while the way of the thrust is not told, as much as it would hold if the thrust pressed it.
    pub axial: [Force; 2],
    /// The equivalent load of each.
    pub equivalent: [Force; 2],
    /// Which of them the thrust presses, 0 or 1; none while its way is not told.
    pub pressed: Option<usize>,
}

/// Basic rating lives, which nine of ten outlast.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Life {
    /// Bearing by bearing; none where nothing loads it.
    pub each: [Option<Time>; 2],
    /// Both together.
    pub both: Time,
}

impl Bearings {
    /// The bearings of each shaft that are typed, at a torque: the countershaft's, the mainshaft's, the input shaft's.
    pub fn of_shafts(setup: &Setup, torque: Torque, shift: Option<AngularVelocity>, duty: Option<Duty>) -> Vec<Self> {
        let Some(gearbox) = &setup.gearbox else { return Vec::new() };
        let [main, input] = setup.inside.upper_bearings;
        let loaded = Loaded { setup, gearbox, torque };
        let of = |shaft: Shaft, bearings: Option<[ShaftBearing; 2]>, pilot: Option<&Self>| {
            let bearings = bearings?;
            let gears = loaded.gears(shaft, &bearings, pilot);
            let mut known = Self { shaft, bearings, gears, takes_thrust: takes_thrust(shaft, &bearings), life: None };
            known.life = shift.zip(duty).and_then(|(shift, duty)| known.lasts(duty, shift));
            Some(known)
        };
        let main = of(Shaft::Output, main, None);
        let input = if gearbox.layout() == Layout::TwoShaft { None } else { of(Shaft::Input, input, main.as_ref()) };
        of(shaft_of(gearbox.layout()), setup.inside.bearings, None).into_iter().chain(main).chain(input).collect()
    }

    /// How long they last in the chosen use: Palmgren and Miner's sum over its gears.
    fn lasts(&self, duty: Duty, shift: AngularVelocity) -> Option<Life> {
        let gears: Vec<Held> = self.gears.iter().copied().collect::<Option<_>>()?;
        let stints = duty.over(gears.len());
        let hour = unit::HOUR.of(1.0);
        let [first, second] = [0, 1].map(|place| {
            let bearing = self.bearings.get(place)?;
            let rows: Vec<(f64, Force)> = gears
                .iter()
                .zip(&stints)
                .map(|(held, stint)| {
                    let turns = held.turns.get(place).copied().unwrap_or_default();
                    (million_turns(shift * (stint.speed * turns), hour * stint.time), self.load(place, held, stint.torque))
                })
                .collect();
            let used = damage(bearing.rating, &rows, bearing.rolling);
            (used > 0.0).then(|| hour / used)
        });
        let all: Vec<(Time, Rolling)> =
            [first, second].into_iter().zip(self.bearings).filter_map(|(life, bearing)| Some((life?, bearing.rolling))).collect();
        Some(Life { each: [first, second], both: shared_life(&all)? })
    }

    /// The equivalent load of a bearing at a share of the torque.
    fn load(&self, place: usize, held: &Held, share: f64) -> Force {
        if let Some(tapers) = self.tapers(held, share) {
            return tapers.equivalent.get(place).copied().unwrap_or_default();
        }
        let radial = held.radial.get(place).copied().unwrap_or_default() * share;
        let Some(bearing) = self.bearings.get(place).filter(|_| self.takes_thrust == Some(place)) else { return radial };
        deep_groove_load(radial, held.thrust * share, bearing.rating * USUAL_STATIC_SHARE)
    }

    /// What two taper bearings hold at a share of the torque; none of other bearings.
    pub fn tapers(&self, held: &Held, share: f64) -> Option<TaperLoads> {
        let [one, two] = self.bearings.map(|bearing| bearing.taper);
        let both = [one?, two?];
        let (radial, thrust) = (held.radial.map(|radial| radial * share), held.thrust * share);
        let told = axial_loads(both, radial, thrust);
        let axial = if held.is_told {
            told
        } else {
            let ([one, two], [other_one, other_two]) = (told, axial_loads(both, radial, -thrust));
            [one.max(other_one), two.max(other_two)]
        };
        let ([cone1, cone2], [across1, across2], [along1, along2]) = (both, radial, axial);
        let induced = [cone1.induced(across1), cone2.induced(across2)];
        let equivalent = [cone1.equivalent(across1, along1), cone2.equivalent(across2, along2)];
        let [least, _] = induced;
        let pressed = held.is_told.then_some(usize::from(along1 <= least));
        Some(TaperLoads { induced, axial, equivalent, pressed })
    }
}

/// The shaft whose bearings are asked for first.
pub fn shaft_of(layout: Layout) -> Shaft {
    if layout == Layout::TwoShaft { Shaft::Input } else { Shaft::Countershaft }
}

/// Which of two bearings takes the thrust: the one with balls, of a mainshaft rather the rear one, whose front one runs in the input gear.
fn takes_thrust(shaft: Shaft, bearings: &[ShaftBearing; 2]) -> Option<usize> {
    let has_balls = |place: &usize| bearings.get(*place).is_some_and(|bearing| bearing.rolling == Rolling::Balls);
    let order = if shaft == Shaft::Output { [1, 0] } else { [0, 1] };
    order.into_iter().find(has_balls)
}

/// The pairs on a shaft in a gear's path whose place along it is not known.
pub fn unplaced(setup: &Setup, shaft: Shaft) -> Vec<PairAt> {
    let Some(gearbox) = &setup.gearbox else { return Vec::new() };
    let all = gearbox.numbers().flat_map(|gear| path::meshes(gearbox, Selected::Gear(gear)));
    let mut missing: Vec<PairAt> = Vec::new();
    for at in all.filter(|load| is_on(shaft, load, gearbox.layout())).filter_map(|load| PairAt::of(load.driver)) {
        if setup.inside.place_of(at).is_none() && !missing.contains(&at) {
            missing.push(at);
        }
    }
    missing
}

fn is_on(shaft: Shaft, load: &MeshLoad, layout: Layout) -> bool {
    [load.driver, load.driven].iter().any(|part| part.shaft(layout) == shaft)
}

/// A box under torque.
struct Loaded<'a> {
    setup: &'a Setup,
    gearbox: &'a Gearbox,
    torque: Torque,
}

impl Loaded<'_> {
    /// What the bearings of a shaft hold in every gear; `pilot` are those of the mainshaft, whose front end the input shaft carries.
    fn gears(&self, shaft: Shaft, bearings: &[ShaftBearing; 2], pilot: Option<&Bearings>) -> Vec<Option<Held>> {
        let held = |gear: GearNumber| match pilot {
            None => self.held(shaft, bearings, Selected::Gear(gear), None),
            Some(main) => {
                let [front, _] = main.bearings;
                self.held(shaft, bearings, Selected::Gear(gear), Some((front.at, gear.of(&main.gears).copied().flatten()?.front)))
            }
        };
        self.gearbox.numbers().map(held).collect()
    }

    fn held(&self, shaft: Shaft, [front, rear]: &[ShaftBearing; 2], gear: Selected, pilot: Option<(Length, Reaction)>) -> Option<Held> {
        let (layout, inside) = (self.gearbox.layout(), &self.setup.inside);
        let loads = path::meshes(self.gearbox, gear).into_iter().filter(|load| is_on(shaft, load, layout));
        let mut on: Vec<ShaftLoad> = Vec::new();
        let mut pushed: Vec<Pushed> = Vec::new();
        let (mut turns, mut is_told) = ([0.0; 2], true);
        for load in loads {
            let at = PairAt::of(load.driver)?;
            let cut = inside.cut_of(at)?;
            let forces = load.forces(self.gearbox, self.torque, &cut)?;
            let drives = load.driver.shaft(layout) == shaft;
            let (part, share) = if drives { (load.driver, load.driver_share) } else { (load.driven, load.driven_share) };
            turns = bearing_turns(shaft, layout, decimal(share).recip());
            is_told &= inside.hand_of(at).is_some() || forces.axial.value == 0.0;
            let mesh = Pushed { load, forces, hand: inside.hand_of(at).unwrap_or(Hand::Right) };
            // A driven gear is pushed round, a driving one held back; both are pushed away from the other shaft.
            on.push(ShaftLoad {
                at: inside.place_of(at)? - front.at,
                tangential: if drives { -forces.tangential } else { forces.tangential },
                radial: -forces.radial,
                axial: on_shaft(shaft, &[mesh], layout),
                pitch_radius: cut.reference_diameter(part.teeth(self.gearbox)?) / 2.0,
            });
            pushed.push(mesh);
        }
        on.extend(pilot.map(|(at, Reaction { tangential, radial })| ShaftLoad {
            at: at - front.at,
            tangential,
            radial,
            axial: Force::default(),
            pitch_radius: Length::default(),
        }));
        let reactions = bearing_loads(rear.at - front.at, &on)?;
        let [front, _] = reactions;
        Some(Held { radial: reactions.map(|reaction| reaction.whole()), thrust: on_shaft(shaft, &pushed, layout), is_told, turns, front })
    }
}

/// How often each bearing of a shaft turns for a turn of the engine; the mainshaft's front one runs in the input gear, by their difference.
fn bearing_turns(shaft: Shaft, layout: Layout, turns: f64) -> [f64; 2] {
    let front = if shaft == Shaft::Output && layout != Layout::TwoShaft { 1.0 - turns } else { turns };
    [front.abs(), turns.abs()]
}
