//! How parts sit in one another and how much room is left along a shaft: what a rebuilder measures, and shims, reams or presses for.
//!
//! [`stack`] adds up measured parts to the play that is left, with its spread and hot; [`shims`] finds what takes the play up from what is
//! left in the drawer; [`mod@read`] reads both as people write them; [`slip`] names the one figure that may be ten times off or in the other
//! unit. [`material`] is how much each material grows with heat, [`temperature`] how warm parts are. What turns is not here: these are lengths and temperatures.

pub mod error;
pub mod material;
pub mod read;
pub mod shims;
pub mod slip;
pub mod stack;
pub mod temperature;
mod token;

pub use error::FitTextError;
pub use material::Material;
pub use shims::{PlayRange, Shim, ShimsGo};
pub use stack::{Part, Stack};
