//! The driveshaft of a setup, read and checked, and what all of them are judged at.

use crate::driveline::{self, Margin, TubeMaterial};
use crate::job::{self, InputProblem, Job, JobField, SetupField, ShaftField};
use crate::questions::setup::keep;
use crate::units::{Length, Typed, Velocity, limits};

mod slopes;

pub use slopes::Slopes;

/// What all setups share.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrivelineShared {
    /// The road speed that shafts are judged at, where it is typed.
    pub at: Option<Velocity>,
    /// Whether it is left blank, so that the fastest the car goes is taken.
    pub is_blank: bool,
    /// How near its critical speed a shaft may turn; none where a file names a word that is no option.
    pub margin: Option<Margin>,
}

/// The shaft of one setup.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shafts {
    /// Its pieces, the first behind the gearbox; none until lengths, outside and wall can be read.
    pub pieces: Vec<driveline::Shaft>,
    /// Their lengths, as far as they could be read.
    pub lengths: Vec<Length>,
    /// Outside and wall of the tube, where both could be read.
    pub tube: Option<(Length, Length)>,
    /// What the tube is made of.
    pub material: Option<TubeMaterial>,
    /// Which way its shafts point.
    pub slopes: Slopes,
}

impl Default for DrivelineShared {
    /// As where nothing is typed.
    fn default() -> Self {
        Self { at: None, is_blank: true, margin: None }
    }
}

impl DrivelineShared {
    /// Reads what all setups share.
    pub fn read(job: &Job, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &job.driveline;
        let is_blank = typed.at.is_blank();
        let at = if is_blank { None } else { keep(problems, JobField::DrivelineAt, typed.at.read(&limits::ROAD_SPEED)) };
        Self { at, is_blank, margin: typed.margin.value() }
    }
}

impl Shafts {
    /// Reads the shaft of a setup; blank fields are only missing.
    pub fn read(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &setup.shaft;
        let field = |field| (setup.id, SetupField::Shaft(field));
        let lengths = lengths(&typed.lengths, |read| keep(problems, field(ShaftField::Lengths), read));
        let mut one = |typed: &Typed, limits, of| {
            if typed.is_blank() { None } else { keep(problems, field(of), typed.read(limits)) }
        };
        let outside = one(&typed.outside, &limits::TUBE_OUTSIDE, ShaftField::Outside);
        let wall = one(&typed.wall, &limits::TUBE_WALL, ShaftField::Wall);
        let (tube, material) = (outside.zip(wall), typed.material.value());
        let pieces = tube.zip(material).map_or_else(Vec::new, |((outside, wall), material)| {
            let piece = |length: &Length| driveline::Shaft::new(*length, outside, wall, material.material());
            let pieces: Result<Vec<driveline::Shaft>, _> = lengths.iter().map(piece).collect();
            keep(problems, field(ShaftField::Wall), pieces).unwrap_or_default()
        });
        let slopes = Slopes::read(setup, &lengths, problems);
        Self { pieces, lengths, tube, material, slopes }
    }
}

/// One length a piece, parted by semicolons or plus signs; none where any of them cannot be read.
fn lengths(typed: &Typed, mut keep: impl FnMut(Result<Length, crate::units::UnitError>) -> Option<Length>) -> Vec<Length> {
    let parts = typed.text.split([';', '+']).map(str::trim).filter(|part| !part.is_empty());
    let read: Option<Vec<Length>> = parts.map(|part| keep(Typed::new(part, typed.units).read(&limits::SHAFT_LENGTH))).collect();
    read.unwrap_or_default()
}
