//! A button that opens a few acts below it; Escape, a press elsewhere or moving on closes it.

use leptos::html::Div;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::app::device;

/// The button and what it opens.
#[component]
pub fn Menu(
    /// What stands on the button.
    #[prop(into)]
    words: Signal<String>,
    /// What it is called, for those who do not see it; the words where left out.
    #[prop(optional, into)]
    label: Option<Signal<String>>,
    /// The button's name on the page.
    #[prop(into)]
    id: String,
    /// The class of the button.
    #[prop(optional)]
    class: &'static str,
    /// What it opens, made when it is opened; the signal closes it.
    open: impl Fn(RwSignal<bool>) -> AnyView + Send + Sync + 'static,
) -> impl IntoView {
    let is_open = RwSignal::new(false);
    let around = NodeRef::<Div>::new();
    let button = id.clone();
    let key = move |event: web_sys::KeyboardEvent| {
        if event.key() == "Escape" && is_open.get_untracked() {
            event.stop_propagation();
            is_open.set(false);
            device::focus(&button);
        }
    };
    let left = move |event: web_sys::FocusEvent| {
        let to = event.related_target().and_then(|to| to.dyn_into::<web_sys::Node>().ok());
        let is_inside = to.is_some_and(|to| around.get_untracked().is_some_and(|around| around.contains(Some(&to))));
        if !is_inside {
            is_open.set(false);
        }
    };
    view! {
        <div class="menu" node_ref=around on:keydown=key on:focusout=left>
            <button type="button" class=format!("btn {class}") id=id aria-expanded=move || is_open.get().to_string()
                aria-label=move || label.map(|label| label.get()) on:click=move |_| is_open.update(|open| *open = !*open)>
                {move || words.get()}
            </button>
            {move || is_open.get().then(|| view! { <div class="menu__list" tabindex="-1">{open(is_open)}</div> })}
        </div>
    }
}
