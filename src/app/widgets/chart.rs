//! A picture on the page: drawn at the size it is shown, with a crosshair for mouse, touch and keys, the same in words, and its exports.
//!
//! The picture is painted on one canvas, once a frame at most, and only while it is near the window; the crosshair on another above it,
//! so that moving it repaints nothing else.

use leptos::html::{Canvas, Div};
use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use super::pointer::Pointer;
use crate::app::device;
use crate::app::state::State;
use crate::chart::scene::Window;
use crate::chart::{self, Picture, Theme, canvas};

/// What a chart needs to be painted.
#[derive(Clone, Copy)]
pub struct Surface {
    /// The box the canvases fill.
    pub frame: NodeRef<Div>,
    /// The picture's canvas.
    pub base: NodeRef<Canvas>,
    /// The crosshair's canvas.
    pub over: NodeRef<Canvas>,
    /// The width of the box in CSS pixels.
    pub width: RwSignal<f64>,
    /// Where a pointer may ask for a value, as last painted.
    pub window: RwSignal<Option<Window>>,
}

/// A picture, with everything around it.
#[component]
pub fn Chart<P: Picture + Clone + PartialEq + Send + Sync + 'static>(
    /// What is drawn.
    picture: Memo<P>,
    /// The name of its files and of its place on the page.
    name: &'static str,
    /// What stands above it.
    #[prop(into)]
    caption: Signal<String>,
    /// What pressing it at a value of its axis does.
    #[prop(optional)]
    pressed: Option<Callback<f64>>,
) -> impl IntoView {
    let surface = Surface {
        frame: NodeRef::new(),
        base: NodeRef::new(),
        over: NodeRef::new(),
        width: RwSignal::new(0.0),
        window: RwSignal::new(None),
    };
    let state = State::here();
    let is_near = device::near_window(surface.frame);
    let height = height_of(picture, surface.width, is_near);
    let title = Memo::new(move |before: Option<&String>| match before {
        Some(before) if !is_near.get() => before.clone(),
        _ => state.say(&picture.with(Picture::title)),
    });
    follow_width(surface);
    paint_each_frame(surface, picture, height, is_near);
    state.pictures.hang(name, caption, picture);
    view! {
        <figure class="picture" id=format!("picture-{name}")>
            <figcaption>{caption}</figcaption>
            <Pointer surface picture title name pressed>
                <div class="picture__box" node_ref=surface.frame style:height=move || format!("{}px", height.get())>
                    <canvas node_ref=surface.base aria-hidden="true"></canvas>
                    <canvas node_ref=surface.over class="picture__over" aria-hidden="true"></canvas>
                </div>
            </Pointer>
            <InWords picture/>
            <Exports surface picture title name height/>
        </figure>
    }
}

/// The height of a picture in a box of a width. What is far from the window is not worked out at every keystroke, only for another width.
fn height_of<P: Picture + Clone + PartialEq + Send + Sync + 'static>(
    picture: Memo<P>,
    width: RwSignal<f64>,
    is_near: RwSignal<bool>,
) -> Memo<f64> {
    let size = Memo::new(move |before: Option<&(f64, f64)>| {
        let width = width.get().max(1.0);
        match before {
            Some(before) if (before.0 - width).abs() < 0.5 && !is_near.get() => *before,
            _ => (width, picture.with(|picture| picture.height(width))),
        }
    });
    Memo::new(move |_| size.get().1)
}

/// Keeps the width signal that of the box.
fn follow_width(surface: Surface) {
    Effect::new(move || {
        let Some(frame) = surface.frame.get() else { return };
        let measured = frame.clone();
        let measure = move || {
            let width = f64::from(measured.client_width());
            // The box may have gone since the observer was told.
            if surface.width.try_get_untracked().is_some_and(|known| (width - known).abs() > 0.5) {
                let _ = surface.width.try_set(width);
            }
        };
        measure();
        let observed = Closure::<dyn FnMut()>::new(measure);
        if let Ok(observer) = web_sys::ResizeObserver::new(observed.as_ref().unchecked_ref()) {
            observer.observe(&frame);
            let kept = StoredValue::new_local((observer, observed));
            on_cleanup(move || {
                let _ = kept.try_with_value(|(observer, _)| observer.disconnect());
            });
        }
    });
}

/// Paints whenever picture, size or theme changed, once a frame at most; what is far from the window when it comes near.
fn paint_each_frame<P: Picture + Clone + PartialEq + Send + Sync + 'static>(
    surface: Surface,
    picture: Memo<P>,
    height: Memo<f64>,
    is_near: RwSignal<bool>,
) {
    let state = State::here();
    let asked = StoredValue::new(false);
    Effect::new(move || {
        if !is_near.get() {
            return;
        }
        picture.track();
        state.theme.track();
        let (width, height) = (surface.width.get(), height.get());
        if width < 1.0 || asked.get_value() {
            return;
        }
        asked.set_value(true);
        request_animation_frame(move || {
            asked.try_set_value(false);
            let _ = (width, height);
            paint(surface, picture, &state.theme.colours());
        });
    });
}

fn paint<P: Picture + Clone + PartialEq + Send + Sync + 'static>(surface: Surface, picture: Memo<P>, theme: &Theme) {
    let Some(Some(base)) = surface.base.try_get_untracked() else { return };
    let Some(width) = surface.width.try_get_untracked() else { return };
    let window = picture.try_with_untracked(|picture| {
        let size = (width, picture.height(width.max(1.0)));
        canvas::paint_on(&base, picture, theme, size, device::pixel_ratio())
    });
    match window {
        Some(Ok(window)) => {
            let _ = surface.window.try_set(window);
        }
        Some(Err(why)) => device::log_error(&crate::problem::Explain::what(&why)),
        None => {}
    }
}

/// The same facts in sentences.
#[component]
fn InWords<P: Picture + Clone + PartialEq + Send + Sync + 'static>(picture: Memo<P>) -> impl IntoView {
    let state = State::here();
    let is_open = RwSignal::new(false);
    let toggled = move |event: web_sys::Event| is_open.set(event_target::<web_sys::Element>(&event).has_attribute("open"));
    let lines = move || picture.with(Picture::describe).into_iter().map(|line| view! { <li>{state.say(&line)}</li> }).collect_view();
    view! {
        <details on:toggle=toggled>
            <summary>"The same in words"</summary>
            <ul>{move || is_open.get().then(lines)}</ul>
        </details>
    }
}

/// PNG, SVG and CSV.
#[component]
fn Exports<P: Picture + Clone + PartialEq + Send + Sync + 'static>(
    surface: Surface,
    picture: Memo<P>,
    title: Memo<String>,
    name: &'static str,
    height: Memo<f64>,
) -> impl IntoView {
    let state = State::here();
    let svg = move |_| {
        let size = (pixels(surface.width.get_untracked()), pixels(height.get_untracked()));
        let theme = state.theme.colours();
        if let Ok(text) = picture.with_untracked(|picture| chart::svg_text(picture, &theme, size)) {
            device::save_file(&format!("{name}.svg"), "image/svg+xml", &text);
        }
    };
    let csv = move |_| device::save_file(&format!("{name}.csv"), "text/csv", &picture.with_untracked(|picture| picture.table().csv()));
    let png = move |_| {
        let Some(base) = surface.base.get_untracked() else { return };
        let saved = Closure::once_into_js(move |blob: Option<web_sys::Blob>| {
            if let Some(blob) = blob {
                device::save_blob(&format!("{name}.png"), &blob);
            }
        });
        let _ = base.to_blob(saved.unchecked_ref());
    };
    view! {
        <div class="picture__acts" role="group" aria-label=move || format!("Save the picture: {}", title.get())>
            <span class="words">"Save as"</span>
            <button type="button" class="btn" on:click=png>"PNG"</button>
            <button type="button" class="btn" on:click=svg>"SVG"</button>
            <button type="button" class="btn" on:click=csv>"CSV"</button>
        </div>
    }
}

/// A length as a count of pixels, at least one.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the length is clamped first")]
pub fn pixels(length: f64) -> u32 {
    length.round().clamp(1.0, 8192.0) as u32
}
