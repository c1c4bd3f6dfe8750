//! Keeping the jobs on the device: nothing that was typed is lost, and whatever goes wrong is said plainly.
//!
//! [`store`] is the browser's store behind a guard, [`records`] the jobs in it, [`opening`] what the page begins with,
//! [`desk`] the job that lies open, [`autosave`] writes it within a second of every edit and notices other tabs,
//! [`shop`] keeps the shop's own catalogue entries.

pub mod autosave;
pub mod desk;
pub mod opening;
pub mod records;
pub mod shop;
pub mod store;

pub use desk::Desk;
pub use opening::{Opened, open};

/// Takes the job of a link out of the page's address; where the address says where one is, it stays.
fn drop_link() {
    if crate::job::link::is_link(&super::device::fragment()) {
        super::device::drop_fragment();
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
    pub fn after(why: store::StoreError) -> Self {
        match why {
            store::StoreError::Full | store::StoreError::NotTaken => Self::Full,
            store::StoreError::Blocked => Self::Blocked,
        }
    }
}
