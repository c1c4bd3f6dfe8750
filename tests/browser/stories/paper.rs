//! The sheet on paper: printed by the browser, read back as a PDF.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::pdf::pages;
use browser_tests::{Page, Paper, Theme, button, field, visit};

#[track_caller]
fn says(page: &str, words: &str) -> Result<()> {
    ensure!(page.contains(words), "the page does not say “{words}”:\n{page}");
    Ok(())
}

/// Chooses what is printed.
pub(crate) async fn print_what(page: &Page, pages: &str) -> Result<()> {
    page.hand_over("Print").await?;
    page.click(button(pages).of("What to print")).await?;
    page.until_of(button(pages).of("What to print"), "one.ariaPressed === 'true'").await?;
    page.click(button("Close").of("Print")).await
}

async fn choose_for_customer(page: &Page, setup: &str) -> Result<()> {
    page.hand_over("Customer and notes").await?;
    page.choose(field("For the customer"), setup).await?;
    page.click(button("Close").of("This job")).await
}

#[test]
fn a_page_for_the_customer_comes_first_on_either_paper() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        choose_for_customer(page, "C ").await?;
        print_what(page, "Everything").await?;
        for paper in [Paper::A4, Paper::LETTER] {
            let pages = pages(&page.pdf(paper).await?)?;
            let many = pages.len();
            ensure!(many >= 3, "{many} pages");
            let first = &pages[0];
            says(first, "Fernhill coupé, hill climb and the drive home")?;
            says(first, "An invented customer")?;
            says(first, "Five-speed, overdrive 5th")?;
            says(first, "Why")?;
            for figure in ["2.842", "0.857", "43/11 = 3.909", "559"] {
                says(first, figure)?;
            }
            says(first, "Cautions")?;
            ensure!(!first.contains("Comparison"), "the comparison begins on the customer's page");
            says(&pages[1], "Comparison")?;
            for (at, page) in pages.iter().enumerate() {
                says(page, &format!("page {} of {many}", at + 1))?;
                says(page, "Fernhill coupé, hill climb and the drive home")?;
            }
        }
        Ok(())
    })
}

/// The tag is a page of its own: teeth, ratios, and a code of dark squares.
#[test]
fn a_tag_for_the_finished_box_fits_on_one_page() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        print_what(page, "Tag for the box").await?;
        let pages = pages(&page.pdf(Paper::A4).await?)?;
        ensure!(pages.len() == 1, "{} pages", pages.len());
        for words in ["Fernhill coupé, hill climb and the drive home", "43/11 = 3.909", "2.467", "Reverse", "Oil:"] {
            says(&pages[0], words)?;
        }
        ensure!(!pages[0].contains("An invented customer"), "the customer's name is tied to the box");
        page.js::<()>("void dispatchEvent(new Event('beforeprint'))").await?;
        let length: usize = page.js("document.querySelector('.paper__code path').getAttribute('d').length").await?;
        ensure!(length > 5_000, "the code is {length} characters long");
        Ok(())
    })
}

/// What leaves the shop by itself is the customer's page, with the shop's name on it, and nothing that is for the shop alone.
#[test]
fn the_customers_page_is_printed_by_itself_under_the_shops_name() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.hand_over("Print").await?;
        page.paste_into(field("Your name and address"), "Corner Gearboxes\n1 Mill Lane\nphone 555 0100").await?;
        page.click(button("Close").of("Print")).await?;
        page.hand_over("Customer and notes").await?;
        page.paste_into(field("Notes"), "pays late").await?;
        page.paste_into(field("Note to the customer"), "Ready on Friday.").await?;
        page.paste_into(field("Quote, a line each"), "Gear set: 480 EUR\nLabour: 330").await?;
        page.paste_into(field("Valid until"), "31 December").await?;
        // 480 + 330 = 810, by hand.
        page.says("#quote-total", "Total 810.00 EUR.").await?;
        page.click(button("Close").of("This job")).await?;
        for paper in [Paper::A4, Paper::LETTER] {
            let pages = pages(&page.pdf(paper).await?)?;
            ensure!(pages.len() <= 2, "{} pages", pages.len());
            let all = pages.join(" ");
            for words in ["Corner Gearboxes", "1 Mill Lane · phone 555 0100", "Ready on Friday.", "810.00 EUR", "Valid until 31 December"]
            {
                says(&all, words)?;
            }
            says(&all, "Customer’s signature")?;
            ensure!(!all.contains("pays late"), "the shop's notes are printed");
        }
        page.saved().await?;
        page.reload().await?;
        print_what(page, "Comparison").await?;
        page.reload().await?;
        let pages = pages(&page.pdf(Paper::A4).await?)?;
        says(&pages[0], "Corner Gearboxes")?;
        says(&pages[0], "Comparison")?;
        ensure!(!pages.join(" ").contains("Customer’s signature"), "the choice is forgotten");
        Ok(())
    })
}

#[test]
fn the_comparison_holds_every_question_and_its_figures() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        print_what(page, "Everything").await?;
        let mut figures: Vec<String> = Vec::new();
        let mut titles: Vec<String> = Vec::new();
        for at in page.questions_of("compare").await? {
            page.go_to(&at).await?;
            if page.is_there(button("All figures")).await? {
                page.open_fold("All figures").await?;
            }
            let shown: Vec<String> = page
                .js("[...document.querySelectorAll('main [data-figure] > span:first-child')].map((figure) => figure.innerText)")
                .await?;
            if !shown.is_empty() {
                titles.push(page.text("main section.question h2").await?);
            }
            figures.extend(shown);
        }
        let text = pages(&page.pdf(Paper::A4).await?)?.join(" ");
        for title in &titles {
            says(&text, title)?;
        }
        let missing: Vec<&String> = figures.iter().filter(|figure| !text.contains(figure.as_str())).collect();
        ensure!(figures.len() > 150 && missing.is_empty(), "of {} figures these are not on paper: {missing:?}", figures.len());
        Ok(())
    })
}

#[test]
fn a_dark_page_prints_as_a_light_one_and_nothing_stays_behind() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let light = page.pdf(Paper::A4).await?;
        page.set_theme(Theme::Dark).await?;
        page.switch_theme().await?;
        page.switch_theme().await?;
        let dark = page.pdf(Paper::A4).await?;
        ensure!(pages(&light)? == pages(&dark)?, "dark and light differ in words");
        // Dark paper would be ink all over; both are drawn alike, up to what the browser compresses.
        let (light, dark) = (light.len(), dark.len());
        ensure!(light.abs_diff(dark) < light / 50, "light {light} bytes, dark {dark} bytes");
        page.until("document.querySelector('.paper') === null").await
    })
}
