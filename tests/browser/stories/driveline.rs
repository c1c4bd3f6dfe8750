//! Driveline: a shaft too long for the speed it is asked, and what would do; joints at unequal angles, and what mends them; as callers
//! ask it.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Page, Screen, button, field, link, visit};
use serde_json::json;

/// The tube and the tyre of setup A, and the speed it is judged at.
async fn type_the_shaft(page: &Page) -> Result<()> {
    page.type_into(field("judge the shaft at"), "110 mph").await?;
    page.type_into(field("between joint centres, setup A"), "60").await?;
    page.type_into(field("outside of the tube, setup A"), "3").await?;
    page.type_into(field("wall of the tube, setup A"), "0.083").await
}

/// 3 by 0.083 in and 60 in long whip at 5,448 rpm by hand; an axle of 43/11 turns it at 110 mph beyond that.
#[test]
fn a_long_shaft_is_told_and_what_would_do() -> Result<()> {
    visit(async |page| {
        for screen in [Screen::DESK, Screen::PHONE] {
            page.set_screen(screen).await?;
            page.open("#compare/driveline").await?;
            type_the_shaft(page).await?;
            page.shows("A", "driveline.critical_rpm", "5,448").await?;
            page.question_says("at which it whips").await?;
            page.question_says("balanced by a shop that does shafts").await?;
            page.assert_no_sideways("the driveline").await?;
            // What is no tube is said beside its field, and the speed of the shaft stands.
            page.type_into(field("wall of the tube, setup A"), "2").await?;
            page.until_of(field("wall of the tube, setup A"), "one.getAttribute('aria-invalid') === 'true'").await?;
            page.question_says("at 110 mph").await?;
            page.type_into(field("wall of the tube, setup A"), "0.083").await?;
            page.shows("A", "driveline.critical_rpm", "5,448").await?;
        }
        Ok(())
    })
}

/// Gearbox 3° down, shaft 5° down and the nose 1° up make joints of 2 and 4°: √(16 − 4) = 3.5° is left, and 2° of wedge mend it, by hand.
#[test]
fn unequal_joints_are_told_and_the_wedge_that_mends_them() -> Result<()> {
    visit(async |page| {
        for screen in [Screen::DESK, Screen::PHONE] {
            page.set_screen(screen).await?;
            page.open("#compare/driveline").await?;
            page.type_into(field("slope of engine and gearbox, setup A"), "3 down").await?;
            page.type_into(field("slope of the shaft, setup A"), "5 down").await?;
            page.type_into(field("slope of the axle’s nose, setup A"), "1 up").await?;
            page.shows("A", "driveline.joint_1_d", "2.0").await?;
            page.shows("A", "driveline.joint_2_d", "4.0").await?;
            page.shows("A", "driveline.left_over_d", "3.5").await?;
            page.question_says("wedge the axle 2.0° nose up and 0.0° is left").await?;
            page.assert_no_sideways("the joints").await?;
            // What is no slope is said beside its field, and the shaft's speed stands.
            page.type_into(field("slope of the shaft, setup A"), "3 down up").await?;
            page.until_of(field("slope of the shaft, setup A"), "one.getAttribute('aria-invalid') === 'true'").await?;
            page.question_says("says both ways at once").await?;
            // As the axle is wedged: the ends are alike.
            page.type_into(field("slope of the shaft, setup A"), "5 down").await?;
            page.type_into(field("slope of the axle’s nose, setup A"), "3 up").await?;
            page.shows("A", "driveline.left_over_d", "0.0").await?;
        }
        page.choose_tab("Joints").await?;
        page.choose_tab("Over a turn").await?;
        Ok(())
    })
}

/// What moves is typed among all figures: the nose 2° up under drive, the axle 4 in down. 60 × cos 5° = 59.772 in along the car, so 60.480 in
/// hanging: 0.48 in out, by hand.
#[test]
fn the_nose_rises_and_the_axle_hangs() -> Result<()> {
    visit(async |page| {
        page.open("#compare/driveline").await?;
        type_the_shaft(page).await?;
        page.type_into(field("slope of engine and gearbox, setup A"), "3 down").await?;
        page.type_into(field("slope of the shaft, setup A"), "5 down").await?;
        page.type_into(field("slope of the axle’s nose, setup A"), "1 up").await?;
        page.open_fold("All figures").await?;
        page.type_into(field("nose rises under drive, setup A"), "2").await?;
        page.shows("A", "driveline.left_over_d", "0.0").await?;
        page.question_says("under drive: good").await?;
        page.type_into(field("axle drops; nose then, setup A"), "4 in; nose 1 up").await?;
        page.shows("A", "driveline.slides_in", "0.48").await?;
        page.shows("A", "driveline.hanging_joint_2_d", "7.8").await
    })
}

/// The phone lies on the tube, 4.8° down to the rear and 0.3° off its zero: 5.1°, and −4.5° turned end for end.
#[test]
fn a_slope_is_taken_with_the_phone() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        page.open("#compare/driveline").await?;
        let tilted = async |beta: f64| {
            page.cdp("DeviceOrientation.setDeviceOrientationOverride", json!({"alpha": 0, "beta": beta, "gamma": 0})).await
        };
        let take = || button("take the slope of the shaft, setup A");
        // No device tells its tilt yet.
        page.click(take()).await?;
        page.question_says("This device tells no tilt").await?;
        page.cdp("Browser.grantPermissions", json!({"permissions": ["sensors"]})).await?;
        tilted(5.1).await?;
        // Chromium overrides sensors of pages that come after.
        page.reload().await?;
        page.click(take()).await?;
        page.until_of(field("slope of the shaft, setup A"), "one.value === '5.1 down'").await?;
        page.question_says("turn it end for end on the same spot").await?;
        tilted(-4.5).await?;
        page.click(button("turned, take again")).await?;
        page.until_of(field("slope of the shaft, setup A"), "one.value === '4.8 down'").await?;
        page.question_says("zero of this device +0.3° taken off").await?;
        // The zero holds for the next, at a later visit too: the nose falls to the rear where it points up.
        page.reload().await?;
        tilted(3.3).await?;
        page.click(button("take the slope of the axle’s nose, setup A")).await?;
        page.until_of(field("slope of the axle’s nose, setup A"), "one.value === '3.0 up'").await?;
        page.assert_no_sideways("a slope that was taken").await?;
        // A desk has no tilt to give.
        page.set_screen(Screen::DESK).await?;
        page.reload().await?;
        page.ready().await?;
        ensure!(!page.is_there(take()).await?, "a button for a tilt on a desk");
        Ok(())
    })
}

/// "I put the long box in. Is one shaft of 60 inches, 3 inch by 0.083 steel, all right to 110?" Box of 3, axle 4.10, a tyre that rolls 2.105 m:
/// 110 mph ÷ 2.105 m × 4.10 = 5,747 rpm, and the tube whips at 5,448. Seven actions of eight.
#[test]
fn call_6_one_shaft_to_110() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::DESK).await?;
        page.open("").await?;
        page.type_into(field("Ring and pinion").of("Setup A"), "4.10").await?;
        page.type_into(field("Tire").of("Setup A"), "rolls 2.105 m").await?;
        page.click(link("Driveline").of("Questions")).await?;
        type_the_shaft(page).await?;
        page.shows("A", "driveline.critical_rpm", "5,448").await?;
        page.shows("A", "driveline.shaft_rpm", "5,747").await?;
        for said in ["past the 5,448 rpm at which it whips", "two pieces", "balanced by a shop that does shafts"] {
            page.says(".answer", said).await?;
        }
        page.js::<()>("void scrollTo({ top: 0, behavior: 'instant' })").await?;
        let (answer, high): (f64, f64) = page.js("[document.querySelector('.answer').getBoundingClientRect().bottom, innerHeight]").await?;
        ensure!(answer <= high, "the answer ends at {answer:.0} px of {high:.0}");
        Ok(())
    })
}
