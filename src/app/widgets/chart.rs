//! A picture on the page: painted at the size it is shown, once a frame at most; its crosshair on another canvas above it, so that moving
//! it repaints nothing else.

use std::sync::Arc;

use leptos::html::{Canvas, Div};
use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use super::pointer::Pointer;
use crate::app::device;
use crate::app::state::State;
use crate::chart::scene::Window;
use crate::chart::{Picture, Theme, canvas};

/// A picture that is shown; equal to itself alone.
#[derive(Clone)]
pub struct Shown(Arc<dyn Picture>);

impl Shown {
    /// A picture to be shown.
    pub fn new(picture: impl Into<Arc<dyn Picture>>) -> Self {
        Self(picture.into())
    }

    /// The picture.
    pub fn picture(&self) -> &dyn Picture {
        &*self.0
    }
}

impl PartialEq for Shown {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

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

/// A picture with its crosshair and its read-out.
#[component]
pub fn Chart(
    /// What is drawn.
    picture: Memo<Option<Shown>>,
    /// Its name on the page.
    name: &'static str,
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
    let height = Memo::new(move |_| {
        let width = surface.width.get().max(1.0);
        picture.with(|shown| shown.as_ref().map_or(0.0, |shown| shown.picture().height(width)))
    });
    follow_width(surface);
    paint_each_frame(surface, picture, height);
    view! {
        <div class="chart" id=format!("picture-{name}")>
            <Pointer surface picture name pressed>
                <div class="picture__box" node_ref=surface.frame style:height=move || format!("{}px", height.get())>
                    <canvas node_ref=surface.base aria-hidden="true"></canvas>
                    <canvas node_ref=surface.over class="picture__over" aria-hidden="true"></canvas>
                </div>
            </Pointer>
        </div>
    }
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

/// Paints whenever picture, size or theme changed, once a frame at most.
fn paint_each_frame(surface: Surface, picture: Memo<Option<Shown>>, height: Memo<f64>) {
    let state = State::here();
    let asked = StoredValue::new(false);
    Effect::new(move || {
        picture.track();
        state.theme.track();
        height.track();
        if surface.width.get() < 1.0 || asked.get_value() {
            return;
        }
        asked.set_value(true);
        request_animation_frame(move || {
            asked.try_set_value(false);
            paint(surface, picture, &state.theme.colours());
        });
    });
}

fn paint(surface: Surface, picture: Memo<Option<Shown>>, theme: &Theme) {
    let Some(Some(base)) = surface.base.try_get_untracked() else { return };
    let Some(width) = surface.width.try_get_untracked() else { return };
    let Some(Some(shown)) = picture.try_get_untracked() else { return };
    let size = (width, shown.picture().height(width.max(1.0)));
    match canvas::paint_on(&base, shown.picture(), theme, size, device::pixel_ratio()) {
        Ok(window) => {
            let _ = surface.window.try_set(window);
        }
        Err(why) => device::log_error(&crate::problem::Explain::what(&why)),
    }
}

/// A length as a count of pixels, at least one.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the length is clamped first")]
pub fn pixels(length: f64) -> u32 {
    length.round().clamp(1.0, 8192.0) as u32
}
