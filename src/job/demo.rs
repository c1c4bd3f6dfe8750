//! The first job anyone sees: invented, with three setups of invented gear sets. Also an empty job to start from.

use super::{
    Bench, Chosen, DrivelineShared, Gearbox, InsideShared, Job, Pull, Quote, Setup, SetupId, Shaft, Speedo, SpeedoShared, SwapShared, Wish,
    WishKind, Wishes, file,
};
use crate::gearing::Layout;
use crate::units::{System, Typed};

/// The car of the demo job. Once another is written over it, the job is the shop's.
const CAR: &str = "Fernhill coupé, rear-wheel drive (invented)";

/// Whether a job is still about the invented car of the demo job.
pub fn is_demo(job: &Job) -> bool {
    job.car == CAR
}

/// A filled demo job. The car, its customer and the gear sets are invented.
pub fn job() -> Job {
    let wide = gearbox("Curlew four, wide", "25/30", &["37/18", "32/23", "28/27", "direct"], "33/16", "19");
    let close = gearbox("Curlew four, close", "27/28", &["37/18", "32/23", "29/26", "direct"], "33/16", "19");
    let five = gearbox("Redshank five", "22/33", &["36/19", "31/24", "27/28", "direct", "20/35"], "33/16", "19");
    Job {
        title: "Fernhill coupé, hill climb and the drive home".into(),
        customer: "An invented customer".into(),
        car: CAR.into(),
        notes: "A demo job: car, customer and gear sets are invented. Change anything, or start an empty job.".into(),
        shift: Typed::new("6,500", System::Inch),
        cruise: Typed::new("70", System::Inch),
        wishes: wishes(),
        speedo: SpeedoShared { dial: Typed::new("1,000", System::Inch), ..SpeedoShared::default() },
        pull: Pull {
            mass: Typed::new("2,600", System::Inch),
            peak_torque: Typed::new("231", System::Inch),
            peak_torque_at: Typed::new("3,800", System::Inch),
            peak_power: Typed::new("215", System::Inch),
            peak_power_at: Typed::new("5,600", System::Inch),
            limit: Typed::new("6,500", System::Inch),
            roll_from: Typed::new("50", System::Inch),
            roll_to: Typed::new("70", System::Inch),
            ..Pull::default()
        },
        setups: vec![
            setup(1, "As it came", wide, "8/28", ("44", "4.8 down")),
            setup(2, "Close", close, "8/28", ("44", "4.8 down")),
            setup(3, "Five-speed, overdrive 5th", five, "7/23", ("41.5", "5 down")),
        ],
        next_setup: 4,
        ..empty(System::Inch)
    }
}

/// A job with one empty setup, to be read in `units`.
pub fn empty(units: System) -> Job {
    let mut job = Job {
        schema: file::SCHEMA,
        title: "New job".into(),
        customer: String::new(),
        car: String::new(),
        notes: String::new(),
        units,
        shift: Typed::new("6,000", units),
        cruise: Typed::new(if units == System::Inch { "70" } else { "110" }, units),
        omitted_aspect: Chosen::NOTHING,
        bench: Bench::default(),
        inside: InsideShared::default(),
        driveline: DrivelineShared::default(),
        swap: SwapShared::default(),
        pull: Pull::default(),
        speedo: SpeedoShared { check: Typed::new(if units == System::Inch { "60" } else { "100" }, units), ..SpeedoShared::default() },
        wishes: Wishes::default(),
        quote: Quote::default(),
        setups: Vec::new(),
        next_setup: 1,
        for_customer: None,
    };
    job.add_setup();
    job
}

/// What the invented customer asks for.
fn wishes() -> Wishes {
    let wish = |kind, least: &str, greatest: &str| Wish::new(kind, System::Inch).between(least, greatest);
    let gears = Wish { must: true, ..wish(WishKind::GearCount, "4", "5") };
    let tyre = Wish { must: true, ..wish(WishKind::TyreDiameter, "23", "25") };
    let rows = vec![
        wish(WishKind::CruiseRpm, "2,900", "3,300"),
        wish(WishKind::FirstOverall, "9", "10.5"),
        wish(WishKind::LargestDrop, "", "30"),
        wish(WishKind::Speedometer, "0", "3"),
        gears,
        tyre,
    ];
    Wishes { rows, ..Wishes::default() }
}

fn gearbox(name: &str, constant: &str, gears: &[&str], reverse: &str, idler: &str) -> Gearbox {
    Gearbox {
        name: name.into(),
        altered: false,
        layout: Layout::InputReduced,
        constant: constant.into(),
        gears: gears.iter().map(|gear| (*gear).into()).collect(),
        reverse: reverse.into(),
        idler: idler.into(),
    }
}

fn setup(id: u32, name: &str, gearbox: Gearbox, speedo_gears: &str, (length, slope): (&str, &str)) -> Setup {
    let shaft = Shaft { gearbox_slope: "3 down".into(), slopes: slope.into(), pinion_slope: "3.2 up".into(), ..Shaft::default() };
    Setup {
        id: SetupId(id),
        name: name.into(),
        gearbox,
        final_drive: "43/11".into(),
        tyre: inches("185/70R14"),
        speedo: Speedo { gears: speedo_gears.into(), ..Speedo::default() },
        shaft: Shaft { lengths: inches(length), outside: inches("3"), wall: inches("0.083"), ..shaft },
        ..Setup::default()
    }
}

fn inches(text: &str) -> Typed {
    Typed::new(text, System::Inch)
}
