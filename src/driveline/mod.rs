//! The driveshaft: how fast it may turn before it whips, what its tube bears, how well it must be balanced.
//!
//! [`shaft`] is one piece between two joints as a uniform tube. Joints and their angles, and what turns the shaft, are not here: it takes
//! lengths and speeds.

pub mod shaft;

pub use shaft::{Material, Shaft, ShaftError};
