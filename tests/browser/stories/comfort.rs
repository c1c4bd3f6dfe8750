//! The page for every eye, hand and ear: keys, focus, narrow and zoomed windows, and the audit with everything open that can be opened.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, Screen, Theme, visit};

const PANELS: [&str; 3] = ["book", "details", "send"];
/// The narrowest window that must do without sideways scrolling: WCAG 2.2, success criterion 1.4.10.
const NARROW: Screen = Screen { width: 320, height: 640, ratio: 2.0, mobile: true };
/// A desk's window at 200 percent.
const ZOOMED: Screen = Screen { width: 720, height: 450, ratio: 2.0, mobile: false };

async fn open_panel(page: &Page, name: &str) -> Result<()> {
    page.js::<()>(&format!("void document.getElementById('open-{name}').click()")).await?;
    page.until(&format!("document.getElementById('{name}') !== null")).await
}

#[test]
fn the_keys_are_told_and_what_is_open_is_left_by_escape() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.press(Key::Tab).await?;
        page.until("document.activeElement.className === 'skip'").await?;
        page.press("?").await?;
        page.until("document.getElementById('keymap') !== null && document.activeElement.id === 'keymap-title'").await?;
        page.press(Key::Escape).await?;
        page.until("document.getElementById('keymap') === null").await?;
        page.type_into("#title", "What now?").await?;
        ensure!(page.count("#keymap").await? == 0, "a question mark in a field opens the keys");
        page.click("#open-book").await?;
        page.until("document.activeElement.id === 'book-search'").await?;
        page.press(Key::Escape).await?;
        page.until("document.getElementById('book') === null && document.activeElement.id === 'open-book'").await
    })
}

#[test]
fn changed_results_are_said_once_the_keys_rest() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        ensure!(page.js::<String>("document.getElementById('heard').innerText").await?.is_empty(), "something is said unasked");
        page.type_into("#s2-final-drive", "41/11").await?;
        page.until("document.getElementById('heard').textContent.startsWith('Setup B: ')").await?;
        ensure!(!page.js::<bool>("document.getElementById('heard').textContent.includes('Setup A')").await?, "an unchanged setup is said");
        Ok(())
    })
}

#[test]
fn the_audit_finds_nothing_in_any_panel_in_either_theme() -> Result<()> {
    visit(async |page| {
        for (screen, theme) in [(Screen::DESK, Theme::Light), (Screen::PHONE, Theme::Dark)] {
            page.set_screen(screen).await?;
            page.set_theme(theme).await?;
            page.open("").await?;
            for panel in PANELS {
                open_panel(page, panel).await?;
                page.assert_accessible(&format!("{panel}, {} px wide, {}", screen.width, theme.word())).await?;
            }
            page.js::<()>("void (document.activeElement.blur(), dispatchEvent(new KeyboardEvent('keydown', {key: '?'})))").await?;
            page.until("document.getElementById('keymap') !== null").await?;
            page.assert_accessible(&format!("the keys, {} px wide, {}", screen.width, theme.word())).await?;
        }
        Ok(())
    })
}

#[test]
fn nothing_is_scrolled_sideways_when_narrow_or_zoomed() -> Result<()> {
    visit(async |page| {
        for screen in [NARROW, ZOOMED, Screen { width: 900, height: 700, ratio: 1.0, mobile: false }] {
            page.set_screen(screen).await?;
            page.open("").await?;
            for panel in PANELS {
                open_panel(page, panel).await?;
                let width: u32 = page.js("document.documentElement.scrollWidth").await?;
                let widest: String = page
                    .js("[...document.querySelectorAll('body *')].filter((e) => e.getBoundingClientRect().right > innerWidth + 1 && e.closest('.list, .bar__mark, canvas, .unseen') === null)
                        .map((e) => e.tagName + '.' + e.className).slice(0, 5).join(' ')")
                    .await?;
                ensure!(width <= screen.width, "with {panel} open the page is {width} px wide in a window of {}: {widest}", screen.width);
            }
        }
        Ok(())
    })
}

#[test]
fn undo_and_redo_work_from_the_keys() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into("#s1-final-drive", "41/11").await?;
        page.press(Key::Tab).await?;
        page.press(Key::Control + "z").await?;
        page.until("document.getElementById('s1-final-drive').value === '43/11'").await?;
        page.press(Key::Control + "y").await?;
        page.until("document.getElementById('s1-final-drive').value === '41/11'").await
    })
}

#[test]
fn the_list_says_where_one_is_and_the_theme_goes_back_to_the_systems() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        for section in ["speedometer", "gears", "find"] {
            page.js::<()>(&format!("void document.getElementById('{section}').scrollIntoView()")).await?;
            page.until(&format!(
                "[...document.querySelectorAll('.list a[aria-current=\"true\"]')].map((link) => link.getAttribute('href')).join() === '#{section}'"
            ))
            .await?;
        }
        page.click("#theme").await?;
        page.until("document.documentElement.dataset.theme === 'dark'").await?;
        page.click("#theme").await?;
        page.until("document.documentElement.dataset.theme === undefined").await
    })
}

#[test]
fn british_words_stand_in_pictures_too() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>("void [...document.querySelectorAll('#words button')].find((button) => button.innerText === 'UK').click()").await?;
        page.js::<()>("void document.querySelector('#picture-gear-train .picture__point').focus()").await?;
        page.until("document.querySelector('#picture-countershafts [role=\"group\"]').getAttribute('aria-label').includes('change rpm')")
            .await?;
        let told = page.told("gear-train").await?.concat();
        ensure!(told.contains("laygear") && !told.contains("cluster"), "the train in words: {told}");
        Ok(())
    })
}

#[test]
fn undo_in_a_search_is_the_searchs() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into("#s1-final-drive", "41/11").await?;
        page.type_into("#shelf-search", "curl").await?;
        page.press(Key::Control + "z").await?;
        page.until("document.getElementById('shelf-search').value !== 'curl'").await?;
        ensure!(page.value("#s1-final-drive").await? == "41/11", "the job was undone instead");
        Ok(())
    })
}
