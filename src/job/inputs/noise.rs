//! What is typed about a noise: what it is like, the speed it is heard at, the gears it is there in, its pitch, cylinders, bearings.

use super::{Bounds, Kind, Row, no_unit, notation, quantity, whole};
use crate::job::Job;
use crate::job::choice::{Chosen, HeardGear, NoiseSetup, StagesIn};
use crate::job::document::document;
use crate::sound::{self, Clutch, GoesWith, Load};
use crate::units::Typed;
use crate::units::{Measured, System, Velocity, limits};

/// The cylinders of an engine.
const CYLINDERS: Bounds = (1.0, 16.0);
/// The cylinders that are taken where none are typed.
pub const USUAL_CYLINDERS: u8 = 4;

document! {
    /// The texts about a noise, and what is chosen. Whatever is blank is left out of a file.
    pub struct Noise, NoiseField of noise {}
    left out while blank {
        /// What kind of noise it is.
        kind: Chosen<sound::Kind>;
        /// The gear it is heard in.
        gear: Chosen<HeardGear>;
        /// The road speed or rpm at which it is heard; blank for the cruise speed.
        at: Typed, At: notation("noise-at", "at, road speed or rpm", road_unit).or(cruise);
        /// The speed at the end of a recording; blank where it was steady.
        until: Typed, Until: notation("noise-until", "at its end, if not steady", road_unit);
        /// Which of the extra stages that can be switched are in; blank for none.
        stages: Chosen<StagesIn>;
        /// Whether it is there pulling, coasting or both.
        load: Chosen<Load>;
        /// The setup it is asked of; blank for the first.
        setup: Chosen<NoiseSetup>;
        /// Further gears in which it is there.
        there: String, There: notation("noise-there", "also there in", no_unit).like("1 2");
        /// Gears in which it is gone.
        gone: String, Gone: notation("noise-gone", "gone in", no_unit).like("4 n");
        /// What it keeps step with.
        goes_with: Chosen<GoesWith>;
        /// What pressing the clutch does to it.
        clutch: Chosen<Clutch>;
        /// Its pitch.
        pitch: Typed, Pitch: quantity("noise-pitch", "its pitch, if known", &limits::PITCH).like("1,040");
        /// The cylinders of the engine; blank for 4.
        cylinders: String, Cylinders: whole("noise-cylinders", "cylinders", CYLINDERS).or(|_| USUAL_CYLINDERS.to_string());
        /// Bearings whose geometry is known, a line each.
        bearings: Typed, Bearings: Row::new("noise-bearings", "bearings, a line each: balls x diameter on their circle", Kind::Lines)
            .like("cluster front: 9 x 7.94 on 38.5 mm\npinion rear: 14 x 11.1 on 62 mm, 15°");
        /// What was kept of recordings, a line each: gear, engine speed, tones and how loud they were.
        kept: String, Kept: Row::new("noise-kept", "recordings kept, a line each", Kind::Lines).or(|_| "none".to_owned());
    }
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
