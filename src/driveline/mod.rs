//! The driveshaft: how fast it may turn before it whips, what its tube bears, how well it must be balanced, and what its joints do.
//!
//! [`shaft`] is one piece between two joints as a uniform tube, [`tube`] what tubes are made of and how near their critical speed they
//! may turn. [`direction`] is which way a shaft points, [`slope`] reads that as people say it; [`joint`] is one Hooke's joint, [`mod@line`] all
//! of a driveline and what they leave of one another, [`joint_limits`] how large their angles may be, [`travel`] how they stand with the
//! axle hanging or the centre bearing shimmed, [`inclinometer`] what a phone laid on a tube reads. What turns the shaft is not here: it
//! takes lengths, angles and speeds.

pub mod direction;
pub mod inclinometer;
pub mod joint;
pub mod joint_limits;
pub mod line;
pub mod shaft;
pub mod slope;
pub mod travel;
pub mod tube;

pub use direction::{Direction, Lean};
pub use joint::Joint;
pub use line::{Line, LineError, Yokes};
pub use shaft::{Material, Shaft, ShaftError};
pub use slope::{Slope, SlopeError};
pub use tube::{Ends, Margin, TubeMaterial};
