//! The inputs that all setups share: the job's words, the speeds that are looked at, the dial, the inside of the box.

use super::bench::BenchField;
use super::car::PullField;
use super::setup::bare;
use super::{Kind, Row, inputs, notation, quantity, words};
use crate::job::Job;
use crate::swap::ShaftChange;
use crate::toothload::synchroniser::{self, Lining};
use crate::units::{Torque, limits};

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
    Tunnel at swap.tunnel: notation("tunnel", "tunnel above the shaft", bare).like("0: 8; 16: 6");
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
