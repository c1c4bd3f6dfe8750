//! The rows of Build record: how many steps are done, the next one, what is out of its range; and every step with what was read.

use super::parts;
use super::read::{BuildStep, Link, Typed};
use crate::checklist::Amount;
use crate::checklist::range::Slip;
use crate::questions::bench::unusable;
use crate::questions::checklists::Judged;
use crate::questions::deciding::few;
use crate::questions::{Source, endplay, fits};
use crate::sheet::{Cell, Figure, Piece, Row, Tone, Verdict};

/// How many readings out of their range decide.
const DECIDING_OUTSIDE: usize = 3;

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let typed = Typed::of(source.job);
    let parts = parts::deciding(source);
    if typed.steps.is_empty() {
        return parts.into_iter().collect();
    }
    let mut rows = unusable(typed.problems.iter().take(2));
    rows.push(Row::of_one("done", "Steps", done_cell(&typed)));
    rows.extend(typed.outside().take(DECIDING_OUTSIDE).map(outside_row));
    let next = typed.open().find(|step| !step.is_outside());
    rows.extend(next.map(|next| Row::of_one("next", "Next", Cell::line([Piece::words(next.named())]))));
    rows.extend(parts);
    rows.extend(taken_over(source, &typed));
    few(rows, None)
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let typed = Typed::of(source.job);
    let mut rows = unusable(typed.problems.iter().take(2));
    let mut under = "";
    for (number, step) in (1_usize..).zip(&typed.steps) {
        if under != step.under {
            under = &step.under;
            rows.push(part_row(&typed, number, under));
        }
        rows.push(Row::of_one(format!("step-{number}"), step.step.what.trim(), step_cell(number, step)));
    }
    rows.extend(parts::rows(source));
    rows
}

/// What is to be said beside each line.
pub fn judged(source: Source<'_>) -> Vec<Judged> {
    let typed = Typed::of(source.job);
    let mut judged = vec![Judged::default(); typed.lines];
    for step in &typed.steps {
        if let Some(place) = judged.get_mut(step.line) {
            *place = Judged::of_reading(step.wanted_said(), step.verdict(), step.refused.as_deref());
        }
    }
    judged
}

fn done_cell(typed: &Typed) -> Cell {
    let open = typed.open().count();
    let done = typed.steps.len() - open;
    let done = Figure::number("record.done", whole(done), 0).big();
    let all = (open == 0).then(|| Piece::good("nothing is open"));
    Cell::line([done.into(), Piece::words(format!("of {} done", typed.steps.len()))]).and_maybe(all)
}

/// So many of all in percent.
pub(super) fn percent(many: usize, of: usize) -> f64 {
    100.0 * whole(many) / whole(of).max(1.0)
}

/// A count as a figure has it.
fn whole(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::from(u32::MAX), f64::from)
}

fn outside_row(step: &BuildStep) -> Row {
    let read = step.readings.last().map(said).unwrap_or_default();
    let cell = Cell::line([Piece::words(format!("{read}, {} wanted", step.wanted_said()))]).and_maybe(step.verdict().map(Piece::Verdict));
    Row::of_one(format!("outside-{}", step.line + 1), step.named(), cell)
}

/// How far a part of the list is.
fn part_row(typed: &Typed, number: usize, under: &str) -> Row {
    let steps: Vec<&BuildStep> = typed.steps.iter().filter(|step| step.under == under).collect();
    let open = steps.iter().filter(|step| step.is_open()).count();
    let said = format!("{} of {} done", steps.len() - open, steps.len());
    Row::of_one(format!("part-{number}"), under, Cell::line([Piece::words(said)]))
}

fn step_cell(number: usize, step: &BuildStep) -> Cell {
    let state = if step.step.is_done { Piece::good("done") } else { Piece::words("open") };
    let who = [step.step.by.trim(), step.step.on.trim()].into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(", ");
    let mut first = vec![state];
    first.extend((!who.is_empty()).then(|| Piece::words(who)));
    let mut cell = Cell::line(first);
    if !step.readings.is_empty() {
        let mut line: Vec<Piece> = Vec::new();
        for (at, reading) in (1..).zip(&step.readings) {
            line.extend((at > 1).then(|| Piece::words("again")));
            line.push(figure(number, at, reading).into());
        }
        cell = cell.and(line);
    }
    let wanted = step.wanted_said();
    if !wanted.is_empty() {
        let wanted = vec![Piece::words(format!("wanted {wanted}"))];
        cell = cell.and(wanted).and_maybe(step.verdict().map(Piece::Verdict));
    }
    let note = step.step.note.trim();
    cell.and_maybe((!note.is_empty()).then(|| Piece::words(note)))
}

/// A reading as it was typed, by its unit.
fn figure(step: usize, at: usize, reading: &Amount) -> Figure {
    let unit: String = reading.unit().chars().filter(char::is_ascii_alphanumeric).collect();
    let unit_key = if unit.is_empty() { String::new() } else { format!("_{}", unit.to_lowercase()) };
    let figure = Figure::number(format!("record.step_{step}.reading_{at}{unit_key}"), reading.number, 0);
    Figure { shown: reading.shown.clone(), unit: reading.unit().to_owned(), ..figure }
}

fn said(reading: &Amount) -> String {
    format!("{} {}", reading.shown, reading.unit()).trim_end().to_owned()
}

/// What End play and Fits say, where a step takes it over.
fn taken_over(source: Source<'_>, typed: &Typed) -> Vec<Row> {
    let all = [
        (Link::EndPlay, "end-play", "End play and shims", endplay::sentence::answer(source)),
        (Link::Fits, "fits", "Fits and clearances", fits::sentence::answer(source)),
    ];
    let named = all.into_iter().filter(|(link, .., said)| typed.names(*link) && !said.is_empty());
    named.map(|(_, key, label, said)| Row::of_one(key, label, Cell::line([Piece::words(said.plain())]))).collect()
}

impl BuildStep {
    /// What it is called in a sentence.
    pub(super) fn named(&self) -> String {
        self.step.what.trim().to_owned()
    }

    /// What is wanted, in words; empty where nothing is.
    pub(super) fn wanted_said(&self) -> String {
        match (self.link, &self.range) {
            (Some(Link::EndPlay), Some(range)) => format!("{}, from End play", range.said()),
            (Some(Link::EndPlay), None) => "what End play has; nothing is typed there yet".into(),
            (Some(Link::Fits), Some(range)) => format!("{}, from Fits", range.said()),
            (Some(Link::Fits), None) => "what Fits has; nothing is typed there yet".into(),
            (None, Some(range)) => range.said(),
            (None, None) => String::new(),
        }
    }

    /// How its last reading stands; none where there is none, or nothing is wanted of it.
    pub(super) fn verdict(&self) -> Option<Verdict> {
        self.range.as_ref().zip(self.readings.last())?;
        let (tone, text) = match (self.is_outside(), self.is_answered()) {
            (false, _) => (Tone::Good, "inside".to_owned()),
            (true, true) => (Tone::Caution, "out of range, answered in the note".to_owned()),
            (true, false) => (Tone::Stop, format!("out of range{}", slip_said(self.slip()))),
        };
        Some(Verdict { tone, text })
    }
}

fn slip_said(slip: Option<Slip>) -> &'static str {
    match slip {
        Some(Slip::Point) => ": is the point in its place?",
        Some(Slip::OtherSystem) => ": inches for mm, or mm for inches?",
        Some(Slip::FeetForInches) => ": lbf·ft for lbf·in?",
        None => ": put it right, or say in the note why it may stay",
    }
}
