//! What a setup still needs before a figure can stand, in words.

use super::Analysis;
use crate::gearing::GearNumber;
use crate::job::{Field, InputId, SetupField};
use crate::problem::Severity;
use crate::sheet::Cell;

/// What is said where a figure hangs on teeth that are not counted.
pub const NEEDS_COUNTS: &str = "needs tooth counts";

/// Whether a gear of the setup is known by its printed ratio alone, so that what hangs on teeth cannot be said.
pub fn is_uncounted(analysis: &Analysis) -> bool {
    analysis.setup.gearbox.as_ref().is_some_and(|gearbox| !gearbox.is_counted())
}

/// A cell without a figure: of a box that is not counted it says so, of another what is still needed.
pub fn uncounted_or(analysis: &Analysis, needed: &str) -> Cell {
    if is_uncounted(analysis) { Cell::absent(NEEDS_COUNTS) } else { Cell::needed(needed) }
}

/// What a setup still needs before its road figures can stand.
pub fn needs(analysis: &Analysis) -> String {
    let setup = &analysis.setup;
    let is_teeth = |field| matches!(field, InputId::Text(Field::Setup(_, SetupField::Gear(_) | SetupField::Constant)));
    let stops = setup.problems.iter().any(|problem| problem.severity == Severity::Stop && is_teeth(problem.field));
    needed(analysis, stops, true)
}

/// What a setup still needs before the road figures of one gear can stand.
pub fn needs_in(analysis: &Analysis, gear: GearNumber) -> String {
    needed(analysis, analysis.setup.ratio(gear).is_none(), true)
}

/// What a setup still needs before the overall ratio of one gear can stand.
pub fn needs_behind(analysis: &Analysis, gear: GearNumber) -> String {
    needed(analysis, analysis.setup.ratio(gear).is_none(), false)
}

fn needed(analysis: &Analysis, gearbox: bool, tyre: bool) -> String {
    let setup = &analysis.setup;
    let wants = [
        (gearbox, "the gearbox"),
        (setup.final_drive.is_none(), "the ring and pinion"),
        (setup.stages.is_none(), "the extra stages"),
        (tyre && setup.tyre.is_none(), "the tyre"),
        (tyre && setup.tyre.is_some() && setup.rolling.is_none(), "the tread worn off"),
    ];
    let wants: Vec<&str> = wants.into_iter().filter(|(wanted, _)| *wanted).map(|(_, word)| word).collect();
    match wants.split_last() {
        None => "needs a figure above".into(),
        Some((last, [])) => format!("needs {last}"),
        Some((last, [first])) => format!("needs {first} and {last}"),
        Some((last, rest)) => format!("needs {}, and {last}", rest.join(", ")),
    }
}
