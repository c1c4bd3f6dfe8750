//! The answer in a sentence or two, each setup as its coloured letter.

use leptos::prelude::*;

use crate::app::state::State;
use crate::job::Job;
use crate::questions::{Place, Question};
use crate::sheet::said::{Bit, Said};

/// What stands in its place at the bench, where an empty half of the page would ask what it is for.
const NOTHING_YET: &str = "The answer stands here once there is something to go on.";

/// The sentence; where nothing can be said yet, nothing, or at the bench that it will stand there.
pub(super) fn view(state: State, question: Signal<&'static Question>) -> impl IntoView {
    let said = Memo::new(move |_| state.with_source(|source| (question.get().answer)(source).map(|text| state.say(text))));
    let nothing = move || (question.get().place == Place::Bench).then(|| view! { <p class="answer answer--none">{NOTHING_YET}</p> });
    move || said.with(|said| if said.is_empty() { nothing().into_any() } else { view! { <p class="answer">{bits(said)}</p> }.into_any() })
}

fn bits(said: &Said) -> impl IntoView + use<> {
    let bit = |bit: Bit<'_>| match bit {
        Bit::Words(words) => view! { <span>{words.to_owned()}</span> }.into_any(),
        Bit::Setup(column) => {
            let letter = Job::letter(column);
            view! { <b class=format!("ink--{}", letter.to_ascii_lowercase())>{letter.to_string()}</b> }.into_any()
        }
    };
    said.bits().into_iter().map(bit).collect_view()
}
