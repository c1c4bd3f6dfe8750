//! The rows of a section as they are shown: what is near the window follows every keystroke; what is far from it follows a moment
//! after the typing pauses, so that a keystroke pays for what is seen.
//!
//! A cell that comes out as before is the same value as before. So each is compared once, and what hangs on it compares addresses.

use std::sync::Arc;

use leptos::prelude::*;

use crate::app::device;
use crate::app::state::State;
use crate::sheet::{Cell, Row, Sheet};

/// A value that is equal to itself alone.
pub struct Same<T>(Arc<T>);

impl<T> Clone for Same<T> {
    fn clone(&self) -> Self {
        Self(Arc::clone(&self.0))
    }
}

impl<T> PartialEq for Same<T> {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

impl<T> std::ops::Deref for Same<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.0
    }
}

impl<T: Clone + PartialEq> Same<T> {
    /// The value it was before, where that is equal.
    fn or_new(before: Option<&Self>, now: &T) -> Self {
        before.filter(|before| before.0.as_ref() == now).cloned().unwrap_or_else(|| Self(Arc::new(now.clone())))
    }
}

/// A row as it is shown.
#[derive(Clone, PartialEq)]
pub struct ShownRow {
    /// Its name inside the section.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// A cell for every setup.
    pub cells: Vec<Same<Cell>>,
}

/// Rows as they are shown.
pub type ShownRows = Vec<Same<ShownRow>>;

/// How long the typing must pause before what is far from the window follows, in milliseconds: longer than from key to key.
const PAUSE_MS: u32 = 300;

/// The rows of a section: at once while they are near the window, else as soon as the typing pauses.
pub fn section(section: &'static str, is_near: RwSignal<bool>) -> Memo<ShownRows> {
    let state = State::here();
    let caught_up = RwSignal::new(0_u32);
    let changes = StoredValue::new(0_u32);
    Effect::new(move || {
        state.sheet.track();
        if is_near.get_untracked() {
            return;
        }
        let change = changes.get_value().wrapping_add(1);
        changes.set_value(change);
        device::after(PAUSE_MS, move || {
            if changes.try_get_value() == Some(change) {
                caught_up.set(change);
            }
        });
    });
    Memo::new(move |before: Option<&ShownRows>| {
        caught_up.track();
        let take = |sheet: &Sheet| shown(before, rows(sheet, section));
        if is_near.get() { state.sheet.with(take) } else { state.sheet.with_untracked(take) }
    })
}

/// The row in short.
pub fn short() -> Memo<ShownRows> {
    let state = State::here();
    Memo::new(move |before: Option<&ShownRows>| state.sheet.with(|sheet| shown(before, std::slice::from_ref(&sheet.short))))
}

fn rows<'a>(sheet: &'a Sheet, section: &str) -> &'a [Row] {
    sheet.sections.iter().find(|each| each.id == section).map_or(&[], |section| &section.rows)
}

fn shown(before: Option<&ShownRows>, now: &[Row]) -> ShownRows {
    let before = before.map_or(&[][..], Vec::as_slice);
    let row = |(at, row): (usize, &Row)| {
        // A row mostly stands where it stood.
        let same_key = |other: &&Same<ShownRow>| other.key == row.key;
        let before = before.get(at).filter(same_key).or_else(|| before.iter().find(same_key));
        let cell = |(column, cell)| Same::or_new(before.and_then(|before| before.cells.get(column)), cell);
        let shown = ShownRow { key: row.key.clone(), label: row.label.clone(), cells: row.cells.iter().enumerate().map(cell).collect() };
        Same::or_new(before, &shown)
    };
    now.iter().enumerate().map(row).collect()
}
