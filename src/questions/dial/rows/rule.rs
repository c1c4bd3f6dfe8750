//! The chosen rule: where it stands, what it says at its own test speeds, and of the odometer.

use super::{READS, distance, missing};
use crate::job::choice::Picked;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::dial::answer::Tested;
use crate::sheet::{Cell, Figure, Piece, Words};
use crate::speedometer::law::{self, Band, Tests};
use crate::speedometer::{Judgement, Speedometer};
use crate::units::{Length, Measured, System, Velocity, number, show};

/// The rule that is chosen, or the usual one of the reader's country, told by words and units; none where a file names one that is not
/// known here.
pub fn band(source: Source<'_>) -> Option<&'static Band> {
    match source.conditions.speedo.law.picked() {
        Picked::One(law) => Some(law.0),
        Picked::Nothing if (source.reader.words, source.reader.units) == (Words::Us, System::Inch) => Some(law::usual_in_the_us()),
        Picked::Nothing => Some(law::usual()),
        Picked::Unknown(_) => None,
    }
}

/// What the rule is called that is judged by.
pub(super) fn name(source: Source<'_>) -> &'static str {
    band(source).map_or("a rule", |band| band.name)
}

/// Which vehicles the rule is for, whether it is in force for cars, and where it stands.
pub fn about(band: &Band) -> String {
    let force = if band.in_force_for_cars { "; in force for cars" } else { "" };
    format!("{}: {}{force}. From {} ({}). Local rules decide.", band.name, band.scope, band.source, band.mark.words())
}

/// What stands where a file names a rule that is not known here.
pub(super) const NO_RULE: &str = "not judged: choose a rule";

/// What the dial does at the rule's own test speeds, each inside or outside and by how much.
pub(super) fn tests_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(fitted) = analysis.speedo().fitted else { return Cell::needed(missing(source, analysis)) };
    let Some(band) = band(source) else { return Cell::absent(NO_RULE) };
    let tested = tested(source, analysis, band);
    if tested.is_empty() {
        let unnamed = band.tests == Tests::Unnamed;
        return Cell::absent(if unnamed {
            "none known: judged at the check speed alone"
        } else {
            "needs the shift rpm or the car’s top speed"
        });
    }
    let mut cell = Cell::default();
    for (at, tested) in tested.iter().enumerate() {
        cell = cell.and(test_line(source, band, (at + 1, tested), &fitted));
    }
    if let (Tests::LikeR39, Some(fastest)) = (band.tests, analysis.tyres().fastest) {
        let unit = Velocity::usual(source.reader.units);
        cell = cell.and([Piece::words(format!("test speeds for a car that reaches {}", show(&fastest.speed, unit, 0)))]);
    }
    cell.and_maybe(only_here(source, analysis, (band, &tested)))
}

/// The readings at the rule's test speeds, of a car that gets as fast as this one.
fn tested(source: Source<'_>, analysis: &Analysis, band: &Band) -> Vec<Tested> {
    let fastest = analysis.tyres().fastest.map(|fastest| fastest.speed);
    analysis.speedo().tested(band, fastest, source.conditions.speedo.units)
}

/// A caution where the rule is broken at a test speed but not at the check speed, which has said so already.
fn only_here(source: Source<'_>, analysis: &Analysis, (band, tested): (&Band, &[Tested])) -> Option<Piece> {
    let outside: Vec<String> = tested.iter().filter(|tested| tested.judgement.is_clearly_outside()).map(named).collect();
    let text = format!("outside {} at {}; local rules decide", band.name, outside.join(" and "));
    (!outside.is_empty() && !is_said(source, analysis, band)).then(|| Piece::caution(text))
}

/// Whether the reading at the check speed is outside the rule, which its own row says.
fn is_said(source: Source<'_>, analysis: &Analysis, band: &Band) -> bool {
    let shared = &source.conditions.speedo;
    let at_check = shared.check.and_then(|check| analysis.speedo().judgement(band, check, shared.units));
    at_check.is_some_and(Judgement::is_clearly_outside)
}

/// The speed as the rule names it: `40 km/h`.
fn named(tested: &Tested) -> String {
    show(&tested.test.speed, tested.test.unit, 0)
}

/// The speed as it is read, and as the rule names it where that is another unit: `24.9 mph (40 km/h)`.
fn read_as(source: Source<'_>, tested: &Tested) -> String {
    let unit = Velocity::usual(source.reader.units);
    if unit == tested.test.unit { named(tested) } else { format!("{} ({})", show(&tested.test.speed, unit, 1), named(tested)) }
}

/// `24.9 mph (40 km/h) on the dial: 26.0 mph true, 1.1 mph too low`.
fn test_line(source: Source<'_>, band: &Band, (place, tested): (usize, &Tested), fitted: &Speedometer) -> Vec<Piece> {
    let unit = Velocity::usual(source.reader.units);
    let (reads, key) = (number::show(fitted.reads(), 4), format!("speedometer.test_{place}"));
    let said = judged(source, tested.judgement);
    let rule = tested.test.unit;
    if tested.test.is_shown {
        let (from, to) = band.true_range(tested.shown, source.conditions.speedo.units);
        let (from, to) = (number::show((rule.take)(&from), 1), show(&to, rule, 1));
        let filled = format!("{} ÷ {reads} = {}; the rule allows a true {from} to {to}", named(tested), show(&tested.truth, rule, 1));
        let figure = Figure::quantity(&format!("{key}_true"), &tested.truth, unit, 1);
        let figure = figure.by("true speed = speed on the dial ÷ what it reads at a true 1", filled, READS);
        return vec![
            Piece::words(format!("{} on the dial:", read_as(source, tested))),
            figure.into(),
            Piece::words(format!("true, {said}")),
        ];
    }
    let filled = format!("{} × {reads} = {}", named(tested), show(&tested.shown, rule, 1));
    let figure = Figure::quantity(&format!("{key}_reads"), &tested.shown, unit, 1);
    let figure = figure.by("reading = true speed × what it reads at a true 1", filled, READS);
    vec![Piece::words(format!("at a true {}:", read_as(source, tested))), figure.into(), Piece::words(format!("on the dial, {said}"))]
}

/// Inside or outside, and by how much.
fn judged(source: Source<'_>, judgement: Judgement) -> String {
    let by = |speed: Velocity| source.show(&speed, 1);
    match judgement {
        Judgement::Inside { above_least, below_greatest } => format!("inside by {}", by(above_least.min(below_greatest))),
        Judgement::TooLow(low) => format!("reads {} too low", by(low)),
        Judgement::TooHigh(high) => format!("reads {} too high", by(high)),
        Judgement::NotCovered => "not covered".into(),
    }
}

/// What the odometer adds over 100 miles or kilometres, and what the rule says of that.
pub(super) fn odometer_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(fitted) = analysis.speedo().fitted else { return Cell::needed(missing(source, analysis)) };
    let unit = distance(source);
    let way: Length = (unit.make)(100.0);
    let counted = fitted.odometer(way);
    let filled = format!("100 × {} = {}", number::show(fitted.reads(), 4), number::show((unit.take)(&counted), 1));
    let figure = Figure::quantity("speedometer.odometer_over_100", &counted, unit, 1);
    let cell = Cell::line([figure.by("adds = true way × reading ÷ true speed", filled, READS).into()]);
    let Some((band, rule)) = band(source).and_then(|band| Some((band, law::odometer_rule(band)?))) else { return cell };
    // 4 and 2.5, as the rules have it.
    let share = (1_000.0 * rule.share).round() / 10.0;
    let allowed = format!("{} % either way ({}, {})", share, rule.source, rule.mark.words());
    if rule.allows(counted, way) {
        return cell.and([Piece::good(format!("inside {}: {allowed}; local rules decide", rule.name))]);
    }
    // The dial and the odometer hang on the same cable: one fault, one caution.
    let outside = format!("outside {}: {allowed}; local rules decide", rule.name);
    cell.and([if is_said(source, analysis, band) { Piece::words(outside) } else { Piece::caution(outside) }])
}
