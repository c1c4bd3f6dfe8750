//! A gear set to be made: tooth counts for a centre distance and a ladder, each of which can go into the shop's catalogue.

use leptos::prelude::*;

use super::wished::Wished;
use crate::app::notices::Notice;
use crate::app::parts;
use crate::app::state::State;
use crate::app::widgets::TextField;
use crate::app::widgets::select::layout_select;
use crate::finder::design::{Design, Designs, solve_design};
use crate::job::{DesignText, Field, Layout};
use crate::questions::find::designs::{ToldGear, to_be_made, told};

/// How many designs are shown.
const SHOWN: usize = 5;

/// The fields, and the designs once it is opened.
pub(super) fn panel() -> impl IntoView {
    let state = State::here();
    let is_open = RwSignal::new(false);
    let brief = Wished::here().brief;
    let designs = Memo::new(move |_| is_open.get().then(|| brief.with(|brief| brief.as_ref().ok().map(solve_design))).flatten());
    let toggle = move |event: web_sys::Event| is_open.set(event_target::<web_sys::Element>(&event).has_attribute("open"));
    view! {
        <details class="design" id="design" on:toggle=toggle>
            <summary>"Design a gear set that does not exist yet"</summary>
            <div class="design__fields">
                {field(DesignText::Gears)}
                {field(DesignText::First)}
                {field(DesignText::Top)}
                {field(DesignText::Growth)}
                {field(DesignText::Sum)}
                {field(DesignText::LeastTeeth)}
                {field(DesignText::MostTeeth)}
                {layout(state)}
            </div>
            <p class="words">"1 makes every step alike (geometric); above 1 the steps shrink towards top (progressive). Pairs whose teeth take turns evenly are preferred."</p>
            {move || designs.with(|designs| designs.as_ref().map(|designs| list(state, designs)))}
        </details>
    }
}

fn field(text: DesignText) -> impl IntoView {
    view! { <TextField field=Field::Design(text) visible_label=true problem=Wished::here().problem_of_design(text)/> }
}

fn layout(state: State) -> impl IntoView {
    let now = move || state.job.with(|job| job.wishes.design.layout);
    let choose = move |layout: Layout| state.change(move |job| job.wishes.design.layout = layout);
    layout_select("Layout of the gear set to be designed".into(), now, choose)
}

fn list(state: State, designs: &Designs) -> impl IntoView + use<> {
    let rows = designs.best.iter().take(SHOWN).map(|design| row(state, design)).collect_view();
    let says = format!("{} constant pairs tried, each with every pair of the tooth sum.", designs.judged);
    view! { <p class="words" role="status">{says}</p><ol class="designs">{rows}</ol> }
}

fn row(state: State, design: &Design) -> impl IntoView + use<> {
    let told = told(design);
    let gear = |gear: ToldGear| {
        view! {
            <span class="result__figure"><span class="words">{gear.name}</span>" "<span class="num">{gear.ratio}</span>
                " "<span class="words">{gear.about}</span></span>
        }
    };
    let (kept, ordered) = (design.clone(), design.clone());
    let sheets = move |_| {
        let ordered = ordered.clone();
        parts::ANSWERS.then(state, move |answers| (answers.sheets)(state, None, &ordered.gearbox, &to_be_made(&ordered)));
    };
    view! {
        <li class="result">
            <div class="design__one">
                <span class="result__name">{told.says}</span>
                <span class="result__figures">{told.gears.into_iter().map(gear).collect_view()}</span>
                <button type="button" class="btn btn--small" on:click=move |_| keep(state, &kept)>{state.say("Put it into the catalogue, to be made")}</button>
                <button type="button" class="btn btn--small" on:click=sheets>"Sheets for the cutter"</button>
            </div>
        </li>
    }
}

/// Puts a design on the shop's own shelf and says under which name.
fn keep(state: State, design: &Design) {
    if let Some(name) = state.shop.add_set(design.as_set(&to_be_made(design))) {
        state.tell(Notice::plain(format!("“{name}” is in the catalogue now, as a drawing to be made.")));
    }
}
