//! The car whose runs are ranked: that of the demo job, with gear sets, axles and tyres of the invented catalogue.

use layshaft::finder::{Engine, Given, Measure, Wish};
use layshaft::gearing::stage::StageKind;
use layshaft::job::{Chosen, Job, Stage, demo};
use layshaft::questions::Conditions;
use layshaft::units::common::metres_per_second;

use crate::ground;

/// Rest to 100 km/h.
pub const GOAL_M_PER_S: f64 = 100.0 / 3.6;

/// What the catalogue's wishes are asked with, the demo job's engine and car included.
pub fn given() -> Option<Given> {
    let conditions = Conditions::of(&demo::job());
    Given::of(&conditions, &[]).engine.map(|engine: Engine| Given { engine: Some(engine), ..ground::given() })
}

/// The quickest wanted, nothing else.
pub fn wishes() -> Vec<Wish> {
    vec![Wish::prefer(Measure::TimeToSpeed(metres_per_second(GOAL_M_PER_S)), 0.0, 0.0, 5.0)]
}

/// Forty thousand combinations: 100 gear sets, 20 final drives, 20 tyres.
pub fn table() -> layshaft::finder::Table {
    let mut table = ground::table();
    table.sets.truncate(100);
    table.axles.truncate(20);
    table.tyres.truncate(20);
    table
}

/// The demo job's car with a box of eight gears, an overdrive and a range box: as many steps as there can be.
pub fn of_32_steps() -> Job {
    let mut job = demo::job();
    job.setups.truncate(1);
    let stage = |kind, drive: &str| Stage { kind: Chosen::of(kind), drive: drive.into(), ..Stage::default() };
    for setup in &mut job.setups {
        setup.gearbox.gears = ["5.2", "4.1", "3.3", "2.6", "2.1", "1.65", "1.3", "1"].map(String::from).to_vec();
        setup.stages = vec![stage(StageKind::Overdrive, "0.89"), stage(StageKind::RangeBox, "2.5")];
    }
    job
}
