//! The pictures of Bearings and torque: the patterns that paint shows on the drive and on the coast side of a ring gear's tooth, to be
//! pressed.

use crate::chart::pattern::{Flank, Patterns};
use crate::fits::ring_pinion::Pattern;
use crate::job::choice::Options as _;
use crate::job::document::Blank;
use crate::job::{Chosen, JobChoice};
use crate::questions::Source;

/// The patterns of the drive side.
pub fn drive(source: Source<'_>) -> Option<Patterns> {
    patterns(source, "drive", &source.job.bench.setting.pattern_drive, true)
}

/// The patterns of the coast side, which is looked at from the other end of the tooth.
pub fn coast(source: Source<'_>) -> Option<Patterns> {
    patterns(source, "coast", &source.job.bench.setting.pattern_coast, false)
}

/// What pressing the patterns of the drive side chooses.
pub fn press_drive(_: Source<'_>, _: Option<usize>, x: f64) -> Option<(JobChoice, String)> {
    pressed(JobChoice::PatternDrive, x)
}

/// What pressing the patterns of the coast side chooses.
pub fn press_coast(_: Source<'_>, _: Option<usize>, x: f64) -> Option<(JobChoice, String)> {
    pressed(JobChoice::PatternCoast, x)
}

fn pressed(choice: JobChoice, x: f64) -> Option<(JobChoice, String)> {
    let (_, (word, _)) = (1_u32..).zip(Pattern::LISTED).find(|(at, _)| x < f64::from(*at))?;
    Some((choice, (*word).to_owned()))
}

/// All patterns, the chosen one framed; none while other things than ring and pinion are being set.
fn patterns(source: Source<'_>, side: &str, chosen: &Chosen<Pattern>, toe_is_left: bool) -> Option<Patterns> {
    let setting = &source.job.bench.setting;
    if !setting.is_blank() && setting.has_no_ring_and_pinion() {
        return None;
    }
    let flank = |pattern: Pattern| Flank {
        name: pattern.says().into(),
        means: pattern.what_to_do().into(),
        middle: pattern.middle(),
        is_chosen: chosen.value() == Some(pattern),
    };
    Some(Patterns {
        title: format!("Pattern on the {side} side: press the one the paint shows"),
        flanks: Pattern::VALUES.iter().map(|pattern| flank(*pattern)).collect(),
        toe_is_left,
    })
}
