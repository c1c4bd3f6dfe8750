//! Road speed: its controls and its picture.

use leptos::prelude::*;

use crate::app::state::State;
use crate::app::widgets::{Chart, TextField};
use crate::chart::of;
use crate::job::{Field, JobField};

/// Shift rpm and cruise speed, the same for every setup.
pub(super) fn controls() -> impl IntoView {
    view! {
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
