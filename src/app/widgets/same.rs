//! Values that are the same as before where they come out as before: compared once, then by address.

use std::sync::Arc;

use crate::sheet::{Cell, Row};

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

/// Rows as they are shown now, each part the one it was before where it is equal.
pub fn shown(before: Option<&ShownRows>, now: &[Row]) -> ShownRows {
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
