//! Compare: the line on the left, the setups' heads above, one question below them.

use leptos::prelude::*;

use super::Frame;
use super::address::At;
use super::heads::Heads;
use super::line::Line;
use super::picker::Picker;
use super::question::QuestionView;
use super::state::State;
use super::turns;

/// The place.
#[component]
pub fn Compare() -> impl IntoView {
    let state = State::here();
    let open = Memo::new(move |_| Some(state.view.at.get()));
    view! {
        <Line/>
        <Frame>
            <Heads/>
            <Picker/>
            {move || open.get().and_then(At::open).map(|heading| turns::piece(move || view! { <QuestionView heading/> }.into_any()))}
        </Frame>
    }
}
