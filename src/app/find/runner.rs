//! The search in slices: each ends before a frame is missed, a change of the wishes begins anew, and it can be stopped.

use std::sync::Arc;

use leptos::prelude::*;

use super::wished::Wished;
use crate::app::device;
use crate::app::slices::Slices;
use crate::app::state::State;
use crate::finder::{Found, Given, Search, Table};
use crate::questions::find::Asked;

/// Work between two looks at the clock.
const WORK: u64 = 20_000;
/// How long nothing must have changed before the search begins anew, in milliseconds.
const QUIET_MS: u32 = 60;

/// What a search has come to, and how it is told what to do.
#[derive(Clone, Copy)]
pub(super) struct Runner {
    /// The results so far.
    pub(super) found: RwSignal<Option<Arc<Found>>>,
    /// Whether it is at work.
    pub(super) is_running: Memo<bool>,
    /// What is searched for.
    pub(super) asked: Memo<(Given, Asked)>,
    table: Memo<Arc<Table>>,
    slices: Slices<Search>,
}

impl Runner {
    /// A runner that begins at once, and anew whenever wishes, car or catalogue change.
    pub(super) fn start() -> Self {
        let state = State::here();
        let slices = Slices::new(WORK, || device::mark("find-end"));
        let runner = Self {
            found: slices.found,
            is_running: Memo::new(move |_| slices.progress.with(Option::is_some)),
            asked: Wished::here().asked,
            table: Memo::new(move |_| Arc::new(Table::of(&state.shop.offered()))),
            slices,
        };
        Effect::new(move || {
            runner.asked.track();
            runner.table.track();
            runner.begin();
        });
        runner
    }

    /// Begins anew once nothing has changed for a moment.
    pub(super) fn begin(self) {
        self.slices.begin(QUIET_MS, move || {
            device::mark("find-begin");
            let (given, asked) = self.asked.get_untracked();
            Some(Search::new(self.table.get_untracked(), asked.wishes, given))
        });
    }

    /// Stops where it is; what was found stays.
    pub(super) fn stop(self) {
        self.slices.stop();
    }

    /// Goes on from where it was stopped.
    pub(super) fn go_on(self) {
        self.slices.go_on();
    }
}
