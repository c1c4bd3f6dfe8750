//! What the figures rest on: every value, typed or usual, with its source.

use leptos::prelude::*;

use crate::app::state::State;
use crate::questions::Question;
use crate::sheet::Rest;

/// The values, once each.
pub(super) fn view(state: State, question: &'static Question) -> AnyView {
    let rests = Memo::new(move |_| state.with_source(question.rests));
    let line = move |rest: Rest| {
        view! {
            <div class="rest">
                <dt>{state.say(&rest.label)}</dt>
                <dd><span class="num">{state.say(&rest.value)}</span>" "<span class="words">{state.say(&rest.source)}</span></dd>
            </div>
        }
    };
    view! {
        <dl class="rests">{move || rests.get().into_iter().map(line).collect_view()}</dl>
        {move || rests.with(Vec::is_empty).then(|| view! { <p class="words">"Nothing but what is typed above."</p> })}
    }
    .into_any()
}
