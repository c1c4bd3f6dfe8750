//! The book of jobs: found, opened, copied, put away, deleted and brought back; a backup out and in.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, visit};

const KEPT: &str = "document.querySelector('.bar__kept').innerText === 'kept on this device'";

async fn listed(page: &Page, titles: &[&str]) -> Result<()> {
    let expected = titles.iter().map(|title| format!("'{title}'")).collect::<Vec<_>>().join(", ");
    page.until(&format!(
        "JSON.stringify([...document.querySelectorAll('#jobs .job__title')].map((title) => title.innerText)) === JSON.stringify([{expected}])"
    ))
    .await
}

/// Puts many jobs of six setups into the store, as years of work would.
async fn fill(page: &Page, many: usize) -> Result<()> {
    page.js::<()>(&format!(
        "void (() => {{ const key = 'layshaft.job.' + localStorage.getItem('layshaft.open'); const record = JSON.parse(localStorage.getItem(key));
          const setups = record.job.setups; record.job.setups = [...setups, ...setups].map((setup, at) => ({{ ...setup, id: at + 1 }}));
          record.job.next_setup = 7;
          for (let at = 0; at < {many}; at++) {{
            record.id = `j${{at}}`; record.job.title = `Job ${{at}}`; record.job.customer = at % 2 ? 'Odd' : 'Even';
            record.changed = `2025-01-${{String(1 + at % 28).padStart(2, '0')}}T10:00:00`;
            localStorage.setItem('layshaft.job.' + record.id, JSON.stringify(record));
          }} }})()"
    ))
    .await
}

#[test]
fn an_empty_job_is_begun_and_the_demo_job_found_again() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.click("#open-book").await?;
        page.click("#new-job").await?;
        page.until("document.getElementById('title').value === 'New job' && document.activeElement.id === 'title'").await?;
        page.type_into("#title", "Box from the barn").await?;
        page.until(KEPT).await?;
        page.click("#open-book").await?;
        page.until("document.activeElement.id === 'book-search'").await?;
        listed(page, &["Box from the barn", "Fernhill coupé, hill climb and the drive home"]).await?;
        page.press("redshank").await?;
        listed(page, &["Fernhill coupé, hill climb and the drive home"]).await?;
        page.click("#jobs .job__open").await?;
        page.until("document.getElementById('title').value.startsWith('Fernhill') && document.getElementById('book') === null").await
    })
}

#[test]
fn the_first_visit_shows_the_demo_job_and_one_press_starts_an_empty_one() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.until("document.querySelector('.notice').innerText.startsWith('This is a demo job')").await?;
        ensure!(page.count("main .rows .figure").await? > 50, "the demo job is not filled");
        page.click(".notice .btn").await?;
        page.until("document.getElementById('title').value === 'New job' && document.querySelector('.notice') === null").await?;
        page.reload().await?;
        page.until("document.getElementById('title').value === 'New job' && document.querySelector('.notice') === null").await
    })
}

#[test]
fn a_job_is_copied_put_away_deleted_and_brought_back() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into("#title", "One").await?;
        page.until(KEPT).await?;
        page.click("#open-book").await?;
        page.click("[aria-label='Copy One']").await?;
        page.until("document.getElementById('title').value === 'One, copy'").await?;
        page.click("#book-order option:nth-child(2)").await?;
        listed(page, &["One", "One, copy"]).await?;
        page.click("[aria-label='State of One'] option:nth-child(3)").await?;
        page.click("[aria-label='Archive One']").await?;
        listed(page, &["One, copy"]).await?;
        page.click("#book-which button:nth-child(2)").await?;
        listed(page, &["One"]).await?;
        page.until("document.querySelector(\"[aria-label='State of One']\").selectedOptions[0].innerText === 'waiting for parts'").await?;
        page.click("[aria-label='Take back One']").await?;
        page.click("#book-which button:nth-child(1)").await?;
        listed(page, &["One", "One, copy"]).await?;
        page.click("[aria-label='Delete One, copy']").await?;
        listed(page, &["One"]).await?;
        page.until("document.getElementById('title').value === 'One'").await?;
        page.js::<()>("void [...document.querySelectorAll('.notice .btn')].find((button) => button.innerText === 'Undo').click()").await?;
        listed(page, &["One", "One, copy"]).await?;
        page.press(Key::Escape).await?;
        page.until("document.getElementById('book') === null").await
    })
}

#[test]
fn a_hundred_jobs_of_six_setups_are_searched_as_one_types() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        fill(page, 100).await?;
        page.js::<()>("void (window.began = performance.now())").await?;
        page.click("#open-book").await?;
        page.until("document.querySelectorAll('#jobs .job').length === 101").await?;
        page.press("job 77").await?;
        listed(page, &["Job 77"]).await?;
        // From one key to the list repainted, on whatever machine this runs: far below what a person feels as waiting.
        let spent: f64 = page
            .js("(() => { const field = document.getElementById('book-search'); const began = performance.now();
                  field.value = ''; field.dispatchEvent(new Event('input', {bubbles: true})); return performance.now() - began; })()")
            .await?;
        ensure!(spent < 500.0, "a key took {spent} ms");
        page.until("document.querySelectorAll('#jobs .job').length === 101").await
    })
}

#[test]
fn a_backup_goes_out_and_comes_in_with_a_plan_before_anything_is_written() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into("#title", "Backed up").await?;
        page.until(KEPT).await?;
        // What the page hands to the browser to be saved.
        page.js::<()>("void (() => { const make = URL.createObjectURL; URL.createObjectURL = (blob) => { window.saved = blob; return make(blob); }; })()").await?;
        page.click("#open-book").await?;
        page.click("#back-up").await?;
        page.until("window.saved !== undefined").await?;
        page.js::<()>("void window.saved.text().then((text) => { window.backup = text; })").await?;
        page.until("window.backup?.includes('Backed up') === true").await?;
        let backup: String = page.js("window.backup").await?;

        page.type_into("#title", "Changed since").await?;
        page.until(KEPT).await?;
        let file = std::env::temp_dir().join(format!("layshaft-backup-{}.json", std::process::id()));
        std::fs::write(&file, backup)?;
        page.driver()?.find(browser_tests::By::Css("#file")).await?.send_keys(file.display().to_string()).await?;
        page.until("document.getElementById('restore')?.innerText.includes('1 different from what is kept here') === true").await?;
        let before: usize = page.js("Object.keys(localStorage).filter((key) => key.startsWith('layshaft.job.')).length").await?;
        ensure!(before == 1, "something was written before it was confirmed");
        page.click("#restore-write").await?;
        page.until("document.querySelectorAll('#jobs .job').length === 2").await?;
        std::fs::remove_file(file)?;
        page.until("document.getElementById('jobs').innerText.includes('Backed up, from the file')").await
    })
}
