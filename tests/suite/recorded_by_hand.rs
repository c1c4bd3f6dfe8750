//! A recording of the demo car, made up from its tones worked by hand: who is named, at which speed, what is missing.

use std::f64::consts::TAU;
use std::sync::Arc;

use layshaft::catalogue::Catalogue;
use layshaft::chart::{LIGHT, Picture};
use layshaft::job::{BenchField, Choice, Field, Job, JobChoice, JobField, NoiseField, demo};
use layshaft::questions::noise::recorded::{Asked, Clip, Findings, Heard, heard, order_map, spectrum, tones};
use layshaft::questions::{OnShelf, Source, analyse_job, build};
use layshaft::sheet::{Piece, Reader, Words};
use layshaft::sliced::Sliced;

const RATE: f64 = 12_000.0;

/// Tones by frequency and loudness in broad noise, for eight seconds, always the same.
fn recorded(tones: &[(f64, f64)]) -> Arc<Clip> {
    let mut dice = 7_u32;
    let mut noise = move || {
        dice = dice.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(dice >> 8) / f64::from(1_u32 << 24) - 0.5
    };
    let sample = |place: u32| {
        let time = f64::from(place) / RATE;
        let sum: f64 = tones.iter().map(|(hertz, loud)| loud * (TAU * hertz * time).sin()).sum();
        #[expect(clippy::cast_possible_truncation, reason = "samples are kept so")]
        let sample = (0.05 * sum + 0.1 * noise()) as f32;
        sample
    };
    Arc::new(Clip::new(&(0..96_000).map(sample).collect::<Vec<f32>>(), RATE).unwrap())
}

/// Third at 40 mph: the engine turns 46.299 times a second and fires twice as often, 92.6 Hz; the pair of 28 teeth on a shaft of 37.205
/// turns whines at 1,041.7 Hz and its harmonics, with side tones a turn of that shaft apart; ring and pinion at 409.3, quietly.
fn third_whines() -> Arc<Clip> {
    let mut tones: Vec<(f64, f64)> = (1..=6).map(|k| (92.598 * f64::from(k), 1.0 / f64::from(k))).collect();
    tones.extend([(1_041.73, 1.0), (2_083.46, 0.6), (3_125.2, 0.4), (1_004.53, 0.3), (1_078.94, 0.3), (409.25, 0.15)]);
    recorded(&tones)
}

fn in_third(at: &str) -> Job {
    let mut job = demo::job();
    job.choose(Choice::Job(JobChoice::NoiseGear), "3");
    type_in(&mut job, NoiseField::At, at);
    job
}

fn type_in(job: &mut Job, field: NoiseField, text: &str) {
    job.type_text(Field::Job(JobField::Bench(BenchField::Noise(field))), text.into());
}

fn with_source<T>(job: &Job, make: impl FnOnce(Source<'_>) -> T) -> T {
    let shelf = OnShelf::of(&Catalogue::built_in());
    let answers = analyse_job(job, shelf.shelves());
    make(Source::new(job, &answers, shelf.shelves(), Reader { units: job.units, words: Words::Us }))
}

fn listened(job: &Job, clip: Arc<Clip>) -> (Asked, Findings) {
    let asked = with_source(job, Asked::of).unwrap();
    let mut listening = asked.listen(clip);
    let mut last = 0;
    loop {
        let progress = listening.advance(1);
        assert!(progress.done >= last && progress.done <= progress.of, "{progress:?} after {last}");
        last = progress.done;
        if progress.is_finished {
            break;
        }
    }
    (asked, listening.found().unwrap())
}

/// Typed 2 % too fast: 40.8 for 40 mph, 2,833 for 2,778 rpm.
#[test]
fn the_pair_that_whines_is_named() {
    let job = in_third("40.8");
    let (asked, findings) = listened(&job, third_whines());
    assert!((findings.turns / 46.299 - 1.0).abs() < 0.001, "{}", findings.turns);
    let heard = with_source(&job, |source| heard(source, &asked, &findings)).unwrap();
    let said = heard.sentences.join(" ");
    assert_eq!(heard.parts[0].name, "3rd gear pair", "{heard:?}");
    assert!((heard.pitch.unwrap() - 1_041.73).abs() < 0.5, "{:?}", heard.pitch);
    assert!(said.starts_with("The recording has the 3rd gear pair (1,04"), "{said}");
    assert!(said.contains("at 40 mph in 3rd, 2,77") && said.contains("2.0 % slower than typed"), "{said}");
    assert!(said.contains("Side tones stand 37.2 Hz apart"), "{said}");
    assert!(said.contains(" in 4th") || said.contains(" in 2nd"), "{said}");
    kept_it_ranks_alike(&job, &heard);
    let picture = with_source(&job, |source| spectrum(source, &asked, &findings)).unwrap();
    let (loudest, level) = picture.levels.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1)).unwrap();
    assert!(((loudest - 1_041.73).abs() < 2.0 || (loudest - 92.6).abs() < 1.0) && level > 10.0, "{loudest} Hz, {level} dB");
    assert!(picture.levels.iter().any(|(hertz, level)| (hertz - 1_041.73).abs() < 2.0 && *level > 10.0));
    let map = with_source(&job, |source| order_map(source, &asked, &findings)).unwrap();
    assert!(map.columns.len() > 60 && (map.seconds - 8.0).abs() < 0.01, "{} columns of {} s", map.columns.len(), map.seconds);
    // The row of the whine is the loudest above the firing, in every column.
    let row = 1_041.73 / map.most * 90.0;
    for column in &map.columns {
        let (at, _) = (0_i32..).zip(column).skip(40).max_by(|a, b| a.1.total_cmp(b.1)).unwrap();
        assert!((f64::from(at) + 0.5 - row).abs() <= 1.0, "row {at} for {row}");
    }
    for width in [360.0, 900.0] {
        assert!(map.scene(&LIGHT, (width, map.height(width))).texts().count() > 8);
        assert!(picture.scene(&LIGHT, (width, picture.height(width))).texts().count() > 8);
    }
}

/// What is kept of a recording ranks the parts as it did, without the sound.
fn kept_it_ranks_alike(job: &Job, heard: &Heard) {
    assert!(heard.kept.starts_with("gear 3 at 2,77"), "{}", heard.kept);
    let mut job = job.clone();
    type_in(&mut job, NoiseField::Kept, &heard.kept);
    let sheet = build(&job, Words::Us);
    let section = sheet.sections.iter().find(|section| section.id == "noise").unwrap();
    assert!(section.answer.plain().starts_with("The recording kept in 3rd has the 3rd gear pair."), "{}", section.answer.plain());
    let row = section.rows.iter().find(|row| row.key == "recordings").unwrap();
    let names = row.cells[0].lines.iter().map(|line| if let Piece::Words(name) = &line[0] { name.to_lowercase() } else { String::new() });
    let names: Vec<String> = names.collect();
    let wanted: Vec<String> = heard.parts.iter().take(names.len()).map(|part| part.name.to_lowercase()).collect();
    assert_eq!(names, wanted);
}

/// In third the input pair and third’s are as loud. In 2nd at the same rpm the input pair carries the power, third’s does not: loud there, it
/// is the input pair, quiet there, third’s. L is 14 dB, gone is below 6: a part that should be heard at −8 dB loses 14.
#[test]
fn a_second_recording_parts_two() {
    let third = "gear 3 at 2,778 rpm: 1,157.5 Hz 14 dB; 1,041.7 Hz 13.5 dB";
    for (second, part) in [
        ("gear 2 at 2,778 rpm: 1,157.5 Hz 13 dB; 409 Hz −4 dB", "The 2 recordings kept together fit the input pair."),
        ("gear 2 at 2,778 rpm: 5,000 Hz −5 dB", "The 2 recordings kept together fit the 3rd gear pair."),
        ("", "The recording kept in 3rd has the input pair or the 3rd gear pair."),
        ("gear 2: nonsense", "“gear 2: nonsense” is no recording that was kept"),
    ] {
        let mut job = in_third("40");
        type_in(&mut job, NoiseField::Kept, &format!("{third}\n{second}"));
        let sheet = build(&job, Words::Us);
        let section = sheet.sections.iter().find(|section| section.id == "noise").unwrap();
        let absent = section.rows.iter().flat_map(|row| row.cells[0].pieces()).find_map(|piece| match piece {
            Piece::Absent(text) => Some(text.clone()),
            _ => None,
        });
        let said = format!("{} {}", section.answer.plain(), absent.unwrap_or_default());
        assert!(said.contains(part), "{second}: {said}");
    }
}

/// Broad noise alone names nothing.
#[test]
fn nothing_stands_out_of_noise() {
    let job = in_third("40");
    let (asked, findings) = listened(&job, recorded(&[]));
    let heard = with_source(&job, |source| heard(source, &asked, &findings)).unwrap();
    assert!(heard.sentences[0].starts_with("No part of box, shaft, axle or tyres stands out"), "{heard:?}");
}

#[test]
fn what_is_missing_is_said() {
    let missing = |job: &Job| with_source(job, Asked::of).unwrap_err();
    assert_eq!(missing(&demo::job()), "Choose the gear it was recorded in.");
    assert_eq!(missing(&in_third("")), "Type the speed or rpm at which it was recorded.");
    assert_eq!(missing(&in_third("fast")), "Type the speed or rpm at which it was recorded.");
    assert!(missing(&in_third("1 mph")).starts_with("The engine would turn 69 rpm"), "{}", missing(&in_third("1 mph")));
    let mut neutral = in_third("40");
    neutral.choose(Choice::Job(JobChoice::NoiseGear), "n");
    assert!(missing(&neutral).starts_with("In neutral the road speed does not tell"));
    let mut sweep = in_third("20");
    type_in(&mut sweep, NoiseField::Until, "x");
    assert!(missing(&sweep).starts_with("The speed at its end cannot be read"));
    type_in(&mut sweep, NoiseField::Until, "60");
    assert!(missing(&sweep).starts_with("From one end to the other is too far"));
    type_in(&mut sweep, NoiseField::Until, "30");
    assert!(with_source(&sweep, Asked::of).unwrap().is_sweep());
    assert_eq!(missing(&demo::empty(layshaft::units::System::Inch)), "Choose the gear it was recorded in.");
}

/// Every tone can be played: 28 × 37.205 = 1,041.7 Hz among them.
#[test]
fn every_tone_can_be_played() {
    let all = with_source(&in_third("40"), tones);
    let third = all.iter().find(|part| part.name == "3rd gear pair").unwrap();
    assert!((third.hertz - 1_041.7).abs() < 0.1 && third.frequency == "1,042 Hz", "{third:?}");
    assert!(all.len() > 12 && all.iter().all(|part| part.hertz > 0.0));
}
