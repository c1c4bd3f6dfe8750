//! The rows: the causes in their order, each with its points, its test and what the answer would mean, and what wears with it.

use super::answer::Fault;
use super::asked::called;
use super::read::Typed;
use super::sentence::contradiction;
use crate::faults::{Given, Ranked, Share, Table, Why};
use crate::problem::capital;
use crate::questions::Source;
use crate::questions::bench::unusable;
use crate::questions::deciding::MOST;
use crate::questions::rests::PRACTICE;
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::number;

/// How many causes decide.
const MOST_CAUSES: usize = 5;
const FORMULA: &str = "points = how usual + what fits − what speaks against it ± tests − how far in it lies − what its test costs";
/// The usual caution.
const CAUTION: &str =
    "Try it on a clear road within its limits, with a passenger to watch. Under the car only on stands, wheels chocked, engine off.";

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let fault = Fault::of(source);
    let mut rows = before(source, &fault);
    let room = MOST.saturating_sub(rows.len() + 1).min(MOST_CAUSES);
    let fits = (1..).zip(&fault.causes).take_while(|(_, ranked)| ranked.points > 0);
    rows.extend(fits.take(room).map(|(place, ranked)| cause_row(&fault, place, ranked)));
    rows.extend(caution(&fault));
    rows
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let fault = Fault::of(source);
    let mut rows = before(source, &fault);
    rows.extend((1..).zip(&fault.causes).map(|(place, ranked)| cause_row(&fault, place, ranked)));
    rows.extend(caution(&fault));
    rows
}

fn caution(fault: &Fault<'_>) -> Option<Row> {
    (!fault.causes.is_empty()).then(|| Row::of_one("caution", "Take care", Cell::line([Piece::words(CAUTION)])))
}

/// What cannot be used, what does not go together, and the question that measures it.
fn before(source: Source<'_>, fault: &Fault<'_>) -> Vec<Row> {
    let mut rows = unusable(Typed::of(source.job, fault.table).problems.iter().take(2));
    let pair = fault.contradictions.first().map(|pair| Cell::line([Piece::caution(contradiction(fault, *pair))]));
    rows.extend(pair.map(|cell| Row::of_one("contradiction", "Both at once", cell)));
    let branch = fault.branch().and_then(crate::questions::of_id);
    rows.extend(branch.map(|question| {
        let said = format!("Ask “{}”: it finds the part by gear, speed and pitch.", question.title);
        Row::of_one("branch", "By its sound", Cell::line([Piece::Open(question.id, said)]))
    }));
    rows
}

fn cause_row(fault: &Fault<'_>, place: usize, ranked: &Ranked<'_>) -> Row {
    let cause = ranked.cause;
    let mut cell = Cell::line([
        points(fault, ranked).into(),
        Piece::words(format!("{}, {}", if ranked.points.abs() == 1 { "point" } else { "points" }, cause.reach.words())),
    ]);
    if ranked.is_refuted() {
        cell = cell.and([Piece::words("a test speaks against it")]);
    } else if ranked.is_shown(&fault.told) {
        cell = cell.and([Piece::caution("its test shows it")]);
    } else if ranked.is_backed() {
        cell = cell.and([Piece::words("a test speaks for it")]);
    }
    let test = ranked.next_test(&fault.told).and_then(|(test, shows)| Some((fault.table.tests.get(test)?, shows)));
    if let Some((test, shows)) = test {
        cell = cell.and([Piece::words(format!("Test, {}: {}", called(test.cost.words(), test.is_own), test.ask))]);
        let meaning = |is_yes| format!("{}: {}.", if is_yes { "Yes" } else { "No" }, test.meaning(is_yes));
        cell = cell.and([Piece::words(format!("{} {}", meaning(shows), meaning(!shows)))]);
    }
    let together = (!cause.together.is_empty()).then(|| Piece::words(format!("Look at these with it: {}.", cause.together)));
    let measure =
        crate::questions::of_id(&cause.measure).map(|question| Piece::Open(question.id, format!("Measured in “{}”.", question.title)));
    let cell = cell.and_maybe(together).and_maybe(measure);
    Row::of_one(format!("cause-{}", cause.id), format!("{place}. {}", capital(&called(&cause.name, cause.is_own))), cell)
}

/// The points, with what they are made of.
fn points(fault: &Fault<'_>, ranked: &Ranked<'_>) -> Figure {
    let key = format!("faults.{}", ranked.cause.id.replace('-', "_"));
    let figure = Figure::number(key, f64::from(ranked.points), 0);
    let parts: Vec<String> = ranked.shares.iter().map(|share| part(fault.table, share)).collect();
    let filled = format!("{} = {}", parts.join(" "), figure.shown);
    figure.by(FORMULA, filled.trim_start_matches("+ ").to_owned(), PRACTICE)
}

/// `+ 6 jumps out of gear`, `− 1 bolted on outside`.
fn part(table: &Table, share: &Share) -> String {
    let why = match share.why {
        Why::Symptom(at) => table.said(Given::Symptom(at)).to_owned(),
        Why::Condition(at) => table.said(Given::Condition(at)).to_owned(),
        Why::Test(_, answer) => format!("a test answered {}", if answer { "yes" } else { "no" }),
        Why::Reach(reach) => reach.words().to_owned(),
        Why::Cost(cost) => cost.words().to_owned(),
    };
    let sign = if share.points < 0 { "−" } else { "+" };
    format!("{sign} {} {why}", number::show(f64::from(share.points.abs()), 0))
}
