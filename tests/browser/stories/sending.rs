//! A job handed over: by link, by file, as a table; and what is said when that cannot be.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{By, Page, visit};

async fn choose_file(page: &Page, name: &str, content: &[u8]) -> Result<()> {
    let file = std::env::temp_dir().join(format!("layshaft-{}-{name}", std::process::id()));
    std::fs::write(&file, content)?;
    page.driver()?.find(By::Css("#file")).await?.send_keys(file.display().to_string()).await?;
    // The page empties the field once it has read the file.
    page.until("document.getElementById('file') === null || document.getElementById('file').value === ''").await?;
    Ok(std::fs::remove_file(file)?)
}

#[test]
fn a_link_carries_the_whole_job_and_is_only_shown_until_a_copy_is_kept() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into("#title", "Sent by link").await?;
        page.click("#open-send").await?;
        page.until("document.getElementById('link').value.includes('#j=1.')").await?;
        let link: String = page.value("#link").await?;
        page.js::<()>("void (localStorage.clear(), sessionStorage.clear())").await?;
        let fragment = link.split_once('#').map_or("", |(_, fragment)| fragment).to_owned();
        page.go("?received").await?;
        page.ready().await?;
        let _ = page.requests().await?;
        page.go(&format!("?received#{fragment}")).await?;
        page.until("document.getElementById('linked') !== null && document.getElementById('title').value === 'Sent by link'").await?;
        let sent = page.requests().await?;
        ensure!(!sent.iter().any(|url| url.contains("j=1")), "the job went over the network: {sent:?}");
        ensure!(page.js::<bool>("!Object.values(localStorage).some((text) => text.includes('Sent by link'))").await?, "kept unasked");

        page.reload().await?;
        page.until("document.getElementById('linked') !== null").await?;
        page.click("#keep-copy").await?;
        page.until("document.getElementById('linked') === null && location.hash === ''").await?;
        page.until("Object.values(localStorage).some((text) => text.includes('Sent by link'))").await?;
        page.reload().await?;
        page.until("document.getElementById('title').value === 'Sent by link'").await
    })
}

#[test]
fn the_first_change_of_a_linked_job_keeps_a_copy_and_says_so() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.click("#open-send").await?;
        let link: String = page.value("#link").await?;
        page.js::<()>(&format!("void (location.hash = '{}')", link.split_once('#').map_or("", |(_, fragment)| fragment))).await?;
        page.until("document.getElementById('linked') !== null").await?;
        page.type_into("#title", "Changed").await?;
        page.until(
            "[...document.querySelectorAll('.notice')].some((notice) => notice.innerText.includes('kept on this device now, as a copy'))",
        )
        .await?;
        page.until("Object.keys(localStorage).filter((key) => key.startsWith('layshaft.job.')).length === 2").await
    })
}

#[test]
fn a_damaged_link_says_so_and_the_kept_job_opens() -> Result<()> {
    visit(async |page| {
        page.open("#j=1.AAAA").await?;
        page.until("[...document.querySelectorAll('.notice')].some((notice) => notice.innerText.includes('The link was cut or changed on its way'))").await?;
        page.until("document.getElementById('title').value.startsWith('Fernhill')").await
    })
}

#[test]
fn too_long_a_link_says_so_and_offers_the_file() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.click("#open-details").await?;
        // Noise does not pack.
        page.js::<()>(
            "void (() => { const notes = document.getElementById('notes'); let text = '';
              for (let seed = 1; text.length < 20000; ) { seed = (seed * 1664525 + 1013904223) % 4294967296; text += (seed >>> 0).toString(36); }
              notes.value = text; notes.dispatchEvent(new Event('input', {bubbles: true})); })()",
        )
        .await?;
        page.click("#open-send").await?;
        page.until("document.getElementById('link-refused')?.innerText.includes('Save the job as a file and send that') === true").await?;
        page.element("#save-file").await?;
        Ok(())
    })
}

#[test]
fn a_file_goes_out_and_comes_in_and_a_wrong_one_is_refused() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into("#title", "<b>Sent</b> as a file").await?;
        page.js::<()>("void (() => { const make = URL.createObjectURL; URL.createObjectURL = (blob) => { window.saved = blob; return make(blob); }; })()").await?;
        page.click("#open-send").await?;
        page.click("#save-file").await?;
        page.until("window.saved !== undefined").await?;
        page.js::<()>("void window.saved.text().then((text) => { window.file = text; })").await?;
        page.until("window.file !== undefined").await?;
        let file: String = page.js("window.file").await?;
        page.click("#open-book").await?;
        choose_file(page, "wrong.json", b"GIF89a").await?;
        page.until("[...document.querySelectorAll('.notice')].some((notice) => notice.innerText.includes('was not opened: the text is not a job'))").await?;
        choose_file(page, "job.json", file.as_bytes()).await?;
        page.until("[...document.querySelectorAll('.notice')].some((notice) => notice.innerText.includes('<b>Sent</b> as a file” was opened from the file'))").await?;
        ensure!(page.count(".notice b").await? == 0, "imported text became markup");
        page.until("Object.keys(localStorage).filter((key) => key.startsWith('layshaft.job.')).length === 2").await
    })
}

#[test]
fn the_figures_go_out_as_a_table() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>("void (() => { const make = URL.createObjectURL; URL.createObjectURL = (blob) => { window.saved = blob; return make(blob); }; })()").await?;
        page.click("#open-send").await?;
        page.click("#save-csv").await?;
        page.until("window.saved !== undefined").await?;
        page.js::<()>("void window.saved.text().then((text) => { window.csv = text; })").await?;
        page.until("window.csv?.startsWith('section,row,As it came') === true").await?;
        page.until("window.csv.includes('2.467')").await
    })
}
