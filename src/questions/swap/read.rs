//! The sizes of a setup's box, read and checked, and what the car has room for.

use crate::job::{self, InputProblem, Job, JobField, SetupField, SwapField};
use crate::questions::setup::keep;
use crate::speedometer::{Hand, Tap};
use crate::swap::{Outline, Pattern, Release, ShaftChange, Spline};
use crate::units::{Length, Limits, Mass, Typed, limits};

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
        let tunnel = (!typed.tunnel.is_blank()).then(|| Outline::read(&typed.tunnel.text, typed.tunnel.units));
        let arch = (!typed.arch.is_blank()).then(|| typed.arch.read(&limits::ARCH));
        let arch = arch.and_then(|read| keep(problems, JobField::Arch, read));
        Self { slip, arch, tunnel: tunnel.and_then(|read| keep(problems, JobField::Tunnel, read)) }
    }
}

impl Swap {
    /// Reads the sizes of a setup's box; blank fields are only missing.
    pub fn read(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &setup.swap;
        let field = |field| (setup.id, SetupField::Swap(field));
        let mut one = |typed: &Typed, limits: &Limits<Length>, of| {
            if typed.is_blank() { None } else { keep(problems, field(of), typed.read(limits)) }
        };
        let length = one(&typed.length, &limits::FROM_FACE, SwapField::Length);
        let mount = one(&typed.mount, &limits::FROM_FACE, SwapField::Mount);
        let lever = one(&typed.lever, &limits::FROM_FACE, SwapField::Lever);
        let nose = one(&typed.nose, &limits::FROM_FACE, SwapField::Nose);
        let spigot = one(&typed.spigot, &limits::FIT_DIAMETER, SwapField::Spigot);
        let travel = one(&typed.release_travel, &limits::RELEASE_TRAVEL, SwapField::Travel);
        let axle_width = one(&typed.axle_width, &limits::AXLE_WIDTH, SwapField::AxleWidth);
        let backspace = one(&typed.backspace, &limits::BACKSPACE, SwapField::Backspace);
        let mut spline = |typed: &Typed, of| {
            if typed.is_blank() { None } else { keep(problems, field(of), Spline::read(&typed.text, typed.units)) }
        };
        let input_spline = spline(&typed.input_spline, SwapField::InputSpline);
        let output_spline = spline(&typed.output_spline, SwapField::OutputSpline);
        let half_shaft = spline(&typed.half_shaft, SwapField::HalfShaft);
        let mut pattern = |typed: &Typed, of| {
            if typed.is_blank() { None } else { keep(problems, field(of), Pattern::read(&typed.text, typed.units)) }
        };
        let (holes, flange) = (pattern(&typed.holes, SwapField::Holes), pattern(&typed.flange, SwapField::Flange));
        let outline = (!typed.outline.is_blank()).then(|| Outline::read(&typed.outline.text, typed.outline.units));
        let outline = outline.and_then(|read| keep(problems, field(SwapField::Outline), read));
        let weight = (!typed.weight.is_blank()).then(|| typed.weight.read(&limits::BOX_WEIGHT));
        let weight = weight.and_then(|read| keep(problems, field(SwapField::Weight), read));
        // What is wrong with it is said where it is asked for: inside the box.
        let plate = setup.inside.clutch_diameter.read(&limits::CLUTCH_DIAMETER).ok();
        Self {
            length,
            mount,
            lever,
            nose,
            spigot,
            input_spline,
            output_spline,
            holes,
            outline,
            axle_width,
            backspace,
            half_shaft,
            weight,
            flange,
            travel,
            plate,
            release: typed.release.value(),
            cable: setup.speedo.tap.value(),
            hand: setup.speedo.hand.value(),
        }
    }
}
