//! Saving a picture as a file: with its title, and the setups below it.

use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use crate::app::device;
use crate::app::state::State;
use crate::app::widgets::chart::{Shown, pixels};
use crate::chart::framed::Framed;
use crate::chart::own_size::OwnSize;
use crate::chart::{self, Picture, canvas};

/// How wide a saved picture is, in CSS pixels.
const SAVED_WIDTH: f64 = 1_000.0;

/// The ways to save a picture; the name is that of its files.
pub(in crate::app) fn acts(state: State, name: Signal<&'static str>, drawn: Memo<Option<Shown>>, open: RwSignal<bool>) -> AnyView {
    let save = move |save: fn(State, &str, &dyn Picture)| {
        move |_| {
            open.set(false);
            if let Some(shown) = drawn.get_untracked() {
                save(state, name.get_untracked(), shown.picture());
            }
        }
    };
    view! {
        <button type="button" class="btn" on:click=save(save_png)>"As PNG"</button>
        <button type="button" class="btn" on:click=save(save_svg)>"As SVG"</button>
        <button type="button" class="btn" on:click=save(save_csv)>"Figures as CSV"</button>
        {at_own_size(name, drawn, open)}
    }
    .into_any()
}

/// What the picture shows at its own size, as files for a printer and for a machine.
fn at_own_size(name: Signal<&'static str>, drawn: Memo<Option<Shown>>, open: RwSignal<bool>) -> Option<AnyView> {
    drawn.with_untracked(|drawn| drawn.as_ref().and_then(|shown| shown.picture().own_size().map(|_| ())))?;
    let save = move |ending: &'static str, kind: &'static str, write: fn(&OwnSize) -> String| {
        move |_| {
            open.set(false);
            let text = drawn.with_untracked(|drawn| drawn.as_ref().and_then(|shown| shown.picture().own_size().map(write)));
            if let Some(text) = text {
                device::save_file(&format!("{}-1to1.{ending}", name.get_untracked()), kind, &text);
            }
        }
    };
    let view = view! {
        <button type="button" class="btn" on:click=save("svg", "image/svg+xml", OwnSize::svg)>"At 1:1 as SVG, to print"</button>
        <button type="button" class="btn" on:click=save("dxf", "image/vnd.dxf", OwnSize::dxf)>"At 1:1 as DXF"</button>
    };
    Some(view.into_any())
}

/// The picture with its title and the setups below it.
fn framed(state: State, picture: &dyn Picture) -> Framed<'_> {
    let words = state.words.get_untracked();
    let setups = state.job.with_untracked(|job| job.setups.iter().map(|setup| setup.name.clone()).collect());
    Framed { title: words.say(&picture.title()), setups, picture, has_ground: false }
}

fn save_svg(state: State, name: &str, picture: &dyn Picture) {
    let framed = framed(state, picture);
    let size = (pixels(SAVED_WIDTH), pixels(framed.height(SAVED_WIDTH)));
    if let Ok(text) = chart::svg_text(&framed, &crate::chart::LIGHT, size) {
        device::save_file(&format!("{name}.svg"), "image/svg+xml", &text);
    }
}

fn save_csv(_: State, name: &str, picture: &dyn Picture) {
    device::save_file(&format!("{name}.csv"), "text/csv", &picture.table().csv());
}

/// Painted on a canvas of its own, on the sheet's colour: what lies open on the page has no ground.
fn save_png(state: State, name: &str, picture: &dyn Picture) {
    let framed = Framed { has_ground: true, ..framed(state, picture) };
    let size = (SAVED_WIDTH, framed.height(SAVED_WIDTH));
    let canvas = web_sys::window().and_then(|window| window.document()).and_then(|document| document.create_element("canvas").ok());
    let Some(base) = canvas.and_then(|canvas| canvas.dyn_into::<web_sys::HtmlCanvasElement>().ok()) else { return };
    if let Err(why) = canvas::paint_on(&base, &framed, &crate::chart::LIGHT, size, 2.0) {
        device::log_error(&crate::problem::Explain::what(&why));
        return;
    }
    let name = name.to_owned();
    let saved = Closure::once_into_js(move |blob: Option<web_sys::Blob>| {
        if let Some(blob) = blob {
            device::save_blob(&format!("{name}.png"), &blob);
        }
    });
    let _ = base.to_blob(saved.unchecked_ref());
}
