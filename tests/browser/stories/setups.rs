//! The setups side by side: typed, picked, copied, moved, removed, undone, kept and found again.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{button, field, visit};

#[test]
fn counted_teeth_axle_tyre_and_speeds_are_followed_at_once() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.setups(3).await?;
        // The demo's own figures, as worked by hand: 30/25 × 37/18 = 37/15.
        page.shows("A", "gear_1.ratio", "2.467").await?;
        // A box from counted teeth, in a job of its own.
        page.begin_empty().await?;
        page.type_into(field("constant pair, setup A"), "25/30").await?;
        for (gear, text) in [("1st", "37/18"), ("2nd", "32/23"), ("3rd", "28/27"), ("4th", "direct")] {
            page.type_into(field(format!("teeth of {gear}, setup A")), text).await?;
        }
        page.type_into(field("Ring and pinion").of("Setup A"), "43/11").await?;
        page.type_into(field("Tire").of("Setup A"), "185/70R14").await?;
        page.type_into(field("shift at"), "6,500").await?;
        page.shows("A", "gear_1.ratio", "2.467").await?;
        page.go_to("compare/road").await?;
        page.shows("A", "gear_1.at_shift_mph", "47.2").await?;
        page.shows("A", "cruise_rpm", "3,907").await?;
        // Shift and cruise change every figure. 47.2 × 6,000 ÷ 6,500 = 43.6.
        page.type_into(field("shift at"), "6,000").await?;
        page.shows("A", "gear_1.at_shift_mph", "43.6").await?;
        page.type_into(field("cruise at"), "60").await?;
        // 60 mph ÷ 1.8788 m × 3.909 = 3,348 rpm (26.8224 ÷ 1.8788 × 60 × 43/11).
        page.shows("A", "cruise_rpm", "3,348").await?;
        // Units: 43.6 mph are 70.1 km/h (NIST SP 811: 1 mile = 1.609 344 km).
        page.read_in("km/h · mm").await?;
        page.shows("A", "gear_1.at_shift_kmh", "70.1").await?;
        ensure!(page.value(field("cruise at")).await? == "60", "what was typed stays as typed");
        Ok(())
    })
}

#[test]
fn a_gear_set_is_picked_and_everything_is_undone_and_kept() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.click(button("Gear set of setup B")).await?;
        page.type_into(field("Gear set for setup B"), "37/18 24/31 close").await?;
        page.says("#picker [role=status]", "1 of").await?;
        page.press(browser_tests::Key::Enter).await?;
        // 24/31, 37/18: 31 × 37 ÷ (24 × 18) = 2.655.
        page.shows("B", "gear_1.ratio", "2.655").await?;
        page.click(button("Undo").of("banner")).await?;
        page.shows("B", "gear_1.ratio", "2.132").await?;
        page.click(button("Redo").of("banner")).await?;
        page.shows("B", "gear_1.ratio", "2.655").await?;
        // Rename, copy, move, remove.
        page.type_into(field("Name of setup A"), "As found").await?;
        page.in_menu("Copy, move or remove setup A", "Copy").await?;
        page.setups(4).await?;
        ensure!(page.name_of("B").await?.starts_with("As found"), "the copy stands beside what it is of");
        page.in_menu("Copy, move or remove setup B", "Move right").await?;
        page.until_of(field("Name of setup C"), "one.value.startsWith('As found')").await?;
        page.in_menu("Copy, move or remove setup C", "Remove").await?;
        page.setups(3).await?;
        page.saved().await?;
        page.reload().await?;
        ensure!(page.name_of("A").await? == "As found", "the name was kept");
        page.shows("B", "gear_1.ratio", "2.655").await
    })
}

#[test]
fn one_axle_or_tyre_goes_to_all_setups() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into(field("Ring and pinion").of("Setup B"), "41/11").await?;
        page.type_into(field("Tire").of("Setup B"), "165R13").await?;
        page.in_menu("Copy, move or remove setup B", "Its axle for all setups").await?;
        page.in_menu("Copy, move or remove setup B", "Its tire for all setups").await?;
        for letter in ["A", "C"] {
            let setup = format!("Setup {letter}");
            page.until_of(field("Ring and pinion").of(&setup), "one.value === '41/11'").await?;
            page.until_of(field("Tire").of(&setup), "one.value === '165R13'").await?;
        }
        page.click(button("Undo").of("banner")).await?;
        page.until_of(field("Tire").of("Setup A"), "one.value === '185/70R14'").await
    })
}

#[test]
fn a_field_that_cannot_be_read_says_why_and_leaves_the_rest_standing() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let first = field("teeth of 1st, setup A");
        for text in ["abc", "-", "0", "1e9", "1/0", "37/18\t32//23", "🙂"] {
            page.paste_into(&first, text).await?;
            page.until_of(&first, "one.getAttribute('aria-invalid') === 'true'").await?;
            let said: String = page.of(&first, "document.getElementById(one.getAttribute('aria-describedby')).innerText").await?;
            ensure!(said.ends_with('.') && said.len() > 20, "“{text}” is answered with “{said}”");
            ensure!(page.value(&first).await? == text, "the text does not stay as typed");
            page.shows("A", "gear_2.ratio", "1.670").await?;
            page.shows("B", "gear_1.ratio", "2.132").await?;
        }
        page.type_into(&first, "37/18").await?;
        page.shows("A", "gear_1.ratio", "2.467").await
    })
}

#[test]
fn what_is_empty_is_not_wrong() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.begin_empty().await?;
        for at in page.questions_of("compare").await? {
            page.go_to(&at).await?;
            let wrong: Vec<String> = page.js("[...document.querySelectorAll('main [aria-invalid=true]')].map((one) => one.id)").await?;
            ensure!(wrong.is_empty(), "nothing was typed, and at {at} these are wrong: {wrong:?}");
        }
        Ok(())
    })
}

#[test]
fn an_overdrive_is_a_step_more_and_may_sit_behind_the_drive_gear() -> Result<()> {
    visit(async |page| {
        page.open("#compare/gears").await?;
        page.open_fold("All figures").await?;
        page.click(button("add a stage, setup A")).await?;
        page.choose(field("what the stage is, setup A"), "overdrive unit").await?;
        page.type_into(field("teeth or ratio of the stage, driven over driver, setup A"), "0.78").await?;
        page.type_into(field("gears it is switched in, setup A"), "3 4").await?;
        // 4th is direct; 28/27 × 30/25 × 0.78 = 0.971.
        page.shows("A", "gear_4_overdrive.ratio", "0.780").await?;
        page.shows("A", "gear_3_overdrive.ratio", "0.971").await?;
        page.go_to("compare/speedometer").await?;
        page.shows("A", "speedometer.reads_mph", "57.4").await?;
        page.choose(field("where the speedometer is driven from, setup A"), "the gearbox, before the extra stages").await?;
        // 57.4 with the overdrive out; in, 60 × 0.9567 × 0.78 = 44.8.
        page.shows("A", "speedometer.reads_mph", "57.4").await?;
        page.shows("A", "speedometer.reads_stage_1_mph", "44.8").await
    })
}
