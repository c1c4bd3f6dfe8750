//! What people really type: a whole line of a box into one gear, ratios as a list prints them, a point where the slash belongs.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, button, field, visit};

fn gear(which: &str) -> browser_tests::Named {
    field(format!("teeth of {which}, setup A"))
}

/// Pastes as a person does: the page is asked first, and puts the text in only where nobody takes it.
async fn paste(page: &Page, which: &str, text: &str) -> Result<()> {
    let paste = format!(
        "(() => {{ const data = new DataTransfer(); data.setData('text/plain', {text:?}); one.focus();
           one.dispatchEvent(new ClipboardEvent('paste', {{ clipboardData: data, bubbles: true, cancelable: true }})); }})()"
    );
    page.of(gear(which), &paste).await
}

#[test]
fn a_line_pasted_into_a_gear_fills_the_box_in_one_step() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.begin_empty().await?;
        paste(page, "1st", "24/29 36/17 31/22 27/26 direct").await?;
        // By hand: 29/24 × 36/17 = 2.559, 29/24 × 31/22 = 1.703, 29/24 × 27/26 = 1.255.
        for (figure, shown) in [("gear_1.ratio", "2.559"), ("gear_2.ratio", "1.703"), ("gear_3.ratio", "1.255"), ("gear_4.ratio", "1")] {
            page.shows("A", figure, shown).await?;
        }
        page.until_of(field("constant pair, setup A"), "one.value === '24/29'").await?;
        page.until("document.body.innerText.includes('24/29 taken as the constant pair')").await?;
        page.click(button("Undo").of("banner")).await?;
        page.until_of(gear("1st"), "one.value === ''").await?;
        page.until_of(field("constant pair, setup A"), "one.value === ''").await
    })
}

#[test]
fn a_line_of_ratios_is_typed_and_taken_on_leaving() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.begin_empty().await?;
        page.type_into(gear("1st"), "2.47 1.67 1.24 1.00").await?;
        ensure!(page.value(gear("1st")).await? == "2.47 1.67 1.24 1.00", "nothing moves while one types");
        page.press(Key::Tab).await?;
        page.until_of(gear("1st"), "one.value === '2.47'").await?;
        page.until_of(gear("4th"), "one.value === '1.00'").await?;
        page.shows("A", "gear_1.ratio", "2.47").await?;
        page.question_says("±0.2 %").await
    })
}

#[test]
fn a_point_for_a_slash_is_taken_and_said_beside_the_field() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into(gear("1st"), "37.18").await?;
        page.question_says("taken as 37/18").await?;
        // 30/25 × 37/18 = 37/15.
        page.shows("A", "gear_1.ratio", "2.467").await?;
        ensure!(page.value(gear("1st")).await? == "37.18", "the text does not stay as typed");
        page.type_into(field("Ring and pinion").of("Setup A"), "43.11").await?;
        page.until_of("#heads", "one.innerText.includes('taken as 43/11')").await
    })
}
