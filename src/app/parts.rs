//! Which parts of the program come later. The order is that in which they are fetched once the first figure stands.
//!
//! What such a part alone needs must be reached from here only: one call from elsewhere takes it back into the main program. The budget of
//! `cargo xtask test` watches over that. Several names may share a file.

use leptos::prelude::*;

use super::book::Panel;
use super::later::Later;
use super::state::State;
use super::{book, find, jobs, print, shelf};
use crate::part;

part! {
    /// What stands in a panel above the question.
    pub PANELS: fn(Panel) -> AnyView = desk(book::inside)
}

part! {
    /// The place of the jobs.
    pub JOBS: fn() -> AnyView = desk(jobs::place)
}

part! {
    /// The sheet laid out on paper.
    pub PAPER: fn(State) = paper(print::lay)
}

part! {
    /// Wishes, and what was found.
    pub FIND: fn() -> AnyView = find(find::place)
}

part! {
    /// The place of the shelf.
    pub SHELF: fn() -> AnyView = shelf(shelf::place)
}

/// All of them.
pub static ALL: [&'static dyn Later; 5] = [&PANELS, &JOBS, &PAPER, &FIND, &SHELF];
