//! What is typed about a noise: what it is like, the speed it is heard at, the gears it is there in, its pitch.
//!
//! [`super::inputs::noise`] is its table.

use super::choice::{Chosen, HeardGear, NoiseSetup, StagesIn};
use super::document::document;
use crate::sound::{Clutch, GoesWith, Kind, Load};
use crate::units::Typed;

document! {
    /// The texts about a noise, and what is chosen. Whatever is blank is left out of a file.
    pub struct Noise {}
    left out while blank {
        /// What kind of noise it is.
        pub kind: Chosen<Kind>,
        /// The gear it is heard in.
        pub gear: Chosen<HeardGear>,
        /// The road speed or rpm at which it is heard; blank for the cruise speed.
        pub at: Typed,
        /// The speed at the end of a recording; blank where it was steady.
        pub until: Typed,
        /// Which of the extra stages that can be switched are in; blank for none.
        pub stages: Chosen<StagesIn>,
        /// Whether it is there pulling, coasting or both.
        pub load: Chosen<Load>,
        /// The setup it is asked of; blank for the first.
        pub setup: Chosen<NoiseSetup>,
        /// Further gears in which it is there.
        pub there: String,
        /// Gears in which it is gone.
        pub gone: String,
        /// What it keeps step with.
        pub goes_with: Chosen<GoesWith>,
        /// What pressing the clutch does to it.
        pub clutch: Chosen<Clutch>,
        /// Its pitch.
        pub pitch: Typed,
        /// The cylinders of the engine; blank for 4.
        pub cylinders: String,
        /// Bearings whose geometry is known, a line each.
        pub bearings: Typed,
        /// What was kept of recordings, a line each: gear, engine speed, tones and how loud they were.
        pub kept: String,
    }
}
