//! Keeping the jobs on the device: nothing that was typed is lost, and whatever goes wrong is said plainly.
//!
//! [`store`] holds every text and writes it to [`database`], the browser's, or where that is refused to [`local`], its older store, in which
//! small settings live anyway; [`records`] are the jobs in it, [`opening`] is what the page begins with, [`desk`] the job that lies open, [`autosave`] writes it within a second of every edit and notices other tabs,
//! [`shop`] keeps the shop's own catalogue entries, [`settings`] what the shop settles once for all jobs. What reads and writes is a part of the program that comes later, so nothing else calls
//! it but through [`KEEPER`](super::parts::KEEPER): a first visit does without until its figures stand.

pub mod autosave;
pub mod database;
pub mod desk;
pub mod local;
pub mod opening;
pub mod records;
mod settings;
pub mod shop;
pub mod store;

pub use desk::Desk;
pub use opening::{Opened, first_visit};

use leptos::prelude::*;

use super::notices::Act;
use super::state::State;
use super::{device, parts, turns};

/// Keeps what is on the page, from now on for as long as it lives. A page that began before the store was read reads it first.
pub(super) fn keep(state: State) {
    let owner = Owner::current().unwrap_or_default();
    leptos::task::spawn_local(async move {
        if local::is_there() {
            store::open().await;
        }
        for keep in [autosave::keep, shop::keep, settings::keep] {
            let owner = owner.clone();
            turns::queue(move || owner.with(|| keep(state)));
        }
    });
}

/// Writes whatever is not written yet, at once, for the page may be left; answers whether anything would be lost.
pub(super) fn leave(state: State) -> bool {
    autosave::flush(state);
    let all = !local::is_there() || store::leave();
    !all || state.job.with_untracked(|job| state.desk.is_unkept(job))
}

/// Does what a notice offers about what is kept.
pub(super) fn act(state: State, act: Act) {
    match act {
        Act::SaveJob => state.save_as_file(),
        Act::PutBack(record) => state.put_back(&record),
        Act::PutOnShelf(id, parts) => state.put_on_shelf(&id, &parts),
        Act::Reshelve(states) => {
            let (before, after) = *states;
            state.shop.catalogue.update(|now| *now = now.with_changes(&after, &before));
        }
        Act::Begin => state.begin_empty(),
        Act::SaveText(..) | Act::Undo => {}
    }
}

/// Has the browser ask before the page is left while the job says something that is kept nowhere: the store is full or blocked, another
/// tab holds the job, or what writes has not come yet.
pub fn ask_before_leaving(state: State) {
    device::on_window("beforeunload", move |event: web_sys::BeforeUnloadEvent| {
        let is_lost = match parts::KEEPER.now() {
            Some(keeper) => (keeper.leave)(state),
            None => state.job.with_untracked(|job| state.desk.is_unkept(job)),
        };
        if is_lost {
            event.prevent_default();
        }
    });
}

/// Takes the job of a link out of the page's address; where the address says where one is, it stays.
fn drop_link() {
    if crate::job::link::is_link(&device::fragment()) {
        device::drop_fragment();
    }
}

/// How the open job is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kept {
    /// As it stands.
    Safe,
    /// An edit is about to be written.
    Soon,
    /// The store took nothing.
    Full,
    /// There is no store.
    Blocked,
    /// Another tab changed the job; nothing is written until someone decides.
    Held,
    /// It came with a link and is not kept here.
    Linked,
}

impl Kept {
    /// How a job is kept that could not be written.
    pub fn after(why: local::StoreError) -> Self {
        match why {
            local::StoreError::Full => Self::Full,
            local::StoreError::Blocked => Self::Blocked,
        }
    }
}
