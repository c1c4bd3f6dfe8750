//! The answer in a sentence or two: the shim to fit, how it turns, what is out.

use super::answer::adds_up;
use super::read::Set;
use super::rows::{across, towards, turning_unit};
use crate::fits::fastener::Fastener;
use crate::fits::ring_pinion::asked;
use crate::questions::endplay::rows::said;
use crate::questions::{Source, Station, warmth};
use crate::sheet::Said;
use crate::units::common::millimetres;
use crate::units::{Length, show};

/// How many sentences are said.
const MOST: usize = 3;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let first = sentences(source).into_iter().next();
    Station::at_bench(first.map_or_else(|| "shim, turning torque, backlash, bolts".into(), |first| first.trim_end_matches('.').to_owned()))
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    Said::of(sentences(source).into_iter().take(MOST))
}

fn sentences(source: Source<'_>) -> Vec<String> {
    let set = Set::of(&source.job.bench);
    let mut said_of: Vec<String> = Vec::new();
    said_of.extend(set.shims().map(|[least, greatest]| format!("Fit a shim of {}.", said(source, (least + greatest) / 2.0))));
    said_of.extend(hot(source, &set));
    said_of.extend(turning(source, &set));
    said_of.extend(set.depth_shim().map(|shim| format!("Pinion depth shim {}.", said(source, shim))));
    said_of.extend(super::answer::mean(&set.backlash()).map(|lash| format!("Backlash at the tooth {}.", said(source, lash))));
    said_of.extend(pattern(source));
    said_of.extend(bore(source, &set));
    said_of.extend(set.fasteners.first().map(|fastener| bolt(source, fastener)));
    said_of
}

/// What the pattern asks for.
fn pattern(source: Source<'_>) -> Option<String> {
    let setting = &source.job.bench.setting;
    asked(setting.pattern_drive.value(), setting.pattern_coast.value()).map(|asks| format!("By the pattern: {asks}."))
}

fn hot(source: Source<'_>, set: &Set) -> Option<String> {
    let [_, working] = set.temperatures;
    let at = warmth::said(source, working);
    let hot = set.hot()?;
    Some(if hot < Length::default() {
        format!("At {at} it has {} of preload.", said(source, -hot))
    } else {
        format!("At {at} it has {} of play.", said(source, hot))
    })
}

fn turning(source: Source<'_>, set: &Set) -> Option<String> {
    let shown = show(&set.turning()?, turning_unit(source), 1);
    Some(match set.turns_right() {
        Some(true) => format!("It takes {shown} to turn, as wanted."),
        Some(false) => {
            format!("It takes {shown} to turn; {} is wanted.", set.torque_wanted().map(|wanted| wanted.said()).unwrap_or_default())
        }
        None => format!("It takes {shown} to turn, the seal included."),
    })
}

fn bore(source: Source<'_>, set: &Set) -> Option<String> {
    let bore = set.bore.as_ref()?;
    if !adds_up(bore) {
        return Some("The clock readings of the bore do not add up: read them again.".into());
    }
    let hour = bore.hour().map_or_else(String::new, |hour| format!(", towards {}", towards(across(hour))));
    let is_inside = bore.run_out() <= millimetres(super::answer::BORE_RUN_OUT_MM);
    Some(if is_inside {
        "The clutch housing is central enough.".into()
    } else {
        format!("Move the clutch housing {}{hour}.", said(source, bore.off()))
    })
}

fn bolt(source: Source<'_>, fastener: &Fastener) -> String {
    let torque = source.show(&fastener.torque(), 0);
    format!("{}: {torque}.", fastener.thread.name)
}
