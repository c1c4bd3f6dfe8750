//! The shop's own shelf: an entry written, used, changed, taken out and put back; a file with a bad line; keys in the picker.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, Screen, Theme, visit};

const NAME_OF_B: &str = "document.getElementById('s2-gearbox').innerText";

async fn presses(page: &Page, label: &str) -> Result<()> {
    page.click(&format!("#catalogue [aria-label='{label}']")).await
}

async fn says(page: &Page, css: &str, text: &str) -> Result<()> {
    page.until(&format!("(document.querySelector({css:?})?.innerText ?? '').includes({text:?})")).await
}

async fn is_listed(page: &Page, name: &str) -> Result<()> {
    page.until(&format!("document.querySelector('#shelf-list [data-own=true][data-name={name:?}]') !== null")).await
}

/// Writes an own gear set by its counts.
async fn add(page: &Page) -> Result<()> {
    page.click("#shelf-add").await?;
    page.until("document.activeElement.id === 'shelf-name'").await?;
    page.type_into("#shelf-name", "Barn find").await?;
    page.type_into("#shelf-constant", "25/30").await?;
    page.type_into("#shelf-gear-1", "37/5").await?;
    // What is wrong stands beside its field, and the text stays as typed.
    says(page, "#shelf-gear-1-problem", "Gears of 8 to 150 teeth only; “5” was typed.").await?;
    page.click("#shelf-keep").await?;
    says(page, "#catalogue .shelf__form", "mend what is marked").await?;
    ensure!(page.value("#shelf-gear-1").await? == "37/5", "what was typed is lost");
    page.type_into("#shelf-gear-1", "37/18").await?;
    page.type_into("#shelf-gear-2", "direct").await?;
    page.click("#shelf-keep").await?;
    is_listed(page, "Barn find").await
}

#[test]
fn an_own_set_is_written_used_changed_taken_out_and_put_back() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        add(page).await?;
        // 30/25 × 37/18 = 2.47, by hand.
        says(page, "#shelf-list [data-name='Barn find'] .shelf__figures", "2.47").await?;
        presses(page, "Use Barn find in setup B").await?;
        page.until(&format!("{NAME_OF_B} === 'Barn find'")).await?;
        page.until("document.querySelector(\"[aria-label='Use Barn find in setup B']\").getAttribute('aria-pressed') === 'true'").await?;

        presses(page, "Edit Barn find").await?;
        page.until("document.activeElement.id === 'shelf-name' && document.activeElement.closest('[data-name]') !== null").await?;
        page.type_into("#shelf-name", "Barn find, cleaned").await?;
        page.click("#shelf-keep").await?;
        is_listed(page, "Barn find, cleaned").await?;
        page.until("document.activeElement.getAttribute('aria-label') === 'Edit Barn find, cleaned'").await?;

        presses(page, "Delete Barn find, cleaned").await?;
        page.until("document.activeElement.id === 'shelf-back' && document.querySelector('#shelf-list [data-own=true]') === null").await?;
        // What is entered meanwhile outlives the putting back.
        presses(page, "Copy Curlew three to your own").await?;
        page.click("#shelf-keep").await?;
        is_listed(page, "Curlew three (copy)").await?;
        page.click("#shelf-back").await?;
        is_listed(page, "Barn find, cleaned").await?;
        is_listed(page, "Curlew three (copy)").await?;
        page.reload().await?;
        is_listed(page, "Barn find, cleaned").await?;
        is_listed(page, "Curlew three (copy)").await?;
        ensure!(page.js::<String>(NAME_OF_B).await? == "Barn find", "setup B does not keep what it was given");
        Ok(())
    })
}

#[test]
fn a_file_says_what_it_would_do_before_anything_is_written() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>("void (() => { const make = URL.createObjectURL; URL.createObjectURL = (blob) => { window.saved = blob; return make(blob); }; })()").await?;
        page.click(".shelf__paste summary").await?;
        page.js::<()>("void (document.getElementById('shelf-paste').value = 'name,layout,constant,gear_1,gear_2\\nGood one,input-reduced,25/30,37/18,direct\\nBad one,input-reduced,25/30,37/5,direct\\n')").await?;
        page.click("#shelf-look").await?;
        says(page, "#shelf-report", "1 new gear set, 0 as they are here, 0 different, 1 line refused").await?;
        says(page, "#shelf-report", "line 3").await?;
        says(page, "#shelf-report", "Gears of 8 to 150 teeth only; “5” was typed.").await?;
        ensure!(page.count("#shelf-list [data-own=true]").await? == 0, "something is written before it was told to");
        for theme in [Theme::Light, Theme::Dark] {
            page.set_theme(theme).await?;
            page.assert_accessible(&format!("the report of a file, {}", theme.word())).await?;
        }
        page.click("#shelf-take").await?;
        is_listed(page, "Good one").await?;
        page.click("#shelf-save-own").await?;
        page.js::<()>("void window.saved.text().then((text) => window.csv = text)").await?;
        page.until("(window.csv ?? '').includes('Good one') && !window.csv.includes('Bad one') && !window.csv.includes('Curlew')").await?;
        page.reload().await?;
        is_listed(page, "Good one").await
    })
}

#[test]
fn the_section_is_for_every_eye_and_no_wider_than_a_phone() -> Result<()> {
    visit(async |page| {
        let narrow = Screen { width: 320, ..Screen::PHONE };
        for (screen, theme) in [(Screen::DESK, Theme::Light), (narrow, Theme::Dark)] {
            page.set_screen(screen).await?;
            page.set_theme(theme).await?;
            page.open("").await?;
            page.click("#shelf-add").await?;
            page.type_into("#shelf-constant", "2").await?;
            // Nothing that is pressed lies half under the heads, which stay in view.
            page.js::<()>("document.querySelector('.shelf__paste').scrollIntoView({ block: 'center' })").await?;
            page.assert_accessible(&format!("the catalogue, {} px wide, {}", screen.width, theme.word())).await?;
            let width: u32 = page.js("document.documentElement.scrollWidth").await?;
            ensure!(width <= screen.width, "{width} px are needed where {} are there", screen.width);
            let small: Vec<String> = page
                .js("[...document.querySelectorAll('#catalogue button, #catalogue select, #catalogue .field__input')].filter((one) => one.offsetParent && one.getBoundingClientRect().height < 43.5).map((one) => one.outerHTML.slice(0, 120))")
                .await?;
            ensure!(small.is_empty(), "too small for a finger: {small:?}");
            page.click("#shelf-leave").await?;
        }
        Ok(())
    })
}

#[test]
fn ten_thousand_own_entries_do_not_fill_the_page() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>(
            "void localStorage.setItem('layshaft.catalogue', JSON.stringify({ schema: 1, axles: Array.from({ length: 10000 }, (_, at) => ({ id: `own-${at}`, drive: `${20 + at % 100}/11`, note: `box ${at}` })) }))",
        )
        .await?;
        page.reload().await?;
        page.click("#shelf-kinds button:nth-child(2)").await?;
        says(page, "#shelf-count", "10,000 of them your own").await?;
        ensure!(page.count("#shelf-list > li").await? <= 60, "every row is on the page");
        page.type_into("#shelf-search", "box 9999").await?;
        page.until("document.querySelectorAll('#shelf-list > li').length === 1").await
    })
}

#[test]
fn the_picker_goes_by_keys_and_gives_the_focus_back() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.click("#s2-gearbox").await?;
        page.until("document.activeElement.id === 'picker-search'").await?;
        says(page, "#picker-list", "invented demo").await?;
        page.press(Key::Escape).await?;
        page.until("document.getElementById('picker') === null && document.activeElement.id === 's2-gearbox'").await?;
        page.press(Key::Enter).await?;
        page.until("document.activeElement.id === 'picker-search'").await?;
        page.press("redshank").await?;
        page.until("[...document.querySelectorAll('.picker__name')].every((name) => name.innerText.startsWith('Redshank'))").await?;
        page.press(Key::Down).await?;
        page.press(Key::Down).await?;
        page.press(Key::Up).await?;
        page.press(Key::Up).await?;
        page.until("document.activeElement.id === 'picker-search'").await?;
        page.press(Key::Down).await?;
        let first: String = page.js("document.querySelector('.picker__name').innerText").await?;
        page.press(Key::Enter).await?;
        page.until(&format!(
            "document.getElementById('picker') === null && {NAME_OF_B} === {first:?} && document.activeElement.id === 's2-gearbox'"
        ))
        .await
    })
}

#[test]
fn the_fields_of_a_head_suggest_what_is_in_stock_first() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        for field in ["final-drive", "tyre", "speedo-gears"] {
            let options = format!("[...document.getElementById('s1-{field}').list.options]");
            page.until(&format!("{options}.length > 5 && {options}[0].label.endsWith(', in stock')")).await?;
        }
        Ok(())
    })
}
