//! The few things everything on the page is built of.

pub mod chart;
pub mod checklist;
pub mod choice;
pub mod entry;
pub mod field;
pub mod figure;
pub mod menu;
pub mod part;
pub mod pointer;
pub mod same;
pub mod select;
pub mod shape;
pub mod teeth;
pub mod theme;
pub mod ticks;

pub use chart::Chart;
pub use checklist::Checklist;
pub use choice::Choice;
pub use field::{TextArea, TextField};
pub use menu::Menu;
pub use part::PartField;
pub use select::SelectField;
pub use shape::shape;
pub use teeth::Teeth;
pub use theme::ThemeSwitch;
pub use ticks::TickGroups;

/// Selects the whole of a field that was gone into: what is typed next replaces it.
#[expect(clippy::needless_pass_by_value, reason = "a listener is given its event")]
pub fn select_text(event: web_sys::FocusEvent) {
    leptos::prelude::event_target::<web_sys::HtmlInputElement>(&event).select();
}
