//! The lists that the browser offers while ring and pinion, tyre, speedometer gears or dial are typed.

use leptos::prelude::*;

use super::parts;
use super::state::State;
use crate::catalogue::PartKind;
use crate::job::{Field, JobField, SetupField};
use crate::sheet::suggest::{self, Suggestion};

/// The list that belongs to a field, by its name on the page.
pub fn list_of(field: Field) -> Option<&'static str> {
    match field {
        Field::Setup(_, SetupField::FinalDrive) => Some("known-axles"),
        Field::Setup(_, SetupField::Tyre) => Some("known-tyres"),
        Field::Setup(_, SetupField::SpeedoGears) => Some("known-speedometer-pairs"),
        Field::Job(JobField::Dial) => Some("known-dials"),
        _ => None,
    }
}

/// The lists, once on the page. Until they have come, and where they do not, a field is typed without them.
#[component]
pub fn Suggestions() -> impl IntoView {
    parts::DESK.add(|desk| (desk.suggestions)())
}

pub(super) fn lists() -> AnyView {
    let state = State::here();
    let units = Memo::new(move |_| state.job.with(|job| job.units));
    let parts = move |kind: PartKind| Memo::new(move |_| suggest::parts(&state.shop.offered(), kind, units.get()));
    let pairs = Memo::new(move |_| suggest::speedometer_pairs(&state.shop.offered()));
    view! {
        {list("known-axles", parts(PartKind::RingAndPinion))}
        {list("known-tyres", parts(PartKind::Tyre))}
        {list("known-speedometer-pairs", pairs)}
        {list("known-dials", Memo::new(|_| suggest::dials()))}
    }
    .into_any()
}

fn list(id: &'static str, suggestions: Memo<Vec<Suggestion>>) -> impl IntoView {
    let option = |one: Suggestion| view! { <option value=one.text label=one.about></option> };
    view! { <datalist id=id>{move || suggestions.get().into_iter().map(option).collect_view()}</datalist> }
}
