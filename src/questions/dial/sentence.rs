//! The answer of Speedometer in a sentence: what each setup reads wrong, and the gear to fit.

use super::answer::Speedo;
use super::rows::{fit, wants};
use crate::questions::alike::{say, together};
use crate::questions::missing;
use crate::questions::{Analysis, Source};
use crate::sheet::Said;
use crate::sheet::said::marks;
use crate::speedometer::{Verdict, Work};
use crate::units::number;

/// The sentence.
pub fn said(source: Source<'_>) -> Said {
    let clauses = together(source, |analysis| Clause::of(source, analysis));
    let answer = clauses.iter().map(|(clause, columns)| clause.say(columns)).collect::<Vec<_>>().join(" ");
    let lacking = missing::said(source, &wants(source), "what the dial reads");
    Said::of([answer, unsteady(source), one_speed(source), lacking.unwrap_or_default()])
}

/// What is said of one setup, without its name: `reads 4.3 % slow at a true 60 mph: fit the 26-tooth driven gear`.
pub fn of_setup(source: Source<'_>, analysis: &Analysis) -> Option<String> {
    Clause::of(source, analysis).map(|clause| format!("reads {}: {}", clause.reads, clause.then))
}

/// What a setup's dial reads, and what to do.
#[derive(Clone, Debug, PartialEq)]
struct Clause {
    reads: String,
    then: String,
}

impl Clause {
    fn of(source: Source<'_>, analysis: &Analysis) -> Option<Self> {
        let speedo = analysis.speedo();
        let check = source.conditions.speedo.check;
        let at = check.map_or_else(String::new, |check| format!(" at a true {}", source.show(&check, 0)));
        Some(Self { reads: format!("{}{at}", off(speedo.error(check)?)), then: then(source, speedo)? })
    }

    fn say(&self, columns: &[usize]) -> String {
        format!("{} {}: {}.", say(columns, "reads", "read"), self.reads, self.then)
    }
}

/// `6.0 % fast`, `4.3 % slow`, `true`.
fn off(error: f64) -> String {
    let share = number::show(100.0 * error.abs(), 1);
    match share.as_str() {
        "0.0" => "true".into(),
        share => format!("{share} % {}", if error > 0.0 { "fast" } else { "slow" }),
    }
}

fn then(source: Source<'_>, speedo: &Speedo) -> Option<String> {
    let (fitted, proposal) = speedo.fitted.zip(speedo.proposal)?;
    let gears = fit::in_words(fitted.train, &proposal);
    let gears = match proposal.work {
        Work::Fitted => "keep its gears".to_owned(),
        _ => format!("{gears}, and it reads {}", off(proposal.error)),
    };
    if !speedo.is_off_its_zero() {
        return Some(gears);
    }
    let amount = source.show(&speedo.offset, 1);
    Some(format!("set the needle first, it shows {amount} too much at every speed; then {gears}"))
}

/// Readings that lie on no line say nothing.
fn unsteady(source: Source<'_>) -> String {
    let columns = columns(source, Verdict::Unsteady);
    if columns.is_empty() { String::new() } else { format!("The road check of {} does not lie on a line: read it again.", marks(&columns)) }
}

/// One reading is enough for an answer; a second tells a share from an amount.
fn one_speed(source: Source<'_>) -> String {
    if columns(source, Verdict::OneSpeed).is_empty() {
        return String::new();
    }
    "A second reading at another speed would rule out a bent needle.".into()
}

fn columns(source: Source<'_>, verdict: Verdict) -> Vec<usize> {
    let has = |analysis: &Analysis| analysis.speedo().road_check.as_ref().is_some_and(|check| check.verdict == verdict);
    (0..).zip(source.setups).filter(|(_, analysis)| has(analysis)).map(|(column, _)| column).collect()
}
