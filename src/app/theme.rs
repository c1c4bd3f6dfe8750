//! Which theme the page shows: the system's, or the other one where the reader switched.

use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use super::device;
use crate::chart::{DARK, LIGHT, Theme};

/// The theme of the page; tracking it tells when colours change.
#[derive(Clone, Copy)]
pub struct ThemeSignal {
    /// Whether the reader chose the dark theme or the light one, where that is not the system's.
    chose_dark: RwSignal<Option<bool>>,
    system_is_dark: RwSignal<bool>,
    fonts_are_there: RwSignal<bool>,
}

impl ThemeSignal {
    /// Follows the system.
    pub fn follow_system() -> Self {
        let fonts_are_there = RwSignal::new(false);
        device::when_fonts_are_there(move || fonts_are_there.set(true));
        let signal = Self { chose_dark: RwSignal::new(None), system_is_dark: RwSignal::new(device::prefers_dark()), fonts_are_there };
        if let Some(query) = device::dark_query() {
            let changed = Closure::<dyn FnMut()>::new(move || signal.system_is_dark.set(device::prefers_dark()));
            let _ = query.add_event_listener_with_callback("change", changed.as_ref().unchecked_ref());
            changed.forget();
        }
        signal
    }

    /// Goes to the other theme, and back to following the system where that is the system's.
    pub fn switch(self) {
        let dark = !self.is_dark();
        let chosen = (dark != self.system_is_dark.get_untracked()).then_some(dark);
        self.chose_dark.set(chosen);
        if let Some(root) = device::root() {
            let _ = match chosen {
                Some(dark) => root.set_attribute("data-theme", if dark { "dark" } else { "light" }),
                None => root.remove_attribute("data-theme"),
            };
        }
    }

    /// Makes whoever calls it follow the theme, and the faces, which a canvas does not follow by itself.
    pub fn track(self) {
        self.fonts_are_there.track();
        self.chose_dark.track();
        self.system_is_dark.track();
    }

    /// The colours of the theme shown now.
    pub fn colours(self) -> Theme {
        if self.is_dark() { DARK } else { LIGHT }
    }

    fn is_dark(self) -> bool {
        self.chose_dark.get_untracked().unwrap_or_else(|| self.system_is_dark.get_untracked())
    }
}
