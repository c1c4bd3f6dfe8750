//! Which photographs there are, and the ones that are shown: each asked of the database once.

use std::cell::RefCell;
use std::collections::BTreeSet;

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::picture;
use crate::app::device;
use crate::app::keep::local::StoreError;
use crate::app::keep::store;
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::catalogue::{PartKind, saved};
use crate::job::book::RecordId;
use crate::job::kept::{ASIDE, CATALOGUE, CATALOGUE_ASIDE, RECORD};
use crate::job::photographs::{Photograph, Subject};

/// A photograph that can be shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Shown {
    /// Its name.
    pub name: String,
    /// Where the page has it.
    pub address: String,
}

thread_local! {
    static NAMES: ArcRwSignal<Vec<String>> = ArcRwSignal::new(Vec::new());
    static SHOWN: ArcRwSignal<Vec<Shown>> = ArcRwSignal::new(Vec::new());
    static ASKED: RefCell<BTreeSet<String>> = const { RefCell::new(BTreeSet::new()) };
}

/// Looks what there is, drops what shows nothing any more, and has those of the open job ready to be printed.
pub(in crate::app) fn open(state: State) {
    let owner = Owner::current().unwrap_or_default();
    spawn_local(async move {
        let Some(database) = store::database().await else { return };
        let Ok(all) = database.photographs().await else { return };
        let (there, lost): (Vec<String>, Vec<String>) = all.into_iter().partition(|name| shows_something(name));
        if !lost.is_empty() {
            let _ = database.drop_photographs(&lost).await;
        }
        names().set(there);
        owner.with(|| {
            Effect::new(move || {
                let open = state.desk.head.with(|head| head.id.clone());
                names().with(|names| {
                    let of_job = |name: &&String| matches!(Subject::of(name), Some(Subject::Step { job, .. }) if job == open);
                    names.iter().filter(of_job).for_each(|name| ask(name));
                });
            });
        });
    });
}

/// Whether a photograph shows a job or a part that is there, or may come back: what is set aside can be brought back from a file.
fn shows_something(name: &str) -> bool {
    match Subject::of(name) {
        Some(Subject::Step { job, .. }) => [RECORD, ASIDE].iter().any(|prefix| store::read(&format!("{prefix}{}", job.as_str())).is_some()),
        Some(Subject::Part { kind, id }) => has_part(kind, &id),
        None => false,
    }
}

fn has_part(kind: PartKind, id: &str) -> bool {
    let is_aside = !store::keys(CATALOGUE_ASIDE).is_empty();
    let entries = store::read(CATALOGUE).map(|text| saved::from_text(&text));
    match entries {
        Some(Ok(entries)) => is_aside || entries.own(kind).any(|entry| entry.id == id),
        Some(Err(_)) => true,
        None => is_aside,
    }
}

/// The names of all photographs; whoever asks is told when they change.
pub(in crate::app) fn names() -> ArcRwSignal<Vec<String>> {
    NAMES.with(Clone::clone)
}

/// The words under which steps of a job have photographs.
pub(in crate::app) fn of_steps(job: &RecordId) -> Vec<String> {
    let of_job = |name: &String| match Subject::of(name) {
        Some(Subject::Step { job: of, what }) if of == *job => Some(what),
        _ => None,
    };
    names().with_untracked(|names| names.iter().filter_map(of_job).collect())
}

/// Those that can be shown; whoever asks is told when one more can.
pub(super) fn shown() -> ArcRwSignal<Vec<Shown>> {
    SHOWN.with(Clone::clone)
}

/// Asks for a photograph, so that it can be shown.
pub(super) fn ask(name: &str) {
    if !ASKED.with_borrow_mut(|asked| asked.insert(name.to_owned())) {
        return;
    }
    let name = name.to_owned();
    spawn_local(async move {
        let Some(database) = store::database().await else { return };
        if let Ok(Some(picture)) = database.photograph(&name).await {
            show(&name, &picture);
        }
    });
}

fn show(name: &str, picture: &web_sys::Blob) {
    if let Ok(address) = web_sys::Url::create_object_url_with_blob(picture) {
        ASKED.with_borrow_mut(|asked| asked.insert(name.to_owned()));
        shown().update(|shown| shown.push(Shown { name: name.to_owned(), address }));
    }
}

/// Takes a file in as a photograph; says why where that cannot be.
pub(super) async fn take(state: State, subject: Subject, file: web_sys::File) {
    let Some(picture) = picture::jpeg(&file).await else {
        let name = file.name();
        state.tell(Notice::caution(format!(
            "“{name}” is no picture that this browser can open. Choose a JPEG or PNG file, or take it anew."
        )));
        return;
    };
    let name = subject.photograph(&device::fresh_id());
    match put(&[(name.clone(), picture.clone())]).await {
        Ok(()) => show(&name, &picture),
        Err(why) => state.tell(Notice::photograph_not_kept(why)),
    }
}

/// Writes photographs.
async fn put(all: &[(String, web_sys::Blob)]) -> Result<(), StoreError> {
    let database = store::database().await.ok_or(StoreError::Blocked)?;
    database.put_photographs(all).await?;
    device::ask_to_persist();
    names().update(|names| {
        for (name, _) in all {
            if !names.contains(name) {
                names.push(name.clone());
            }
        }
    });
    Ok(())
}

/// Removes a photograph, and answers it, so that it can be put back.
pub(super) async fn remove(name: &str) -> Option<web_sys::Blob> {
    let database = store::database().await?;
    let picture = database.photograph(name).await.ok()??;
    database.drop_photographs(&[name.to_owned()]).await.ok()?;
    Some(picture)
}

/// Puts a removed photograph back.
pub(super) async fn put_back(state: State, name: String, picture: web_sys::Blob) {
    if let Err(why) = put(&[(name, picture)]).await {
        state.tell(Notice::photograph_not_kept(why));
    }
}

/// Forgets a photograph that was removed.
pub(super) fn forget(name: &str) {
    names().update(|names| names.retain(|each| each != name));
}

/// Every photograph with its picture, for a backup.
pub(in crate::app) async fn all() -> Vec<Photograph> {
    let Some(database) = store::database().await else { return Vec::new() };
    let mut found = Vec::new();
    for name in database.photographs().await.unwrap_or_default() {
        let Ok(Some(picture)) = database.photograph(&name).await else { continue };
        if let Some(jpeg) = picture::bytes(&picture).await {
            found.push(Photograph { name, jpeg });
        }
    }
    found
}

/// Writes the photographs of a backup, all of them or none; answers how many are new.
///
/// # Errors
/// When there is no room for them, or no database.
pub(in crate::app) async fn restore(all: Vec<Photograph>) -> Result<usize, StoreError> {
    let there = names().get_untracked();
    let new = all.into_iter().filter(|photograph| !there.contains(&photograph.name));
    let new: Vec<_> = new.filter_map(|photograph| picture::of_bytes(&photograph.jpeg).map(|picture| (photograph.name, picture))).collect();
    if !new.is_empty() {
        put(&new).await?;
    }
    Ok(new.len())
}
