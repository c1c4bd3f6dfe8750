//! Inside the box: a gear is selected by chip, key and press, and the figures follow.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Key, Screen, visit};

#[test]
fn the_train_follows_the_gear_selected() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        // Curlew four, wide at 6,500: countershaft 6,500 × 25/30 = 5,417; 2nd out 6,500 × 25/30 × 23/32 = 3,893.
        page.until("document.querySelector('[data-figure=\"inside.countershaft_rpm\"]').innerText.startsWith('5,417')").await?;
        page.until("document.querySelector('[data-figure=\"inside.output_rpm\"]').innerText.startsWith('3,893')").await?;
        // By chip: 1st, 6,500 × 25/30 × 18/37 = 2,635.
        page.click("#inside-gears button:nth-child(1)").await?;
        page.until("document.querySelector('[data-figure=\"inside.output_rpm\"]').innerText.startsWith('2,635')").await?;
        // By arrow key from 1st to 2nd.
        page.press(Key::Right).await?;
        page.until("document.querySelector('[data-figure=\"inside.output_rpm\"]').innerText.startsWith('3,893')").await?;
        // By pressing 3rd in the picture: the second of five places.
        page.js::<()>("void (() => { const canvas = document.querySelector('#picture-gear-train canvas'); canvas.scrollIntoView({ block: 'center' }); const box = canvas.getBoundingClientRect(); window.pressAt = fraction => { const at = { bubbles: true, clientX: box.left + box.width * fraction, clientY: box.top + box.height / 2, pointerId: 1, pointerType: 'mouse', button: 0, buttons: 1 }; for (const name of ['pointermove', 'pointerdown', 'pointerup', 'click']) canvas.dispatchEvent(new (name === 'click' ? MouseEvent : PointerEvent)(name, at)); }; })()").await?;
        page.js::<()>("void window.pressAt(0.28)").await?;
        page.until("document.querySelector('[data-figure=\"inside.output_rpm\"]').innerText.startsWith('5,223')").await?;
        // Reverse turns against the engine.
        page.click("#inside-gears button:last-child").await?;
        page.until("document.querySelector('#inside').innerText.includes('turning against the input')").await?;
        ensure!(!page.told("gear-train").await?.is_empty(), "the train is told in words");
        // Typed: another input speed, a pitch, a face width, and the synchronisers say their work.
        page.click("#inside-gears button:nth-child(4)").await?;
        page.type_into("#inside-at", "70 mph").await?;
        page.until("document.querySelector('[data-figure=\"inside.output_rpm\"]').innerText.startsWith('3,907')").await?;
        page.type_into("#inside-at", "3,000").await?;
        page.type_into("#s1-pitch", "2.5 mm").await?;
        page.type_into("#s1-helix", "25").await?;
        page.type_into("#s1-face-width", "18 mm").await?;
        page.until("document.querySelector('#inside').innerText.includes('an estimate from teeth, pitch and face width')").await?;
        page.until("document.querySelector('[data-figure=\"inside.sync_1_to_2_work_j\"]') !== null").await?;
        page.until("document.querySelector('[data-figure=\"inside.gear_1.contact_ratio\"]') !== null").await?;
        // A lining that may take next to nothing, then limits that cannot be read.
        page.type_into("#s1-cone-diameter", "70 mm").await?;
        page.type_into("#s1-cone-width", "8 mm").await?;
        page.type_into("#lining-limits", "0.1 0.1 0.001 0.001").await?;
        page.until("document.querySelector('#inside').innerText.includes('set as its limit')").await?;
        page.type_into("#lining-limits", "5 3").await?;
        page.until("document.querySelector('#inside').innerText.includes('does not give four limits')").await
    })
}

#[test]
fn it_is_read_on_a_phone() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        page.open("").await?;
        page.click("#inside-gears button:nth-child(3)").await?;
        page.until("document.querySelector('[data-figure=\"inside.output_rpm\"]').innerText.startsWith('5,223')").await?;
        let width: u32 = page.js("document.documentElement.scrollWidth").await?;
        ensure!(width <= Screen::PHONE.width, "the page is {width} px wide on a phone");
        Ok(())
    })
}
