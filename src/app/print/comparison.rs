//! The comparison and the bench on paper: every section of a place with its rows, a column a setup. By itself the comparison is the rows
//! that decide and one picture a question, on few pages; with everything it has every picture and every figure.

use leptos::prelude::*;

use super::pictures;
use crate::app::parts::PHOTOGRAPHS;
use crate::app::state::State;
use crate::job::{Job, Setup};
use crate::questions::{self, Drawn};
use crate::sheet::{Cell, Figure, Piece, Place, Row, Section, Size, Tone};

/// The question whose photographs are printed with it.
const RECORD: &str = questions::record::QUESTION.id;

/// How much of the comparison is printed.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Much {
    /// What decides.
    Short,
    /// Every figure.
    Full,
}

/// The build record alone, as the sheet that goes with the box.
pub(super) fn record(state: State) -> AnyView {
    of_bench(state, "The sheet that goes with the box", "Nothing is recorded of this build yet.", |section| section.id == RECORD)
}

pub(super) fn bench(state: State) -> AnyView {
    of_bench(state, "Bench", "Nothing was counted or measured at the bench in this job.", |section| section.place == Place::Bench)
}

fn of_bench(state: State, title: &'static str, nothing: &'static str, is_wanted: fn(&Section) -> bool) -> AnyView {
    let (sheet, job) = (state.sheet_now(), state.job.get_untracked());
    let told = sheet.sections.iter().filter(|section| is_wanted(section) && section.rows.iter().any(Row::says_something));
    let sections: Vec<AnyView> = told.map(|section| section_view(state, &job, section)).collect();
    let is_empty = sections.is_empty();
    view! {
        <section class="paper__comparison">
            {about(&job)}
            <h2>{title}</h2>
            {is_empty.then(|| view! { <p>{nothing}</p> })}
            {sections}
        </section>
    }
    .into_any()
}

/// Title, customer and car.
fn about(job: &Job) -> AnyView {
    let parts = [&job.customer, &job.car].into_iter().filter(|text| !text.trim().is_empty()).cloned().collect::<Vec<_>>().join(" · ");
    view! { <header class="paper__about"><h1>{job.title.clone()}</h1><p>{parts}</p></header> }.into_any()
}

/// The setups side by side.
pub(super) fn compared(state: State, much: Much) -> AnyView {
    let sheet = state.sheet_now();
    let job = state.job.get_untracked();
    let many = job.setups.len();
    let shared = format!("shift at {}, cruise at {}", job.shift.text, job.cruise.text);
    let short = rows(&job, std::slice::from_ref(&sheet.short));
    // Of a question that says nothing yet there would be nothing on paper but its blank fields.
    let says = |section: &Section| section.rows.iter().flat_map(|row| &row.cells).flat_map(Cell::pieces).any(Piece::says);
    let told = sheet.sections.iter().filter(|section| section.place == Place::Compare && says(section));
    let told: Vec<&Section> = told.collect();
    let (looked_at, class) = match much {
        Much::Short => (grid(state, &told), "paper__comparison--short"),
        Much::Full => (().into_any(), ""),
    };
    let sections: Vec<AnyView> = told
        .into_iter()
        .map(|section| match much {
            Much::Short => short_view(&job, section),
            Much::Full => section_view(state, &job, section),
        })
        .collect();
    let title = if many > 1 { "Comparison" } else { "All figures" };
    view! {
        <section class=format!("paper__comparison paper__comparison--{many} {class}")>
            {about(&job)}
            <h2>{title}</h2>
            <p class="paper__shared">{state.words.get_untracked().say(&shared)}</p>
            <ul class="paper__setups">{job.setups.iter().enumerate().map(|(column, setup)| setup_line(state, column, setup)).collect_view()}</ul>
            {short}
            {looked_at}
            {sections}
        </section>
    }
    .into_any()
}

fn setup_line(state: State, column: usize, setup: &Setup) -> AnyView {
    let letter = Job::letter(column);
    let parts = [&setup.gearbox.name, &setup.final_drive, &setup.tyre.text];
    let parts = parts.into_iter().filter(|text| !text.trim().is_empty()).cloned().collect::<Vec<_>>().join(" · ");
    let parts = state.words.get_untracked().say(&parts);
    view! { <li>{badge(letter)}<b>{setup.name.clone()}</b>" "{parts}</li> }.into_any()
}

fn badge(letter: char) -> AnyView {
    view! { <span class=format!("badge badge--{}", letter.to_ascii_lowercase())>{letter.to_string()}</span> }.into_any()
}

/// The first picture of each question, two side by side.
fn grid(state: State, sections: &[&Section]) -> AnyView {
    let first = |section: &&Section| {
        let drawn = questions::of_id(section.id)?.pictures.first()?;
        let picture = untrack(|| state.with_source(|source| (drawn.draw)(source, None)))?;
        let title = state.words.get_untracked().say(&picture.title());
        let svg = pictures::small(&*picture)?;
        Some(
            view! { <figure class="paper__figure"><figcaption>{title}</figcaption><div class="paper__picture" inner_html=svg></div></figure> },
        )
    };
    view! { <div class="paper__grid">{sections.iter().filter_map(first).collect_view()}</div> }.into_any()
}

/// A question in short: its answer and the rows that decide.
fn short_view(job: &Job, section: &Section) -> AnyView {
    view! {
        <section class="paper__section">
            <h3>{section.title.clone()}</h3>
            {(!section.answer.is_empty()).then(|| view! { <p class="paper__answer">{section.answer.plain()}</p> })}
            {rows(job, section.rows.get(..section.decide).unwrap_or(&section.rows))}
        </section>
    }
    .into_any()
}

fn section_view(state: State, job: &Job, section: &Section) -> AnyView {
    view! {
        <section class="paper__section">
            <h3>{section.title.clone()}" "<span class="paper__ask">{section.ask.clone()}</span></h3>
            {(!section.answer.is_empty()).then(|| view! { <p class="paper__answer">{section.answer.plain()}</p> })}
            {drawings(state, section.id)}
            {(section.id == RECORD).then(|| PHOTOGRAPHS.now()).flatten().map(|photographs| (photographs.printed)(state))}
            {if section.place == Place::Bench { bench_rows(&section.rows) } else { rows(job, &section.rows) }}
        </section>
    }
    .into_any()
}

/// The pictures of a question, as it lists them.
fn drawings(state: State, id: &str) -> Vec<AnyView> {
    let question = questions::LIST.iter().find(|question| question.id == id);
    let pictures = question.map_or(&[][..], |question| question.pictures);
    let draw = |drawn: &Drawn| {
        let picture = untrack(|| state.with_source(|source| (drawn.draw)(source, None)))?;
        let title = state.words.get_untracked().say(&picture.title());
        let svg = pictures::drawn(&*picture)?;
        Some(view! { <figure class="paper__figure"><figcaption>{title}</figcaption><div class="paper__picture" inner_html=svg></div></figure> }.into_any())
    };
    pictures.iter().filter_map(draw).collect()
}

/// Rows under the letters of the setups, which stand again on every page the table runs over.
fn rows(job: &Job, rows: &[Row]) -> AnyView {
    let head = |(column, setup): (usize, &Setup)| view! { <th scope="col">{badge(Job::letter(column))}" "{setup.name.clone()}</th> };
    view! {
        <table class="paper__rows">
            <thead><tr><td></td>{job.setups.iter().enumerate().map(head).collect_view()}</tr></thead>
            <tbody>{rows.iter().filter(|row| !row.waits()).map(line).collect_view()}</tbody>
        </table>
    }
    .into_any()
}

/// Rows of the bench, which belong to no setup.
fn bench_rows(rows: &[Row]) -> AnyView {
    view! { <table class="paper__rows"><tbody>{rows.iter().map(line).collect_view()}</tbody></table> }.into_any()
}

fn line(row: &Row) -> AnyView {
    let cells: Vec<AnyView> = row.cells.iter().map(cell).collect();
    view! { <tr><th scope="row">{row.label.clone()}</th>{cells}</tr> }.into_any()
}

fn cell(cell: &Cell) -> AnyView {
    let typed: Vec<String> = cell.entries.iter().map(|entry| entry.text.clone()).filter(|text| !text.trim().is_empty()).collect();
    let lines: Vec<AnyView> =
        cell.lines.iter().map(|line| view! { <div>{line.iter().map(piece).collect_view()}</div> }.into_any()).collect();
    view! { <td>{lines}{(!typed.is_empty()).then(|| view! { <div class="paper__typed">{typed.join(", ")}</div> })}</td> }.into_any()
}

fn piece(piece: &Piece) -> AnyView {
    match piece {
        Piece::Figure(figure) => shown(figure),
        Piece::Words(words) | Piece::Open(_, words) => view! { <span class="paper__words">{words.clone()}" "</span> }.into_any(),
        Piece::Absent(why) => view! { <span class="paper__absent">{why.clone()}" "</span> }.into_any(),
        // What is still to be typed is no word for paper.
        Piece::Needed(_) => ().into_any(),
        Piece::Verdict(verdict) => {
            let mark = match verdict.tone {
                Tone::Good => "✓ ",
                Tone::Caution | Tone::Driving => "⚠ ",
                Tone::Stop => "✕ ",
            };
            view! { <span class="paper__verdict">{mark}{verdict.text.clone()}" "</span> }.into_any()
        }
    }
}

fn shown(figure: &Figure) -> AnyView {
    let class = if figure.size == Size::Big { "num paper__big" } else { "num" };
    let difference = figure.difference.clone().map(|difference| format!(" ({difference})"));
    view! { <span class=class>{figure.text()}{difference}" "</span> }.into_any()
}
