//! The slopes of a driveline, read and checked: which way its shafts point, and the line they make at rest, under drive, and hanging.

use crate::driveline::slope::{End, read_one, read_pieces};
use crate::driveline::travel::Hanging;
use crate::driveline::{Direction, Lean, Line, SlopeError};
use crate::job::{self, InputProblem, SetupField, ShaftField};
use crate::questions::reader::Reader;
use crate::questions::setup::keep;
use crate::units::{Angle, Length, limits};

/// Which way the shafts of one setup point.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Slopes {
    /// The gearbox's output.
    pub gearbox: Option<Direction>,
    /// The pieces of the shaft; none until every one can be read.
    pub pieces: Vec<Direction>,
    /// The axle's pinion, standing at ride height.
    pub pinion: Option<Direction>,
    /// All of them with their joints; under drive, where it is told how far the nose rises.
    pub line: Option<Line>,
    /// How far the nose rises under drive; nothing where it is not told.
    pub windup: Angle,
    /// The line at rest, where the nose rises under drive.
    pub at_rest: Option<Line>,
    /// The last piece and the line with the axle hanging, where that is told.
    pub hanging: Option<(Hanging, Line)>,
    /// Whether nothing of them is typed.
    pub is_blank: bool,
}

impl Slopes {
    /// Reads the slopes of a setup whose shaft has pieces of these lengths, none where they are not known.
    pub(super) fn read(setup: &job::Setup, lengths: &[Length], problems: &mut Vec<InputProblem>) -> Self {
        let typed = &setup.shaft;
        let is_blank = [&typed.gearbox_slope, &typed.slopes, &typed.pinion_slope].iter().all(|text| text.trim().is_empty());
        let field = |field| (setup.id, SetupField::Shaft(field));
        let mut end = |text: &str, end: End, of: ShaftField| {
            let read = || read_one(text, end)?.direction(None, text);
            if text.trim().is_empty() { None } else { keep(problems, field(of), read()) }
        };
        let gearbox = end(&typed.gearbox_slope, End::Rear, ShaftField::GearboxSlope);
        let pinion = end(&typed.pinion_slope, End::Front, ShaftField::PinionSlope);
        let slopes = field(ShaftField::Slopes);
        let pieces = keep(problems, slopes, pieces(&typed.slopes, lengths)).unwrap_or_default();
        let windup = Reader::new(problems).quantity(&typed.windup, field(ShaftField::Windup), &limits::WINDUP).unwrap_or_default();
        let ends = gearbox.zip(pinion).zip(typed.yokes.value()).filter(|_| !pieces.is_empty());
        let line_to =
            |nose: &dyn Fn(Direction) -> Direction| ends.map(|((gearbox, pinion), yokes)| Line::new(gearbox, &pieces, nose(pinion), yokes));
        let line = line_to(&|pinion| Direction::new(pinion.side() + windup, pinion.plan())).and_then(|line| keep(problems, slopes, line));
        let at_rest = line_to(&|pinion| pinion).filter(|_| windup > Angle::default()).and_then(Result::ok);
        let droop = keep(problems, field(ShaftField::Droop), droop(&typed.droop)).flatten();
        let hanging = droop.zip(ends).and_then(|((lean, nose), ((gearbox, pinion), yokes))| {
            let length = lengths.last().copied().filter(|_| lengths.len() == pieces.len());
            let hanging = keep(problems, field(ShaftField::Droop), hang(*pieces.last()?, length, lean, &typed.droop))?;
            let hung: Vec<Direction> = pieces.iter().take(pieces.len().saturating_sub(1)).copied().chain([hanging.direction]).collect();
            let line = Line::new(gearbox, &hung, nose.unwrap_or(pinion), yokes);
            Some((hanging, keep(problems, field(ShaftField::Droop), line)?))
        });
        Self { gearbox, pieces, pinion, line, windup, at_rest, hanging, is_blank }
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

/// How the last piece leans with the axle hanging, and where the nose points then, if that is told.
type Droop = (Lean, Option<Direction>);

/// `4 in`, `9 down; nose 1 up`; none where nothing is typed.
fn droop(text: &str) -> Result<Option<Droop>, SlopeError> {
    let mut parts = text.split(';').map(str::trim).filter(|part| !part.is_empty());
    let Some(piece) = parts.next() else { return Ok(None) };
    let nose = parts.next().map(|nose| read_one(nose, End::Front)?.direction(None, nose)).transpose()?;
    if parts.next().is_some() {
        return Err(SlopeError::Twice(text.trim().to_owned()));
    }
    Ok(Some((read_one(piece, End::Rear)?.side, nose)))
}

/// The last piece with the axle hanging; an axle's drop needs the length that it is set against.
fn hang(piece: Direction, length: Option<Length>, lean: Lean, typed: &str) -> Result<Hanging, SlopeError> {
    match (lean, length) {
        (Lean::Angle(side), length) => Ok(Hanging::sloping(piece, length, side)),
        (Lean::Offset(drop), Some(length)) => Ok(Hanging::dropped(piece, length, drop)),
        (Lean::Offset(_), None) => Err(SlopeError::NeedsLength(typed.trim().to_owned())),
    }
}
