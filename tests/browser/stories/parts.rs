//! Parts of the program that come later: after the first figure, by themselves; one that does not come is told and can be had again.

use std::fs;
use std::path::{Path, PathBuf};

use browser_tests::anyhow::{Context, Result, ensure};
use browser_tests::{Site, visit, visit_site};

/// Runs before the page's own scripts: notes when the first figure of a row appears.
const WATCH: &str = "
    new MutationObserver((_, watch) => {
        if (document.querySelector('[data-figure]')) { window.firstFigure = performance.now(); watch.disconnect(); }
    }).observe(document, { childList: true, subtree: true });";
/// The files of later parts that were asked for, each with the time of that.
const ASKED: &str = "performance.getEntriesByType('resource').filter((entry) => entry.name.includes('/part-'))";

#[test]
fn the_first_figure_waits_for_no_later_part() -> Result<()> {
    visit(async |page| {
        page.cdp("Page.addScriptToEvaluateOnNewDocument", serde_json::json!({ "source": WATCH })).await?;
        page.open("").await?;
        let (figure, first, many): (f64, f64, usize) =
            page.js(&format!("[window.firstFigure, Math.min(...{ASKED}.map((entry) => entry.startTime)), {ASKED}.length]")).await?;
        ensure!(many > 0, "no part was fetched after the first figure");
        page.until("document.documentElement.dataset.whole !== undefined").await?;
        let files: usize = page.js(&format!("{ASKED}.length")).await?;
        ensure!(files < 40, "the later parts lie in {files} files: small pieces belong together");
        ensure!(figure < first, "the first figure stood at {figure} ms, and a later part was asked for at {first} ms");
        Ok(())
    })
}

#[test]
fn a_part_that_does_not_load_is_told_and_can_be_tried_again() -> Result<()> {
    let site = Site::copied("without-a-part")?;
    let part = part_of(site.folder(), "find")?;
    let away = part.with_extension("away");
    fs::rename(&part, &away)?;
    visit_site(site, async |page| {
        page.expect_message("part-find");
        page.open("#compare/find").await?;
        page.until("document.querySelector('#find').innerText.includes('could not be loaded. Check the connection and try again')").await?;
        page.assert_accessible("a part that did not load").await?;
        page.type_into("#title", "Typed before the part came").await?;
        page.click("#find .later button").await?;
        page.until("document.querySelector('#find .later button')?.innerText === 'Try again'").await?;
        fs::rename(&away, &part)?;
        page.click("#find .later button").await?;
        page.until("document.querySelector('#find .find') !== null && document.querySelector('#find .later') === null").await?;
        ensure!(page.value("#title").await? == "Typed before the part came", "what was typed is lost");
        Ok(())
    })
}

/// Whether the browser would ask before the page is left.
const ASKS: &str = "!window.dispatchEvent(new Event('beforeunload', { cancelable: true }))";

#[test]
fn what_is_typed_before_anything_can_be_kept_is_kept_once_it_can() -> Result<()> {
    let site = Site::copied("without-the-keeper")?;
    let part = part_of(site.folder(), "keep")?;
    let away = part.with_extension("away");
    fs::rename(&part, &away)?;
    visit_site(site, async |page| {
        page.expect_message("part-keep");
        page.open("").await?;
        page.until("document.querySelector('main .later button')?.innerText === 'Try again'").await?;
        ensure!(!page.js::<bool>(ASKS).await?, "the browser would ask before the demo job is left, in which nothing was typed");
        page.type_into("#title", "Typed before it could be kept").await?;
        ensure!(page.js::<bool>(ASKS).await?, "the page may be left without a question while what was typed is kept nowhere");
        fs::rename(&away, &part)?;
        page.click("main .later button").await?;
        page.until("document.querySelector('main .later') === null").await?;
        page.saved().await?;
        ensure!(!page.js::<bool>(ASKS).await?, "the browser would ask though the job is kept");
        page.reload().await?;
        ensure!(page.value("#title").await? == "Typed before it could be kept", "what was typed is lost");
        Ok(())
    })
}

#[test]
fn the_first_question_is_answered_without_the_others() -> Result<()> {
    let site = Site::copied("without-the-answers")?;
    let part = part_of(site.folder(), "answers")?;
    let away = part.with_extension("away");
    fs::rename(&part, &away)?;
    visit_site(site, async |page| {
        page.expect_message("part-answers");
        page.open("").await?;
        page.until("document.querySelectorAll('#gears .rows--deciding [data-figure]').length > 0").await?;
        page.until("document.querySelector('#gears .answer') !== null").await?;
        page.until("document.querySelector('.stop--pull .station__label').innerText === '…'").await?;
        page.click("[href='#compare/pull']").await?;
        page.until("document.querySelector('#pull .later button')?.innerText === 'Try again'").await?;
        fs::rename(&away, &part)?;
        // Another place that waits for the part may have asked for it again already.
        page.js::<()>("void document.querySelector('#pull .later button')?.click()").await?;
        page.until("document.querySelector('#pull .rows--deciding') !== null && document.querySelector('main .later') === null").await?;
        page.until("document.querySelector('.stop--pull .station__label').innerText !== '…'").await
    })
}

#[test]
fn a_host_that_does_not_know_the_type_of_the_program_will_do() -> Result<()> {
    let site = Site::copied("another-type")?;
    rename_programs(site.folder())?;
    visit_site(site, async |page| {
        page.open("#compare/find").await?;
        page.until("document.querySelector('#find .find') !== null").await?;
        ensure!(
            page.js::<usize>(&format!("{ASKED}.filter((entry) => entry.name.endsWith('.bin')).length")).await? > 0,
            "no part was fetched"
        );
        Ok(())
    })
}

/// The file of what a part alone needs.
fn part_of(folder: &Path, part: &str) -> Result<PathBuf> {
    let name = format!("part-{part}.");
    let found = fs::read_dir(folder)?.flatten().find(|entry| entry.file_name().to_string_lossy().starts_with(&name));
    Ok(found.with_context(|| format!("the part `{part}` has no file"))?.path())
}

/// Gives every program an ending that no host takes for WebAssembly.
fn rename_programs(folder: &Path) -> Result<()> {
    for path in fs::read_dir(folder)?.flatten().map(|entry| entry.path()).filter(|path| path.is_file()) {
        if path.extension().is_some_and(|ending| ending == "wasm") {
            fs::rename(&path, path.with_extension("bin"))?;
        } else if let Ok(text) = fs::read_to_string(&path) {
            fs::write(&path, text.replace(".wasm\"", ".bin\"").replace(".wasm'", ".bin'").replace(".wasm#", ".bin#"))?;
        }
    }
    Ok(())
}
