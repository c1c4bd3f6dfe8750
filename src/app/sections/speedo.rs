//! Speedometer: its controls and its picture.

use leptos::prelude::*;

use crate::questions::Answers;

use crate::app::state::State;
use crate::app::widgets::{Chart, SelectField, TextField};
use crate::job::{Choice, Field, JobChoice, JobField};
use crate::questions::dial::pictures as of_speedo;
use crate::questions::dial::rows::rule;

/// The dial, the rule and the shelf, the same for every setup.
pub(super) fn controls() -> impl IntoView {
    let state = State::here();
    let about = Memo::new(move |_| state.answers.with(|Answers { conditions, .. }| rule::about(conditions.speedo.band)));
    view! {
        <TextField field=Field::Job(JobField::Dial) label="dial expects" visible_label=true number=true blank_means="1,000"/>
        <TextField field=Field::Job(JobField::SpeedoCheck) label="check at a true" visible_label=true number=true/>
        <SelectField choice=Choice::Job(JobChoice::Law) label="rule" visible_label=true/>
        <SelectField choice=Choice::Job(JobChoice::SpeedoStock) label="from the" visible_label=true/>
        <p class="section__note" id="speedometer-rule">{move || state.say(&about.get())}</p>
    }
}

/// What each dial reads above the true speed, with the band the rule allows, and the error with each pair of the shelf.
pub(super) fn picture() -> impl IntoView {
    let state = State::here();
    let lines = Memo::new(move |_| state.picture(of_speedo::readings));
    let caption = Signal::derive(move || {
        let rule = state.answers.with(|Answers { conditions, .. }| conditions.speedo.band.name);
        state.say(&format!(
            "What each dial reads above the true speed. Shaded: what {rule} allows. Grey: the best pairs of the shelf for the setup brought forward, or for A."
        ))
    });
    let bars = Memo::new(move |_| state.picture(of_speedo::shelf));
    let has_bars = Memo::new(move |_| bars.with(|bars| !bars.bars.is_empty()));
    let bars_caption = Signal::derive(move || {
        state.say("How far the dial reads from the true speed with what is fitted, and with the best of the shelf in its place (grey), for the setup brought forward, or for A. Shaded: what the rule allows at the check speed.")
    });
    view! {
        <Chart picture=lines name="speedometer-readings" caption/>
        <Show when=move || has_bars.get()>
            <Chart picture=bars name="speedometer-shelf" caption=bars_caption/>
        </Show>
    }
}
