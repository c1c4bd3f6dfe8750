//! Inside the box: a gear is selected from the list, by key and by a press in the picture, and the figures follow.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Page, Screen, field, visit};

const OUTPUT: &str = "inside.output_rpm";

/// Presses the canvas of the open picture at a share of its width, as a finger does.
async fn press_picture(page: &Page, share: f64) -> Result<()> {
    page.of::<()>(
        "figure.picture canvas",
        &format!(
            "void (() => {{ one.scrollIntoView({{ block: 'center', behavior: 'instant' }}); const box = one.getBoundingClientRect();
               const at = {{ bubbles: true, clientX: box.left + box.width * {share}, clientY: box.top + box.height / 2, pointerId: 1, pointerType: 'mouse', button: 0, buttons: 1 }};
               for (const name of ['pointermove', 'pointerdown', 'pointerup', 'click'])
                 one.dispatchEvent(new (name === 'click' ? MouseEvent : PointerEvent)(name, at)); }})()"
        ),
    )
    .await
}

#[test]
fn the_train_follows_the_gear_selected() -> Result<()> {
    visit(async |page| {
        page.open("#compare/inside").await?;
        // The demo's A at 6,500: countershaft 6,500 × 25/30 = 5,417; 2nd out 6,500 × 25/30 × 23/32 = 3,893.
        page.shows("A", "inside.countershaft_rpm", "5,417").await?;
        page.shows("A", OUTPUT, "3,893").await?;
        // From the list: 1st, 6,500 × 25/30 × 18/37 = 2,635.
        page.choose(field("gear"), "1st").await?;
        page.shows("A", OUTPUT, "2,635").await?;
        // By arrow key from 1st to 2nd.
        page.press(Key::Down).await?;
        page.shows("A", OUTPUT, "3,893").await?;
        // By pressing 3rd in the picture.
        press_picture(page, 0.28).await?;
        page.shows("A", OUTPUT, "5,223").await?;
        page.until_of(field("gear"), "one.selectedOptions[0].text === '3rd'").await?;
        // Reverse turns against the engine.
        page.choose(field("gear"), "reverse").await?;
        page.question_says("against the input").await?;
        ensure!(!page.told("Gear train").await?.is_empty(), "the train is told in words");
        // Another input speed: in 4th, which is direct, 70 mph are 3,907 rpm.
        page.choose(field("gear"), "4th").await?;
        page.type_into(field("at"), "70 mph").await?;
        page.shows("A", OUTPUT, "3,907").await
    })
}

#[test]
fn pitch_and_face_width_open_what_the_synchronisers_do() -> Result<()> {
    visit(async |page| {
        page.open("#compare/inside").await?;
        page.type_into(field("at"), "3,000").await?;
        page.open_fold("All figures").await?;
        page.type_into("#s1-pitch", "2.5 mm").await?;
        page.type_into("#s1-helix", "25").await?;
        page.type_into("#s1-face-width", "18 mm").await?;
        page.element("[data-figure='inside.sync_1_to_2_work_j']").await?;
        page.element("[data-figure='inside.gear_1.contact_ratio']").await?;
        // A lining that may take next to nothing, then limits that cannot be read.
        page.type_into("#s1-cone-diameter", "70 mm").await?;
        page.type_into("#s1-cone-width", "8 mm").await?;
        let limits = field("own limits of the lining");
        page.type_into(&limits, "0.1 0.1 0.001 0.001").await?;
        page.until("document.querySelector('main .verdict--caution, main .verdict--stop') !== null").await?;
        page.type_into(&limits, "5 3").await?;
        page.until_of(&limits, "one.getAttribute('aria-invalid') === 'true'").await
    })
}

#[test]
fn it_is_read_on_a_phone() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        page.open("#compare/inside").await?;
        page.choose(field("gear"), "3rd").await?;
        page.shows("A", OUTPUT, "5,223").await?;
        page.assert_no_sideways("inside the box on a phone").await
    })
}

/// 25 and 30 share 5, so the same two teeth of the input pair meet after 6 turns of the input: 24 quarters by arrow key.
#[test]
fn the_train_is_turned_until_marked_teeth_meet() -> Result<()> {
    visit(async |page| {
        page.open("#compare/inside").await?;
        page.choose_tab("Turn it").await?;
        page.tab_to(".picture__point").await?;
        page.press(Key::Home).await?;
        for _ in 0..23 {
            page.press(Key::Right).await?;
        }
        page.says(".picture__said", "5.75 turns of the input").await?;
        page.says(".picture__said", "input pair meet in 0.25 turns").await?;
        page.press(Key::Right).await?;
        page.says(".picture__said", "input pair marked teeth meet").await?;
        // 6 × 25/30 = 5 turns of the cluster.
        page.says(".picture__said", "cluster 5.00").await?;
        let told = page.told("Turn it").await?.join(" ");
        ensure!(told.contains("every 6 turns of the input"), "{told}");
        page.assert_accessible("a train turned by hand").await
    })
}
