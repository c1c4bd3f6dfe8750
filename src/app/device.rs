//! The device the page runs on: its language, its theme, its clock; and the few words said to it.

use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use super::state::State;
use crate::job::book::RecordId;
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

/// Calls `act` when every face the page has asked for is there.
pub fn when_fonts_are_there(act: impl FnOnce() + 'static) {
    let get = |of: &JsValue, name: &str| js_sys::Reflect::get(of, &JsValue::from_str(name)).ok();
    let document = web_sys::window().and_then(|window| window.document());
    let ready =
        document.and_then(|document| get(&get(&document, "fonts")?, "ready")).and_then(|ready| ready.dyn_into::<js_sys::Promise>().ok());
    if let Some(ready) = ready {
        leptos::task::spawn_local(async move {
            let _ = wasm_bindgen_futures::JsFuture::from(ready).await;
            act();
        });
    }
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

/// The local time in ISO form: `2026-11-25T09:31:17`.
pub fn now() -> String {
    let now = js_sys::Date::new_0();
    let (month, day) = (now.get_month().saturating_add(1), now.get_date());
    format!("{:04}-{month:02}-{day:02}T{:02}:{:02}:{:02}", now.get_full_year(), now.get_hours(), now.get_minutes(), now.get_seconds())
}

/// A name for a new record.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "both are positive and far below the limits of their types")]
pub fn fresh_id() -> RecordId {
    RecordId::fresh(js_sys::Date::now() as u64, (js_sys::Math::random() * 4_294_967_295.0) as u32)
}

/// The fragment of the page's address, `#` included; empty where there is none.
pub fn fragment() -> String {
    web_sys::window().and_then(|window| window.location().hash().ok()).unwrap_or_default()
}

/// The page's address without its fragment.
pub fn address() -> String {
    let address = web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default();
    address.split('#').next().unwrap_or_default().to_owned()
}

/// Takes the fragment out of the page's address.
pub fn drop_fragment() {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&address()));
    }
}

/// Asks the browser once not to throw the store away when room gets scarce. It may refuse; nothing depends on it.
pub fn ask_to_persist() {
    thread_local! { static IS_ASKED: std::cell::Cell<bool> = const { std::cell::Cell::new(false) }; }
    if IS_ASKED.replace(true) {
        return;
    }
    let Some(navigator) = web_sys::window().map(|window| window.navigator()) else { return };
    // Pages without a secure origin have no storage manager.
    if js_sys::Reflect::get(&navigator, &JsValue::from_str("storage")).is_ok_and(|manager| manager.is_object()) {
        let _ = navigator.storage().persist();
    }
}

/// Puts a text on the clipboard and says whether the browser let it; some have none, some refuse.
pub fn copy(text: String, done: impl FnOnce(bool) + 'static) {
    leptos::task::spawn_local(async move { done(put_on_clipboard(&text).await) });
}

async fn put_on_clipboard(text: &str) -> bool {
    let Some(navigator) = web_sys::window().map(|window| window.navigator()) else { return false };
    // Pages without a secure origin have no clipboard.
    if !js_sys::Reflect::get(&navigator, &JsValue::from_str("clipboard")).is_ok_and(|clipboard| clipboard.is_object()) {
        return false;
    }
    wasm_bindgen_futures::JsFuture::from(navigator.clipboard().write_text(text)).await.is_ok()
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

/// Whether a key is pressed inside a field that takes text.
pub fn is_typing(event: &web_sys::KeyboardEvent) -> bool {
    is_in(event, "input, textarea, select, [contenteditable]")
}

/// Whether a key is pressed inside a text that is not the job's, so that undoing in it is the browser's: a search, or the
/// catalogue's form and box.
pub fn has_own_undo(event: &web_sys::KeyboardEvent) -> bool {
    is_in(event, "input[type=search], .shelf input[type=text], .shelf textarea")
}

fn is_in(event: &web_sys::KeyboardEvent, selector: &str) -> bool {
    let element = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    element.is_some_and(|element| element.matches(selector).unwrap_or(false))
}

/// Moves the focus to the element of a name, once the page has taken in what changed.
pub fn focus(id: &str) {
    let id = id.to_owned();
    request_animation_frame(move || {
        let element = web_sys::window().and_then(|window| window.document()).and_then(|document| document.get_element_by_id(&id));
        if let Some(element) = element.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
            let _ = element.focus();
        }
    });
}

/// Moves the focus to the element inside another that the first of some selectors finds, once the page has taken in what changed.
pub fn focus_in(inside: &web_sys::HtmlElement, selectors: &'static [&'static str]) {
    let inside = inside.clone();
    request_animation_frame(move || {
        let found = selectors.iter().find_map(|selector| inside.query_selector(selector).ok().flatten());
        if let Some(element) = found.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
            let _ = element.focus();
        }
    });
}

/// Tells the rest of the page that something about it changed.
pub fn announce(event: &str) {
    if let (Some(window), Ok(event)) = (web_sys::window(), web_sys::Event::new(event)) {
        let _ = window.dispatch_event(&event);
    }
}

/// Whether the page is scrolled past an element that begins at another one, nearly the whole of it: then it may shrink.
///
/// It comes back where its beginning does; in between lies what it loses by shrinking, so that it never flickers.
pub fn scrolled_past(start: &'static str, element: &'static str) -> RwSignal<bool> {
    const SHARE: f64 = 0.9;
    const BACK: f64 = 20.0;
    let past = RwSignal::new(false);
    on_window("scroll", move |_: web_sys::Event| {
        let find = |id| web_sys::window().and_then(|window| window.document()).and_then(|document| document.get_element_by_id(id));
        let (Some(start), Some(element)) = (find(start), find(element)) else { return };
        let top = start.get_bounding_client_rect().top();
        let now = past.get_untracked();
        let next = if now { top < BACK } else { top < -SHARE * element.get_bounding_client_rect().height() };
        if now != next {
            past.set(next);
        }
    });
    past
}

/// Milliseconds since the page began.
pub fn milliseconds() -> f64 {
    web_sys::window().and_then(|window| window.performance()).map_or(0.0, |performance| performance.now())
}

/// Leaves a mark in the browser's own timeline.
pub fn mark(name: &str) {
    if let Some(performance) = web_sys::window().and_then(|window| window.performance()) {
        let _ = performance.mark(name);
    }
}

/// Calls `act` as soon as the browser has done what waits: painted, answered a key. A message takes no pause, as a timer does.
pub fn soon(act: impl FnOnce() + 'static) {
    let Ok(channel) = web_sys::MessageChannel::new() else {
        after(0, act);
        return;
    };
    let receiver = channel.port2();
    let done = receiver.clone();
    let heard = Closure::once_into_js(move || {
        done.close();
        act();
    });
    receiver.set_onmessage(Some(heard.unchecked_ref()));
    if channel.port1().post_message(&JsValue::NULL).is_err() {
        log_error("a message to the page itself was refused");
    }
}

/// The name of that section of the page which lies across the upper third of the window; empty while none does.
pub fn section_in_view() -> RwSignal<String> {
    let current = RwSignal::new(String::new());
    let seen = Closure::<dyn FnMut(js_sys::Array)>::new(move |entries: js_sys::Array| {
        for entry in entries.iter().map(JsCast::unchecked_into::<web_sys::IntersectionObserverEntry>) {
            let id = entry.target().id();
            if entry.is_intersecting() {
                current.set(id);
            } else if current.get_untracked() == id {
                current.set(String::new());
            }
        }
    });
    let options = web_sys::IntersectionObserverInit::new();
    options.set_root_margin("-33% 0px -66% 0px");
    let observer = web_sys::IntersectionObserver::new_with_options(seen.as_ref().unchecked_ref(), &options);
    // The observer lives as long as the page.
    seen.forget();
    if let Ok(observer) = observer {
        request_animation_frame(move || {
            let sections = web_sys::window().and_then(|window| window.document()?.query_selector_all("section[id]").ok());
            let each = |sections: web_sys::NodeList| (0..sections.length()).filter_map(move |at| sections.item(at)?.dyn_into().ok());
            sections.into_iter().flat_map(each).for_each(|section: web_sys::Element| observer.observe(&section));
        });
    }
    current
}

/// Whether an element is in the window or within a few hundred pixels of it.
pub fn near_window<E>(element: NodeRef<E>) -> RwSignal<bool>
where
    E: leptos::html::ElementType + 'static,
    E::Output: JsCast + Clone + AsRef<web_sys::Element> + 'static,
{
    let is_near = RwSignal::new(false);
    Effect::new(move || {
        let Some(element) = element.get() else { return };
        let seen = Closure::<dyn FnMut(js_sys::Array)>::new(move |entries: js_sys::Array| {
            let last = entries.pop().unchecked_into::<web_sys::IntersectionObserverEntry>();
            let _ = is_near.try_set(last.is_intersecting());
        });
        let options = web_sys::IntersectionObserverInit::new();
        options.set_root_margin("300px");
        if let Ok(observer) = web_sys::IntersectionObserver::new_with_options(seen.as_ref().unchecked_ref(), &options) {
            observer.observe(element.as_ref());
            let kept = StoredValue::new_local((observer, seen));
            on_cleanup(move || {
                let _ = kept.try_with_value(|(observer, _)| observer.disconnect());
            });
        }
    });
    is_near
}
