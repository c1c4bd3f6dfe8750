//! The shop's own catalogue entries: kept under one key; what cannot be read is set aside, never overwritten.

use leptos::prelude::*;

use super::store;
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::catalogue::{Catalogue, saved};
use crate::problem::Explain;

/// The key of the entries.
const CATALOGUE: &str = "layshaft.catalogue";
/// The key under which entries that could not be read are set aside, whole.
const SET_ASIDE: &str = "layshaft.catalogue.set-aside";

/// The catalogue with the shop's own entries.
pub fn open(notices: &mut Vec<Notice>) -> Catalogue {
    let Some(text) = store::read(CATALOGUE) else { return Catalogue::built_in() };
    saved::from_text(&text).unwrap_or_else(|why| {
        let is_aside = store::write(SET_ASIDE, &text).is_ok();
        notices.push(Notice::set_aside("catalogue", text, &why.what(), is_aside));
        Catalogue::built_in()
    })
}

/// Writes the shop's own entries whenever they change.
pub fn keep(state: State) {
    Effect::new(move |before: Option<()>| {
        let text = state.catalogue.with(saved::to_text);
        if before.is_some() && store::write(CATALOGUE, &text).is_err() {
            state.tell(Notice::catalogue_not_kept(text));
        }
    });
}
