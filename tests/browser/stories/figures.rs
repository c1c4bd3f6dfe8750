//! A figure and a picture explain themselves: how a figure came about, what would make it another, what a picture says where one points.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, button, field, group, visit};

/// Opens the card of the rpm at the cruising speed in a setup's column.
async fn ask_cruise_rpm(page: &Page, letter: &str) -> Result<()> {
    page.go_to("compare/road").await?;
    page.ask_figure(letter, "cruise_rpm").await
}

#[test]
fn a_figure_tells_how_it_came_about_and_a_picture_what_it_shows() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.ask_figure("A", "gear_1.ratio").await?;
        page.says(".card", "30/25 × 37/18 = 37/15 = 2.4667").await?;
        page.press(Key::Escape).await?;
        page.gone(".card").await?;
        // The crosshair by keys, and the text alternative.
        page.go_to("compare/road").await?;
        page.of::<()>(group("arrow keys move the pointer"), "void one.focus()").await?;
        page.press(Key::End).await?;
        page.says(".picture__said", "mph").await?;
        ensure!(page.told("Shift chart").await?.len() >= 3, "the picture is told in words, a line a setup");
        Ok(())
    })
}

#[test]
fn a_figure_is_asked_what_would_make_it_so_and_the_first_answer_is_tried() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        ask_cruise_rpm(page, "A").await?;
        page.type_into(field("What would make it"), "3000").await?;
        page.until("document.querySelectorAll('.card .option').length > 0").await?;
        let first: String = page.text(".card .option:first-child .num").await?;
        let digits: String = first.chars().filter(char::is_ascii_digit).collect();
        let rpm: f64 = digits.parse()?;
        ensure!((2_800.0..=3_200.0).contains(&rpm), "the first answer to 3,000 rpm is {first}");
        let part: String = page.text(".card .option:first-child b").await?;
        page.click(".card .option:first-child button").await?;
        page.setups(4).await?;
        page.shows("D", "cruise_rpm", first.split(' ').next().unwrap_or_default()).await?;
        ensure!(page.name_of("D").await?.contains(&part), "the new setup is called {}", page.name_of("D").await?);
        // A, which it is a copy of, stays as it was; one step takes it back.
        page.shows("A", "cruise_rpm", "3,907").await?;
        page.click(button("Undo").of("banner")).await?;
        page.setups(3).await
    })
}
