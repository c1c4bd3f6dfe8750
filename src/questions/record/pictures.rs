//! The picture of Build record: how far each part of the work is.

use super::read::{BuildStep, Typed};
use crate::chart::bars::{Bar, Bars};
use crate::chart::lines::Measure;
use crate::chart::palette::Hue;
use crate::questions::Source;

/// A bar for each part of the list: the share of its steps that are done; in the colour of a stop where a reading is out of its range.
pub fn progress(source: Source<'_>) -> Option<Bars> {
    let typed = Typed::of(source.job);
    let mut parts: Vec<(&str, Vec<&BuildStep>)> = Vec::new();
    for step in &typed.steps {
        match parts.last_mut().filter(|(under, _)| *under == step.under) {
            Some((_, steps)) => steps.push(step),
            None => parts.push((&step.under, vec![step])),
        }
    }
    let bar = |(under, steps): &(&str, Vec<&BuildStep>)| {
        let open = steps.iter().filter(|step| step.is_open()).count();
        let is_outside = steps.iter().any(|step| step.is_outside() && !step.is_answered());
        let hue = if is_outside {
            Hue::Stop
        } else if open == 0 {
            Hue::Ok
        } else {
            Hue::Dye
        };
        let done = steps.len() - open;
        let name = if under.is_empty() { "Steps" } else { under };
        Bar { hue, name: name.into(), value: super::rows::percent(done, steps.len()), note: format!("({done} of {})", steps.len()) }
    };
    let measure = Measure { name: "steps done".into(), unit: "%".into(), decimals: 0, ends: Some((0.0, 100.0)) };
    let bars: Vec<Bar> = parts.iter().map(bar).collect();
    (!bars.is_empty()).then(|| Bars { title: "How far the build is".into(), measure, bars, zone: None, focus: None })
}
