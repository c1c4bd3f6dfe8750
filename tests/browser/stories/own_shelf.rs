//! The shop's own shelf: the demo's parts hidden, the shop's own chosen, and what leaves the shop.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Page, button, checkbox, field, visit};

/// Names that the demo's parts go by.
const DEMO: [&str; 4] = ["Curlew", "Redshank", "Godwit", "Wheatear"];

const OWN: &str = "name,layout,constant,gear_1,gear_2,gear_3,gear_4\nCorner four,input-reduced,25/30,37/18,32/23,28/27,direct\nCorner close,input-reduced,27/28,37/18,32/23,29/26,direct\n";

/// Puts the lines of a file on the shelf.
async fn bring_in(page: &Page, lines: &str) -> Result<()> {
    page.go_to("shelf").await?;
    if !page.is_there(field("Lines of a CSV file")).await? {
        page.click(button("or paste its lines")).await?;
    }
    page.paste_into(field("Lines of a CSV file"), lines).await?;
    page.click(button("See what they would do")).await?;
    page.click(button("Import").of("What the file would do")).await?;
    page.gone("#shelf-report").await
}

async fn names_no_demo_part(page: &Page, where_: &str) -> Result<()> {
    let said: String = page.js("document.querySelector('main, .picker, body').innerText").await?;
    let named: Vec<&str> = DEMO.into_iter().filter(|name| said.contains(name)).collect();
    ensure!(named.is_empty(), "{where_} names {named:?}:\n{said}");
    Ok(())
}

#[test]
fn the_demos_parts_are_hidden_and_stay_hidden() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.go_to("shelf").await?;
        page.says("#demo-parts-why", "the demo job").await?;
        ensure!(page.count("#shelf-list > li").await? > 10, "the demo's parts are on at first");
        page.click(checkbox("Demo parts")).await?;
        page.says("#demo-parts-why", "Off in every job").await?;
        page.says("#shelf-count", "No gear sets on your shelf yet").await?;
        page.until("localStorage.getItem('layshaft.demo-parts') === 'hidden'").await?;
        page.reload().await?;
        page.says("#demo-parts-why", "Off in every job").await?;
        ensure!(page.count("#shelf-list > li").await? == 0, "hidden parts come back");

        // The job made from the demo keeps what it uses; the picker offers nothing of the demo's.
        page.go_to("compare/gears").await?;
        page.has_gear_set("A", "Curlew four, wide").await?;
        page.click(button("Gear set of setup A")).await?;
        page.says("#picker", "no gear set on your shelf").await?;

        page.go_to("shelf").await?;
        page.click(checkbox("Demo parts")).await?;
        page.says("#demo-parts-why", "On in every job").await?;
        page.until("document.querySelectorAll('#shelf-list > li').length > 10").await
    })
}

#[test]
fn a_job_of_the_shop_uses_the_shops_own_parts() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        bring_in(page, OWN).await?;
        bring_in(page, "drive\n40/11\n41/11\n").await?;
        // In the demo job the demo's parts stay.
        page.says("#demo-parts-why", "the demo job").await?;
        page.go_to("jobs").await?;
        page.click(button("New empty job")).await?;
        page.go_to("shelf").await?;
        page.says("#demo-parts-why", "Off, because you have parts of your own").await?;
        names_no_demo_part(page, "the shelf").await?;

        page.go_to("compare/gears").await?;
        page.click(button("Gear set of setup A")).await?;
        page.says("#picker", "2 of 2").await?;
        names_no_demo_part(page, "the picker").await?;
        page.click(button("Corner four")).await?;
        page.has_gear_set("A", "Corner four").await?;
        let axles: Vec<String> =
            page.of(field("Ring and pinion").of("Setup A"), "[...one.list.options].map((option) => option.value)").await?;
        ensure!(axles == ["40/11", "41/11"], "suggested: {axles:?}");
        page.type_into(field("Ring and pinion").of("Setup A"), "40/11").await?;
        for at in page.questions_of("compare").await?.into_iter().chain(page.questions_of("bench").await?) {
            page.go_to(&at).await?;
            names_no_demo_part(page, &at).await?;
        }
        Ok(())
    })
}
