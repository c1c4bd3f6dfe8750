//! What the two bearings of the countershaft (of a two-shaft box, of the input shaft) hold in every gear, and how long they last.

use super::answer::engine;
use crate::gearing::geometry::Hand;
use crate::gearing::geometry::pair_cuts::PairAt;
use crate::gearing::part::Shaft;
use crate::gearing::speeds::Selected;
use crate::gearing::teeth::decimal;
use crate::gearing::{Gearbox, Layout};
use crate::questions::{Conditions, Setup};
use crate::toothload::along::ShaftBearing;
use crate::toothload::bearing::{Rolling, damage, deep_groove_load, million_turns, shared_life};
use crate::toothload::path::{self, MeshLoad};
use crate::toothload::reactions::{ShaftLoad, bearing_loads};
use crate::toothload::thrust::{Pushed, on_shaft};
use crate::units::{AngularVelocity, Force, Length, Time, Torque, unit};

/// The static rating of a deep-groove bearing, as a share of its dynamic one: from memory, 0.5 to 0.6 in the sizes of a gearbox.
pub const USUAL_STATIC_SHARE: f64 = 0.55;

/// The bearings of one setup.
#[derive(Clone, Debug, PartialEq)]
pub struct Bearings {
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
    /// Along the shaft, without its sign.
    pub thrust: Force,
    /// Turns of the shaft for one of the engine; 0 where none of its gears carries power.
    pub turns: f64,
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
    /// The bearings of a setup, where they are typed and there is a torque.
    pub fn of(setup: &Setup, conditions: &Conditions) -> Option<Self> {
        let (gearbox, bearings) = (setup.gearbox.as_ref()?, setup.inside.bearings?);
        let (torque, at_peak) = engine(conditions)?;
        let gears: Vec<Option<Held>> =
            (0..gearbox.gears().len()).map(|gear| held(setup, gearbox, (torque, &bearings), Selected::Gear(gear))).collect();
        let takes_thrust = bearings.iter().position(|bearing| bearing.rolling == Rolling::Balls);
        let mut known = Self { bearings, gears, takes_thrust, life: None };
        known.life = conditions.shift.or(at_peak).and_then(|shift| known.lasts(conditions, shift));
        Some(known)
    }

    /// How long they last in the chosen use: Palmgren and Miner's sum over its gears.
    fn lasts(&self, conditions: &Conditions, shift: AngularVelocity) -> Option<Life> {
        let gears: Vec<Held> = self.gears.iter().copied().collect::<Option<_>>()?;
        let stints = conditions.inside.duty?.over(gears.len());
        let hour = unit::HOUR.of(1.0);
        let [first, second] = [0, 1].map(|place| {
            let bearing = self.bearings.get(place)?;
            let rows: Vec<(f64, Force)> = gears
                .iter()
                .zip(&stints)
                .map(|(held, stint)| {
                    (million_turns(shift * (stint.speed * held.turns), hour * stint.time), self.load(place, held, stint.torque))
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
        let radial = held.radial.get(place).copied().unwrap_or_default() * share;
        let Some(bearing) = self.bearings.get(place).filter(|_| self.takes_thrust == Some(place)) else { return radial };
        deep_groove_load(radial, held.thrust * share, bearing.rating * USUAL_STATIC_SHARE)
    }
}

/// The shaft whose bearings are worked out.
pub fn shaft_of(layout: Layout) -> Shaft {
    if layout == Layout::TwoShaft { Shaft::Input } else { Shaft::Countershaft }
}

/// The pairs on that shaft in a gear's path whose place along it is not known.
pub fn unplaced(setup: &Setup) -> Vec<PairAt> {
    let Some(gearbox) = &setup.gearbox else { return Vec::new() };
    let all = (0..gearbox.gears().len()).flat_map(|gear| path::meshes(gearbox, Selected::Gear(gear)));
    let mut missing: Vec<PairAt> = Vec::new();
    for at in all.filter(|load| is_on(shaft_of(gearbox.layout()), load, gearbox.layout())).filter_map(|load| PairAt::of(load.driver)) {
        if setup.inside.place_of(at).is_none() && !missing.contains(&at) {
            missing.push(at);
        }
    }
    missing
}

fn is_on(shaft: Shaft, load: &MeshLoad, layout: Layout) -> bool {
    [load.driver, load.driven].iter().any(|part| part.shaft(layout) == shaft)
}

fn held(setup: &Setup, gearbox: &Gearbox, (torque, bearings): (Torque, &[ShaftBearing; 2]), gear: Selected) -> Option<Held> {
    let (layout, shaft) = (gearbox.layout(), shaft_of(gearbox.layout()));
    let loads: Vec<MeshLoad> = path::meshes(gearbox, gear).into_iter().filter(|load| is_on(shaft, load, layout)).collect();
    let [front, rear] = bearings;
    let mut on: Vec<ShaftLoad> = Vec::new();
    let mut pushed: Vec<Pushed> = Vec::new();
    let mut turns = 0.0;
    for load in &loads {
        let at = PairAt::of(load.driver)?;
        let cut = setup.inside.cut_of(at)?;
        let forces = load.forces(gearbox, torque, &cut)?;
        let drives = load.driver.shaft(layout) == shaft;
        let (part, share) = if drives { (load.driver, load.driver_share) } else { (load.driven, load.driven_share) };
        turns = decimal(share).abs().recip();
        let mesh = Pushed { load: *load, forces, hand: setup.inside.hand_of(at).unwrap_or(Hand::Right) };
        // A driven gear is pushed round, a driving one held back; both are pushed away from the other shaft.
        on.push(ShaftLoad {
            at: setup.inside.place_of(at)? - front.at,
            tangential: if drives { -forces.tangential } else { forces.tangential },
            radial: -forces.radial,
            axial: on_shaft(shaft, &[mesh], layout),
            pitch_radius: cut.reference_diameter(part.teeth(gearbox)?) / 2.0,
        });
        pushed.push(mesh);
    }
    let span: Length = rear.at - front.at;
    let radial = bearing_loads(span, &on)?.map(|reaction| reaction.whole());
    Some(Held { radial, thrust: on_shaft(shaft, &pushed, layout).abs(), turns })
}
