//! Bore and shaft as measured: mean, taper, out of round, against what a code allows each; and what the other must be where one is missing.

use super::{ISO, bare, figure, range, said};
use crate::fits::iso286::Field;
use crate::fits::readings::Readings;
use crate::fits::seat::Wanted;
use crate::questions::Source;
use crate::questions::fits::answer::Fit;
use crate::questions::fits::read::Seated;
use crate::sheet::{Cell, Piece, Row};
use crate::units::Length;

/// The rows of both parts.
pub(super) fn rows(source: Source<'_>, seated: &Seated, fit: Option<&Fit>) -> Vec<Row> {
    let mut rows = Vec::new();
    let halves = seated.wanted.as_ref().zip(seated.nominal).and_then(|((wanted, _), size)| {
        let Wanted::Code(code) = wanted else { return None };
        let [hole, shaft] = wanted.fields(size)?;
        Some([(code.hole.written(), hole, size), (code.shaft.written(), shaft, size)])
    });
    let [hole, shaft] = halves.map_or([None, None], |[hole, shaft]| [Some(hole), Some(shaft)]);
    let each = [("bore", "Bore", &seated.bore, hole), ("shaft", "Shaft", &seated.shaft, shaft)];
    for (key, label, readings, half) in &each {
        let half = half.as_ref().filter(|_| fit.is_none_or(Fit::is_of_one_seat));
        rows.extend(readings.as_ref().map(|readings| Row::of_one(*key, *label, part_cell(source, key, readings, half))));
    }
    rows.extend(missing(source, seated));
    for (key, _, _, half) in each {
        rows.extend(half.map(|half| Row::of_one(format!("allowed-{key}"), format!("{} allows", half.0), allowed(source, key, &half))));
    }
    rows
}

type Half = (String, Field, Length);

fn part_cell(source: Source<'_>, key: &str, readings: &Readings, half: Option<&Half>) -> Cell {
    let mean = figure(source, &format!("{key}_mean"), readings.mean());
    let each: Vec<String> = readings.each().into_iter().map(|one| bare(source, one)).collect();
    let mean = if each.len() > 1 {
        let filled = format!("{}: {}", each.join(", "), mean.text());
        mean.by("mean of the means of all depths", filled, "plain arithmetic")
    } else {
        mean
    };
    let mut line: Vec<Piece> = vec![mean.into()];
    if let Some(taper) = readings.taper() {
        line.extend([figure(source, &format!("{key}_taper"), taper).into(), Piece::words("taper")]);
    }
    if let Some(round) = readings.out_of_round() {
        line.extend([figure(source, &format!("{key}_round"), round).into(), Piece::words("out of round")]);
    }
    Cell::line(line).and_maybe(half.map(|half| against(source, readings, half)))
}

/// How all readings of a part stand against its field.
fn against(source: Source<'_>, readings: &Readings, (code, field, size): &Half) -> Piece {
    let (over, under) = (readings.greatest() - (*size + field.upper), *size + field.lower - readings.least());
    // To the nanometre: a reading at the limit is inside.
    let least = crate::units::common::millimetres(1e-6);
    if over > least {
        Piece::caution(format!("up to {} over {code}", said(source, over)))
    } else if under > least {
        Piece::caution(format!("up to {} under {code}", said(source, under)))
    } else {
        Piece::good(format!("inside {code}"))
    }
}

fn allowed(source: Source<'_>, key: &str, (code, field, size): &Half) -> Cell {
    let end = |name: &str, deviation: Length| {
        let end = figure(source, &format!("{key}_allowed_{name}"), *size + deviation);
        let filled = format!("{} + ({}) = {}", bare(source, *size), bare(source, deviation), end.text());
        end.by(format!("size + deviation of {code}"), filled, ISO)
    };
    Cell::line([end("least", field.lower).into(), Piece::words("to"), end("greatest", field.upper).into()])
}

/// Where one of the two is not measured: which one the other wants.
fn missing(source: Source<'_>, seated: &Seated) -> Option<Row> {
    let (_, wanted) = seated.wanted.as_ref()?;
    match (&seated.bore, &seated.shaft) {
        (Some(bore), None) => {
            let shafts = [bore.mean() - wanted.greatest, bore.mean() - wanted.least];
            Some(Row::of_one("shaft-for", "Shaft for this bore", Cell::line([Piece::words(range(source, shafts))])))
        }
        (None, Some(shaft)) => {
            let bores = [shaft.mean() + wanted.least, shaft.mean() + wanted.greatest];
            Some(Row::of_one("bore-for", "Bore for this shaft", Cell::line([Piece::words(range(source, bores))])))
        }
        _ => None,
    }
}
