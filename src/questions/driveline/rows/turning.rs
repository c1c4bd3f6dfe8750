//! The rows about turning: the shaft in every gear, what its run-out comes to, the pinion and its pair.

use super::{GRADE, KINEMATICS, rpm, turning_needs};
use crate::driveline::Shaft;
use crate::driveline::shaft::allowed_unbalance_g_mm;
use crate::job::{SetupField, ShaftField};
use crate::questions::driveline::answer::shaft_speed;
use crate::questions::entries::entry;
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Figure, Piece, Row, Worked};
use crate::units::common::{in_rpm, show_rpm};
use crate::units::{AngularVelocity, Force, Length, limits, number, show, unit};

/// Source of what a bent tube comes to.
const BENT: &str = "a tube bowed as half a sine is off by 2 ÷ π of half the run-out on the mean; plain geometry";

/// The shaft at the shift rpm in every gear, overdrive included, as a share of its critical speed.
pub(super) fn every_gear(source: Source<'_>) -> Row {
    source.row("shaft-in-gears", "Shaft at the shift rpm in each gear, and % of critical", |analysis| {
        let (Some(rolling), Some(behind)) = (&analysis.setup.rolling, analysis.setup.behind_shaft()) else {
            return Cell::needed(turning_needs(source, analysis));
        };
        let critical = analysis.driveline().critical.map(|(critical, _)| critical);
        let step = |(step, in_gear): (&crate::gearing::Step, &crate::questions::road::answer::InGear)| {
            let shaft = shaft_speed(in_gear.at_shift?, rolling.circumference, behind);
            let figure = rpm(&format!("driveline.gear_{}", step.key()), shaft).small();
            let share = critical.map(|critical| format!("{} %", number::show(100.0 * (shaft / critical).value, 0)));
            let shift = source.conditions.shift.unwrap_or(shaft);
            let worked = Worked::of(in_rpm(shift), 0).over((shift / shaft).value, 3);
            let figure = figure.worked("shift rpm ÷ ratio before the shaft", worked, KINEMATICS);
            let pieces = [Piece::words(step.name()), figure.into()];
            Some(pieces.into_iter().chain(share.map(Piece::words)).collect::<Vec<Piece>>())
        };
        let steps = analysis.setup.steps.iter().zip(&analysis.road().steps).filter_map(step);
        let cell = steps.fold(Cell::default(), Cell::and);
        if cell.lines.is_empty() { Cell::needed("needs the gears and the shift rpm") } else { cell }
    })
}

/// What the run-out of a tube comes to beside the unbalance allowed, and what it pulls.
pub(super) fn run_out(source: Source<'_>) -> Row {
    source.row("shaft-run-out", "Run-out at the middle", |analysis| {
        let field = SetupField::Shaft(ShaftField::RunOut);
        let cell = |cell: Cell| entry(source, analysis, cell, field, field.row().label);
        let (Some(run_out), Some(piece)) = (analysis.setup.shaft.run_out, longest(analysis)) else { return cell(Cell::default()) };
        let unbalance = piece.unbalance_of_run_out_g_mm(run_out);
        let figure = Figure::number("driveline.run_out_gmm", unbalance, 0).in_unit("g·mm");
        let filled = format!("{} kg × {} ÷ π", number::show(unit::KG.number(piece.mass()), 2), show(&run_out, &unit::MM, 2));
        let figure = figure.by("U = m × run-out ÷ π", filled, BENT);
        let said = Cell::line([figure.into(), Piece::words("of unbalance where no weights make up for it")]);
        let said = match analysis.driveline().turning {
            Some(turning) => said.and(at_speed(source, piece, unbalance, turning.shaft)),
            None => said,
        };
        let is_bent = run_out > most_run_out();
        let most = limits::say(most_run_out(), source.reader.units);
        cell(said.and_maybe(is_bent.then(|| Piece::caution(format!("over {most}: straighten or renew the tube, then balance it")))))
    })
}

/// The run-out at the middle of a tube from which it is straightened: service manuals, from memory.
fn most_run_out() -> Length {
    unit::INCH.of(0.02)
}

fn longest(analysis: &Analysis) -> Option<&Shaft> {
    let pieces = &analysis.setup.shaft.pieces;
    pieces.iter().reduce(|longest, next| if next.critical_speed() < longest.critical_speed() { next } else { longest })
}

fn at_speed(source: Source<'_>, piece: &Shaft, unbalance: f64, shaft: AngularVelocity) -> [Piece; 3] {
    let allowed = allowed_unbalance_g_mm(piece.mass(), shaft, GRADE);
    let turns = unit::RAD_S.number(shaft);
    let force = Force::new::<uom::si::force::newton>(unbalance * 1e-6 * turns * turns);
    let figure = source.quantity("driveline.run_out_pulls", &force, 0);
    let filled = format!("{} g·mm at {} rpm", number::show(unbalance, 0), show_rpm(shaft));
    let times = format!("{} times what G 16 allows; it pulls", number::show(unbalance / allowed, 1));
    [Piece::words(times), figure.by("F = U × ω²", filled, BENT).into(), Piece::words("round once a turn")]
}

/// The pair of the axle, and how fast its pinion turns beside what it is made for.
pub(super) fn pinion(source: Source<'_>) -> Vec<Row> {
    let most = source.conditions.driveline.pinion;
    let speed = most.map(|most| {
        source.row("pinion-speed", "Pinion speed", |analysis| {
            let Some(turning) = analysis.driveline().turning else { return Cell::needed(turning_needs(source, analysis)) };
            let figure = rpm("driveline.pinion", turning.shaft);
            let filled = format!("{} of the shaft, as typed at most {} rpm", figure.text(), show_rpm(most));
            let cell = Cell::line([figure.by("the pinion turns with the shaft", filled, KINEMATICS).into()]);
            let most_rpm = show_rpm(most);
            cell.and([if turning.shaft > most {
                Piece::caution(format!("over the {most_rpm} rpm it is made for"))
            } else {
                Piece::good(format!("inside the {most_rpm} rpm it is made for"))
            }])
        })
    });
    speed.into_iter().chain([source.row("hunting", "Ring and pinion", hunting_cell)]).collect()
}

/// Whether the same two teeth of ring and pinion meet often.
fn hunting_cell(analysis: &Analysis) -> Cell {
    let Some(crate::gearing::FinalDrive::Pair(mesh)) = analysis.setup.final_drive else {
        return Cell::needed("needs the teeth of ring and pinion");
    };
    let hunting = crate::gearing::hunting::Hunting::of(mesh);
    let figure = Figure::number("driveline.pinion_turns_to_repeat", f64::from(hunting.driver_turns), 0);
    let words = if hunting.is_hunting() {
        "pinion turns before the same two teeth meet again: hunting".to_owned()
    } else {
        format!("pinion turns before the same two teeth meet again: common factor {}, keep the marks together", hunting.common_factor)
    };
    let worked = Worked::of(f64::from(mesh.driven.count()), 0).over(f64::from(hunting.common_factor), 0);
    let figure =
        figure.worked("turns of the pinion = ring teeth ÷ greatest common factor", worked, "greatest common factor of the two counts");
    Cell::line([figure.into(), Piece::words(words)])
}
