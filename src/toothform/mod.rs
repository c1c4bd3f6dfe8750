//! The form of one gear's teeth: what a caliper, a micrometer and ink read of it, and which standard gear that makes it.
//!
//! [`gear`] is a gear as it is cut, with its circles, angles and thicknesses; [`span`] is the reading over several teeth, [`pins`] that over
//! pins or balls, [`across`] that over the tips of an odd count, [`print`](mod@print) the helix from a rolled print of the tips. Each goes both ways: the
//! reading of a gear, and the gear of a reading. [`involute`] is the inverse of the involute function. [`standard`] lists the pitches and
//! racks there are, [`known`] ranks those that readings fit, [`pair`] is a gear with its mate, [`split`] shares a
//! pair’s profile shifts out, [`allowance`] says how much thinner teeth are cut for backlash, [`outline`] is flanks and roots as points,
//! [`relief`] takes its tips back, [`lewis`] is how well a root bears bending.
//!
//! Symbols as in ISO 21771:2007. Everything is of external gears.

pub mod across;
pub mod allowance;
pub mod gear;
pub mod involute;
pub mod known;
pub mod lewis;
pub mod outline;
pub mod pair;
pub mod pins;
pub mod print;
pub mod relief;
pub mod span;
pub mod split;
pub mod standard;

pub use gear::CutGear;
pub use standard::{Depth, Pitch};
