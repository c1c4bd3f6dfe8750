//! After the first load the network may go; a newer version waits until it is asked for.

use std::fs;
use std::path::Path;
use std::time::{Duration, SystemTime};

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Paper, Site, button, field, visit, visit_site};

const IN_CONTROL: &str = "navigator.serviceWorker.controller !== null";

#[test]
fn the_page_opens_without_its_server() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.until(IN_CONTROL).await?;
        page.site().stop();
        page.expect_message("sw.js");
        page.reload().await?;
        page.open("?from=bench#compare/road").await?;
        page.stands("compare/road").await?;
        page.shows("A", "cruise_rpm", "3,907").await
    })
}

#[test]
fn the_main_job_is_done_without_a_network() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.until(IN_CONTROL).await?;
        page.site().stop();
        page.expect_message("sw.js");
        page.reload().await?;
        // Two axles side by side, in the book, and on paper.
        page.type_into(field("Ring and pinion").of("Setup B"), "41/11").await?;
        // By hand: 27/28 turned over × 37/18 × 41/11 = 28/27 × 2.05556 × 3.72727 = 7.945.
        page.shows("B", "gear_1.overall", "7.945").await?;
        page.type_into(field("Title of the job"), "Done in the barn").await?;
        page.saved().await?;
        page.go_to("jobs").await?;
        page.says("#jobs", "Done in the barn").await?;
        ensure!(page.pdf(Paper::A4).await?.len() > 20_000, "nothing was printed");
        page.reload().await?;
        page.until_of(field("Title of the job"), "one.value === 'Done in the barn'").await?;
        let elsewhere = page.requests_elsewhere().await?;
        ensure!(elsewhere.is_empty(), "requests left the page's own origin: {elsewhere:?}");
        Ok(())
    })
}

#[test]
fn nothing_typed_is_lost_when_the_new_version_is_taken() -> Result<()> {
    visit_site(Site::copied("taken-version")?, async |page| {
        page.open("").await?;
        page.until(IN_CONTROL).await?;
        publish_another_version(page.site())?;
        page.reload().await?;
        page.until("document.documentElement.dataset.whole !== undefined").await?;
        page.until("document.documentElement.dataset.update === 'waiting'").await?;
        page.element(button("Take the new version")).await?;
        page.assert_accessible("a version that waits").await?;
        page.type_into(field("Title of the job"), "Typed before the change").await?;
        page.click(button("Take the new version")).await?;
        page.until("document.querySelector('meta[name=newer]') !== null").await?;
        page.ready().await?;
        page.until_of(field("Title of the job"), "one.value === 'Typed before the change'").await?;
        page.gone(button("Take the new version")).await
    })
}

#[test]
fn a_newer_version_waits_until_it_is_asked_to_take_over() -> Result<()> {
    visit_site(Site::copied("newer-version")?, async |page| {
        page.open("").await?;
        page.until(IN_CONTROL).await?;
        publish_another_version(page.site())?;
        page.reload().await?;
        page.until("document.documentElement.dataset.update === 'waiting'").await?;
        ensure!(page.js::<usize>("document.querySelectorAll('meta[name=newer]').length").await? == 0, "the newer version came unasked");
        page.js::<()>("void dispatchEvent(new Event('layshaft:take-over'))").await?;
        page.until("document.querySelector('meta[name=newer]') !== null").await?;
        page.ready().await?;
        page.until("caches.keys === undefined || document.documentElement.dataset.update === undefined").await
    })
}

/// What a deployment does: another page, and a service worker with another version.
fn publish_another_version(site: &Site) -> Result<()> {
    let page = |text: String| text.replace("<meta name=\"referrer\"", "<meta name=\"newer\"><meta name=\"referrer\"");
    let worker = |text: String| text.replacen("const CACHE = \"layshaft-", "const CACHE = \"layshaft-newer-", 1);
    publish(&site.folder().join("index.html"), page)?;
    publish(&site.folder().join("sw.js"), worker)
}

/// Writes a file anew, seconds later than it was: hosts tell the browser by whole seconds whether it has changed, and a page opens in less.
fn publish(file: &Path, change: impl Fn(String) -> String) -> Result<()> {
    fs::write(file, change(fs::read_to_string(file)?))?;
    fs::File::options().append(true).open(file)?.set_modified(SystemTime::now() + Duration::from_secs(2))?;
    Ok(())
}
