//! Road speed: its controls and its picture.

use leptos::prelude::*;

use crate::questions::Answers;

use crate::app::state::State;
use crate::app::widgets::{Chart, SelectField, TextField};
use crate::job::{Choice, Field, JobChoice, JobField};
use crate::questions::Analysis;
use crate::questions::road::pictures as of;

/// Shift rpm and cruise speed, the same for every setup; and how a size without a ratio is taken, where there is one.
pub(super) fn controls() -> impl IntoView {
    let state = State::here();
    let omits = |analysis: &Analysis| {
        analysis.setup.tyre.as_ref().and_then(|tyre| tyre.dimensions()).is_some_and(|dimensions| dimensions.omitted_aspect.is_some())
    };
    let any_omits = Memo::new(move |_| state.answers.with(|Answers { setups, .. }| setups.iter().any(omits)));
    view! {
        <Show when=move || any_omits.get()>
            <SelectField choice=Choice::Job(JobChoice::OmittedAspect) label="tyre size without a series is" visible_label=true/>
        </Show>
        <TextField field=Field::Job(JobField::Shift) label="shift at" visible_label=true number=true/>
        <TextField field=Field::Job(JobField::Cruise) label="cruise at" visible_label=true number=true/>
    }
}

/// The shift chart.
pub(super) fn picture() -> impl IntoView {
    let state = State::here();
    let chart = Memo::new(move |_| state.picture(of::shift_chart));
    let caption =
        Signal::derive(move || state.say("Shift chart. Each setup climbs to the shift point, then drops to where the next gear picks up."));
    view! { <Chart picture=chart name="shift-chart" caption/> }
}
