//! Photographs on the device: of a part on the shelf, of a step of a build. Taken, shown, put into a backup and out of it again.
//!
//! [`album`] knows which there are, [`picture`] makes one small, [`strip`] stands beside what they show, [`printed`] goes with the record.

pub mod album;
pub mod picture;
pub mod printed;
pub mod strip;
