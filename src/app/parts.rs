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

/// What reads and writes on the device.
#[derive(Clone, Copy)]
pub struct Keeper {
    /// Opens what is kept, or what came with a link.
    pub open: fn() -> Pin<Box<dyn Future<Output = Opened>>>,
    /// Keeps what is on the page, from now on for as long as it lives.
    pub keep: fn(State),
    /// Writes what is written nowhere yet, for the page may be left; answers whether anything would be lost.
    pub leave: fn(State) -> bool,
    /// Every job of the book, as far as parts of the shelf go.
    pub fittings: fn() -> Vec<Fitting>,
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
        leave: keep::leave,
        fittings: keep::records::fittings,
        banners: book::banners::view,
        act: keep::act,
    })
}

part! {
    /// The picture of a question.
    pub PICTURES: fn(Signal<&'static Question>) -> AnyView = pictures(picture::view)
}

/// What answers questions.
#[derive(Clone, Copy)]
pub struct Answers {
    /// The question of an id.
    pub of: fn(&str) -> Option<&'static Question>,
    /// Reads what lies on the shelves, and the shop's own rows about faults.
    pub shelf: fn(&Catalogue, &str) -> OnShelf,
    /// Works out whatever a job gives, quicker after what was known before.
    pub analyse: fn(&Job, Shelves<'_>, Option<&questions::Answers>) -> questions::Answers,
    /// Whether a column's gear set goes into A's case, in short: asked of the shelf too, so not before it is there.
    pub case: fn(Source<'_>, usize) -> Option<String>,
    /// What is wrong with what is typed at the bench.
    pub bench_problems: fn(&Job, Shelves<'_>) -> Vec<InputProblem>,
    /// How many steps of a job's build are open; none where it has none.
    pub open_steps: fn(&Job) -> Option<usize>,
    /// The place of the bench.
    pub bench: fn() -> AnyView,
    /// The inputs of a question that are more than a line of text.
    pub input: fn(Input) -> AnyView,
    /// The further inputs of the question of an id.
    pub groups: fn(&str) -> AnyView,
    /// What stands folded below the question of an id.
    pub folds: fn(&str) -> AnyView,
    /// What is chosen in a cell.
    pub entry: fn(SetupId, &Entry) -> AnyView,
    /// A part that was found in the cell of a setup, and the setups that can take it.
    pub offer: fn(SetupId, &catalogue::Entry) -> AnyView,
    /// The card of a figure that was pressed.
    pub card: Card,
    /// Saves the sheets of a gear set, cut as a setup's gears are, under its name.
    pub sheets: fn(State, Option<SetupId>, &Gearbox, &str),
}

part! {
    /// All questions but the first, and what asks all of them.
    pub ANSWERS: Answers = answers(Answers {
        of: questions::of_id,
        shelf: OnShelf::with_own_rows,
        case: |source, column| questions::case::fit_of(source, column)?.short('A'),
        bench_problems: |job, shelves| questions::bench::problems_by(job, shelves.faults()),
        analyse: questions::analyse_job_after,
        open_steps: questions::record::answer::open_steps,
        bench: bench::place,
        input: inputs::other,
        groups: inputs::groups,
        folds: folds::of,
        entry: entry::chosen,
        offer: offer::offer,
        card: wanted::card,
        sheets: sheets::of_set,
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
    /// What can be done with the whole job; the signal closes the menu.
    pub hand_over: fn(State, RwSignal<bool>) -> AnyView,
    /// How the page is read.
    pub reading: fn(State) -> AnyView,
    /// What can be done with a setup as a whole.
    pub setup: fn(State, SetupId, RwSignal<bool>) -> AnyView,
    /// A picture in sentences.
    pub in_words: fn(Memo<Option<Shown>>) -> AnyView,
    /// The figures behind a picture.
    pub as_table: fn(Memo<Option<Shown>>) -> AnyView,
    /// The ways to save a picture.
    pub saving: Saving,
}

part! {
    /// Panels, menus, lists.
    pub DESK: Desk = desk(Desk {
        panel: book::inside,
        jobs: jobs::place,
        picker: picker::list,
        suggestions: suggestions::lists,
        hand_over: bar::hand_over,
        reading: bar::reading,
        setup: heads::acts,
        in_words: told::words,
        as_table: told::table,
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

/// What listens to a noise.
#[derive(Clone, Copy)]
pub struct Listen {
    /// What is pressed to record, to open a recording, to play a tone.
    pub controls: fn() -> AnyView,
    /// What a recording says.
    pub found: fn() -> AnyView,
}

part! {
    /// Recordings, their analysis, and tones.
    pub LISTEN: Listen = listen(Listen { controls: listen::controls, found: listen::found })
}

part! {
    /// The teeth of a gear counted in a picture.
    pub COUNT: fn() -> AnyView = count(count::view)
}

/// What is done with photographs.
#[derive(Clone, Copy)]
pub struct Photographs {
    /// Looks which there are.
    pub open: fn(State),
    /// Those of a part or a step, and a way to take one more; what they show in words.
    pub strip: fn(Signal<Option<Subject>>, Signal<String>) -> AnyView,
    /// The words under which steps of a job have some.
    pub of_steps: fn(&RecordId) -> Vec<String>,
    /// Those of the open job, for paper.
    pub printed: fn(State) -> AnyView,
}

part! {
    /// Photographs: taken, kept, shown.
    pub PHOTOGRAPHS: Photographs = photographs(Photographs {
        open: photographs::album::open,
        strip: photographs::strip::view,
        of_steps: photographs::album::of_steps,
        printed: photographs::printed::view,
    })
}

/// All of them.
pub static ALL: [&'static dyn Later; 10] = [&KEEPER, &PICTURES, &ANSWERS, &DESK, &PAPER, &FIND, &SHELF, &LISTEN, &PHOTOGRAPHS, &COUNT];
