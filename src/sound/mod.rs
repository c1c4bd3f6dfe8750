//! What tones does a driveline make, and which of them fits what is heard?
//!
//! Nouns: a [`Tone`] is what one rotating part repeats, told by turns of the engine and of the gearbox's output; [`Rotating`] is all
//! that turns from the crankshaft to the tyre, [`Orders`] its tones in every gear; [`RollingBearing`] has four of its own.
//! Verbs: [`by_ear::rank`] puts the parts in the order in which they fit what is [`Heard`], [`tell_apart::test`] finds the one test that
//! tells two of them apart.
//! [`recording`] names the parts from samples of a microphone or a file, [`kept`] is what stays of one with the job, [`mod@together`] parts by
//! several what one cannot.
//! What is typed, words and rounding are not here.

pub mod bearing;
pub mod by_ear;
pub mod kept;
pub mod noise;
pub mod orders;
pub mod read;
pub mod recording;
pub mod tell_apart;
pub mod together;
pub mod tone;
mod weights;

pub use bearing::RollingBearing;
pub use noise::{Clutch, GoesWith, Heard, Kind, Load};
pub use orders::{Fitted, Orders, Rotating};
pub use tone::{Moment, Origin, Pair, Race, Seat, Tone};
