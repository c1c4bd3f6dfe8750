//! Rows as a table: a label and a cell for every setup, each cell repainted only when it changed.
//!
//! A cell that comes out as before is the same value as before: it is compared once, and what hangs on it compares addresses.

use leptos::html::{Div, Table};
use leptos::prelude::*;

use crate::app::parts;
use crate::app::state::State;
use crate::app::widgets::same::{Same, ShownRow, ShownRows, shown};
use crate::app::widgets::{entry, figure};
use crate::job::{Job, SetupId};
use crate::questions::Source;
use crate::sheet::{Cell, EntryKind, Row};

/// The rows that `make` answers, followed at every keystroke.
pub(super) fn follow(state: State, make: impl Fn(Source<'_>) -> Vec<Row> + Send + Sync + 'static) -> Memo<ShownRows> {
    Memo::new(move |before: Option<&ShownRows>| state.with_source(|source| shown(before, &super::said_rows(make(source), source))))
}

type RowMemo = Memo<Option<Same<ShownRow>>>;
type CellMemo = Memo<Option<Same<Cell>>>;

/// What any cell of a row has beside its lines.
#[derive(Clone, Copy, PartialEq)]
struct Has {
    entries: bool,
    offers: bool,
}

impl Has {
    fn of(row: &ShownRow) -> Self {
        Self { entries: row.cells.iter().any(|cell| !cell.entries.is_empty()), offers: row.cells.iter().any(|cell| cell.offer.is_some()) }
    }
}

/// The table. Its rows are made anew when setups come, go or change places, so that a cell knows its column for good.
#[component]
pub fn Rows(
    /// What stands in it.
    rows: Memo<ShownRows>,
    /// Its name on the page.
    name: &'static str,
) -> impl IntoView {
    let state = State::here();
    let table = NodeRef::<Table>::new();
    figure::follow_asked(state, table);
    let keys = Memo::new(move |_| rows.with(|rows| rows.iter().map(|row| row.key.clone()).collect::<Vec<_>>()));
    let body = move || {
        let columns = state.setup_ids();
        let row = move |key: String| {
            let row = Memo::new(move |_| rows.with(|rows| rows.iter().find(|row| row.key == key).cloned()));
            table_row(state, row, columns.clone())
        };
        view! { <For each=move || keys.get() key=Clone::clone children=row/> }
    };
    let class = move || format!("rows rows--{} rows--{name}", state.setup_ids().len());
    view! {
        <table class=class node_ref=table on:click=move |event| figure::press(state, &event) on:keydown=|event| figure::step(&event)>
            <TableHead/>
            <tbody>{body}</tbody>
        </table>
    }
}

/// The setups' letters and names above a table, for those who listen; whoever sees them has the heads.
#[component]
fn TableHead() -> impl IntoView {
    let state = State::here();
    let heading = move |id: SetupId| {
        let letter = move || Job::letter(state.column_of(id)).to_string();
        view! { <th scope="col"><span class="unseen">{letter}" "{move || state.name_of(id)}</span></th> }
    };
    view! {
        <thead class="rows__head">
            <tr>
                <th scope="col" class="rows__label"><span class="unseen">"Figure"</span></th>
                <For each=move || state.setup_ids() key=|id| *id children=heading/>
            </tr>
        </thead>
    }
}

fn table_row(state: State, row: RowMemo, columns: Vec<SetupId>) -> AnyView {
    let has = Memo::new(move |_| row.with(|row| row.as_deref().map_or(Has { entries: false, offers: false }, Has::of)));
    let many = Memo::new(move |_| row.with(|row| row.as_ref().map_or(0, |row| row.cells.len())));
    let ids = columns.clone();
    let cells = move || {
        // A row of the bench has one cell, whatever setups there are.
        let many = many.get();
        let span = (many == 1 && ids.len() > 1).then_some(ids.len());
        ids.iter().take(many).enumerate().map(|(column, id)| table_cell(*id, column, row, has, span)).collect_view()
    };
    view! {
        <tr>
            <th scope="row">{move || row.with(|row| row.as_ref().map(|row| row.label.clone()))}</th>
            {cells}
        </tr>
        {working(state, row, columns)}
    }
    .into_any()
}

/// The figure of the row that was pressed: how it came about, and what would make it so.
fn working(state: State, row: RowMemo, columns: Vec<SetupId>) -> impl IntoView {
    let many = columns.len();
    let asked = Memo::new(move |_| {
        let (id, key) = state.view.asked.get()?;
        let column = columns.iter().position(|each| *each == id)?;
        let holds = |cell: &Same<Cell>| figure::of_key(cell, &key).is_some();
        let is_here = row.with(|row| row.as_ref().and_then(|row| row.cells.get(column)).is_some_and(holds));
        is_here.then_some((id, column, key))
    });
    move || {
        asked.get().map(|(id, column, key)| {
            let cell = Memo::new(move |_| row.with(|row| row.as_ref().and_then(|row| row.cells.get(column).cloned())));
            view! { <tr class="card-row"><td colspan=(many + 1).to_string()>{parts::ANSWERS.show(move |answers| (answers.card)(state, id, key.clone(), cell))}</td></tr> }
        })
    }
}

fn table_cell(id: SetupId, column: usize, row: RowMemo, has: Memo<Has>, span: Option<usize>) -> AnyView {
    let cell: CellMemo = Memo::new(move |_| row.with(|row| row.as_ref().and_then(|row| row.cells.get(column).cloned())));
    let above = move || has.get().entries.then(|| typed(id, cell));
    let below = move || has.get().offers.then(|| offer(id, cell));
    let lines = NodeRef::<Div>::new();
    Effect::new(move || {
        if let Some(lines) = lines.get() {
            cell.with(|cell| figure::put(&lines, id, cell.as_deref()));
        }
    });
    let letter = Job::letter(column).to_ascii_lowercase();
    view! {
        <td class=format!("of--{letter}") colspan=span.map(|span| span.to_string())>
            <div class="cell">{above}<div class="cell__lines" node_ref=lines></div>{below}</div>
        </td>
    }
    .into_any()
}

/// A part that was found, and the setups that can take it.
fn offer(id: SetupId, cell: CellMemo) -> AnyView {
    let part = Memo::new(move |_| cell.with(|cell| cell.as_deref().and_then(|cell| cell.offer.clone())));
    (move || part.get().map(|part| parts::ANSWERS.add(move |answers| (answers.offer)(id, &part)))).into_any()
}

/// What is typed or chosen in a cell: kept while it is of the same kind, so that the focus stays in it.
fn typed(id: SetupId, cell: CellMemo) -> AnyView {
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
