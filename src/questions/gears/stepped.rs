//! The steps of a box with switched stages in a sentence: what the overdrive does between the gears.

use crate::gearing::teeth::decimal;
use crate::gearing::{StageKind, Step};
use crate::questions::alike::{listed, rounded};
use crate::questions::{Analysis, Source};
use crate::sheet::said::mark;
use crate::units::number;

/// The most setups of which it is said; more are told apart by the ladder.
const MOST: usize = 2;

/// `Counting the overdrive, A drops 36, 33, 22, 7 and 22 %: 3rd overdrive lies between 3rd and 4th.`
pub(super) fn said(source: Source<'_>) -> String {
    let each: Vec<String> = (0..).zip(source.setups).filter_map(|(column, analysis)| of(column, analysis)).collect();
    if each.len() <= MOST { each.join(" ") } else { String::new() }
}

fn of(column: usize, analysis: &Analysis) -> Option<String> {
    let steps: Vec<&Step> = analysis.setup.driven().collect();
    if steps.iter().all(|step| step.is_at_rest()) {
        return None;
    }
    let ratios = steps.iter().map(|step| step.ratio.map(decimal)).collect::<Option<Vec<f64>>>()?;
    let drop = |low: f64, high: f64| number::show(rounded(100.0 * (1.0 - high / low), 0), 0);
    let drops: Vec<String> =
        ratios.windows(2).filter_map(|pair| if let [low, high] = pair { Some(drop(*low, *high)) } else { None }).collect();
    let lies = between(&steps).map_or_else(String::new, |lies| format!(": {lies}"));
    Some(format!("Counting {}, {} drops {} %{lies}.", counted(analysis), mark(column), listed(&drops)))
}

/// What is switched.
fn counted(analysis: &Analysis) -> &'static str {
    let stages = analysis.setup.stages.as_deref().unwrap_or_default();
    let mut switched = stages.iter().filter(|stage| stage.changes() && stage.shifts_on_the_move());
    match (switched.next(), switched.next()) {
        (Some(stage), None) if stage.called().0 == "overdrive" => "the overdrive",
        (Some(stage), None) if stage.kind == Some(StageKind::TwoSpeedAxle) => "both ratios of the axle",
        _ => "both ranges",
    }
}

/// The one step with a stage in that lies between two gears without; nothing where none does, or several.
fn between(steps: &[&Step]) -> Option<String> {
    let lie = steps.windows(3).filter_map(|three| match three {
        [below, step, above] if below.is_at_rest() && !step.is_at_rest() && above.is_at_rest() => {
            Some(format!("{} lies between {} and {}", step.name(), below.gear, above.gear))
        }
        _ => None,
    });
    let lie: Vec<String> = lie.collect();
    if let [one] = lie.as_slice() { Some(one.clone()) } else { None }
}
