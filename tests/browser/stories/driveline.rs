//! Driveline: a shaft too long for the speed it is asked, and what would do, as a caller asks it.

use browser_tests::anyhow::Result;
use browser_tests::{Page, Screen, field, visit};

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
