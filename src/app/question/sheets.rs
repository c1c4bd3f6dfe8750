//! The sheets of a whole gear set as one file, from For the cutter and from a set that Find designed.

use leptos::prelude::*;

use crate::app::device;
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::job::{Job, SetupId};
use crate::problem::{Explain, capital};
use crate::questions::cutter::sheets::{self, Gearbox};

/// A button for each setup whose counts are known.
pub(super) fn of_setups(state: State) -> AnyView {
    let save = move |id: SetupId| {
        let known = untrack(|| {
            state.with_source(|source| {
                let setup = &source.setups.iter().find(|analysis| analysis.setup.id == id)?.setup;
                Some((setup.gearbox.clone()?, setup.name.clone()))
            })
        });
        match known {
            Some((gearbox, name)) => of_set(state, Some(id), &gearbox, &name),
            None => state.tell(Notice::caution("Type the tooth counts of this setup first.")),
        }
    };
    let button = move |id: SetupId| {
        let words = move || format!("Save the sheets of {}", Job::letter(state.column_of(id)));
        view! { <button type="button" class="btn" on:click=move |_| save(id)>{words}</button> }
    };
    view! {
        <p class="words">"A page for each gear, cut as the setup’s Teeth and bearings has it; material, tool and backlash as typed here."</p>
        <p class="question__acts"><For each=move || state.setup_ids() key=|id| *id children=button/></p>
    }
    .into_any()
}

/// Saves the sheets of a gear set cut as a setup's gears are, as A's where none is named; says what is missing.
pub(in crate::app) fn of_set(state: State, setup: Option<SetupId>, gearbox: &Gearbox, name: &str) {
    let made = untrack(|| {
        state.with_source(|source| {
            let found = source.setups.iter().find(|analysis| setup.is_none_or(|id| analysis.setup.id == id))?;
            Some(sheets::of_set(source, found, gearbox, name))
        })
    });
    match made {
        Some(Ok(page)) => device::save_file("gear-set-sheets.html", "text/html", &page),
        Some(Err(why)) => state.tell(Notice::caution(format!("{}: {}.", capital(&why.what()), why.what_to_do()))),
        None => {}
    }
}
