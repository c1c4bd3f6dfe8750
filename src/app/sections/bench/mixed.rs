//! Parts of several sets put together: which pairs share the centre distance, and what the mixture's ratios would be.

use leptos::prelude::*;

use super::{Known, found, question};
use crate::app::state::State;
use crate::gearing::mix::{Fit, Mixed};
use crate::gearing::teeth::decimal;
use crate::gearing::{Gearbox as Teeth, write};
use crate::job::{BenchField, Field, Gearbox, JobField};
use crate::problem::{Explain, capital};
use crate::questions::identify::answer as bench;
use crate::units::number;

/// The three sets and what they make together.
pub(super) fn panel(sets: Memo<Vec<Known>>) -> impl IntoView {
    let state = State::here();
    let fields = view! {
        {choice(sets, BenchField::MixCluster, "cluster from")}
        {choice(sets, BenchField::MixInput, "input gear from")}
        {choice(sets, BenchField::MixGears, "mainshaft gears from")}
    };
    let answer = move || {
        sets.with(|sets| {
            let find = |name: &str| sets.iter().find(|known| known.set.title() == name).map(|known| known.gearbox.clone());
            let answer = state.job.with(|job| bench::mixed(&job.bench, find))?;
            Some(match answer {
                Ok(mixed) => shown(state, &mixed),
                Err(why) => view! { <p class="field__problem">{state.say(&format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do())))}</p> }.into_any(),
            })
        })
    };
    question(
        "Mixed parts",
        "Input gear, cluster and mainshaft gears of different sets: which pairs share the centre distance, and which cannot.",
        fields,
        answer,
    )
}

fn choice(sets: Memo<Vec<Known>>, field: BenchField, label: &'static str) -> impl IntoView {
    let state = State::here();
    let field = Field::Job(JobField::Bench(field));
    let chosen = Memo::new(move |_| state.job.with(|job| job.text(field).unwrap_or_default().to_owned()));
    let option = move |name: String| {
        let (value, this) = (name.clone(), name.clone());
        view! { <option value=value selected=move || chosen.with(|chosen| *chosen == this)>{name}</option> }
    };
    view! {
        <label class="field">
            <span>{move || state.say(label)}</span>
            <select class="select" id=field.slug() on:change=move |event| {
                state.type_text(field, event_target_value(&event));
                state.leave_field();
            }>
                <option value="">"choose a set"</option>
                {move || sets.with(|sets| sets.iter().map(|known| option(known.set.title().to_owned())).collect_view())}
            </select>
        </label>
    }
}

fn shown(state: State, mixed: &Mixed) -> AnyView {
    let line = |pair: &crate::gearing::mix::Pair| {
        let said = state.say(&format!("{}: {}", capital(&pair.what()), pair.what_to_do()));
        let (class, mark) = if pair.fit == Fit::Shares { ("verdict verdict--good", "✓ ") } else { ("verdict verdict--caution", "⚠ ") };
        view! { <li><span class=class><span aria-hidden="true">{mark}</span>{said}</span></li> }
    };
    let ratios = mixed.gearbox.ratios().iter().map(|ratio| number::show(decimal(*ratio).abs(), 3)).collect::<Vec<_>>().join("  ");
    let head = if mixed.pairs.iter().all(|pair| pair.fit == Fit::Shares) {
        "Every pair can mesh."
    } else if mixed.can_mesh() {
        "Every pair can mesh if its gears were cut for it."
    } else {
        "These parts do not all belong together."
    };
    view! {
        <p>{head}</p>
        <ul class="bench__list">{mixed.pairs.iter().map(line).collect_view()}</ul>
        <ul class="bench__list">{found(state, "The mixture".into(), format!("ratios {ratios}"), typed(&mixed.gearbox))}</ul>
    }
    .into_any()
}

/// A mixture as it would be typed.
fn typed(teeth: &Teeth) -> Gearbox {
    let layout = teeth.layout();
    let reverse = teeth.reverse();
    Gearbox {
        name: "Mixed parts".into(),
        altered: false,
        layout,
        constant: teeth.constant().map_or_else(String::new, |mesh| write::constant(mesh, layout)),
        gears: teeth.gears().iter().map(|gear| write::gear(*gear, layout)).collect(),
        reverse: reverse.map_or_else(String::new, |reverse| write::pair(reverse.pair, layout)),
        idler: reverse.map_or_else(String::new, |reverse| write::idler(reverse.idler)),
    }
}
