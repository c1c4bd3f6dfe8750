//! What follows a moment after the keys rest: summaries, and what is counted of a fold that nobody has opened.

use leptos::prelude::*;

use super::device;
use super::parts;
use super::state::State;

/// How long the keys rest, in milliseconds.
const REST: u32 = 120;

/// What a job comes to: worked out now, when the answers have come, and then whenever the keys rest.
pub fn follow<T: PartialEq + Send + Sync + 'static>(state: State, work: impl Fn() -> T + Copy + 'static) -> RwSignal<T> {
    let shown = RwSignal::new(untrack(work));
    let again = move || {
        let now = untrack(work);
        if shown.try_with_untracked(|shown| *shown != now) == Some(true) {
            shown.set(now);
        }
    };
    let times = StoredValue::new(0_u32);
    Effect::new(move |is_later: Option<()>| {
        let have_come = parts::ANSWERS.get().is_some();
        if have_come && is_later.is_some() {
            again();
        }
    });
    Effect::new(move |is_later: Option<()>| {
        state.job.track();
        state.shop.shelf.track();
        state.words.track();
        if is_later.is_none() {
            return;
        }
        times.update_value(|times| *times = times.wrapping_add(1));
        let asked = times.get_value();
        device::after(REST, move || {
            if times.try_get_value() == Some(asked) {
                again();
            }
        });
    });
    shown
}
