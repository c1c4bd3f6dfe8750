//! The shifts of a run chosen together against brute force: every order of gears, every shift speed of a grid, the best of them refined.

use layshaft::gearing::GearNumber;
use layshaft::motion::curve::generic;
use layshaft::motion::plan::{Goal, Ground, Plan, Shifting, plans};
use layshaft::motion::run::{Course, Start, Stopped, run};
use layshaft::motion::shift::{Reason, Shift};
use layshaft::motion::{Car, Drive, Gears, Pull, Rotating, Sourced, Vehicle};
use layshaft::units::{Area, Length, MomentOfInertia, Power, Time, Torque};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use uom::si::{
    area::square_meter, length::meter, moment_of_inertia::kilogram_square_meter, power::kilowatt, time::second, torque::newton_meter,
};

use crate::nth;
use crate::published_motion::{ENDLESS_GRIP, check, curve, in_rpm, kg, mps, rpm};

/// How near to brute force a plan must come (s).
const NEAR_S: f64 = 0.005;
/// 60 and 100 mph (m/s), exact.
const MPH_60: f64 = 26.8224;
const MPH_100: f64 = 44.704;

/// A road car as people have them: 40 to 160 kW, 750 to 1,900 kg, three to five gears, good and bad tyres, quick and slow hands.
#[derive(Clone, Debug)]
struct Wild {
    torque_nm: f64,
    torque_rpm: f64,
    power_share: f64,
    power_at: f64,
    limit_at: f64,
    steps: Vec<f64>,
    top: f64,
    final_drive: f64,
    mass: f64,
    grip: f64,
    front: bool,
    engine_inertia: Option<f64>,
    shift_s: f64,
    launch: f64,
}

fn wild(gears: std::ops::Range<usize>) -> impl Strategy<Value = Wild> {
    let engine = (90.0..320.0_f64, 2200.0..4000.0_f64, 0.78..0.95_f64, 1.35..1.9_f64, 1.0..1.18_f64);
    let gears = (prop::collection::vec(1.22..1.75_f64, gears), prop::sample::select(vec![1.0, 0.8]), 3.0..4.6_f64);
    let car = (750.0..1900.0_f64, 0.45..1.1_f64, any::<bool>(), prop::option::of(0.08..0.4_f64));
    (engine, gears, car, (0.15..1.2_f64, 1500.0..3500.0_f64)).prop_map(|(engine, gears, car, (shift_s, launch))| Wild {
        torque_nm: engine.0,
        torque_rpm: engine.1,
        power_share: engine.2,
        power_at: engine.3,
        limit_at: engine.4,
        steps: gears.0,
        top: gears.1,
        final_drive: gears.2,
        mass: car.0,
        grip: car.1,
        front: car.2,
        engine_inertia: car.3,
        shift_s,
        launch,
    })
}

impl Wild {
    fn vehicle(&self) -> Vehicle {
        let power_rpm = self.torque_rpm * self.power_at;
        let watts = self.power_share * self.torque_nm * power_rpm * std::f64::consts::PI / 30.0;
        let torque = (Torque::new::<newton_meter>(self.torque_nm), rpm(self.torque_rpm));
        let curve = generic::from_peaks(torque, (Power::new::<kilowatt>(watts / 1000.0), rpm(power_rpm))).unwrap();
        let mut ratios = vec![self.top];
        for step in &self.steps {
            ratios.insert(0, ratios[0] * step);
        }
        let meshes = vec![2; ratios.len()];
        let gears = Gears { ratios, final_drive: self.final_drive, rolling_radius: Length::new::<meter>(0.3), meshes };
        let mut car = Car::of_mass(kg(self.mass));
        car.grip = Sourced::given(self.grip);
        car.drive = Sourced::given(if self.front { Drive::Front } else { Drive::Rear });
        if let Some(engine) = self.engine_inertia {
            let inertia = MomentOfInertia::new::<kilogram_square_meter>;
            car.rotating = Sourced::given(Rotating::Given { engine: inertia(engine), gearbox: inertia(0.01), wheels: inertia(3.5) });
        }
        Vehicle::new(Pull::new(&curve, &gears, car.efficiencies, Some(rpm(power_rpm * self.limit_at))).unwrap(), car).unwrap()
    }
}

/// Times of runs with shifts of any kind.
struct Trial<'a> {
    vehicle: &'a Vehicle,
    start: Start,
    shift_time: Time,
    goal: Goal,
}

impl Trial<'_> {
    fn shift(&self, from: GearNumber, to: GearNumber, at_rpm: f64) -> Shift {
        let (lower, upper) = (self.vehicle.pull().gear(from).unwrap(), self.vehicle.pull().gear(to).unwrap());
        let (before, speed) = (rpm(at_rpm), lower.road_speed(rpm(at_rpm)));
        Shift { from, to, speed, before, after: upper.engine_speed(speed), reason: Reason::Chosen, residual: 0.0, lands_on_curve: true }
    }

    /// Time (s) with these gears, each but the last left at its engine speed; endless where the goal is not reached.
    fn time(&self, gears: &[GearNumber], at: &[f64]) -> f64 {
        let shifts = gears.windows(2).zip(at).map(|(pair, at)| self.shift(pair[0], pair[1], *at)).collect();
        let (speeds, distances) = match self.goal {
            Goal::Speed(speed) => (vec![speed], vec![]),
            Goal::Distance(distance) => (vec![], vec![distance]),
        };
        let course = Course { start: self.start, shifts, shift_time: self.shift_time, speeds, distances, band: None, trace_step: None };
        let run = run(self.vehicle, &course).unwrap();
        run.to_speed.iter().chain(&run.over_distance).flatten().next().map_or(f64::INFINITY, |moment| moment.time.get::<second>())
    }

    /// The least time over every order of rising gears, shift speeds on a grid of `many` and the best `kept` of each order refined.
    fn least(&self, many: u32, kept: usize) -> (f64, Vec<GearNumber>, Vec<f64>) {
        let limit = in_rpm(self.vehicle.pull().limit());
        let grid: Vec<f64> = (0..many).map(|at| limit * (0.45 + 0.55 * f64::from(at) / f64::from(many - 1))).collect();
        let step = limit * 0.55 / f64::from(many - 1);
        let above = self.vehicle.pull().gears().len() - 1;
        let mut best = (f64::INFINITY, vec![], vec![]);
        for choice in 0..(1_u32 << above) {
            let upper = (0..above).filter(|at| choice & (1 << at) != 0).map(|at| nth(at + 2));
            let gears: Vec<GearNumber> = std::iter::once(nth(1)).chain(upper).collect();
            let mut tried: Vec<(f64, Vec<f64>)> = all(&grid, gears.len() - 1).into_iter().map(|at| (self.time(&gears, &at), at)).collect();
            tried.sort_by(|a, b| a.0.total_cmp(&b.0));
            for (time, at) in tried.into_iter().take(kept) {
                let (time, at) = self.refined(&gears, (time, at), step, limit);
                if time < best.0 {
                    best = (time, gears.clone(), at);
                }
            }
        }
        best
    }

    /// Goes from shift speed to shift speed in ever smaller steps.
    fn refined(&self, gears: &[GearNumber], from: (f64, Vec<f64>), step: f64, limit: f64) -> (f64, Vec<f64>) {
        let (mut best, mut step) = (from, step);
        while step > 4.0 && best.0.is_finite() {
            let mut moved = false;
            for at in 0..best.1.len() {
                for by in [-step, step] {
                    let mut next = best.1.clone();
                    next[at] = (next[at] + by).min(limit);
                    let time = self.time(gears, &next);
                    if time < best.0 - 1e-9 {
                        (best, moved) = ((time, next), true);
                    }
                }
            }
            if !moved {
                step *= 0.5;
            }
        }
        best
    }
}

/// Every choice of `many` values of a grid.
fn all(grid: &[f64], many: usize) -> Vec<Vec<f64>> {
    (0..many).fold(vec![vec![]], |done, _| {
        done.iter().flat_map(|begun| grid.iter().map(|value| begun.iter().copied().chain([*value]).collect())).collect()
    })
}

fn plan(vehicle: &Vehicle, start: Start, shift_time: Time, goal: Goal) -> Option<Plan> {
    plans(vehicle, start, shift_time, &[goal]).unwrap().remove(0).ok()
}

/// Twelve cars off one seed, each for one speed and one distance; a plan is a run like any other, so that brute force may lose to it.
#[test]
fn a_plan_equals_brute_force() {
    let mut runner = TestRunner::deterministic();
    for case in 0..12 {
        let wild = wild(2..4).new_tree(&mut runner).unwrap().current();
        let vehicle = wild.vehicle();
        let (start, shift_time) = (Start::Standing { launch: rpm(wild.launch) }, Time::new::<second>(wild.shift_s));
        for goal in [Goal::Speed(mps([MPH_60, MPH_100][case % 2])), Goal::Distance(Length::new::<meter>([402.336, 201.168][case % 2]))] {
            let found = plan(&vehicle, start, shift_time, goal);
            let (least, gears, at) = Trial { vehicle: &vehicle, start, shift_time, goal }.least(6, 2);
            let time = found.as_ref().map_or(f64::INFINITY, |plan| plan.reached.time.get::<second>());
            assert!(time <= least + NEAR_S, "{wild:?} to {goal:?}: {time} s by {found:?}, {least} s by {gears:?} left at {at:?}");
            assert!(time.is_infinite() || time >= least - 0.05, "brute force is none: {time} s against {least} s");
        }
    }
}

#[test]
fn a_rolling_start_is_planned_too() {
    let wild = wild(3..4).new_tree(&mut TestRunner::deterministic()).unwrap().current();
    let vehicle = wild.vehicle();
    let (start, shift_time) = (Start::Rolling { gear: nth(1), speed: mps(6.0) }, Time::new::<second>(0.4));
    let goal = Goal::Speed(mps(20.0));
    let time = plan(&vehicle, start, shift_time, goal).unwrap().reached.time.get::<second>();
    let (least, ..) = Trial { vehicle: &vehicle, start, shift_time, goal }.least(8, 2);
    assert!((time - least).abs() <= NEAR_S, "{time} s against {least} s");
    assert!(plans(&vehicle, Start::Rolling { gear: nth(9), speed: mps(6.0) }, shift_time, &[goal]).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    /// The plan is never slower than shifts judged one by one, its gears rise, and what it says is what was run.
    #[test]
    fn a_plan_never_loses(wild in wild(2..6), speed in 10.0..60.0_f64, distance in 20.0..1500.0_f64) {
        let vehicle = wild.vehicle();
        let (start, shift_time) = (Start::Standing { launch: rpm(wild.launch) }, Time::new::<second>(wild.shift_s));
        let goals = [Goal::Speed(mps(speed)), Goal::Distance(Length::new::<meter>(distance))];
        for (plan, goal) in plans(&vehicle, start, shift_time, &goals).unwrap().into_iter().zip(goals) {
            let Ok(plan) = plan else { continue };
            if let Some(gain) = plan.gain() {
                prop_assert!(gain.get::<second>() >= 0.0);
            }
            prop_assert!(plan.held.windows(2).all(|pair| pair[0].gear < pair[1].gear && pair[0].next == Some(pair[1].gear)));
            prop_assert!(plan.held.iter().all(|held| held.to <= vehicle.pull().limit() * (1.0 + 1e-9)));
            prop_assert!(plan.left_out.iter().all(|shift| plan.held.iter().all(|held| held.gear != shift.to)));
            let gears: Vec<GearNumber> = plan.held.iter().map(|held| held.gear).collect();
            let at: Vec<f64> = plan.shifts.iter().map(|shift| in_rpm(shift.before)).collect();
            let time = Trial { vehicle: &vehicle, start, shift_time, goal }.time(&gears, &at);
            prop_assert!((time - plan.reached.time.get::<second>()).abs() < 1e-9, "{time} s run again, {plan:?}");
        }
    }

    /// What was found out for some goals makes plans for others quicker, never different.
    #[test]
    fn known_ground_changes_no_plan(wild in wild(2..6), speeds in prop::collection::vec(10.0..60.0_f64, 1..4), distance in 20.0..1500.0_f64) {
        let vehicle = wild.vehicle();
        let (start, shift_time) = (Start::Standing { launch: rpm(wild.launch) }, Time::new::<second>(wild.shift_s));
        let speeds: Vec<Goal> = speeds.into_iter().map(|speed| Goal::Speed(mps(speed))).collect();
        let distances = [distance, 1.7 * distance].map(|distance| Goal::Distance(Length::new::<meter>(distance)));
        let planned = |ground: &Ground, goals: &[Goal]| Shifting::Planned.ways_on(ground, &vehicle, start, shift_time, goals).unwrap();
        let (_, ground) = planned(&Ground::default(), &speeds);
        prop_assert_eq!(planned(&ground, &distances).0, plans(&vehicle, start, shift_time, &distances).unwrap());
    }
}

/// Torque of 300 N·m at any speed, 1,000 kg, no losses: 1 m/s² in direct, 4 and 1.05 in the gears below; limits at 10, 38.1 and 40 m/s.
fn even() -> Vehicle {
    let mut car = Car::of_mass(kg(1000.0));
    car.rolling = Sourced::given(0.0);
    car.drag_area = Sourced::given(Area::new::<square_meter>(0.0));
    car.grip = Sourced::given(ENDLESS_GRIP);
    car.efficiencies.mesh = Sourced::given(1.0);
    car.efficiencies.final_drive = Sourced::given(1.0);
    let none = MomentOfInertia::new::<kilogram_square_meter>(0.0);
    car.rotating = Sourced::given(Rotating::Given { engine: none, gearbox: none, wheels: none });
    let limit = 40.0 * RPM_PER_MPS;
    let gears = Gears { ratios: vec![4.0, 1.05, 1.0], final_drive: 1.0, rolling_radius: Length::new::<meter>(0.3), meshes: vec![] };
    Vehicle::new(Pull::new(&curve(&[(10.0, 300.0), (limit, 300.0)]), &gears, car.efficiencies, None).unwrap(), car).unwrap()
}

/// Engine rpm for each m/s of [`even`] in direct: 30/(π·0.3 m).
const RPM_PER_MPS: f64 = 100.0 / std::f64::consts::PI;

/// By hand, to 39 m/s: through all gears 10/4 + 28.095/1.05 + 0.905/1 = 30.162 s and two shifts, past 2nd 10/4 + 29/1 = 31.5 s and one.
/// So 2nd is worth its shift up to 1.338 s of it.
#[test]
fn a_gear_soon_left_again_is_skipped_where_shifts_are_slow() {
    let (vehicle, start) = (even(), Start::Standing { launch: rpm(10.0) });
    let at = |shift_s: f64| plan(&vehicle, start, Time::new::<second>(shift_s), Goal::Speed(mps(39.0))).unwrap();
    let (quick, slow) = (at(1.0), at(2.0));
    assert_eq!(quick.held.iter().map(|held| held.gear).collect::<Vec<_>>(), [1, 2, 3].map(nth));
    check("through all", quick.reached.time.get::<second>(), 30.162 + 2.0, 1e-4);
    assert_eq!(quick.left_out, []);
    assert_eq!(slow.held.iter().map(|held| (held.gear, held.next)).collect::<Vec<_>>(), [(nth(1), Some(nth(3))), (nth(3), None)]);
    check("past 2nd", slow.reached.time.get::<second>(), 31.5 + 2.0, 1e-9);
    check("gain", slow.gain().unwrap().get::<second>(), 30.162 + 4.0 - 33.5, 1e-3);
    assert_eq!(slow.left_out.iter().map(|shift| (shift.from, shift.to)).collect::<Vec<_>>(), [(nth(1), nth(2))]);
    // 1 m/s earlier in 1st is 4 × 31.83 rpm; that metre per second then takes 1 s in place of 1/4 s
    let early = slow.cost_of_early(&vehicle, rpm(4.0 * RPM_PER_MPS)).unwrap();
    check("early", early.get::<second>(), 0.75, 1e-9);
}

/// By hand, to 10.5 m/s: 1st ends at 10; the 0.5 m/s left take 0.5/1.05 s in 2nd after its shift. To 10 m/s no shift is made at all.
#[test]
fn no_shift_is_made_that_the_goal_does_not_need() {
    let (vehicle, start) = (even(), Start::Standing { launch: rpm(10.0) });
    let at = |speed: f64| plan(&vehicle, start, Time::new::<second>(0.5), Goal::Speed(mps(speed))).unwrap();
    check("past the limit", at(10.5).reached.time.get::<second>(), 2.5 + 0.5 + 0.5 / 1.05, 1e-9);
    let within = at(10.0);
    assert_eq!((within.held.len(), within.shifts.len(), within.cost_of_early(&vehicle, rpm(100.0))), (1, 0, None));
    check("at the limit", in_rpm(within.held[0].to), 40.0 * RPM_PER_MPS, 1e-9);
    // 13 m: 12.5 m are covered at 10 m/s, the rest at the limit takes 0.05 s; a shift of half a second and 1.05 m/s² gain nothing
    let short = plan(&vehicle, start, Time::new::<second>(0.5), Goal::Distance(Length::new::<meter>(13.0))).unwrap();
    assert_eq!(short.shifts, []);
    check("held at the limit", short.reached.time.get::<second>(), 2.55, 1e-9);
}

#[test]
fn a_goal_out_of_reach_says_why() {
    let found = plans(&even(), Start::Standing { launch: rpm(10.0) }, Time::default(), &[Goal::Speed(mps(50.0))]).unwrap();
    assert_eq!(found, [Err(Stopped::RevLimit { gear: nth(3) })]);
}
