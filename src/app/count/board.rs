//! The picture with its circle and the marks of the teeth: the centre is tapped, the circle dragged; arrow keys do the same.

use std::f64::consts::TAU;

use leptos::html::Canvas;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::eye::{Eye, Seen};
use crate::questions::measure::counted::{Circle, Mark};

/// Inside this share of the radius the centre is moved, outside it the circle is sized.
const INSIDE: f64 = 0.6;
/// The same before the circle was put on the tips: where it lies says nothing yet of how large the gear is.
const NEAR: f64 = 0.25;
/// How far a key moves or sizes the circle, in its radii.
const STEP: f64 = 0.02;
/// The colours of the marks, on a light edge that stands out from any picture.
const MARK: &str = "#c2410c";
const EDGE: &str = "#ffffff";

/// What a press moves.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Drag {
    Centre,
    Size,
}

pub(super) fn view(eye: Eye) -> AnyView {
    let canvas = NodeRef::<Canvas>::new();
    let drag = RwSignal::new(None::<Drag>);
    Effect::new(move || {
        let circle = eye.circle.get();
        if let Some(canvas) = canvas.get() {
            eye.picture.with(|seen| seen.as_ref().and_then(|seen| eye.marks.with(|marks| paint(&canvas, seen, circle, marks))));
        }
    });
    let place = move |event: &web_sys::PointerEvent| canvas.get_untracked().map(|canvas| on_picture(&canvas, event));
    let press = move |event: web_sys::PointerEvent| {
        let Some(at) = place(&event) else { return };
        event.prevent_default();
        if let Some(canvas) = canvas.get_untracked() {
            let _ = canvas.set_pointer_capture(event.pointer_id());
            // The page stays where it is: what moves under the finger would be dragged along.
            let still = web_sys::FocusOptions::new();
            still.set_prevent_scroll(true);
            let _ = canvas.focus_with_options(&still);
        }
        let inside = if eye.is_placed() { INSIDE } else { NEAR };
        let is_centre = !eye.has_centre() || from_centre(eye, at) < inside * eye.circle.get_untracked().radius;
        drag.set(Some(if is_centre { Drag::Centre } else { Drag::Size }));
        go(eye, drag.get_untracked(), at);
    };
    let pull = move |event: web_sys::PointerEvent| {
        if let Some(at) = place(&event) {
            go(eye, drag.get_untracked(), at);
        }
    };
    let leave = move |_| {
        if drag.get_untracked().is_some() {
            drag.set(None);
            eye.count(false);
        }
    };
    let key = move |event: web_sys::KeyboardEvent| {
        if press_key(eye, &event) {
            event.prevent_default();
        }
    };
    view! {
        <canvas class="count__picture" id="count-picture" tabindex="0" role="application" node_ref=canvas
            aria-label="Picture of the gear: arrow keys move the circle, plus and minus size it, Enter counts"
            on:pointerdown=press on:pointermove=pull on:pointerup=leave on:pointercancel=leave on:keydown=key></canvas>
    }
    .into_any()
}

fn from_centre(eye: Eye, (x, y): (f64, f64)) -> f64 {
    let circle = eye.circle.get_untracked();
    (x - circle.x).hypot(y - circle.y)
}

fn go(eye: Eye, drag: Option<Drag>, at: (f64, f64)) {
    match drag {
        Some(Drag::Centre) => eye.centre(at),
        Some(Drag::Size) => eye.size(from_centre(eye, at)),
        None => {}
    }
}

/// Does what a key says; answers whether it is one of ours.
fn press_key(eye: Eye, event: &web_sys::KeyboardEvent) -> bool {
    let Circle { x, y, radius } = eye.circle.get_untracked();
    let step = STEP * radius * if event.shift_key() { 0.25 } else { 1.0 };
    match event.key().as_str() {
        "ArrowLeft" => eye.centre((x - step, y)),
        "ArrowRight" => eye.centre((x + step, y)),
        "ArrowUp" => eye.centre((x, y - step)),
        "ArrowDown" => eye.centre((x, y + step)),
        "+" | "=" => eye.size(radius + step),
        "-" | "_" => eye.size(radius - step),
        "Enter" => {}
        _ => return false,
    }
    eye.count(event.key() == "Enter");
    true
}

/// The place of the picture under a pointer.
fn on_picture(canvas: &web_sys::HtmlCanvasElement, event: &web_sys::PointerEvent) -> (f64, f64) {
    let seen = canvas.get_bounding_client_rect();
    let scale = f64::from(canvas.width()) / seen.width().max(1.0);
    (scale * (f64::from(event.client_x()) - seen.left()), scale * (f64::from(event.client_y()) - seen.top()))
}

fn paint(canvas: &web_sys::HtmlCanvasElement, seen: &Seen, circle: Circle, marks: &[Mark]) -> Option<()> {
    canvas.set_width(seen.canvas.width());
    canvas.set_height(seen.canvas.height());
    let paint: web_sys::CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    paint.draw_image_with_html_canvas_element(&seen.canvas, 0.0, 0.0).ok()?;
    // As wide on the screen whatever the picture is scaled by.
    let pixel = f64::from(canvas.width()) / canvas.get_bounding_client_rect().width().max(1.0);
    for (colour, width) in [(EDGE, 4.0), (MARK, 2.0)] {
        paint.set_stroke_style_str(colour);
        paint.set_line_width(width * pixel);
        paint.begin_path();
        paint.arc(circle.x, circle.y, circle.radius, 0.0, TAU).ok()?;
        let arm = 8.0 * pixel;
        paint.move_to(circle.x - arm, circle.y);
        paint.line_to(circle.x + arm, circle.y);
        paint.move_to(circle.x, circle.y - arm);
        paint.line_to(circle.x, circle.y + arm);
        paint.stroke();
    }
    let size = (0.28 * TAU * circle.radius / f64::from(u32::try_from(marks.len()).ok()?.max(8))).clamp(2.0 * pixel, 6.0 * pixel);
    for mark in marks {
        paint.begin_path();
        paint.arc(mark.x, mark.y, size, 0.0, TAU).ok()?;
        paint.set_fill_style_str(if mark.is_seen { MARK } else { EDGE });
        paint.fill();
        paint.set_line_width(1.2 * pixel);
        paint.set_stroke_style_str(if mark.is_seen { EDGE } else { MARK });
        paint.stroke();
    }
    numbers(&paint, circle, marks, pixel)
}

/// Every tenth tooth has its number.
fn numbers(paint: &web_sys::CanvasRenderingContext2d, circle: Circle, marks: &[Mark], pixel: f64) -> Option<()> {
    paint.set_font(&format!("600 {:.0}px sans-serif", 13.0 * pixel));
    paint.set_text_align("center");
    paint.set_text_baseline("middle");
    for (place, mark) in marks.iter().enumerate().skip(9).step_by(10) {
        let long = (mark.x - circle.x).hypot(mark.y - circle.y).max(1.0);
        let out = 1.0 + 16.0 * pixel / long;
        let (x, y) = (circle.x + out * (mark.x - circle.x), circle.y + out * (mark.y - circle.y));
        let text = (place + 1).to_string();
        paint.set_line_width(3.0 * pixel);
        paint.set_stroke_style_str(EDGE);
        paint.stroke_text(&text, x, y).ok()?;
        paint.set_fill_style_str(MARK);
        paint.fill_text(&text, x, y).ok()?;
    }
    Some(())
}
