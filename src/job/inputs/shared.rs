//! The inputs that all setups share: the job's words, the speeds that are looked at, the dial, the inside of the box.

use serde::{Deserialize, Serialize};

use super::bench::BenchField;
use super::car::PullField;
use super::{Kind, Row, inputs, length_unit, notation, quantity, words};
use crate::driveline::Margin;
use crate::job::choice::{Chosen, Law, LookedGear, Stock};
use crate::job::document::document;
use crate::job::{Job, SetupId};
use crate::swap::ShaftChange;
use crate::toothload::duty::{Duty, TorqueFrom};
use crate::toothload::synchroniser::{self, Lining, LiningKind};
use crate::units::{System, Torque, Typed, limits};

inputs! {
    /// The texts that all setups share.
    JobField of job: Job, with {
        /// A text about engine, car and run.
        Pull(PullField) at pull;
        /// A text of the bench.
        Bench(BenchField) at bench;
    };

    /// What the job is called.
    Title at title: words("title", "title");
    /// Whose job it is.
    Customer at customer: words("customer", "customer");
    /// The car, in words.
    Car at car: words("car", "car");
    /// Anything worth keeping.
    Notes at notes: Row::new("notes", "notes", Kind::Lines);
    /// Words to the customer.
    QuoteNote at quote.note: Row::new("quote-note", "note to the customer", Kind::Lines);
    /// What is charged, a line each.
    QuoteLines at quote.lines: Row::new("quote-lines", "quote, a line each", Kind::Lines).like("Labour: 450 EUR");
    /// How long the offer holds.
    QuoteValid at quote.valid: words("quote-valid", "valid until");
    /// The engine speed of each upshift.
    Shift at shift: quantity("shift", "shift at", &limits::SHIFT_SPEED).needed();
    /// The road speed of a steady cruise.
    Cruise at cruise: quantity("cruise", "cruise at", &limits::CRUISE_SPEED).needed();
    /// What the speedometer's dial expects; blank where a road check tells it, or nothing does.
    Dial at speedo.dial: quantity("dial", "dial", &limits::DIAL_CONSTANT).like("1,000");
    /// The true speed at which the speedometer's readings are shown.
    SpeedoCheck at speedo.check: quantity("speedo-check", "check at", &limits::ROAD_SPEED).needed();
    /// The input speed looked at inside the box, or a road speed.
    InsideAt at inside.at: quantity("inside-at", "at", &limits::ENGINE_SPEED).or(shift);
    /// The time a synchroniser is given.
    SyncTime at inside.shift_time: quantity("sync-time", "time to synchronise", &limits::SYNCHRONISING_TIME)
        .or(|job| limits::bare(synchroniser::usual_time(), job.units));
    /// The torque that teeth are judged at.
    InsideTorque at inside.torque: quantity("inside-torque", "torque at the input", &limits::TORQUE).or(greatest_torque);
    /// The road speed that the driveshaft is judged at.
    DrivelineAt at driveline.at: Row::new("driveline-at", "judge the shaft at", Kind::Quantity(&limits::ROAD_SPEED));
    /// How far the slip joint can still go in.
    Slip at swap.slip: quantity("slip", "slip left at ride height", &limits::SLIP).or(|job| limits::bare(ShaftChange::usual_slip(job.units), job.units));
    /// Between tyre and arch.
    Arch at swap.arch: quantity("arch", "rear tyre to arch", &limits::ARCH);
    /// The tunnel, station by station.
    Tunnel at swap.tunnel: notation("tunnel", "tunnel above the shaft", length_unit).like("0: 8; 16: 6");
    /// The speed the pinion is made for.
    PinionMost at driveline.pinion: quantity("pinion-most", "pinion at most", &limits::PINION_SPEED);
    /// Limits of the user's own for the lining.
    LiningLimits at inside.lining_limits: notation("lining-limits", "own limits of the lining", |_, _| Some("m/s N/mm² J/mm² W/mm²"))
        .or(lining_limits);
}

/// The shift rpm, where it can be read.
fn shift(job: &Job) -> String {
    job.shift.read(&limits::SHIFT_SPEED).map_or_else(|_| String::new(), |shift| limits::bare(shift, job.units))
}

/// The limits of the lining that is chosen, as they would be typed.
fn lining_limits(job: &Job) -> String {
    job.inside.lining.value().map_or_else(String::new, |kind| Lining::of(kind).as_typed())
}

/// The engine's greatest torque, where it is typed as such; nothing where a curve is.
fn greatest_torque(job: &Job) -> String {
    let typed = job.pull.peak_torque.read::<Torque>(&limits::TORQUE).ok().filter(|_| job.pull.rows.is_blank());
    typed.map_or_else(String::new, |torque| limits::bare(torque, job.units))
}

/// What all setups share: they go into one car with one dial.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct SpeedoShared {
    /// What the dial expects; blank where it is not known.
    pub dial: Typed,
    /// The id of the rule it is judged by; blank for the usual one of the reader’s country.
    pub law: Chosen<Law>,
    /// The true speed at which readings are shown.
    pub check: Typed,
    /// Whether only gears in stock are proposed.
    pub in_stock: Chosen<Stock>,
}

impl Default for SpeedoShared {
    fn default() -> Self {
        Self { dial: Typed::default(), check: Typed::new("60", System::Inch), law: Chosen::NOTHING, in_stock: Chosen::NOTHING }
    }
}

/// What is looked at, for all setups.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct InsideShared {
    /// The setup whose train is drawn; the first where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setup: Option<SetupId>,
    /// The gear selected: `1` to `8`, `n` for neutral, `r` for reverse; blank for 2nd.
    pub gear: Chosen<LookedGear>,
    /// The input speed, or a road speed with its unit; blank for the shift rpm.
    pub at: Typed,
    /// The time a synchroniser is given.
    pub shift_time: Typed,
    /// The lining its cones are judged by; blank for brass.
    pub lining: Chosen<LiningKind>,
    /// Limits of the user's own for it: sliding speed, pressure, work and power; blank for the usual ones.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub lining_limits: String,
    /// What the car is used for, by which bearings last; blank for the road.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub duty: Chosen<Duty>,
    /// The torque at the input that teeth and bearings are judged at; blank for the engine's greatest.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub torque: Typed,
    /// Whether that torque is the engine's or what the tyres hold.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub torque_from: Chosen<TorqueFrom>,
}

document! {
    /// What all setups share: they are driven on one road.
    pub struct DrivelineShared {
        /// The road speed that the shaft is judged at; blank for the fastest the car goes.
        pub at: Typed,
        /// The share of its critical speed that a shaft may turn at; blank for 70 %.
        pub margin: Chosen<Margin>,
    }
    left out while blank {
        /// The speed that pinion and bearings are made for; blank where it is not known.
        pub pinion: Typed,
    }
}

document! {
    /// What all setups share: they go into one car, and setup A's box came out of it.
    pub struct SwapShared {
        /// How far the slip joint can still go in at ride height; blank for the usual inch.
        pub slip: Typed,
        /// Between the outer wall of a rear tyre and its arch.
        pub arch: Typed,
        /// The tunnel above the shaft's line, station by station: `0: 200; 400: 150`.
        pub tunnel: Typed,
    }
}
