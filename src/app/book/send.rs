//! The open job handed over: a link that carries the whole of it, a file, or the figures of the sheet as a table.

use leptos::html::Input;
use leptos::prelude::*;

use crate::app::device;
use crate::app::state::State;
use crate::job::incoming;
use crate::job::link::{self, Carries};
use crate::problem::{Explain, capital};
use crate::questions::few_words;
use crate::sheet::export;

/// The ways to hand a job over.
#[component]
pub(super) fn Send() -> impl IntoView {
    let state = State::here();
    let carries = RwSignal::new(Carries::default());
    let made = Memo::new(move |_| {
        let fragment = state.job.with(|job| link::fragment(&carries.get().of(job)));
        fragment.map(|fragment| format!("{}{fragment}", device::address()))
    });
    let csv = move |_| {
        let text = state.job.with_untracked(|job| export::csv(job, &state.sheet_now()));
        let title = state.job.with_untracked(|job| job.title.clone());
        device::save_file(&incoming::file_name(&title, "csv"), "text/csv", &text);
    };
    view! {
        <FewWords/>
        <p>"The link holds the job as it is now. Nothing is sent to any server."</p>
        <div class="send__carries">
            <label><input type="checkbox" id="link-customer" on:change=move |event| carries.update(|all| all.customer = event_target_checked(&event))/>"with the customer’s name"</label>
            <label><input type="checkbox" id="link-notes" on:change=move |event| carries.update(|all| all.notes = event_target_checked(&event))/>"with notes and quote"</label>
            <span class="words" role="status" id="link-carries">{move || carries.get().words()}</span>
        </div>
        {move || match made.get() {
            Ok(link) => view! { <Link link/> }.into_any(),
            Err(why) => view! { <p class="send__refused" id="link-refused">{format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do()))}</p> }.into_any(),
        }}
        <div class="panel__acts">
            <button type="button" class="btn" id="save-file" on:click=move |_| state.save_as_file()>"Save the job as a file"</button>
            <button type="button" class="btn" id="save-csv" on:click=csv>"Save the figures as CSV"</button>
        </div>
        <p class="words">"The file holds everything, customer and notes too. It can be opened here again from Jobs, on this device or another."</p>
    }
}

/// The setup meant for the customer in a few lines, to be copied into a message or handed to the device's own way of sharing.
#[component]
fn FewWords() -> impl IntoView {
    let state = State::here();
    let text = Memo::new(move |_| state.with_source(few_words::text));
    let about = move || state.job.with(few_words::about).map_or_else(String::new, |letter| format!("A few words about setup {letter}"));
    let said = RwSignal::new("");
    let copy = move |_| {
        device::copy(text.get_untracked(), move |is_copied| {
            said.set(if is_copied {
                "Copied: paste it into a message."
            } else {
                "This browser does not let the page copy: mark the words and copy them."
            });
        });
    };
    let share = move |_| device::share(&text.get_untracked());
    view! {
        <label class="send__words"><span>{about}</span>
            <textarea class="field__input" id="few-words" readonly rows="8" prop:value=text></textarea>
        </label>
        <div class="panel__acts">
            <button type="button" class="btn" id="copy-words" on:click=copy>"Copy these words"</button>
            {device::shares().then(|| view! { <button type="button" class="btn" id="share-words" on:click=share>"Share these words"</button> })}
            <span class="words" role="status">{said}</span>
        </div>
    }
}

/// The link, to be copied by a press or by hand.
#[component]
fn Link(link: String) -> impl IntoView {
    let said = RwSignal::new("");
    let field = NodeRef::<Input>::new();
    let length = link.len();
    let text = link.clone();
    let copy = move |_| {
        device::copy(text.clone(), move |is_copied| {
            if is_copied {
                said.set("Copied: paste it into a message.");
            } else if let Some(field) = field.get_untracked() {
                let _ = field.focus();
                field.select();
                said.set("This browser does not let the page copy. The link is marked: copy it by hand.");
            }
        });
    };
    view! {
        <div class="send__link">
            <input type="text" class="field__input" id="link" readonly aria-label="The link" node_ref=field prop:value=link/>
            <button type="button" class="btn" id="copy-link" data-first="" on:click=copy>"Copy the link"</button>
        </div>
        <p class="words"><span role="status" id="copied">{said}</span>" "{length}" characters"</p>
    }
}
