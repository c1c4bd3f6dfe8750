//! What the shop notes about the open job: whose it is, the car, how far it has come, anything worth keeping.

use leptos::prelude::*;

use super::quote::Offer;
use crate::app::device;
use crate::app::keep::Kept;
use crate::app::state::State;
use crate::app::widgets::TextField;
use crate::job::book::Progress;
use crate::job::listing;
use crate::job::{Field, Job, JobField, SetupId};

/// The notes of the open job.
#[component]
pub fn Details() -> impl IntoView {
    let state = State::here();
    let notes = Field::Job(JobField::Notes);
    let days = move || {
        state.desk.head.with(|head| {
            let now = device::now();
            format!("Begun {}, changed {}.", listing::when(&head.created, &now), listing::when(&head.changed, &now))
        })
    };
    view! {
        <div class="details">
            <TextField field=Field::Job(JobField::Customer) label="Customer" visible_label=true wide=true/>
            <TextField field=Field::Job(JobField::Car) label="Car" visible_label=true wide=true/>
            <ProgressChoice/>
            <CustomerSetup/>
            <label class="details__notes"><span>"Notes"</span>
                <textarea class="field__input" id="notes" rows="4" prop:value=move || state.job.with(|job| job.notes.clone())
                    on:input=move |event| state.type_text(notes, event_target_value(&event)) on:blur=move |_| state.leave_field()></textarea>
            </label>
            <p class="words">"Notes are for the shop alone: they are not printed. The note and the quote below stand on the customer’s page."</p>
            <Offer/>
            <p class="words">{days}</p>
        </div>
    }
}

#[component]
fn ProgressChoice() -> impl IntoView {
    let state = State::here();
    let option = move |(at, one): (usize, Progress)| {
        view! { <option value=at.to_string() selected=move || state.desk.head.with(|head| head.progress == one)>{one.words()}</option> }
    };
    let choose = move |event| {
        let at: usize = event_target_value(&event).parse().unwrap_or(0);
        let id = state.desk.head.with_untracked(|head| head.id.clone());
        state.set_progress(&id, Progress::ALL.get(at).copied().unwrap_or_default());
    };
    view! {
        <label><span>"State"</span>
            <select class="select" id="progress" on:change=choose disabled=move || state.desk.kept.get() == Kept::Linked>
                {Progress::ALL.into_iter().enumerate().map(option).collect_view()}
            </select>
        </label>
    }
}

/// The setup that the customer's page shows.
#[component]
fn CustomerSetup() -> impl IntoView {
    let state = State::here();
    let option = move |id: SetupId| {
        let words =
            move || state.job.with(|job| format!("{} {}", Job::letter(state.column_of(id)), job.setup(id).map_or("", |setup| &setup.name)));
        let chosen = move || state.job.with(|job| job.setup_for_customer().is_some_and(|setup| setup.id == id));
        view! { <option value=id.0.to_string() selected=chosen>{words}</option> }
    };
    let choose = move |event| {
        let id = event_target_value(&event).parse().ok().map(SetupId);
        state.change(|job| job.for_customer = id);
    };
    view! {
        <label><span>"For the customer: setup"</span>
            <select class="select" id="for-customer" on:change=choose><For each=move || state.setup_ids() key=|id| *id children=option/></select>
        </label>
    }
}
