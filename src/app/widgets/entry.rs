//! What is typed or chosen in a cell of the sheet.

use leptos::prelude::*;

use super::select::{layout_select, select};
use super::{SelectField, Teeth, TextField};
use crate::app::state::State;
use crate::app::{parts, tilt};
use crate::job::choice::listed;
use crate::job::{Choice, Chosen, Field, Layout, MOST_GEARS, Place, Setup, SetupField, SetupId, StageKind};
use crate::questions::entries::place_words;
use crate::sheet::{Entry, EntryKind};
use crate::units::number::ordinal;

/// One entry of a setup's cell. Texts are in the program from the first, lists and buttons come later.
pub fn entry(setup: SetupId, entry: &Entry) -> AnyView {
    match entry.kind {
        EntryKind::Text(field @ (SetupField::Gear(_) | SetupField::Constant | SetupField::Reverse | SetupField::Idler)) => {
            view! { <Teeth setup field=Field::Setup(setup, field) label=entry.label.clone()/> }.into_any()
        }
        EntryKind::Text(field) => {
            let field = Field::Setup(setup, field);
            view! { <TextField field label=entry.label.clone() wide=field.is_long()/> }.into_any()
        }
        _ => {
            let entry = entry.clone();
            parts::ANSWERS.add(move |answers| (answers.entry)(setup, &entry)).into_any()
        }
    }
}

/// Whatever is chosen or pressed, and not typed.
pub(in crate::app) fn chosen(setup: SetupId, entry: &Entry) -> AnyView {
    match entry.kind {
        EntryKind::Text(_) => ().into_any(),
        EntryKind::Choice(choice) => view! { <SelectField choice=Choice::Setup(setup, choice) label=entry.label.clone()/> }.into_any(),
        EntryKind::Layout => layout(setup, entry.label.clone()),
        EntryKind::StageKind(at) => stage_kind(setup, at, entry.label.clone()),
        EntryKind::StagePlace(at) => stage_place(setup, at, entry.label.clone()),
        EntryKind::Tilt(field) => tilt::buttons(setup, field, entry.label.clone()),
        EntryKind::AddStage => {
            let state = State::here();
            let add = move |_| change(state, setup, Setup::add_stage);
            view! { <button type="button" class="btn btn--small" aria-label=entry.label.clone() on:click=add>"Add a stage"</button> }
                .into_any()
        }
    }
}

fn change(state: State, setup: SetupId, act: impl FnOnce(&mut Setup)) {
    state.change(move |job| {
        if let Some(setup) = job.setup_mut(setup) {
            act(setup);
        }
    });
}

const PLACES: [Place; 2] = [Place::BeforeAxle, Place::BehindAxle];

fn layout(setup: SetupId, label: String) -> AnyView {
    let state = State::here();
    let now = move || state.job.with(|job| job.setup(setup).map(|setup| setup.gearbox.layout)).unwrap_or_default();
    let gears = move || state.job.with(|job| job.setup(setup).map_or(0, |setup| setup.gearbox.gears.len()));
    let choose = move |layout: Layout| change(state, setup, |setup| setup.gearbox.lay_out(layout));
    let of = move || format!("setup {}", crate::job::Job::letter(state.column_of(setup)));
    view! {
        {layout_select(label, now, choose)}
        <button type="button" class="btn btn--small" aria-label=move || format!("Add {}, {}", ordinal(gears()), of())
            on:click=move |_| change(state, setup, |setup| setup.gearbox.add_gear())
            disabled={move || gears() >= MOST_GEARS}>{move || format!("Add {}", ordinal(gears()))}</button>
        <button type="button" class="btn btn--small" aria-label=move || format!("Remove {}, {}", ordinal(gears().saturating_sub(1)), of())
            on:click=move |_| change(state, setup, |setup| setup.gearbox.remove_gear())
            disabled={move || gears() <= 1}>{move || format!("Remove {}", ordinal(gears().saturating_sub(1)))}</button>
    }
    .into_any()
}

/// What a stage is; choosing it puts the stage where such a one stands.
fn stage_kind(setup: SetupId, at: usize, label: String) -> AnyView {
    let state = State::here();
    let (words, says): (Vec<&'static str>, Vec<&'static str>) = listed::<StageKind>().into_iter().unzip();
    let words = StoredValue::new(words);
    let now = move || {
        let kind = state.job.with(|job| job.setup(setup).and_then(|setup| setup.stages.get(at)).map(|stage| stage.kind.clone()));
        words.with_value(|words| words.iter().position(|word| Some(Chosen::read(word)) == kind).unwrap_or(0))
    };
    let choose = move |chosen: usize| {
        let kind = Chosen::read(words.with_value(|words| words.get(chosen).copied().unwrap_or_default()));
        change(state, setup, |setup| {
            if let Some(stage) = setup.stages.get_mut(at) {
                stage.become_kind(kind);
            }
        });
    };
    select(label, &says, now, choose).into_any()
}

fn stage_place(setup: SetupId, at: usize, label: String) -> AnyView {
    let state = State::here();
    let now = move || {
        let place = state.job.with(|job| job.setup(setup).and_then(|setup| setup.stages.get(at)).map(|stage| stage.place));
        PLACES.iter().position(|one| Some(*one) == place).unwrap_or(0)
    };
    let choose = move |chosen: usize| {
        let place = PLACES.get(chosen).copied().unwrap_or_default();
        change(state, setup, |setup| {
            if let Some(stage) = setup.stages.get_mut(at) {
                stage.place = place;
            }
        });
    };
    let remove = move |_| change(state, setup, |setup| setup.remove_stage(at));
    view! {
        {select(label, &PLACES.map(place_words), now, choose)}
        <button type="button" class="btn btn--small" on:click=remove>"Remove the stage"</button>
    }
    .into_any()
}
