//! The photographs of a part or a step, beside it: small ones that are pressed to be seen large, and a way to take one more, which on a
//! phone opens the camera.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;

use super::album;
use crate::app::keep::Kept;
use crate::app::state::State;
use crate::job::photographs::Subject;

/// The photographs of a subject, and a way to take one more; nothing where nothing is kept of it.
pub(in crate::app) fn view(subject: Signal<Option<Subject>>, of: Signal<String>) -> AnyView {
    let state = State::here();
    let is_kept = move || !matches!(state.desk.kept.get(), Kept::Linked | Kept::Blocked);
    let all = album::names();
    let names = Memo::new(move |_| {
        let Some(subject) = subject.get() else { return Vec::new() };
        all.with(|names| names.iter().filter(|name| Subject::of(name).as_ref() == Some(&subject)).cloned().collect::<Vec<_>>())
    });
    let take = move |event: web_sys::Event| {
        let Some(input) = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok()) else { return };
        let (Some(file), Some(subject)) = (input.files().and_then(|files| files.get(0)), subject.get_untracked()) else { return };
        spawn_local(async move {
            album::take(state, subject, file).await;
            // The same file can be chosen again.
            input.set_value("");
        });
    };
    view! {
        <div class="photos">
            <For each=move || names.get() key=Clone::clone children=move |name| one(state, name, of)/>
            <Show when=is_kept>
                <label class="btn btn--bare btn--small photos__take">
                    <input type="file" class="unseen" accept="image/*" capture="environment" aria-label=move || format!("Photograph, {}", of.get()) on:change=take/>
                    <span aria-hidden="true">"Photograph"</span>
                </label>
            </Show>
        </div>
    }
    .into_any()
}

/// One photograph: pressed it is large, and can be removed and put back.
fn one(state: State, name: String, of: Signal<String>) -> impl IntoView {
    album::ask(&name);
    let all = album::shown();
    let address = {
        let name = name.clone();
        Memo::new(move |_| all.with(|shown| shown.iter().find(|one| one.name == name).map(|one| one.address.clone())))
    };
    let (is_large, gone) = (RwSignal::new(false), StoredValue::new_local(None::<web_sys::Blob>));
    let is_gone = RwSignal::new(false);
    let (removed, back, forgotten) = (name.clone(), name.clone(), name);
    let remove = move |_| {
        let name = removed.clone();
        spawn_local(async move {
            if let Some(picture) = album::remove(&name).await {
                gone.set_value(Some(picture));
                is_gone.set(true);
            }
        });
    };
    let put_back = move |_| {
        let Some(picture) = gone.get_value() else { return };
        is_gone.set(false);
        spawn_local(album::put_back(state, back.clone(), picture));
    };
    on_cleanup(move || {
        if is_gone.get_untracked() {
            album::forget(&forgotten);
        }
    });
    view! {
        <div class="photos__one" class:photos__one--large=move || is_large.get()>
            <button type="button" class="photos__look" hidden=move || is_gone.get() aria-pressed=move || is_large.get().to_string()
                aria-label=move || format!("Photograph of {}, large", of.get()) on:click=move |_| is_large.update(|is| *is = !*is)>
                {move || address.get().map(|address| view! { <img src=address alt=""/> })}
            </button>
            <Show when=move || is_large.get() && !is_gone.get()>
                <button type="button" class="btn btn--small" aria-label=move || format!("Delete the photograph of {}", of.get()) on:click=remove.clone()>"Delete"</button>
            </Show>
            <Show when=move || is_gone.get()>
                <span class="words">"Deleted"</span>
                <button type="button" class="btn btn--small" aria-label=move || format!("Undo, photograph of {}", of.get()) on:click=put_back.clone()>"Undo"</button>
            </Show>
        </div>
    }
}
