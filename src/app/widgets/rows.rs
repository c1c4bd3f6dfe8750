//! The rows of a section: a table whose columns are the setups, each cell repainted only when it changed.

use leptos::html::Table;
use leptos::prelude::*;

use super::follow::{self, Same, ShownRow, ShownRows};
use super::{entry, figure};
use crate::app::device;
use crate::app::state::State;
use crate::job::{Job, SetupId};
use crate::sheet::{Cell, EntryKind, Piece};

/// The rows of one section.
#[component]
pub fn Rows(
    /// The section's name in the sheet.
    section: &'static str,
) -> impl IntoView {
    let table = NodeRef::<Table>::new();
    table_of(section, "rows", table, follow::section(section, device::near_window(table)))
}

/// The row in short, under the heads.
#[component]
pub fn ShortRow() -> impl IntoView {
    table_of("short", "rows rows--short", NodeRef::new(), follow::short())
}

/// A table. Its rows are made anew when setups come, go or change places, so that a cell knows its column for good.
fn table_of(section: &'static str, class: &'static str, table: NodeRef<Table>, rows: Memo<ShownRows>) -> AnyView {
    let state = State::here();
    figure::follow_asked(state, table);
    let keys = Memo::new(move |_| rows.with(|rows| rows.iter().map(|row| row.key.clone()).collect::<Vec<_>>()));
    let body = move || {
        let columns = state.setup_ids().into_iter().map(|id| (id, figure::asked_of(state, id))).collect::<Vec<_>>();
        let row = move |key: String| {
            let row = Memo::new(move |_| rows.with(|rows| rows.iter().find(|row| row.key == key).cloned()));
            table_row(row, &columns)
        };
        view! { <For each=move || keys.get() key=Clone::clone children=row/> }
    };
    view! {
        <table class=class node_ref=table on:click=move |event| figure::press(state, &event)>
            <TableHead section/>
            <tbody>{body}</tbody>
        </table>
    }
    .into_any()
}

/// The setups' letters and names above a table: seen on paper, always there for those who listen.
#[component]
fn TableHead(section: &'static str) -> impl IntoView {
    let state = State::here();
    let heading = move |id: SetupId| {
        let letter = move || Job::letter(state.column_of(id)).to_string();
        view! { <th scope="col"><span class="unseen">{letter}": "{move || state.name_of(id)}</span></th> }
    };
    view! {
        <colgroup><col class="rows__label"/></colgroup>
        <thead class="rows__head">
            <tr>
                <th scope="col" class="rows__label"><span class="unseen">{format!("{section}: question")}</span></th>
                <For each=move || state.setup_ids() key=|id| *id children=heading/>
            </tr>
        </thead>
    }
}

type RowMemo = Memo<Option<Same<ShownRow>>>;
/// The key of the figure of a setup whose working is open.
type Asked = Memo<Option<String>>;

fn table_row(row: RowMemo, columns: &[(SetupId, Asked)]) -> AnyView {
    let has_entries =
        Memo::new(move |_| row.with(|row| row.as_ref().is_some_and(|row| row.cells.iter().any(|cell| !cell.entries.is_empty()))));
    let cells = columns.iter().enumerate().map(|(column, (id, asked))| table_cell(*id, column, row, has_entries, *asked)).collect_view();
    view! {
        <tr>
            <th scope="row">{move || row.with(|row| row.as_ref().map(|row| row.label.clone()))}</th>
            {cells}
        </tr>
    }
    .into_any()
}

fn table_cell(id: SetupId, column: usize, row: RowMemo, has_entries: Memo<bool>, asked: Asked) -> AnyView {
    let cell = Memo::new(move |_| row.with(|row| row.as_ref().and_then(|row| row.cells.get(column).cloned())));
    let with = move |show: fn(SetupId, &Cell) -> AnyView| move || cell.with(|cell| cell.as_deref().map(|cell| show(id, cell)));
    let lines = move || {
        if has_entries.get() {
            view! { {with(first_line)}{entries(id, cell)}{with(other_lines)} }.into_any()
        } else {
            with(all_lines).into_any()
        }
    };
    let working = move || {
        let key = asked.get()?;
        cell.with(|cell| figure::working(cell.as_deref()?, &key))
    };
    view! { <td><div class="cell">{lines}{working}</div></td> }.into_any()
}

/// What is typed or chosen in a cell: kept while it is of the same kind, so that the focus stays in it.
fn entries(id: SetupId, cell: Memo<Option<Same<Cell>>>) -> AnyView {
    let kinds = Memo::new(move |_| {
        cell.with(|cell| {
            cell.as_deref().map_or_else(Vec::new, |cell| cell.entries.iter().map(|entry| entry.kind).collect::<Vec<EntryKind>>())
        })
    });
    let made = move |kind: EntryKind| {
        cell.with_untracked(|cell| cell.as_deref()?.entries.iter().find(|one| one.kind == kind).map(|one| entry::entry(id, one)))
    };
    view! { <For each=move || kinds.get() key=|kind| *kind children=made/> }.into_any()
}

fn all_lines(id: SetupId, cell: &Cell) -> AnyView {
    view! { {first_line(id, cell)}{other_lines(id, cell)} }.into_any()
}

fn first_line(id: SetupId, cell: &Cell) -> AnyView {
    cell.lines.first().map(|line| shown_line(id, line)).into_any()
}

fn other_lines(id: SetupId, cell: &Cell) -> AnyView {
    cell.lines.iter().skip(1).map(|line| view! { <div class="cell__rest">{shown_line(id, line)}</div> }).collect_view().into_any()
}

fn shown_line(id: SetupId, line: &[Piece]) -> AnyView {
    view! { <div class="cell__line">{line.iter().map(|piece| figure::piece(id, piece)).collect_view()}</div> }.into_any()
}
