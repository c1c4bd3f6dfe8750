//! Teeth counted in a picture: opened, the circle put on the tips, corrected, taken; and pictures that show no gear.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{By, Page, Screen, field, visit};

#[expect(dead_code, reason = "one picture of each kind is enough here")]
#[path = "../../suite/any_photograph.rs"]
mod any_photograph;

use any_photograph::{Level, Made, made};

/// A picture of three bytes a pixel, rows from the bottom up, each filled up to four bytes: a Windows bitmap.
fn bitmap(made: &Made) -> Vec<u8> {
    let (width, height) = (made.width, made.values.len() / made.width);
    let whole = |value: usize| u32::try_from(value).unwrap_or(0).to_le_bytes();
    let row = (3 * width).next_multiple_of(4);
    let mut file = b"BM".to_vec();
    file.extend([whole(54 + row * height), whole(0), whole(54), whole(40), whole(width), whole(height), [1, 0, 24, 0]].concat());
    file.extend([0; 24]);
    for line in made.values.chunks(width).rev() {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "from 0 to 255")]
        let mut bytes: Vec<u8> = line.iter().flat_map(|value| [*value as u8; 3]).collect();
        bytes.resize(row, 0);
        file.extend(bytes);
    }
    file
}

async fn open_file(page: &Page, content: &[u8]) -> Result<()> {
    let file = std::env::temp_dir().join(format!("layshaft-{}-gear.bmp", std::process::id()));
    std::fs::write(&file, content)?;
    page.driver()?.find(By::Css("#count-file")).await?.send_keys(file.display().to_string()).await?;
    page.until("document.getElementById('count-says').textContent !== ''").await?;
    Ok(std::fs::remove_file(file)?)
}

/// Presses the picture at one place and lets go at another, both in pixels of the picture.
async fn drag(page: &Page, from: (f64, f64), to: (f64, f64)) -> Result<()> {
    page.js::<()>(&format!(
        "void (() => {{ const canvas = document.getElementById('count-picture'), seen = canvas.getBoundingClientRect(), scale = seen.width / canvas.width;
          const send = (kind, x, y) => canvas.dispatchEvent(new PointerEvent(kind, {{ bubbles: true, cancelable: true, pointerId: 1,
            clientX: seen.left + scale * x, clientY: seen.top + scale * y }}));
          send('pointerdown', {}, {}); send('pointermove', {}, {}); send('pointerup', {}, {}); }})()",
        from.0, from.1, to.0, to.1, to.0, to.1
    ))
    .await
}

#[test]
fn teeth_are_counted_corrected_and_taken() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        page.open("#bench/measure").await?;
        let gear = made(Level::Easy, 300_006);
        open_file(page, &bitmap(&gear)).await?;
        page.says("#count-says", "Tap the center of the gear").await?;
        let (x, y, radius) = gear.placed;
        drag(page, (x, y), (x, y)).await?;
        page.says("#count-says", "Drag the circle onto the tips").await?;
        drag(page, (x + 1.3 * radius, y), (x + radius, y)).await?;
        page.says("#count-says", "14 teeth: every tooth seen.").await?;
        page.assert_accessible("a gear whose teeth are counted").await?;
        // The person's number wins.
        page.click("#count-more").await?;
        page.says("#count-says", "15 teeth, as you say. The picture says 14.").await?;
        page.click("#count-less").await?;
        page.click("#count-take").await?;
        let teeth = page.value(field("teeth").of("What was measured")).await?;
        ensure!(teeth == "14", "{teeth}");
        // The keys move the circle too, and what lies on it is counted anew.
        page.js::<()>("void document.getElementById('count-picture').focus()").await?;
        page.press("-").await?;
        page.says("#count-says", "14 teeth").await?;
        page.click("#count-forget").await?;
        page.gone("#count-picture").await
    })
}

#[test]
fn a_picture_without_a_gear_says_what_to_do() -> Result<()> {
    visit(async |page| {
        page.open("#bench/measure").await?;
        open_file(page, b"no picture at all").await?;
        page.says("#count-says", "is no picture that this browser can open").await?;
        let even =
            Made { width: 200, values: vec![90.0; 200 * 200], teeth: None, placed: (0.0, 0.0, 0.0), what: String::new(), pitch: 0.0 };
        open_file(page, &bitmap(&even)).await?;
        page.says("#count-says", "Tap the center of the gear").await?;
        page.js::<()>("void document.getElementById('count-picture').focus()").await?;
        page.press(browser_tests::Key::Enter).await?;
        page.says("#count-says", "too dark or too even to show teeth. Lay the gear on paper").await?;
        page.gone("#count-number").await
    })
}
