//! What is kept on the device: every text of the book and of the shop's own entries, read at once and written behind the page's back.
//!
//! The page reads and changes a [`Ledger`] in memory. What is changed goes to the database, in one strict transaction at a time; until
//! that is on the disk the store says that it is writing, and where it fails the page still has it all and tries again with the next change.
//! Other tabs are told what was written. A page that is left puts what is not written yet into the older store, which the next page
//! empties. Where the browser refuses its database, the older store serves in its place.

use std::cell::RefCell;
use std::rc::Rc;

use js_sys::Promise;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, future_to_promise, spawn_local};

use super::database::Database;
use super::local::{self, StoreError};
use crate::app::device;
use crate::job::kept;
use crate::ledger::{Change, Ledger};

/// How far the store is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Health {
    /// All is written.
    Written,
    /// Something is being written.
    Writing,
    /// What waits could not be written.
    Failed(StoreError),
}

/// How the text under a key changed by another page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Elsewhere {
    /// It was written there.
    Written,
    /// It was written there while this page was about to, and stands in place of this page's.
    Overtaken,
}

/// Where texts are written.
#[derive(Clone, Default)]
enum Backing {
    /// Not known yet: what is changed waits.
    #[default]
    Opening,
    Database(Database),
    /// The older store.
    Local,
}

/// What is called when another page wrote the text under a key.
type Follower = Rc<dyn Fn(&str, Elsewhere)>;

/// On which channel tabs tell each other what they wrote.
const CHANNEL: &str = "layshaft.kept";

thread_local! {
    static LEDGER: RefCell<Ledger> = RefCell::default();
    static BACKING: RefCell<Backing> = RefCell::default();
    static HEALTH: ArcRwSignal<Health> = ArcRwSignal::new(Health::Written);
    /// The writing that is under way.
    static RUN: RefCell<Option<Promise>> = const { RefCell::new(None) };
    static FOLLOWERS: RefCell<Vec<Follower>> = const { RefCell::new(Vec::new()) };
    static CHANNEL_OPEN: RefCell<Option<web_sys::BroadcastChannel>> = const { RefCell::new(None) };
    /// What stands in the older store and is taken out of it once it is written: what was found there, and what this page put there
    /// when it was left.
    static TAKEN_IN: RefCell<Vec<(String, String)>> = const { RefCell::new(Vec::new()) };
}

/// Reads what is kept, once; answers whether the database is there. What stands in the older store is taken in, and taken out of it once
/// it is written.
pub async fn open() -> bool {
    if !BACKING.with_borrow(|backing| matches!(backing, Backing::Opening)) {
        return has_database();
    }
    let database = Database::open().await;
    let texts = match &database {
        Some(database) => database.texts().await.ok(),
        None => None,
    };
    let (backing, mut ledger) = match (database, texts) {
        (Some(database), Some(texts)) => (Backing::Database(database), Ledger::of(texts)),
        _ => (Backing::Local, Ledger::of(of_the_older_store().collect())),
    };
    if matches!(backing, Backing::Database(_)) {
        let found: Vec<_> = of_the_older_store().collect();
        for (key, text) in &found {
            kept::take_in(&mut ledger, key, text, device::fresh_id());
        }
        TAKEN_IN.set(found);
    }
    // What was put here while it opened stands above what is kept.
    let meanwhile = LEDGER.with_borrow(Ledger::changes);
    for change in meanwhile {
        ledger.put(&change.key, change.now.as_deref());
    }
    LEDGER.set(ledger);
    BACKING.set(backing);
    listen();
    write_on();
    has_database()
}

/// The texts that the older store holds.
fn of_the_older_store() -> impl Iterator<Item = (String, String)> {
    local::keys().into_iter().filter(|key| kept::is_kept(key)).filter_map(|key| local::read(&key).map(|text| (key, text)))
}

/// Whether the database serves, and not the older store.
pub fn has_database() -> bool {
    BACKING.with_borrow(|backing| matches!(backing, Backing::Database(_)))
}

/// The text under a key.
pub fn read(key: &str) -> Option<String> {
    LEDGER.with_borrow(|ledger| ledger.text(key).map(str::to_owned))
}

/// What stands behind `prefix` in every key that begins with it.
pub fn keys(prefix: &str) -> Vec<String> {
    LEDGER.with_borrow(|ledger| ledger.keys(prefix).filter_map(|key| key.strip_prefix(prefix).map(str::to_owned)).collect())
}

/// Puts a text under a key, to be written as soon as may be.
pub fn write(key: &str, text: &str) {
    change(|ledger| ledger.put(key, Some(text)));
}

/// Removes what stands under a key.
pub fn remove(key: &str) {
    change(|ledger| ledger.put(key, None));
}

/// Changes what is kept, to be written as soon as may be.
pub fn change(change: impl FnOnce(&mut Ledger)) {
    LEDGER.with_borrow_mut(change);
    write_on();
}

/// Goes back to what is written under keys, where that could not be changed.
pub fn take_back(keys: &[String]) {
    change(|ledger| keys.iter().for_each(|key| ledger.take_back(key)));
}

/// Whether the text under a key waits to be written.
pub fn is_behind(key: &str) -> bool {
    LEDGER.with_borrow(|ledger| ledger.is_behind(key))
}

/// Whether anything but the text under a key waits to be written.
pub fn is_more_behind_than(key: &str) -> bool {
    LEDGER.with_borrow(|ledger| ledger.changes().iter().any(|change| change.key != key))
}

/// How far the store is; whoever asks is told when that changes.
pub fn health() -> ArcRwSignal<Health> {
    HEALTH.with(Clone::clone)
}

/// Waits until all that waits is written, or cannot be.
///
/// # Errors
/// When something could not be written; it stands in this page and is tried again with the next change.
pub async fn settled() -> Result<(), StoreError> {
    if let Some(run) = RUN.with_borrow(Clone::clone) {
        let _ = JsFuture::from(run).await;
    }
    match health().get_untracked() {
        Health::Failed(why) => Err(why),
        Health::Written | Health::Writing => Ok(()),
    }
}

/// Calls `act` when another page wrote the text under a key.
pub fn follow(act: impl Fn(&str, Elsewhere) + 'static) {
    FOLLOWERS.with_borrow_mut(|followers| followers.push(Rc::new(act)));
}

/// Puts whatever is not written yet where it is written at once, for the page may be gone before the database answers. Answers whether
/// all of it found room.
pub fn leave() -> bool {
    let changes = LEDGER.with_borrow(Ledger::changes);
    let texts = changes.into_iter().filter_map(|change| change.now.map(|text| (change.key, text)));
    let (put, refused): (Vec<_>, Vec<_>) = texts.partition(|(key, text)| local::write(key, text).is_ok());
    TAKEN_IN.with_borrow_mut(|taken_in| taken_in.extend(put));
    refused.is_empty()
}

/// Writes what waits, unless that is being done or is for later.
fn write_on() {
    let is_later = BACKING.with_borrow(|backing| matches!(backing, Backing::Opening)) || RUN.with_borrow(Option::is_some);
    if is_later {
        return;
    }
    if LEDGER.with_borrow(|ledger| ledger.changes().is_empty()) {
        drop_taken_in();
        health().set(Health::Written);
        return;
    }
    health().set(Health::Writing);
    let run = future_to_promise(async {
        let health_now = run().await;
        RUN.set(None);
        health().set(health_now);
        Ok(JsValue::UNDEFINED)
    });
    RUN.set(Some(run));
}

/// Writes until nothing waits, or it cannot be.
async fn run() -> Health {
    loop {
        let changes = LEDGER.with_borrow(Ledger::changes);
        if changes.is_empty() {
            drop_taken_in();
            return Health::Written;
        }
        match write_all(&changes).await {
            Ok(()) => {}
            Err(StoreError::Full) if gives_up_copies() => {}
            Err(why) => return Health::Failed(why),
        }
    }
}

async fn write_all(changes: &[Change]) -> Result<(), StoreError> {
    let Backing::Database(database) = BACKING.with_borrow(Clone::clone) else {
        return changes.iter().try_for_each(write_local);
    };
    let theirs = database.write(changes).await?;
    let written = changes.iter().filter(|change| !theirs.iter().any(|(key, _)| *key == change.key));
    let written: Vec<&Change> = written.inspect(|change| LEDGER.with_borrow_mut(|ledger| ledger.note_written(change))).collect();
    tell(written.iter().map(|change| change.key.as_str()));
    for (key, there) in theirs {
        LEDGER.with_borrow_mut(|ledger| ledger.note_theirs(&key, there));
        call_followers(&key, Elsewhere::Overtaken);
    }
    Ok(())
}

/// Takes out of the older store what was taken in, now that all of it is written, here or under another key. What another page put there
/// meanwhile stays.
fn drop_taken_in() {
    if has_database() {
        let taken_in = TAKEN_IN.take().into_iter();
        taken_in.filter(|(key, text)| local::read(key).as_deref() == Some(text)).for_each(|(key, _)| local::remove(&key));
    }
}

fn write_local(change: &Change) -> Result<(), StoreError> {
    match &change.now {
        Some(text) => local::write(&change.key, text)?,
        None => local::remove(&change.key),
    }
    LEDGER.with_borrow_mut(|ledger| ledger.note_written(change));
    Ok(())
}

/// Makes room by giving up the copies of what jobs said before; answers whether there were any.
fn gives_up_copies() -> bool {
    let copies: Vec<String> = LEDGER.with_borrow(|ledger| ledger.keys(kept::GOOD).map(str::to_owned).collect());
    LEDGER.with_borrow_mut(|ledger| copies.iter().for_each(|key| ledger.put(key, None)));
    !copies.is_empty()
}

/// Tells the other tabs which keys were written.
fn tell<'a>(keys: impl Iterator<Item = &'a str>) {
    let keys: js_sys::Array = keys.map(JsValue::from_str).collect();
    CHANNEL_OPEN.with_borrow(|channel| {
        if let Some(channel) = channel {
            let _ = channel.post_message(&keys);
        }
    });
}

/// Listens to what other tabs write.
fn listen() {
    if !has_database() {
        device::on_window("storage", |event: web_sys::StorageEvent| {
            if let Some(key) = event.key().filter(|key| kept::is_kept(key)) {
                note_theirs(&key, local::read(&key));
            }
        });
        return;
    }
    let Ok(channel) = web_sys::BroadcastChannel::new(CHANNEL) else { return };
    let heard = Closure::<dyn Fn(web_sys::MessageEvent)>::new(|event: web_sys::MessageEvent| {
        let keys: Vec<String> = js_sys::Array::from(&event.data()).iter().filter_map(|key| key.as_string()).collect();
        spawn_local(async move {
            let Backing::Database(database) = BACKING.with_borrow(Clone::clone) else { return };
            for key in keys {
                if let Ok(theirs) = database.text(&key).await {
                    note_theirs(&key, theirs);
                }
            }
        });
    });
    // It hears for as long as the page lives.
    channel.set_onmessage(Some(heard.into_js_value().unchecked_ref()));
    CHANNEL_OPEN.set(Some(channel));
}

/// Takes what another tab wrote; where something of this page waits under the same key, writing that will find out.
fn note_theirs(key: &str, theirs: Option<String>) {
    let is_new = LEDGER.with_borrow_mut(|ledger| {
        let is_new = !ledger.is_behind(key) && ledger.text(key) != theirs.as_deref();
        if is_new {
            ledger.note_theirs(key, theirs);
        }
        is_new
    });
    if is_new {
        call_followers(key, Elsewhere::Written);
    }
}

fn call_followers(key: &str, how: Elsewhere) {
    let followers = FOLLOWERS.with_borrow(Clone::clone);
    for follower in followers {
        follower(key, how);
    }
}
