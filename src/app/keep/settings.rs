//! What the shop settles once for all jobs: each under a key of its own, that every tab shares.

use leptos::prelude::*;

use super::store;
use crate::app::device;
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::catalogue::DemoParts;

/// The key of what the shop says about the demo's parts.
const DEMO_PARTS: &str = "layshaft.demo-parts";

/// What the shop says about the demo's parts.
pub(super) fn demo_parts() -> DemoParts {
    DemoParts::read(&store::read(DEMO_PARTS).unwrap_or_default())
}

/// Writes what is settled whenever it changes, and takes in what another tab settled.
pub(super) fn keep(state: State) {
    let demo_parts = state.shop.demo_parts;
    keep_text(state, DEMO_PARTS, move || demo_parts.get().id().to_owned());
    device::on_window("storage", move |event: web_sys::StorageEvent| {
        if event.key().as_deref() == Some(DEMO_PARTS) {
            demo_parts.set(self::demo_parts());
        }
    });
}

/// Keeps a text under a key for as long as the page lives; nothing is kept of a blank one.
fn keep_text(state: State, key: &'static str, text: impl Fn() -> String + 'static) {
    Effect::new(move || {
        let text = text();
        if store::read(key).unwrap_or_default() == text {
            return;
        }
        if text.is_empty() {
            store::remove(key);
        } else if store::write(key, &text).is_err() {
            state.tell(Notice::not_kept());
        }
    });
}
