//! The answer of Driveline in a sentence: which shaft turns too near its critical speed, what would do instead, and how its joints work.

use super::answer::Instead;
use super::rows::{joints, pieces, why};
use crate::questions::alike::{listed, together};
use crate::questions::missing::{self, Want};
use crate::questions::{Analysis, Source};
use crate::sheet::Said;
use crate::sheet::said::marks;
use crate::units::common::show_rpm;
use crate::units::{Length, Measured, System, number, show};

/// What a setup needs before its shaft can be judged.
const WANTS: [Want<'static>; 5] = [
    ("the ring and pinion", &|analysis| analysis.setup.final_drive.is_none()),
    ("the extra stages", &|analysis| analysis.setup.stages.is_none()),
    ("the tyre", &|analysis| analysis.setup.rolling.is_none()),
    ("the shaft’s length", &|analysis| analysis.setup.shaft.lengths.is_empty()),
    ("its tube’s outside and wall", &|analysis| analysis.setup.shaft.tube.is_none()),
];

/// What every shaft is said to need.
const SHOP: &str = "A shaft that lets go can kill: have it made and balanced by a shop that does shafts.";

/// The sentence.
pub fn said(source: Source<'_>) -> Said {
    let clauses = together(source, |analysis| {
        let parts = [judged(source, analysis), joints::said(analysis)].into_iter().flatten();
        let (parts, overs): (Vec<String>, Vec<bool>) = parts.unzip();
        (!parts.is_empty()).then(|| (parts.join(" "), overs.contains(&true)))
    });
    let is_over = clauses.iter().any(|((_, is_over), _)| *is_over);
    let judged = clauses.iter().map(|((clause, _), columns)| format!("{}: {clause}", marks(columns)));
    let lacking = missing::said(source, &WANTS, "the shaft’s critical speed").unwrap_or_default();
    Said::of(judged.chain([lacking, if is_over { SHOP.to_owned() } else { String::new() }]))
}

/// `the shaft turns 5,750 rpm at 110 mph, past the 5,448 rpm at which it whips. …`, and whether it turns too fast.
fn judged(source: Source<'_>, analysis: &Analysis) -> Option<(String, bool)> {
    let driveline = analysis.driveline();
    let (turning, (critical, _)) = (driveline.turning?, driveline.critical?);
    let share = driveline.share()?;
    let margin = source.conditions.driveline.margin?.share();
    let turns = format!("the shaft turns {} rpm {}", show_rpm(turning.shaft), why(source, &turning));
    let critical = show_rpm(critical);
    let percent = number::show(100.0 * share, 0);
    let allowed = number::show(100.0 * margin, 0);
    let clause = if share >= 1.0 {
        format!("{turns}, past the {critical} rpm at which it whips.")
    } else if share > margin {
        format!("{turns}, {percent} % of the {critical} rpm at which it whips and over the {allowed} % allowed.")
    } else {
        return Some((format!("{turns}, {percent} % of the {critical} rpm at which it whips; {allowed} % is allowed."), false));
    };
    let would = driveline.instead.map(|instead| would_do(source, analysis, &instead)).unwrap_or_default();
    Some((format!("{clause}{would}"), true))
}

/// ` A piece of up to 49.1 in or an outside of at least 4.4 in would do, or two pieces …`.
fn would_do(source: Source<'_>, analysis: &Analysis, instead: &Instead) -> String {
    let decimals = usize::from(source.reader.units == System::Inch);
    let shown = |length: &Length| show(length, Length::usual(source.reader.units), decimals);
    let mut ways = vec![format!("at most {} between the joints", shown(&instead.longest))];
    ways.extend(instead.outside.map(|outside| format!("a tube of {} outside", shown(&outside))));
    ways.extend(pieces(instead, analysis).map(|words| words.trim_start_matches("or ").to_owned()));
    let ways = listed(&ways).replacen(" and ", " or ", 1);
    format!(" It would take {ways}.")
}
