//! A noise that is listened to: a recording opened, one that is no sound, the microphone, a tone to match.

use std::f64::consts::TAU;

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{By, Page, button, field, visit};

/// The group in which the noise is told, and that of the recording.
const HEARD: &str = "What you hear";
const RECORDED: &str = "Let it listen";

/// A sound file of 16 bits, one channel: tones by frequency and loudness in broad noise, always the same.
fn wave(seconds: u32, tones: &[(f64, f64)]) -> Vec<u8> {
    const RATE: u32 = 12_000;
    let many = seconds * RATE;
    let mut file = Vec::new();
    let whole = |value: u32| value.to_le_bytes();
    file.extend([*b"RIFF", whole(36 + 2 * many), *b"WAVE", *b"fmt ", whole(16)].concat());
    file.extend([[1, 0, 1, 0], whole(RATE), whole(2 * RATE), [2, 0, 16, 0], *b"data", whole(2 * many)].concat());
    let mut dice = 7_u32;
    for place in 0..many {
        dice = dice.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let noise = f64::from(dice >> 8) / f64::from(1_u32 << 24) - 0.5;
        let time = f64::from(place) / f64::from(RATE);
        let sum: f64 = tones.iter().map(|(hertz, loud)| loud * (TAU * hertz * time).sin()).sum();
        #[expect(clippy::cast_possible_truncation, reason = "far below full scale")]
        let sample = (3_000.0 * sum + 6_000.0 * noise) as i16;
        file.extend(sample.to_le_bytes());
    }
    file
}

/// The demo car in third at 40 mph: 46.299 turns of the engine a second fire at 92.6 Hz; third whines at 1,041.7, side tones 37.2 apart.
fn third_whines() -> Vec<u8> {
    let mut tones: Vec<(f64, f64)> = (1..=6).map(|k| (92.598 * f64::from(k), 1.0 / f64::from(k))).collect();
    tones.extend([(1_041.73, 1.0), (2_083.46, 0.6), (3_125.2, 0.4), (1_004.53, 0.3), (1_078.94, 0.3), (409.25, 0.15)]);
    wave(15, &tones)
}

async fn open_file(page: &Page, name: &str, content: &[u8]) -> Result<()> {
    let file = std::env::temp_dir().join(format!("layshaft-{}-{name}", std::process::id()));
    std::fs::write(&file, content)?;
    page.driver()?.find(By::Css("#listen-file")).await?.send_keys(file.display().to_string()).await?;
    page.until(
        "!/Reading/.test(document.getElementById('listen-says').textContent) && document.getElementById('listen-says').textContent !== ''",
    )
    .await?;
    Ok(std::fs::remove_file(file)?)
}

#[test]
fn a_recording_names_the_pair_that_whines() -> Result<()> {
    visit(async |page| {
        page.open("#bench/noise").await?;
        page.js::<()>("void (() => { window.longest = 0; new PerformanceObserver(list => { for (const entry of list.getEntries()) window.longest = Math.max(window.longest, entry.duration); }).observe({ type: 'longtask' }); })()").await?;
        open_file(page, "third.wav", &third_whines()).await?;
        // The recording waits for what it needs.
        page.says("#listen-says", "Choose the gear it was recorded in").await?;
        page.choose(field("in").of(HEARD), "3rd").await?;
        page.says("#listen-says", "Type the speed or rpm at which it was recorded").await?;
        page.type_into(field("at, road speed or rpm"), "40").await?;
        page.says("#listen-says", "Heard 15 s from").await?;
        page.says("#recorded .answer", "The recording has the 3rd gear pair").await?;
        page.says("#recorded .answer", "at 40 mph in 3rd, 2,77").await?;
        page.says("#recorded li:first-child", "3rd gear pair").await?;
        page.click(button("Over time").of("Picture of the recording")).await?;
        let longest: f64 = page.js("window.longest").await?;
        println!("the longest task while it listens: {longest:.0} ms");
        // Typed anew it is listened to anew: 2 % too fast is found out.
        page.type_into(field("at, road speed or rpm"), "40.8").await?;
        page.says("#recorded .answer", "slower than typed").await?;
        // What was found goes into the job, and ranks alike without the sound.
        page.click("#recorded-keep").await?;
        page.until_of(field("recordings kept, a line each"), "one.value.startsWith('gear 3 at 2,77')").await?;
        page.question_says("The recording kept in 3rd has the 3rd gear pair").await?;
        // Its pitch goes into the job, the recording does not.
        page.click("#recorded-pitch").await?;
        ensure!(page.value(field("its pitch, if known")).await? == "1,042", "{}", page.value(field("its pitch, if known")).await?);
        page.click("#recorded-forget").await?;
        page.gone("#recorded").await
    })
}

#[test]
fn a_recording_that_tells_nothing_says_what_to_do() -> Result<()> {
    visit(async |page| {
        page.open("#bench/noise").await?;
        open_file(page, "wrong.wav", b"GIF89a, no sound at all").await?;
        page.says("#listen-says", "The file holds no sound. Open a sound file, or record again.").await?;
        open_file(page, "short.wav", &wave(2, &[(200.0, 1.0)])).await?;
        page.says("#listen-says", "The recording is too short: 2.0 s").await?;
        let silent: Vec<u8> = third_whines().into_iter().enumerate().map(|(at, byte)| if at < 44 { byte } else { 0 }).collect();
        open_file(page, "silent.wav", &silent).await?;
        page.says("#listen-says", "The recording is silent").await?;
        page.gone("#recorded").await
    })
}

/// The browser's own made-up microphone, which beeps.
#[test]
fn the_microphone_is_asked_at_the_press() -> Result<()> {
    visit(async |page| {
        page.open("#bench/noise").await?;
        page.choose(field("in").of(HEARD), "3rd").await?;
        page.type_into(field("at, road speed or rpm"), "40").await?;
        page.click(button("Record 20 seconds").of(RECORDED)).await?;
        page.says("#listen-says", "Recording: 5 of 20 s").await?;
        page.click(button("Stop recording").of(RECORDED)).await?;
        page.until("/^(Heard [5-9] s from the microphone|The recording is)/.test(document.getElementById('listen-says').textContent)").await
    })
}

#[test]
fn a_tone_is_matched_by_ear() -> Result<()> {
    visit(async |page| {
        page.open("#bench/noise").await?;
        page.choose(field("in").of(HEARD), "3rd").await?;
        page.type_into(field("at, road speed or rpm"), "40").await?;
        page.choose("#tone-part", "3rd gear pair").await?;
        ensure!(page.value("#tone-hertz").await? == "1,042", "the tone is not that of third");
        page.click("#tone-play").await?;
        page.until_of("#tone-play", "one.getAttribute('aria-pressed') === 'true'").await?;
        page.click("#tone-keep").await?;
        ensure!(page.value(field("its pitch, if known")).await? == "1,042", "the pitch is not taken");
        page.click("#tone-play").await?;
        page.until_of("#tone-play", "one.getAttribute('aria-pressed') === 'false'").await
    })
}
