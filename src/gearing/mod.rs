//! Gears: teeth, meshes and exact ratios; gearbox layouts; final drives and extra stages; what a ladder of gears is like.
//!
//! Things first: [`teeth`], [`gearbox`], [`axle`]. Questions asked of them: [`ladder`] (steps, spread, character) and
//! [`check`] (what cannot be right). Speeds, forces and road figures are not here; every ratio is an exact fraction.

pub mod axle;
pub mod check;
pub mod gearbox;
pub mod ladder;
pub mod read;
pub mod teeth;

pub use axle::{FinalDrive, Place, Stage};
pub use gearbox::{Gear, Gearbox, Idler, Layout, Reverse};
pub use ladder::Ladder;
pub use teeth::{Mesh, Ratio, Teeth};
