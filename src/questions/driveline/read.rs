//! The driveshaft of a setup, read and checked, and what all of them are judged at.

use crate::driveline::shaft::wall_of;
use crate::driveline::tube::read_own_material;
use crate::driveline::{self, Ends, Margin, Material, TubeMaterial};
use crate::job::{self, InputProblem, Job, JobField, SetupField, ShaftField};
use crate::questions::reader::Reader;
use crate::questions::setup::keep;
use crate::units::{AngularVelocity, Length, Pressure, Typed, Velocity, limits};

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
    /// The speed that the pinion is made for, where it is typed.
    pub pinion: Option<AngularVelocity>,
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
    /// What the tube is made of; none for a material of the user's own.
    pub material: Option<TubeMaterial>,
    /// Modulus and density of that, or of the user's own.
    pub made_of: Option<Material>,
    /// How its ends are held.
    pub ends: Option<Ends>,
    /// Which way its shafts point.
    pub slopes: Slopes,
    /// One shim of its centre bearing, where it is typed.
    pub shim: Option<Length>,
    /// What an indicator swings by at its middle.
    pub run_out: Option<Length>,
}

impl Default for DrivelineShared {
    /// As where nothing is typed.
    fn default() -> Self {
        Self { at: None, is_blank: true, margin: None, pinion: None }
    }
}

impl DrivelineShared {
    /// Reads what all setups share.
    pub fn read(job: &Job, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &job.driveline;
        let mut read = Reader::new(problems);
        Self {
            at: read.quantity(&typed.at, JobField::DrivelineAt, &limits::ROAD_SPEED),
            is_blank: typed.at.is_blank(),
            margin: typed.margin.value(),
            pinion: read.quantity(&typed.pinion, JobField::PinionMost, &limits::PINION_SPEED),
        }
    }
}

impl Shafts {
    /// Reads the shaft of a setup; blank fields are only missing.
    pub fn read(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &setup.shaft;
        let field = |field| (setup.id, SetupField::Shaft(field));
        let lengths = lengths(&typed.lengths, |read| keep(problems, field(ShaftField::Lengths), read));
        let mut read = Reader::new(problems);
        let outside = read.quantity(&typed.outside, field(ShaftField::Outside), &limits::TUBE_OUTSIDE);
        let shim = read.quantity(&typed.shim, field(ShaftField::Shim), &limits::SHIM);
        let run_out = read.quantity(&typed.run_out, field(ShaftField::RunOut), &limits::RUN_OUT);
        let wall = match typed.wall.text.trim().to_lowercase().strip_prefix("bore") {
            Some(bore) => {
                let bore = Typed::new(bore, typed.wall.units).read(&limits::TUBE_BORE);
                let bore = keep(problems, field(ShaftField::Wall), bore);
                outside.zip(bore).and_then(|(outside, bore)| keep(problems, field(ShaftField::Wall), wall_of(outside, bore)))
            }
            None => read.quantity(&typed.wall, field(ShaftField::Wall), &limits::TUBE_WALL),
        };
        let own = typed.own_material.trim();
        let material = typed.material.value().filter(|_| own.is_empty());
        let made_of = if own.is_empty() {
            material.map(TubeMaterial::material)
        } else {
            keep(problems, field(ShaftField::OwnMaterial), read_own_material(own))
        };
        let slopes = Slopes::read(setup, &lengths, problems);
        let (tube, ends) = (outside.zip(wall), typed.ends.value());
        let mut shafts = Self { pieces: Vec::new(), lengths, tube, material, made_of, ends, slopes, shim, run_out };
        let pieces: Option<Result<Vec<driveline::Shaft>, _>> = shafts.lengths.iter().map(|length| shafts.piece(*length)).collect();
        shafts.pieces = pieces.and_then(|pieces| keep(problems, field(ShaftField::Wall), pieces)).unwrap_or_default();
        shafts
    }

    /// A piece of this tube of another length; none until all of the tube can be read.
    ///
    /// # Errors
    /// Where there is no such tube.
    pub fn piece(&self, length: Length) -> Option<Result<driveline::Shaft, driveline::ShaftError>> {
        let ((outside, wall), material, ends) = (self.tube?, self.made_of?, self.ends?);
        Some(driveline::Shaft::new(length, outside, wall, material).map(|shaft| shaft.with_ends(ends)))
    }

    /// The shear stress at which its tube yields, where that is known.
    pub fn shear_yield(&self) -> Option<Pressure> {
        self.material.and_then(TubeMaterial::shear_yield)
    }
}

/// One length a piece, parted by semicolons or plus signs; none where any of them cannot be read.
fn lengths(typed: &Typed, mut keep: impl FnMut(Result<Length, crate::units::UnitError>) -> Option<Length>) -> Vec<Length> {
    let parts = typed.text.split([';', '+']).map(str::trim).filter(|part| !part.is_empty());
    let read: Option<Vec<Length>> = parts.map(|part| keep(Typed::new(part, typed.units).read(&limits::SHAFT_LENGTH))).collect();
    read.unwrap_or_default()
}
