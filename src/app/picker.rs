//! The gear sets of the catalogue, to pick one for a setup by hand or by keys, or to keep the setup's counts as one of the shop's own.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::state::State;
use super::widgets::shape;
use super::{device, parts};
use crate::catalogue::case::fit;
use crate::catalogue::search::Query;
use crate::catalogue::{Column, Entry, PartKind};
use crate::job::{Gearbox, SetupId};
use crate::questions::case;
use crate::sheet::catalogue::ratios;

/// How many gear sets are shown at once.
const SHOWN: usize = 60;

/// The list, where a gear set is being picked.
#[component]
pub fn Picker() -> impl IntoView {
    let state = State::here();
    view! { {move || state.view.picking.get().map(|setup| parts::DESK.show(move |desk| (desk.picker)(setup)))} }
}

pub(super) fn list(setup: SetupId) -> AnyView {
    let state = State::here();
    let sought = RwSignal::new(String::new());
    let shown = RwSignal::new(SHOWN);
    let query = Memo::new(move |_| sought.with(|sought| Query::read(sought)));
    let found = Memo::new(move |_| query.with(|query| state.shop.offered().answering(PartKind::GearSet, query, shown.get(), None)));
    let counted = move || {
        let [many, of] = found.with(|found| [found.many, found.of]);
        let understood = query.with(Query::understood).map_or_else(String::new, |understood| format!(": {understood}"));
        format!("{many} of {of}{understood}")
    };
    let nothing = move || {
        if found.with(|found| found.of) == 0 {
            "There is no gear set on your shelf. Add one under Shelf, or turn the demo parts on there."
        } else {
            "No gear set fits these words. Try a maker, a number of speeds, or one tooth count."
        }
    };
    let letter = move || crate::job::Job::letter(state.column_of(setup));
    let left = move || found.with(|found| found.many.saturating_sub(found.entries.len()));
    let field = NodeRef::<leptos::html::Input>::new();
    Effect::new(move || {
        if let Some(field) = field.get() {
            let _ = field.focus();
        }
    });
    view! {
        <section class="picker" id="picker" on:keydown=move |event| move_focus(state, setup, &event) aria-label=move || format!("Gear sets for setup {}", letter())>
            <div class="picker__top">
                <label for="picker-search">{move || format!("Gear set for setup {}", letter())}</label>
                <input class="picker__search" id="picker-search" node_ref=field type="search" autocomplete="off"
                    placeholder="name, case, 2.47, sum 55, first near 2.5" on:input=move |event| {
                        shown.set(SHOWN);
                        sought.set(event_target_value(&event));
                    }/>
                <span class="words" role="status">{counted}</span>
                <button type="button" class="btn btn--small" on:click=move |_| keep_as_own(state, setup)>{move || state.say("Keep this setup’s counts in the catalogue")}</button>
                <button type="button" class="btn btn--small" on:click=move |_| close(state, setup)>"Close"</button>
            </div>
            <p class="words">"Enter takes the first; arrow keys go through the list; Escape closes. Counted teeth are typed in Gears below."</p>
            <ul class="picker__list" id="picker-list">
                <For each=move || found.with(|found| found.entries.clone()) key=|set| set.id.clone() children=move |set| view! { <One setup set/> }/>
            </ul>
            <button type="button" class="btn btn--small" hidden=move || left() == 0 on:click=move |_| shown.update(|shown| *shown += SHOWN)>
                {move || format!("Show more of {} others", left())}
            </button>
            {move || found.with(|found| found.many == 0).then(|| view! { <p>{nothing}</p> })}
        </section>
    }
    .into_any()
}

#[component]
fn One(setup: SetupId, set: Entry) -> impl IntoView {
    let state = State::here();
    let (drawn, ratios) = (shape(&set), ratios_text(&set));
    let whose = if set.own { "your own" } else { "invented demo" };
    let fit = untrack(|| state.with_source(case::of_first)).map(|first| fit(&set.case_needs(), &first).words('A')).unwrap_or_default();
    let about = [fit.as_str(), set.text(Column::Note), if set.in_stock() { "in stock" } else { "" }, whose];
    let about = about.into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" · ");
    let name = set.title().to_owned();
    let picked = name.clone();
    let current = move || state.job.with(|job| job.setup(setup).is_some_and(|setup| setup.gearbox.name == picked)).to_string();
    let pick = move |_| {
        let gearbox = Gearbox::picked(&set);
        close(state, setup);
        state.change(move |job| {
            if let Some(setup) = job.setup_mut(setup) {
                setup.gearbox = gearbox;
            }
        });
    };
    view! {
        <li>
            <button type="button" class="picker__one" aria-current=current on:click=pick>
                <span class="picker__name">{drawn}" "{name}</span>
                <span class="picker__ratios">{ratios}</span>
                <span class="picker__note">{move || state.say(&about)}</span>
            </button>
        </li>
    }
}

fn ratios_text(set: &Entry) -> String {
    ratios(set).unwrap_or_else(|| "teeth not readable".into())
}

/// Closes the list and goes back to the button it was opened with.
fn close(state: State, setup: SetupId) {
    state.view.picking.set(None);
    device::focus(&format!("s{}-gearbox", setup.0));
}

/// Arrow keys go from the search through the list and back, Home and End to its ends; Escape closes it.
fn move_focus(state: State, setup: SetupId, event: &web_sys::KeyboardEvent) {
    let key = event.key();
    if key == "Escape" {
        event.prevent_default();
        event.stop_propagation();
        close(state, setup);
        return;
    }
    let Some(document) = web_sys::window().and_then(|window| window.document()) else { return };
    let Ok(sets) = document.query_selector_all("#picker-list .picker__one") else { return };
    let active = document.active_element();
    let now = (0..sets.length()).find(|at| sets.get(*at).as_ref() == active.as_ref().map(AsRef::as_ref));
    if key == "Enter" && now.is_none() {
        // One hit is what was meant; of several the first, as the list shows it.
        if let Some(first) = sets.get(0).and_then(|node| node.dyn_into::<web_sys::HtmlElement>().ok()) {
            event.prevent_default();
            first.click();
        }
        return;
    }
    // Inside the search, Home and End belong to its text.
    let to = match (key.as_str(), now) {
        ("ArrowDown", None) | ("Home", Some(_)) => Some(0),
        ("ArrowDown", Some(at)) => Some(at.saturating_add(1).min(sets.length().saturating_sub(1))),
        ("ArrowUp", Some(at)) => at.checked_sub(1),
        ("End", Some(_)) => sets.length().checked_sub(1),
        _ => return,
    };
    event.prevent_default();
    let target = to.and_then(|to| sets.get(to));
    match target.and_then(|node| node.dyn_into::<web_sys::HtmlElement>().ok()) {
        Some(set) => drop(set.focus()),
        None => device::focus("picker-search"),
    }
}

/// Puts the counts of a setup on the shop's own shelf and says under which name.
fn keep_as_own(state: State, setup: SetupId) {
    let Some(mut set) = state.job.with_untracked(|job| job.setup(setup).map(|setup| setup.gearbox.as_set())) else { return };
    if set.title().trim().is_empty() {
        set.set(Column::Name, "Counted by hand");
    }
    if let Some(name) = state.shop.add_set(set) {
        state.tell(super::notices::Notice::plain(format!("“{name}” is in the catalogue now, as one of your own.")));
    }
}
