//! The sections of the sheet: a picture or two on top, then the rows.

mod bench;
mod car;
mod catalogue;
mod find;
pub mod gears;
mod inside;
mod pull;
mod road;
mod speedo;

use leptos::prelude::*;

use super::state::State;
use super::widgets::Rows;

/// Every section, in order.
#[component]
pub fn Sections() -> impl IntoView {
    view! {
        <Section id="gears" controls=ViewFn::default() picture=gears::picture/>
        <Section id="road" controls=road::controls picture=road::picture/>
        <Section id="pull" controls=ViewFn::default() picture=pull::picture/>
        <Section id="inside" controls=inside::controls picture=inside::picture/>
        <Section id="speedometer" controls=speedo::controls picture=speedo::picture/>
        <Section id="bench" controls=bench::controls picture=bench::picture/>
        <Section id="find" controls=ViewFn::default() picture=find::picture/>
        <Section id="catalogue" controls=ViewFn::default() picture=catalogue::picture/>
    }
}

/// One section: its title and question, its controls, its picture, its rows.
#[component]
fn Section(
    /// Its name in the sheet.
    id: &'static str,
    /// What is typed for all setups.
    #[prop(into)]
    controls: ViewFn,
    /// What is drawn above the rows.
    #[prop(into)]
    picture: ViewFn,
) -> impl IntoView {
    let state = State::here();
    let of = move |take: fn(&crate::sheet::Section) -> &String| {
        let found = state.sheet.with(|sheet| sheet.sections.iter().find(|section| section.id == id).map(|section| take(section).clone()));
        found.or_else(|| matches!(id, "bench" | "catalogue").then(|| state.say(&crate::problem::capital(id))))
    };
    let has_rows =
        Memo::new(move |_| state.sheet.with(|sheet| sheet.sections.iter().any(|section| section.id == id && !section.rows.is_empty())));
    view! {
        <section class="section" id=id aria-labelledby=format!("{id}-title")>
            <div class="section__top">
                <h2 id=format!("{id}-title")>{move || of(|section| &section.title)}</h2>
                <span class="section__ask">{move || of(|section| &section.ask)}</span>
                <div class="section__controls">{controls.run()}</div>
            </div>
            {picture.run()}
            <Show when=move || has_rows.get()><Rows section=id/></Show>
        </section>
    }
}
