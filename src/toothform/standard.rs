//! The pitches, pressure angles and tooth heights that gears are cut with.

use crate::gearing::geometry::{Cut, cut::CutError};
use crate::units::common::millimetres;
use crate::units::limits::shown;
use crate::units::{Angle, Length};

/// A pitch as it is called.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pitch {
    /// A normal module, in mm.
    Module(f64),
    /// A normal diametral pitch, in teeth per inch of diameter.
    Diametral(f64),
}

/// How high the teeth are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Depth {
    /// Addendum 1, dedendum 1.25 modules (ISO 53, profile A).
    Full,
    /// Addendum 0.8, dedendum 1 module (the 20° stub of the American standard of 1932).
    Stub,
}

/// Modules of the first series. Source: ISO 54 (from memory).
const FIRST: &[f64] = &[1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0];
/// Modules of the second series. Source: ISO 54 (from memory).
const SECOND: &[f64] = &[1.125, 1.375, 1.75, 2.25, 2.75, 3.5, 4.5, 5.5, 6.5, 7.0, 9.0, 11.0];
/// Modules of older national lists (from memory).
const OLDER: &[f64] = &[3.25, 3.75];
/// Diametral pitches (from memory).
const DIAMETRAL: &[f64] =
    &[2.0, 2.25, 2.5, 2.75, 3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 14.0, 16.0, 18.0, 20.0, 22.0, 24.0];
/// Normal pressure angles in degrees, the usual one first.
pub const ANGLES_DEG: [f64; 5] = [20.0, 14.5, 17.5, 22.5, 25.0];

impl Pitch {
    /// Every pitch that is tried.
    pub fn all() -> impl Iterator<Item = Self> {
        let modules = FIRST.iter().chain(SECOND).chain(OLDER).map(|module| Self::Module(*module));
        modules.chain(DIAMETRAL.iter().map(|pitch| Self::Diametral(*pitch)))
    }

    /// mₙ.
    pub fn module(self) -> Length {
        match self {
            Self::Module(module) => millimetres(module),
            Self::Diametral(per_inch) => Cut::module_of_diametral_pitch(per_inch),
        }
    }

    /// How it is called: `module 2.5`, `12 DP`.
    pub fn said(self) -> String {
        match self {
            Self::Module(module) => format!("module {}", shown(module)),
            Self::Diametral(per_inch) => format!("{} DP", shown(per_inch)),
        }
    }

    /// How much rarer than the usual ones it is, 0 for those.
    pub(super) fn rarity(self) -> f64 {
        match self {
            Self::Module(module) if SECOND.contains(&module) => 0.3,
            Self::Module(module) if OLDER.contains(&module) => 0.6,
            Self::Diametral(per_inch) if per_inch.fract() != 0.0 => 0.3,
            _ => 0.0,
        }
    }
}

impl Depth {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Full, Self::Stub];

    /// Addendum and dedendum in modules.
    pub fn heights(self) -> (f64, f64) {
        match self {
            Self::Full => (1.0, 1.25),
            Self::Stub => (0.8, 1.0),
        }
    }

    /// The dedenda in modules that tools of this height leave: from the shallow ones of old standards to those for grinding and hobs with
    /// protuberance. Common practice, no published source.
    pub fn dedenda(self) -> (f64, f64) {
        match self {
            Self::Full => (1.14, 1.46),
            Self::Stub => (0.95, 1.2),
        }
    }

    /// The cut of a pitch.
    ///
    /// # Errors
    /// When no gearbox has it.
    pub fn cut(self, pitch: Pitch, helix: Angle, pressure: Angle) -> Result<Cut, CutError> {
        let (addendum, dedendum) = self.heights();
        Ok(Cut::new(pitch.module(), helix, pressure)?.with_heights(addendum, dedendum))
    }
}

worded! {
    /// The rack that a tool is made to: dedendum and tip radius in modules.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Rack {
        /// ISO 53, profile A: 1.25, tip radius 0.38.
        A => "ISO 53 profile A: 1 / 1.25, tip radius 0.38";
        /// ISO 53, profile B: 1.25, 0.30.
        B => "ISO 53 profile B: 1 / 1.25, tip radius 0.30";
        /// ISO 53, profile C: 1.25, 0.25.
        C => "ISO 53 profile C: 1 / 1.25, tip radius 0.25";
        /// ISO 53, profile D, for hardened and ground teeth: 1.4, 0.39.
        D => "ISO 53 profile D: 1 / 1.4, tip radius 0.39";
        /// Stub teeth: 0.8 and 1, tip radius 0.2 (from memory).
        Stub => "stub: 0.8 / 1, tip radius 0.2";
    }
    /// How it is called on a drawing.
    pub fn said;
}

impl Rack {
    /// Addendum, dedendum and tip radius in modules.
    ///
    /// Source: ISO 53. The printed 0.38 exceeds by a hair what its clearance leaves room for at 20°; the tip is then one arc.
    pub fn sizes(self) -> (f64, f64, f64) {
        match self {
            Self::A => (1.0, 1.25, 0.38),
            Self::B => (1.0, 1.25, 0.30),
            Self::C => (1.0, 1.25, 0.25),
            Self::D => (1.0, 1.4, 0.39),
            Self::Stub => (0.8, 1.0, 0.2),
        }
    }
}
