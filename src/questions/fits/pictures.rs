//! The picture of Fits and clearances: what is allowed or wanted of bore and shaft, and what was measured, as deviations from the size.

use super::answer::Fit;
use super::read::Seated;
use crate::chart::lines::Measure;
use crate::chart::palette::Hue;
use crate::chart::spans::{Span, Spans};
use crate::fits::readings::Readings;
use crate::fits::seat::Wanted;
use crate::questions::Source;
use crate::units::{Length, System, Unit, unit};

/// Bore and shaft against their fields.
pub fn sizes(source: Source<'_>) -> Option<Spans> {
    let seated = Seated::of(&source.job.bench);
    let fit = Fit::of(&seated).filter(Fit::is_of_one_seat)?;
    let size = seated.nominal?;
    let (unit, decimals) = match source.reader.units {
        System::Inch => (&unit::THOU, 1),
        System::Metric => (&unit::MICRON, 0),
    };
    let [bores, shafts] = allowed(&seated, &fit, size, unit).map_or([None, None], |spans| spans.map(Some));
    let measured = |name: &str, hue: Hue, readings: &Readings| Span {
        hue,
        name: name.to_owned(),
        least: off(readings.least(), size, unit),
        greatest: off(readings.greatest(), size, unit),
        marks: readings.each().into_iter().map(|one| off(one, size, unit)).collect(),
    };
    let bore = measured("bore, measured", Hue::Ink, &fit.seat.bore);
    let shaft = measured("shaft, measured", Hue::Dye, &fit.seat.shaft);
    Some(Spans {
        title: "Bore and shaft against the fit wanted".into(),
        measure: Measure { name: "off the nominal size".into(), unit: unit.symbol.into(), decimals, ends: None },
        spans: bores.into_iter().chain([bore]).chain(shafts).chain([shaft]).collect(),
    })
}

/// How far a diameter is off the size.
fn off(diameter: Length, size: Length, unit: &Unit<Length>) -> f64 {
    unit.number(diameter - size)
}

/// What a code allows each, or what each would have to be for the other.
fn allowed(seated: &Seated, fit: &Fit, size: Length, unit: &Unit<Length>) -> Option<[Span; 2]> {
    let (wanted, _) = seated.wanted.as_ref()?;
    let (ends, _) = fit.wanted?;
    let span = |name: String, [least, greatest]: [Length; 2]| Span {
        hue: Hue::Ok,
        name,
        least: off(least, size, unit),
        greatest: off(greatest, size, unit),
        marks: Vec::new(),
    };
    Some(match (wanted, fit.fields) {
        (Wanted::Code(code), Some([hole, shaft])) => [
            span(format!("bore, {} allows", code.hole.written()), [size + hole.lower, size + hole.upper]),
            span(format!("shaft, {} allows", code.shaft.written()), [size + shaft.lower, size + shaft.upper]),
        ],
        _ => [span("bore for this shaft".into(), fit.seat.bores_for(ends)), span("shaft for this bore".into(), fit.seat.shafts_for(ends))],
    })
}
