//! The driveshaft: how fast it may turn before it whips, what its tube bears, how well it must be balanced.
//!
//! [`shaft`] is one piece between two joints as a uniform tube, [`tube`] what tubes are made of and how near their critical speed they
//! may turn. What turns the shaft is not here: it takes lengths and speeds.

pub mod shaft;
pub mod tube;

pub use shaft::{Material, Shaft, ShaftError};
pub use tube::{Margin, TubeMaterial};
