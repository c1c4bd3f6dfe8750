//! The moment: the speed one points at in one picture is the one every other picture and question shows.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, group, visit};

/// Points at the end of the open picture.
async fn point_at_the_end(page: &Page) -> Result<String> {
    page.of::<()>(group("arrow keys move the pointer"), "void one.focus()").await?;
    page.press(Key::End).await?;
    speed(page).await
}

/// The speed that the read-out of the open picture begins with.
async fn speed(page: &Page) -> Result<String> {
    page.until_of(".picture__said", "one.querySelector('.said__at') !== null").await?;
    page.text(".picture__said .said__at").await
}

#[test]
fn a_speed_pointed_at_in_one_picture_is_pointed_at_in_all() -> Result<()> {
    visit(async |page| {
        page.open("#compare/road").await?;
        let pointed = point_at_the_end(page).await?;
        ensure!(pointed.contains("mph"), "the shift chart is read at {pointed}");
        page.go_to("compare/pull").await?;
        page.choose_tab("Thrust").await?;
        let there = speed(page).await?;
        let same = (number(&there)? - number(&pointed)?).abs() < 0.05;
        ensure!(same, "{pointed} in one picture, {there} in the other");
        page.press(Key::Home).await.ok();
        page.of::<()>(group("arrow keys move the pointer"), "void one.focus()").await?;
        page.press(Key::Home).await?;
        page.until(&format!("document.querySelector('.picture__said .said__at').innerText !== {there:?}")).await?;
        let moved = speed(page).await?;
        page.go_to("compare/road").await?;
        page.until(&format!("parseFloat(document.querySelector('.picture__said .said__at')?.innerText) === parseFloat({moved:?}) || document.querySelector('.picture__said').innerText")).await?;
        // Escape looks at nothing again.
        page.of::<()>(group("arrow keys move the pointer"), "void one.focus()").await?;
        page.press(Key::Escape).await?;
        page.until("document.querySelector('.picture__said .said__at') === null").await
    })
}

/// The figure at the head of what is read out.
fn number(said: &str) -> Result<f64> {
    Ok(said.split(' ').next().unwrap_or_default().parse()?)
}

#[test]
fn nothing_moves_when_one_points_into_a_picture() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        for at in page.questions_of("compare").await? {
            page.go_to(&at).await?;
            let many: usize = page.count("main figure.picture:not([hidden]) [role=tab]").await?;
            for tab in 1..=many {
                page.click(&format!("main figure.picture [role=tab]:nth-child({tab})")).await?;
                page.press(Key::Escape).await?;
                let height = "document.querySelector('main figure.picture').getBoundingClientRect().height";
                page.of::<()>(".picture__point", "void one.focus()").await?;
                page.press(Key::Escape).await?;
                let before: f64 = page.js(height).await?;
                for key in [Key::Home, Key::Right, Key::End] {
                    page.press(key).await?;
                }
                let after: f64 = page.js(height).await?;
                ensure!((after - before).abs() < 1.0, "at {at}, picture {tab}: {before} px high, {after} px once pointed into");
            }
        }
        Ok(())
    })
}
