//! The shop's own shelf: an entry written, used, changed, taken out and put back; a file with a bad line; keys in the picker.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, Screen, Theme, button, field, group, visit};

/// What keeps the entry that is being written.
pub(crate) const SAVE: &str = "Save";
/// The form of a new entry, and of one that is changed.
const FORM: &str = "one of your own";
/// The form of one that is changed.
const CHANGE: &str = "Change one of your own";

async fn is_listed(page: &Page, name: &str) -> Result<()> {
    page.until(&format!("document.querySelector('#shelf-list [data-own=true][data-name={name:?}]') !== null")).await
}

/// Saves the entry that is being written.
async fn save(page: &Page) -> Result<()> {
    page.click(button(SAVE).of(FORM)).await
}

/// Writes an own gear set by its counts.
async fn add(page: &Page) -> Result<()> {
    page.go_to("shelf").await?;
    page.click(button("Add one")).await?;
    let gear = |number: &str| field(number).of(FORM);
    page.has_focus(field("name").of(FORM)).await?;
    page.type_into(field("name").of(FORM), "Barn find").await?;
    page.type_into(field("constant pair").of(FORM), "25/30").await?;
    page.type_into(gear("1st"), "37/5").await?;
    // What is wrong stands beside its field, and the text stays as typed.
    page.until_of(gear("1st"), "document.getElementById(one.getAttribute('aria-describedby'))?.innerText.includes('“5”') === true").await?;
    save(page).await?;
    page.until_of(group(FORM), "one.querySelector('[role=status]').innerText.length > 20").await?;
    ensure!(page.value(gear("1st")).await? == "37/5", "what was typed is lost");
    page.type_into(gear("1st"), "37/18").await?;
    page.type_into(gear("2nd"), "direct").await?;
    save(page).await?;
    is_listed(page, "Barn find").await
}

#[test]
fn an_own_set_is_written_used_changed_taken_out_and_put_back() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        add(page).await?;
        // 30/25 × 37/18 = 2.47, by hand.
        page.says("#shelf-list [data-name='Barn find']", "2.47").await?;
        page.click(button("Use Barn find in setup B")).await?;
        page.until_of(button("Use Barn find in setup B"), "one.ariaPressed === 'true'").await?;
        page.go_to("compare/gears").await?;
        page.has_gear_set("B", "Barn find").await?;
        page.go_to("shelf").await?;

        page.click(button("Edit Barn find")).await?;
        page.has_focus(field("name").of(CHANGE)).await?;
        page.type_into(field("name").of(CHANGE), "Barn find, cleaned").await?;
        page.click(button(SAVE).of(CHANGE)).await?;
        is_listed(page, "Barn find, cleaned").await?;
        page.has_focus(button("Edit Barn find, cleaned")).await?;

        page.click(button("Delete Barn find, cleaned")).await?;
        page.has_focus(button("Put it back")).await?;
        page.until("document.querySelector('#shelf-list [data-own=true]') === null").await?;
        // What is entered meanwhile outlives the putting back.
        let (set, copy) = ("Curlew three", "Curlew three (copy)");
        page.click(button(format!("Copy {set} to your own"))).await?;
        save(page).await?;
        is_listed(page, copy).await?;
        page.click(button("Put it back")).await?;
        is_listed(page, "Barn find, cleaned").await?;
        is_listed(page, copy).await?;
        page.reload().await?;
        is_listed(page, "Barn find, cleaned").await?;
        is_listed(page, copy).await?;
        page.go_to("compare/gears").await?;
        page.has_gear_set("B", "Barn find").await
    })
}

#[test]
fn a_file_says_what_it_would_do_before_anything_is_written() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.catch_saved().await?;
        page.go_to("shelf").await?;
        page.click(button("or paste its lines")).await?;
        let lines =
            "name,layout,constant,gear_1,gear_2\nGood one,input-reduced,25/30,37/18,direct\nBad one,input-reduced,25/30,37/5,direct\n";
        page.paste_into(field("Lines of a CSV file"), lines).await?;
        page.click(button("See what they would do")).await?;
        let report = group("What the file would do");
        for part in ["1 new gear set", "1 line refused", "line 3", "“5”"] {
            page.says(&report, part).await?;
        }
        ensure!(page.count("#shelf-list [data-own=true]").await? == 0, "something is written before it was told to");
        for theme in [Theme::Light, Theme::Dark] {
            page.set_theme(theme).await?;
            page.assert_accessible(&format!("the report of a file, {}", theme.word())).await?;
        }
        page.click(button("Import").of("What the file would do")).await?;
        is_listed(page, "Good one").await?;
        page.click(button("Save your own as CSV")).await?;
        let csv = page.caught().await?;
        ensure!(csv.contains("Good one") && !csv.contains("Bad one") && !csv.contains("Curlew"), "the file of the own ones: {csv}");
        page.reload().await?;
        is_listed(page, "Good one").await
    })
}

#[test]
fn the_shelf_is_for_every_eye_and_no_wider_than_a_phone() -> Result<()> {
    visit(async |page| {
        let narrow = Screen { width: 320, ..Screen::PHONE };
        for (screen, theme) in [(Screen::DESK, Theme::Light), (narrow, Theme::Dark)] {
            page.set_screen(screen).await?;
            page.set_theme(theme).await?;
            page.open("#shelf").await?;
            page.click(button("Add one")).await?;
            page.type_into(field("constant pair").of(FORM), "2").await?;
            let where_ = format!("the shelf, {} px wide, {}", screen.width, theme.word());
            page.assert_accessible(&where_).await?;
            page.assert_no_sideways(&where_).await?;
            if screen.mobile {
                page.assert_for_fingers(&where_).await?;
            }
            page.click(button("Cancel").of(FORM)).await?;
            page.gone(group(FORM)).await?;
        }
        Ok(())
    })
}

#[test]
fn ten_thousand_own_entries_do_not_fill_the_page() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<serde_json::Value>(
            "kept.put('layshaft.catalogue', JSON.stringify({ schema: 1, axles: Array.from({ length: 10000 }, (_, at) => ({ id: `own-${at}`, drive: `${20 + at % 100}/11`, note: `box ${at}` })) }))",
        )
        .await?;
        page.reload().await?;
        page.go_to("shelf").await?;
        page.click(button("ring and pinion pairs").of("Kind of part")).await?;
        page.says("#shelf-count", "10,000").await?;
        ensure!(page.count("#shelf-list > li").await? <= 60, "every row is on the page");
        page.type_into(field("Search the catalog"), "box 9999").await?;
        page.until("document.querySelectorAll('#shelf-list > li').length === 1").await
    })
}

#[test]
fn the_picker_goes_by_keys_and_gives_the_focus_back() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let (opener, search) = (button("Gear set of setup B"), field("Gear set for setup B"));
        page.click(&opener).await?;
        page.has_focus(&search).await?;
        page.says("#picker-list", "invented demo").await?;
        page.press(Key::Escape).await?;
        page.gone("#picker").await?;
        page.has_focus(&opener).await?;
        page.press(Key::Enter).await?;
        page.has_focus(&search).await?;
        page.press("five").await?;
        page.until("(names => names.length > 1 && names.every((name) => name.closest('li').innerText.toLowerCase().includes('five')))([...document.querySelectorAll('.picker__name')])").await?;
        page.press(Key::Down).await?;
        page.press(Key::Down).await?;
        page.press(Key::Up).await?;
        page.press(Key::Up).await?;
        page.has_focus(&search).await?;
        page.press(Key::Down).await?;
        let first: String = page.js("document.querySelector('.picker__name').innerText.trim()").await?;
        page.press(Key::Enter).await?;
        page.gone("#picker").await?;
        page.has_gear_set("B", &first).await?;
        page.has_focus(&opener).await?;
        // Enter takes the one hit; what was searched before is forgotten.
        page.press(Key::Enter).await?;
        page.until_of(&search, "one.value === ''").await?;
        page.press("27/28 29/26").await?;
        page.until("document.querySelectorAll('.picker__name').length === 1").await?;
        let only: String = page.js("document.querySelector('.picker__name').innerText.trim()").await?;
        page.press(Key::Enter).await?;
        page.has_gear_set("B", &only).await
    })
}

#[test]
fn the_fields_of_a_head_suggest_what_is_in_stock_first() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let suggests = "one.list.options.length > 5 && one.list.options[0].label.endsWith(', in stock')";
        page.until_of(field("Ring and pinion").of("Setup A"), suggests).await?;
        page.until_of(field("Tire").of("Setup A"), suggests).await?;
        page.go_to("compare/speedometer").await?;
        if !page.is_there(field("speedometer drive and driven teeth, setup A")).await? {
            page.open_fold("All figures").await?;
        }
        page.until_of(field("speedometer drive and driven teeth, setup A"), suggests).await
    })
}
