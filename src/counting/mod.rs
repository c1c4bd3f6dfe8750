//! How many teeth does the gear in a photograph have, and is that sure?
//!
//! A picture as brightness and a circle placed on the tips go in. [`grey`] is the picture, `field` what is cut out of it and put on an
//! equal footing, `ring` a ring of teeth as a camera sees it. `coarse` finds the counts that are worth a trial, `wave` scores one,
//! `simplex` fits its ring, `search` compares all of them. [`verdict`] says whether it is sure, [`marks`] where every tooth is.
//!
//! No learning and no chance: the same picture gives the same count. Tried on rendered pictures only.

mod coarse;
mod field;
pub mod grey;
pub mod marks;
mod ring;
mod search;
mod simplex;
pub mod verdict;
mod wave;

pub use grey::Grey;
pub use marks::Mark;
pub use search::Counting;
pub use verdict::{Counted, Sureness, together};

/// A circle on a picture, in pixels from its upper left corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Circle {
    /// Its centre.
    pub x: f64,
    /// Its centre.
    pub y: f64,
    /// Its radius.
    pub radius: f64,
}

/// The smallest circle that teeth are seen on, in pixels: eight teeth of seven pixels are no larger around, but have nothing between.
pub const SMALLEST: f64 = 20.0;
/// How far brightness must spread around the circle, as a standard deviation of 255: below, there is only the camera's own noise.
const DARK: f64 = 4.0;

/// Why teeth cannot be counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CountError {
    /// The circle is so small that its teeth are not seen: its radius, in pixels.
    TooSmall(f64),
    /// Much of the circle lies outside the picture.
    Outside,
    /// Nothing stands out.
    TooDark,
    /// Nothing repeats around the circle as teeth do.
    NoTeeth,
}

explain! { CountError:
    Self::TooSmall(radius) => format!("the circle is only {:.0} pixels across", 2.0 * radius),
        "go nearer until the gear fills most of the picture, or drag the circle onto the tips";
    Self::Outside => "much of the circle lies outside the picture", "photograph the whole gear, or drag the circle onto the tips";
    Self::TooDark => "the picture is too dark or too even to show teeth",
        "lay the gear on paper that is lighter or darker than it, by a window, and photograph it again";
    Self::NoTeeth => "no teeth are found around the circle",
        "drag the circle onto the tips, or lay the gear flat on plain paper and photograph it again";
}
