//! From turns: of a gearbox, and of an axle with both wheels free or one held.

use leptos::prelude::*;

use super::{Known, LISTED, candidates, field, found, more, question};
use crate::app::state::State;
use crate::app::widgets::SelectField;
use crate::catalogue::{Catalogue, Entry, PartKind};
use crate::gearing::identify::reading::ReadingError;
use crate::gearing::teeth::decimal;
use crate::gearing::{FinalDrive, Mesh};
use crate::job::{BenchField, Choice, Gearbox, Job, JobChoice, SetupId};
use crate::problem::{Explain, capital};
use crate::questions::identify::answer::{self as bench, Reads};
use crate::units::number;

/// Turns of the gearbox, then of the axle.
pub(super) fn panel(sets: Memo<Vec<Known>>) -> impl IntoView {
    view! { {gearbox(sets)} {axle()} }
}

fn gearbox(sets: Memo<Vec<Known>>) -> impl IntoView {
    let state = State::here();
    let fields = view! {
        {field(BenchField::InputTurns, "input turns", "10")}
        {field(BenchField::OutputTurns, "gave output turns", "4 1/5")}
        {field(BenchField::Uncertainty, "give or take", "1/20")}
        <SelectField choice=Choice::Job(JobChoice::TurnedGear) label="in" visible_label=true/>
    };
    let answer = move || {
        sets.with(|sets| {
            let answer = state.job.with(|job| bench::from_turns(&job.bench, &candidates(sets)))?;
            Some(read(state, answer, |reads| {
                let fitting: Vec<usize> = reads.ranked.fitting().collect();
                let lines = fitting.iter().take(LISTED).filter_map(|at| sets.get(*at));
                let lines = lines
                    .map(|known| found(state, known.set.title().to_owned(), known.set.gears().join("  "), Gearbox::picked(&known.set)));
                (fitting.len(), lines.collect_view().into_any())
            }))
        })
    };
    question(
        "Turns of a gearbox",
        "Turn the input by hand and watch the output: whole turns, and the part of a turn as it looks.",
        fields,
        answer,
    )
}

fn axle() -> impl IntoView {
    let state = State::here();
    let fields = view! {
        {field(BenchField::ShaftTurns, "driveshaft turns", "10")}
        {field(BenchField::WheelTurns, "gave wheel turns", "2 1/2")}
        {field(BenchField::WheelUncertainty, "give or take", "1/20")}
        <SelectField choice=Choice::Job(JobChoice::WheelHeld) label="with" visible_label=true/>
    };
    let answer = move || {
        state.catalogue.with(|catalogue| {
            let axles = readable(catalogue);
            let drives: Vec<FinalDrive> = axles.iter().map(|(_, drive)| *drive).collect();
            let answer = state.job.with(|job| bench::from_axle(&job.bench, &drives))?;
            Some(read(state, answer, |reads| {
                let fitting: Vec<usize> = reads.ranked.fitting().collect();
                let lines = fitting.iter().take(LISTED).filter_map(|at| axles.get(*at)).map(|(axle, drive)| axle_line(state, axle, *drive));
                (fitting.len(), lines.collect_view().into_any())
            }))
        })
    };
    question("Turns of an axle", "With one wheel held the free wheel turns twice as far; that is reckoned with.", fields, answer)
}

fn readable(catalogue: &Catalogue) -> Vec<(Entry, FinalDrive)> {
    catalogue.entries(PartKind::RingAndPinion).filter_map(|axle| Some((axle.clone(), axle.final_drive()?))).collect()
}

fn axle_line(state: State, axle: &Entry, drive: FinalDrive) -> impl IntoView + use<> {
    let teeth = axle.title().to_owned();
    let button = move |(column, id): (usize, SetupId)| {
        let teeth = teeth.clone();
        let letter = Job::letter(column);
        let put = move |_| {
            let teeth = teeth.clone();
            state.change(move |job| {
                if let Some(setup) = job.setup_mut(id) {
                    setup.final_drive = teeth;
                }
            });
        };
        view! { <button type="button" class="btn btn--small" aria-label=format!("Use it in setup {letter}") on:click=put>{letter.to_string()}</button> }
    };
    let setups = state.setup_ids().into_iter().enumerate().collect::<Vec<_>>();
    view! {
        <li class="bench__found">
            <span><b class="num">{axle.title().to_owned()}</b>" "<span class="num">{number::show(decimal(drive.ratio()), 3)}</span></span>
            <span class="bench__use"><span class="words">"use in"</span>{setups.into_iter().map(button).collect_view()}</span>
        </li>
    }
}

/// What a reading says: its ratios, the candidates, the tooth pairs.
fn read(state: State, answer: Result<Reads, ReadingError>, lines: impl FnOnce(&Reads) -> (usize, AnyView)) -> AnyView {
    let reads = match answer {
        Ok(reads) => reads,
        Err(why) => {
            let said = format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do()));
            return view! { <p class="field__problem">{state.say(&said)}</p> }.into_any();
        }
    };
    let (many, lines) = lines(&reads);
    let ratio = |ratio| number::show(decimal(ratio), 3);
    let between = format!("A ratio from {} to {}. {}", ratio(reads.interval.least), ratio(reads.interval.greatest), many_words(many));
    let pair = |mesh: &Mesh| format!("{}/{}", mesh.driven, mesh.driver);
    let pairs = reads.pairs.inside.iter().take(12).map(pair).collect::<Vec<_>>().join("  ");
    let pairs = if pairs.is_empty() {
        reads.pairs.nearest.as_ref().map_or_else(String::new, |mesh| format!("No tooth pair lies inside; the nearest is {}.", pair(mesh)))
    } else {
        format!("Tooth pairs inside, smallest first: {pairs}{}", if reads.pairs.inside.len() > 12 { " …" } else { "" })
    };
    view! { <p>{state.say(&between)}</p> <ul class="bench__list">{lines}{more(many)}</ul> <p class="words">{pairs}</p> }.into_any()
}

fn many_words(many: usize) -> String {
    match many {
        0 => "Nothing in the catalogue lies inside.".into(),
        1 => "One in the catalogue lies inside:".into(),
        many => format!("{many} in the catalogue lie inside; turn further to tell them apart:"),
    }
}
