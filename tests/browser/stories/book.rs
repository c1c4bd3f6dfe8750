//! The book of jobs: found, opened, copied, put away, deleted and brought back; a backup out and in.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Page, button, field, visit};
use serde_json::Value;

const TITLE: &str = "Title of the job";
const DEMO: &str = "Fernhill coupé, hill climb and the drive home";

async fn listed(page: &Page, titles: &[&str]) -> Result<()> {
    let expected = titles.iter().map(|title| format!("'{title}'")).collect::<Vec<_>>().join(", ");
    page.until(&format!(
        "JSON.stringify([...document.querySelectorAll('#jobs .job__title')].map((title) => title.innerText)) === JSON.stringify([{expected}])"
    ))
    .await
}

/// Puts many jobs of six setups into the store, as years of work would.
async fn fill(page: &Page, many: usize) -> Result<()> {
    page.js::<Value>(&format!(
        "kept.job().then(async (text) => {{ const record = JSON.parse(text);
          const setups = record.job.setups; record.job.setups = [...setups, ...setups].map((setup, at) => ({{ ...setup, id: at + 1 }}));
          record.job.next_setup = 7;
          for (let at = 0; at < {many}; at++) {{
            record.id = `j${{at}}`; record.job.title = `Job ${{at}}`; record.job.customer = at % 2 ? 'Odd' : 'Even';
            record.changed = `2025-01-${{String(1 + at % 28).padStart(2, '0')}}T10:00:00`;
            await kept.put('layshaft.job.' + record.id, JSON.stringify(record));
          }} }})"
    ))
    .await?;
    page.reload().await
}

/// The jobs stand in the list of this name, in any order.
async fn are_listed(page: &Page, titles: &[&str]) -> Result<()> {
    let mut titles = titles.to_vec();
    titles.sort_unstable();
    let expected = titles.iter().map(|title| format!("{title:?}")).collect::<Vec<_>>().join(", ");
    page.until(&format!(
        "JSON.stringify([...document.querySelectorAll('#jobs .job__title')].map((title) => title.innerText).sort()) === JSON.stringify([{expected}])"
    ))
    .await
}

#[test]
fn an_empty_job_is_begun_and_the_demo_job_found_again() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.go_to("jobs").await?;
        page.click(button("New empty job")).await?;
        page.until_of(field(TITLE), "one.value === 'New job'").await?;
        page.has_focus(field(TITLE)).await?;
        page.type_into(field(TITLE), "Box from the barn").await?;
        page.saved().await?;
        listed(page, &["Box from the barn", DEMO]).await?;
        page.type_into(field("Search").of("Jobs on this device"), "curlew four").await?;
        listed(page, &[DEMO]).await?;
        // Opening a job leads to what it compares, and the way back to the book is one press.
        page.click(button(DEMO)).await?;
        page.until_of(field(TITLE), "one.value.startsWith('Fernhill')").await?;
        page.stands("compare/gears").await?;
        page.click(browser_tests::link("Jobs")).await?;
        page.stands("jobs").await
    })
}

#[test]
fn the_first_visit_shows_the_demo_job_and_one_press_starts_an_empty_one() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        ensure!(page.value(field(TITLE)).await? == DEMO, "the demo job does not lie open");
        page.setups(3).await?;
        page.shows("A", "gear_1.ratio", "2.467").await?;
        page.click(button("Start an empty job").of("notices")).await?;
        page.until_of(field(TITLE), "one.value === 'New job'").await?;
        page.gone(button("Start an empty job")).await?;
        page.reload().await?;
        page.until_of(field(TITLE), "one.value === 'New job'").await?;
        ensure!(!page.is_there(button("Start an empty job")).await?, "the welcome comes again");
        Ok(())
    })
}

#[test]
fn a_job_is_copied_put_away_deleted_and_brought_back() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into(field(TITLE), "One").await?;
        page.saved().await?;
        page.go_to("jobs").await?;
        page.click(button("Copy One")).await?;
        page.until_of(field(TITLE), "one.value === 'One, copy'").await?;
        page.choose(field("Sort by"), "title").await?;
        listed(page, &["One", "One, copy"]).await?;
        page.choose(field("State of One"), "waiting for parts").await?;
        page.click(button("Archive One")).await?;
        listed(page, &["One, copy"]).await?;
        page.click(button("archived").of("Which jobs")).await?;
        listed(page, &["One"]).await?;
        page.until_of(field("State of One"), "one.selectedOptions[0].text === 'waiting for parts'").await?;
        page.click(button("Take back One")).await?;
        page.click(button("current").of("Which jobs")).await?;
        are_listed(page, &["One", "One, copy"]).await?;
        page.click(button("Delete One, copy")).await?;
        listed(page, &["One"]).await?;
        page.until_of(field(TITLE), "one.value === 'One'").await?;
        // The way back stands where the row stood, and has the focus; the bar knows it too.
        page.has_focus(button("Undo").of("Jobs on this device")).await?;
        page.click(button("Undo").of("Jobs on this device")).await?;
        are_listed(page, &["One", "One, copy"]).await?;
        page.click(button("Delete One, copy")).await?;
        listed(page, &["One"]).await?;
        page.click(button("Undo").of("banner")).await?;
        are_listed(page, &["One", "One, copy"]).await
    })
}

#[test]
fn a_hundred_jobs_of_six_setups_are_searched_as_one_types() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        fill(page, 100).await?;
        page.go_to("jobs").await?;
        page.until("document.querySelectorAll('#jobs .job').length === 101").await?;
        page.type_into(field("Search").of("Jobs on this device"), "job 77").await?;
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
        page.type_into(field(TITLE), "Backed up").await?;
        page.saved().await?;
        page.catch_saved().await?;
        page.go_to("jobs").await?;
        page.click(button("Back up all jobs")).await?;
        let backup = page.caught().await?;
        ensure!(backup.contains("Backed up"), "the job is not in the backup");

        page.type_into(field(TITLE), "Changed since").await?;
        page.saved().await?;
        let file = std::env::temp_dir().join(format!("layshaft-backup-{}.json", std::process::id()));
        std::fs::write(&file, backup)?;
        page.driver()?.find(browser_tests::By::Css("#file")).await?.send_keys(file.display().to_string()).await?;
        page.says(browser_tests::group("Restore from a backup"), "1 different").await?;
        let before: usize = page.js("kept.keys('layshaft.job.').then((keys) => keys.length)").await?;
        ensure!(before == 1, "something was written before it was confirmed");
        page.click(button("Write 1 job")).await?;
        page.until("document.querySelectorAll('#jobs .job').length === 2").await?;
        std::fs::remove_file(file)?;
        page.says("#jobs", "Backed up").await?;
        page.says("#jobs", "Changed since").await
    })
}
