//! The results as a picture of two chosen figures; every dot can be pressed, and reached by keys.

use std::sync::Arc;

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::results::{names, press};
use super::runner::Runner;
use crate::app::state::State;
use crate::app::widgets::Chart;
use crate::app::widgets::chart::Shown;
use crate::chart::Picture;
use crate::chart::lines::Measure;
use crate::chart::palette::Hue;
use crate::chart::scatter::{Found as Dot, Scatter};
use crate::finder::{Found, Wish};
use crate::questions::Answers;
use crate::questions::find::onto_sheet::Into;
use crate::questions::find::{evaluate as meets, words as why};
use crate::units::System;

/// The picture, where two figures differ.
pub(super) fn picture(runner: Runner) -> impl IntoView {
    let state = State::here();
    let axes = RwSignal::new((0_usize, 1_usize));
    let wishes = Memo::new(move |_| runner.found.with(|found| found.as_ref().map(|found| figures(found)).unwrap_or_default()));
    let picture = Memo::new(move |_| {
        let (x, y) = axes.get();
        runner.found.with(|found| found.as_ref().map_or_else(empty, |found| scatter(state, runner, found, (x, y))))
    });
    let enough = move || wishes.with(|wishes| wishes.len() >= 2) && picture.with(|picture| !picture.found.is_empty());
    let drawn = Memo::new(move |_| Some(Shown::new(Arc::new(picture.get()) as Arc<dyn Picture>)));
    view! {
        <div class="find__picture" hidden=move || !enough()>
            <div class="find__axes">
                {axis(state, "along", wishes, move || axes.get().0, move |at| axes.update(|axes| axes.0 = at))}
                {axis(state, "up", wishes, move || axes.get().1, move |at| axes.update(|axes| axes.1 = at))}
            </div>
            <div class="find__press" on:click=move |event| press_near(state, runner, picture, &event)><Chart picture=drawn name="found"/></div>
            <p class="words">{move || state.say("No other result is as good in every wish as those that are joined; letters are the setups on the sheet.")}</p>
            {dots(state, runner, picture)}
        </div>
    }
}

/// The wishes that are figures, with their places among all.
fn figures(found: &Found) -> Vec<(usize, Wish)> {
    found.wishes.iter().copied().enumerate().filter(|(_, wish)| !wish.measure.is_flag()).collect()
}

fn empty() -> Scatter {
    let measure = || Measure { name: String::new(), unit: String::new(), decimals: 0, ends: None };
    Scatter { title: "What was found".into(), x: measure(), y: measure(), found: Vec::new(), focus: None }
}

fn axis(
    state: State,
    label: &'static str,
    wishes: Memo<Vec<(usize, Wish)>>,
    now: impl Fn() -> usize + Copy + Send + Sync + 'static,
    choose: impl Fn(usize) + Copy + Send + Sync + 'static,
) -> impl IntoView {
    let options = move || {
        let units = state.job.with(|job| job.units);
        let names = wishes.with(|wishes| wishes.iter().map(|(_, wish)| why::name(wish.measure, units)).collect::<Vec<_>>());
        let option = move |(at, name): (usize, String)| view! { <option value=at.to_string() selected=move || now() == at>{state.say(&name)}</option> };
        names.into_iter().enumerate().map(option).collect_view()
    };
    view! {
        <label class="field"><span>{label}</span>
            <select class="select" on:change=move |event| choose(event_target_value(&event).parse().unwrap_or(0))>{options}</select>
        </label>
    }
}

fn scatter(state: State, runner: Runner, found: &Found, (x, y): (usize, usize)) -> Scatter {
    let units = state.job.with(|job| job.units);
    let wishes = figures(found);
    let (Some((x, first)), Some((y, second))) = (wishes.get(x).copied(), wishes.get(y).copied()) else { return empty() };
    let measure = |wish: &Wish| {
        let (_, decimals, unit) = why::in_unit(wish.measure, 0.0, units);
        Measure { name: state.say(&why::name(wish.measure, units)), unit: unit.trim().into(), decimals, ends: None }
    };
    let dots = found.results.iter().enumerate().map(|(at, standing)| {
        let value = |at: usize, wish: &Wish| why::in_unit(wish.measure, standing.figures.get(at).copied().unwrap_or(f64::NAN), units).0;
        let name = format!("{}", at + 1);
        let hue = if standing.on_front { Hue::Dye } else { Hue::Muted };
        Dot { hue, name, at: (value(x, &first), value(y, &second)), is_on_front: standing.on_front }
    });
    let setups = setups(state, runner, &first, &second, units);
    let title = "What was found".into();
    Scatter { title, x: measure(&first), y: measure(&second), found: dots.chain(setups).collect(), focus: None }
}

/// The setups of the sheet among what was found.
fn setups(state: State, runner: Runner, first: &Wish, second: &Wish, units: System) -> Vec<Dot> {
    let given = runner.asked.with(|(given, _)| given.clone());
    state.answers.with(|Answers { setups, .. }| {
        let dot = |(slot, analysis): (usize, &crate::questions::Analysis)| {
            let value = |wish: &Wish| Some(why::in_unit(wish.measure, meets::figure(analysis, wish, &given)?, units).0);
            Some(Dot { hue: Hue::Setup(slot), name: String::new(), at: (value(first)?, value(second)?), is_on_front: false })
        };
        setups.iter().enumerate().filter_map(dot).collect()
    })
}

/// How far from a dot it may be pressed, in CSS pixels: a target of 44.
const REACH: f64 = 22.0;

/// Puts the result whose dot lies nearest to where the picture was pressed onto the sheet.
fn press_near(state: State, runner: Runner, picture: Memo<Scatter>, event: &web_sys::MouseEvent) {
    let target = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlElement>().ok());
    let Some(target) = target.filter(|target| target.matches("canvas").unwrap_or(false)) else { return };
    let size = (f64::from(target.client_width()), f64::from(target.client_height()));
    let at = (f64::from(event.offset_x()), f64::from(event.offset_y()));
    let near = picture.with_untracked(|picture| {
        picture.nearest(size, at, REACH).filter(|near| picture.found.get(*near).is_some_and(|dot| dot.hue.slot().is_none()))
    });
    if let Some(near) = near {
        press(state, runner, near, Into::New);
    }
}

/// A button for every dot of a result: the arrow keys go from one to the next, the others stay out of the tab order.
fn dots(state: State, runner: Runner, picture: Memo<Scatter>) -> impl IntoView {
    let at = RwSignal::new(0_usize);
    let many = move || picture.with(|picture| picture.found.iter().filter(|dot| dot.hue.slot().is_none()).count());
    let says = move |number: usize| {
        let standing = runner.found.with(|found| found.as_ref().and_then(|found| found.results.get(number).cloned()));
        let parts = standing.map(|standing| names(state, &standing).join(", ")).unwrap_or_default();
        let values = picture.with(|picture| {
            picture
                .found
                .get(number)
                .map(|dot| format!("{} {}, {} {}", picture.x.name, picture.x.value(dot.at.0), picture.y.name, picture.y.value(dot.at.1)))
        });
        format!("{}. {parts}: {}", number + 1, values.unwrap_or_default())
    };
    let go = move |event: web_sys::KeyboardEvent| {
        let last = many().saturating_sub(1);
        let next = match event.key().as_str() {
            "ArrowRight" | "ArrowDown" => at.get_untracked().saturating_add(1).min(last),
            "ArrowLeft" | "ArrowUp" => at.get_untracked().saturating_sub(1),
            "Home" => 0,
            "End" => last,
            _ => return,
        };
        event.prevent_default();
        at.set(next);
        crate::app::device::focus(&format!("dot-{next}"));
    };
    let numbers = move || (0..many()).collect::<Vec<_>>();
    let button = move |number: usize| {
        view! {
            <button type="button" class="dot" id=format!("dot-{number}") tabindex=move || if at.get() == number { "0" } else { "-1" }
                aria-label=move || says(number) on:focus=move |_| at.set(number)
                on:click=move |_| press(state, runner, number, Into::New)>{number + 1}</button>
        }
    };
    view! {
        <div class="dots" role="group" aria-label="The dots of the picture: arrow keys go from one to the next, Enter puts it onto the sheet" on:keydown=go>
            <For each=numbers key=|number| *number children=button/>
        </div>
        <p class="find__dot words" role="status">{move || (many() > 0).then(|| says(at.get().min(many().saturating_sub(1))))}</p>
    }
    .into_any()
}
