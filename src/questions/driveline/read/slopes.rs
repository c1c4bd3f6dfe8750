//! The slopes of a driveline, read and checked: which way its shafts point, and the line they make.

use crate::driveline::slope::{End, read_one, read_pieces};
use crate::driveline::{Direction, Line, SlopeError};
use crate::job::{self, InputProblem, SetupField, ShaftField};
use crate::questions::setup::keep;
use crate::units::Length;

/// Which way the shafts of one setup point.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Slopes {
    /// The gearbox's output.
    pub gearbox: Option<Direction>,
    /// The pieces of the shaft; none until every one can be read.
    pub pieces: Vec<Direction>,
    /// The axle's pinion.
    pub pinion: Option<Direction>,
    /// All of them with their joints.
    pub line: Option<Line>,
    /// Whether nothing of them is typed.
    pub is_blank: bool,
}

impl Slopes {
    /// Reads the slopes of a setup whose shaft has pieces of these lengths, none where they are not known.
    pub(super) fn read(setup: &job::Setup, lengths: &[Length], problems: &mut Vec<InputProblem>) -> Self {
        let typed = &setup.shaft;
        let is_blank = [&typed.gearbox_slope, &typed.slopes, &typed.pinion_slope].iter().all(|text| text.trim().is_empty());
        let mut end = |text: &str, end: End, of: ShaftField| {
            let read = || read_one(text, end)?.direction(None, text);
            if text.trim().is_empty() { None } else { keep(problems, (setup.id, SetupField::Shaft(of)), read()) }
        };
        let gearbox = end(&typed.gearbox_slope, End::Rear, ShaftField::GearboxSlope);
        let pinion = end(&typed.pinion_slope, End::Front, ShaftField::PinionSlope);
        let field = (setup.id, SetupField::Shaft(ShaftField::Slopes));
        let pieces = keep(problems, field, pieces(&typed.slopes, lengths)).unwrap_or_default();
        let line = gearbox.zip(pinion).zip(typed.yokes.value()).filter(|_| !pieces.is_empty());
        let line = line.map(|((gearbox, pinion), yokes)| Line::new(gearbox, &pieces, pinion, yokes));
        let line = line.and_then(|line| keep(problems, field, line));
        Self { gearbox, pieces, pinion, line, is_blank }
    }
}

/// A direction for each piece; none where nothing is typed.
fn pieces(text: &str, lengths: &[Length]) -> Result<Vec<Direction>, SlopeError> {
    let slopes = read_pieces(text)?;
    if !slopes.is_empty() && !lengths.is_empty() && slopes.len() != lengths.len() {
        return Err(SlopeError::Pieces { slopes: slopes.len(), pieces: lengths.len() });
    }
    slopes.iter().enumerate().map(|(at, slope)| slope.direction(lengths.get(at).copied(), text)).collect()
}
