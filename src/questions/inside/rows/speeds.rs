//! Speeds of shafts and gears, downshifts, and how often teeth meet.

use super::TRAIN;
use crate::gearing::Layout;
use crate::gearing::part::{Part, Shaft};
use crate::gearing::speeds::meshes::Meeting;
use crate::gearing::speeds::peaks::Peak;
use crate::gearing::speeds::{Arrangement, Selected, Turning};
use crate::gearing::teeth::decimal;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::inside::answer::share_text;
use crate::questions::needs::{NEEDS_COUNTS, is_uncounted, uncounted_or};
use crate::sheet::{Cell, Figure, Piece, Worked};
use crate::units::common::{in_rpm, show_rpm, wheel_speed};
use crate::units::{AngularVelocity, Frequency, number, unit};

pub(super) fn rpm_figure(key: impl Into<String>, speed: AngularVelocity) -> Figure {
    Figure::number(key, in_rpm(speed).abs(), 0).in_unit("rpm")
}

/// What the countershaft does in the selected gear, and which way round.
pub(super) fn countershaft_cell(analysis: &Analysis) -> Cell {
    let inside = &analysis.inside();
    if analysis.setup.layout == Layout::TwoShaft {
        return output_cell(analysis);
    }
    let (Some(turning), Some(at), Some(speed)) = (&inside.turning, inside.at, inside.countershaft()) else { return missing(analysis) };
    let share = share_text(turning, Part::Shaft(Shaft::Countershaft)).unwrap_or(0.0);
    let worked = Worked::of(in_rpm(at.0), 0).times(share.abs(), 4);
    let figure =
        rpm_figure("inside.countershaft_rpm", speed).big().worked("countershaft = input × share by the pairs that drive it", worked, TRAIN);
    let output = output_figure(analysis, at).small();
    Cell::line([figure.into(), Piece::words("against the input")]).and([output.into(), Piece::words(way(at.1, "at the output"))])
}

fn output_cell(analysis: &Analysis) -> Cell {
    let Some(at) = analysis.inside().at else { return missing(analysis) };
    Cell::line([output_figure(analysis, at).big().into(), Piece::words(way(at.1, "at the output shaft; no countershaft"))])
}

/// The output's speed, from the input's by the ratio.
fn output_figure(analysis: &Analysis, at: (AngularVelocity, AngularVelocity)) -> Figure {
    let figure = rpm_figure("inside.output_rpm", at.1);
    let ratio = analysis.inside().turning.as_ref().and_then(|turning| turning.ratio);
    let formula = "output = input ÷ ratio of the gear";
    match ratio {
        Some(ratio) => figure.worked(formula, Worked::of(in_rpm(at.0).abs(), 0).over(decimal(ratio).abs(), 4), TRAIN),
        None => figure.by(formula, "nothing is engaged", TRAIN),
    }
}

/// `at the output`, and against which direction where it is the other one.
fn way(speed: AngularVelocity, what: &str) -> String {
    if in_rpm(speed) < 0.0 { format!("{what}, turning against the input") } else { what.to_owned() }
}

pub(super) fn missing(analysis: &Analysis) -> Cell {
    if analysis.setup.gearbox.is_none() {
        Cell::needed("needs the whole gearbox")
    } else {
        uncounted_or(analysis, "no such gear, or no input rpm")
    }
}

/// The most the countershaft turns in any forward gear at the shift rpm.
pub(super) fn fastest_countershaft(analysis: &Analysis) -> Option<String> {
    Some(number::show(in_rpm(analysis.inside().fastest_countershaft.as_ref()?.speed).abs(), 0))
}

/// The fastest countershaft and the fastest idle gear at the shift rpm.
pub(super) fn fastest_cell(analysis: &Analysis) -> Cell {
    let inside = &analysis.inside();
    let line = |key: &str, peak: &Peak, [formula, what]: [String; 2]| {
        let filled = format!("{} rpm in {}, the greatest of all forward gears", number::show(in_rpm(peak.speed).abs(), 0), peak.gear);
        vec![Piece::from(rpm_figure(key, peak.speed).by(formula, filled, TRAIN)), Piece::words(what)]
    };
    let mut cell = Cell::default();
    if let Some(peak) = &inside.fastest_countershaft {
        let words = if analysis.setup.layout == Layout::OutputReduced {
            format!("countershaft, in {}", peak.gear)
        } else {
            "countershaft, every gear".into()
        };
        cell =
            cell.and(line("inside.countershaft_most_rpm", peak, ["countershaft = input × share by the pairs that drive it".into(), words]));
    }
    if let Some(peak) = &inside.fastest_idle {
        let words = format!("{} on its shaft, in {}", short_name(peak.part), peak.gear);
        cell = cell.and(line("inside.idle_most_rpm", peak, ["speed of the gear − speed of its shaft".into(), words]));
    }
    if cell.lines.is_empty() { missing(analysis) } else { cell }
}

/// Every loose gear and how fast it turns on its shaft.
pub(super) fn idle_cell(analysis: &Analysis) -> Cell {
    let inside = &analysis.inside();
    let (Some(turning), Some(at)) = (&inside.turning, inside.at) else { return missing(analysis) };
    let loose = turning.parts.iter().filter(|turns| turns.loose && turns.teeth.is_some());
    let cell = loose.fold(Cell::default(), |cell, turns| {
        let key = format!("inside.idle_{}_rpm", part_key(turns.part));
        let slip = turns.slip_at(at);
        let words = if in_rpm(slip).abs() < 0.5 {
            "locked to its shaft".to_owned()
        } else {
            format!("turns {} rpm", number::show(in_rpm(turns.speed_at(at)).abs(), 0))
        };
        let (gear, shaft) = (in_rpm(turns.speed_at(at)), in_rpm(turns.speed_at(at) - slip));
        let filled = format!("{} − {} = {} rpm", number::show(gear, 0), number::show(shaft, 0), show_rpm(slip));
        let figure =
            rpm_figure(key, slip).small().by("speed of the gear − speed of its shaft, against the input where negative", filled, TRAIN);
        cell.and([Piece::words(short_name(turns.part)), figure.into(), Piece::words(words)])
    });
    if cell.lines.is_empty() { Cell::absent(if is_uncounted(analysis) { NEEDS_COUNTS } else { "none" }) } else { cell }
}

fn short_name(part: Part) -> String {
    match part {
        Part::Driver(gear) | Part::Driven(gear) => gear.to_string(),
        Part::ReverseDriver | Part::ReverseDriven => "reverse".into(),
        Part::IdlerEntry | Part::IdlerExit => "idler".into(),
        _ => "constant".into(),
    }
}

fn part_key(part: Part) -> String {
    match part {
        Part::Driver(gear) | Part::Driven(gear) => format!("gear_{}", gear.number()),
        other => short_name(other),
    }
}

/// What turns when the car rolls in neutral with the clutch out and the input at rest.
pub(super) fn neutral_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let (Some(gearbox), Some(cruise), Some(circumference), Some(behind)) =
        (&analysis.setup.gearbox, source.conditions.cruise, analysis.road().circumference, analysis.setup.behind_gearbox())
    else {
        return Cell::needed(crate::questions::needs(analysis));
    };
    let output = wheel_speed(cruise, circumference) * decimal(behind);
    let Some(turning) = Turning::new(gearbox, &Arrangement::usual(gearbox), Selected::Neutral) else { return missing(analysis) };
    let at = (AngularVelocity::default(), output);
    // Among counted and uncounted gears the fastest cannot be told.
    let fastest =
        turning.parts.iter().filter(|turns| turns.loose && gearbox.is_counted()).map(|turns| (turns.part, in_rpm(turns.slip_at(at)).abs()));
    let figure = rpm_figure("inside.coasting_output_rpm", output);
    let worked = Worked::of(in_rpm(output) / decimal(behind), 1).times(decimal(behind), 4);
    let figure = figure.worked("output = turns of the wheels × all behind the gearbox", worked, TRAIN);
    let cell = Cell::line([figure.into(), Piece::words("at the output, input at rest")]);
    cell.and_maybe(fastest.max_by(|(_, a), (_, b)| a.total_cmp(b)).map(|(part, speed)| {
        let figure = Figure::number("inside.coasting_idle_rpm", speed, 0).small().in_unit("rpm");
        let filled = format!("{} of output {} rpm", figure.text(), show_rpm(output));
        let figure = figure.by("speed of the gear − speed of its shaft; the fastest of all", filled, TRAIN);
        [Piece::words(short_name(part)), figure.into(), Piece::words("on its shaft")]
    }))
}

/// How often the teeth of each pair meet, the pairs under load first.
pub(super) fn mesh_cell(analysis: &Analysis) -> Cell {
    let meetings = &analysis.inside().meetings;
    if meetings.is_empty() {
        return missing(analysis);
    }
    let hertz = &unit::HERTZ;
    let (loaded, idle): (Vec<&Meeting>, Vec<&Meeting>) = meetings.iter().partition(|meeting| meeting.in_path);
    let cell = loaded.into_iter().fold(Cell::default(), |cell, meeting| cell.and(meeting_line(analysis, meeting, "inside.mesh")));
    let rest = idle.iter().map(|meeting| {
        format!("{} {}", pair_name(analysis.setup.layout, meeting.driver), number::show((hertz.take)(&meeting.frequency), 0))
    });
    let rest = rest.collect::<Vec<_>>().join(", ");
    if rest.is_empty() { cell } else { cell.and([Piece::words(format!("unloaded: {rest} Hz"))]) }
}

/// How often the teeth under load meet at the cruise speed in top gear, those of the final drive last.
pub(super) fn cruise_mesh_cell(analysis: &Analysis) -> Cell {
    let inside = &analysis.inside();
    let mut cell = inside
        .cruise_meetings
        .iter()
        .fold(Cell::default(), |cell, meeting| cell.and(meeting_line(analysis, meeting, "inside.cruise_mesh")));
    if let Some((mesh, frequency)) = &inside.cruise_final {
        let figure = frequency_figure("inside.cruise_mesh_final", *frequency, mesh.driver.count());
        cell = cell.and([Piece::words("ring and pinion"), figure.into()]);
    }
    if !cell.lines.is_empty() {
        return cell;
    }
    if is_uncounted(analysis) {
        return Cell::absent(NEEDS_COUNTS);
    }
    let rolls = analysis.road().cruise_in_top().is_some();
    Cell::absent(if rolls { "direct, and the teeth of the final drive are not counted".into() } else { crate::questions::needs(analysis) })
}

fn meeting_line(analysis: &Analysis, meeting: &Meeting, key: &str) -> Vec<Piece> {
    let name = pair_name(analysis.setup.layout, meeting.driver);
    let figure = frequency_figure(&format!("{key}_{}", part_key(meeting.driver)), meeting.frequency, meeting.mesh.driver.count());
    vec![Piece::words(name), figure.into()]
}

/// A mesh frequency; the driving gear's speed is told back from it.
fn frequency_figure(key: &str, frequency: Frequency, teeth: u16) -> Figure {
    let hertz = &unit::HERTZ;
    let a_minute = (hertz.take)(&frequency) * 60.0 / f64::from(teeth);
    let figure = Figure::quantity(key, &frequency, hertz, 0);
    let worked = Worked::of(f64::from(teeth), 0).in_unit("teeth").times(a_minute, 0).in_unit("rpm").over(60.0, 0);
    figure.worked("mesh frequency = teeth × turns a second", worked, TRAIN)
}

pub(super) fn pair_name(layout: Layout, driver: Part) -> String {
    match driver {
        Part::ConstantDriver => layout.constant_pair().into(),
        other => format!("{} pair", short_name(other)),
    }
}
