//! What is made in turn while the page comes into being: a piece a task, from top to bottom, so that painting and taps come between.
//!
//! Once the page stands everything is made at once, where it belongs.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;

use leptos::prelude::*;

use super::device;

type Act = Box<dyn FnOnce()>;

thread_local! {
    static WAITING: RefCell<VecDeque<Act>> = const { RefCell::new(VecDeque::new()) };
    /// What is done once the page stands.
    static AFTERWARDS: RefCell<Vec<Act>> = const { RefCell::new(Vec::new()) };
    /// Whether a task is on its way that does the first of those that wait.
    static IS_UNDER_WAY: Cell<bool> = const { Cell::new(false) };
    static STANDS: Cell<bool> = const { Cell::new(false) };
}

/// Whether the page stands as it opened.
pub fn stands() -> bool {
    STANDS.get()
}

/// Does something in a task of its own, after what waits already.
pub fn queue(act: impl FnOnce() + 'static) {
    WAITING.with_borrow_mut(|waiting| waiting.push_back(Box::new(act)));
    if !IS_UNDER_WAY.replace(true) {
        device::soon(step);
    }
}

/// Does the first of what waits. What it made may have pieces of its own, so the end is seen a task later.
fn step() {
    let next = WAITING.with_borrow_mut(VecDeque::pop_front);
    if let Some(act) = next {
        act();
        device::soon(step);
        return;
    }
    IS_UNDER_WAY.set(false);
    if !STANDS.replace(true) {
        AFTERWARDS.take().into_iter().for_each(queue);
    }
}

/// Does something once the page stands as it opened.
pub fn once_it_stands(act: impl FnOnce() + 'static) {
    if stands() {
        act();
    } else {
        AFTERWARDS.with_borrow_mut(|afterwards| afterwards.push(Box::new(act)));
    }
}

/// A piece of the page: made in a task of its own while the page comes into being, at once afterwards.
pub fn piece(make: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    if stands() {
        return make();
    }
    let is_made = RwSignal::new(false);
    set_in_turn(is_made);
    (move || is_made.get().then(&make)).into_any()
}

/// Sets a signal in a task of its own, unless it has gone with its place by then.
pub fn set_in_turn(signal: RwSignal<bool>) {
    queue(move || {
        let _ = signal.try_set(true);
    });
}
