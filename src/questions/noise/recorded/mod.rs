//! What a recording says of the noise: what is asked of it, the parts it names in words, its spectrum with their tones in it.
//!
//! A recording is not of the job: whoever shows the page keeps it for as long as the page lives, has it listened to in slices
//! ([`Intake`], [`Listening`]), and asks here what it comes to.

mod asked;
mod picture;
mod said;

pub use crate::sound::recording::{Clip, ClipError, Findings, Intake, Listening};
pub use asked::Asked;
pub use picture::{order_map, spectrum};
pub use said::{Heard, Part, heard, tones};
