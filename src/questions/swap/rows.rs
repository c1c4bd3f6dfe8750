//! The rows of Swap: what is measured of each box, how it stands to A's, and what that asks for.

use super::answer::{Beside, first_beside, room};
use super::judged::{Judged, Stands, decimals, judged, shown};
use super::oil::{self, SUMPS, Sump};
use crate::catalogue::Part;
use crate::job::{InsideField, SetupChoice, SetupField, ShaftField, SwapField};
use crate::questions::entries::{choice, entry};
use crate::questions::{Analysis, Known, Source, case};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::swap::Spline;
use crate::units::{Length, Mass, Measured, number};

/// Where a difference comes from.
const MEASURED: &str = "both as measured, from the face that bolts to the clutch housing or engine";

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let family = source.row("box-family", "Sizes of its case family", |analysis| family_cell(source, analysis));
    let sizes = [
        measured(source, "Case face to output flange", SwapField::Length),
        source.row("joints", "Driveshaft, joint to joint", |analysis| joints_cell(source, analysis)),
        measured(source, "Case face to mount", SwapField::Mount),
        measured(source, "Case face to lever", SwapField::Lever),
        measured(source, "Input spline (10 x 1 1/8)", SwapField::InputSpline),
        measured(source, "Bolt holes (across: up) or a name", SwapField::Holes),
        source.row("box-outline", "Top of the case (distance: height)", |analysis| outline_cell(source, analysis)),
    ];
    let family = (!family.cells.iter().all(|cell| *cell == Cell::default())).then_some(family);
    family.into_iter().chain(sizes).collect()
}

/// The other rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let choose = |key: &'static str, label: &str, of: SetupChoice| {
        source.row(key, label, |analysis| choice(source, analysis, judged_cell(source, analysis, key), of, label))
    };
    let mut rows = vec![
        measured(source, "Spigot of the input shaft", SwapField::Spigot),
        measured(source, "Case face to nose of the input shaft", SwapField::Nose),
        source.row("clutch-plate", "Clutch plate, outer diameter", |analysis| plate_cell(source, analysis)),
        measured(source, "Release travel", SwapField::Travel),
        measured(source, "Output spline", SwapField::OutputSpline),
        measured(source, "Output flange holes (across: up) or a name", SwapField::Flange),
        measured(source, "Axle, wheel face to wheel face", SwapField::AxleWidth),
        measured(source, "Wheel face to inner rim edge", SwapField::Backspace),
        measured(source, "Half shaft spline", SwapField::HalfShaft),
        source.row("input-standard", "Input spline may be", |analysis| standard_cell(source, analysis.setup.swap.input_spline)),
        source.row("output-standard", "Output spline may be", |analysis| standard_cell(source, analysis.setup.swap.output_spline)),
        source.row("old-shaft", "Old driveshaft behind it", |analysis| old_shaft_cell(source, analysis)),
        choose("fork-side", "Clutch fork", SetupChoice::ForkSide),
        choose("speedo-side", "Speedometer cable", SetupChoice::SpeedoTap),
        choose("speedo-hand", "Speedometer drive gear, its hand", SetupChoice::SpeedoHand),
        source.row("box-weight", "Weight, dry", |analysis| weight_cell(source, analysis)),
    ];
    rows.extend(SUMPS.iter().map(|sump| source.row(sump.field.row().id, sump.label, |analysis| oil_cell(source, analysis, sump))));
    rows.push(source.row("oil-level", "Oil level, car at a tilt", |analysis| level_cell(source, analysis)));
    rows
}

/// The case family that the gear set goes into: its sizes on the shelf, to be taken in one press, or the typed ones, to be kept there.
fn family_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(setup) = source.job.setup(analysis.setup.id) else { return Cell::default() };
    let cases = source.shelves.cases;
    let told = |known: &Known<Part>| Cell::line([Piece::words(known.entry.title())]);
    if let Some(fitted) = cases.iter().find(|known| setup.has_part(&known.entry)) {
        return told(fitted).and([Piece::words("as on the shelf")]);
    }
    let gearbox = setup.gearbox.name.trim().to_owned();
    let names: Vec<String> = case::families(source, analysis).into_iter().chain([gearbox]).filter(|name| !name.is_empty()).collect();
    let called = |name: &String| cases.iter().find(|known| known.entry.title().trim().eq_ignore_ascii_case(name));
    if let Some(known) = names.iter().find_map(called) {
        return told(known).offering(known.entry.clone());
    }
    let name = names.into_iter().next().unwrap_or_else(|| format!("{} box {}", source.job.car.trim(), analysis.setup.letter));
    let typed = setup.swap.as_case_family(name.trim());
    typed.map_or_else(Cell::default, |entry| Cell::line([Piece::words(entry.title())]).offering(entry))
}

/// The field that Inside has too.
fn plate_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let field = InsideField::ClutchDiameter;
    entry(source, analysis, judged_cell(source, analysis, "clutch-plate"), SetupField::Inside(field), field.row().label)
}

/// A row in which a size is typed and held against A's.
fn measured(source: Source<'_>, label: &str, field: SwapField) -> Row {
    source.row(field.path(), label, |analysis| {
        let mut cell = difference(source, analysis, field).map_or_else(Cell::default, Cell::line);
        cell.lines.extend(judged_cell(source, analysis, field.row().id).lines);
        entry(source, analysis, cell, SetupField::Swap(field), field.row().label)
    })
}

/// How a part stands. What is to be made is no caution by itself: a swap is made of it; what cannot be is one.
fn judged_cell(source: Source<'_>, analysis: &Analysis, key: &str) -> Cell {
    let verdict = judged(source, analysis).into_iter().find(|part| part.key == key).map(|Judged { stands, verdict, .. }| match stands {
        Stands::AsOld => Piece::good(verdict),
        Stands::ToMeasure | Stands::ToMake => Piece::words(verdict),
        Stands::CannotBe => Piece::caution(verdict),
    });
    Cell::default().and_maybe(verdict)
}

/// `38 mm longer than A’s`, with how it came about.
fn difference(source: Source<'_>, analysis: &Analysis, field: SwapField) -> Option<Vec<Piece>> {
    let (first, beside) = (first_beside(source, analysis)?, Beside::of(source, analysis)?);
    if field == SwapField::AxleWidth {
        return outwards(source, analysis, &beside);
    }
    let (own, old) = (&analysis.setup.swap, &first.setup.swap);
    let (key, sizes, more, ways) = match field {
        SwapField::Length => ("length", own.length.zip(old.length), beside.shaft?.longer, ["longer than A’s", "shorter than A’s"]),
        SwapField::Mount => ("mount", own.mount.zip(old.mount), beside.mount?, ["further back", "further forward"]),
        SwapField::Lever => ("lever", own.lever.zip(old.lever), beside.lever?, ["behind the hole", "ahead of the hole"]),
        SwapField::Nose => ("nose", own.nose.zip(old.nose), beside.nose?, ["longer than A’s", "shorter than A’s"]),
        _ => return None,
    };
    let (own, old) = sizes?;
    let figure = length(source, &format!("swap.{key}_off"), more.abs());
    let filled = format!("{} and A’s {}: {} apart", shown(source, own), shown(source, old), figure.text());
    let [back, forward] = ways;
    let words = if more.value < 0.0 { forward } else { back };
    Some(vec![figure.by("size less A’s size", filled, MEASURED).into(), Piece::words(words)])
}

/// `12 mm further out, each wheel`, with how it came about.
fn outwards(source: Source<'_>, analysis: &Analysis, beside: &Beside) -> Option<Vec<Piece>> {
    let (moved, own) = (beside.outwards?, &analysis.setup.swap);
    let old = &first_beside(source, analysis)?.setup.swap;
    let figure = length(source, "swap.outwards", moved.abs());
    let sizes = |swap: &super::read::Swap| {
        let backspace = swap.backspace.map_or_else(String::new, |backspace| format!(" with {} of backspace", shown(source, backspace)));
        format!("{}{backspace}", shown(source, swap.axle_width.unwrap_or_default()))
    };
    let filled = format!("{}, A’s {}: {}", sizes(own), sizes(old), figure.text());
    let figure = figure.by(
        "half of how much wider the axle is, less how much more backspace",
        filled,
        "plain geometry; rims and tyres as wide as before",
    );
    Some(vec![figure.into(), Piece::words(if moved.value < 0.0 { "further in, each wheel" } else { "further out, each wheel" })])
}

fn length(source: Source<'_>, key: &str, length: Length) -> Figure {
    source.quantity(key, &length, decimals(source))
}

/// The new length of the driveshaft, where its length is typed: the field that Driveline has too.
fn joints_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let field = ShaftField::Lengths;
    let typed = |cell| entry(source, analysis, cell, SetupField::Shaft(field), field.row().label);
    let Some((first, beside)) = first_beside(source, analysis).zip(Beside::of(source, analysis)) else { return typed(Cell::default()) };
    let old = first.setup.shaft.lengths.first();
    let Some(((joints, change), old)) = beside.joints.zip(beside.shaft).zip(old) else {
        let needs = if old.is_none() { "needs A’s driveshaft" } else { "needs the lengths of both boxes" };
        return typed(Cell::needed(needs));
    };
    let figure = length(source, "swap.joints", joints).big();
    let way = if change.longer.value < 0.0 { "+" } else { "−" };
    let filled = format!("{} {way} {} = {}", shown(source, *old), shown(source, change.longer), figure.text());
    let cell = Cell::line([figure.by("A’s length less how much longer the box is", filled, MEASURED).into()]);
    let cell = if first.setup.shaft.lengths.len() > 1 { cell.and([Piece::words("of the front piece")]) } else { cell };
    let is_stale = analysis.setup.shaft.lengths.first().is_some_and(|typed| (*typed - joints).value.abs() > 0.001);
    typed(cell.and_maybe(is_stale.then(|| Piece::caution("Driveline has another length: type this one"))))
}

fn outline_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let typed = |cell| entry(source, analysis, cell, SetupField::Swap(SwapField::Outline), SwapField::Outline.row().label);
    let Some((at, least)) = room(source, analysis) else {
        let has_one = analysis.setup.swap.outline.is_some();
        return typed(if has_one { Cell::needed("needs the tunnel over the same stretch") } else { Cell::default() });
    };
    let figure = length(source, "swap.room", least);
    let filled = format!("least {} behind the face: {}", shown(source, at), figure.text());
    let figure = figure.by("tunnel less case, at the stations of both", filled, "straight between the stations, as measured");
    let mut cell = Cell::line([figure.into(), Piece::words("of room below the tunnel")]);
    cell.lines.extend(judged_cell(source, analysis, SwapField::Outline.row().id).lines);
    typed(cell)
}

/// The standards that a spline fits, at most two of them.
fn standard_cell(source: Source<'_>, spline: Option<Spline>) -> Cell {
    let Some(spline) = spline else { return Cell::needed("needs the spline") };
    if spline.outside.is_none() {
        return Cell::needed("needs the outside beside the count");
    }
    let standards = spline.standards();
    if standards.is_empty() {
        return Cell::line([Piece::words("no usual pitch: straight-sided or worn; measure its root")]);
    }
    standards.into_iter().take(2).fold(Cell::default(), |cell, standard| {
        let unit = Length::usual(source.reader.units);
        let figure = Figure::quantity("swap.standard", &standard.outside, unit, decimals(source) + 1);
        let [formula, filled] = standard.working;
        cell.and([
            Piece::words(format!("{}:", standard.name)),
            figure.small().by(formula, filled, "the standard named, from memory; involute teeth at 30°").into(),
        ])
    })
}

fn old_shaft_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(change) = Beside::of(source, analysis).and_then(|beside| beside.shaft) else {
        return Cell::needed("needs the lengths of both boxes");
    };
    let left = change.slip_of_old();
    let figure = length(source, "swap.slip", left.abs());
    let filled = format!("{} of slip, box {} off: {}", shown(source, change.slip), shown(source, change.longer), figure.text());
    let figure = figure.by("slip at ride height less how much longer the box is", filled, MEASURED);
    if left.value <= 0.0 {
        return Cell::line([Piece::words("too long by"), figure.into(), Piece::words("and would bottom")]);
    }
    Cell::line([figure.into(), Piece::words("of slip left")]).and_maybe(
        (change.longer.value < 0.0 && !change.old_serves()).then(|| Piece::words("measure how much of the yoke is still on its splines")),
    )
}

fn weight_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let unit = Mass::usual(source.reader.units);
    let more = Beside::of(source, analysis).and_then(|beside| beside.weight);
    let cell = more.map_or_else(Cell::default, |more| {
        let mut figure = Figure::quantity("swap.weight_off", &more, unit, 0);
        figure.shown = number::show_signed(unit.number(more), 0);
        Cell::line([figure.into(), Piece::words("against A")])
    });
    entry(source, analysis, cell, SetupField::Swap(SwapField::Weight), SwapField::Weight.row().label)
}

/// The oil in words, and what its class does.
fn oil_cell(source: Source<'_>, analysis: &Analysis, sump: &Sump) -> Cell {
    let typed = source.job.setup(analysis.setup.id).map_or("", |setup| (sump.oil)(&setup.swap));
    let cell = Cell::default().and_maybe((sump.caution)(typed).map(Piece::caution));
    entry(source, analysis, cell, SetupField::Swap(sump.field), sump.field.row().label)
}

/// How the level moves at a tilt, once any oil is typed.
fn level_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    if !source.job.setup(analysis.setup.id).is_some_and(|setup| oil::is_typed(&setup.swap)) {
        return Cell::default();
    }
    let [way, moved] = oil::level_for_a_degree(source.reader.units);
    let figure = source.quantity("swap.oil_level", &moved, decimals(source) + 1);
    let filled = format!("{} × tan 1° = {}", shown(source, way), figure.text());
    let words = format!("higher or lower {} from the plug, for each degree: fill it with the car level", shown(source, way));
    Cell::line([figure.small().by("distance × tan of the tilt", filled, oil::LEVEL).into(), Piece::words(words)])
}
