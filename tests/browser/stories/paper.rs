//! The sheet on paper: printed by the browser, read back as a PDF.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::pdf::pages;
use browser_tests::{Page, Paper, Theme, visit};

#[track_caller]
fn says(page: &str, words: &str) -> Result<()> {
    ensure!(page.contains(words), "the page does not say “{words}”:\n{page}");
    Ok(())
}

async fn choose_for_customer(page: &Page, at: usize) -> Result<()> {
    page.click("#open-details").await?;
    page.click(&format!("#for-customer option:nth-child({at})")).await?;
    page.click("#details .btn").await
}

#[test]
fn a_page_for_the_customer_comes_first_on_either_paper() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        choose_for_customer(page, 3).await?;
        for paper in [Paper::A4, Paper::LETTER] {
            let pages = pages(&page.pdf(paper).await?)?;
            let many = pages.len();
            ensure!(many >= 3, "{many} pages");
            let first = &pages[0];
            says(first, "Fernhill coupé, hill climb and the drive home")?;
            says(first, "An invented customer")?;
            says(first, "Setup C: Five-speed, overdrive 5th")?;
            for figure in ["2.842", "0.857", "43/11 = 3.909", "558 fewer than setup A"] {
                says(first, figure)?;
            }
            says(first, "Cautions")?;
            says(first, "Figures are calculated, not measured on the car")?;
            ensure!(!first.contains("Full comparison"), "the comparison begins on the customer's page");
            says(&pages[1], "Full comparison")?;
            for (at, page) in pages.iter().enumerate() {
                says(page, &format!("page {} of {many}", at + 1))?;
                says(page, "Fernhill coupé, hill climb and the drive home")?;
            }
        }
        Ok(())
    })
}

#[test]
fn the_comparison_holds_every_section_of_rows_and_its_figures() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let titles: Vec<String> = page.js("[...document.querySelectorAll('main .section')].filter((section) => section.querySelector('.rows')).map((section) => section.querySelector('h2').innerText)").await?;
        let figures: Vec<String> =
            page.js("[...document.querySelectorAll('main .rows .figure > span:first-child')].map((figure) => figure.innerText)").await?;
        let text = pages(&page.pdf(Paper::A4).await?)?.join(" ");
        for title in &titles {
            says(&text, title)?;
        }
        let missing: Vec<&String> = figures.iter().filter(|figure| !text.contains(figure.as_str())).collect();
        ensure!(figures.len() > 50 && missing.is_empty(), "of {} figures these are not on paper: {missing:?}", figures.len());
        Ok(())
    })
}

#[test]
fn a_dark_page_prints_as_a_light_one_and_nothing_stays_behind() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let light = page.pdf(Paper::A4).await?;
        page.set_theme(Theme::Dark).await?;
        page.click("#theme").await?;
        page.click("#theme").await?;
        let dark = page.pdf(Paper::A4).await?;
        ensure!(pages(&light)? == pages(&dark)?, "dark and light differ in words");
        // Dark paper would be ink all over; both are drawn alike, up to what the browser compresses.
        let (light, dark) = (light.len(), dark.len());
        ensure!(light.abs_diff(dark) < light / 50, "light {light} bytes, dark {dark} bytes");
        page.until("document.querySelector('.paper') === null").await
    })
}
