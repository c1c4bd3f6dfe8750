//! What the browser tests share: a served build, a browser, and one way to wait.
//!
//! A test says what a person does and sees:
//! ```ignore
//! #[test]
//! fn the_tyre_follows() -> Result<()> {
//!     visit(async |page| {
//!         page.open("").await?;
//!         page.type_into(field("Tire").of("Setup A"), "185/70R14").await?;
//!         page.go_to("compare/road").await?;
//!         page.shows("A", "tyre.diameter_in", "24.25").await
//!     })
//! }
//! ```
//! [`Page`] in [`page`] does and reads, what by role and name in [`named`]; [`questions`] knows places, questions, figures and pictures;
//! [`layout`] measures; [`device`] is the screen, the theme and paper; [`audit`] asks axe-core; [`watch`] knows what went wrong
//! and what was fetched; [`browser`] starts and ends the processes; [`look`] takes the pictures.

pub mod audit;
pub mod browser;
pub mod device;
pub mod layout;
pub mod look;
pub mod named;
pub mod page;
pub mod pdf;
pub mod questions;
pub mod site;
pub mod watch;

use anyhow::{Context, Result};
use browser::Storage;
use tokio::sync::Semaphore;

pub use anyhow;
pub use audit::Audit;
pub use device::{Paper, Screen, Theme};
pub use named::{Named, Target, button, checkbox, field, group, heading, link, tab};
pub use page::Page;
pub use site::Site;
pub use thirtyfour::{By, Key};

/// Two browsers at a time: more of them only slow each other down until something times out.
static PLACES: Semaphore = Semaphore::const_new(2);

/// Opens a browser on the served build, lets the test do its work, and sees that nothing went wrong behind its back.
///
/// # Errors
/// What the test answered, or an error that the page reported while it ran.
pub fn visit(story: impl AsyncFnOnce(&mut Page) -> Result<()>) -> Result<()> {
    visit_site(Site::built("")?, story)
}

/// As [`visit`], with the site served below a path such as `/shop/tools`.
///
/// # Errors
/// As [`visit`].
pub fn visit_below(below: &str, story: impl AsyncFnOnce(&mut Page) -> Result<()>) -> Result<()> {
    visit_site(Site::built(below)?, story)
}

/// As [`visit`], with a site that the test has prepared.
///
/// # Errors
/// As [`visit`].
pub fn visit_site(site: Site, story: impl AsyncFnOnce(&mut Page) -> Result<()>) -> Result<()> {
    visit_with(site, Storage::Allowed, story)
}

/// As [`visit`], in a browser that lets no page keep anything.
///
/// # Errors
/// As [`visit`].
pub fn visit_blocked(story: impl AsyncFnOnce(&mut Page) -> Result<()>) -> Result<()> {
    visit_with(Site::built("")?, Storage::Blocked, story)
}

/// As [`visit`], in a browser that is killed after the first story and started again with what it had on the disk for the second.
///
/// # Errors
/// As [`visit`].
pub fn visit_killed(before: impl AsyncFnOnce(&mut Page) -> Result<()>, after: impl AsyncFnOnce(&mut Page) -> Result<()>) -> Result<()> {
    visit_with(Site::built("")?, Storage::OnDisk, async |page| {
        before(page).await?;
        page.kill_browser().await?;
        after(page).await
    })
}

fn visit_with(site: Site, storage: Storage, story: impl AsyncFnOnce(&mut Page) -> Result<()>) -> Result<()> {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().context("cannot start the test's runtime")?;
    runtime.block_on(async {
        let _place = PLACES.acquire().await?;
        let mut page = Page::start(site, storage).await?;
        let told = story(&mut page).await;
        let faults = page.faults().await;
        page.close().await?;
        match (told, faults?) {
            (Ok(()), faults) if faults.is_empty() => Ok(()),
            (Ok(()), faults) => anyhow::bail!("the page reported:\n{}", faults.join("\n")),
            (Err(problem), faults) if faults.is_empty() => Err(problem),
            (Err(problem), faults) => Err(problem.context(format!("the page also reported:\n{}", faults.join("\n")))),
        }
    })
}
