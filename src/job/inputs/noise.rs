//! The inputs of a noise: the speed it is heard at, the gears it is there in, its pitch, cylinders and bearings.

use super::{Bounds, Kind, Row, inputs, notation, quantity, whole};
use crate::job::{Job, Noise};
use crate::units::{Measured, System, Velocity, limits};

/// The cylinders of an engine.
const CYLINDERS: Bounds = (1.0, 16.0);
/// The cylinders that are taken where none are typed.
pub const USUAL_CYLINDERS: u8 = 4;

inputs! {
    /// The texts about a noise.
    NoiseField of noise: Noise;

    /// The road speed or rpm at which it is heard.
    At at at: notation("noise-at", "at, road speed or rpm", road_unit).or(cruise);
    /// The speed at the end of a recording.
    Until at until: notation("noise-until", "at its end, if not steady", road_unit);
    /// Further gears in which it is there.
    There at there: notation("noise-there", "also there in", |_, _| None).like("1 2");
    /// Gears in which it is gone.
    Gone at gone: notation("noise-gone", "gone in", |_, _| None).like("4 n");
    /// Its pitch.
    Pitch at pitch: quantity("noise-pitch", "its pitch, if known", &limits::PITCH).like("1,040");
    /// The cylinders of the engine.
    Cylinders at cylinders: whole("noise-cylinders", "cylinders", CYLINDERS).or(|_| USUAL_CYLINDERS.to_string());
    /// Bearings whose geometry is known.
    Bearings at bearings: Row::new("noise-bearings", "bearings, a line each: balls x diameter on their circle", Kind::Lines)
        .like("cluster front: 9 x 7.94 on 38.5 mm\npinion rear: 14 x 11.1 on 62 mm, 15°");
    /// What was kept of recordings.
    Kept at kept: Row::new("noise-kept", "recordings kept, a line each", Kind::Lines).or(|_| "none".to_owned());
}

/// The unit of a road speed, where no other stands behind the number.
fn road_unit(text: &str, system: System) -> Option<&'static str> {
    let has_unit = text.trim().ends_with(char::is_alphabetic);
    (!has_unit).then(|| Velocity::usual(system).symbol)
}

/// The cruise speed, where it can be read.
fn cruise(job: &Job) -> String {
    job.cruise.read(&limits::CRUISE_SPEED).map_or_else(|_| String::new(), |cruise| limits::bare(cruise, job.units))
}
