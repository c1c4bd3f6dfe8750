//! Road speed: its controls and its picture.

use leptos::prelude::*;

use crate::app::widgets::TextField;
use crate::job::{Field, JobField};

/// Shift rpm and cruise speed, the same for every setup.
pub(super) fn controls() -> impl IntoView {
    view! {
        <TextField field=Field::Job(JobField::Shift) label="shift at" visible_label=true number=true/>
        <TextField field=Field::Job(JobField::Cruise) label="cruise at" visible_label=true number=true/>
    }
}
