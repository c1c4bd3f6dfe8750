//! Keys that work anywhere on the page: undo, redo, and the way out of whatever is open. In a text
//! that is not the job's the browser undoes.

use leptos::prelude::*;

use super::book::Panel;
use super::device;
use super::state::State;

/// Listens for the page's keys.
pub fn listen(state: State) {
    device::on_window("keydown", move |event: web_sys::KeyboardEvent| {
        let held = event.ctrl_key() || event.meta_key();
        let undoes = held && matches!(event.key().to_ascii_lowercase().as_str(), "z" | "y");
        if undoes && device::has_own_undo(&event) {
            return;
        }
        match (held, event.shift_key(), event.key().to_ascii_lowercase().as_str()) {
            (true, false, "z") => state.undo(),
            (true, true, "z") | (true, false, "y") => state.redo(),
            (false, _, "escape") => {
                state.view.asked.set(None);
                state.view.picking.set(None);
                state.close_panel();
                return;
            }
            (false, _, "?") if !device::is_typing(&event) => state.toggle(Panel::Keys),
            (false, back, "enter" | "tab") if device::step_down_the_column(&event, back) => {}
            _ => return,
        }
        event.prevent_default();
    });
}
