//! What is typed about a fit, as far as it can be read.

use crate::fits::readings::{Readings, nominal};
use crate::fits::seat::Wanted;
use crate::fits::{FitTextError, Material, PlayRange, wanted};
use crate::job::{Bench, FitsField, InputProblem};
use crate::questions::reader::Reader;
use crate::questions::setup::keep;
use crate::questions::warmth;
use crate::units::{Length, ThermodynamicTemperature, Typed, limits};

/// A bore, a shaft, and what is wanted between them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seated {
    /// The bore.
    pub bore: Option<Readings>,
    /// The shaft.
    pub shaft: Option<Readings>,
    /// The size that a code is looked up at.
    pub nominal: Option<Length>,
    /// The fit wanted, and the clearance that means at that size.
    pub wanted: Option<(Wanted, PlayRange)>,
    /// The outside of the part around the bore, and the length of the seat.
    pub press: Option<[Length; 2]>,
    /// Across one needle, where needles run between the two.
    pub needle: Option<Length>,
    /// How many stand in a row.
    pub needles: Option<u32>,
    /// What the bore is in and what the shaft is made of.
    pub materials: Option<[Material; 2]>,
    /// How warm the parts were, and how warm the box gets.
    pub temperatures: [ThermodynamicTemperature; 2],
    /// What cannot be read, by field.
    pub problems: Vec<InputProblem>,
}

impl Seated {
    /// Reads what is typed.
    pub fn of(bench: &Bench) -> Self {
        use FitsField as F;
        let typed = &bench.fits;
        let mut problems = Vec::new();
        let mut read = Reader::new(&mut problems);
        let readings = |typed: &Typed| Readings::read(typed, &limits::FIT_DIAMETER);
        let bore = read.read(&typed.bore, F::Bore, readings);
        let shaft = read.read(&typed.shaft, F::Shaft, readings);
        let size = if typed.nominal.is_blank() {
            bore.as_ref().or(shaft.as_ref()).map(|readings| nominal(readings.mean()))
        } else {
            read.quantity(&typed.nominal, F::Nominal, &limits::FIT_DIAMETER)
        };
        let fit = read.read(&typed.wanted, F::Wanted, wanted::fit);
        let wanted = fit.zip(size).and_then(|(fit, size)| {
            let range = keep(read.problems, F::Wanted, fit.range(size).map_err(FitTextError::Code))?;
            Some((fit, range))
        });
        let outside = read.quantity(&typed.outside, F::Outside, &limits::FIT_OUTSIDE);
        let seat_length = read.quantity(&typed.seat_length, F::SeatLength, &limits::SEAT_LENGTH);
        let needle = read.quantity(&typed.needle, F::Needle, &limits::NEEDLE);
        let needles = needles(&typed.needles).and_then(|read| keep(&mut problems, F::Needles, read));
        let temperatures = warmth::read(bench, &mut problems);
        let materials = typed.bore_material.value().zip(typed.shaft_material.value()).map(|(bore, shaft)| [bore.0, shaft.0]);
        Self {
            bore,
            shaft,
            nominal: size,
            wanted,
            press: outside.zip(seat_length).map(|(outside, length)| [outside, length]),
            needle,
            needles,
            materials,
            temperatures,
            problems,
        }
    }
}

/// How many needles stand in a row; none where nothing is typed.
fn needles(text: &str) -> Option<Result<u32, FitTextError>> {
    let text = text.trim();
    let read = || text.parse().ok().filter(|many| (5..=200).contains(many)).ok_or_else(|| FitTextError::NoCount(text.to_owned()));
    (!text.is_empty()).then(read)
}
