//! Calls that are answered at the bench: counts without a name, turns of an axle, a gear that was measured and is ordered.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Screen, field, link, visit};

use crate::calls::{Hands, all_is_on_the_first_screen};

/// On the bench: a cluster of 33-17-24-27, a main gear of 36 that runs on the 17. No name.
#[test]
fn call_4_a_cluster_without_a_name() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::DESK).await?;
        page.open("#bench/identify").await?;
        let mut hands = Hands::of(page, false);
        for (place, text) in [("input pair", "?/33"), ("1st", "36/17"), ("2nd", "?/24"), ("3rd", "?/27")] {
            hands.type_into(field(place).of("Counted teeth"), text).await?;
        }
        ensure!(hands.actions <= 6, "{} actions", hands.actions);
        // 36 + 17 = 53: 53 − 33 = 20, 53 − 24 = 29, 53 − 27 = 26; 33/20 × 36/17 = 3.494, × 29/24 = 1.994, × 26/27 = 1.589.
        page.says(".answer", "tooth sum of 53").await?;
        page.says(".answer", "20 (the input pair), 29 (2nd) and 26 (3rd)").await?;
        page.says(".answer", "3.49, 1.99, 1.59, 1.00").await?;
        all_is_on_the_first_screen(page, &[]).await
    })
}

/// An axle: "39 turns of the pinion for 10 of the wheel, the other wheel on the ground".
#[test]
fn call_5_was_the_other_wheel_held() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::DESK).await?;
        page.open("#bench/identify").await?;
        let mut hands = Hands::of(page, false);
        hands.type_into(field("driveshaft turns").of("Turns of an axle"), "39").await?;
        hands.type_into(field("wheel turns").of("Turns of an axle"), "10").await?;
        page.says(".answer", "39/10").await?;
        hands.actions += 1;
        page.choose(field("with").of("Turns of an axle"), "one wheel held").await?;
        ensure!(hands.actions <= 4, "{} actions", hands.actions);
        // One wheel held, the other turns twice as far: 2 × 39 ÷ 10 = 7.8, which no car has; 3.9 if both turned.
        page.until("/7\\.[78]/.test(document.querySelector('.answer').innerText)").await?;
        page.says(".answer", "held").await?;
        let (answer, high): (f64, f64) = page.js("[document.querySelector('.answer').getBoundingClientRect().bottom, innerHeight]").await?;
        ensure!(answer <= high, "the answer ends at {answer:.0} px of {high:.0}");
        Ok(())
    })
}

/// A gear of 32 teeth: over the tips, over five and six teeth, the angle its tips print. What it is, and the sheet to order one.
#[test]
fn call_8_a_gear_without_a_name() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::DESK).await?;
        page.open("").await?;
        let mut hands = Hands::of(page, false);
        hands.press(link("Bench")).await?;
        hands.press(link("Measure a gear")).await?;
        page.stands("bench/measure").await?;
        let readings = [
            ("teeth", "32"),
            ("over the tips, largest reading", "3.120"),
            ("span over several teeth", "1.1652"),
            ("over one tooth more", "1.4112"),
            ("angle the tips print", "25.5"),
        ];
        for (name, text) in readings {
            hands.type_into(field(name).of("What was measured"), text).await?;
        }
        // π ÷ 12 × cos 20° = 0.2460 = 1.4112 − 1.1652; sin β = 32 × 2.1167 × tan 25.5° ÷ 79.248: 24.06°; x = (3.120 − 2.919) × 6 − 1 = 0.206.
        page.says(".answer", "12 DP, 20°, 24° helix, profile shift +0.21").await?;
        // Unworn it would span (cos 20° (4.5 π + 32 × 0.019197) + 2 × 0.206 sin 20°) ÷ 12 = 1.1671 in: 0.0019 more than it does.
        page.says(".answer", "the flanks have lost 0.0019 in").await?;
        all_is_on_the_first_screen(page, &[]).await?;
        // The sheet to order one stands in the next question, nothing typed again.
        hands.press(link("For the cutter")).await?;
        page.stands("bench/cutter").await?;
        println!("call 8: {} actions", hands.actions);
        ensure!(hands.actions <= 8, "{} actions", hands.actions);
        page.says(".answer", "32 teeth, 12 DP, 20°, 24° helix, profile shift +0.206: 3.12").await?;
        // π × 2.9190 ÷ tan 24° of lead; d_f = 2.9190 − 2 × (1.25 − 0.206) ÷ 12.
        for (key, by_hand) in [("cutter.lead_in", "20.59"), ("cutter.root_diameter_in", "2.745"), ("cutter.span_lower_in", "1.16")] {
            page.until(&format!("document.querySelector('main [data-figure=\"{key}\"]')?.textContent.startsWith('{by_hand}')")).await?;
        }
        all_is_on_the_first_screen(page, &[]).await
    })
}
