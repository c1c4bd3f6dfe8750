//! The search in slices: each ends before a frame is missed, a change of the wishes begins anew, and it can be stopped.

use std::sync::Arc;

use leptos::prelude::*;

use crate::app::device;
use crate::app::state::State;
use crate::finder::{Found, Given, Search, Table};
use crate::questions::find::Asked;

/// How long a slice may take, in milliseconds.
const SLICE_MS: f64 = 7.0;
/// Work between two looks at the clock.
const WORK: u64 = 20_000;
/// How often the running best is shown, in milliseconds.
const SHOWN_EVERY_MS: f64 = 200.0;
/// How long nothing must have changed before the search begins anew, in milliseconds.
const QUIET_MS: u32 = 60;

/// What a search has come to, and how it is told what to do.
#[derive(Clone, Copy)]
pub(super) struct Runner {
    /// The results so far.
    pub(super) found: RwSignal<Option<Arc<Found>>>,
    /// Whether it is at work.
    pub(super) is_running: RwSignal<bool>,
    /// What is searched for.
    pub(super) asked: Memo<(Given, Asked)>,
    table: Memo<Arc<Table>>,
    search: StoredValue<Option<Search>>,
    shown_at: StoredValue<f64>,
    turn: StoredValue<u32>,
}

impl Runner {
    /// A runner that begins at once, and anew whenever wishes, car or catalogue change.
    pub(super) fn start() -> Self {
        let state = State::here();
        let runner = Self {
            found: RwSignal::new(None),
            is_running: RwSignal::new(false),
            asked: state.wished,
            table: Memo::new(move |_| state.shop.catalogue.with(|catalogue| Arc::new(Table::of(catalogue)))),
            search: StoredValue::new(None),
            shown_at: StoredValue::new(0.0),
            turn: StoredValue::new(0),
        };
        Effect::new(move || {
            runner.asked.track();
            state.shop.catalogue.track();
            runner.begin();
        });
        runner
    }

    /// Begins anew once nothing has changed for a moment.
    pub(super) fn begin(self) {
        let turn = self.next_turn();
        self.is_running.set(true);
        device::after(QUIET_MS, move || {
            if self.is_turn(turn) {
                device::mark("find-begin");
                let (given, asked) = self.asked.get_untracked();
                self.search.set_value(Some(Search::new(self.table.get_untracked(), asked.wishes, given)));
                self.shown_at.set_value(device::milliseconds());
                self.slice(turn);
            }
        });
    }

    /// Stops where it is; what was found stays.
    pub(super) fn stop(self) {
        self.next_turn();
        self.is_running.set(false);
        self.show();
    }

    /// Goes on from where it was stopped.
    pub(super) fn go_on(self) {
        let turn = self.next_turn();
        self.is_running.set(true);
        self.slice(turn);
    }

    fn next_turn(self) -> u32 {
        let turn = self.turn.get_value().wrapping_add(1);
        self.turn.set_value(turn);
        turn
    }

    /// Whether no later search, stop or start has come in between.
    fn is_turn(self, turn: u32) -> bool {
        self.turn.try_get_value() == Some(turn)
    }

    fn slice(self, turn: u32) {
        if !self.is_turn(turn) {
            return;
        }
        let begun = device::milliseconds();
        let mut progress = None;
        self.search.update_value(|search| {
            let Some(search) = search else { return };
            while progress.is_none_or(|progress: crate::finder::Progress| !progress.done) && device::milliseconds() - begun < SLICE_MS {
                progress = Some(search.advance(WORK));
            }
        });
        let Some(progress) = progress else { return self.is_running.set(false) };
        if progress.done {
            device::mark("find-end");
            self.is_running.set(false);
            self.show();
            return;
        }
        if device::milliseconds() - self.shown_at.get_value() > SHOWN_EVERY_MS {
            self.show();
            self.shown_at.set_value(device::milliseconds());
        }
        device::soon(move || self.slice(turn));
    }

    fn show(self) {
        let found = self.search.with_value(|search| search.as_ref().map(|search| Arc::new(search.found())));
        self.found.set(found);
    }
}
