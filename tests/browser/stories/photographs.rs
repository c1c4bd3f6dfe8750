//! Photographs: taken of a step and of a part, kept on the device, in the backup and out of it, on paper, and never in a link.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Page, Paper, Screen, button, field, visit};
use serde_json::Value;

use super::keeping::notice_says;
use super::paper::print_what;

/// The first photograph's input of a place.
const INPUT: &str = "document.querySelector('.photos__take input')";

/// Opens the demo job's build record with a list of steps.
async fn begin(page: &Page) -> Result<()> {
    page.set_screen(Screen::PHONE).await?;
    page.open("#bench/record").await?;
    page.click(button("countershaft, reduced at the input")).await?;
    page.until(&format!("Boolean({INPUT})")).await
}

/// Takes a picture of so many pixels across, as a camera would hand it over.
async fn take(page: &Page, across: u32) -> Result<()> {
    page.js::<Value>(&format!(
        "new Promise((done) => {{ const canvas = document.createElement('canvas'); canvas.width = {across}; canvas.height = {across} / 2;
          const paint = canvas.getContext('2d'); paint.fillStyle = '#804020'; paint.fillRect(0, 0, {across} / 2, {across});
          canvas.toBlob((blob) => {{ hand(new File([blob], 'case.png', {{ type: 'image/png' }})); done(1); }});
          function hand(file) {{ const all = new DataTransfer(); all.items.add(file); {INPUT}.files = all.files;
            {INPUT}.dispatchEvent(new Event('change', {{ bubbles: true }})); }} }})"
    ))
    .await
    .map(drop)
}

/// Waits until so many photographs are kept, and the first that is shown is so many pixels across.
async fn kept(page: &Page, many: usize, across: u32) -> Result<()> {
    page.until(&format!("kept.photographs().then((many) => many === {many})")).await?;
    page.until(&format!("document.querySelector('.photos__look img')?.naturalWidth === {across}")).await
}

#[test]
fn photographs_survive_a_reload_and_a_backup_and_restore() -> Result<()> {
    visit(async |page| {
        begin(page).await?;
        let opens_camera: bool =
            page.js(&format!("{INPUT}.getAttribute('capture') === 'environment' && {INPUT}.accept === 'image/*'")).await?;
        ensure!(opens_camera, "a phone does not open its camera");
        take(page, 3_200).await?;
        // Made small: the longer side has 1,600 pixels.
        kept(page, 1, 1_600).await?;
        page.assert_accessible("a step with a photograph").await?;
        // Reworded, the step keeps it.
        page.click(button("Edit the list as text").of("The order of work")).await?;
        page.until_of(field("the steps, one a line"), "one.value.includes('photographs of Manual, torque')").await?;
        let text: String = page
            .of(field("the steps, one a line"), "one.value.replace('Manual, torque figures and shims to hand', 'Papers and shims to hand')")
            .await?;
        page.paste_into(field("the steps, one a line"), &text).await?;
        page.until("document.querySelector('.step__what').innerText === 'Papers and shims to hand'").await?;
        kept(page, 1, 1_600).await?;
        page.saved().await?;
        page.reload().await?;
        kept(page, 1, 1_600).await?;

        let record: String = page.js("kept.job()").await?;
        ensure!(!record.contains("jpeg") && !record.contains("step/"), "the job names its photograph, so that a link would");
        print_what(page, "Everything").await?;
        let bytes = page.pdf(Paper::A4).await?;
        ensure!(bytes.windows(9).any(|word| word == b"DCTDecode"), "the photograph is not printed");

        page.catch_saved().await?;
        page.go_to("jobs").await?;
        page.click(button("Back up all jobs")).await?;
        let backup = page.caught().await?;
        ensure!(backup.contains("\"photographs\""), "the photograph is not in the backup");
        page.js::<Value>("kept.forget()").await?;
        page.reload().await?;
        let file = std::env::temp_dir().join(format!("layshaft-photographs-{}.json", std::process::id()));
        std::fs::write(&file, backup)?;
        page.go_to("jobs").await?;
        page.driver()?.find(browser_tests::By::Css("#file")).await?.send_keys(file.display().to_string()).await?;
        page.click(button("Write 1 job and 1 photograph")).await?;
        notice_says(page, &["Restored from the backup: 1 job and 1 photograph."]).await?;
        std::fs::remove_file(file)?;
        page.js::<()>("void [...document.querySelectorAll('#jobs .job__open')].at(-1).click()").await?;
        page.go_to("bench/record").await?;
        kept(page, 1, 1_600).await
    })
}

#[test]
fn a_photograph_is_removed_and_put_back_where_the_finger_is() -> Result<()> {
    visit(async |page| {
        begin(page).await?;
        take(page, 200).await?;
        kept(page, 1, 200).await?;
        page.click(".photos__look").await?;
        page.click(button("Delete the photograph of")).await?;
        page.until("kept.photographs().then((many) => many === 0)").await?;
        page.click(button("Undo, photograph of")).await?;
        kept(page, 1, 200).await
    })
}

#[test]
fn what_is_no_picture_and_a_full_store_are_said_and_nothing_is_lost() -> Result<()> {
    visit(async |page| {
        begin(page).await?;
        page.type_into(field("ticked by"), "JB").await?;
        page.js::<()>(&format!(
            "void (() => {{ const all = new DataTransfer(); all.items.add(new File(['words'], 'notes.txt')); {INPUT}.files = all.files;
              {INPUT}.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()"
        ))
        .await?;
        notice_says(page, &["notes.txt", "is no picture"]).await?;
        page.saved().await?;
        page.fill_device(true).await?;
        take(page, 200).await?;
        notice_says(page, &["photograph could not be kept", "full"]).await?;
        page.fill_device(false).await?;
        take(page, 200).await?;
        kept(page, 1, 200).await?;
        ensure!(page.value(field("ticked by")).await? == "JB", "what was typed is gone");
        Ok(())
    })
}

/// A worn part lies beside its measured value: the first of the list.
#[test]
fn a_worn_part_has_its_photograph() -> Result<()> {
    visit(async |page| {
        page.open("#bench/worn").await?;
        page.until(&format!("Boolean({INPUT})")).await?;
        take(page, 300).await?;
        kept(page, 1, 300).await?;
        let of: bool = page.js("document.querySelector('.photos__look').getAttribute('aria-label').includes('Tooth tip')").await?;
        ensure!(of, "the photograph is not called by its part");
        page.saved().await?;
        page.reload().await?;
        kept(page, 1, 300).await
    })
}

#[test]
fn a_part_on_the_shelf_has_its_photograph() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.go_to("shelf").await?;
        page.click(button("Copy Curlew three to your own")).await?;
        page.click(button("Save").of("one of your own")).await?;
        page.until(&format!("Boolean({INPUT})")).await?;
        take(page, 300).await?;
        kept(page, 1, 300).await?;
        page.reload().await?;
        kept(page, 1, 300).await
    })
}
