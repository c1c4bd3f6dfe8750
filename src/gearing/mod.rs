//! Gears: teeth, meshes and exact ratios; gearbox layouts; final drives and extra stages; what a ladder of gears is like.
//!
//! Things first: [`teeth`], [`printed`] (a ratio without its teeth), [`gearbox`], [`axle`], [`stage`] (an overdrive or a range box, and
//! the steps it makes of the gears), [`part`]. Questions asked of them: [`ladder`] (steps, spread, character),
//! [`check`] (what cannot be right), [`speeds`] (how fast every part turns), [`hunting`] (how often the same teeth meet),
//! [`geometry`] (where they touch), [`mix`] (parts of several sets in one box),
//! [`identify`] (what lies on the bench). [`read`] and [`write`](mod@write) are the two ways between gears and texts.
//! Forces and road figures are not here; every ratio is an exact fraction, one that is only printed too.

pub mod axle;
pub mod check;
pub mod gearbox;
pub mod geometry;
pub mod hunting;
pub mod identify;
pub mod ladder;
pub mod mix;
pub mod number;
pub mod part;
pub mod printed;
pub mod read;
pub mod speeds;
pub mod stage;
pub mod teeth;
pub mod write;

pub use axle::{FinalDrive, Place};
pub use gearbox::{Gear, Gearbox, Idler, Layout, Reverse, ReverseGears};
pub use ladder::Ladder;
pub use number::GearNumber;
pub use printed::PrintedRatio;
pub use stage::{Stage, StageKind, Step, TakeOff, UsedIn};
pub use teeth::{Mesh, Ratio, Teeth};
