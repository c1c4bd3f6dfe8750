//! A job handed over: by link, by file, as a table; and what is said when that cannot be.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{By, Page, button, checkbox, field, visit};

use super::keeping::notice_says;

const TITLE: &str = "Title of the job";
const HAND_OVER: &str = "Link, file, CSV";

async fn choose_file(page: &Page, name: &str, content: &[u8]) -> Result<()> {
    let file = std::env::temp_dir().join(format!("layshaft-{}-{name}", std::process::id()));
    std::fs::write(&file, content)?;
    page.driver()?.find(By::Css("#file")).await?.send_keys(file.display().to_string()).await?;
    // The page empties the field once it has read the file.
    page.until("document.getElementById('file') === null || document.getElementById('file').value === ''").await?;
    Ok(std::fs::remove_file(file)?)
}

/// The fragment of the link that carries the open job.
async fn link_of(page: &Page) -> Result<String> {
    page.hand_over(HAND_OVER).await?;
    page.until_of(field("The link"), "one.value.includes('#j=')").await?;
    let link = page.value(field("The link")).await?;
    Ok(link.split_once('#').map_or(String::new(), |(_, fragment)| fragment.to_owned()))
}

#[test]
fn a_link_carries_the_whole_job_and_is_only_shown_until_a_copy_is_kept() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into(field(TITLE), "Sent by link").await?;
        let fragment = link_of(page).await?;
        // What is still to be written would come after what is forgotten.
        page.until("kept.texts().then((texts) => texts.some((text) => text.includes('Sent by link')))").await?;
        page.js::<serde_json::Value>("kept.forget()").await?;
        page.go("?received").await?;
        page.ready().await?;
        let _ = page.requests().await?;
        page.go(&format!("?received#{fragment}")).await?;
        page.element(button("Keep a copy")).await?;
        page.until_of(field(TITLE), "one.value === 'Sent by link'").await?;
        let sent = page.requests().await?;
        ensure!(!sent.iter().any(|url| url.contains("j=1")), "the job went over the network: {sent:?}");
        ensure!(
            page.js::<bool>("kept.texts().then((texts) => !texts.some((text) => text.includes('Sent by link')))").await?,
            "kept unasked"
        );

        page.reload().await?;
        page.click(button("Keep a copy")).await?;
        page.gone(button("Keep a copy")).await?;
        page.until("!location.hash.includes('j=')").await?;
        page.until("kept.texts().then((texts) => texts.some((text) => text.includes('Sent by link')))").await?;
        page.reload().await?;
        page.until_of(field(TITLE), "one.value === 'Sent by link'").await
    })
}

#[test]
fn the_first_change_of_a_linked_job_keeps_a_copy_and_says_so() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let fragment = link_of(page).await?;
        page.js::<()>(&format!("void (location.hash = '{fragment}')")).await?;
        page.element(button("Keep a copy")).await?;
        page.type_into(field(TITLE), "Changed").await?;
        notice_says(page, &["copy"]).await?;
        page.until("kept.keys('layshaft.job.').then((keys) => keys.length === 2)").await
    })
}

#[test]
fn a_linked_job_is_looked_at_from_every_side_before_it_is_kept() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into(field(TITLE), "Only looked at").await?;
        let fragment = link_of(page).await?;
        page.type_into(field(TITLE), "Mine").await?;
        page.saved().await?;
        page.go("?again").await?;
        page.ready().await?;
        page.go(&format!("?again#{fragment}")).await?;
        page.until_of(field(TITLE), "one.value === 'Only looked at'").await?;
        // Another question has another address; the job of the link stays before the eyes, and stays unkept.
        page.go_to("compare/road").await?;
        page.until_of(field(TITLE), "one.value === 'Only looked at'").await?;
        page.reload().await?;
        page.until_of(field(TITLE), "one.value === 'Only looked at'").await?;
        page.click(button("Back to my jobs")).await?;
        page.until_of(field(TITLE), "one.value === 'Mine'").await?;
        ensure!(
            page.js::<bool>("kept.texts().then((texts) => !texts.some((text) => text.includes('Only looked at')))").await?,
            "kept unasked"
        );
        Ok(())
    })
}

/// What is private leaves only when it is ticked, and the page says so before the link is copied.
#[test]
fn a_link_leaves_customer_and_notes_behind_unless_they_are_ticked() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.go_to("jobs").await?;
        page.type_into(field("Customer"), "Mrs Example").await?;
        page.paste_into(field("Notes"), "pays late").await?;
        page.go_to("compare/gears").await?;
        let fragment = link_of(page).await?;
        page.says("#link-carries", "Customer, notes and quote stay here").await?;
        page.click(checkbox("with the customer’s name")).await?;
        page.says("#link-carries", "The customer’s name goes along").await?;
        page.until_of(field("The link"), &format!("!one.value.endsWith('{fragment}')")).await?;
        let with_customer = page.value(field("The link")).await?;

        // What is not written yet would be when the page is left, after all was forgotten.
        page.saved().await?;
        page.js::<serde_json::Value>("kept.forget()").await?;
        page.go("?received").await?;
        page.ready().await?;
        page.go(&format!("?received#{fragment}")).await?;
        page.element(button("Keep a copy")).await?;
        page.go_to("jobs").await?;
        page.until_of(field("Customer"), "one.value === ''").await?;
        page.until_of(field("Notes"), "one.value === ''").await?;
        ensure!(page.js::<bool>("!document.documentElement.innerHTML.includes('Mrs Example')").await?, "the customer went along");

        let fragment = with_customer.split_once('#').map_or("", |(_, fragment)| fragment);
        page.go("?again").await?;
        page.ready().await?;
        page.go(&format!("?again#{fragment}")).await?;
        page.go_to("jobs").await?;
        page.until_of(field("Customer"), "one.value === 'Mrs Example'").await?;
        page.until_of(field("Notes"), "one.value === ''").await
    })
}

#[test]
fn a_damaged_link_says_so_and_the_kept_job_opens() -> Result<()> {
    visit(async |page| {
        page.open("#j=1.AAAA").await?;
        notice_says(page, &["link"]).await?;
        page.until_of(field(TITLE), "one.value.startsWith('Fernhill')").await
    })
}

#[test]
fn too_long_a_link_says_so_and_offers_the_file() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.go_to("jobs").await?;
        // Noise does not pack.
        let noise: String = page
            .js("(() => { let text = '';
                  for (let seed = 1; text.length < 20000; ) { seed = (seed * 1664525 + 1013904223) % 4294967296; text += (seed >>> 0).toString(36); }
                  return text; })()")
            .await?;
        page.paste_into(field("Notes"), &noise).await?;
        page.hand_over(HAND_OVER).await?;
        // Without the notes it is no longer than others.
        page.element(field("The link")).await?;
        page.click(checkbox("with notes and quote")).await?;
        page.says("#link-refused", "file").await?;
        ensure!(!page.is_there(field("The link")).await?, "half a link is offered");
        page.element(button("Save the job as a file")).await.map(drop)
    })
}

#[test]
fn a_file_goes_out_and_comes_in_and_a_wrong_one_is_refused() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into(field(TITLE), "<b>Sent</b> as a file").await?;
        page.catch_saved().await?;
        page.hand_over(HAND_OVER).await?;
        page.click(button("Save the job as a file")).await?;
        let file = page.caught().await?;
        page.go_to("jobs").await?;
        choose_file(page, "wrong.json", b"GIF89a").await?;
        notice_says(page, &["wrong.json", "not"]).await?;
        choose_file(page, "job.json", file.as_bytes()).await?;
        notice_says(page, &["“<b>Sent</b> as a file”"]).await?;
        ensure!(page.count(".notice b").await? == 0, "imported text became markup");
        page.until("kept.keys('layshaft.job.').then((keys) => keys.length === 2)").await
    })
}

#[test]
fn the_figures_go_out_as_a_table() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.catch_saved().await?;
        page.hand_over(HAND_OVER).await?;
        page.click(button("Save the figures as CSV")).await?;
        let csv = page.caught().await?;
        ensure!(csv.starts_with("section,row,As it came,Close,"), "the heads are {}", csv.lines().next().unwrap_or_default());
        ensure!(csv.contains("2.467"), "1st of A is not in the table");
        Ok(())
    })
}
