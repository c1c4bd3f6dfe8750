//! The page opens, in both themes, on both screens, and says what is wrong when it cannot.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Screen, Site, Theme, visit, visit_site};

#[test]
fn the_page_opens() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        ensure!(page.js::<String>("document.body.innerText").await?.contains("Layshaft"), "the page does not name the program");
        ensure!(!page.text("main h1").await?.is_empty(), "the page has no heading");
        ensure!(page.count("#crash:not([hidden])").await? == 0, "the last resort is in view");
        let elsewhere = page.requests_elsewhere().await?;
        ensure!(elsewhere.is_empty(), "requests left the page's own origin: {elsewhere:?}");
        Ok(())
    })
}

#[test]
fn the_audit_finds_nothing_in_either_theme_on_either_screen() -> Result<()> {
    visit(async |page| {
        for screen in [Screen::DESK, Screen::PHONE] {
            for theme in [Theme::Light, Theme::Dark] {
                page.set_screen(screen).await?;
                page.set_theme(theme).await?;
                page.open("").await?;
                page.assert_accessible(&format!("{} px wide, {}", screen.width, theme.word())).await?;
            }
        }
        Ok(())
    })
}

#[test]
fn nothing_is_wider_than_a_phone() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        page.open("").await?;
        let width: u32 = page.js("document.documentElement.scrollWidth").await?;
        ensure!(width <= Screen::PHONE.width, "the page is {width} px wide on a phone of {}", Screen::PHONE.width);
        Ok(())
    })
}

#[test]
fn a_program_that_does_not_load_is_told_in_the_page() -> Result<()> {
    let site = Site::copied("without-wasm")?;
    for entry in std::fs::read_dir(site.folder())?.flatten() {
        if entry.path().extension().is_some_and(|ending| ending == "wasm") {
            std::fs::remove_file(entry.path())?;
        }
    }
    visit_site(site, async |page| {
        page.expect_message(".wasm");
        page.go("").await?;
        page.until("document.body.innerText.includes('Layshaft could not be loaded. Check the connection')").await
    })
}

#[test]
fn a_program_that_stops_shows_the_job_to_save() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into("#title", "Kept before the fault").await?;
        page.until("localStorage.getItem('layshaft.job.' + localStorage.getItem('layshaft.open')).includes('Kept before the fault')")
            .await?;
        // What the browser reports of a trap; thrown from a test's own script it would be hidden from the page.
        page.js::<()>("void dispatchEvent(new ErrorEvent('error', { error: new WebAssembly.RuntimeError('unreachable') }))").await?;
        page.until("document.activeElement.id === 'crash-heading'").await?;
        ensure!(page.value("#crash-text").await?.contains("Kept before the fault"), "the job's text is not in the field");
        let saved: String = page.js("document.getElementById('crash-save').href").await?;
        ensure!(saved.starts_with("blob:"), "the job cannot be saved: {saved}");
        page.press(browser_tests::Key::Tab).await?;
        page.until("document.activeElement.id === 'crash-save'").await?;
        page.assert_accessible("the last resort").await
    })
}
