//! How often the guilty part of a made-up recording is found: a hundred steady ones and a hundred sweeps, beside the rates of the trial
//! by which the method was chosen; then, of the steady ones, with a second recording of the same car in another gear. `cargo run --profile bench --package measurements --bin listening`, minutes long.

#[expect(dead_code, reason = "the suite also looks at the turns")]
#[path = "../../suite/any_recording.rs"]
mod any_recording;

use any_recording::{Made, RATE, made, made_in};
use layshaft::sliced::Sliced;
use layshaft::sound::recording::{Candidate, Clip, Listening};
use layshaft::sound::together::{Expected, Stand, together};

/// How many of each kind are listened to.
const MANY: u64 = 100;

fn main() {
    for (what, is_steady, seconds, wanted) in [("steady, 20 s", true, 20.0, (92, 99)), ("sweeps, 12 s", false, 12.0, (88, 95))] {
        let (mut first, mut among_three) = (0, 0);
        for seed in 0..MANY {
            let made = made(seed + if is_steady { 1 } else { 10_001 }, is_steady, seconds, 10.0);
            let ranked = ranked(&made);
            let place = ranked.iter().position(|candidate| candidate.maker == made.guilty);
            first += u32::from(place == Some(0));
            among_three += u32::from(place.is_some_and(|place| place < 3));
        }
        println!("{what}: first {first} of {MANY} (trial {}), among the first three {among_three} (trial {})", wanted.0, wanted.1);
    }
    in_two_gears();
}

/// The parts as one recording ranks them; none where it tells nothing.
fn ranked(made: &Made) -> Vec<Candidate> {
    let Ok(clip) = Clip::new(&made.samples, RATE) else { return Vec::new() };
    let mut listening = Listening::new(clip, made.run.clone());
    listening.advance(u64::MAX);
    listening.found().map(|found| found.candidates).unwrap_or_default()
}

/// The places of driveshaft and joints, which no gear parts.
const NEVER_PART: [usize; 2] = [5, 6];

/// How often the guilty part is first by one steady recording and by two: of all, and of those that a gear can part.
fn in_two_gears() {
    let (mut first, mut both, mut can_part, mut of_those) = (0, 0, 0, 0);
    for seed in 1..=MANY {
        let recordings = [false, true].map(|again| made_in(seed, true, 20.0, 10.0, again));
        let heard = recordings.each_ref().map(ranked);
        let stands = recordings.each_ref().map(|made| made.idle.clone());
        let stands: Vec<Vec<Stand>> = heard
            .iter()
            .zip(stands)
            .map(|(heard, idle)| {
                let level = |part: usize| heard.iter().find(|candidate| candidate.maker == part).map_or(-30.0, |candidate| candidate.score);
                let expected = |idle: bool| if idle { Expected::Either } else { Expected::Heard };
                idle.into_iter().enumerate().map(|(part, idle)| Stand { level: level(part), expected: expected(idle) }).collect()
            })
            .collect();
        let guilty = recordings[0].guilty;
        let fits = together(&stands);
        let is_first = fits.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1)).is_some_and(|(part, _)| part == guilty);
        let named: Vec<usize> = heard[0].iter().map(|candidate| candidate.maker).take(2).collect();
        first += u32::from(named.first() == Some(&guilty));
        both += u32::from(is_first);
        let never = NEVER_PART.contains(&guilty) && named.iter().all(|part| NEVER_PART.contains(part));
        can_part += u32::from(!never);
        of_those += u32::from(!never && is_first);
    }
    println!(
        "two gears, steady: first by one {first} of {MANY}, by both {both}; of {can_part} that a gear can part {of_those} (trial 96 %)"
    );
}
