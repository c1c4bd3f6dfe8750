//! Find a setup: the wishes, the search that goes through the catalogue, its results as a list and a picture, and gear sets to be made.

mod design;
mod results;
mod runner;
mod scatter;
mod wishes;

use leptos::prelude::*;

pub(super) use runner::Runner;

/// Everything above the rows.
pub(super) fn picture() -> impl IntoView {
    let runner = Runner::start();
    view! {
        <div class="find">
            {wishes::list()}
            {results::progress(runner)}
            {scatter::picture(runner)}
            {results::list(runner)}
            {design::panel()}
            <h3 class="find__head">"How the setups on the sheet meet the wishes"</h3>
        </div>
    }
}
