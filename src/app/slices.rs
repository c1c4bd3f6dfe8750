//! Long work on the page, in slices: each ends before a frame is missed, a later question drops it, and it can be stopped.

use std::sync::Arc;

use leptos::prelude::*;

use super::device;
use crate::sliced::{Progress, Runner, Sliced, Turn};

/// How long a slice may take, in milliseconds.
const SLICE_MS: f64 = 7.0;
/// How often what was found so far is shown, in milliseconds.
const SHOWN_EVERY_MS: f64 = 200.0;

/// Work in slices, and what it has come to.
pub struct Slices<W: Sliced + Send + Sync + 'static>
where
    W::Found: Send + Sync + 'static,
{
    /// What was found so far; none before anything was asked.
    pub found: RwSignal<Option<Arc<W::Found>>>,
    /// How far the work is; none while nothing is done.
    pub progress: RwSignal<Option<Progress>>,
    runner: StoredValue<Runner<W>>,
    shown_at: StoredValue<f64>,
    step: u64,
    ended: fn(),
}

impl<W: Sliced + Send + Sync + 'static> Copy for Slices<W> where W::Found: Send + Sync + 'static {}

impl<W: Sliced + Send + Sync + 'static> Clone for Slices<W>
where
    W::Found: Send + Sync + 'static,
{
    fn clone(&self) -> Self {
        *self
    }
}

impl<W: Sliced + Send + Sync + 'static> Slices<W>
where
    W::Found: Send + Sync + 'static,
{
    /// Nothing asked yet: `step` is the work between two looks at the clock, `ended` is called when work has come to its end.
    pub fn new(step: u64, ended: fn()) -> Self {
        Self {
            found: RwSignal::new(None),
            progress: RwSignal::new(None),
            runner: StoredValue::new(Runner::default()),
            shown_at: StoredValue::new(0.0),
            step,
            ended,
        }
    }

    /// Begins what `work` makes once nothing else was asked for `quiet_ms`; where it makes none, what was found before is forgotten.
    pub fn begin(self, quiet_ms: u32, work: impl FnOnce() -> Option<W> + 'static) {
        let turn = self.next_turn();
        self.progress.set(Some(Progress::default()));
        device::after(quiet_ms, move || {
            let turn = turn.filter(|turn| self.runner.try_with_value(|runner| runner.is_turn(*turn)) == Some(true));
            if let Some(turn) = turn {
                self.runner.update_value(|runner| runner.begin(turn, work()));
                self.shown_at.set_value(device::milliseconds());
                self.slice(turn);
            }
        });
    }

    /// Stops where it is; what was found stays.
    pub fn stop(self) {
        self.next_turn();
        self.progress.set(None);
        self.show();
    }

    /// Goes on from where it was stopped.
    pub fn go_on(self) {
        if let Some(turn) = self.next_turn() {
            self.slice(turn);
        }
    }

    fn next_turn(self) -> Option<Turn> {
        self.runner.try_update_value(Runner::next_turn)
    }

    fn slice(self, turn: Turn) {
        let begun = device::milliseconds();
        let has_time = || device::milliseconds() - begun < SLICE_MS;
        let step = self.runner.try_update_value(|runner| (runner.is_turn(turn), runner.slice(turn, self.step, has_time)));
        match step {
            Some((true, Some(progress))) if !progress.is_finished => {
                if device::milliseconds() - self.shown_at.get_value() > SHOWN_EVERY_MS {
                    self.show();
                    self.shown_at.set_value(device::milliseconds());
                }
                self.progress.set(Some(progress));
                device::soon(move || self.slice(turn));
            }
            Some((true, progress)) => {
                if progress.is_some() {
                    (self.ended)();
                }
                self.progress.set(None);
                self.show();
            }
            _ => {}
        }
    }

    fn show(self) {
        self.found.set(self.runner.with_value(|runner| runner.found().map(Arc::new)));
    }
}
