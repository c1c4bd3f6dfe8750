//! Pull at the wheels: the car and its engine, and the pictures.

use leptos::prelude::*;

use super::car;
use crate::analysis::Analysis;
use crate::app::state::State;
use crate::app::widgets::Chart;
use crate::chart::of_pull;

/// The car, then thrust over speed, the run, and the power band.
pub(super) fn picture() -> impl IntoView {
    let state = State::here();
    let thrust = Memo::new(move |_| state.picture(of_pull::thrust));
    let run = Memo::new(move |_| state.picture(of_pull::run));
    let band = Memo::new(move |_| state.picture(of_pull::band));
    let any = move |has: fn(&Analysis) -> bool| Memo::new(move |_| state.answers.with(|(_, setups)| setups.iter().any(has)));
    let has_thrust = any(|analysis| analysis.pull.thrust.is_some());
    let has_runs = any(|analysis| analysis.pull.vehicle.is_some());
    let say = move |text: &'static str| Signal::derive(move || state.say(text));
    let thrust_caption = say(
        "Thrust at the wheels in every gear over road speed, with what the road asks on the level and on grades. Where a line crosses the road load is that gear’s top speed.",
    );
    let run_caption = say("A standing start, shifted by the chosen rule.");
    let band_caption = say("Engine power, the power band shaded, and where each upshift picks up.");
    view! {
        {car::panel()}
        <Show when=move || has_thrust.get()>
            <Chart picture=thrust name="thrust" caption=thrust_caption/>
        </Show>
        <Show when=move || has_runs.get()>
            <div class="pair">
                <Chart picture=run name="run" caption=run_caption/>
                <Chart picture=band name="power-band" caption=band_caption/>
            </div>
        </Show>
    }
}
