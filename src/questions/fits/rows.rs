//! The rows of Fits and clearances: the fit cold and hot, what is wanted, what to do, each part as measured.

mod assembled;
mod parts;

use super::answer::{Assembly, Fit, Turn};
use super::read::Seated;
use crate::fits::seat::{ROOM_MM, Stands, Wanted};
use crate::fits::slip::Slip;
use crate::fits::{Material, temperature};
use crate::questions::bench::unusable;
use crate::questions::deciding::few;
pub use crate::questions::small::{decimals, said};
use crate::questions::{Source, small, warmth};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::common::millimetres;
use crate::units::{Length, Measured, ThermodynamicTemperature, limits, number, unit};

/// Source of what a code allows.
pub const ISO: &str = "ISO 286-1, its tables (the formula 0.45·∛D + 0.001·D only explains them)";
/// Source of growth and of shrink fits.
const GROWTH: &str = "linear growth, each part free (any textbook of machine elements)";
/// Bearings and tempered parts are not warmed beyond this, in °C (common practice, no published source).
const OVEN_C: f64 = 120.0;

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let mut rows = rows(source);
    rows.retain(|row| !row.key.starts_with("allowed"));
    few(rows, None)
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let seated = Seated::of(&source.job.bench);
    let mut rows = unusable(seated.problems.iter().take(2));
    let fit = Fit::of(&seated);
    if let Some(fit) = &fit {
        rows.extend(doubts(source, fit));
        rows.push(Row::of_one("fit", "At the bench", fit_cell(source, fit)));
        rows.extend(seated.wanted.as_ref().zip(fit.wanted).map(|((wanted, _), (_, stands))| wanted_row(source, fit, wanted, stands)));
        rows.extend(fit.wanted.and_then(|(_, stands)| Some(Row::of_one("do", "What to do", do_cell(source, fit, stands)?))));
        rows.extend(fit.warm.map(|warm| hot_row(source, &seated, fit, warm)));
        rows.extend(fit.assembly.map(|assembly| Row::of_one("assembly", "To drop together", assembly_cell(source, fit, assembly))));
    }
    rows.extend(assembled::rows(source, &seated, fit.as_ref()));
    rows.extend(parts::rows(source, &seated, fit.as_ref()));
    rows
}

/// A range in words, without digits it does not have.
pub fn range(source: Source<'_>, [least, greatest]: [Length; 2]) -> String {
    let unit = Length::usual(source.reader.units);
    let bare = |length: Length| number::show((unit.take)(&length), decimals(source));
    format!("{} to {} {}", bare(least), bare(greatest), unit.symbol)
}

fn figure(source: Source<'_>, key: &str, length: Length) -> Figure {
    small::figure(source, &format!("fits.{key}"), length)
}

/// A length without its unit, for workings.
fn bare(source: Source<'_>, length: Length) -> String {
    number::show((Length::usual(source.reader.units).take)(&length), decimals(source))
}

/// What is doubtful: the two are not of one seat, or readings scatter more than the fit allows.
fn doubts(source: Source<'_>, fit: &Fit) -> Vec<Row> {
    let row = |key: &str, says: String| Row::of_one(key, "Read right?", Cell::line([Piece::caution(says)]));
    if !fit.is_of_one_seat() {
        return vec![row("slip", slip_said(source, fit))];
    }
    let Some((wanted, _)) = fit.wanted else { return Vec::new() };
    let allowed = wanted.greatest - wanted.least;
    let scatters = [("bore", &fit.seat.bore), ("shaft", &fit.seat.shaft)].into_iter().filter(|(_, readings)| readings.spread() > allowed);
    scatters
        .map(|(name, readings)| {
            let says = format!(
                "the readings of the {name} lie {} apart, and the fit allows {} in all: worn, or measure again",
                said(source, readings.spread()),
                said(source, allowed)
            );
            row(&format!("{name}-scatter"), says)
        })
        .collect()
}

/// What is said where bore and shaft are not of one seat.
pub(super) fn slip_said(source: Source<'_>, fit: &Fit) -> String {
    let apart = said(source, fit.clearance.abs());
    let advice = match fit.slip {
        Some(Slip::MeantInMm) => "is the shaft in mm?",
        Some(Slip::MeantInInches) => "is the shaft in inches?",
        Some(Slip::TenTimesTooLarge | Slip::TenTimesTooSmall) => "is the point of one of them in its place?",
        None => "are they of one seat?",
    };
    format!("bore and shaft are {apart} apart: {advice}")
}

fn fit_cell(source: Source<'_>, fit: &Fit) -> Cell {
    let seat = &fit.seat;
    let worked = small::worked(source, seat.bore.mean()).minus(small::in_usual(source, seat.shaft.mean()), decimals(source));
    let clearance = figure(source, "clearance", fit.clearance).big();
    let clearance =
        clearance.worked("clearance = mean of the bore − mean of the shaft", worked, "plain subtraction; below nothing it is interference");
    let cell = Cell::line([
        clearance.into(),
        Piece::words(if fit.clearance < Length::default() { "of clearance: interference" } else { "of clearance" }),
    ]);
    if seat.bore.count() + seat.shaft.count() == 2 {
        return cell;
    }
    let [least, greatest] = seat.clearances();
    let [least, greatest] = [figure(source, "clearance_least", least), figure(source, "clearance_greatest", greatest)];
    cell.and([least.into(), Piece::words("to"), greatest.into(), Piece::words("over all readings")])
}

fn wanted_row(source: Source<'_>, fit: &Fit, wanted: &Wanted, stands: Stands) -> Row {
    let label = match wanted {
        Wanted::Code(code) => format!("{} wants", code.written()),
        Wanted::Range(_) => "Wanted".into(),
    };
    let Some((range, _)) = fit.wanted else { return Row::of_one("wanted", label, Cell::default()) };
    let mut ends = [figure(source, "wanted_least", range.least), figure(source, "wanted_greatest", range.greatest)];
    if let Some([hole, shaft]) = fit.fields {
        let filled = [(hole.lower, shaft.upper, range.least), (hole.upper, shaft.lower, range.greatest)]
            .map(|(bore, shaft, clearance)| format!("{} − ({}) = {}", bare(source, bore), bare(source, shaft), said(source, clearance)));
        let [least, greatest] = filled;
        let [low, high] = ends;
        ends = [
            low.by("least clearance = least bore − largest shaft, as deviations from the size", least, ISO),
            high.by("greatest clearance = largest bore − least shaft, as deviations from the size", greatest, ISO),
        ];
    }
    let [low, high] = ends;
    let verdict = match stands {
        Stands::Inside => Piece::good("inside it"),
        Stands::TooTight(by) => Piece::caution(format!("{} too tight", said(source, by))),
        Stands::TooLoose(by) => Piece::caution(format!("{} too loose", said(source, by))),
    };
    Row::of_one("wanted", label, Cell::line([low.into(), Piece::words("to"), high.into(), verdict]))
}

/// Which bore or which shaft makes the fit; none where it is made.
fn do_cell(source: Source<'_>, fit: &Fit, stands: Stands) -> Option<Cell> {
    match stands {
        Stands::Inside => None,
        Stands::TooTight(_) => {
            Some(Cell::line(bores(source, fit, "hone or ream the bore to")?).and(shafts(source, fit, "or bring the shaft to")?))
        }
        Stands::TooLoose(_) => {
            Some(Cell::line(shafts(source, fit, "fit a shaft of")?).and(bores(source, fit, "or sleeve the bore and finish it at")?))
        }
    }
}

fn bores(source: Source<'_>, fit: &Fit, words: &str) -> Option<Vec<Piece>> {
    let (range, _) = fit.wanted?;
    let shaft = fit.seat.shaft.mean();
    let end = |key: &str, bore: Length, clearance: Length| {
        let bore = figure(source, key, bore);
        let filled = format!("{} + ({}) = {}", bare(source, shaft), bare(source, clearance), bore.text());
        bore.by("bore = mean of the shaft + clearance wanted", filled, "plain addition")
    };
    let [least, most] = fit.seat.bores_for(range);
    let ends = [end("bore_least", least, range.least), end("bore_greatest", most, range.greatest)];
    Some(from_to(words, ends))
}

fn shafts(source: Source<'_>, fit: &Fit, words: &str) -> Option<Vec<Piece>> {
    let (range, _) = fit.wanted?;
    let bore = fit.seat.bore.mean();
    let end = |key: &str, shaft: Length, clearance: Length| {
        let shaft = figure(source, key, shaft);
        let worked = small::worked(source, bore).minus(small::in_usual(source, clearance), decimals(source)).in_brackets();
        shaft.worked("shaft = mean of the bore − clearance wanted", worked, "plain subtraction")
    };
    let [least, most] = fit.seat.shafts_for(range);
    let ends = [end("shaft_least", least, range.greatest), end("shaft_greatest", most, range.least)];
    Some(from_to(words, ends))
}

fn from_to(words: &str, [least, most]: [Figure; 2]) -> Vec<Piece> {
    vec![Piece::words(words), least.into(), Piece::words("to"), most.into()]
}

fn hot_row(source: Source<'_>, seated: &Seated, fit: &Fit, warm: Length) -> Row {
    let [bench, working] = seated.temperatures;
    let materials = seated.materials.unwrap_or([Material::Steel; 2]);
    let [bore, shaft] = materials.map(|material| number::show(material.growth_ppm_per_k(), 1));
    let filled = format!(
        "{} + {} K × ({bore} × {} − {shaft} × {}) ÷ 1,000,000 = {}",
        bare(source, fit.clearance),
        number::show(temperature::warmer_k(working, bench), 0),
        bare(source, fit.seat.bore.mean()),
        bare(source, fit.seat.shaft.mean()),
        said(source, warm)
    );
    let hot = figure(source, "clearance_hot", warm);
    let hot = hot.by("hot = clearance + ΔT × (α of the bore × bore − α of the shaft × shaft)", filled, GROWTH);
    let verdict = fit.turns_when_hot().map(|turn| match turn {
        Turn::Grips => Piece::stop("it grips when hot: give it more clearance"),
        Turn::Loose => Piece::caution("it comes loose when hot: more interference, or something else that holds it"),
    });
    let cell = Cell::line([hot.into(), Piece::words("of clearance")]).and_maybe(verdict);
    Row::of_one("hot", format!("At {}", warmth::said(source, working)), cell)
}

fn assembly_cell(source: Source<'_>, fit: &Fit, assembly: Assembly) -> Cell {
    let unit = ThermodynamicTemperature::usual(source.reader.units);
    let degrees = |key: &str, at: &ThermodynamicTemperature| Figure::quantity(&format!("fits.{key}"), at, unit, 0);
    let [bore, shaft] = assembly.materials;
    let open = fit.seat.to_open().unwrap_or_default();
    let filled = |diameter: Length, material: Material, sign: &str, at: &Figure| {
        let ppm = number::show(material.growth_ppm_per_k(), 1);
        format!("bench {sign} {} ÷ ({} × {ppm} ÷ 1,000,000) K = {}", bare(source, open), bare(source, diameter), at.text())
    };
    let oven = degrees("oven", &assembly.oven);
    let working = filled(fit.seat.bore.mean(), bore, "+", &oven);
    let formula = "T = bench + (greatest interference + room to assemble) ÷ (α × bore)";
    let limit = unit::CELSIUS.of(OVEN_C);
    let too_hot = (assembly.oven > limit).then(|| {
        Piece::caution(format!(
            "over {} takes the temper out of bearings: chill the shaft as well, or press it",
            limits::say(limit, source.reader.units)
        ))
    });
    let cell =
        Cell::line([Piece::words(format!("warm the {} to", bore.word())), oven.by(formula, working, GROWTH).into()]).and_maybe(too_hot);
    let Some(at) = assembly.chill else { return cell };
    let chill = degrees("chill", &at);
    let working = filled(fit.seat.shaft.mean(), shaft, "−", &chill);
    let formula = "T = bench − (greatest interference + room to assemble) ÷ (α × shaft)";
    cell.and([Piece::words("or chill the shaft to"), chill.by(formula, working, GROWTH).into()])
}

/// The room to assemble in words.
pub fn room(source: Source<'_>) -> String {
    limits::say(millimetres(ROOM_MM), source.reader.units)
}
