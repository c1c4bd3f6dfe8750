//! After the first load the network may go; a newer version waits until it is asked for.

use std::fs;

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Site, visit, visit_site};

const IN_CONTROL: &str = "navigator.serviceWorker.controller !== null";

#[test]
fn the_page_opens_without_its_server() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.until(IN_CONTROL).await?;
        page.site().stop();
        page.expect_message("sw.js");
        page.reload().await?;
        page.open("?from=bench#gears").await?;
        ensure!(page.count("main section[id]").await? > 0, "the page did not come from the kept files");
        Ok(())
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
    let page = site.folder().join("index.html");
    fs::write(&page, fs::read_to_string(&page)?.replace("<meta name=\"referrer\"", "<meta name=\"newer\"><meta name=\"referrer\""))?;
    let worker = site.folder().join("sw.js");
    fs::write(&worker, fs::read_to_string(&worker)?.replacen("const CACHE = \"layshaft-", "const CACHE = \"layshaft-newer-", 1))?;
    Ok(())
}
