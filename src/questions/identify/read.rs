//! What is typed about what lies on the bench: counts, turns, printed ratios, each as far as it can be read.

use crate::gearing::identify::cable;
use crate::gearing::identify::counts::Counted;
use crate::gearing::identify::ladder::Wish;
use crate::gearing::identify::printed::{self, Figure};
use crate::gearing::identify::reading::{Interval, Reading, ReadingError, by_eye};
use crate::gearing::identify::slips;
use crate::gearing::identify::spoken::spoken;
use crate::gearing::identify::tag;
use crate::gearing::identify::turns::Turned;
use crate::gearing::part::Part;
use crate::gearing::read::{self, GearTextError};
use crate::gearing::{FinalDrive, GearNumber, Layout, Ratio, Teeth};
use crate::job::choice::Wheels;
use crate::job::inputs::Kept;
use crate::job::{Bench, BenchField, InputProblem};
use crate::problem::Problem;
use crate::questions::reader::Reader;
use crate::questions::setup::keep;
use crate::units::{TurnsPerDistance, limits};

/// The fields of the forward gears, lowest first.
const GEARS: [BenchField; 6] =
    [BenchField::First, BenchField::Second, BenchField::Third, BenchField::Fourth, BenchField::Fifth, BenchField::Sixth];

/// What is known of the box and the axle on the bench.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Evidence {
    /// How the box is laid out.
    pub layout: Layout,
    /// The counted teeth.
    pub counted: Vec<Counted>,
    /// What turning the box says.
    pub turned: Option<Turned>,
    /// The printed ratios, lowest gear first.
    pub printed: Vec<Figure>,
    /// The fewest and the most teeth that a gear of the printed ratios may have.
    pub limits: [u16; 2],
    /// The ratios that turning the axle leaves.
    pub axle: Option<Interval>,
    /// Whether one wheel of the axle was held.
    pub is_wheel_held: bool,
    /// What the tag of an axle can mean.
    pub tag: Vec<FinalDrive>,
    /// What the speedometer's cable was counted to turn.
    pub cable: Option<TurnsPerDistance>,
    /// What the dial says that it turns.
    pub dial: Option<TurnsPerDistance>,
    /// What cannot be read, by field.
    pub problems: Vec<InputProblem>,
}

impl Evidence {
    /// Reads what is typed.
    pub fn of(bench: &Bench) -> Self {
        let layout = bench.layout.value().unwrap_or_default();
        let mut problems = Vec::new();
        Self {
            layout,
            counted: counted(bench, layout, &mut problems),
            turned: turned(bench, &mut problems),
            printed: printed(bench, &mut problems),
            limits: limits(bench, &mut problems),
            axle: axle(bench, &mut problems),
            is_wheel_held: bench.wheel.value() == Some(Wheels::OneHeld),
            tag: keep(&mut problems, BenchField::Tag, tag::meanings(&bench.tag)).unwrap_or_default(),
            cable: Reader::new(&mut problems).read(&bench.cable, BenchField::Cable, cable::read),
            dial: Reader::new(&mut problems).quantity(&bench.dial, BenchField::Dial, &limits::DIAL_CONSTANT),
            problems,
        }
    }

    /// How the axle was turned.
    pub fn axle_turned(&self) -> slips::Turned {
        if self.is_wheel_held { slips::Turned::AxleHeld } else { slips::Turned::Axle }
    }

    /// Whether anything is known of a box.
    pub fn is_of_a_box(&self) -> bool {
        !self.counted.is_empty() || self.turned.is_some() || !self.printed.is_empty()
    }
}

pub(super) fn text(bench: &Bench, field: BenchField) -> &str {
    field.kept(bench).map_or("", Kept::text)
}

fn counted(bench: &Bench, layout: Layout, problems: &mut Vec<InputProblem>) -> Vec<Counted> {
    let mut counted = Vec::new();
    let mut take = |field: BenchField, [line, counter]: [Part; 2]| {
        let teeth = keep(problems, field, pair(text(bench, field)));
        let places = [Some(line), Some(counter)].into_iter().zip(teeth.into_iter().flatten());
        counted.extend(places.filter_map(|(at, teeth)| teeth.map(|teeth| Counted { at, teeth })));
    };
    let lines = |driver: Part, driven: Part, line_drives: bool| if line_drives { [driver, driven] } else { [driven, driver] };
    take(BenchField::Constant, lines(Part::ConstantDriver, Part::ConstantDriven, layout != Layout::OutputReduced));
    for (gear, field) in GearNumber::each(&GEARS) {
        take(*field, lines(Part::Driver(gear), Part::Driven(gear), layout == Layout::OutputReduced));
    }
    take(BenchField::Reverse, lines(Part::ReverseDriver, Part::ReverseDriven, layout == Layout::OutputReduced));
    for text in bench.anywhere.split(|c: char| c.is_whitespace() || matches!(c, ',' | ';')).filter(|text| !text.is_empty()) {
        counted.extend(keep(problems, BenchField::Anywhere, read::count(text)).map(|teeth| Counted { at: None, teeth }));
    }
    counted
}

/// `37/18`, `37/?`, `?/18`, or nothing.
fn pair(text: &str) -> Result<[Option<Teeth>; 2], GearTextError> {
    if text.trim().is_empty() {
        return Ok([None, None]);
    }
    if !text.contains('?') {
        return read::counts(text).map(|(line, counter)| [Some(line), Some(counter)]);
    }
    let mut parts = text.split('/').map(|part| if part.trim() == "?" { Ok(None) } else { read::count(part).map(Some) });
    match (parts.next(), parts.next(), parts.next()) {
        (Some(line), Some(counter), None) => Ok([line?, counter?]),
        _ => Err(GearTextError::NotAPair(text.trim().to_owned())),
    }
}

/// What turning the box says.
fn turned(bench: &Bench, problems: &mut Vec<InputProblem>) -> Option<Turned> {
    let fields = [BenchField::InputTurns, BenchField::OutputTurns, BenchField::Uncertainty];
    let interval = reading(bench, fields, problems)?.interval();
    Some(Turned { selected: bench.turned_gear.value().map(|gear| gear.0), interval })
}

/// What turning the axle says; with one wheel held the other turns twice as far.
fn axle(bench: &Bench, problems: &mut Vec<InputProblem>) -> Option<Interval> {
    let fields = [BenchField::ShaftTurns, BenchField::WheelTurns, BenchField::WheelUncertainty];
    let reading = reading(bench, fields, problems)?;
    Some(match bench.wheel.value()? {
        Wheels::OneHeld => reading.interval_with_one_wheel_held(),
        Wheels::BothFree => reading.interval(),
    })
}

/// Turns of one end, those of the other that they gave, and how uncertain these are; nothing where both ends are blank.
fn reading(bench: &Bench, [turned, gave, uncertainty]: [BenchField; 3], problems: &mut Vec<InputProblem>) -> Option<Reading> {
    let is_blank = |field: BenchField| text(bench, field).trim().is_empty();
    if is_blank(turned) && is_blank(gave) {
        return None;
    }
    let mut read = |field: BenchField| keep(problems, field, spoken(text(bench, field)));
    let (from, to) = (read(turned), read(gave));
    let typed = if is_blank(uncertainty) { Some(None) } else { read(uncertainty).map(|typed| Some(typed.turns)) };
    let (from, to, typed) = (from?, to?, typed?);
    let uncertain = typed.or(to.uncertainty).unwrap_or_else(by_eye);
    let exact = Ratio::from_integer(0);
    let reading = Reading::with_uncertainties(from.turns, to.turns, from.uncertainty.unwrap_or(exact), uncertain);
    reading.map_err(|why| problems.push(Problem::stop(at_fault(&why, [turned, gave, uncertainty]).into(), &why))).ok()
}

/// The field that a reading is refused for.
fn at_fault(why: &ReadingError, [_, gave, uncertainty]: [BenchField; 3]) -> BenchField {
    match why {
        ReadingError::NegativeUncertainty | ReadingError::TooUncertain { .. } => uncertainty,
        _ => gave,
    }
}

fn printed(bench: &Bench, problems: &mut Vec<InputProblem>) -> Vec<Figure> {
    if bench.ladder.trim().is_empty() {
        return Vec::new();
    }
    keep(problems, BenchField::Ladder, printed::figures(&bench.ladder)).unwrap_or_default()
}

/// The tooth limits; the usual one stands in for one that cannot be read.
fn limits(bench: &Bench, problems: &mut Vec<InputProblem>) -> [u16; 2] {
    [(BenchField::Fewest, Wish::FEWEST), (BenchField::Most, Wish::MOST)].map(|(field, usual)| {
        let text = text(bench, field);
        if text.trim().is_empty() {
            return usual;
        }
        let refused = |why: GearTextError| {
            problems.push(Problem::defaulted(field.into(), &why, &format!("the usual limit of {usual} is taken")));
            usual
        };
        read::count(text).map_or_else(refused, Teeth::count)
    })
}
