//! The section list: where one is, and which setups have a caution where.

use leptos::prelude::*;

use super::device;
use super::state::State;
use crate::job::Job;

/// The list of sections with the letters of the setups that have a caution there.
#[component]
pub fn List() -> impl IntoView {
    let state = State::here();
    let entries = Memo::new(move |_| {
        state.sheet.with(|sheet| {
            sheet
                .sections
                .iter()
                .map(|section| {
                    let columns = crate::order::index(section.cautions().map(|(column, _, _)| (column, ())));
                    (section.id, section.title.clone(), columns.into_keys().map(Job::letter).collect::<Vec<_>>())
                })
                .collect::<Vec<_>>()
        })
    });
    let current = device::section_in_view();
    view! {
        <nav class="list" aria-label="Sections">
            <ul>
                <For each=move || entries.get() key=Clone::clone let:entry>
                    <li>
                        <a href=format!("#{}", entry.0) aria-current=move || current.with(|current| current == entry.0).then_some("true")>
                            <span>{entry.1}</span>
                            {flag(&entry.2)}
                        </a>
                    </li>
                </For>
            </ul>
        </nav>
    }
}

fn flag(letters: &[char]) -> Option<impl IntoView + use<>> {
    let shown = letters.iter().map(char::to_string).collect::<Vec<_>>().join(" ");
    (!shown.is_empty()).then(|| {
        view! {
            <span class="list__flag"><span aria-hidden="true">"⚠ "</span><span class="unseen">"caution in setup "</span>{shown}</span>
        }
    })
}
