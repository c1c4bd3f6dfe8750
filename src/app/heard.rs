//! What changed, for those who listen: once the keys rest, the row in short of every setup whose answers moved.

use leptos::prelude::*;

use super::device;
use super::state::State;
use crate::job::Job;
use crate::sheet::export::cell_text;

/// How long the sheet must rest before it is said, in milliseconds.
const REST: u32 = 900;

/// The region that is read out, unseen.
#[component]
pub fn Heard() -> impl IntoView {
    let state = State::here();
    let said = RwSignal::new(String::new());
    let short = Memo::new(move |_| state.sheet.with(|sheet| sheet.short.cells.iter().map(cell_text).collect::<Vec<_>>()));
    let before = StoredValue::new(short.get_untracked());
    let times = StoredValue::new(0_u32);
    Effect::new(move |is_later: Option<()>| {
        short.track();
        if is_later.is_none() {
            return;
        }
        times.update_value(|times| *times = times.wrapping_add(1));
        let asked = times.get_value();
        device::after(REST, move || {
            if times.get_value() == asked {
                said.set(short.with_untracked(|now| before.with_value(|before| changes(before, now))));
                before.set_value(short.get_untracked());
            }
        });
    });
    view! { <p class="unseen" role="status" id="heard">{said}</p> }
}

/// The cells that changed, each with its letter.
fn changes(before: &[String], now: &[String]) -> String {
    let is_changed = |(column, text): &(usize, &String)| before.get(*column) != Some(*text);
    let changed = now.iter().enumerate().filter(is_changed);
    changed.map(|(column, text)| format!("Setup {}: {text}.", Job::letter(column))).collect::<Vec<_>>().join(" ")
}
