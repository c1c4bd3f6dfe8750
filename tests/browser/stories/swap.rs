//! Swap: a five-speed for the coupé, what must be made, as it is asked on the phone with a tape in hand.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Screen, field, link, visit};

/// What is taped of the four-speed in A and of the five-speed in C.
const TAPED: [(&str, &str); 8] = [
    ("input spline: count x outside, setup A", "23 x 1"),
    ("case face to output flange, setup A", "23 5/8"),
    ("case face to mount, setup A", "420 mm"),
    ("case face to lever, setup A", "12"),
    ("input spline: count x outside, setup C", "10 x 1 1/8"),
    ("case face to output flange, setup C", "26 1/8"),
    ("case face to mount, setup C", "441 mm"),
    ("case face to lever, setup C", "12.6"),
];

/// By hand: 26 1/8 − 23 5/8 = 2.5 in longer; the demo's shaft of 44 in becomes 41.5 in; 21 mm = 0.83 in; 12.6 − 12 = 0.6 in.
#[test]
fn a_five_speed_for_the_coupe_and_what_must_be_made() -> Result<()> {
    visit(async |page| {
        for screen in [Screen::DESK, Screen::PHONE] {
            page.set_screen(screen).await?;
            page.open("#compare").await?;
            let mut actions = 1;
            page.click(link("Swap").of("Questions")).await?;
            page.question_says("Cheapest to measure next").await?;
            for (name, text) in TAPED {
                actions += 1;
                page.type_into(field(name), text).await?;
            }
            ensure!(actions <= 15, "{actions} actions");
            page.question_says("driveshaft 2.50 in shorter: 41.50 in joint to joint").await?;
            page.question_says("mount 0.83 in further back; the lever comes up 0.60 in behind the hole").await?;
            page.question_says("a clutch plate with 10 splines of 1.125 in").await?;
            page.shows("C", "swap.joints_in", "41.50").await?;
            page.assert_no_sideways("the swap").await?;
            // What is no spline is said beside its field, and the lengths stand.
            page.type_into(field("input spline: count x outside, setup C"), "ten").await?;
            page.until_of(field("input spline: count x outside, setup C"), "one.getAttribute('aria-invalid') === 'true'").await?;
            page.question_says("driveshaft 2.50 in shorter").await?;
            // As on the phone next: the tunnel over the case.
            page.type_into(field("tunnel above the shaft"), "0: 8; 30: 3").await?;
            page.type_into(field("top of the case, distance: height, setup C"), "0: 6; 26 1/8: 4").await?;
            page.question_says("tunnel 0.35 in too low").await?;
            // The new length opens Driveline, where it goes.
            page.click(link("41.50 in joint to joint")).await?;
            page.stands("compare/driveline").await?;
        }
        // A case family measured before goes into its own setup in one press.
        page.click(link("Swap").of("Questions")).await?;
        page.click("#swap .of--b .offer button").await?;
        page.until_of(field("case face to output flange, setup B"), "one.value === '23 5/8'").await?;
        page.until_of("#swap .of--b", "one.innerText.includes('as on the shelf')").await
    })
}
