//! What a recording says: the answer, the parts with their tones, which can be heard, and the spectrum.

use leptos::prelude::*;

use super::ear::{Ear, View};
use crate::app::notices::Notice;
use crate::app::parts;
use crate::app::state::State;
use crate::app::widgets::{Chart, Choice};
use crate::job::{BenchField, Field, JobField, NoiseField};
use crate::questions::noise::recorded::Part;
use crate::units::number;

const KEPT: Field = Field::Job(JobField::Bench(BenchField::Noise(NoiseField::Kept)));
const PITCH: Field = Field::Job(JobField::Bench(BenchField::Noise(NoiseField::Pitch)));

/// What was heard; nothing before that.
pub(in crate::app) fn view() -> AnyView {
    let ear = Ear::here();
    let is_there = Memo::new(move |_| ear.heard.with(Option::is_some));
    view! { <Show when=move || is_there.get()>{move || what_was_heard(ear)}</Show> }.into_any()
}

fn what_was_heard(ear: Ear) -> impl IntoView {
    let state = State::here();
    let sentence = move || ear.heard.with(|heard| heard.as_ref().map(|heard| state.say(&heard.sentences.join(" "))));
    let parts = move || ear.heard.with(|heard| heard.as_ref().map(|heard| heard.parts.clone()).unwrap_or_default());
    let pitch = Memo::new(move |_| ear.heard.with(|heard| heard.as_ref().and_then(|heard| heard.pitch)));
    let keep = move |hertz: f64| {
        state.type_text(PITCH, number::show(hertz, usize::from(hertz < 100.0)));
        state.leave_field();
    };
    let keep_all = move |_| {
        let kept = ear.heard.with_untracked(|heard| heard.as_ref().map(|heard| heard.kept.clone()));
        if let Some(kept) = kept {
            state.type_text(KEPT, kept);
            state.leave_field();
            state.tell(Notice::plain(
                "Kept: gear, rpm and the tones found. Record the test in the other gear, and both are taken together.",
            ));
        }
    };
    view! {
        <section class="recorded" id="recorded" aria-labelledby="recorded-title">
            <h3 id="recorded-title">"The recording"</h3>
            <p class="answer">{sentence}</p>
            <ol class="recorded__parts">{move || parts().into_iter().map(|part| row(state, ear, &part)).collect_view()}</ol>
            <Choice label="Picture of the recording" id="recorded-view" options=vec![(View::Spectrum, "Spectrum"), (View::OverTime, "Over time")]
                now=ear.view choose=move |view| ear.view.set(view)/>
            <Chart picture=ear.drawn name="recorded"/>
            <details class="fold"><summary>"In words"</summary>{parts::DESK.show(move |desk| (desk.in_words)(ear.drawn))}</details>
            <div class="listen__acts">
                {move || pitch.get().map(|hertz| view! {
                    <button type="button" class="btn" id="recorded-pitch" on:click=move |_| keep(hertz)>
                        {format!("Keep {} Hz as its pitch", number::show(hertz, usize::from(hertz < 100.0)))}
                    </button>
                })}
                <button type="button" class="btn" id="recorded-keep" on:click=keep_all>"Keep with the job"</button>
                <button type="button" class="btn" id="recorded-forget" on:click=move |_| ear.forget()>"Forget the recording"</button>
            </div>
        </section>
    }
}

fn row(state: State, ear: Ear, part: &Part) -> impl IntoView + use<> {
    let Part { name, hertz, frequency, about } = part.clone();
    let name = state.say(&name);
    let says = format!("hear the tone of {name}");
    let on = move || ear.player.is_playing(hertz);
    view! {
        <li class="recorded__part">
            <b>{name}</b>
            <span class="num">{frequency}</span>
            <span class="words">{state.say(&about)}</span>
            <button type="button" class="btn btn--small" aria-label=says aria-pressed=move || on().to_string()
                on:click=move |_| ear.player.toggle(hertz)>{move || if on() { "■ stop" } else { "▶ hear it" }}</button>
        </li>
    }
}
