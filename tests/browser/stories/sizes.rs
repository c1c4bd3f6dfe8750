//! How wide and how high: no page scrolls sideways, no value is cut off, no question is longer than it may be, whatever the screen.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Page, Screen, button, field, visit};

/// A name of 80 characters, one word of it long.
const LONG: &str = "The very close one with the overdrivelikeextralongtopgear that he asked for, 1st";

async fn with_setups(page: &Page, many: usize) -> Result<()> {
    page.go_to("compare/gears").await?;
    while page.count("[role=group][aria-label^='Setup ']").await? > many {
        let before = page.count("[role=group][aria-label^='Setup ']").await?;
        page.in_menu("Copy, move or remove setup A", "Remove").await?;
        page.setups(before - 1).await?;
    }
    page.add_setups(many).await?;
    page.saved().await?;
    page.close_notices().await
}

/// Begins with the demo job and as many setups, on a desk, and keeps them.
async fn opened_with(page: &Page, many: usize) -> Result<()> {
    page.set_screen(Screen::DESK).await?;
    page.open("").await?;
    with_setups(page, many).await
}

#[test]
fn no_page_scrolls_sideways_on_any_screen_with_any_number_of_setups() -> Result<()> {
    visit(async |page| {
        for many in [3, 6, 1] {
            opened_with(page, many).await?;
            // One setup alone leaves room everywhere but on the narrowest.
            for screen in Page::WIDTHS.into_iter().filter(|screen| many > 1 || screen.width < 400) {
                page.set_screen(screen).await?;
                for at in page.everywhere().await? {
                    page.go_to(&at).await?;
                    let where_ = format!("{at} at {} px with {many} setups", screen.width);
                    page.assert_no_sideways(&where_).await?;
                    page.assert_whole_words(&where_).await?;
                    if page.is_there(button("All figures")).await? && [320, 820, 1440].contains(&screen.width) {
                        page.open_fold("All figures").await?;
                        page.assert_no_sideways(&format!("{where_}, all figures open")).await?;
                        page.click(button("All figures")).await?;
                    }
                }
            }
        }
        Ok(())
    })
}

#[test]
fn names_of_eighty_characters_and_of_any_script_are_read_and_break_nothing() -> Result<()> {
    visit(async |page| {
        opened_with(page, 6).await?;
        for (letter, name) in [("A", LONG), ("B", "תיבה צפופה, ציר ארוך"), ("C", "🏁🏁 快いギア 🏁🏁")] {
            page.paste_into(field(format!("Name of setup {letter}")), name).await?;
        }
        page.paste_into(field("Title of the job"), LONG).await?;
        page.paste_into(field("The car"), LONG).await?;
        page.paste_into(field("Tire").of("Setup A"), "195/65R15 with the old spare of another size").await?;
        page.saved().await?;
        for screen in Page::WIDTHS {
            page.set_screen(screen).await?;
            for at in page.everywhere().await? {
                page.go_to(&at).await?;
                page.assert_no_sideways(&format!("{at} at {} px with long names", screen.width)).await?;
            }
        }
        page.go_to("compare/gears").await?;
        ensure!(page.name_of("A").await? == LONG, "the name is cut");
        ensure!(page.name_of("B").await?.starts_with('ת'), "the name from right to left is lost");
        Ok(())
    })
}

#[test]
fn no_question_is_longer_than_it_may_be_with_its_folds_closed() -> Result<()> {
    visit(async |page| {
        let mut long = Vec::new();
        for (many, desk, phone) in [(3, 1.6, 3.0), (6, 2.0, 4.0)] {
            opened_with(page, many).await?;
            for (screen, most) in [(Screen::DESK, desk), (Screen::PHONE, phone)] {
                page.set_screen(screen).await?;
                for at in page.questions_of("compare").await? {
                    // The finder is a list of what was found; it is as long as that.
                    if at == "compare/find" {
                        continue;
                    }
                    page.go_to(&at).await?;
                    let high = page.screens_high().await?;
                    println!("{at}, {many} setups, {} px: {high:.2} screens of {most}", screen.width);
                    if high > most {
                        long.push(format!("{at}, {many} setups, {} px: {high:.2} screens, {most} at most", screen.width));
                    }
                }
            }
        }
        ensure!(long.is_empty(), "too long:\n  {}", long.join("\n  "));
        Ok(())
    })
}

#[test]
fn a_phone_asks_for_nothing_smaller_than_a_finger_and_zooms_into_no_field() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        page.open("").await?;
        page.close_notices().await?;
        for at in page.everywhere().await? {
            page.go_to(&at).await?;
            for fold in ["All figures", "What this rests on"] {
                if page.is_there(button(fold)).await? {
                    page.open_fold(fold).await?;
                }
            }
            page.assert_for_fingers(&at).await?;
        }
        page.go_to("compare/gears").await?;
        page.ask_figure("A", "gear_1.ratio").await?;
        page.assert_for_fingers("a figure's card").await?;
        page.click(button("Gear set of setup A")).await?;
        page.element("#picker").await?;
        page.assert_for_fingers("the picker").await?;
        for act in ["Link, file, CSV", "Customer and notes", "Print"] {
            page.hand_over(act).await?;
            page.assert_for_fingers(act).await?;
        }
        Ok(())
    })
}

#[test]
fn a_phone_brings_up_numbers_for_numbers() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        page.open("").await?;
        let is_decimal = "one.inputMode === 'decimal'";
        page.until_of(field("teeth of 1st, setup A"), is_decimal).await?;
        page.until_of(field("shift at"), is_decimal).await?;
        // A number pad has a point and no slash.
        page.paste_into(field("teeth of 1st, setup A"), "36.17").await?;
        page.until_of(field("teeth of 1st, setup A"), "one.getAttribute('aria-invalid') !== 'true'").await?;
        // 30/25 × 36/17 = 2.541.
        page.shows("A", "gear_1.ratio", "2.541").await
    })
}

#[test]
fn no_text_of_the_page_is_the_programs_source() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        for at in page.everywhere().await? {
            page.go_to(&at).await?;
            for fold in ["All figures", "What this rests on", "Design a gear set"] {
                if page.is_there(button(fold)).await? {
                    page.open_fold(fold).await?;
                }
            }
            page.assert_no_code(&at).await?;
        }
        page.begin_empty().await?;
        for at in page.everywhere().await? {
            page.go_to(&at).await?;
            page.assert_no_code(&format!("{at}, nothing typed")).await?;
        }
        Ok(())
    })
}
