//! The tyre's rows of Road speed: what it rolls and how that was got, its dimensions, its wear, the speed and load it is made for.

use crate::job::SetupField;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::entries::entry;
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::tyre::size::Form;
use crate::tyre::{Measure, Measurement, Rolling, Tyre, dimension};
use crate::units::common::in_millimetres;
use crate::units::{Length, Measured, System, number};

mod made_for;

pub(super) fn rows(source: Source<'_>) -> Vec<Row> {
    vec![
        source.row("rolls", "One tyre turn", |analysis| rolls_cell(source, analysis)),
        source.row("otherwise", "One tyre turn if it rolls otherwise", otherwise_cell),
        source.row("tyre", "Tyre, new", |analysis| dimensions_cell(source, analysis)),
        source.row("tread-lost", "Tread worn off", |analysis| wear_cell(source, analysis)),
        source.row("tyre-speed", "Tyre made for", |analysis| made_for::speed_cell(source, analysis)),
        source.row("tyre-load", "Tyre carries", |analysis| made_for::load_cell(source, analysis)),
    ]
}

fn decimals(source: Source<'_>) -> usize {
    if source.reader.units == System::Inch { 2 } else { 0 }
}

fn rolls_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(rolling) = &analysis.setup.rolling else { return Cell::needed(needs_to_roll(analysis)) };
    let figure = source.quantity("rolling_circumference", &rolling.circumference, decimals(source));
    let filled = to_readers_unit(&rolling.working, &figure);
    let figure = figure.by("what the tyre rolls at each turn, under load", filled, rolling.how.source());
    let turns = source.quantity("wheel_turns", &rolling.turns(), 0).small();
    Cell::line([figure.into(), turns.into()]).and([Piece::words(rolling.words())])
}

/// A tyre's working, which is in the millimetres of its size, brought to the unit that its figure is read in.
fn to_readers_unit(working: &str, figure: &Figure) -> String {
    if working.ends_with(" mm") && figure.unit != "mm" { format!("{working} = {}", figure.text()) } else { working.to_owned() }
}

/// What the tyre would roll by the other relations.
fn otherwise_cell(analysis: &Analysis) -> Cell {
    let (Some(rolling), Some(tyre)) = (&analysis.setup.rolling, &analysis.setup.tyre) else { return Cell::needed(needs_to_roll(analysis)) };
    let others = tyre.alternatives();
    if others.is_empty() { Cell::absent("measured: nothing to choose") } else { Cell::line([Piece::words(others_text(rolling, &others))]) }
}

/// What is missing before it is known how far the tyre rolls.
fn needs_to_roll(analysis: &Analysis) -> &'static str {
    if analysis.setup.tyre.is_some() { "needs the tread worn off" } else { "needs the tyre" }
}

/// `diagonal, 2.99 × diameter: −2.0 %; free of the road, π × diameter: +3.0 %`.
fn others_text(rolling: &Rolling, others: &[Rolling]) -> String {
    let used = in_millimetres(rolling.circumference);
    let one = |other: &Rolling| {
        let share = (in_millimetres(other.circumference) / used - 1.0) * 100.0;
        let sign = if share > 0.0 { "+" } else { "" };
        format!("{}: {sign}{} %", other.how.words(), number::show(share, 1))
    };
    others.iter().take(2).map(one).collect::<Vec<_>>().join("; ")
}

fn dimensions_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(tyre) = &analysis.setup.tyre else { return Cell::needed("needs the tyre") };
    let Some(diameter) = tyre.diameter() else { return Cell::absent("measured rolling, no size given") };
    let figure = |key: &str, measure: &Measure| {
        let figure = source.quantity(key, &measure.value, decimals(source));
        let filled = to_readers_unit(&measure.working, &figure);
        figure.by("from the size", filled, measure.source)
    };
    let mut line: Vec<Piece> = vec![figure("tyre.diameter", &diameter).into(), Piece::words(format!("across, {}", diameter.basis.word()))];
    if let (Some(width), Some(wall)) = (tyre.section_width(), tyre.sidewall()) {
        line.extend([
            figure("tyre.width", width).small().into(),
            Piece::words("wide"),
            figure("tyre.sidewall", wall).small().into(),
            Piece::words("sidewall"),
        ]);
    }
    let cell = against_new(source, tyre, Cell::line(line));
    let cell = cell
        .and_maybe(tyre.passed_over().map(|words| [Piece::words(format!("“{}” passed over", number::clip(&words.to_ascii_lowercase())))]));
    cell.and_maybe(
        tyre.dimensions()
            .and_then(|dimensions| dimensions.omitted_aspect)
            .map(|aspect| [Piece::words(format!("taken as {aspect} series: the size leaves it out"))]),
    )
}

/// What a new tyre of the size may measure, where a diameter was measured beside a metric size.
fn against_new(source: Source<'_>, tyre: &Tyre, cell: Cell) -> Cell {
    let (Some(Measurement::Diameter(measured)), Some(size), Some(dimensions)) = (tyre.measurement(), tyre.size(), tyre.dimensions()) else {
        return cell;
    };
    if !matches!(size.form, Form::Metric { .. }) {
        return cell;
    }
    let (least, greatest) = dimension::new_tyre_limits(size, dimensions);
    let (unit, decimals) = (Length::usual(source.reader.units), decimals(source));
    let [rim, wall] = [&dimensions.rim, &dimensions.sidewall].map(|measure| number::show(in_millimetres(measure.value), 0));
    let figure = |key: &str, value: Length| {
        let filled = format!("rim {rim} mm, sidewall {wall} mm: {} mm", number::show(in_millimetres(value), 1));
        let figure = Figure::quantity(key, &value, unit, decimals).small();
        figure.by(
            "d + 2H × 0.97, to d + 2H × 1.04 radial or 1.08 diagonal",
            filled,
            "UN R30 paragraph 6.1.4, from memory; indicative for light trucks",
        )
    };
    let said = match *measured {
        measured if measured < least => "when new: smaller than that is worn, or another size",
        measured if measured > greatest => "when new: larger than that is another size",
        _ => "when new",
    };
    cell.and([
        Piece::words("this size is"),
        figure("tyre.new_least", least).into(),
        Piece::words("to"),
        figure("tyre.new_greatest", greatest).into(),
        Piece::words(said),
    ])
}

fn wear_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let new = analysis.setup.tyre.as_ref().map(Tyre::rolling);
    let cell = match (new, &analysis.setup.rolling) {
        (Some(new), Some(worn)) if worn.circumference < new.circumference => {
            let share = 1.0 - in_millimetres(worn.circumference) / in_millimetres(new.circumference);
            let filled = format!(
                "1 − {} ÷ {}",
                number::show(in_millimetres(worn.circumference), 1),
                number::show(in_millimetres(new.circumference), 1)
            );
            let figure = Figure::percent("tyre.worn", share, 2).by("share = 1 − worn ÷ new circumference", filled, "geometry");
            Cell::line([figure.into(), Piece::words("off every road speed; the speedometer reads that much higher")])
        }
        (Some(_), None) => Cell::absent("cannot be read, so nothing is taken"),
        _ => Cell::line([Piece::words("none: as new")]),
    };
    entry(source, analysis, cell, SetupField::TreadLost, "depth of tread worn off")
}
