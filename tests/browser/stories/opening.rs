//! The page opens, in both themes, on both screens, and says what is wrong when it cannot.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Audit, Page, Screen, Site, Theme, button, field, visit, visit_site};

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

/// The audit of every place and question, folded and unfolded.
async fn audit_everywhere(page: &Page, theme: Theme, audit: Audit) -> Result<()> {
    page.set_theme(theme).await?;
    page.open("").await?;
    let mut found = Vec::new();
    for at in page.everywhere().await? {
        page.go_to(&at).await?;
        for fold in ["All figures", "What this rests on"] {
            if page.is_there(button(fold)).await? {
                page.open_fold(fold).await?;
            }
        }
        if page.is_there(button("In words")).await? {
            page.click(button("Table")).await?;
        }
        // What lies under the bars after scrolling is no target of its own.
        page.js::<()>("void scrollTo({ top: 0, behavior: 'instant' })").await?;
        found.extend(page.axe(audit).await?.into_iter().map(|one| format!("{at}, {}: {one}", theme.word())));
    }
    ensure!(found.is_empty(), "{} accessibility violations\n{}", found.len(), found.join("\n"));
    Ok(())
}

#[test]
fn the_audit_finds_nothing_at_any_question_on_a_desk() -> Result<()> {
    visit(async |page| {
        audit_everywhere(page, Theme::Light, Audit::Whole).await?;
        audit_everywhere(page, Theme::Dark, Audit::Colours).await
    })
}

#[test]
fn the_audit_finds_nothing_at_any_question_on_a_phone() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        audit_everywhere(page, Theme::Dark, Audit::Whole).await
    })
}

#[test]
fn the_audit_finds_nothing_in_what_opens_in_either_theme() -> Result<()> {
    visit(async |page| {
        for (screen, theme) in [(Screen::DESK, Theme::Light), (Screen::PHONE, Theme::Dark)] {
            page.set_screen(screen).await?;
            page.set_theme(theme).await?;
            page.open("").await?;
            let where_ = |what: &str| format!("{what}, {} px wide, {}", screen.width, theme.word());
            page.ask_figure("A", "gear_1.ratio").await?;
            page.type_into(field("What would make it"), "2").await?;
            page.until("document.querySelector('.card .option') !== null").await?;
            page.assert_accessible(&where_("a figure's card")).await?;
            page.click(button("Gear set of setup B")).await?;
            page.element(field("Gear set for setup B")).await?;
            page.assert_accessible(&where_("the picker")).await?;
            for act in ["Link, file, CSV", "Customer and notes", "Print"] {
                page.hand_over(act).await?;
                page.until("document.querySelector('main section.panel') !== null").await?;
                page.assert_accessible(&where_(act)).await?;
            }
            page.press(browser_tests::Key::Escape).await?;
            page.click("#read-in").await?;
            page.assert_part_accessible(".menu", &where_("units and words")).await?;
            page.click(button("Keys")).await?;
            page.element("#keymap").await?;
            page.assert_accessible(&where_("the keys")).await?;
        }
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
        // What the program is for is painted before it is asked for.
        page.until("performance.getEntriesByName('first-contentful-paint').length > 0").await?;
        page.until("document.querySelector('#boot').innerText.includes('nothing you type leaves this device')").await?;
        page.until("document.querySelector('#boot [role=status]').innerText.includes('could not be loaded')").await
    })
}

#[test]
fn a_program_that_stops_shows_the_job_to_save() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into(field("Title of the job"), "Kept before the fault").await?;
        page.saved().await?;
        page.until("kept.job().then((text) => text.includes('Kept before the fault'))").await?;
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
