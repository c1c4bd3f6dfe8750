//! The rows of a section: a table whose columns are the setups, each cell repainted only when it changed.
//!
//! What is near the window follows every keystroke; what is far from it follows a moment after the typing pauses, so that a keystroke
//! pays for what is seen.

use leptos::prelude::*;

use super::{entry, figure};
use crate::app::device;
use crate::app::state::State;
use crate::job::{Job, SetupId};
use crate::sheet::{Cell, EntryKind, Figure, Piece, Row, Sheet};

/// The rows of one section.
#[component]
pub fn Rows(
    /// The section's name in the sheet.
    section: &'static str,
) -> impl IntoView {
    let table = NodeRef::<leptos::html::Table>::new();
    let rows = followed(section, device::near_window(table));
    let keys = Memo::new(move |_| rows.with(|rows| rows.iter().map(|row| row.key.clone()).collect::<Vec<_>>()));
    let row = move |key: String| {
        let row = Memo::new(move |_| rows.with(|rows| rows.iter().find(|row| row.key == key).cloned()));
        view! { <TableRow row/> }
    };
    view! {
        <table class="rows" node_ref=table>
            <TableHead section/>
            <tbody><For each=move || keys.get() key=Clone::clone children=row/></tbody>
        </table>
    }
}

/// How long the typing must pause before what is far from the window follows, in milliseconds.
const PAUSE_MS: u32 = 120;

/// The rows of a section: at once while they are near the window, else as soon as the typing pauses.
fn followed(section: &'static str, is_near: RwSignal<bool>) -> Memo<Vec<Row>> {
    let state = State::here();
    let caught_up = RwSignal::new(0_u32);
    let changes = StoredValue::new(0_u32);
    Effect::new(move || {
        state.sheet.track();
        if is_near.get_untracked() {
            return;
        }
        let change = changes.get_value().wrapping_add(1);
        changes.set_value(change);
        device::after(PAUSE_MS, move || {
            if changes.try_get_value() == Some(change) {
                caught_up.set(change);
            }
        });
    });
    Memo::new(move |_| {
        caught_up.track();
        let take = |sheet: &Sheet| rows(sheet, section).to_vec();
        if is_near.get() { state.sheet.with(take) } else { state.sheet.with_untracked(take) }
    })
}

/// The row in short, under the heads.
#[component]
pub fn ShortRow() -> impl IntoView {
    let state = State::here();
    let row = Memo::new(move |_| state.sheet.with(|sheet| Some(sheet.short.clone())));
    view! {
        <table class="rows rows--short">
            <TableHead section="short"/>
            <tbody><TableRow row/></tbody>
        </table>
    }
}

fn rows<'a>(sheet: &'a Sheet, section: &str) -> &'a [Row] {
    sheet.sections.iter().find(|each| each.id == section).map_or(&[], |section| &section.rows)
}

/// The setups' letters and names above a table: seen on paper, always there for those who listen.
#[component]
fn TableHead(section: &'static str) -> impl IntoView {
    let state = State::here();
    let heading = move |id: SetupId| {
        let column = move || state.column_of(id);
        let name = move || state.job.with(|job| job.setup(id).map(|setup| setup.name.clone()));
        view! { <th scope="col" class:off=move || !state.column_shown(column())><span class="unseen">{move || Job::letter(column()).to_string()}": "{name}</span></th> }
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

#[component]
fn TableRow(row: Memo<Option<Row>>) -> impl IntoView {
    let state = State::here();
    view! {
        <tr>
            <th scope="row">{move || row.with(|row| row.as_ref().map(|row| row.label.clone()))}</th>
            <For each=move || state.setup_ids() key=|id| *id children=move |id| view! { <TableCell id row/> }/>
        </tr>
    }
}

#[component]
fn TableCell(id: SetupId, row: Memo<Option<Row>>) -> impl IntoView {
    let state = State::here();
    let cell = Memo::new(move |_| {
        let column = state.column_of(id);
        row.with(|row| row.as_ref().and_then(|row| row.cells.get(column).cloned()).unwrap_or_default())
    });
    let kinds = Memo::new(move |_| cell.with(|cell| cell.entries.iter().map(|entry| entry.kind).collect::<Vec<EntryKind>>()));
    let made = move |kind: EntryKind| {
        cell.with_untracked(|cell| cell.entries.iter().find(|one| one.kind == kind).map(|one| entry::entry(id, one)))
    };
    view! {
        <td class:off=move || !state.column_shown(state.column_of(id))>
            <div class="cell">
                {move || cell.with(|cell| cell.lines.first().map(|line| shown_line(id, line)))}
                <For each=move || kinds.get() key=|kind| *kind children=made/>
                {move || cell.with(|cell| cell.lines.iter().skip(1).map(|line| view! { <div class="cell__rest">{shown_line(id, line)}</div> }).collect_view())}
                {move || cell.with(|cell| figure::working(state, id, &figures(cell)))}
            </div>
        </td>
    }
}

fn shown_line(id: SetupId, line: &[Piece]) -> impl IntoView + use<> {
    view! { <div class="cell__line">{line.iter().map(|piece| figure::piece(id, piece)).collect_view()}</div> }
}

fn figures(cell: &Cell) -> Vec<&Figure> {
    cell.pieces().filter_map(|piece| if let Piece::Figure(figure) = piece { Some(figure.as_ref()) } else { None }).collect()
}
