//! Which parts of the program come later. The order is that in which they are fetched once the first figure stands.
//!
//! What such a part alone needs must be reached from here only: one call from elsewhere takes it back into the main program. The budget of
//! `cargo xtask test` watches over that. Each part is a file, and brings one value: a function, or a few of them by name.

use std::pin::Pin;

use leptos::prelude::*;

use super::book::{self, Panel};
use super::keep::{self, Opened};
use super::later::Later;
use super::notices::Act;
use super::question::{folds, inputs, offer, picture, saving, sheets, told, wanted};
use super::state::State;
use super::widgets::chart::Shown;
use super::widgets::entry;
use super::widgets::same::Same;
use super::{bar, bench, count, find, heads, jobs, listen, photographs, picker, print, shelf, suggestions};
use crate::catalogue::{self, Catalogue};
use crate::job::book::RecordId;
use crate::job::listing::Fitting;
use crate::job::photographs::Subject;
use crate::job::{InputProblem, Job, SetupId};
use crate::part;
use crate::questions::cutter::sheets::Gearbox;
use crate::questions::{self, Input, OnShelf, Question, Shelves, Source};
use crate::sheet::{Cell, Entry};

/// Makes the card of a figure: of which setup, by which key, beside which cell.
type Card = fn(State, SetupId, String, Memo<Option<Same<Cell>>>) -> AnyView;
/// Makes the ways to save a picture: under which name, what it shows, whether they are open.
type Saving = fn(State, Signal<&'static str>, Memo<Option<Shown>>, RwSignal<bool>) -> AnyView;

/// Makes a part that brings a few functions by name: each with its type and with what it is.
macro_rules! functions {
    ($(#[$of:meta])* $part:ident in $file:ident: $name:ident { $($(#[$doc:meta])* $function:ident: $type:ty = $what:expr;)* }) => {
        $(#[$of])*
        #[derive(Clone, Copy)]
        pub struct $name {
            $($(#[$doc])* pub $function: $type,)*
        }

        part! {
            $(#[$of])*
            pub $part: $name = $file($name { $($function: $what),* })
        }
    };
}

functions! {
    /// Reading and writing on the device: of jobs and of the shop's own entries.
    KEEPER in keep: Keeper {
        /// Opens what is kept, or what came with a link.
        open: fn() -> Pin<Box<dyn Future<Output = Opened>>> = keep::opening::open;
        /// Keeps what is on the page, from now on for as long as it lives.
        keep: fn(State) = keep::keep;
        /// Writes what is written nowhere yet, for the page may be left; answers whether anything would be lost.
        leave: fn(State) -> bool = keep::leave;
        /// Every job of the book, as far as parts of the shelf go.
        fittings: fn() -> Vec<Fitting> = keep::records::fittings;
        /// What must be decided about it.
        banners: fn() -> AnyView = book::banners::view;
        /// Does what a notice offers.
        act: fn(State, Act) = keep::act;
    }
}

part! {
    /// The picture of a question.
    pub PICTURES: fn(Signal<&'static Question>) -> AnyView = pictures(picture::view)
}

functions! {
    /// What answers questions: all but the first, and what asks all of them.
    ANSWERS in answers: Answers {
        /// The question of an id.
        of: fn(&str) -> Option<&'static Question> = questions::of_id;
        /// Reads what lies on the shelves, and the shop's own rows about faults.
        shelf: fn(&Catalogue, &str) -> OnShelf = OnShelf::with_own_rows;
        /// Works out whatever a job gives, quicker after what was known before.
        analyse: fn(&Job, Shelves<'_>, Option<&questions::Answers>) -> questions::Answers = questions::analyse_job_after;
        /// Whether a column's gear set goes into A's case, in short: asked of the shelf too, so not before it is there.
        case: fn(Source<'_>, usize) -> Option<String> = |source, column| questions::case::fit_of(source, column)?.short('A');
        /// What is wrong with what is typed at the bench.
        bench_problems: fn(&Job, Shelves<'_>) -> Vec<InputProblem> = |job, shelves| questions::bench::problems_by(job, shelves.faults());
        /// How many steps of a job's build are open; none where it has none.
        open_steps: fn(&Job) -> Option<usize> = questions::record::answer::open_steps;
        /// The place of the bench.
        bench: fn() -> AnyView = bench::place;
        /// The inputs of a question that are more than a line of text.
        input: fn(Input) -> AnyView = inputs::other;
        /// The further inputs of the question of an id.
        groups: fn(&str) -> AnyView = inputs::groups;
        /// What stands folded below the question of an id.
        folds: fn(&str) -> AnyView = folds::of;
        /// What is chosen in a cell.
        entry: fn(SetupId, &Entry) -> AnyView = entry::chosen;
        /// A part that was found in the cell of a setup, and the setups that can take it.
        offer: fn(SetupId, &catalogue::Entry) -> AnyView = offer::offer;
        /// The card of a figure that was pressed.
        card: Card = wanted::card;
        /// Saves the sheets of a gear set, cut as a setup's gears are, under its name.
        sheets: fn(State, Option<SetupId>, &Gearbox, &str) = sheets::of_set;
    }
}

functions! {
    /// What opens when it is pressed: panels, menus, lists.
    DESK in desk: Desk {
        /// What stands in a panel above the question.
        panel: fn(Panel) -> AnyView = book::inside;
        /// The place of the jobs.
        jobs: fn() -> AnyView = jobs::place;
        /// The gear sets to pick one from, for a setup.
        picker: fn(SetupId) -> AnyView = picker::list;
        /// The lists the browser offers while something is typed.
        suggestions: fn() -> AnyView = suggestions::lists;
        /// What can be done with the whole job; the signal closes the menu.
        hand_over: fn(State, RwSignal<bool>) -> AnyView = bar::hand_over;
        /// How the page is read.
        reading: fn(State) -> AnyView = bar::reading;
        /// What can be done with a setup as a whole.
        setup: fn(State, SetupId, RwSignal<bool>) -> AnyView = heads::acts;
        /// A picture in sentences.
        in_words: fn(Memo<Option<Shown>>) -> AnyView = told::words;
        /// The figures behind a picture.
        as_table: fn(Memo<Option<Shown>>) -> AnyView = told::table;
        /// The ways to save a picture.
        saving: Saving = saving::acts;
    }
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

functions! {
    /// What listens to a noise: recordings, their analysis, and tones.
    LISTEN in listen: Listen {
        /// What is pressed to record, to open a recording, to play a tone.
        controls: fn() -> AnyView = listen::controls;
        /// What a recording says.
        found: fn() -> AnyView = listen::found;
    }
}

part! {
    /// The teeth of a gear counted in a picture.
    pub COUNT: fn() -> AnyView = count(count::view)
}

functions! {
    /// Photographs: taken, kept, shown.
    PHOTOGRAPHS in photographs: Photographs {
        /// Looks which there are.
        open: fn(State) = photographs::album::open;
        /// Those of a part or a step, and a way to take one more; what they show in words.
        strip: fn(Signal<Option<Subject>>, Signal<String>) -> AnyView = photographs::strip::view;
        /// The words under which steps of a job have some.
        of_steps: fn(&RecordId) -> Vec<String> = photographs::album::of_steps;
        /// Those of the open job, for paper.
        printed: fn(State) -> AnyView = photographs::printed::view;
    }
}

/// All of them.
pub static ALL: [&'static dyn Later; 10] = [&KEEPER, &PICTURES, &ANSWERS, &DESK, &PAPER, &FIND, &SHELF, &LISTEN, &PHOTOGRAPHS, &COUNT];
