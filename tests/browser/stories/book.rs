//! The book of jobs: found, opened, copied, put away, deleted and brought back; a backup out and in.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Page, button, field, visit};

const TITLE: &str = "Title of the job";

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
        page.click(button("Undo").of("notices")).await?;
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
        let before: usize = page.js("Object.keys(localStorage).filter((key) => key.startsWith('layshaft.job.')).length").await?;
        ensure!(before == 1, "something was written before it was confirmed");
        page.click(button("Write 1 job")).await?;
        page.until("document.querySelectorAll('#jobs .job').length === 2").await?;
        std::fs::remove_file(file)?;
        page.says("#jobs", "Backed up").await?;
        page.says("#jobs", "Changed since").await
    })
}
