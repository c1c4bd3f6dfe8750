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

/// Takes away what stood in the page until the sheet does.
pub fn clear_opening_words() {
    if let Some(words) = web_sys::window().and_then(|window| window.document()).and_then(|document| document.get_element_by_id("boot")) {
        words.remove();
    }
}

/// Says on the root element that the sheet stands.
pub fn say_ready() {
    if let Some(root) = root() {
        let _ = root.set_attribute("data-ready", "");
    }
}

/// Says that every part of the program has come, or was asked for in vain: the line is free.
pub fn say_whole() {
    if let Some(root) = root() {
        let _ = root.set_attribute("data-whole", "");
    }
    announce("layshaft:whole");
}

/// Calls `act` once what stands in the page now is painted.
pub fn once_painted(act: impl FnOnce() + 'static) {
    request_animation_frame(move || soon(act));
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

/// Calls `act` once no pointer presses anything any more: a button that moved away under the press would not hear of it.
pub fn after_press(act: Box<dyn FnOnce()>) {
    /// Milliseconds between two looks; a press lasts about a hundred.
    const EVERY: u32 = 30;
    let pressed =
        web_sys::window().and_then(|window| window.document()).and_then(|page| page.query_selector("body :active").ok().flatten());
    if pressed.is_some() {
        after(EVERY, move || after_press(act));
    } else {
        soon(act);
    }
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

/// Goes to a fragment of the page, `#` included.
pub fn go_to_fragment(fragment: &str) {
    if let Some(window) = web_sys::window() {
        let _ = window.location().set_hash(fragment);
    }
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
    if has(&navigator, "storage") {
        let _ = navigator.storage().persist();
    }
}

/// Whether the browser gives this page something: one without a secure origin has no storage manager, clipboard or microphone.
pub fn has(navigator: &web_sys::Navigator, what: &str) -> bool {
    js_sys::Reflect::get(navigator, &JsValue::from_str(what)).is_ok_and(|there| there.is_object())
}

/// Puts a text on the clipboard and says whether the browser let it; some have none, some refuse.
///
/// These few lines, and those of the one observer of sizes in `widgets::chart`, are all that leptos-use would be taken for: a crate more
/// to keep in step with leptos, whose two hooks bring signals and options that nobody here reads.
pub fn copy(text: String, done: impl FnOnce(bool) + 'static) {
    leptos::task::spawn_local(async move { done(put_on_clipboard(&text).await) });
}

async fn put_on_clipboard(text: &str) -> bool {
    let Some(navigator) = web_sys::window().map(|window| window.navigator()) else { return false };
    has(&navigator, "clipboard") && wasm_bindgen_futures::JsFuture::from(navigator.clipboard().write_text(text)).await.is_ok()
}

/// Whether the device has its own way of sharing a text.
pub fn shares() -> bool {
    web_sys::window().is_some_and(|window| js_sys::Reflect::has(&window.navigator(), &JsValue::from_str("share")).unwrap_or(false))
}

/// Hands a text to the device's own way of sharing; whoever closes that has shared nothing.
pub fn share(text: &str) {
    let Some(navigator) = web_sys::window().map(|window| window.navigator()) else { return };
    let data = web_sys::ShareData::new();
    data.set_text(text);
    let asked = navigator.share_with_data(&data);
    leptos::task::spawn_local(async move {
        let _ = wasm_bindgen_futures::JsFuture::from(asked).await;
    });
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

/// Scrolls what an element stands in sideways, so that the whole of it is seen; nothing moves up or down.
pub fn scroll_sideways_to(element: &web_sys::Element) {
    let options = web_sys::ScrollIntoViewOptions::new();
    options.set_inline(web_sys::ScrollLogicalPosition::Nearest);
    options.set_block(web_sys::ScrollLogicalPosition::Nearest);
    element.scroll_into_view_with_scroll_into_view_options(&options);
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

/// From a field of a setup's column to the next one below it, or above where one goes back; from the last one to the first of the next
/// setup. Answers whether there was one to go to.
///
/// Tooth counts are typed down a column, whatever the order of a table's cells.
pub fn step_down_the_column(event: &web_sys::KeyboardEvent, back: bool) -> bool {
    let field = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok());
    let Some(field) = field.filter(|field| field.has_attribute("data-column")) else { return false };
    let Some(document) = web_sys::window().and_then(|window| window.document()) else { return false };
    let Ok(found) = document.query_selector_all("input[data-column]") else { return false };
    let mut fields: Vec<web_sys::HtmlInputElement> = (0..found.length()).filter_map(|at| found.item(at)?.dyn_into().ok()).collect();
    let mut columns: Vec<Option<String>> = Vec::new();
    for column in fields.iter().map(|field| field.get_attribute("data-column")) {
        if !columns.contains(&column) {
            columns.push(column);
        }
    }
    crate::order::by_key(&mut fields, |field| columns.iter().position(|column| *column == field.get_attribute("data-column")));
    let at = fields.iter().position(|each| *each == field);
    let next = at.and_then(|at| if back { at.checked_sub(1) } else { at.checked_add(1) });
    let Some(next) = next.and_then(|next| fields.get(next)) else { return false };
    let _ = next.focus();
    next.select();
    true
}
