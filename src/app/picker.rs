//! The gear sets of the catalogue, to pick one for a setup.
use leptos::prelude::*;
/// The list, where one is being picked.
#[component]
pub fn Picker() -> impl IntoView {}
