//! Speeds of shafts and gears, downshifts, and how often teeth meet.

use super::super::{Cell, Figure, Piece, Source, ordinal};
use super::TRAIN;
use crate::analysis::Analysis;
use crate::analysis::inside::share_text;
use crate::gearing::Layout;
use crate::gearing::part::{Part, Shaft};
use crate::gearing::speeds::meshes::Meeting;
use crate::gearing::speeds::peaks::Peak;
use crate::gearing::speeds::{Arrangement, Selected, Turning};
use crate::gearing::teeth::decimal;
use crate::problem::Explain;
use crate::units::common::{in_rpm, unit, wheel_speed};
use crate::units::{AngularVelocity, Frequency, number};

fn rpm_figure(key: impl Into<String>, speed: AngularVelocity) -> Figure {
    let mut figure = Figure::number(key, in_rpm(speed).abs(), 0);
    figure.unit = "rpm".into();
    figure
}

/// What the countershaft does in the selected gear, and which way round.
pub(super) fn countershaft_cell(analysis: &Analysis) -> Cell {
    let inside = &analysis.inside;
    if analysis.setup.layout == Layout::TwoShaft {
        return output_cell(analysis);
    }
    let (Some(turning), Some(at), Some(speed)) = (&inside.turning, inside.at, inside.countershaft()) else { return missing(analysis) };
    let share = share_text(turning, Part::Shaft(Shaft::Countershaft)).unwrap_or(0.0);
    let filled =
        format!("{} × {} = {} rpm", number::show(in_rpm(at.0), 0), number::show(share.abs(), 4), number::show(in_rpm(speed).abs(), 0));
    let figure =
        rpm_figure("inside.countershaft_rpm", speed).big().by("countershaft = input × share by the pairs that drive it", filled, TRAIN);
    let output = rpm_figure("inside.output_rpm", at.1).small();
    Cell::line([figure.into(), Piece::words("against the input")]).and([output.into(), Piece::words(way(at.1, "at the output"))])
}

fn output_cell(analysis: &Analysis) -> Cell {
    let Some(at) = analysis.inside.at else { return missing(analysis) };
    Cell::line([rpm_figure("inside.output_rpm", at.1).big().into(), Piece::words(way(at.1, "at the output shaft; no countershaft"))])
}

/// `at the output`, and against which direction where it is the other one.
fn way(speed: AngularVelocity, what: &str) -> String {
    if in_rpm(speed) < 0.0 { format!("{what}, turning against the input") } else { what.to_owned() }
}

fn missing(analysis: &Analysis) -> Cell {
    if analysis.setup.gearbox.is_none() { Cell::absent("needs the whole gearbox") } else { Cell::absent("no such gear, or no input rpm") }
}

/// The fastest countershaft and the fastest idle gear at the shift rpm.
pub(super) fn fastest_cell(analysis: &Analysis) -> Cell {
    let inside = &analysis.inside;
    let line = |key: &str, peak: &Peak, what: String| vec![Piece::from(rpm_figure(key, peak.speed)), Piece::words(what)];
    let mut cell = Cell::default();
    if let Some(peak) = &inside.fastest_countershaft {
        let words = if analysis.setup.layout == Layout::OutputReduced {
            format!("countershaft, in {}", ordinal(peak.gear))
        } else {
            "countershaft, in every gear".into()
        };
        cell = cell.and(line("inside.countershaft_most_rpm", peak, words));
    }
    if let Some(peak) = &inside.fastest_idle {
        let words = format!("{} against its shaft, in {}", peak.part.name(analysis.setup.layout), ordinal(peak.gear));
        cell = cell.and(line("inside.idle_most_rpm", peak, words));
    }
    if cell.lines.is_empty() { missing(analysis) } else { cell }
}

/// Every loose gear and how fast it turns on its shaft.
pub(super) fn idle_cell(analysis: &Analysis) -> Cell {
    let inside = &analysis.inside;
    let (Some(turning), Some(at)) = (&inside.turning, inside.at) else { return missing(analysis) };
    let loose = turning.parts.iter().filter(|turns| turns.loose && turns.teeth.is_some());
    let cell = loose.fold(Cell::default(), |cell, turns| {
        let key = format!("inside.idle_{}_rpm", part_key(turns.part));
        let slip = turns.slip_at(at);
        let words = if in_rpm(slip).abs() < 0.5 {
            "locked to its shaft".to_owned()
        } else {
            format!("on its shaft, {} rpm itself", number::show(in_rpm(turns.speed_at(at)).abs(), 0))
        };
        cell.and([Piece::words(short_name(turns.part)), rpm_figure(key, slip).small().into(), Piece::words(words)])
    });
    if cell.lines.is_empty() { Cell::absent("none") } else { cell }
}

fn short_name(part: Part) -> String {
    match part {
        Part::Driver(gear) | Part::Driven(gear) => ordinal(gear),
        Part::ReverseDriver | Part::ReverseDriven => "reverse".into(),
        Part::IdlerEntry | Part::IdlerExit => "idler".into(),
        _ => "constant".into(),
    }
}

fn part_key(part: Part) -> String {
    match part {
        Part::Driver(gear) | Part::Driven(gear) => format!("gear_{}", gear + 1),
        Part::ReverseDriver | Part::ReverseDriven => "reverse".into(),
        Part::IdlerEntry | Part::IdlerExit => "idler".into(),
        _ => "constant".into(),
    }
}

/// What turns when the car rolls in neutral with the clutch out and the input at rest.
pub(super) fn neutral_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let (Some(gearbox), Some(cruise), Some(circumference), Some(behind)) =
        (&analysis.setup.gearbox, source.conditions.cruise, analysis.road.circumference, analysis.setup.behind_gearbox())
    else {
        return Cell::absent(super::super::needs(analysis));
    };
    let output = wheel_speed(cruise, circumference) * decimal(behind);
    let Some(turning) = Turning::new(gearbox, &Arrangement::usual(gearbox), Selected::Neutral) else { return missing(analysis) };
    let at = (AngularVelocity::default(), output);
    let fastest = turning.parts.iter().filter(|turns| turns.loose).map(|turns| (turns.part, in_rpm(turns.slip_at(at)).abs()));
    let cell = Cell::line([rpm_figure("inside.coasting_output_rpm", output).into(), Piece::words("at the output, input at rest")]);
    match fastest.max_by(|(_, a), (_, b)| a.total_cmp(b)) {
        Some((part, speed)) => {
            let mut figure = Figure::number("inside.coasting_idle_rpm", speed, 0).small();
            figure.unit = "rpm".into();
            cell.and([Piece::words(short_name(part)), figure.into(), Piece::words("on its shaft")])
        }
        None => cell,
    }
}

/// What each downshift would spin the engine to.
pub(super) fn downshift_cell(analysis: &Analysis) -> Cell {
    let downshifts = &analysis.inside.downshifts;
    if downshifts.is_empty() {
        return missing(analysis);
    }
    let over: Vec<String> = downshifts
        .iter()
        .filter(|shift| shift.is_over())
        .map(|shift| {
            format!("{} into {} below {} rpm", ordinal(shift.from), ordinal(shift.to), number::show(in_rpm(shift.safe_before()), 0))
        })
        .collect();
    let cell = downshifts.iter().fold(Cell::default(), |cell, shift| {
        let key = format!("inside.downshift_{}_to_{}_rpm", shift.from + 1, shift.to + 1);
        let filled = format!(
            "{} × {} = {} rpm",
            number::show(in_rpm(shift.before), 0),
            number::show(decimal(shift.step).abs(), 4),
            number::show(in_rpm(shift.after), 0)
        );
        let figure =
            rpm_figure(key, shift.after).by("engine after = engine before × lower ratio ÷ higher ratio, at one road speed", filled, TRAIN);
        cell.and([Piece::words(format!("{} to {}:", ordinal(shift.from), ordinal(shift.to))), figure.into()])
    });
    let cell = if over.is_empty() { cell } else { cell.and([Piece::words(format!("shift down {}", over.join(", ")))]) };
    let at_cruise = analysis.inside.cruise_downshifts.iter().find(|shift| shift.from + 1 == analysis.setup.gears.len() && shift.is_over());
    match at_cruise {
        Some(shift) => cell.and([Piece::caution(format!("at the cruise speed, {}; {}", shift.what(), shift.what_to_do()))]),
        None => cell,
    }
}

/// How often the teeth of each pair meet, the pairs under load first.
pub(super) fn mesh_cell(analysis: &Analysis) -> Cell {
    let meetings = &analysis.inside.meetings;
    if meetings.is_empty() {
        return missing(analysis);
    }
    let hertz = unit::<Frequency>("Hz");
    let (loaded, idle): (Vec<&Meeting>, Vec<&Meeting>) = meetings.iter().partition(|meeting| meeting.in_path);
    let mut cell = loaded.into_iter().fold(Cell::default(), |cell, meeting| {
        let name = pair_name(meeting.driver);
        let key = format!("inside.mesh_{}", part_key(meeting.driver));
        let figure = Figure::quantity(&key, &meeting.frequency, hertz, 0).by(
            "mesh frequency = teeth × turns a second",
            format!("{} teeth", meeting.mesh.driver),
            TRAIN,
        );
        cell.and([Piece::words(name), figure.into(), Piece::words("under load")])
    });
    let rest = idle.iter().map(|meeting| format!("{} {}", pair_name(meeting.driver), number::show((hertz.take)(&meeting.frequency), 0)));
    let rest = rest.collect::<Vec<_>>().join(", ");
    if !rest.is_empty() {
        cell = cell.and([Piece::words(format!("idle: {rest} Hz"))]);
    }
    cell
}

fn pair_name(driver: Part) -> String {
    match driver {
        Part::ConstantDriver => "constant pair".into(),
        other => format!("{} pair", short_name(other)),
    }
}
