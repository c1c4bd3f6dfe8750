//! The gear sets of the catalogue, to pick one for a setup, or to keep the setup's counts as one of the shop's own.

use leptos::prelude::*;

use super::state::State;
use crate::catalogue::{Entry, GearSet};
use crate::gearing::Ladder;
use crate::gearing::teeth::decimal;
use crate::job::{Gearbox, SetupId};
use crate::units::number;

/// The list, where a gear set is being picked.
#[component]
pub fn Picker() -> impl IntoView {
    let state = State::here();
    view! { {move || state.picking.get().map(|setup| view! { <List setup/> })} }
}

#[component]
fn List(setup: SetupId) -> impl IntoView {
    let state = State::here();
    let sought = RwSignal::new(String::new());
    let found = Memo::new(move |_| {
        let sought = sought.get().to_lowercase();
        state.catalogue.with(|catalogue| catalogue.gear_sets.all().filter(|set| matches(set, &sought)).cloned().collect::<Vec<_>>())
    });
    let letter = move || crate::job::Job::letter(state.column_of(setup));
    let field = NodeRef::<leptos::html::Input>::new();
    Effect::new(move || {
        if let Some(field) = field.get() {
            let _ = field.focus();
        }
    });
    view! {
        <section class="picker" aria-label=move || format!("Gear sets for setup {}", letter())>
            <div class="picker__top">
                <label for="picker-search">{move || format!("Gear set for setup {}", letter())}</label>
                <input class="picker__search" id="picker-search" node_ref=field type="search" autocomplete="off"
                    placeholder="name, maker, speeds, ratio or tooth count" on:input=move |event| sought.set(event_target_value(&event))/>
                <span class="words" role="status">{move || format!("{} of {}", found.with(Vec::len), state.catalogue.with(|all| all.gear_sets.len()))}</span>
                <button type="button" class="btn btn--small" on:click=move |_| keep_as_own(state, setup)>"Keep this setup’s counts in the catalogue"</button>
                <button type="button" class="btn btn--small" on:click=move |_| state.picking.set(None)>"Close"</button>
            </div>
            <p class="words">"Or type counted teeth into the rows of Gears below. Gear sets without “your own” beside them are invented demo data."</p>
            <ul class="picker__list" id="picker-list">
                <For each=move || found.get() key=|set| set.id.clone() children=move |set| view! { <One setup set/> }/>
            </ul>
            {move || found.with(Vec::is_empty).then(|| view! { <p>"No gear set fits these words. Try a maker, a number of speeds, or one tooth count."</p> })}
        </section>
    }
}

#[component]
fn One(setup: SetupId, set: GearSet) -> impl IntoView {
    let state = State::here();
    let ratios = ratios_text(&set);
    let about = [set.note.as_str(), if set.in_stock { "in stock" } else { "" }, if set.own { "your own" } else { "" }];
    let about = about.into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" · ");
    let name = set.name.clone();
    let picked = name.clone();
    let current = move || state.job.with(|job| job.setup(setup).is_some_and(|setup| setup.gearbox.name == picked)).to_string();
    let pick = move |_| {
        let gearbox = Gearbox::picked(&set);
        state.picking.set(None);
        state.change(move |job| {
            if let Some(setup) = job.setup_mut(setup) {
                setup.gearbox = gearbox;
            }
        });
    };
    view! {
        <li>
            <button type="button" class="picker__one" aria-current=current on:click=pick>
                <span class="picker__name">{name}</span>
                <span class="picker__ratios">{ratios}</span>
                <span class="picker__note">{move || state.say(&about)}</span>
            </button>
        </li>
    }
}

/// Every word sought stands somewhere in the set's name, maker, note, ratios or counts.
fn matches(set: &GearSet, sought: &str) -> bool {
    let speeds = format!("{} speed {}-speed", set.gears.len(), set.gears.len());
    let text = [&set.name, &set.maker, &set.note, &set.constant, &set.gears.join(" "), &ratios_text(set), &speeds]
        .map(|text| text.to_lowercase())
        .join(" ");
    sought.split_whitespace().all(|word| text.contains(word))
}

fn ratios_text(set: &GearSet) -> String {
    let Ok(gearbox) = set.gearbox() else { return "counts need a look".into() };
    Ladder::new(gearbox.ratios()).ratios().iter().map(|ratio| number::show(decimal(*ratio), 2)).collect::<Vec<_>>().join("  ")
}

/// Puts the counts of a setup on the shop's own shelf and says under which name.
fn keep_as_own(state: State, setup: SetupId) {
    let Some(mut set) = state.job.with_untracked(|job| job.setup(setup).map(|setup| setup.gearbox.as_set())) else { return };
    if set.name.trim().is_empty() {
        set.name = "Counted by hand".into();
    }
    let added = state.catalogue.try_update(|catalogue| {
        let (shelf, id) = catalogue.gear_sets.add(set);
        catalogue.gear_sets = shelf;
        catalogue.gear_sets.get(&id).map(|set| set.label().to_owned())
    });
    if let Some(Some(name)) = added {
        state.notices.update(|notices| {
            notices.push(super::notices::Notice::plain(format!("“{name}” is in the catalogue now, as one of your own.")));
        });
    }
}
