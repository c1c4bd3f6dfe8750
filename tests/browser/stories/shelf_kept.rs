//! The shop's own catalogue entries in the store: two tabs share them, and what cannot be read is never written over.

use browser_tests::anyhow::Result;
use browser_tests::{Page, button, visit};

use serde_json::Value;

use super::keeping::{notice_says, two_tabs};

/// A built-in gear set, the first of the shelf's list.
const SET: &str = "Curlew three";

/// Makes an own copy of a built-in gear set.
async fn copy(page: &Page) -> Result<()> {
    page.go_to("shelf").await?;
    page.click(button(format!("Copy {SET} to your own"))).await?;
    page.click(button(super::catalogue::SAVE).of("one of your own")).await
}

/// Waits until the page lists an own entry and the store holds it.
async fn is_kept(page: &Page, name: &str) -> Result<()> {
    page.until(&format!(
        "document.querySelector('#shelf-list [data-own=true][data-name=\"{name}\"]') !== null
         && kept.get('layshaft.catalogue').then((text) => text.includes('\"{name}\"'))"
    ))
    .await
}

#[test]
fn an_entry_of_one_tab_is_on_the_shelf_of_the_other_and_stays_there() -> Result<()> {
    visit(async |page| {
        let [first, second] = two_tabs(page).await?;
        copy(page).await?;
        is_kept(page, &format!("{SET} (copy)")).await?;

        page.driver()?.switch_to_window(first).await?;
        page.go_to("shelf").await?;
        is_kept(page, &format!("{SET} (copy)")).await?;
        copy(page).await?;
        is_kept(page, &format!("{SET} (copy) (2)")).await?;
        is_kept(page, &format!("{SET} (copy)")).await?;

        page.driver()?.switch_to_window(second).await?;
        is_kept(page, &format!("{SET} (copy) (2)")).await
    })
}

#[test]
fn entries_of_a_newer_version_stay_as_they_are() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<Value>("kept.put('layshaft.catalogue', '{\"schema\":99}')").await?;
        page.reload().await?;
        notice_says(page, &["newer version"]).await?;
        copy(page).await?;
        notice_says(page, &["could not", "newer version", "Save it as a file"]).await?;
        page.until("kept.get('layshaft.catalogue').then((text) => text === '{\"schema\":99}')").await
    })
}

#[test]
fn damaged_entries_that_cannot_be_set_aside_are_not_written_over() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<Value>("kept.put('layshaft.catalogue', 'y'.repeat(5000))").await?;
        page.fill_device(true).await?;
        page.reload().await?;
        notice_says(page, &["no room", "Save it as a file"]).await?;
        copy(page).await?;
        page.until("kept.get('layshaft.catalogue').then((text) => text === 'y'.repeat(5000))").await?;

        page.fill_device(false).await?;
        copy(page).await?;
        is_kept(page, &format!("{SET} (copy) (2)")).await?;
        page.until("kept.get('layshaft.catalogue.set-aside').then((text) => text === 'y'.repeat(5000))").await
    })
}
