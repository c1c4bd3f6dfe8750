//! What follows a moment after the keys rest: summaries, and what is counted of a fold that nobody has opened.

use leptos::prelude::*;

use super::state::State;
use super::{device, parts, turns};

/// How long the keys rest, in milliseconds.
const REST: u32 = 120;

/// What a job comes to: worked out now, when the answers have come, and then whenever the keys rest.
pub fn follow<T: PartialEq + Send + Sync + 'static>(state: State, work: impl Fn() -> T + Copy + 'static) -> RwSignal<T> {
    let shown = RwSignal::new(untrack(work));
    whenever_they_rest(state, 1, move |_| put(shown, work));
    shown
}

/// As [`follow`], for so many things, each worked out in a task of its own; `first` stands for one that is not worked out while the page
/// comes into being.
pub fn follow_each<T: PartialEq + Send + Sync + 'static>(
    state: State,
    many: usize,
    first: impl Fn() -> T,
    work: impl Fn(usize) -> T + Copy + Send + Sync + 'static,
) -> Vec<RwSignal<T>> {
    let stands = turns::stands();
    let shown: Vec<_> = (0..many).map(|nth| RwSignal::new(if stands { untrack(|| work(nth)) } else { first() })).collect();
    let all = StoredValue::new(shown.clone());
    let step = move |nth: usize| {
        if let Some(shown) = all.try_with_value(|all| all.get(nth).copied()).flatten() {
            put(shown, || work(nth));
        }
    };
    let times = whenever_they_rest(state, many, step);
    if !stands {
        turns::once_it_stands(move || steps(times, 0, 0, many, step));
    }
    shown
}

fn put<T: PartialEq + Send + Sync + 'static>(shown: RwSignal<T>, work: impl Fn() -> T) {
    let now = untrack(work);
    if shown.try_with_untracked(|shown| *shown != now) == Some(true) {
        shown.set(now);
    }
}

/// Does steps when the answers have come and whenever the keys rest, each in a task of its own; answers how often that was asked for, by
/// which a key in between drops those that wait.
fn whenever_they_rest(state: State, many: usize, step: impl Fn(usize) + Copy + 'static) -> StoredValue<u32> {
    let times = StoredValue::new(0_u32);
    let asked = move || {
        times.update_value(|times| *times = times.wrapping_add(1));
        times.get_value()
    };
    Effect::new(move |is_later: Option<()>| {
        let have_come = parts::ANSWERS.get().is_some();
        if have_come && is_later.is_some() {
            let asked = asked();
            turns::queue(move || steps(times, asked, 0, many, step));
        }
    });
    Effect::new(move |is_later: Option<()>| {
        state.job.track();
        state.shop.shelf.track();
        state.words.track();
        if is_later.is_some() {
            let asked = asked();
            device::after(REST, move || steps(times, asked, 0, many, step));
        }
    });
    times
}

/// Does the step and those behind it, unless they were asked for again meanwhile.
fn steps(times: StoredValue<u32>, asked: u32, nth: usize, many: usize, step: impl Fn(usize) + Copy + 'static) {
    if nth < many && times.try_get_value() == Some(asked) {
        step(nth);
        turns::queue(move || steps(times, asked, nth + 1, many, step));
    }
}
