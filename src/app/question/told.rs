//! A picture in other forms: in sentences, and as the figures behind it.

use leptos::prelude::*;

use crate::app::state::State;
use crate::app::widgets::chart::Shown;

/// The same facts in sentences.
pub(in crate::app) fn words(drawn: Memo<Option<Shown>>) -> AnyView {
    let state = State::here();
    let lines = move || drawn.with(|shown| shown.as_ref().map(|shown| shown.picture().describe()).unwrap_or_default());
    view! { <ul class="picture__words">{move || lines().into_iter().map(|line| view! { <li>{state.say(&line)}</li> }).collect_view()}</ul> }
        .into_any()
}

/// The figures behind the picture.
pub(in crate::app) fn table(drawn: Memo<Option<Shown>>) -> AnyView {
    let table = Memo::new(move |_| drawn.with(|shown| shown.as_ref().map(|shown| shown.picture().table())));
    let head = |head: &String| view! { <th scope="col">{head.replace('_', " ")}</th> };
    let row = |row: &Vec<String>| view! { <tr>{row.iter().map(|cell| view! { <td>{cell.clone()}</td> }).collect_view()}</tr> };
    view! {
        <div class="picture__table" tabindex="0" role="group" aria-label="The figures behind the picture">
            {move || table.with(|table| table.as_ref().map(|table| view! {
                <table>
                    <thead><tr>{table.heads.iter().map(head).collect_view()}</tr></thead>
                    <tbody>{table.rows.iter().map(row).collect_view()}</tbody>
                </table>
            }))}
        </div>
    }
    .into_any()
}
