//! Inside the box: what is looked at, and the pictures.

use leptos::prelude::*;

use crate::questions::Answers;

use crate::app::state::State;
use crate::app::widgets::{Chart, SelectField, TextField};
use crate::gearing::speeds::Selected;
use crate::job::{Choice, Field, Job, JobChoice, JobField, SetupId};
use crate::questions::inside::pictures as of_inside;
use crate::sheet::ordinal;

/// The speed looked at, the time and lining of the synchronisers.
pub(super) fn controls() -> impl IntoView {
    view! {
        <TextField field=Field::Job(JobField::InsideAt) label="at rpm or speed" visible_label=true number=true blank_means="shift"/>
        <TextField field=Field::Job(JobField::SyncTime) label="synchroniser given" visible_label=true number=true blank_means="0.25"/>
        <SelectField choice=Choice::Job(JobChoice::Lining) label="lining" visible_label=true/>
        <TextField field=Field::Job(JobField::LiningLimits) label="lining limits" visible_label=true wide=true blank_means="5 3 0.09 0.45"/>
    }
}

/// The gear train of one setup, and the countershafts of all.
pub(super) fn picture() -> impl IntoView {
    let state = State::here();
    let train = Memo::new(move |_| state.picture(of_inside::train));
    let bars = Memo::new(move |_| state.picture(of_inside::countershafts));
    let caption = Signal::derive(move || {
        state.say("Gear train to scale by tooth count. The power path of the selected gear is filled; the figures are shaft and gear speeds in rpm. Press a gear to select it.")
    });
    let bars_caption = Signal::derive(move || state.say("The fastest the countershaft turns at the shift rpm, setup by setup."));
    let pressed = Callback::new(move |slot: f64| select_at(state, slot));
    view! {
        <div class="inside__choose">
            <SetupChips/>
            <GearChips/>
        </div>
        <Chart picture=train name="gear-train" caption pressed/>
        <Chart picture=bars name="countershafts" caption=bars_caption/>
    }
}

fn drawn(state: State) -> usize {
    let forward = state.focus.get().map(|id| state.column_of(id));
    state.with_source(|source| of_inside::drawn(source, forward))
}

/// The setups whose train can be drawn.
#[component]
fn SetupChips() -> impl IntoView {
    let state = State::here();
    let chip = move |id: SetupId| {
        let column = move || state.column_of(id);
        view! {
            <button type="button" aria-pressed=move || (drawn(state) == column()).to_string()
                on:click=move |_| state.change(|job| job.inside.setup = Some(id))>{move || Job::letter(column()).to_string()}</button>
        }
    };
    view! {
        <div class="choice" role="group" aria-label="Setup whose gear train is drawn">
            <For each=move || state.setup_ids() key=|id| *id children=chip/>
        </div>
    }
}

/// The gears of the setup drawn, neutral and reverse; arrow keys go from one to the next.
#[component]
fn GearChips() -> impl IntoView {
    let state = State::here();
    let many = Memo::new(move |_| {
        state.answers.with(|Answers { setups, .. }| setups.get(drawn(state)).map_or(0, |analysis| analysis.setup.gears.len()))
    });
    let options = move || (0..many.get()).map(Selected::Gear).chain([Selected::Neutral, Selected::Reverse]).collect::<Vec<_>>();
    let selected = Memo::new(move |_| {
        let last = many.get().saturating_sub(1);
        state.answers.with(|Answers { conditions, .. }| match conditions.inside.selected {
            Selected::Gear(gear) => Selected::Gear(gear.min(last)),
            other => other,
        })
    });
    let key = move |event: web_sys::KeyboardEvent| {
        let step = match event.key().as_str() {
            "ArrowRight" | "ArrowUp" => 1,
            "ArrowLeft" | "ArrowDown" => -1,
            _ => return,
        };
        event.prevent_default();
        let options = options();
        let now = options.iter().position(|option| *option == selected.get_untracked()).unwrap_or(0);
        if let Some(next) = now.checked_add_signed(step).and_then(|next| options.get(next)) {
            select(state, *next);
        }
    };
    let chip = move |option: Selected| {
        view! {
            <button type="button" aria-pressed=move || (selected.get() == option).to_string() on:click=move |_| select(state, option)>{name(option)}</button>
        }
    };
    view! {
        <div class="choice" id="inside-gears" role="group" aria-label="Gear selected" on:keydown=key>
            <For each=options key=|option| *option children=chip/>
        </div>
    }
}

fn name(selected: Selected) -> String {
    match selected {
        Selected::Gear(gear) => ordinal(gear),
        Selected::Neutral => "neutral".into(),
        Selected::Reverse => "reverse".into(),
    }
}

fn select(state: State, selected: Selected) {
    let word = match selected {
        Selected::Gear(1) => String::new(),
        Selected::Gear(gear) => (gear + 1).to_string(),
        Selected::Neutral => "n".into(),
        Selected::Reverse => "r".into(),
    };
    state.change(move |job| job.choose(Choice::Job(JobChoice::InsideGear), &word));
}

/// Selects the gear that was pressed in the picture.
fn select_at(state: State, slot: f64) {
    let forward = state.focus.get_untracked().map(|id| state.column_of(id));
    let gear = state.with_source(|source| {
        let analysis = source.setups.get(of_inside::drawn(source, forward))?;
        of_inside::gear_at(analysis.setup.gearbox.as_ref()?, slot)
    });
    if let Some(gear) = gear {
        select(state, gear);
    }
}
