//! A tone to match by ear: of a part, or moved until it is the one that is heard, and then typed as its pitch.

use leptos::prelude::*;

use super::ear::Ear;
use crate::app::state::State;
use crate::job::{BenchField, Field, JobField, NoiseField};
use crate::questions::noise::recorded;
use crate::units::number;

/// The ends of the slider, in Hz, and its steps.
const SLIDER: (f64, f64, f64) = (40.0, 4_000.0, 1_000.0);
/// What can be typed, in Hz.
const TYPED: (f64, f64) = (20.0, 15_000.0);
/// Where it begins.
const FIRST: f64 = 440.0;
/// Small speakers do not give less.
const LOW: f64 = 90.0;
const PITCH: Field = Field::Job(JobField::Bench(BenchField::Noise(NoiseField::Pitch)));

/// The tone, and what it is moved with.
pub(super) fn view(ear: Ear) -> impl IntoView {
    let state = State::here();
    let hertz = RwSignal::new(FIRST);
    let go = move |to: f64| {
        hertz.set(to);
        if ear.player.plays.with_untracked(Option::is_some) {
            ear.player.plays.set(Some(to));
        }
    };
    let typed = move |event| {
        let read = number::leading(&event_target_value(&event)).and_then(|(readings, _)| readings.into_iter().flatten().next());
        let (least, most) = TYPED;
        if let Some(read) = read.filter(|read| (least..=most).contains(read)) {
            go(read);
        }
    };
    let slid = move |event| {
        if let Ok(place) = event_target_value(&event).parse::<f64>() {
            go(at_place(place));
        }
    };
    let is_on = move || ear.player.plays.with(Option::is_some);
    let press = move |_| ear.player.plays.update(|plays| *plays = if plays.is_some() { None } else { Some(hertz.get_untracked()) });
    let keep = move |_| {
        state.type_text(PITCH, shown(hertz.get_untracked()));
        state.leave_field();
    };
    let low = move || (is_on() && hertz.get() < LOW).then_some("Too low for a small speaker: use headphones.");
    view! {
        <div class="listen__tone" role="group" aria-label="A tone to match by ear">
            {of_part(state, go)}
            <input type="range" id="tone-slider" aria-label="Pitch of the tone" min="0" max="1000" step="1"
                aria-valuetext=move || format!("{} Hz", shown(hertz.get())) prop:value=move || place_of(hertz.get()).to_string() on:input=slid/>
            <div class="listen__acts">
                <span class="field field--number">
                    <input class="field__input" id="tone-hertz" type="text" inputmode="decimal" autocomplete="off" aria-label="Pitch of the tone, Hz"
                        prop:value=move || shown(hertz.get()) on:change=typed/>
                    <span class="field__unit">"Hz"</span>
                </span>
                <button type="button" class="btn" id="tone-play" aria-pressed=move || is_on().to_string() on:click=press>
                    {move || if is_on() { "■ Stop the tone" } else { "▶ Play a tone" }}
                </button>
                <button type="button" class="btn" id="tone-keep" on:click=keep>"That is its pitch"</button>
            </div>
            <p class="words" role="status">{low}</p>
        </div>
    }
}

/// The tones of what turns, to choose one from.
fn of_part(state: State, go: impl Fn(f64) + Copy + Send + Sync + 'static) -> impl IntoView {
    let tones = Memo::new(move |_| state.with_source(recorded::tones));
    let choose = move |event| {
        let place = event_target_value(&event).parse::<usize>().ok();
        if let Some(part) = place.and_then(|place| tones.with_untracked(|tones| tones.get(place).cloned())) {
            go(part.hertz);
        }
    };
    let option = move |(place, part): (usize, recorded::Part)| {
        view! { <option value=place.to_string()>{format!("{}, {}", state.say(&part.name), part.frequency)}</option> }
    };
    view! {
        <label class="field" hidden=move || tones.with(Vec::is_empty)><span>"tone of"</span>
            <select class="select" id="tone-part" on:change=choose>
                <option value="">"choose a part"</option>
                {move || tones.get().into_iter().enumerate().map(option).collect_view()}
            </select>
        </label>
    }
}

fn shown(hertz: f64) -> String {
    number::show(hertz, usize::from(hertz < 100.0))
}

/// Equal ways of the slider are equal ratios, as they are to the ear.
fn at_place(place: f64) -> f64 {
    let (least, most, steps) = SLIDER;
    least * (most / least).powf((place / steps).clamp(0.0, 1.0))
}

fn place_of(hertz: f64) -> f64 {
    let (least, most, steps) = SLIDER;
    (steps * (hertz / least).ln() / (most / least).ln()).round().clamp(0.0, steps)
}
