//! The crosshair of a picture: moved by mouse, touch or arrow keys, its readings said below.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::chart::{Shown, Surface};
use crate::app::device;
use crate::app::state::State;
use crate::chart::palette;
use crate::chart::readout::{Group, ReadOut};
use crate::chart::scene::Window;
use crate::units::common::{in_metres_per_second, metres_per_second};
use crate::units::{Measured, Unit, Velocity};

/// A box that can be pointed into, and what is read there.
///
/// Pictures over road speed share the speed looked at: moving the pointer in one moves it in all.
#[component]
pub fn Pointer(
    /// Where the picture is painted.
    surface: Surface,
    /// What is drawn.
    picture: Memo<Option<Shown>>,
    /// The picture's name on the page.
    name: &'static str,
    /// What pressing at a value of the axis does.
    pressed: Option<Callback<f64>>,
    /// The box itself.
    children: Children,
) -> impl IntoView {
    let state = State::here();
    let own = RwSignal::new(None::<f64>);
    let symbol = Memo::new(move |_| picture.with(|shown| shown.as_ref().and_then(|shown| shown.picture().axis_unit().map(str::to_owned))));
    let unit = move || symbol.with(|symbol| symbol.as_deref().and_then(speed_unit));
    let unit_untracked = move || symbol.with_untracked(|symbol| symbol.as_deref().and_then(speed_unit));
    let at = Memo::new(move |_| match unit() {
        Some(unit) => state.view.moment.get().map(|speed| (unit.take)(&metres_per_second(speed))),
        None => own.get(),
    });
    let set = move |value: Option<f64>| {
        if let Some(unit) = unit_untracked() {
            return state.view.moment.set(value.map(|value| in_metres_per_second((unit.make)(value))));
        }
        own.set(value);
        state.view.pointed.set(value);
    };
    let read = Memo::new(move |_| at.get().and_then(|at| picture.with(|shown| shown.as_ref().map(|shown| shown.picture().read_out(at)))));
    Effect::new(move |was_drawn: Option<bool>| {
        let is_drawn = at.with(Option::is_some);
        if is_drawn || was_drawn == Some(true) {
            state.theme.track();
            draw_hair(surface, surface.window.get(), at.get(), state.theme.colours().ink_2);
        }
        is_drawn
    });
    let point = move |event: web_sys::PointerEvent| set(value_at(surface, f64::from(event.offset_x())));
    let press = move |event: web_sys::MouseEvent| {
        if let (Some(pressed), Some(value)) = (pressed, value_at(surface, f64::from(event.offset_x()))) {
            pressed.run(value);
        }
    };
    let key = move |event: web_sys::KeyboardEvent| {
        if event.key() == "Escape" {
            set(None);
        }
        let stops = picture.with_untracked(|shown| shown.as_ref().map(|shown| shown.picture().stops()).unwrap_or_default());
        let Some(next) = stop_after(&stops, at.get_untracked(), &event.key()) else { return };
        event.prevent_default();
        set(Some(next));
    };
    let label = move || {
        let title = picture.with(|shown| shown.as_ref().map(|shown| shown.picture().title()).unwrap_or_default());
        format!("{}: arrow keys move the pointer", state.say(&title))
    };
    view! {
        <div class="picture__point" role="group" tabindex="0" aria-label=label aria-describedby=format!("{name}-said")
            on:pointermove=point on:pointerdown=point on:keydown=key on:click=press>
            {children()}
        </div>
        <div class="picture__said" id=format!("{name}-said") role="status">
            <div class="picture__read">
                {move || read.get().map_or_else(|| view! { <span>"Point into the picture, or use the arrow keys, to read it."</span> }.into_any(), said)}
            </div>
        </div>
    }
}

/// The unit of road speed of that symbol, where it is one.
fn speed_unit(symbol: &str) -> Option<&'static Unit<Velocity>> {
    Velocity::units().iter().find(|unit| unit.symbol == symbol)
}

/// The value of the axis under a place of the box.
fn value_at(surface: Surface, x: f64) -> Option<f64> {
    let window = surface.window.get_untracked()?;
    (x >= window.plot.left - 4.0 && x <= window.plot.right + 4.0).then(|| window.x.value(x.clamp(window.plot.left, window.plot.right)))
}

/// The stop that a key leads to from where the pointer is; none where it is no key of ours.
fn stop_after(stops: &[f64], at: Option<f64>, key: &str) -> Option<f64> {
    let (first, last) = (*stops.first()?, *stops.last()?);
    match key {
        "ArrowRight" | "ArrowUp" => Some(at.map_or(first, |at| stops.iter().copied().find(|stop| *stop > at + 1e-9).unwrap_or(last))),
        "ArrowLeft" | "ArrowDown" => {
            Some(at.map_or(last, |at| stops.iter().rev().copied().find(|stop| *stop < at - 1e-9).unwrap_or(first)))
        }
        "Home" => Some(first),
        "End" => Some(last),
        _ => None,
    }
}

/// Draws the upright line at a value of the axis as last painted, or nothing.
fn draw_hair(surface: Surface, window: Option<Window>, at: Option<f64>, colour: palette::Colour) -> Option<()> {
    let canvas = surface.over.get_untracked()?;
    let ratio = device::pixel_ratio();
    let (width, height) = (f64::from(canvas.client_width()), f64::from(canvas.client_height()));
    canvas.set_width(super::chart::pixels(width * ratio));
    canvas.set_height(super::chart::pixels(height * ratio));
    let (window, at) = (window?, at?);
    let x = window.x.place(at);
    let context: web_sys::CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    context.scale(ratio, ratio).ok()?;
    context.set_stroke_style_str(&colour.css());
    context.begin_path();
    context.move_to(x.round() + 0.5, window.plot.top);
    context.line_to(x.round() + 0.5, window.plot.bottom);
    context.stroke();
    Some(())
}

fn said(read: ReadOut) -> AnyView {
    view! { <span class="said__at num">{read.at}</span>{read.groups.iter().map(group).collect_view()} }.into_any()
}

fn group(group: &Group) -> AnyView {
    let badge = group.slot.map(|slot| {
        let letter = palette::letter(slot);
        view! { <span class=format!("badge badge--{}", letter.to_ascii_lowercase())>{letter.to_string()}</span> }
    });
    let reading = |reading: &crate::chart::readout::Reading| {
        let class = match (reading.stands_out, reading.is_beyond) {
            (_, true) => "said__one said__one--beyond",
            (true, _) => "said__one said__one--first",
            _ => "said__one",
        };
        view! { <span class=class>{reading.label.clone()}" "<span class="num">{reading.value.clone()}</span></span> }
    };
    view! {
        <span class="said__group">
            {badge}
            {group.slot.is_none().then(|| group.name.clone())}
            {group.readings.iter().map(reading).collect_view()}
        </span>
    }
    .into_any()
}
