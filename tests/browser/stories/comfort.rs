//! The page for every hand and ear: keys, focus, what is said when a figure changes, words of either side of the sea, the theme.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, button, field, group, visit};

#[test]
fn the_keys_are_told_and_what_is_open_is_left_by_escape() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.press(Key::Tab).await?;
        page.until("document.activeElement.className === 'skip'").await?;
        page.press("?").await?;
        page.has_focus("#keymap h2").await?;
        page.press(Key::Escape).await?;
        page.gone("#keymap").await?;
        page.type_into(field("Title of the job"), "What now?").await?;
        ensure!(page.count("#keymap").await? == 0, "a question mark in a field opens the keys");
        page.hand_over("Customer and notes").await?;
        page.until("document.activeElement.closest('#details') !== null").await?;
        page.press(Key::Escape).await?;
        page.gone("#details").await?;
        page.has_focus(button("Hand over")).await
    })
}

#[test]
fn a_menu_is_left_by_escape_by_a_press_elsewhere_and_by_going_on() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let (menu, act) = (button("Copy, move or remove setup B"), button("Move left"));
        page.click(&menu).await?;
        page.element(&act).await?;
        page.press(Key::Escape).await?;
        page.gone(&act).await?;
        page.has_focus(&menu).await?;
        page.press(Key::Enter).await?;
        page.element(&act).await?;
        page.click(field("Name of setup A")).await?;
        page.gone(&act).await?;
        page.click(&menu).await?;
        for _ in 0..9 {
            page.press(Key::Tab).await?;
        }
        page.gone(&act).await
    })
}

#[test]
fn a_changed_answer_is_said_once_the_keys_rest() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let said = "document.getElementById('announcer').textContent";
        ensure!(page.js::<String>(said).await?.is_empty(), "something is said unasked");
        let before: String = page.of(".answer", "one.innerText").await?;
        page.type_into(field("teeth of 1st, setup B"), "36/19").await?;
        page.until(&format!("{said}.length > 0")).await?;
        let now: String = page.of(".answer", "one.innerText").await?;
        let heard: String = page.js(said).await?;
        let plain = |text: &str| text.split_whitespace().collect::<String>();
        ensure!(plain(&heard) == plain(&now) && now != before, "seen: {now}\nheard: {heard}");
        Ok(())
    })
}

#[test]
fn the_keys_go_down_the_teeth_of_one_setup() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.click(field("teeth of 1st, setup B")).await?;
        for (key, next) in [(Key::Tab, "teeth of 2nd, setup B"), (Key::Enter, "teeth of 3rd, setup B")] {
            page.press(key).await?;
            page.has_focus(field(next)).await?;
            // What is typed replaces what stands there.
            page.until_of(field(next), "one.selectionStart === 0 && one.selectionEnd === one.value.length").await?;
        }
        page.press(Key::Shift + Key::Tab).await?;
        page.has_focus(field("teeth of 2nd, setup B")).await
    })
}

#[test]
fn undo_and_redo_work_from_the_keys_and_say_what_they_changed() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let axle = field("Ring and pinion").of("Setup A");
        page.type_into(&axle, "41/11").await?;
        page.press(Key::Tab).await?;
        page.press(Key::Control + "z").await?;
        page.until_of(&axle, "one.value === '43/11'").await?;
        page.until("[...document.querySelectorAll('.notice')].some((notice) => notice.innerText.includes('A'))").await?;
        page.press(Key::Control + "y").await?;
        page.until_of(&axle, "one.value === '41/11'").await
    })
}

#[test]
fn undo_in_a_search_is_the_searchs() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let axle = field("Ring and pinion").of("Setup A");
        page.type_into(&axle, "41/11").await?;
        page.go_to("shelf").await?;
        page.type_into(field("Search the catalog"), "curl").await?;
        page.press(Key::Control + "z").await?;
        page.until_of(field("Search the catalog"), "one.value !== 'curl'").await?;
        page.go_to("compare/gears").await?;
        ensure!(page.value(&axle).await? == "41/11", "the job was undone instead");
        Ok(())
    })
}

#[test]
fn the_theme_goes_to_the_other_one_and_back_to_the_systems() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.switch_theme().await?;
        page.until("document.documentElement.dataset.theme === 'dark'").await?;
        page.switch_theme().await?;
        page.until("document.documentElement.dataset.theme === undefined").await
    })
}

#[test]
fn british_words_stand_in_pictures_too() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.read_in("UK words").await?;
        page.element(field("Tyre").of("Setup A")).await?;
        page.go_to("compare/inside").await?;
        let told = page.told("Gear train").await?.concat();
        ensure!(told.contains("laygear") && !told.contains("cluster"), "the train in words: {told}");
        page.choose_tab("Countershaft speeds").await?;
        page.element(group("arrow keys move the pointer")).await.map(drop)
    })
}

#[test]
fn a_fold_that_was_opened_is_open_again_and_a_tab_chosen_again() -> Result<()> {
    visit(async |page| {
        page.open("#compare/inside").await?;
        page.open_fold("All figures").await?;
        page.choose_tab("Countershaft speeds").await?;
        page.go_to("compare/road").await?;
        page.go_to("compare/inside").await?;
        page.until_of(button("All figures"), "one.parentElement.open").await?;
        page.until_of(browser_tests::tab("Countershaft speeds"), "one.ariaSelected === 'true'").await?;
        // Tabs go by arrow keys.
        page.of::<()>(browser_tests::tab("Countershaft speeds"), "void one.focus()").await?;
        page.press(Key::Left).await?;
        page.has_focus(browser_tests::tab("Turn it")).await?;
        page.until_of(browser_tests::tab("Turn it"), "one.ariaSelected === 'true'").await
    })
}
