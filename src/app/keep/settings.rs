//! What the shop settles once for all jobs: each under a key of its own, that every tab shares. Its rows about faults, which may be long, lie
//! among the jobs.

use leptos::prelude::*;

use super::{local, store};
use crate::app::device;
use crate::app::notices::Notice;
use crate::app::print::Printed;
use crate::app::shop::{Settled, Shop};
use crate::app::state::State;
use crate::catalogue::DemoParts;
use crate::job::kept::FAULTS;
use crate::questions::faults::own;

/// The key of what the shop says about the demo's parts.
const DEMO_PARTS: &str = "layshaft.demo-parts";
/// The key of its name and address.
const LETTERHEAD: &str = "layshaft.letterhead";
/// The key of the pages it prints.
const PRINTED: &str = "layshaft.printed";

/// The key of the time of its last backup.
const BACKED_UP: &str = "layshaft.backed-up";

/// What the shop has settled.
pub(super) fn settled() -> Settled {
    let read = |key| local::read(key).unwrap_or_default();
    Settled {
        demo_parts: DemoParts::read(&read(DEMO_PARTS)),
        letterhead: read(LETTERHEAD),
        printed: Printed::read(&read(PRINTED)),
        backed_up: read(BACKED_UP),
        faults: store::read(FAULTS).unwrap_or_default(),
    }
}

/// Writes what is settled whenever it changes, and takes in what another tab settled.
pub(super) fn keep(state: State) {
    let Shop { demo_parts, letterhead, printed, backed_up, .. } = state.shop;
    keep_text(state, DEMO_PARTS, move || demo_parts.get().id().to_owned());
    keep_text(state, LETTERHEAD, move || letterhead.get());
    keep_text(state, PRINTED, move || printed.get().id().to_owned());
    keep_faults(state.shop.faults);
    keep_text(state, BACKED_UP, move || backed_up.get());
    device::on_window("storage", move |event: web_sys::StorageEvent| match event.key().as_deref() {
        Some(DEMO_PARTS) => demo_parts.set(settled().demo_parts),
        Some(LETTERHEAD) => letterhead.set(settled().letterhead),
        Some(PRINTED) => printed.set(settled().printed),
        Some(BACKED_UP) => backed_up.set(settled().backed_up),
        _ => {}
    });
}

/// Keeps the shop's own rows about faults, beside what another tab wrote meanwhile, or what was there before the page knew of it.
fn keep_faults(faults: RwSignal<String>) {
    let kept = || store::read(FAULTS).unwrap_or_default();
    let meanwhile = faults.get_untracked();
    if meanwhile != kept() {
        faults.set(own::joined(&kept(), &meanwhile));
    }
    Effect::new(move || {
        faults.with(|text| match (*text == kept(), text.is_empty()) {
            (true, _) => {}
            (false, true) => store::remove(FAULTS),
            (false, false) => store::write(FAULTS, text),
        });
    });
    store::follow(move |key, how| {
        if key == FAULTS {
            let theirs = kept();
            faults.update(|ours| *ours = if how == store::Elsewhere::Overtaken { own::joined(&theirs, ours) } else { theirs });
        }
    });
}

/// Keeps a text under a key for as long as the page lives; nothing is kept of a blank one.
fn keep_text(state: State, key: &'static str, text: impl Fn() -> String + 'static) {
    Effect::new(move || {
        let text = text();
        if local::read(key).unwrap_or_default() == text {
            return;
        }
        if text.is_empty() {
            local::remove(key);
        } else if local::write(key, &text).is_err() {
            state.tell(Notice::not_kept());
        }
    });
}
