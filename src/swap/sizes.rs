//! The sizes of a box as texts, whoever keeps them: what each is called, an example, and whether a text can be read as it.

use super::{Outline, Pattern, Spline, SplineError, StationError};
use crate::problem::Explain;
use crate::units::{Measured, System, UnitError, limits, read};

/// A size of a box, all lengths from the case face that bolts to the clutch housing or engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BoxSize {
    /// To the output flange.
    Length,
    /// To the mount.
    Mount,
    /// To the lever.
    Lever,
    /// Forwards to the nose of the input shaft.
    Nose,
    /// What runs in the pilot bush.
    Spigot,
    /// The splines of the input.
    InputSpline,
    /// The splines of the output.
    OutputSpline,
    /// The holes of the output flange.
    Flange,
    /// The bolt holes of the case.
    Holes,
    /// The top of the case.
    Outline,
    /// How far the release bearing travels.
    Travel,
    /// What it weighs.
    Weight,
    /// Its oil in words.
    Oil,
}

/// Why a text is no such size.
#[derive(Clone, Debug, PartialEq)]
pub enum SizeError {
    /// No length or weight.
    Unit(UnitError),
    /// No spline.
    Spline(SplineError),
    /// No pairs of lengths.
    Station(StationError),
}

impl SizeError {
    fn why(&self) -> &dyn Explain {
        match self {
            Self::Unit(why) => why,
            Self::Spline(why) => why,
            Self::Station(why) => why,
        }
    }
}

impl Explain for SizeError {
    fn what(&self) -> String {
        self.why().what()
    }

    fn what_to_do(&self) -> String {
        self.why().what_to_do()
    }
}

impl BoxSize {
    /// Every size, in the order it is measured and written.
    pub const ALL: [Self; 13] = [
        Self::Length,
        Self::Mount,
        Self::Lever,
        Self::Nose,
        Self::Spigot,
        Self::InputSpline,
        Self::OutputSpline,
        Self::Flange,
        Self::Holes,
        Self::Outline,
        Self::Travel,
        Self::Weight,
        Self::Oil,
    ];

    /// Its name in a file, its word beside a field, and an example in inches.
    pub const fn about(self) -> (&'static str, &'static str, &'static str) {
        match self {
            Self::Length => ("length", "face to output flange", "23 5/8"),
            Self::Mount => ("mount", "face to mount", "16 1/2"),
            Self::Lever => ("lever", "face to lever", "12"),
            Self::Nose => ("nose", "face to nose of the input shaft", "7 1/4"),
            Self::Spigot => ("spigot", "spigot diameter", "0.590"),
            Self::InputSpline => ("input_spline", "input spline", "10 x 1 1/8"),
            Self::OutputSpline => ("output_spline", "output spline", "27 x 1 1/8"),
            Self::Flange => ("flange", "output flange holes", "4 on 3 in"),
            Self::Holes => ("holes", "bolt holes, or a name", "-4: 3; 4: 3; 0: -4 1/2"),
            Self::Outline => ("outline", "top of the case", "0: 6; 12: 4"),
            Self::Travel => ("release_travel", "release travel", "1/2"),
            Self::Weight => ("weight", "weight, dry", "75"),
            Self::Oil => ("oil", "oil", "GL-4 80W, 1.6 l"),
        }
    }

    /// Whether a text can be read as this size, bare numbers in a system's units.
    ///
    /// # Errors
    /// Why it cannot.
    ///
    /// ```
    /// use layshaft::swap::BoxSize;
    /// use layshaft::units::System;
    /// assert!(BoxSize::Length.check("23 5/8", System::Inch).is_ok() && BoxSize::Length.check("some", System::Inch).is_err());
    /// ```
    pub fn check(self, text: &str, system: System) -> Result<(), SizeError> {
        let quantity = |read: Result<(), UnitError>| read.map_err(SizeError::Unit);
        match self {
            Self::Length | Self::Mount | Self::Lever | Self::Nose => quantity(is_read(text, system, &limits::FROM_FACE)),
            Self::Spigot => quantity(is_read(text, system, &limits::FIT_DIAMETER)),
            Self::Travel => quantity(is_read(text, system, &limits::RELEASE_TRAVEL)),
            Self::Weight => quantity(is_read(text, system, &limits::BOX_WEIGHT)),
            Self::InputSpline | Self::OutputSpline => Spline::read(text, system).map(|_| ()).map_err(SizeError::Spline),
            Self::Flange | Self::Holes => Pattern::read(text, system).map(|_| ()).map_err(SizeError::Station),
            Self::Outline => Outline::read(text, system).map(|_| ()).map_err(SizeError::Station),
            Self::Oil => Ok(()),
        }
    }
}

fn is_read<Q: Measured>(text: &str, system: System, limits: &crate::units::Limits<Q>) -> Result<(), UnitError> {
    read(text, system, limits).map(|_| ())
}
