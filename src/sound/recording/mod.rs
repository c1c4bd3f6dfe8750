//! Which rotating part does a recording name? Samples in, parts ranked.
//!
//! The steps, each a file: [`clip`] checks what was recorded, [`turns`] resamples it to constant samples a turn of the engine,
//! [`spectra`] makes whitened spectra, [`track`] finds the speed from the recording itself, [`lines`] measures single lines of an order,
//! [`share_out`] shares lines that coincide among the parts and the engine, [`score`] ranks the parts, [`map`] shows it over time.
//! [`Listening`] does it all in slices.
//!
//! Method: averaged order spectra, as tried on synthetic recordings and written down with its rates of success; never tried on a car.

pub mod clip;
pub mod lines;
mod listening;
pub mod makers;
pub mod map;
pub(crate) mod places;
pub mod score;
pub mod share_out;
pub mod spectra;
pub mod track;
pub mod turns;

pub use clip::{Clip, ClipError, Intake};
pub use listening::{Findings, Listening, Run};
pub use score::{Candidate, Sureness};
