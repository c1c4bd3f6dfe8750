//! Laws of motion that hold for any engine, car and gears: nothing overshoots, nothing is gained for nothing.

use layshaft::motion::plan::Shifting;
use layshaft::motion::run::{Course, LegKind, Run, Start, run};
use layshaft::motion::shift::{self, Reason, Rule};
use layshaft::motion::{Car, EngineCurve, Gears, Pull, Sourced, Vehicle, compare, top_speed};
use layshaft::units::{Length, Time};
use proptest::prelude::*;
use uom::si::{energy::joule, length::meter, time::second, torque::newton_meter, velocity::meter_per_second};

use crate::nth;
use crate::published_motion::{ENDLESS_GRIP, curve, in_rpm, kg, mps, rpm};

fn config() -> ProptestConfig {
    ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() }
}

/// A road engine: eight points from 1,000 rpm, torque of 60 to 240 N·m.
fn engine() -> impl Strategy<Value = EngineCurve> {
    (prop::collection::vec(60.0..240.0_f64, 8), 400.0..900.0_f64).prop_map(|(torques, step)| {
        curve(&(0_u8..).zip(&torques).map(|(at, torque)| (1000.0 + step * f64::from(at), *torque)).collect::<Vec<_>>())
    })
}

/// Three to five gears with steps of 1.2 to 1.8 down to direct.
fn gears() -> impl Strategy<Value = Gears> {
    (prop::collection::vec(1.2..1.8_f64, 2..5), 3.0..4.5_f64, 0.27..0.36_f64).prop_map(|(steps, final_drive, radius)| {
        let mut ratios = vec![1.0];
        for step in steps {
            ratios.insert(0, ratios.first().copied().unwrap_or(1.0) * step);
        }
        let meshes = vec![2; ratios.len() - 1];
        Gears { ratios, final_drive, rolling_radius: Length::new::<meter>(radius), meshes }
    })
}

fn vehicle(engine: &EngineCurve, gears: &Gears, mass: f64, grip: f64) -> Vehicle {
    let mut car = Car::of_mass(kg(mass));
    car.grip = Sourced::given(grip);
    Vehicle::new(Pull::new(engine, gears, car.efficiencies, None).unwrap(), car).unwrap()
}

fn course(vehicle: &Vehicle, rule: Rule, shift_time: f64, speeds: &[f64]) -> Course {
    Course {
        start: Start::Standing { launch: rpm(2000.0) },
        shifts: shift::shifts(vehicle, rule),
        shift_time: Time::new::<second>(shift_time),
        speeds: speeds.iter().map(|v| mps(*v)).collect(),
        distances: vec![Length::new::<meter>(50.0), Length::new::<meter>(402.336)],
        band: Some(vehicle.pull().curve().band(0.9)),
        trace_step: None,
    }
}

/// Time to the first speed asked for, endless where it is never reached.
fn time_s(run: &Run) -> f64 {
    run.to_speed.first().copied().flatten().map_or(f64::INFINITY, |moment| moment.time.get::<second>())
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_curve_stays_between_its_points(engine in engine(), share in 0.0..1.0_f64) {
        for pair in engine.points().windows(2) {
            let at = pair[0].speed + (pair[1].speed - pair[0].speed) * share;
            let torque = engine.torque(at).unwrap().get::<newton_meter>();
            let (a, b) = (pair[0].torque.get::<newton_meter>(), pair[1].torque.get::<newton_meter>());
            prop_assert!(torque >= a.min(b) - 1e-9 && torque <= a.max(b) + 1e-9, "{torque} outside {a}..{b}");
        }
        let band = engine.band(0.9);
        let peak = engine.peak_power();
        prop_assert!(band.holds(peak.speed));
        let inside = band.from + (band.to - band.from) * share;
        // the band is the one stretch around the peak: nothing inside it falls below the share
        prop_assert!(engine.power(inside).unwrap() >= peak.power * (0.9 - 1e-9));
        let anywhere = rpm(1000.0) + (engine.range().to - rpm(1000.0)) * share;
        prop_assert!(engine.power(anywhere).unwrap() <= peak.power * (1.0 + 1e-12));
    }

    /// Grip aside (a heavier car also presses harder on its driven wheels), shifts aside (it coasts better through them), and shifted
    /// where the thrusts are equal, which no mass moves. By equal acceleration about one in ten thousand of these wild curves is slower with
    /// less mass: each upshift is judged by itself, and a heavier car may come by another crossing of the same two gears.
    #[test]
    fn more_mass_is_never_quicker(engine in engine(), gears in gears(), mass in 700.0..2000.0_f64, more in 1.0..500.0_f64, to in 8.0..30.0_f64) {
        let time = |mass: f64| {
            let vehicle = vehicle(&engine, &gears, mass, ENDLESS_GRIP);
            time_s(&run(&vehicle, &course(&vehicle, Rule::EqualThrust, 0.0, &[to])).unwrap())
        };
        let (light, heavy) = (time(mass), time(mass + more));
        prop_assert!(heavy >= light - 1e-9, "{heavy} s with more mass against {light} s");
    }

    #[test]
    fn energy_is_kept(engine in engine(), gears in gears(), mass in 700.0..2000.0_f64, grip in 0.3..1.2_f64, shift_time in 0.0..1.0_f64, to in 5.0..40.0_f64) {
        let vehicle = vehicle(&engine, &gears, mass, grip);
        let run = run(&vehicle, &course(&vehicle, Rule::EqualAcceleration, shift_time, &[to])).unwrap();
        prop_assert!(run.evidence.converged, "{:?} {:?} {:?}", run.evidence, run.stopped, run.legs.last());
        for leg in &run.legs {
            let [thrust, drag, steady, kinetic] = [leg.work.thrust, leg.work.drag, leg.work.steady, leg.work.kinetic].map(|energy| energy.get::<joule>());
            let apart = (thrust - drag - steady - kinetic).abs();
            prop_assert!(apart <= 1e-6 * (thrust.abs() + kinetic.abs()), "{leg:?}: {apart} J missing");
        }
        // legs join, in time, speed and distance
        for pair in run.legs.windows(2) {
            prop_assert_eq!(pair[0].to.time, pair[1].from.time);
            prop_assert_eq!(pair[0].to.speed, pair[1].from.speed);
            prop_assert_eq!(pair[0].to.distance, pair[1].from.distance);
        }
        let share = run.band_share().unwrap_or(0.0);
        prop_assert!((0.0..=1.0 + 1e-12).contains(&share));
    }

    #[test]
    fn distance_is_the_integral_of_speed(engine in engine(), gears in gears(), mass in 700.0..2000.0_f64, shift_time in 0.0..1.0_f64, to in 5.0..25.0_f64) {
        let vehicle = vehicle(&engine, &gears, mass, 0.8);
        let traced = Course { trace_step: Some(mps(0.05)), ..course(&vehicle, Rule::EqualThrust, shift_time, &[to]) };
        let run = run(&vehicle, &traced).unwrap();
        // over distances the run may hold its speed for long; the trapezium is exact there too
        let covered: f64 = run.trace.windows(2).map(|pair| {
            0.5 * (pair[0].speed + pair[1].speed).get::<meter_per_second>() * (pair[1].time - pair[0].time).get::<second>()
        }).sum();
        let distance = run.trace.last().unwrap().distance.get::<meter>();
        prop_assert!((covered - distance).abs() <= 1e-4 * distance + 1e-3, "{covered} m against {distance} m");
        // asking for a trace moves no figure
        let plain = layshaft::motion::run::run(&vehicle, &Course { trace_step: None, ..traced }).unwrap();
        for (a, b) in run.to_speed.iter().chain(&run.over_distance).flatten().zip(plain.to_speed.iter().chain(&plain.over_distance).flatten()) {
            prop_assert!(((a.time - b.time) / b.time).get::<uom::si::ratio::ratio>().abs() < 1e-9);
        }
    }

    #[test]
    fn top_speed_is_the_highest_that_holds(engine in engine(), gears in gears(), mass in 700.0..2000.0_f64, grade in 0.0..0.2_f64) {
        let vehicle = vehicle(&engine, &gears, mass, ENDLESS_GRIP).on(grade).unwrap();
        for gear in vehicle.pull().gears() {
            let found = top_speed::in_gear(&vehicle, gear.gear).map_or(0.0, |top| top.speed.get::<meter_per_second>());
            let (slow, fast) = (gear.slowest.get::<meter_per_second>(), gear.fastest.get::<meter_per_second>());
            let scanned = (0..=400).rev().map(|at| slow + (fast - slow) * f64::from(at) / 400.0)
                .find(|v| gear.thrust(mps(*v)).is_some_and(|thrust| thrust >= vehicle.road_load(mps(*v))));
            match scanned {
                Some(v) => prop_assert!(found >= v - 1e-9 && found <= v + (fast - slow) / 400.0 + 1e-9, "{found} against {v}"),
                // a stretch narrower than the scan may hold: then thrust must equal road load where it ends
                None if found > 0.0 => {
                    let (thrust, load) = (gear.thrust(mps(found)).unwrap(), vehicle.road_load(mps(found)));
                    prop_assert!(((thrust - load) / load).value.abs() < 1e-6, "{thrust:?} against {load:?} at {found}");
                }
                None => {}
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..config() })]

    /// The shift by equal acceleration equals the best of a brute-force scan over chosen shift speeds, and its cost the difference of runs.
    #[test]
    fn best_shift_equals_a_scan(engine in engine(), gears in gears(), mass in 700.0..2000.0_f64) {
        const STEPS: u16 = 300;
        let vehicle = vehicle(&engine, &gears, mass, ENDLESS_GRIP);
        let best = shift::shifts(&vehicle, Rule::EqualAcceleration)[0];
        prop_assume!(best.lands_on_curve);
        let lower = vehicle.pull().gear(nth(1)).unwrap().clone();
        let upper = vehicle.pull().gear(nth(2)).unwrap().clone();
        // up to the lower gear's limit, through the one shift under trial
        let end = lower.fastest.get::<meter_per_second>();
        let start = upper.slowest.max(lower.slowest).get::<meter_per_second>();
        prop_assume!(start < end - 0.5);
        let time = |speed: f64| {
            let mut course = course(&vehicle, Rule::At(lower.engine_speed(mps(speed))), 0.0, &[end]);
            course.start = Start::Rolling { gear: nth(1), speed: mps(start) };
            course.shifts.truncate(1);
            course.distances.clear();
            time_s(&run(&vehicle, &course).unwrap())
        };
        let least = (0..=STEPS).map(|at| start + (end - start) * f64::from(at) / f64::from(STEPS)).map(time).fold(f64::INFINITY, f64::min);
        let found = time(best.speed.get::<meter_per_second>());
        prop_assert!(found <= least + 1e-9, "{found} s at {:?}, a scan finds {least} s", best);
        let cost = shift::cost(&vehicle, &best, rpm(500.0));
        if let Some(early) = cost.early {
            let earlier = lower.road_speed(best.before - rpm(500.0)).get::<meter_per_second>();
            prop_assert!((time(earlier) - found - early.get::<second>()).abs() < 1e-8, "{early:?}");
            prop_assert!(early.get::<second>() >= -1e-9);
        }
        if best.reason == Reason::Limit {
            prop_assert_eq!(cost.late, None);
        }
    }
}

#[test]
fn a_run_in_words_of_its_legs() {
    use LegKind::{Drive, Shift, Slip};
    let vehicle = crate::published_motion::sample("wide4", 0.75, 0.0);
    let course = Course { band: None, ..course(&vehicle, Rule::EqualThrust, 0.35, &[26.8224]) };
    let run = run(&vehicle, &course).unwrap();
    let kinds: Vec<(LegKind, usize)> = run.legs.iter().map(|leg| (leg.kind, leg.gear.number())).collect();
    assert_eq!(kinds, [(Slip, 1), (Drive, 1), (Shift, 1), (Drive, 2), (Shift, 2), (Drive, 3)]);
    assert!(run.legs[0].on_grip.get::<second>() > 0.0, "first gear pulls more than the tyres hold");
}

#[test]
fn close_or_wide_as_facts() {
    let question = compare::Question {
        launch: rpm(3000.0),
        shifting: Shifting::By(Rule::EqualThrust),
        shift_time: Time::new::<second>(0.0),
        speeds: vec![mps(26.8224)],
        cruise: Some(mps(31.2928)),
        band_share: 0.9,
    };
    let facts: Vec<compare::Facts> = ["wide4", "close4"]
        .iter()
        .map(|set| compare::facts(&crate::published_motion::sample(set, ENDLESS_GRIP, 0.0), &question).unwrap())
        .collect();
    let difference = compare::difference(&facts[0], &facts[1]);
    // 2.60 against 3.40, 23.5 % taller; 10.2832 s against 9.8274 s to 60 mph (reference table O5); both cruise in direct
    assert!((difference.first_overall_share - (2.60 / 3.40 - 1.0)).abs() < 1e-12);
    let time = difference.to_speed[0].unwrap().get::<second>();
    assert!((time - (10.2832 - 9.8274)).abs() < 1e-4, "{time}");
    assert_eq!(difference.cruise_rpm, Some(0.0));
    // every figure of a setup stands in its facts, so that it can be shown
    assert_eq!(facts[0].landings.len(), 3);
    assert!((in_rpm(facts[0].landings[0].shift.after) - 3829.41).abs() < 0.01);
    // the peak of 64.858 kW stands at 5,246 rpm; 90 % of it begins above 4,185 rpm (58.4 kW), so that the wide 1-2 shift lands below the band
    assert!(matches!(facts[0].landings[0].place, compare::Place::Below(_)));
    assert!(difference.landings_inside > 0);
    assert!(difference.clutch_energy_share.unwrap() > 0.6);
}
