//! The shop's own catalogue entries, kept under one key that every tab shares: what another tab wrote is taken in, what cannot be
//! read is set aside or left alone, never written over.

use leptos::prelude::*;

use super::store::{self, Health};
use crate::app::device;
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::catalogue::Catalogue;
use crate::catalogue::saved::{self, SavedError};
use crate::job::backup;
use crate::job::kept::{self, CATALOGUE, CATALOGUE_ASIDE};
use crate::problem::Explain;

/// The catalogue with the shop's own entries.
pub async fn open(notices: &mut Vec<Notice>) -> Catalogue {
    let Some(text) = store::read(CATALOGUE) else { return Catalogue::built_in() };
    let why = match saved::from_text(&text) {
        Ok(catalogue) => return catalogue,
        Err(why) => why,
    };
    notices.push(match why {
        SavedError::Newer(_) => Notice::catalogue_newer(&why, text),
        SavedError::NotEntries(_) => {
            set_aside(&text);
            let is_aside = store::settled().await.is_ok();
            if !is_aside {
                take_back();
            }
            Notice::set_aside("catalogue", text, &why.what(), is_aside)
        }
    });
    Catalogue::built_in()
}

/// Moves entries that cannot be read out of the way, whole, beside whatever was set aside before.
fn set_aside(text: &str) {
    store::change(|ledger| {
        kept::set_aside(ledger, CATALOGUE_ASIDE, text);
        ledger.put(CATALOGUE, None);
    });
}

/// Leaves the entries and what is set aside of them as they are written, where they cannot be written otherwise.
fn take_back() {
    let keys = store::keys(CATALOGUE).into_iter().map(|behind| format!("{CATALOGUE}{behind}"));
    store::take_back(&keys.chain([CATALOGUE.to_owned()]).collect::<Vec<_>>());
}

/// Writes the shop's own entries whenever they change, and takes in what another tab wrote. A page that began with empty shelves is given
/// what is built in, beside what was put on them meanwhile.
pub fn keep(state: State) {
    let begun = state.shop.catalogue.get_untracked();
    let last = StoredValue::new(if begun.has_built_in() { begun.clone() } else { Catalogue::built_in() });
    if !begun.has_built_in() {
        state.shop.catalogue.set(Catalogue::built_in().with_changes(&Catalogue::empty(), &begun));
    }
    Effect::new(move || {
        state.shop.catalogue.track();
        write(state, last);
    });
    store::follow(move |key, _| {
        if key == CATALOGUE {
            follow(state, last);
        }
    });
    let health = store::health();
    Effect::new(move || {
        if matches!(health.get(), Health::Failed(_)) && store::is_behind(CATALOGUE) {
            let ours = state.shop.catalogue.with_untracked(as_backup);
            state.tell(Notice::catalogue_not_kept("its store is full or blocked", ours));
        }
    });
}

/// Writes the entries, with what another tab added since they were `last` read or written here.
fn write(state: State, last: StoredValue<Catalogue>) {
    let ours = state.shop.catalogue.get_untracked();
    if last.with_value(|last| *last == ours) {
        return;
    }
    match joined(last, &ours) {
        Err(why) => state.tell(Notice::catalogue_not_kept(&why.what(), as_backup(&ours))),
        Ok(all) => {
            store::write(CATALOGUE, &saved::to_text(&all));
            show(state, last, all.clone(), all);
        }
    }
}

/// The entries as a backup without jobs: what the page takes in again.
fn as_backup(catalogue: &Catalogue) -> String {
    backup::to_text(&[], catalogue, &device::now())
}

/// What is kept now and what was changed here, together. What cannot be read is set aside first.
fn joined(last: StoredValue<Catalogue>, ours: &Catalogue) -> Result<Catalogue, SavedError> {
    let kept = store::read(CATALOGUE);
    let all = last.with_value(|last| saved::together(kept.as_deref(), last, ours));
    match (all, kept) {
        (Err(SavedError::NotEntries(_)), Some(text)) => {
            set_aside(&text);
            Ok(ours.clone())
        }
        (all, _) => all,
    }
}

/// Takes in what another tab wrote; what cannot be read is left for the next change to say so.
fn follow(state: State, last: StoredValue<Catalogue>) {
    let ours = state.shop.catalogue.get_untracked();
    let Some(theirs) = store::read(CATALOGUE).and_then(|text| saved::from_text(&text).ok()) else { return };
    let all = last.with_value(|last| theirs.with_changes(last, &ours));
    show(state, last, theirs, all);
}

/// Notes what is kept now and shows it with what is not kept yet.
fn show(state: State, last: StoredValue<Catalogue>, kept: Catalogue, all: Catalogue) {
    last.set_value(kept);
    if state.shop.catalogue.with_untracked(|shown| *shown != all) {
        state.shop.catalogue.set(all);
    }
}
