//! A gearbox swap: do the sizes of another box suit the car that the old one came out of?
//!
//! [`mod@spline`] is a spline as people tell it and how two of them agree, [`standard`] which standard's spline it may be; [`stations`]
//! are outlines and bolt holes as pairs of lengths; [`sizes`] are those of a box as texts; [`mod@axle`] is an axle of another width; [`shaft`] is what a longer or shorter box leaves of the driveshaft. How fast that
//! shaft may turn is not here, nor is any verdict by itself: a size that agrees is tried on before anything is ordered.

pub mod axle;
pub mod shaft;
pub mod sizes;
pub mod spline;
pub mod standard;
pub mod stations;

pub use shaft::ShaftChange;
pub use sizes::BoxSize;
pub use spline::{Agreement, Form, Spline, SplineError};
pub use stations::{Outline, Pattern, StationError};

worded! {
    /// Which side of the clutch housing the release fork comes out of, seen by the driver.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Release {
        /// On the left.
        Left => "on the left";
        /// On the right.
        Right => "on the right";
        /// Not at all: the bearing is pushed by a ring around the shaft.
        Around => "around the shaft";
    }
    /// In words, behind `clutch fork`.
    pub fn word;
}

/// Sizes typed side by side, each with a unit: one that names none takes that of the last one that does, as in `10 x 20 mm`.
fn with_shared_unit(sizes: &[&str]) -> Vec<String> {
    let unit_of = |size: &str| size.trim().trim_start_matches(|c: char| !(c.is_alphabetic() || matches!(c, '"' | '”' | '″'))).to_owned();
    let shared = sizes.iter().rev().map(|size| unit_of(size)).find(|unit| !unit.is_empty()).unwrap_or_default();
    let whole = |size: &&str| if unit_of(size).is_empty() { format!("{} {shared}", size.trim()) } else { size.trim().to_owned() };
    sizes.iter().map(whole).collect()
}
