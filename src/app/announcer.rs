//! What changed, for those who listen: once the keys rest, the answer of the open question.

use leptos::prelude::*;

use super::device;
use super::question::answering;
use super::state::State;
use super::turns;

/// How long the page must rest before it is said, in milliseconds.
const REST: u32 = 900;

/// The region that is read out, unseen.
#[component]
pub fn Announcer() -> impl IntoView {
    let state = State::here();
    let said = RwSignal::new(String::new());
    let before = StoredValue::new(None::<(&'static str, String)>);
    let times = StoredValue::new(0_u32);
    let answer = move || {
        let question = state.view.at.get_untracked().open()?;
        let answered = untrack(|| answering(question))?;
        Some((question.id, untrack(|| state.with_source(|source| state.say(&(answered.answer)(source).plain())))))
    };
    // The first change may come before the page has rested once.
    turns::once_it_stands(move || before.set_value(answer()));
    Effect::new(move || {
        state.job.track();
        state.view.at.track();
        times.update_value(|times| *times = times.wrapping_add(1));
        let asked = times.get_value();
        device::after(REST, move || {
            if times.get_value() != asked {
                return;
            }
            let Some(now) = answer() else { return };
            // Another question is read by whoever opens it; only a changed answer is news.
            let is_news = before.with_value(|before| before.as_ref().is_some_and(|(id, text)| *id == now.0 && *text != now.1));
            if is_news {
                said.set(now.1.clone());
            }
            before.set_value(Some(now));
        });
    });
    view! { <p class="unseen" role="status" id="announcer">{said}</p> }
}
