//! The sizes of a setup's box, read and checked, and what the car has room for.

use crate::job::{self, InputProblem, Job, JobField, SetupField, SwapField};
use crate::questions::reader::Reader;
use crate::questions::setup::keep;
use crate::speedometer::{Hand, Tap};
use crate::swap::{Outline, Pattern, Release, ShaftChange, Spline};
use crate::units::{Length, Mass, Typed, limits};

/// What all setups share.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SwapShared {
    /// How far the slip joint can still go in; none where it cannot be read.
    pub slip: Option<Length>,
    /// Between a rear tyre and its arch, with A's axle.
    pub arch: Option<Length>,
    /// The tunnel.
    pub tunnel: Option<Outline>,
}

/// The box of one setup, as far as it is measured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Swap {
    /// From the case face to the output flange.
    pub length: Option<Length>,
    /// To the mount.
    pub mount: Option<Length>,
    /// To the lever.
    pub lever: Option<Length>,
    /// Forwards to the nose of the input shaft.
    pub nose: Option<Length>,
    /// What runs in the pilot bush.
    pub spigot: Option<Length>,
    /// The splines of the input.
    pub input_spline: Option<Spline>,
    /// The splines of the output.
    pub output_spline: Option<Spline>,
    /// The bolt holes.
    pub holes: Option<Pattern>,
    /// The top of the case.
    pub outline: Option<Outline>,
    /// The width of the axle.
    pub axle_width: Option<Length>,
    /// The backspace of its wheels.
    pub backspace: Option<Length>,
    /// The splines of a half shaft.
    pub half_shaft: Option<Spline>,
    /// The holes of the output flange.
    pub flange: Option<Pattern>,
    /// How far the release bearing travels.
    pub travel: Option<Length>,
    /// How wide the clutch plate is.
    pub plate: Option<Length>,
    /// What it weighs.
    pub weight: Option<Mass>,
    /// Where the clutch fork comes out.
    pub release: Option<Release>,
    /// Where the speedometer's cable leaves.
    pub cable: Option<Tap>,
    /// Which way the teeth of the speedometer's drive gear wind.
    pub hand: Option<Hand>,
}

impl SwapShared {
    /// Reads what all setups share.
    pub fn read(job: &Job, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &job.swap;
        let slip = if typed.slip.is_blank() {
            Some(ShaftChange::usual_slip(job.units))
        } else {
            keep(problems, JobField::Slip, typed.slip.read(&limits::SLIP))
        };
        let mut read = Reader::new(problems);
        let arch = read.quantity(&typed.arch, JobField::Arch, &limits::ARCH);
        let tunnel = read.read(&typed.tunnel, JobField::Tunnel, |typed| Outline::read(&typed.text, typed.units));
        Self { slip, arch, tunnel }
    }
}

impl Swap {
    /// Reads the sizes of a setup's box; blank fields are only missing.
    pub fn read(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Self {
        use SwapField as F;
        let typed = &setup.swap;
        let field = |field| (setup.id, SetupField::Swap(field));
        let mut read = Reader::new(problems);
        let spline = |typed: &Typed| Spline::read(&typed.text, typed.units);
        let pattern = |typed: &Typed| Pattern::read(&typed.text, typed.units);
        Self {
            length: read.quantity(&typed.length, field(F::Length), &limits::FROM_FACE),
            mount: read.quantity(&typed.mount, field(F::Mount), &limits::FROM_FACE),
            lever: read.quantity(&typed.lever, field(F::Lever), &limits::FROM_FACE),
            nose: read.quantity(&typed.nose, field(F::Nose), &limits::FROM_FACE),
            spigot: read.quantity(&typed.spigot, field(F::Spigot), &limits::FIT_DIAMETER),
            travel: read.quantity(&typed.release_travel, field(F::Travel), &limits::RELEASE_TRAVEL),
            axle_width: read.quantity(&typed.axle_width, field(F::AxleWidth), &limits::AXLE_WIDTH),
            backspace: read.quantity(&typed.backspace, field(F::Backspace), &limits::BACKSPACE),
            input_spline: read.read(&typed.input_spline, field(F::InputSpline), spline),
            output_spline: read.read(&typed.output_spline, field(F::OutputSpline), spline),
            half_shaft: read.read(&typed.half_shaft, field(F::HalfShaft), spline),
            holes: read.read(&typed.holes, field(F::Holes), pattern),
            flange: read.read(&typed.flange, field(F::Flange), pattern),
            outline: read.read(&typed.outline, field(F::Outline), |typed| Outline::read(&typed.text, typed.units)),
            weight: read.quantity(&typed.weight, field(F::Weight), &limits::BOX_WEIGHT),
            // What is wrong with it is said where it is asked for: inside the box.
            plate: setup.inside.clutch_diameter.read(&limits::CLUTCH_DIAMETER).ok(),
            release: typed.release.value(),
            cable: setup.speedo.tap.value(),
            hand: setup.speedo.hand.value(),
        }
    }
}
