//! Find a setup: the wishes, the search that goes through the catalogue, its results as a list and a picture, and gear sets to be made.

mod design;
mod results;
mod runner;
mod scatter;
mod wished;
mod wishes;

use leptos::prelude::*;

use super::state::State;
use runner::Runner;
use wished::Wished;

/// Wishes, search, results and designs.
pub(super) fn place() -> AnyView {
    provide_context(Wished::follow(State::here()));
    let runner = Runner::start();
    view! {
        <div class="find">
            {wishes::list()}
            {results::progress(runner)}
            {results::list(runner)}
            {scatter::picture(runner)}
            {design::panel()}
            <h3 class="find__head">"How the setups on the sheet meet the wishes"</h3>
        </div>
    }
    .into_any()
}
