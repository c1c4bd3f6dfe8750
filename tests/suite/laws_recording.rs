//! Recordings: what is refused, how peaks and turns are read, and that the guilty part of a made-up recording is found.
//!
//! Four recordings stand here, so that the suite stays quick; all hundred of each kind are listened to by
//! `cargo run --profile bench --package measurements --bin listening`, which prints its rates beside those of the trial.

use layshaft::problem::Explain;
use layshaft::sliced::Sliced;
use layshaft::sound::recording::spectra::peak;
use layshaft::sound::recording::turns::{ByTurns, SpeedCurve};
use layshaft::sound::recording::{Clip, ClipError, Findings, Intake, Listening};
use layshaft::sound::together::{Expected, Stand, together};

use crate::any_recording::{Made, RATE, made, made_in};

const TAU: f64 = std::f64::consts::TAU;

fn tone(hertz: f64, loud: f64, seconds: f64, rate: f64) -> Vec<f32> {
    let mut samples = Vec::new();
    let mut place = 0.0;
    while place < seconds * rate {
        #[expect(clippy::cast_possible_truncation, reason = "samples are kept so")]
        samples.push((loud * (TAU * (hertz * place / rate).fract()).sin()) as f32);
        place += 1.0;
    }
    samples
}

#[test]
fn what_tells_nothing_is_refused() {
    let refused = |samples: &[f32], rate: f64| {
        let why = Clip::new(samples, rate).unwrap_err();
        format!("{}: {}", why.what(), why.what_to_do())
    };
    assert!(refused(&[], RATE).starts_with("the file holds no sound"));
    assert!(refused(&vec![f32::NAN; 60_000], RATE).starts_with("the file holds no sound"));
    assert!(refused(&tone(100.0, 0.5, 6.0, RATE), 0.0).starts_with("the file holds no sound"));
    assert!(refused(&vec![0.0; 72_000], RATE).starts_with("the recording is silent"));
    assert!(refused(&vec![0.25; 72_000], RATE).starts_with("the recording is silent"));
    assert!(refused(&tone(100.0, 0.5, 1.5, RATE), RATE).starts_with("the recording is too short: 1.5 s: hold a steady speed"));
    assert!(refused(&vec![0.1; 21_600_000], RATE).starts_with("the recording is too long: 30 min"));
    let clipped: Vec<f32> = tone(100.0, 2.0, 6.0, RATE).into_iter().map(|sample| sample.clamp(-1.0, 1.0)).collect();
    assert!(refused(&clipped, RATE).starts_with("the recording is clipped"));
    assert!(Clip::new(&tone(100.0, 0.5, 6.0, RATE), RATE).is_ok());
    assert_eq!(Clip::new(&tone(100.0, 0.5, 1.0, RATE), RATE), Err(ClipError::TooShort(1.0)));
}

/// A tone of 1 kHz comes through from 48 to 12 kHz, one of 9 kHz, which would fold down to 3, does not.
#[test]
fn what_lies_above_is_left_out() {
    let rms = |clip: &Clip| {
        let squares: f64 = clip.samples.iter().map(|sample| sample * sample).sum();
        let mut many = 0.0;
        clip.samples.iter().for_each(|_| many += 1.0);
        (squares / many).sqrt()
    };
    let low = Clip::new(&tone(1_000.0, 0.5, 5.0, 48_000.0), 48_000.0).unwrap();
    let high = Clip::new(&tone(9_000.0, 0.5, 5.0, 48_000.0), 48_000.0).unwrap();
    assert!((low.rate - 12_000.0).abs() < 1e-9 && (low.seconds() - 5.0).abs() < 0.01);
    assert!((rms(&low) - 0.5 / 2.0_f64.sqrt()).abs() < 0.003, "{}", rms(&low));
    assert!(rms(&high) < 0.002, "{}", rms(&high));
}

/// The greatest bias of a parabola through the logarithms of three bins of a Hann window: 0.01601 bins (computed from the window; the
/// method: Smith, Spectral Audio Signal Processing, section 5.7).
#[test]
fn a_peak_between_bins() {
    let length = 256.0;
    let power = |offset: f64| -> Vec<f64> {
        let bin = |bin: f64| {
            let (mut re, mut im, mut n) = (0.0, 0.0, 0.0);
            while n < length {
                let window = 0.5 - 0.5 * (TAU * n / length).cos();
                let phase = TAU * n * (20.0 + offset - bin) / length;
                re += window * phase.cos();
                im += window * phase.sin();
                n += 1.0;
            }
            re * re + im * im
        };
        (0..40).map(|place| bin(f64::from(place))).collect()
    };
    let bias = |offset: f64| peak(&power(offset), 20).unwrap().0 - 20.0 - offset;
    let most = (0..=50).map(|step| bias(f64::from(step) / 100.0).abs()).fold(0.0, f64::max);
    assert!((most - 0.016_01).abs() < 2e-4, "{most}");
    assert!(bias(0.0).abs() < 1e-9 && bias(0.5).abs() < 1e-9);
}

/// A tone of order 20 of an engine that runs from 30 to 45 turns a second has 20 cycles in each turn once it is resampled.
#[test]
fn orders_stand_still_in_a_sweep() {
    let (mut turns, mut samples, mut place) = (0.0_f64, Vec::new(), 0.0);
    while place < 6.0 * RATE {
        #[expect(clippy::cast_possible_truncation, reason = "samples are kept so")]
        samples.push((0.5 * (TAU * (20.0 * turns).fract()).sin()) as f32);
        turns += (30.0 + 15.0 * place / RATE / 6.0) / RATE;
        place += 1.0;
    }
    let clip = Clip::new(&samples, RATE).unwrap();
    let turned = ByTurns::of(&clip, &SpeedCurve::between(30.0, 45.0, 6.0));
    let (mut same, mut cross) = (0.0, 0.0);
    for (place, sample) in (0_u32..).zip(&turned.samples) {
        let phase = TAU * 20.0 * f64::from(place) / turned.per_turn;
        same += sample * phase.sin();
        cross += sample * phase.cos();
    }
    let mut many = 0.0;
    turned.samples.iter().for_each(|_| many += 1.0);
    let loud = 2.0 * f64::hypot(same, cross) / many;
    assert!((loud - 0.5).abs() < 0.01, "{loud}");
}

fn listened(made: &Made) -> Findings {
    let mut listening = Listening::new(Clip::new(&made.samples, RATE).unwrap(), made.run.clone());
    while !listening.advance(1).is_finished {}
    listening.found().unwrap()
}

fn place(made: &Made, found: &Findings) -> usize {
    found.candidates.iter().position(|candidate| candidate.maker == made.guilty).unwrap()
}

/// The speed is found though it is typed wrong by up to 3 %, and the guilty part is first.
#[test]
fn the_guilty_part_is_found() {
    for (seed, is_steady) in SEEDS {
        let made = made(seed, is_steady, 8.0, 10.0);
        let found = listened(&made);
        assert!((found.turns / made.turns).ln().abs() < 0.003, "{seed}: {} for {}", found.turns, made.turns);
        assert_eq!(place(&made, &found), 0, "{seed}");
    }
}

/// One gear cannot part the two that it names first; the same car in another gear at the same rpm can.
#[test]
fn a_second_gear_parts_what_one_cannot() {
    let recordings = [false, true].map(|again| made_in(TWO_GEARS, true, 8.0, 10.0, again));
    let stands = |made: &Made| {
        let found = listened(made);
        let level =
            |part: usize| found.candidates.iter().find(|candidate| candidate.maker == part).map_or(-30.0, |candidate| candidate.score);
        let expected = |idle: bool| if idle { Expected::Either } else { Expected::Heard };
        made.idle.iter().enumerate().map(|(part, idle)| Stand { level: level(part), expected: expected(*idle) }).collect::<Vec<Stand>>()
    };
    let stands = recordings.each_ref().map(stands);
    let first = |fits: &[f64]| fits.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1)).map(|(part, _)| part);
    assert_eq!(first(&together(&stands)), Some(recordings[0].guilty));
}

/// A recording whose car is looked at in two gears.
const TWO_GEARS: u64 = 4;

/// Taken in and listened to in slices, as the page does, a recording says to the bit what it says in one go.
#[test]
fn in_slices_it_says_the_same() {
    let made = made(1, true, 6.0, 10.0);
    let mut intake = Intake::new(made.samples.clone(), RATE).unwrap();
    while !intake.advance(500).is_finished {}
    let clip = Clip::new(&made.samples, RATE).unwrap();
    assert!(intake.found().as_deref() == Some(&clip), "the samples differ");
    let mut whole = Listening::new(clip, made.run.clone());
    whole.advance(u64::MAX);
    assert!(whole.found().is_some() && whole.found() == Some(listened(&made)), "the findings differ");
}

const SEEDS: [(u64, bool); 4] = [(1, true), (4, true), (5, true), (10_001, false)];
