//! The browser's store behind a guard: it may be missing, blocked or full, and each is an answer, never a throw.
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
    /// The store took the text and gives another back.
    NotTaken,
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
    store.set_item(key, text).map_err(|why| match why.dyn_ref::<web_sys::DomException>() {
        Some(why) if is_no_room(&why.name(), why.code()) => StoreError::Full,
        _ => StoreError::Blocked,
    })?;
    if read(key).as_deref() == Some(text) { Ok(()) } else { Err(StoreError::NotTaken) }
}

/// Whether an exception says that there is no room: by its name, or by the code that stood for it in older engines (both
/// from memory).
fn is_no_room(name: &str, code: u16) -> bool {
    matches!(name, "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED") || matches!(code, 22 | 1014)
}

/// Removes what stands under a key.
pub fn remove(key: &str) {
    if let Some(store) = local() {
        let _ = store.remove_item(key);
    }
}

/// What stands behind `prefix` in every key that begins with it.
pub fn keys(prefix: &str) -> Vec<String> {
    let Some(store) = local() else { return Vec::new() };
    let many = store.length().unwrap_or(0);
    let key = |at| store.key(at).ok().flatten();
    (0..many).filter_map(key).filter_map(|key| key.strip_prefix(prefix).map(str::to_owned)).collect()
}

/// Whether anything is kept under a key that begins with `prefix`.
pub fn holds_any(prefix: &str) -> bool {
    !keys(prefix).is_empty()
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
