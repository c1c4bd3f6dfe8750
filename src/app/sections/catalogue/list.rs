//! The entries of a kind, the shop's own first.

use leptos::prelude::*;

use super::Desk;
use crate::app::state::State;
use crate::catalogue::Kind;
use crate::catalogue::desk::Line;

/// How many entries are shown at once.
const SHOWN: usize = 24;

/// The entries that fit what is sought.
pub(super) fn table(desk: Desk) -> impl IntoView {
    let state = State::here();
    let shown = RwSignal::new(SHOWN);
    let found = Memo::new(move |_| {
        let sought = desk.sought.get().to_lowercase();
        let fits = |line: &Line| sought.split_whitespace().all(|word| line.cells.iter().any(|cell| cell.to_lowercase().contains(word)));
        state.catalogue.with(|catalogue| catalogue.lines(desk.kind.get()).into_iter().filter(fits).collect::<Vec<_>>())
    });
    let rows = move || found.with(|found| found.iter().take(shown.get()).cloned().collect::<Vec<_>>());
    let left = move || found.with(Vec::len).saturating_sub(shown.get());
    view! {
        <ul class="shelf__list" id="shelf-list">
            <For each=rows key=Clone::clone children=move |line| row(desk, state, &line)/>
        </ul>
        <p class="words" role="status">{move || found.with(Vec::is_empty).then_some("Nothing on the shelf fits these words.")}</p>
        {move || (left() > 0).then(|| view! {
            <button type="button" class="btn btn--small" on:click=move |_| shown.update(|shown| *shown += 60)>{format!("Show more of {} others", left())}</button>
        })}
    }
}

fn row(desk: Desk, state: State, line: &Line) -> impl IntoView + use<> {
    let kind = desk.kind.get_untracked();
    let about = about(kind, &line.cells);
    let id = line.id.clone();
    let copy = move |_| {
        if let Ok(after) = state.catalogue.with_untracked(|catalogue| catalogue.copied(kind, &id)) {
            state.catalogue.set(after);
        }
    };
    let own = line.own.then(|| own_acts(desk, state, kind, line));
    view! {
        <li class="shelf__one" data-own=line.own.to_string()>
            <span class="shelf__name">{line.label.clone()}</span>
            <span class="shelf__about">{about}</span>
            <span class="words">{if line.own { "your own" } else { "invented demo" }}</span>
            <span class="shelf__do">
                {own}
                <button type="button" class="btn btn--small" aria-label=format!("Copy {}", line.label) on:click=copy>"Copy"</button>
            </span>
        </li>
    }
}

fn own_acts(desk: Desk, state: State, kind: Kind, line: &Line) -> impl IntoView + use<> {
    let (edited, gone) = (line.clone(), line.clone());
    let edit = move |_| desk.editing.set(Some((Some(edited.id.clone()), edited.cells.clone())));
    let delete = move |_| {
        let before = state.catalogue.get_untracked();
        if let Ok(after) = before.without(kind, &gone.id) {
            desk.before.set(Some((before, gone.label.clone())));
            state.catalogue.set(after);
        }
    };
    view! {
        <button type="button" class="btn btn--small" aria-label=format!("Change {}", line.label) on:click=edit>"Change"</button>
        <button type="button" class="btn btn--small" aria-label=format!("Delete {}", line.label) on:click=delete>"Delete"</button>
    }
}

/// The cells that tell an entry, without its id, its name and what is blank.
fn about(kind: Kind, cells: &[String]) -> String {
    let skipped = ["id", "name", "drive", "designation"];
    let told = kind.columns().iter().zip(cells).filter(|(column, cell)| !skipped.contains(column) && !cell.is_empty());
    let word = |(column, cell): (&&str, &String)| match *column {
        "in_stock" if cell == "yes" => Some("in stock".to_owned()),
        "in_stock" => None,
        "layout" => Some(cell.replace('-', " ")),
        _ => Some(cell.clone()),
    };
    told.filter_map(word).collect::<Vec<_>>().join(" · ")
}
