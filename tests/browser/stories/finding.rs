//! What the customer wishes is typed, the catalogue is gone through without a pause in the page, and a result becomes a setup.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, Screen, visit};

/// Everything was gone through, and the list stands.
const DONE: &str = "document.querySelector('#find-progress')?.dataset.done === 'true'";

/// Scrolls to the section, as a person does before it is read.
async fn go_there(page: &Page) -> Result<()> {
    page.element("#find-progress").await?;
    page.until(DONE).await
}

/// Removes every wish that the demo job brings.
async fn clear_wishes(page: &Page) -> Result<()> {
    for left in (0..page.count(".wish").await?).rev() {
        page.click(".wish:last-child button[aria-label^='Remove wish']").await?;
        page.until(&format!("document.querySelectorAll('.wish').length === {left}")).await?;
    }
    Ok(())
}

async fn add_wish(page: &Page, words: &str) -> Result<usize> {
    let before = page.count(".wish").await?;
    page.js::<()>(&format!(
        "void (select => {{ select.value = [...select.options].find(o => o.text === '{words}').value; select.dispatchEvent(new Event('change', {{bubbles: true}})); }})(document.querySelector('#add-wish'))"
    ))
    .await?;
    page.until(&format!("document.querySelectorAll('.wish').length === {}", before + 1)).await?;
    Ok(before + 1)
}

#[test]
fn a_wish_list_puts_the_expected_set_on_the_sheet() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        go_there(page).await?;
        clear_wishes(page).await?;
        // 32 and 20 and 14 % are what the close set of the demo job loses; only it keeps all below 33 with four gears and the tyre of A,
        // 1st × axle 8.33 behind 43/11.
        let first = add_wish(page, "1st × axle").await?;
        page.type_into(&format!("#wish-{first}-least"), "8.32").await?;
        page.type_into(&format!("#wish-{first}-greatest"), "8.34").await?;
        let cruise = add_wish(page, "rpm in top gear").await?;
        page.type_into(&format!("#wish-{cruise}-at"), "70").await?;
        page.type_into(&format!("#wish-{cruise}-least"), "3,900").await?;
        page.type_into(&format!("#wish-{cruise}-greatest"), "3,910").await?;
        let drop = add_wish(page, "largest rpm drop of a shift").await?;
        page.type_into(&format!("#wish-{drop}-greatest"), "33").await?;
        add_wish(page, "the tire of setup A stays").await?;
        page.until(&format!(
            "{DONE} && document.querySelector('[data-result=\"0\"] .result__name')?.innerText === '1. Curlew four, close'"
        ))
        .await?;
        ensure!(page.text("[data-result='0']").await?.contains("43/11"), "another axle: {}", page.text("[data-result='0']").await?);

        page.click("[data-result='0']").await?;
        page.until("document.querySelectorAll('.head').length === 4").await?;
        let name: String = page.js("document.querySelectorAll('.head')[3].querySelector('.head__name').value").await?;
        ensure!(name == "Curlew four, close, 43/11", "the fourth setup is {name}");
        let says = page.js::<String>("document.body.innerText").await?;
        ensure!(says.contains("Curlew four, close with 43/11 and 185/70R14 is setup D now."), "nothing says where it stands");
        page.assert_accessible("a result on the sheet").await
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
        add_wish(page, "1st × axle").await?;
        page.type_into("#wish-1-least", "9").await?;
        page.js::<()>("void (window.longest = 0)").await?;
        page.type_into("#wish-1-least", "9.5").await?;
        page.until(DONE).await?;
        let begun: usize = page.js("performance.getEntriesByName('find-begin').length").await?;
        ensure!(begun >= 2, "the search did not begin anew");
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
        let width: u32 = page.js("document.documentElement.scrollWidth").await?;
        let wide: String = page.js("[...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > 391).map(e => e.tagName + '.' + e.className + ' ' + e.id).slice(0, 9).join('; ')").await?;
        ensure!(width <= Screen::PHONE.width, "the page is {width} px wide on a phone: {wide}");
        page.element("#dot-0").await?;
        page.js::<()>("document.querySelector('#dot-0').focus()").await?;
        page.press(Key::Right).await?;
        page.until("document.activeElement.id === 'dot-1'").await?;
        page.press(Key::Enter).await?;
        page.until("document.querySelectorAll('.head').length === 4").await?;
        page.assert_accessible("the finder on a phone").await
    })
}

#[test]
fn a_gear_set_to_be_made_goes_into_the_catalogue() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        go_there(page).await?;
        page.click("#design summary").await?;
        page.type_into("#design-gears", "5").await?;
        page.type_into("#design-sum", "61").await?;
        page.until("document.querySelectorAll('.designs .result').length === 5").await?;
        page.click(".designs .result button").await?;
        page.until("document.body.innerText.includes('“To be made: 5 gears, 61 teeth” is in the catalog now')").await?;
        page.type_into("#design-sum", "many").await?;
        page.until("document.querySelector('#design-sum-problem')?.innerText.includes('“many” is not a number')").await
    })
}
