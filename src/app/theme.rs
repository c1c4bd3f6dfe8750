//! Which theme the page shows: the system's, or the other one where the reader switched.

use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use super::device;
use crate::chart::{DARK, LIGHT, Theme};

/// The theme of the page; tracking it tells when colours change.
#[derive(Clone, Copy)]
pub struct ThemeSignal {
    switched: RwSignal<bool>,
    system_is_dark: RwSignal<bool>,
    fonts_are_there: RwSignal<bool>,
}

impl ThemeSignal {
    /// Follows the system.
    pub fn follow_system() -> Self {
        let fonts_are_there = RwSignal::new(false);
        device::when_fonts_are_there(move || fonts_are_there.set(true));
        let signal = Self { switched: RwSignal::new(false), system_is_dark: RwSignal::new(device::prefers_dark()), fonts_are_there };
        if let Some(query) = device::dark_query() {
            let changed = Closure::<dyn FnMut()>::new(move || signal.system_is_dark.set(device::prefers_dark()));
            let _ = query.add_event_listener_with_callback("change", changed.as_ref().unchecked_ref());
            changed.forget();
        }
        signal
    }

    /// Goes to the other theme.
    pub fn switch(self) {
        self.switched.update(|switched| *switched = !*switched);
        if let Some(root) = device::root() {
            let _ = root.set_attribute("data-theme", if self.is_dark() { "dark" } else { "light" });
        }
    }

    /// Makes whoever calls it follow the theme, and the faces, which a canvas does not follow by itself.
    pub fn track(self) {
        self.fonts_are_there.track();
        self.switched.track();
        self.system_is_dark.track();
    }

    /// The colours of the theme shown now.
    pub fn colours(self) -> Theme {
        if self.is_dark() { DARK } else { LIGHT }
    }

    fn is_dark(self) -> bool {
        self.switched.get_untracked() != self.system_is_dark.get_untracked()
    }
}
