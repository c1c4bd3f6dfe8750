//! How often the guilty part of a made-up recording is found: a hundred steady ones and a hundred sweeps, beside the rates of the trial
//! by which the method was chosen. `cargo run --profile bench --package measurements --bin listening`, minutes long.

#[expect(dead_code, reason = "the suite also looks at the turns")]
#[path = "../../suite/any_recording.rs"]
mod any_recording;

use any_recording::{RATE, made};
use layshaft::sliced::Sliced;
use layshaft::sound::recording::{Clip, Listening};

/// How many of each kind are listened to.
const MANY: u64 = 100;

fn main() {
    for (what, is_steady, seconds, wanted) in [("steady, 20 s", true, 20.0, (92, 99)), ("sweeps, 12 s", false, 12.0, (88, 95))] {
        let (mut first, mut among_three) = (0, 0);
        for seed in 0..MANY {
            let made = made(seed + if is_steady { 1 } else { 10_001 }, is_steady, seconds, 10.0);
            let Ok(clip) = Clip::new(&made.samples, RATE) else { continue };
            let mut listening = Listening::new(clip, made.run.clone());
            listening.advance(u64::MAX);
            let place = listening.found().and_then(|found| found.candidates.iter().position(|candidate| candidate.maker == made.guilty));
            first += u32::from(place == Some(0));
            among_three += u32::from(place.is_some_and(|place| place < 3));
        }
        println!("{what}: first {first} of {MANY} (trial {}), among the first three {among_three} (trial {})", wanted.0, wanted.1);
    }
}
