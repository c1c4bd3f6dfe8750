//! The shop's own shelf: the demo's parts hidden, the shop's own chosen, and what leaves the shop.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::pdf::pages;
use browser_tests::{By, Key, Page, Paper, button, checkbox, field, group, visit};
use serde_json::{Value, json};

/// Names that the demo's parts go by.
const DEMO: [&str; 4] = ["Curlew", "Redshank", "Godwit", "Wheatear"];

const OWN: &str = "name,constant,gear_1,gear_2,gear_3,gear_4,price,quantity,reorder_at\nCorner four,25/30,37/18,32/23,28/27,direct,480 EUR,1,1\nCorner close,27/28,37/18,32/23,29/26,direct,510 EUR,3,1\n";

/// An axle, a tyre and speedometer gears of the shop's own.
const AXLES: &str = "drive,price,currency\n40/11,310,EUR\n41/11,310,EUR\n";
const GEARS: &str = "name,role,teeth,housing\nCorner 8,drive,8,Corner\nCorner 25,driven,25,Corner\nCorner 26,driven,26,Corner\n";

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

/// One Corner four stands on the shelf: the job that is done takes it, and undo puts it back.
#[test]
fn a_job_that_is_done_takes_its_parts_off_the_shelf() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        bring_in(page, OWN).await?;
        page.click(button("Use Corner four in setup A")).await?;
        page.until("kept.job().then((text) => JSON.parse(text).job.setups[0].gearbox.name === 'Corner four')").await?;
        page.go_to("jobs").await?;
        page.choose(field("State of"), "done").await?;
        let said = "Off the shelf: Corner four (none left).";
        page.until(&format!("document.body.innerText.includes({said:?})")).await?;
        page.go_to("shelf").await?;
        page.says("[data-name='Corner four']", "in 1 job:").await?;
        let in_stock = checkbox("Corner four in stock");
        page.until_of(&in_stock, "!one.checked").await?;
        page.click(button("Undo").of("notices")).await?;
        page.until_of(&in_stock, "one.checked").await?;

        // What a job took once it does not take again, but after an undo it does.
        page.go_to("jobs").await?;
        page.choose(field("State of"), "on the bench").await?;
        page.choose(field("State of"), "done").await?;
        page.until(&format!("document.body.innerText.includes({said:?})")).await
    })
}

#[test]
fn a_job_of_the_shop_uses_the_shops_own_parts() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        bring_in(page, OWN).await?;
        bring_in(page, AXLES).await?;
        bring_in(page, GEARS).await?;
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

#[test]
fn the_shelf_is_searched_by_sum_and_ratio_and_says_what_is_low() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        bring_in(page, OWN).await?;
        page.click(checkbox("Demo parts")).await?;
        page.type_into(field("Search the catalog"), "first near 2.5").await?;
        // 30/25 × 37/18 = 2.467 is near 2.5; 28/27 × 37/18 = 2.132 is not.
        page.says("#shelf-count", "1 of 2 gear sets fit: 1st within 10 % of 2.5").await?;
        page.until("document.querySelector('#shelf-list [data-name=\"Corner four\"]') !== null").await?;
        page.type_into(field("Search the catalog"), "sum 55").await?;
        page.says("#shelf-count", "2 of 2").await?;
        page.type_into(field("Search the catalog"), "").await?;
        page.says("#shelf-list [data-name='Corner four']", "1 left: reorder at 1").await?;
        page.says("#shelf-list [data-name='Corner four']", "480 EUR").await?;
        page.click(button("To reorder: 1")).await?;
        page.until("document.querySelectorAll('#shelf-list > li').length === 1").await?;
        // Enter saves.
        page.click(button("Edit Corner four")).await?;
        page.type_into(field("quantity").of("Change one of your own"), "4").await?;
        page.press(Key::Enter).await?;
        page.gone(group("Change one of your own")).await?;
        page.click(button("To reorder: 0")).await?;
        page.says("#shelf-list [data-name='Corner four']", "4 in stock").await
    })
}

/// Chooses a file for the shelf.
async fn choose_file(page: &Page, content: &str) -> Result<()> {
    let file = std::env::temp_dir().join(format!("layshaft-shelf-{}.json", std::process::id()));
    std::fs::write(&file, content)?;
    page.driver()?.find(By::Css("#shelf-file")).await?.send_keys(file.display().to_string()).await?;
    page.element(group("What the file would do")).await?;
    Ok(std::fs::remove_file(file)?)
}

/// The shelf goes out without what is the shop's alone, and another shop's comes in beside it: side by side, told first, and taken back.
#[test]
fn another_shops_shelf_comes_in_beside_ones_own() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        bring_in(page, OWN).await?;
        page.catch_saved().await?;
        page.click(button("Save a shelf for another shop")).await?;
        let mine = page.caught().await?;
        ensure!(mine.contains("Corner four") && !mine.contains("480"), "the file tells prices: {mine}");
        // Mill Lane's: one the same, one counted otherwise, one that is new and signed.
        let mut theirs: Value = serde_json::from_str(&mine)?;
        theirs["from"] = json!("Mill Lane Gearboxes");
        theirs["entries"][0]["gear_2"] = json!("33/22");
        let mut new = theirs["entries"][1].clone();
        new["name"] = json!("Lane special");
        new["counted_by"] = json!("J.W.");
        let entries = theirs["entries"].as_array_mut().map(|entries| entries.push(new));
        ensure!(entries.is_some(), "the file has no list of parts");
        choose_file(page, &theirs.to_string()).await?;
        let report = group("What the file would do");
        for part in ["From Mill Lane Gearboxes: 1 new part, 1 as they are here, 1 different", "32/23", "33/22", "✓ counted by J.W."] {
            page.says(&report, part).await?;
        }
        ensure!(page.count("#shelf-list [data-own=true]").await? == 2, "something is written before it was told to");
        page.assert_accessible("another shop's shelf").await?;
        page.choose(field("What to do with Corner four"), "take theirs").await?;
        page.click(button("Import").of("What the file would do")).await?;
        page.says("#shelf-list [data-name='Lane special']", "from Mill Lane Gearboxes").await?;
        page.says("#shelf-list [data-name='Corner four']", "33/22").await?;
        page.says("#shelf-list [data-name='Corner four']", "480 EUR").await?;
        page.click(button("Undo").of("banner")).await?;
        page.says("#shelf-list [data-name='Corner four']", "32/23").await?;
        ensure!(page.count("#shelf-list [data-own=true]").await? == 2, "what came in is still there");
        Ok(())
    })
}

/// Three parts by hand and twenty from a file, to the customer's page, a few words and the link: nothing of the demo's, and no customer.
#[test]
fn a_job_of_the_shop_goes_to_the_customer_without_a_demo_part() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.go_to("shelf").await?;
        page.click(checkbox("Demo parts")).await?;
        page.click(button("ring and pinion pairs").of("Kind of part")).await?;
        for (drive, price) in [("40/11", "310 EUR"), ("41/11", "310 EUR"), ("43/11", "320 EUR")] {
            page.click(button("Add one")).await?;
            page.type_into(field("ring and pinion").of("one of your own"), drive).await?;
            page.type_into(field("price").of("one of your own"), price).await?;
            page.press(Key::Enter).await?;
            page.gone(group("one of your own")).await?;
        }
        page.says("#shelf-count", "3 of them your own").await?;
        let (head, first) = OWN.split_once('\n').unwrap_or_default();
        let line = |number: u32| format!("Own {number},25/30,{}/18,32/23,28/27,direct,{},1,0\n", 30 + number % 9, 400 + number);
        let lines: String = (2..=19).map(line).collect();
        bring_in(page, &format!("{head}\n{first}{lines}")).await?;
        page.says("#shelf-count", "20 of them your own").await?;
        page.go_to("jobs").await?;
        page.click(button("New empty job")).await?;
        page.type_into(field("Customer"), "Mrs Example").await?;
        page.go_to("shelf").await?;
        page.click(button("Use Corner four in setup A")).await?;
        page.click(button("ring and pinion pairs").of("Kind of part")).await?;
        page.click(button("Use 40/11 in setup A")).await?;
        page.go_to("compare/gears").await?;
        page.type_into(field("Tire").of("Setup A"), "185/70R14").await?;
        page.go_to("jobs").await?;
        page.click(button("Add the parts of this job")).await?;
        // 480 + 310 = 790, by hand.
        page.says("#quote-total", "Total 790.00 EUR.").await?;
        let text = pages(&page.pdf(Paper::A4).await?)?.join(" ");
        for words in ["Corner four", "40/11", "790.00 EUR", "2.467", "Mrs Example"] {
            ensure!(text.contains(words), "“{words}” is not on the customer's page:\n{text}");
        }
        for name in DEMO.into_iter().chain(["needs ", "not known", "Press "]) {
            ensure!(!text.contains(name), "the customer's page says “{name}”:\n{text}");
        }
        page.hand_over("Link, file, CSV").await?;
        page.until_of("#few-words", "one.value.includes('2.467') && one.value.includes('40/11')").await?;
        page.click(button("Copy these words")).await?;
        page.until_of(field("The link"), "one.value.includes('#j=')").await?;
        let link = page.value(field("The link")).await?;
        let fragment = link.split_once('#').map_or("", |(_, fragment)| fragment);
        page.js::<Value>("kept.forget()").await?;
        page.go("?received").await?;
        page.ready().await?;
        page.go(&format!("?received#{fragment}")).await?;
        page.element(button("Keep a copy")).await?;
        page.has_gear_set("A", "Corner four").await?;
        ensure!(page.js::<bool>("!document.documentElement.innerHTML.includes('Mrs Example')").await?, "the customer went along");
        Ok(())
    })
}
