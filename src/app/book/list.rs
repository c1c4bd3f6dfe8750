//! The book: every job on this device, found as one types.

use leptos::prelude::*;

use super::files::Files;
use super::restore::Restore;
use super::row::{self, JobRow, UnreadRow};
use crate::app::device;
use crate::app::keep::{Kept, autosave, records, store};
use crate::app::parts;
use crate::app::state::State;
use crate::app::widgets::Choice;
use crate::job::backup::RestorePlan;
use crate::job::book::Record;
use crate::job::listing::{self, Line, Order};
use crate::job::{calendar, kept};

/// A job that cannot be opened: its key, its text, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    /// The key it stands under.
    pub key: String,
    /// Its text.
    pub text: String,
    /// Why it cannot be opened.
    pub why: String,
}

/// What the list is made of.
#[derive(Clone, Copy)]
pub struct Shelf {
    /// Every job of the book.
    pub lines: Memo<Vec<Line>>,
    /// What cannot be opened.
    pub unread: Memo<Vec<Unread>>,
}

/// The book of jobs.
#[component]
pub fn Book() -> impl IntoView {
    let state = State::here();
    autosave::flush(state);
    let shelf = shelf(state);
    let search = RwSignal::new(String::new());
    let order = RwSignal::new(Order::default());
    let archived = RwSignal::new(false);
    let plan = RwSignal::new(None::<RestorePlan>);
    let shown = Memo::new(move |_| {
        let asked = search.get();
        let mut lines = shelf.lines.get();
        lines.retain(|line| line.head.archived == archived.get() && line.answers(&asked));
        listing::sort(&mut lines, order.get());
        lines
    });
    let enter = move |event: web_sys::KeyboardEvent| {
        let only = shown.with_untracked(|lines| if let [only] = lines.as_slice() { Some(only.head.id.clone()) } else { None });
        if let Some(id) = only.filter(|_| event.key() == "Enter") {
            event.prevent_default();
            row::open(state, &id);
        }
    };
    let is_there = move |line: &&Line| state.desk.gone.with(|gone| gone.iter().all(|gone| gone.head.id != line.head.id));
    let said = move || {
        count_words(
            shown.with(|lines| lines.iter().filter(is_there).count()),
            shelf.lines.with(|lines| lines.iter().filter(|line| line.head.archived == archived.get()).filter(is_there).count()),
        )
    };
    view! {
        <Files plan/>
        <Restore plan/>
        <div class="book__find">
            <label class="book__search">
                <span>"Search"</span>
                <input type="search" class="field__input" id="book-search" data-first="" autocomplete="off" placeholder="title, customer, car, gear set …"
                    on:input=move |event| search.set(event_target_value(&event)) on:keydown=enter/>
            </label>
            <OrderChoice order/>
            <Choice label="Which jobs" id="book-which" options=vec![(false, "current"), (true, "archived")] now=archived choose=move |which| archived.set(which)/>
            <p class="book__count" role="status">{said}</p>
        </div>
        <ul class="jobs" id="jobs">
            <For each=move || shown.get() key=|line| line.head.id.clone() children=move |line| view! { <JobRow line shelf/> }/>
        </ul>
        <ul class="jobs"><For each=move || shelf.unread.get() key=|unread| unread.key.clone() children=move |unread| view! { <UnreadRow unread/> }/></ul>
        {move || backup_age(state, shelf)}
        <p class="words">"Jobs are kept in this browser on this device alone. Save a backup of all jobs now and then, and keep it elsewhere."</p>
    }
}

/// How old the last backup is.
fn backup_age(state: State, shelf: Shelf) -> impl IntoView {
    let age = shelf.lines.with(|lines| {
        let begun = lines.iter().map(|line| line.head.created.as_str()).min().unwrap_or_default();
        let changed = lines.iter().map(|line| line.head.changed.as_str()).max().unwrap_or_default();
        state.shop.backed_up.with(|last| calendar::backup_age(last, begun, changed, &device::now()))
    });
    view! { <p class="words" class:book__due=age.is_due id="backup-age">{age.says}</p> }
}

/// Reads the book again whenever it changed.
fn shelf(state: State) -> Shelf {
    let read = Memo::new(move |_| {
        state.desk.book_changed.track();
        let (mut found, broken) = records::all();
        if found.is_empty() && state.desk.kept.get_untracked() != Kept::Linked {
            found.push(state.record());
        }
        let broken = broken.into_iter().map(|one| Unread { key: format!("{}{}", kept::RECORD, one.name), text: one.text, why: one.why });
        let aside = store::keys(kept::ASIDE).into_iter().filter_map(|name| {
            let key = format!("{}{name}", kept::ASIDE);
            store::read(&key).map(|text| Unread { key, text, why: "it was damaged and set aside".into() })
        });
        let gone = state.desk.gone.get();
        found.extend(gone.into_iter().filter(|gone| found.iter().all(|there| there.head.id != gone.head.id)).collect::<Vec<_>>());
        (found.iter().map(line_of).collect::<Vec<_>>(), broken.chain(aside).collect::<Vec<_>>())
    });
    Shelf {
        lines: Memo::new(move |_| read.with(|(lines, _)| lines.clone())),
        unread: Memo::new(move |_| read.with(|(_, unread)| unread.clone())),
    }
}

/// The line of a record, with the steps of its build that are open once what counts them has come.
fn line_of(record: &Record) -> Line {
    let mut line = Line::of(record);
    line.open_steps = parts::ANSWERS.get().and_then(|answers| (answers.open_steps)(&record.job));
    line
}

fn count_words(shown: usize, all: usize) -> String {
    match (shown, all) {
        (_, 0) => "no jobs here".into(),
        (1, 1) => "1 job".into(),
        (shown, all) if shown == all => format!("{all} jobs"),
        (shown, all) => format!("{shown} of {all} jobs"),
    }
}

#[component]
fn OrderChoice(order: RwSignal<Order>) -> impl IntoView {
    let option = move |(at, one): (usize, Order)| {
        view! { <option value=at.to_string() selected=move || order.get() == one>{one.words()}</option> }
    };
    let choose = move |event| {
        let at: usize = event_target_value(&event).parse().unwrap_or(0);
        order.set(Order::ALL.get(at).copied().unwrap_or_default());
    };
    view! {
        <label class="book__order"><span>"Sort by"</span>
            <select class="select" id="book-order" on:change=choose>{Order::ALL.into_iter().enumerate().map(option).collect_view()}</select>
        </label>
    }
}
