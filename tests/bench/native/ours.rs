//! What the peers are given, and what they are compared with: catalogue, wishes and car as plain numbers, our hundred best, and our runs.

use std::path::Path;
use std::sync::Arc;

use layshaft::finder::{Engine, Search, Strength, Wish};
use layshaft::motion::Vehicle;
use layshaft::motion::pull::{Gears, Pull};
use layshaft::motion::run::{Course, Start, run};
use layshaft::motion::shift::shifts;
use layshaft::units::common::{in_rpm, metres, metres_per_second, rpm};
use measurements::{car, ground};
use serde_json::{Value, json};
use uom::si::{
    force::newton, linear_number_density::per_meter, mass::kilogram, time::second, torque::newton_meter, velocity::meter_per_second,
};

/// How many runs the peer is given.
const RUNS: usize = 20;

/// Writes the file.
pub(crate) fn write(folder: &Path) -> std::io::Result<()> {
    std::fs::create_dir_all(folder)?;
    std::fs::write(folder.join("ours.json"), json!({ "search": search(), "runs": runs() }).to_string())
}

fn search() -> Value {
    let table = ground::table();
    let wishes = ground::preferences();
    let mut search = Search::new(Arc::new(table.clone()), wishes.clone(), ground::given()).exhaustive();
    search.advance(u64::MAX);
    let best: Vec<Value> = search.best_by_weight().iter().map(|(rows, score)| json!([rows[0], rows[1], rows[2], score])).collect();
    json!({
        "first": table.sets.iter().map(|set| set.ratios.first().copied()).collect::<Vec<_>>(),
        "top": table.sets.iter().map(|set| set.ratios.last().copied()).collect::<Vec<_>>(),
        "drop": table.sets.iter().map(|set| largest_drop(&set.ratios)).collect::<Vec<_>>(),
        "axle": table.axles.iter().map(|axle| axle.ratio).collect::<Vec<_>>(),
        "way": table.tyres.iter().map(|tyre| tyre.circumference_m).collect::<Vec<_>>(),
        "pairs": table.pairs.first().map(|group| group.sorted.iter().map(|pair| pair.ratio).collect::<Vec<_>>()),
        "dial": ground::given().dial.unwrap_or_default().constant().get::<per_meter>(),
        "speed": 31.0,
        "wishes": wishes.iter().map(wish).collect::<Vec<_>>(),
        "best": best,
    })
}

fn largest_drop(ratios: &[f64]) -> f64 {
    ratios.windows(2).map(|two| 1.0 - two[1] / two[0]).fold(0.0, f64::max)
}

/// Least, greatest, weight over step; open ends far away.
fn wish(wish: &Wish) -> Value {
    let Strength::Prefer(weight) = wish.strength else { return Value::Null };
    json!({ "least": wish.least.max(-1e300), "greatest": wish.greatest.min(1e300), "weight": weight / wish.measure.step() })
}

fn runs() -> Value {
    let Some(engine) = car::given().and_then(|given| given.engine) else { return Value::Null };
    let table = car::table();
    let every = table.sets.len() / RUNS;
    let one = |at: usize| {
        let set = table.sets.get(at * every)?;
        one_run(&engine, &set.ratios, &set.meshes, table.axles.get(at)?.ratio, table.tyres.get(at)?.circumference_m)
    };
    // A point every 10 rpm, so that the peer can go straight from one to the next.
    let (from, to) = (in_rpm(engine.curve.range().from), in_rpm(engine.curve.range().to));
    let speeds = (0..2_000).map(|at| from + 10.0 * f64::from(at)).take_while(|speed| *speed < to).chain([to]);
    let curve: Vec<[f64; 2]> = speeds.filter_map(|speed| Some([speed, engine.curve.torque(rpm(speed))?.get::<newton_meter>()])).collect();
    json!({ "curve": curve, "goal": car::GOAL_M_PER_S, "runs": (0..RUNS).filter_map(one).collect::<Vec<_>>() })
}

fn one_run(engine: &Engine, ratios: &[f64], meshes: &[u8], behind: f64, way_m: f64) -> Option<Value> {
    let gears = Gears {
        ratios: ratios.to_vec(),
        final_drive: behind,
        rolling_radius: metres(way_m / (2.0 * std::f64::consts::PI)),
        meshes: meshes.to_vec(),
    };
    let pull = Pull::new(&engine.curve, &gears, engine.car.efficiencies, engine.limit).ok()?;
    let vehicle = Vehicle::new(pull, engine.car).ok()?;
    let upshifts = shifts(&vehicle, engine.shifting.rule());
    let course = Course {
        start: Start::Standing { launch: engine.launch },
        shifts: upshifts.clone(),
        shift_time: engine.shift_time,
        speeds: vec![metres_per_second(car::GOAL_M_PER_S)],
        distances: Vec::new(),
        band: None,
        trace_step: None,
    };
    let time = run(&vehicle, &course).ok()?.to_speed.first().copied().flatten()?.time.get::<second>();
    let load = |speed: f64| vehicle.road_load(metres_per_second(speed)).get::<newton>();
    let gear = |pull: &layshaft::motion::pull::GearPull| {
        let shift = upshifts.iter().find(|shift| shift.from == pull.gear).map(|shift| shift.speed.get::<meter_per_second>());
        json!({
            "rpm": pull.rpm_per_m_per_s,
            "thrust": pull.thrust_per_torque_1_per_m(),
            "mass": vehicle.moving_mass(pull.gear).map(|mass| mass.get::<kilogram>()),
            "until": shift.unwrap_or(pull.fastest.get::<meter_per_second>()),
        })
    };
    // With the clutch open or slipping, the published mass factor is 1.04 (Gillespie, from memory).
    let open = 1.04 * engine.car.mass.get::<kilogram>();
    Some(json!({
        "gears": vehicle.pull().gears().iter().map(gear).collect::<Vec<_>>(),
        "level": load(0.0), "linear": (4.0 * load(10.0) - load(20.0) - 3.0 * load(0.0)) / 20.0,
        "square": (load(20.0) - 2.0 * load(10.0) + load(0.0)) / 200.0, "grip": vehicle.grip_limit().get::<newton>(), "open": open,
        "launch": in_rpm(engine.launch), "shift": engine.shift_time.get::<second>(), "time": time,

    }))
}
