//! The device the page runs on: its language, its theme, its clock; and the few words said to it.

use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use super::state::State;
use crate::sheet::Words;

/// The trade's words that the browser's language asks for.
pub fn words() -> Words {
    web_sys::window().and_then(|window| window.navigator().language()).map_or(Words::Us, |tag| Words::of_language(&tag))
}

/// The page's root element.
pub fn root() -> Option<web_sys::Element> {
    web_sys::window()?.document()?.document_element()
}

/// Says on the root element that the sheet stands.
pub fn say_ready() {
    if let Some(root) = root() {
        let _ = root.set_attribute("data-ready", "");
    }
}

/// Device pixels to a CSS pixel.
pub fn pixel_ratio() -> f64 {
    web_sys::window().map_or(1.0, |window| window.device_pixel_ratio().clamp(0.5, 8.0))
}

/// Whether the system asks for a dark page.
pub fn prefers_dark() -> bool {
    dark_query().is_some_and(|query| query.matches())
}

/// The system's wish for a dark page, to be listened to.
pub fn dark_query() -> Option<web_sys::MediaQueryList> {
    web_sys::window()?.match_media("(prefers-color-scheme: dark)").ok().flatten()
}

/// Writes an error where developers look.
pub fn log_error(text: &str) {
    web_sys::console::error_1(&JsValue::from_str(text));
}

/// Keeps the page's title the job's.
pub fn follow_title(state: State) {
    Effect::new(move || {
        let title = state.job.with(|job| job.title.clone());
        if let Some(document) = web_sys::window().and_then(|window| window.document()) {
            document.set_title(&if title.is_empty() { "Layshaft".to_owned() } else { format!("{title} · Layshaft") });
        }
    });
}

/// Calls `act` on an event of the window, for as long as the page lives.
pub fn on_window<E: JsCast>(event: &str, act: impl Fn(E) + 'static) {
    // The handle would take the listener away again; the page keeps it.
    let _ = window_event_listener_untyped(event, move |event| act(event.unchecked_into()));
}

/// Calls `act` after so many milliseconds, once; answers a handle to call it off.
pub fn after(milliseconds: u32, act: impl FnOnce() + 'static) -> Option<TimeoutHandle> {
    set_timeout_with_handle(act, std::time::Duration::from_millis(u64::from(milliseconds))).ok()
}

/// Saves a text as a file of the device.
pub fn save_file(name: &str, kind: &str, text: &str) {
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let options = web_sys::BlobPropertyBag::new();
    options.set_type(kind);
    if let Ok(blob) = web_sys::Blob::new_with_str_sequence_and_options(&parts, &options) {
        save_blob(name, &blob);
    }
}

/// Saves a blob as a file of the device.
pub fn save_blob(name: &str, blob: &web_sys::Blob) {
    let Ok(url) = web_sys::Url::create_object_url_with_blob(blob) else { return };
    let anchor = web_sys::window().and_then(|window| window.document()).and_then(|document| document.create_element("a").ok());
    if let Some(anchor) = anchor.and_then(|anchor| anchor.dyn_into::<web_sys::HtmlAnchorElement>().ok()) {
        anchor.set_href(&url);
        anchor.set_download(name);
        anchor.click();
    }
    after(10_000, move || {
        let _ = web_sys::Url::revoke_object_url(&url);
    });
}

/// Tells the rest of the page that something about it changed.
pub fn announce(event: &str) {
    if let (Some(window), Ok(event)) = (web_sys::window(), web_sys::Event::new(event)) {
        let _ = window.dispatch_event(&event);
    }
}

/// Whether the page is scrolled further than so many pixels; some slack keeps it from flickering at the edge.
pub fn scrolled_past(pixels: f64) -> RwSignal<bool> {
    const SLACK: f64 = 160.0;
    let past = RwSignal::new(false);
    on_window("scroll", move |_: web_sys::Event| {
        let y = web_sys::window().and_then(|window| window.scroll_y().ok()).unwrap_or(0.0);
        let now = past.get_untracked();
        let next = if now { y > pixels - SLACK } else { y > pixels };
        if now != next {
            past.set(next);
        }
    });
    past
}
