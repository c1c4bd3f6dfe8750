//! The wishes as rows: what, between what, must or preference, and one more.

use leptos::html::Select;
use leptos::prelude::*;

use super::wished::Wished;
use crate::app::state::State;
use crate::app::widgets::TextField;
use crate::app::widgets::select::{layout_select, select};
use crate::job::inputs::wishes::Ends;
use crate::job::wishes::MOST_WISHES;
use crate::job::{Field, Layout, Wish, WishKind, WishText};

pub(super) fn list() -> impl IntoView {
    let state = State::here();
    let keys = move || state.job.with(|job| job.wishes.rows.iter().map(|wish| wish.kind).enumerate().collect::<Vec<_>>());
    view! {
        <ol class="wishes" aria-label="Wishes">
            <For each=keys key=|key| *key children=move |(row, kind)| wish_row(state, row, kind)/>
        </ol>
        {more(state)}
    }
}

fn wish_row(state: State, row: usize, kind: WishKind) -> impl IntoView {
    let name = move || format!("Wish {}: {}", row + 1, state.say(kind.about().words));
    view! {
        <li class="wish" aria-label=name>
            <span class="wish__what">{format!("{}. ", row + 1)}{move || state.say(kind.about().words)}</span>
            <span class="wish__fields">{fields(state, row, kind)}</span>
            <span class="wish__weight">
                {strength(state, row)}
                <button type="button" class="btn btn--small" aria-label=move || format!("Remove wish {}", row + 1)
                    on:click=move |_| state.change(move |job| { if row < job.wishes.rows.len() { job.wishes.rows.remove(row); } })>"Remove"</button>
            </span>
        </li>
    }
}

/// What is typed for it: the speed, distance or gear it is asked at, and the ends of its range.
fn fields(state: State, row: usize, kind: WishKind) -> AnyView {
    if kind == WishKind::Layout {
        return layouts(state, row).into_any();
    }
    let about = kind.about();
    let ends: &[WishText] = match about.ends {
        Ends::Neither => &[],
        Ends::Least => &[WishText::Least],
        Ends::Greatest => &[WishText::Greatest],
        Ends::Both => &[WishText::Least, WishText::Greatest],
    };
    let texts = about.at.map(|_| WishText::At).into_iter().chain(ends.iter().copied());
    texts.map(|text| text_field(row, text)).collect_view().into_any()
}

fn text_field(row: usize, text: WishText) -> AnyView {
    let problem = Wished::here().problem_of(row, text);
    view! { <TextField field=Field::Wish(row, text) visible_label=true problem/> }.into_any()
}

fn layouts(state: State, row: usize) -> impl IntoView {
    let now = move || state.job.with(|job| job.wishes.rows.get(row).map(|wish| wish.layout)).unwrap_or_default();
    let choose = move |layout: Layout| {
        state.change(move |job| {
            if let Some(wish) = job.wishes.rows.get_mut(row) {
                wish.layout = layout;
            }
        });
    };
    layout_select(format!("Layout of wish {}", row + 1), now, choose)
}

/// Must or preference, and how much that counts.
fn strength(state: State, row: usize) -> impl IntoView {
    let is_must = Memo::new(move |_| state.job.with(|job| job.wishes.rows.get(row).is_some_and(|wish| wish.must)));
    let choose = move |at: usize| {
        state.change(move |job| {
            if let Some(wish) = job.wishes.rows.get_mut(row) {
                wish.must = at == 0;
            }
        });
    };
    let weight = move || (!is_must.get()).then(|| text_field(row, WishText::Weight));
    view! {
        {select(format!("How much wish {} matters", row + 1), &["must be", "wished"], move || usize::from(!is_must.get()), choose)}
        {weight}
    }
}

/// One more wish.
fn more(state: State) -> impl IntoView {
    let full = move || state.job.with(|job| job.wishes.rows.len() >= MOST_WISHES);
    let list = NodeRef::<Select>::new();
    let add = move |event: web_sys::Event| {
        let at: Option<usize> = event_target_value(&event).parse().ok();
        // Back to its first line, so that the same kind can be chosen twice.
        if let Some(list) = list.get() {
            list.set_value("");
        }
        if let Some(kind) = at.and_then(|at| WishKind::ALL.get(at).copied()) {
            state.change(move |job| {
                let wish = Wish::new(kind, job.units);
                job.wishes.rows.push(wish);
            });
        }
    };
    let option = move |(at, kind): (usize, &WishKind)| {
        let kind = *kind;
        view! { <option value=at.to_string()>{move || state.say(kind.about().words)}</option> }
    };
    view! {
        <p class="wishes__more">
            <select class="select" id="add-wish" aria-label="Add a wish" node_ref=list disabled=full on:change=add>
                <option value="">"Add a wish …"</option>
                {WishKind::ALL.iter().enumerate().map(option).collect_view()}
            </select>
            <span class="words">{move || {
                if full() {
                    format!("{MOST_WISHES} wishes are as many as a search takes.")
                } else {
                    "The same figure in both fields asks for as near to it as can be.".into()
                }
            }}</span>
        </p>
    }
}
