//! How often the teeth in a made-up photograph are counted right, and how often a count is sure and wrong: three hundred pictures in five
//! levels; then those that were not sure, with a second picture of the gear turned.
//! `cargo run --profile bench --package measurements --bin counting`, minutes long.

#[path = "../../suite/any_photograph.rs"]
mod any_photograph;

use std::time::{Duration, Instant};

use any_photograph::{Level, Made, made, made_of};
use layshaft::counting::{Circle, Counted, Counting, Grey, together, verdict::Sureness};
use layshaft::sliced::Sliced;

/// The levels, how many pictures of each, and in how many of them the best guess was right in the trial by which the method was chosen.
const LEVELS: [(Level, u64, u64); 5] =
    [(Level::Easy, 70, 68), (Level::Medium, 100, 95), (Level::Hard, 80, 67), (Level::Bad, 20, 1), (Level::NoGear, 30, 0)];
/// No picture of these seeds was looked at when the limits were set.
const SEED: u64 = 900_000;

fn main() {
    let (mut sure_wrong, mut longest) = (0, Duration::ZERO);
    for (place, (level, many, trial)) in (0..).zip(LEVELS) {
        let (mut right, mut sure, mut settled, mut unsettled) = (0, 0, 0, 0);
        for seed in (0..many).map(|picture| SEED + 10_000 * place + picture) {
            let made = made(level, seed);
            let begun = Instant::now();
            let counted = counted(&made);
            longest = longest.max(begun.elapsed());
            let Some(counted) = counted else { continue };
            let is_right = made.teeth == Some(counted.teeth);
            right += u64::from(is_right);
            if counted.is_sure() {
                sure += u64::from(is_right);
                sure_wrong += wrong(is_right, level, seed, counted.teeth, &made);
                continue;
            }
            let (teeth, sureness) = match self::counted(&made_of(level, seed, true)) {
                Some(second) => together(&counted, &second),
                None => (counted.teeth, Sureness::NotSure(Vec::new())),
            };
            if sureness == Sureness::Sure {
                let is_right = made.teeth == Some(teeth);
                settled += u64::from(is_right);
                sure_wrong += wrong(is_right, level, seed, teeth, &made);
            } else {
                unsettled += 1;
            }
        }
        println!(
            "{level:?}: of {many} right {right} (trial {trial}), sure and right {sure}, settled by a second picture {settled}, left open {unsettled}"
        );
    }
    println!("sure and wrong: {sure_wrong}; the longest count took {longest:.1?}");
}

/// Says which picture was counted wrong without reserve.
fn wrong(is_right: bool, level: Level, seed: u64, teeth: usize, made: &Made) -> u64 {
    if !is_right {
        println!("sure and wrong: {level:?} {seed}, {}, {:.0} px a tooth: {teeth}", made.what, made.pitch);
    }
    u64::from(!is_right)
}

fn counted(made: &Made) -> Option<Counted> {
    let (x, y, radius) = made.placed;
    let mut counting = Counting::new(&Grey::new(made.width, made.values.clone()), Circle { x, y, radius }).ok()?;
    counting.advance(u64::MAX);
    counting.found()?.ok()
}
