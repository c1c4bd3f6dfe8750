//! How parts sit in one another and how much room is left along a shaft: what a rebuilder measures, and shims, reams or presses for.
//!
//! [`stack`] adds up measured parts to the play that is left, with its spread and hot; [`shims`] finds what takes the play up from what is
//! left in the drawer; [`readings`] is one diameter read several times, [`seat`] a shaft in its bore, [`iso286`] the standard's fits;
//! [`mod@read`] and [`wanted`] read what people write; [`slip`] names the one figure that may be ten times off or in the other
//! unit. [`tapered`] sets a pair of bearings, [`ring_pinion`] a ring and pinion, [`clock`] is a bore read round the clock, [`fastener`] a
//! bolt and its torque, [`drills`] the sizes that are sold, [`press`] a press fit's force, [`needles`] a set of loose needles; [`several`] reads several lengths in a line. [`material`] is how much each material grows with heat, [`temperature`] how warm parts are. What turns is not here: these are lengths and temperatures.

pub mod clock;
pub mod drills;
pub mod error;
pub mod fastener;
pub mod iso286;
pub mod material;
pub mod needles;
pub mod press;
pub mod read;
pub mod readings;
pub mod ring_pinion;
pub mod seat;
pub mod several;
pub mod shims;
pub mod slip;
pub mod stack;
pub mod tapered;
pub mod temperature;
mod token;
pub mod wanted;

pub use error::{CodeError, FitTextError};
pub use material::Material;
pub use shims::{PlayRange, Shim, ShimsGo};
pub use stack::{Part, Stack};
