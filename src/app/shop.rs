//! What the shop has: the catalogue with its own entries, and what the answers propose from.

use leptos::prelude::*;

use super::parts;
use crate::catalogue::Catalogue;
use crate::questions::OnShelf;

/// The shop's shelves.
#[derive(Clone, Copy)]
pub struct Shop {
    /// What can be chosen: built in, and the shop's own.
    pub catalogue: RwSignal<Catalogue>,
    /// The parts of the catalogue that can be read; none before what reads them has come.
    pub shelf: Memo<OnShelf>,
}

impl Shop {
    /// The shelves of a catalogue.
    pub fn new(catalogue: Catalogue) -> Self {
        let catalogue = RwSignal::new(catalogue);
        Self { catalogue, shelf: Memo::new(move |_| parts::ANSWERS.get().map(|answers| catalogue.with(answers.shelf)).unwrap_or_default()) }
    }
}
