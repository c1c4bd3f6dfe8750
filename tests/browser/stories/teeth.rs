//! Teeth: a gear without a name is measured, put to its mate and ordered; pairs that bear more than A's are told.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, Screen, Theme, button, field, visit};

use crate::keeping::notice_says;

const MEASURED: &str = "What was measured";
const GEAR: &str = "The gear";
const PAIR: &str = "The pair";

/// A box of unknown gears: two are measured and named, they are seen to mesh, a third is ordered.
#[test]
fn measure_two_see_them_mesh_order_a_third() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::DESK).await?;
        page.open("#bench/measure").await?;
        // A spur gear of 17 teeth, module 3.5, x 0.518: 27.9046 mm over three teeth, as DIN 3966 has it; π × 3.5 × cos 20° = 10.3324 more.
        for (name, text) in [
            ("teeth", "17"),
            ("over the tips, largest reading", "70.126 mm"),
            ("span over several teeth", "27.905 mm"),
            ("over one tooth more", "38.237 mm"),
            ("angle the tips print", "0"),
        ] {
            page.type_into(field(name).of(MEASURED), text).await?;
        }
        page.says(".answer", "module 3.5").await?;
        // The other: 32 teeth of 12 DP.
        for (name, text) in [
            ("teeth", "32"),
            ("over the tips, largest reading", "3.120"),
            ("span over several teeth", "1.1652"),
            ("over one tooth more", "1.4112"),
            ("angle the tips print", "25.5"),
        ] {
            page.type_into(field(name).of(MEASURED), text).await?;
        }
        page.says(".answer", "12 DP, 20°, 24° helix").await?;
        // It is ordered as it is, with a mate of 23 teeth: everything that is blank comes from what was measured.
        page.go_to("bench/cutter").await?;
        page.says(".answer", "32 teeth, 12 DP, 20°, 24° helix, profile shift +0.206: 3.12").await?;
        page.type_into(field("teeth of the mate").of(PAIR), "23").await?;
        page.type_into(field("center distance of the two").of(PAIR), "2.525").await?;
        page.element("[data-figure='cutter.pins_lower_in']").await?;
        // Thinned by a row of DIN 3967 in place of a backlash.
        page.type_into(field("or allowance by DIN 3967").of(PAIR), "25cd").await?;
        page.open_fold("All figures").await?;
        page.element("[data-figure='cutter.thickness_upper_in']").await?;
        ensure!(!page.told("With its mate").await?.is_empty(), "the mesh is told in words");
        turns_with_the_arrow_keys(page).await?;
        page.catch_saved().await?;
        page.choose_tab("Tooth").await?;
        page.in_menu("Save", "At 1:1 as DXF").await?;
        let dxf = page.caught().await?;
        // As many corners as a tooth has, 32 times.
        let corners = dxf.lines().filter(|line| *line == "VERTEX").count();
        ensure!(corners > 3_000 && corners % 32 == 0, "{corners} corners");
        page.in_menu("Save", "At 1:1 as SVG, to print").await?;
        ensure!(page.caught().await?.contains("must measure 50 mm and 2 in"), "the print has no scale");
        // A whole set is one file of sheets, once A says how its gears are cut.
        page.open_fold("A whole gear set").await?;
        page.click(button("Save the sheets of A")).await?;
        notice_says(page, &["no pitch yet"]).await?;
        // One with a count of its own is another gear, and says what is wrong with it.
        page.type_into(field("teeth").of(GEAR), "9").await?;
        page.type_into(field("module or pitch").of(GEAR), "2.5 mm").await?;
        page.says(".answer", "No profile shift brings it to its mate").await?;
        page.type_into(field("center distance of the two").of(PAIR), "").await?;
        page.type_into(field("teeth of the mate").of(PAIR), "").await?;
        page.says(".answer", "undercut").await?;
        // What is half under the bar at the top is no target.
        page.js::<()>("void scrollTo({ top: 0, behavior: 'instant' })").await?;
        for theme in [Theme::Light, Theme::Dark] {
            page.set_theme(theme).await?;
            page.assert_accessible(&format!("For the cutter, {}", theme.word())).await?;
        }
        page.set_screen(Screen::PHONE).await?;
        page.assert_no_sideways("For the cutter").await
    })
}

/// The pair turns with the arrow keys as with a finger: it is painted anew.
async fn turns_with_the_arrow_keys(page: &Page) -> Result<()> {
    let painted = "document.querySelector('#picture-cutter canvas').toDataURL()";
    let still: String = page.js(painted).await?;
    page.js::<()>("document.querySelector('#picture-cutter .picture__point').focus()").await?;
    page.press(Key::Right).await?;
    page.press(Key::Right).await?;
    page.until(&format!("{painted} !== {}", serde_json::json!(still))).await
}

/// 16 mm of face in place of 20 bear 25 % more at the roots.
#[test]
fn a_pair_that_bears_more_is_told() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::DESK).await?;
        page.open("#compare/teeth").await?;
        page.question_says("Type module or pitch").await?;
        page.open_fold("All figures").await?;
        for setup in ["s1", "s2"] {
            page.type_into(&*format!("#{setup}-pitch"), "10 DP").await?;
            page.type_into(&*format!("#{setup}-helix"), "25").await?;
            page.type_into(&*format!("#{setup}-face-width"), "20 mm").await?;
        }
        page.question_says("Weakest in bending").await?;
        page.type_into("#s2-pair-cuts", "1st face 16 mm").await?;
        // 28/27 in place of 30/25 gives the cluster 0.864 of the torque; × 20 ÷ 16 it is 1.080, and 1.3 % more for its speed.
        page.shows("B", "teeth.gear_1.bending_against_a_percent", "+9").await?;
        // A pair that is no pair keeps its text and says why.
        page.type_into("#s2-pair-cuts", "1st face 900 mm").await?;
        page.until_of("#s2-pair-cuts", "one.getAttribute('aria-invalid') === 'true'").await?;
        ensure!(page.value("#s2-pair-cuts").await? == "1st face 900 mm", "what was typed is lost");
        // Where the cluster's gears and bearings sit: how long both last on the road, then what one bearing alone lacks.
        page.type_into("#s1-gear-places", "input 22 mm; 3rd 65 mm; 2nd 110 mm; 1st 150 mm").await?;
        page.type_into("#s1-bearings", "0 mm 28 kN ball; 175 mm 24 kN roller").await?;
        page.question_says("Bearings last").await?;
        // The mainshaft's, at the same torque; then the forces as arrows, each said in words.
        page.type_into("#s1-main-bearings", "45 mm 16 kN needle; 175 mm 26 kN ball").await?;
        page.element("[data-figure='teeth.main_bearings.together_h']").await?;
        ensure!(page.told("Forces").await?.iter().any(|line| line.contains("along the pitch line")), "the forces are not told");
        page.choose_tab("Bearings").await?;
        page.type_into("#s1-bearings", "0 mm 28 kN ball").await?;
        page.until_of("#s1-bearings", "one.getAttribute('aria-invalid') === 'true'").await?;
        // Taper bearings say what they make of it.
        page.type_into("#s1-bearings", "0 mm 40 kN taper Y 1.6; 175 mm 45 kN taper Y 1.5").await?;
        page.element("[data-figure='teeth.gear_1.bearing_front_induced_lbf']").await?;
        page.question_says("hand of the teeth not typed: each is taken as if the thrust pressed it").await?;
        for theme in [Theme::Light, Theme::Dark] {
            page.set_theme(theme).await?;
            page.assert_accessible(&format!("Teeth and bearings, {}", theme.word())).await?;
        }
        page.set_screen(Screen::PHONE).await?;
        page.assert_no_sideways("Teeth and bearings").await?;
        // The whole set on sheets: a page for each gear that meshes, drawn at its own size.
        page.catch_saved().await?;
        page.go_to("bench/cutter").await?;
        page.open_fold("A whole gear set").await?;
        page.click(button("Save the sheets of A")).await?;
        let sheets = page.caught().await?;
        let (pages, drawn) = (sheets.matches("<section>").count(), sheets.matches("<svg").count());
        ensure!(pages >= 6 && pages == drawn, "{pages} pages, {drawn} gears drawn");
        Ok(())
    })
}
