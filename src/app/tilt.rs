//! A slope taken with the device: laid on a tube or held to a flange, pressed, still for two seconds; turned end for end, its zero is found.
//!
//! Nothing is asked of the device before the press, and only the slope is kept.

use std::cell::Cell;
use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::device;
use super::keep::local;
use super::state::State;
use crate::job::{Field, SetupField, SetupId};
use crate::problem::{Explain, capital};
use crate::questions::driveline::taken::{self, Reading};
use crate::units::Angle;

/// Between two looks at the tilt, in milliseconds.
const EVERY: u32 = 50;
const REFUSED: &str = "The browser gives no tilt: allow motion sensors for this page, or type what an inclinometer reads.";

/// The key of this device's zero, in whole thousandths of a degree.
const KEPT: &str = "layshaft.tilt-zero";

thread_local! {
    /// The zero of this device, once it was turned end for end: what was found at another visit holds until it is found again.
    static ZERO: Cell<Option<Angle>> = Cell::new(local::read(KEPT).and_then(|kept| taken::zero_of(&kept)));
}

/// What is under way.
#[derive(Clone, Debug, PartialEq)]
enum Doing {
    Nothing,
    Taking,
    /// Taken, as the device reads it.
    Taken(Reading),
    Refused(String),
}

/// The buttons beside the field of a slope; nothing where no device is held in the hand or the browser tells no tilt.
pub(super) fn buttons(setup: SetupId, field: SetupField, label: String) -> AnyView {
    if tilt().is_none() || web_sys::window().is_none_or(|window| window.navigator().max_touch_points() == 0) {
        return ().into_any();
    }
    let state = State::here();
    let doing = RwSignal::new(Doing::Nothing);
    let take = move |first: Option<Reading>| {
        let allowed = ask();
        doing.set(Doing::Taking);
        spawn_local(async move {
            if let Some(allowed) = allowed
                && JsFuture::from(allowed).await.ok().and_then(|word| word.as_string()).is_none_or(|word| word == "denied")
            {
                doing.try_set(Doing::Refused(REFUSED.into()));
                return;
            }
            listen(move |degrees| taken(state, doing, (setup, field), first, Reading::of(degrees)));
        });
    };
    let is_taking = Memo::new(move |_| doing.with(|doing| *doing == Doing::Taking));
    let first = Memo::new(move |_| doing.with(|doing| if let Doing::Taken(first) = doing { Some(*first) } else { None }));
    let says = move || match doing.get() {
        Doing::Nothing => String::new(),
        Doing::Taking => taken::asks(),
        Doing::Taken(reading) => taken::said(reading, ZERO.get()),
        Doing::Refused(why) => why,
    };
    view! {
        <span class="tilt">
            <button type="button" class="btn btn--small" aria-label=label disabled=is_taking on:click=move |_| take(None)>"take"</button>
            <Show when=move || first.get().is_some()>
                <button type="button" class="btn btn--small" on:click=move |_| take(first.get_untracked())>"turned, take again"</button>
            </Show>
            <span class="words" role="status">{says}</span>
        </span>
    }
    .into_any()
}

/// Puts what was taken into its field; the second of two readings tells the zero.
fn taken(
    state: State,
    doing: RwSignal<Doing>,
    (setup, field): (SetupId, SetupField),
    first: Option<Reading>,
    read: Result<Reading, impl Explain>,
) {
    let now = match read {
        Ok(now) => now,
        Err(why) => {
            doing.try_set(Doing::Refused(format!("{}: {}.", capital(&why.what()), why.what_to_do())));
            return;
        }
    };
    if let Some(first) = first {
        let zero = taken::zero(first.mean, now.mean);
        ZERO.set(Some(zero));
        // Where nothing can be kept, it holds for this visit.
        let _ = local::write(KEPT, &taken::zero_text(zero));
    }
    let raw = first.unwrap_or(now);
    let slope = raw.from_zero(ZERO.get().unwrap_or_default());
    if let Some(text) = state.job.with_untracked(|job| taken::text(job, setup, field, slope)) {
        state.type_text(Field::Setup(setup, field), text);
        state.leave_field();
    }
    doing.try_set(Doing::Taken(raw));
}

/// What tells the tilt of this device, where the browser knows of such a thing.
fn tilt() -> Option<JsValue> {
    let window = web_sys::window()?;
    js_sys::Reflect::get(&window, &JsValue::from_str("DeviceOrientationEvent")).ok().filter(JsValue::is_function)
}

/// Asks whether the page may know the tilt, where a browser wants to be asked.
fn ask() -> Option<js_sys::Promise> {
    let tilt = tilt()?;
    let ask: js_sys::Function = js_sys::Reflect::get(&tilt, &JsValue::from_str("requestPermission")).ok()?.dyn_into().ok()?;
    ask.call0(&tilt).ok()?.dyn_into().ok()
}

/// The tilts front to back in the next two seconds, in degrees, looked at every now and then: a device that lies still tells its tilt once.
fn listen(done: impl FnOnce(&[f64]) + 'static) {
    let now: Rc<Cell<Option<f64>>> = Rc::default();
    let hear = Rc::clone(&now);
    let listener = window_event_listener_untyped("deviceorientation", move |event| {
        let beta = js_sys::Reflect::get(&event, &JsValue::from_str("beta")).ok().and_then(|beta| beta.as_f64());
        hear.set(beta.or(hear.get()));
    });
    let done = move |heard: &[f64]| {
        listener.remove();
        done(heard);
    };
    look(now, Vec::new(), taken::SECONDS * 1_000 / EVERY, Box::new(done));
}

/// What becomes of the tilts.
type Done = Box<dyn FnOnce(&[f64])>;

/// Looks at what is told now, and so many times more.
fn look(now: Rc<Cell<Option<f64>>>, mut heard: Vec<f64>, left: u32, done: Done) {
    device::after(EVERY, move || {
        heard.extend(now.get());
        if left == 0 { done(&heard) } else { look(now, heard, left - 1, done) }
    });
}
