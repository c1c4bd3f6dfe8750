//! What the customer wishes is typed, the catalogue is gone through without a pause in the page, and a result becomes a setup.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, Screen, button, field, group, visit};

/// Everything was gone through, and the list stands.
const DONE: &str = "document.querySelector('#find-progress')?.dataset.done === 'true'";

async fn go_there(page: &Page) -> Result<()> {
    page.go_to("compare/find").await?;
    page.until(DONE).await
}

/// Removes every wish that the demo job brings.
async fn clear_wishes(page: &Page) -> Result<()> {
    for last in (1..=page.count(".wish").await?).rev() {
        page.click(button(format!("Remove wish {last}"))).await?;
        page.until(&format!("document.querySelectorAll('.wish').length === {}", last - 1)).await?;
    }
    Ok(())
}

/// Adds a wish of a kind and answers the group it is typed into.
async fn add_wish(page: &Page, kind: &str) -> Result<String> {
    let number = page.count(".wish").await? + 1;
    page.choose(field("Add a wish"), kind).await?;
    let wish = format!("Wish {number}: {kind}");
    page.element(group(&wish)).await?;
    Ok(wish)
}

#[test]
fn a_wish_list_puts_the_expected_set_on_the_sheet() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        go_there(page).await?;
        clear_wishes(page).await?;
        // 32 and 20 and 14 % are what the close set of the demo job loses; only it keeps all below 33 with four gears and the tyre of A,
        // 1st gear overall 8.33 behind 43/11.
        let first = add_wish(page, FIRST).await?;
        page.type_into(field("from").of(&first), "8.32").await?;
        page.type_into(field("to").of(&first), "8.34").await?;
        let cruise = add_wish(page, "rpm in top gear").await?;
        page.type_into(field("at").of(&cruise), "70").await?;
        page.type_into(field("from").of(&cruise), "3,900").await?;
        page.type_into(field("to").of(&cruise), "3,910").await?;
        let drop = add_wish(page, "largest rpm drop of a shift").await?;
        page.type_into(field("at most").of(&drop), "33").await?;
        add_wish(page, "the tire of setup A stays").await?;
        let close = page.js::<String>("document.querySelectorAll('.head__pick')[1].innerText.split('\\n')[0]").await?;
        page.until(&format!("{DONE} && document.querySelector('[data-result=\"0\"]')?.innerText.includes({close:?})")).await?;
        ensure!(page.text("[data-result='0']").await?.contains("43/11"), "another axle: {}", page.text("[data-result='0']").await?);

        page.click("[data-result='0']").await?;
        page.setups(4).await?;
        page.has_gear_set("D", &close).await?;
        page.until_of(field("Ring and pinion").of("Setup D"), "one.value === '43/11'").await?;
        ensure!(page.notices().await?.iter().any(|notice| notice.contains("setup D")), "nothing says where it stands");
        page.assert_accessible("a result on the sheet").await
    })
}

/// The customer keeps gears and axle; only the tyre is left to search, and each result shows its ratios.
#[test]
fn what_the_customer_keeps_is_in_every_result() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        go_there(page).await?;
        clear_wishes(page).await?;
        add_wish(page, "the gear set of setup A stays").await?;
        let few = add_wish(page, "parts changed, of gear set, axle and tire").await?;
        page.type_into(field("at most").of(&few), "1").await?;
        page.until(DONE).await?;
        page.until("document.querySelectorAll('[data-result]').length > 1").await?;
        let own = page.js::<String>("document.querySelectorAll('.head__pick')[0].innerText.split('\\n')[0]").await?;
        let shown = "[...document.querySelectorAll('[data-result]')].map(one => one.innerText)";
        let all = format!("{shown}.every(text => text.includes({own:?}) && /\\d\\.\\d{{3}}\\s+\\d\\.\\d{{3}}/.test(text))");
        page.until(&all).await?;
        page.assert_accessible("parts that stay").await
    })
}

/// What 1st gear and the axle come to, as a wish calls it.
const FIRST: &str = "1st gear, overall";

#[test]
fn all_results_are_asked_for() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        go_there(page).await?;
        let more = button("Show more of");
        let said: String = page.text(&more).await?;
        let many: usize = said.chars().filter(char::is_ascii_digit).collect::<String>().parse()?;
        ensure!(many > 10 && page.count("[data-result]").await? == 10, "{many} results, {} shown", page.count("[data-result]").await?);
        while page.is_there(&more).await? {
            page.click(&more).await?;
        }
        ensure!(page.count("[data-result]").await? == many, "of {many} results {} are shown", page.count("[data-result]").await?);
        Ok(())
    })
}

#[test]
fn no_task_of_a_search_is_long() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>(
            "void (() => { window.longest = 0; new PerformanceObserver(list => { for (const entry of list.getEntries()) window.longest = Math.max(window.longest, entry.duration); }).observe({type: 'longtask', buffered: false}); })()",
        )
        .await?;
        go_there(page).await?;
        clear_wishes(page).await?;
        let first = add_wish(page, FIRST).await?;
        page.type_into(field("from").of(&first), "9").await?;
        page.js::<()>("void (window.longest = 0)").await?;
        page.type_into(field("from").of(&first), "9.5").await?;
        page.until("performance.getEntriesByName('find-begin').length >= 2").await?;
        page.until(DONE).await?;
        let longest: f64 = page.js("window.longest").await?;
        // The browser reports tasks from 50 ms on. The figure is printed and judged by `cargo xtask bench`; a busy machine is no fault here.
        println!("the longest task while typing and searching took {longest} ms (0: none of 50 ms or more)");
        Ok(())
    })
}

#[test]
fn results_are_reached_by_keys_and_on_a_phone() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        page.open("").await?;
        go_there(page).await?;
        page.assert_no_sideways("the finder on a phone").await?;
        page.element("#dot-0").await?;
        page.of::<()>("#dot-0", "void one.focus()").await?;
        page.press(Key::Right).await?;
        page.has_focus("#dot-1").await?;
        page.press(Key::Enter).await?;
        page.setups(4).await?;
        page.assert_accessible("the finder on a phone").await
    })
}

#[test]
fn a_gear_set_to_be_made_goes_into_the_catalogue() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        go_there(page).await?;
        page.open_fold("Design a gear set").await?;
        page.type_into(field("forward gears").of("Design a gear set"), "5").await?;
        let sum = field("tooth sum").of("Design a gear set");
        page.type_into(&sum, "61").await?;
        page.until("document.querySelectorAll('.designs .result').length === 5").await?;
        page.click(".designs .result button").await?;
        page.until("document.querySelector('.notices').innerText.includes('5 gears, 61 teeth')").await?;
        page.type_into(&sum, "many").await?;
        page.until_of(&sum, "document.getElementById(one.getAttribute('aria-describedby'))?.innerText.includes('“many”') === true").await?;
        page.go_to("shelf").await?;
        page.until("document.querySelector('#shelf-list [data-own=true]')?.dataset.name.includes('61 teeth') === true").await
    })
}
