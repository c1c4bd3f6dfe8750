//! Pull at the wheels: the car and its engine, the pictures, and the comparison as text.

use leptos::html::{Details, Textarea};
use leptos::prelude::*;

use crate::questions::Answers;

use super::car;
use crate::app::device;
use crate::app::state::State;
use crate::app::widgets::Chart;
use crate::questions::Analysis;
use crate::questions::pull::pictures as of_pull;
use crate::questions::pull::text;

/// The car, then thrust over speed, the run, the power band, and the text to be sent.
pub(super) fn picture() -> impl IntoView {
    let state = State::here();
    let thrust = Memo::new(move |_| state.picture(of_pull::thrust));
    let any = move |has: fn(&Analysis) -> bool| Memo::new(move |_| state.answers.with(|Answers { setups, .. }| setups.iter().any(has)));
    let has_thrust = any(|analysis| analysis.pull().thrust.is_some());
    let has_runs = any(|analysis| analysis.pull().vehicle.is_some());
    let thrust_caption = said(
        "Thrust at the wheels in every gear over road speed, with what the road asks on the level and on grades. Where a line crosses the road load is that gear’s top speed.",
    );
    view! {
        {car::panel()}
        <Show when=move || has_thrust.get()>
            <Chart picture=thrust name="thrust" caption=thrust_caption/>
        </Show>
        <Show when=move || has_runs.get()>{runs()}{as_text()}</Show>
    }
}

fn said(text: &'static str) -> Signal<String> {
    let state = State::here();
    Signal::derive(move || state.say(text))
}

/// The run over time and over distance, and the power band.
fn runs() -> impl IntoView {
    let state = State::here();
    let run = Memo::new(move |_| state.picture(of_pull::run));
    let way = Memo::new(move |_| state.picture(of_pull::run_over_distance));
    let band = Memo::new(move |_| state.picture(of_pull::band));
    view! {
        <div class="pair">
            <Chart picture=run name="run" caption=said("A standing start, shifted by the chosen rule.")/>
            <Chart picture=way name="run-distance" caption=said("The same start over the distance covered.")/>
        </div>
        <Chart picture=band name="power-band" caption=said("Engine power, the power band shaded, and where each upshift picks up.")/>
    }
}

/// The comparison as plain text, copied at a press; the text itself stands below, to be read out or copied by hand.
fn as_text() -> impl IntoView {
    let state = State::here();
    let text = Memo::new(move |_| state.job.with(|job| state.sheet.with(|sheet| text::text(job, sheet))));
    let whole = move || text.get().unwrap_or_default();
    let answer = RwSignal::new("");
    let (details, area) = (NodeRef::<Details>::new(), NodeRef::<Textarea>::new());
    let copy = move |_| {
        device::copy(text.get_untracked().unwrap_or_default(), move |is_copied| {
            if is_copied {
                answer.set("Copied: paste it into a message.");
            } else if let (Some(details), Some(area)) = (details.get_untracked(), area.get_untracked()) {
                let _ = details.set_attribute("open", "");
                let _ = area.focus();
                area.select();
                answer.set("This browser does not let the page copy. The text is marked: copy it by hand.");
            }
        });
    };
    let has_text = Memo::new(move |_| text.with(Option::is_some));
    view! {
        <Show when=move || has_text.get()>
            <div class="car" id="pull-as-text">
                <button type="button" class="btn" id="copy-pull" on:click=copy>"Copy the comparison as text"</button>
                <span class="words" role="status" id="copied-pull">{answer}</span>
                <details class="car__more" node_ref=details>
                    <summary>"The text, to be read out"</summary>
                    <textarea class="area__input" id="pull-text" rows="14" readonly aria-label="The comparison as text" node_ref=area prop:value=whole></textarea>
                </details>
            </div>
        </Show>
    }
}
