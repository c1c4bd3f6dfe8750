//! The browser's older store behind a guard: it may be missing, blocked or full, and each is an answer, never a throw. It is written and
//! read at once, so small settings live in it, and what a page that is left has not written yet; the browser itself may write it seconds later.
//!
//! gloo-storage throws where the store is blocked, so web-sys is asked first whether there is one.

use gloo_storage::{LocalStorage, SessionStorage, Storage};
use wasm_bindgen::JsCast;

/// What every key of this program begins with.
pub const OURS: &str = "layshaft.";

/// Why nothing was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StoreError {
    /// There is no store.
    Blocked,
    /// The store has no room.
    Full,
}

impl StoreError {
    /// Why, by what the browser threw: there is no room by its name, or by the code that stood for it in older engines (both from memory).
    pub fn of(why: &web_sys::DomException) -> Self {
        let is_no_room =
            matches!(why.name().as_str(), "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED") || matches!(why.code(), 22 | 1014);
        if is_no_room { Self::Full } else { Self::Blocked }
    }
}

/// Whether there is a store that keeps beyond the visit.
pub fn is_there() -> bool {
    local().is_some()
}

/// The text under a key.
pub fn read(key: &str) -> Option<String> {
    local()?.get_item(key).ok().flatten()
}

/// Writes a text whole or not at all: where it fails, what stood there before still stands there.
///
/// # Errors
/// When there is no store, no room, or the text does not read back.
pub fn write(key: &str, text: &str) -> Result<(), StoreError> {
    let store = local().ok_or(StoreError::Blocked)?;
    store.set_item(key, text).map_err(|why| why.dyn_ref().map_or(StoreError::Blocked, StoreError::of))?;
    if read(key).as_deref() == Some(text) { Ok(()) } else { Err(StoreError::Full) }
}

/// Removes what stands under a key.
pub fn remove(key: &str) {
    if let Some(store) = local() {
        let _ = store.remove_item(key);
    }
}

/// Every key of this program.
pub fn keys() -> Vec<String> {
    let Some(store) = local() else { return Vec::new() };
    let many = store.length().unwrap_or(0);
    let key = |at| store.key(at).ok().flatten();
    (0..many).filter_map(key).filter(|key| key.starts_with(OURS)).collect()
}

/// The text under a key of this tab alone.
pub fn read_in_tab(key: &str) -> Option<String> {
    tab()?.get_item(key).ok().flatten()
}

/// Writes a text for this tab alone, or removes it. What a tab cannot note it does without.
pub fn note_in_tab(key: &str, text: Option<&str>) {
    if let Some(store) = tab() {
        let _ = match text {
            Some(text) => store.set_item(key, text),
            None => store.remove_item(key),
        };
    }
}

fn local() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok().flatten()?;
    Some(LocalStorage::raw())
}

fn tab() -> Option<web_sys::Storage> {
    web_sys::window()?.session_storage().ok().flatten()?;
    Some(SessionStorage::raw())
}
