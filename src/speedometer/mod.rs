//! The speedometer: which gears make it read true, what it reads with those fitted, and what the law allows.
//!
//! Things first: [`gear`], what lies on the shelf.

pub mod gear;

pub use gear::{Hand, Role, SpeedoGear};
