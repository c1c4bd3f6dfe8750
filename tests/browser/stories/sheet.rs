//! The sheet: a demo job is picked apart, typed anew, undone, kept and found again.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, visit};

/// The figure of a key in one column, waited for.
async fn figure_in(page: &Page, column: usize, key: &str, text: &str) -> Result<()> {
    let cell = format!(
        "[...document.querySelectorAll('tbody tr')].map(row => row.children[{}]?.querySelector('[data-figure=\"{key}\"]')).find(Boolean)",
        column + 1
    );
    page.until(&format!("({cell})?.innerText.replace(/\\s+/g, ' ').trim().startsWith({text:?})")).await
}

/// Puts a text into a field at once, as pasting does; tabs and signs beyond the keyboard too.
async fn paste(page: &Page, css: &str, text: &str) -> Result<()> {
    page.js::<()>(&format!(
        "void (() => {{ const field = document.querySelector({css:?}); field.value = {text:?}; field.dispatchEvent(new Event('input', {{ bubbles: true }})); }})()"
    ))
    .await
}

#[test]
fn counted_teeth_axle_tyre_and_speeds_are_followed_at_once() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        ensure!(page.count(".head").await? == 3, "the demo job has three setups");
        // The demo's own figures, as worked by hand: 30/25 × 37/18 = 37/15.
        figure_in(page, 0, "gear_1.ratio", "2.467").await?;
        // A new setup, typed from counted teeth.
        page.click("#add-setup").await?;
        page.until("document.querySelectorAll('.head').length === 4").await?;
        page.type_into("#s4-constant", "25/30").await?;
        for (field, text) in [("gear-1", "37/18"), ("gear-2", "32/23"), ("gear-3", "28/27"), ("gear-4", "direct")] {
            page.type_into(&format!("#s4-{field}"), text).await?;
        }
        // The heads stand in full again at the top.
        page.js::<()>("void scrollTo({ top: 0, behavior: 'instant' })").await?;
        page.until("!document.querySelector('.heads--compact')").await?;
        for (field, text) in [("final-drive", "43/11"), ("tyre", "185/70R14")] {
            page.type_into(&format!("#s4-{field}"), text).await?;
        }
        figure_in(page, 3, "gear_1.ratio", "2.467").await?;
        figure_in(page, 3, "gear_1.at_shift_mph", "47.2").await?;
        figure_in(page, 3, "cruise_rpm", "3,907").await?;
        // Shift and cruise change every column. 47.2 × 6,000 ÷ 6,500 = 43.6.
        page.type_into("#shift", "6,000").await?;
        figure_in(page, 0, "gear_1.at_shift_mph", "43.6").await?;
        page.type_into("#cruise", "60").await?;
        // 60 mph ÷ 1.8788 m × 3.909 = 3,348 rpm (26.8224 ÷ 1.8788 × 60 × 43/11).
        figure_in(page, 0, "cruise_rpm", "3,348").await?;
        // Units: 43.6 mph are 70.1 km/h (NIST SP 811: 1 mile = 1.609 344 km).
        page.click("#units button:nth-child(2)").await?;
        figure_in(page, 0, "gear_1.at_shift_kmh", "70.1").await?;
        ensure!(page.value("#cruise").await? == "60", "what was typed stays as typed");
        Ok(())
    })
}

#[test]
fn a_gear_set_is_picked_and_everything_is_undone_and_kept() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.click("#s2-gearbox").await?;
        page.type_into("#picker-search", "redshank five close").await?;
        page.until("document.querySelectorAll('.picker__one').length === 1").await?;
        page.click(".picker__one").await?;
        // Redshank five, close: 24/31, 37/18: 31 × 37 ÷ (24 × 18) = 2.655.
        figure_in(page, 1, "gear_1.ratio", "2.655").await?;
        page.click("#undo").await?;
        figure_in(page, 1, "gear_1.ratio", "2.132").await?;
        page.click("#redo").await?;
        figure_in(page, 1, "gear_1.ratio", "2.655").await?;
        // Rename, copy, move, remove.
        page.type_into("#s1-name", "As found").await?;
        page.click(".head:nth-of-type(2) .head__more, #heads > .head:nth-child(2) .head__more").await?;
        page.click(".head__menu button:nth-child(1)").await?;
        page.until("document.querySelectorAll('.head').length === 4").await?;
        page.until("document.querySelector('#heads > .head:nth-child(3) .head__name').value === 'As found, copy'").await?;
        page.click("#heads > .head:nth-child(3) .head__more").await?;
        page.click(".head__menu button:nth-child(3)").await?;
        page.until("document.querySelector('#heads > .head:nth-child(4) .head__name').value === 'As found, copy'").await?;
        page.click("#heads > .head:nth-child(4) .head__more").await?;
        page.click(".head__menu button:nth-child(4)").await?;
        page.until("document.querySelectorAll('.head').length === 3").await?;
        page.until("document.querySelector('.bar__kept').textContent.startsWith('kept')").await?;
        page.reload().await?;
        ensure!(page.value("#s1-name").await? == "As found", "the name was kept");
        figure_in(page, 1, "gear_1.ratio", "2.655").await
    })
}

#[test]
fn a_field_that_cannot_be_read_says_why_and_leaves_the_rest_standing() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        for text in ["abc", "-", "0", "1e9", "1/0", "37/18\t32/23", "🙂"] {
            paste(page, "#s1-gear-1", text).await?;
            page.until("document.querySelector('#s1-gear-1').getAttribute('aria-invalid') === 'true'").await?;
            let said = page.text("#s1-gear-1-problem").await?;
            ensure!(said.ends_with('.') && said.len() > 20, "“{text}” is answered with “{said}”");
            figure_in(page, 0, "gear_2.ratio", "1.670").await?;
            figure_in(page, 1, "gear_1.ratio", "2.132").await?;
        }
        page.type_into("#s1-gear-1", "37/18").await?;
        figure_in(page, 0, "gear_1.ratio", "2.467").await
    })
}

#[test]
fn a_figure_tells_how_it_came_about_and_a_picture_what_it_shows() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.click("[data-figure='gear_1.ratio']").await?;
        page.until("document.querySelector('.working')?.innerText.includes('30/25 × 37/18 = 37/15 = 2.4667')").await?;
        page.press(Key::Escape).await?;
        page.until("!document.querySelector('.working')").await?;
        // The crosshair by keys, and the text alternative.
        page.js::<()>("void document.querySelector('#picture-shift-chart .picture__point').focus()").await?;
        page.press(Key::End).await?;
        page.until("document.querySelector('#shift-chart-said').innerText.includes('mph')").await?;
        ensure!(page.told("shift-chart").await?.len() >= 3, "the picture is told in words, a line a setup");
        Ok(())
    })
}
