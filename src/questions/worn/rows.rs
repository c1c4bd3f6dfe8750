//! The rows: each part that was measured, the worst first, with its range and what is renewed with it.

use super::read::{Typed, list};
use crate::checklist::{Amount, Line, lines};
use crate::faults::wear::{State, Wear};
use crate::questions::Source;
use crate::questions::bench::unusable;
use crate::questions::checklists::Judged;
use crate::questions::deciding::few;
use crate::sheet::{Cell, Figure, Piece, Row, Tone, Verdict};

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    few(rows(source), None)
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let typed = Typed::of(source.job);
    let mut rows = unusable(typed.problems.iter().take(2));
    rows.extend(typed.judged().into_iter().map(|(wear, reading, state)| row(wear, reading, state)));
    rows
}

fn row(wear: &Wear, reading: &Amount, state: State) -> Row {
    let unit: String =
        if reading.unit() == "%" { "percent".into() } else { reading.unit().chars().filter(char::is_ascii_alphanumeric).collect() };
    let key = format!("worn.{}_{unit}", wear.id.replace('-', "_"));
    let figure = Figure { shown: reading.shown.clone(), unit: reading.unit().to_owned(), ..Figure::number(key, reading.number, 0).big() };
    let filled = format!("{}: {} is good, {} is still usable", figure.text(), wear.good.said(), wear.usable.said());
    let figure = figure.by("reading beside the ranges of the list; the box’s own manual rules", filled, wear.source.clone());
    let cell = Cell::line([figure.into(), Piece::Verdict(verdict(state))]);
    let cell = cell.and([Piece::words(format!("good {}, usable {}", wear.good.said(), wear.usable.said()))]);
    let with = (state == State::Scrap).then(|| Piece::words(format!("Goes with it: {}.", wear.together)));
    Row::of_one(format!("part-{}", wear.id), wear.name.clone(), cell.and_maybe(with))
}

fn verdict(state: State) -> Verdict {
    let (tone, text) = match state {
        State::Good => (Tone::Good, "good"),
        State::Watch => (Tone::Caution, "watch: measure it again at the next strip"),
        State::Scrap => (Tone::Stop, "renew"),
    };
    Verdict { tone, text: text.into() }
}

/// What is said beside each line of the list.
pub fn judged(source: Source<'_>) -> Vec<Judged> {
    let typed = Typed::of(source.job);
    let states = typed.judged();
    let judged = |line: &Line| {
        let Line::Step(step) = line else { return Judged::default() };
        let Some(wear) = Wear::built_in().iter().find(|wear| wear.name == step.what.trim()) else { return Judged::default() };
        let state = states.iter().find(|(known, ..)| known.id == wear.id).map(|(.., state)| *state);
        let refused =
            typed.parts.iter().find(|part| part.wear.is_some_and(|known| known.id == wear.id)).and_then(|part| part.refused.as_deref());
        Judged::of_reading(wear.good.said(), state.map(verdict), refused)
    };
    lines(&list(source)).iter().map(judged).collect()
}
