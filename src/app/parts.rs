//! Which parts of the program come later. The order is that in which they are fetched once the first figure stands.
//!
//! What such a part alone needs must be reached from here only: one call from elsewhere takes it back into the main program. The budget of
//! `cargo xtask test` watches over that. Each part is a file, and brings one value: a function, or a few of them by name.

use leptos::prelude::*;

use super::book::{self, Panel};
use super::keep::{self, Opened};
use super::later::Later;
use super::notices::Act;
use super::question::{saving, wanted};
use super::state::State;
use super::widgets::chart::Shown;
use super::widgets::same::Same;
use super::{bench, find, jobs, picker, print, shelf, suggestions};
use crate::catalogue::Catalogue;
use crate::job::{Job, SetupId};
use crate::part;
use crate::problem::Problem;
use crate::questions::{self, OnShelf, Question};
use crate::sheet::Cell;

/// What reads and writes on the device.
#[derive(Clone, Copy)]
pub struct Keeper {
    /// Opens what is kept, or what came with a link.
    pub open: fn() -> Opened,
    /// Keeps what is on the page, from now on for as long as it lives.
    pub keep: fn(State),
    /// Writes what is written nowhere yet.
    pub flush: fn(State),
    /// What must be decided about it.
    pub banners: fn() -> AnyView,
    /// Does what a notice offers.
    pub act: fn(State, Act),
}

part! {
    /// Reading and writing of jobs and of the shop's own entries.
    pub KEEPER: Keeper = keep(Keeper {
        open: keep::opening::open,
        keep: keep::keep,
        flush: keep::autosave::flush,
        banners: book::banners::view,
        act: keep::act,
    })
}

/// What answers questions.
#[derive(Clone, Copy)]
pub struct Answers {
    /// The question of an id.
    pub of: fn(&str) -> Option<&'static Question>,
    /// Reads what lies on the shelves.
    pub shelf: fn(&Catalogue) -> OnShelf,
    /// What is wrong with what is typed at the bench.
    pub bench_problems: fn(&Job) -> Vec<Problem>,
    /// The place of the bench.
    pub bench: fn() -> AnyView,
    /// The card of a figure that was pressed.
    pub card: fn(State, SetupId, String, Memo<Option<Same<Cell>>>) -> AnyView,
}

part! {
    /// All questions but the first, and what asks all of them.
    pub ANSWERS: Answers = answers(Answers {
        of: questions::of_id,
        shelf: OnShelf::of,
        bench_problems: questions::identify::problems,
        bench: bench::place,
        card: wanted::card,
    })
}

/// What opens when it is pressed.
#[derive(Clone, Copy)]
pub struct Desk {
    /// What stands in a panel above the question.
    pub panel: fn(Panel) -> AnyView,
    /// The place of the jobs.
    pub jobs: fn() -> AnyView,
    /// The gear sets to pick one from, for a setup.
    pub picker: fn(SetupId) -> AnyView,
    /// The lists the browser offers while something is typed.
    pub suggestions: fn() -> AnyView,
    /// The ways to save a picture.
    pub saving: fn(State, Signal<&'static str>, Memo<Option<Shown>>, RwSignal<bool>) -> AnyView,
}

part! {
    /// Panels, menus, lists.
    pub DESK: Desk = desk(Desk {
        panel: book::inside,
        jobs: jobs::place,
        picker: picker::list,
        suggestions: suggestions::lists,
        saving: saving::acts,
    })
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
pub static ALL: [&'static dyn Later; 6] = [&KEEPER, &ANSWERS, &DESK, &PAPER, &FIND, &SHELF];
