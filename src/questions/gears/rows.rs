//! Gears: what are the ratios, and how far apart are they?

use crate::gearing::check::SUM_TOLERANCE;
use crate::gearing::ladder::Character;
use crate::gearing::teeth::decimal;
use crate::gearing::{Gear, GearNumber, Idler, Layout, Mesh, PrintedRatio, Ratio, Reverse, ReverseGears, Step, write};
use crate::job::SetupField;
use crate::questions::Analysis;
use crate::questions::needs::uncounted_or;
use crate::questions::{Source, Station, needs_behind};
use crate::questions::{case, entries as typed};
use crate::sheet::{Cell, Figure, Piece, Row, Worked};
use crate::units::number;

mod table;

pub use table::{deciding, deciding_without_engine};

/// Source of every ratio of a train.
const TRAIN: &str = "ratio of a gear train: product of driven teeth over product of driving teeth (any textbook of the theory of machines)";

/// First gear's overall ratio, for every setup.
pub fn station(source: Source<'_>) -> Station {
    Station::of(source, "1st gear, overall", |analysis| Some(number::show(decimal(analysis.gears().first_overall()?), 2)))
}

/// All rows but those of the gear table.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let mut rows = typed::constant_rows(source);
    rows.push(source.row("reverse", "Reverse", |analysis| {
        let cell = typed::entry(source, analysis, reverse_cell(analysis), SetupField::Reverse, "outer gears of reverse");
        typed::entry(source, analysis, cell, SetupField::Idler, "reverse idler")
    }));
    rows.push(source.row("drops", "Upshift drop, rpm lost", drops_cell));
    rows.push(source.row("sums", "Tooth sums", sums_cell));
    rows.extend(case::row(source));
    rows.push(source.row("overall", "Overall ratios", overall_cell));
    rows.push(source.row("first-overall", "1st gear, overall", first_overall_cell));
    rows.push(source.row("spread", "1st ÷ top", spread_cell));
    rows.extend(typed::stage_rows(source));
    rows
}

/// The ratio of a gear, shown large, with how it came about.
fn ratio_figure(analysis: &Analysis, gear: GearNumber) -> Option<Figure> {
    let (path, ratio) = (gear.of(&analysis.setup.gears).copied().flatten()?, gear.of(&analysis.gears().ratios).copied().flatten()?);
    let key = format!("gear_{}.ratio", gear.number());
    if let Some(printed) = path.printed() {
        return Some(printed_figure(key, printed).big());
    }
    let filled = equation(&path_text(analysis, path), ratio);
    let figure = Figure::ratio(key, ratio, 3).big();
    Some(figure.by("i = driven teeth ÷ driving teeth, over every mesh of the path", filled, TRAIN))
}

/// The ratio of a gear with a stage switched in, and how it came about.
fn step_figure(analysis: &Analysis, step: &Step) -> Option<Figure> {
    let (ratio, gear) = (step.ratio?, step.gear.of(&analysis.gears().ratios).copied().flatten()?);
    let worked = Worked::of(decimal(gear), 4).times(decimal(step.factor), 4).to(4);
    let figure = Figure::ratio(format!("gear_{}.ratio", step.key()), ratio, 3).small();
    Some(figure.worked("i = ratio of the gear × ratio of the stage in ÷ out", worked, TRAIN))
}

/// Why a gear has no ratio.
fn no_ratio(analysis: &Analysis, gear: GearNumber) -> Cell {
    if gear.place() < analysis.setup.gears.len() {
        Cell::needed("needs its tooth counts or its ratio")
    } else {
        Cell::needed(format!("no {gear}"))
    }
}

/// Every step times all that stands behind the gearbox.
fn overall_cell(analysis: &Analysis) -> Cell {
    let known = analysis.setup.steps.iter().filter_map(|step| Some(Piece::from(overall_figure(analysis, step)?)));
    let line = parted(known);
    if line.is_empty() { Cell::needed(needs_behind(analysis, GearNumber::FIRST)) } else { Cell::line(line) }
}

/// Figures of a line with a point between them.
fn parted(figures: impl Iterator<Item = Piece>) -> Vec<Piece> {
    let mut line: Vec<Piece> = Vec::new();
    for figure in figures {
        if !line.is_empty() {
            line.push(Piece::words("·"));
        }
        line.push(figure);
    }
    line
}

/// A ratio with as many digits as it was printed with.
fn printed_figure(key: String, printed: PrintedRatio) -> Figure {
    let half = number::show(decimal(printed.half_unit()), usize::try_from(printed.decimals).unwrap_or_default() + 1);
    let figure = Figure::ratio(key, printed.value, usize::try_from(printed.decimals).unwrap_or_default());
    figure.by("i as printed, to half a unit of its last digit", format!("{} ± {half}", printed.shown()), "printed, not counted")
}

/// What a printed ratio leaves open, and every figure that follows from it: `±0.2 %`.
pub fn plus_minus(printed: PrintedRatio) -> String {
    format!("±{} %", number::show(100.0 * printed.plus_minus(), if printed.decimals > 2 { 2 } else { 1 }))
}

fn overall_figure(analysis: &Analysis, step: &Step) -> Option<Figure> {
    let (ratio, overall) = (step.ratio?, analysis.setup.overall(step)?);
    let behind = analysis.setup.behind_gearbox().map_or(1.0, decimal);
    let worked = Worked::of(decimal(ratio), 4).times(behind, 4).to(4);
    let formula = "overall = gearbox ratio × extra stages × final drive";
    let decimals =
        analysis.setup.printed(step.gear).and_then(|printed| usize::try_from(printed.decimals).ok()).map_or(3, |decimals| decimals.min(3));
    Some(Figure::ratio(format!("gear_{}.overall", step.key()), overall, decimals).small().worked(formula, worked, TRAIN))
}

/// The meshes of a path as fractions: `30/25 × 37/18`.
fn path_text(analysis: &Analysis, gear: Gear) -> String {
    let layout = analysis.setup.layout;
    let Some(mesh) = gear.mesh() else { return write::gear(gear, layout) };
    match analysis.setup.constant {
        None => fraction(mesh),
        Some(constant) if layout == Layout::OutputReduced => format!("{} × {}", fraction(mesh), fraction(constant)),
        Some(constant) => format!("{} × {}", fraction(constant), fraction(mesh)),
    }
}

fn fraction(mesh: Mesh) -> String {
    format!("{}/{}", mesh.driven, mesh.driver)
}

/// `30/25 × 37/18 = 37/15 = 2.4667`.
pub fn equation(teeth: &str, ratio: Ratio) -> String {
    let exact = if teeth == ratio.to_string() { teeth.to_owned() } else { format!("{teeth} = {ratio}") };
    if ratio.is_integer() { exact } else { format!("{exact} = {}", number::show(decimal(ratio), 4)) }
}

fn reverse_cell(analysis: &Analysis) -> Cell {
    let (Some(reverse), Some(ratio)) = (analysis.setup.reverse, analysis.gears().reverse) else {
        return Cell::needed("neither teeth nor ratio given");
    };
    let gears = match reverse {
        Reverse::Printed(printed) => {
            let line =
                [printed_figure("reverse.ratio".into(), printed).into(), Piece::words(format!("{} as printed", plus_minus(printed)))];
            return Cell::line(line);
        }
        Reverse::Geared(gears) => gears,
    };
    let teeth = match analysis.setup.constant {
        Some(constant) => format!("{} × {}", fraction(constant), reverse_text(gears)),
        None => reverse_text(gears),
    };
    let formula = "i = driven teeth ÷ driving teeth; a plain idler changes the direction only";
    let figure = Figure::ratio("reverse.ratio", ratio, 3).by(formula, equation(&teeth, ratio), TRAIN);
    Cell::line([figure.into()])
}

fn reverse_text(reverse: ReverseGears) -> String {
    match reverse.idler {
        Idler::Plain(None) => fraction(reverse.pair),
        Idler::Plain(Some(idler)) => format!("{}/{} by an idler of {idler}", reverse.pair.driven, reverse.pair.driver),
        Idler::Compound { entry, exit } => format!("{entry}/{} × {}/{exit}", reverse.pair.driver, reverse.pair.driven),
    }
}

fn drops_cell(analysis: &Analysis) -> Cell {
    let Some(ladder) = &analysis.gears().ladder else { return Cell::needed("needs every gear") };
    let drops = ladder.drops();
    if drops.is_empty() {
        return Cell::needed("one gear only");
    }
    let figures = GearNumber::lowest(drops.len()).filter_map(|gear| drop_figure(analysis, gear, &format!("gear_{}.drop", gear.number())));
    let line = parted(figures.map(Piece::from));
    Cell::line(line).and_maybe(analysis.gears().character.and_then(|character| character_verdict(character, &drops)))
}

/// The share of engine speed lost on the upshift from one gear.
pub fn drop_figure(analysis: &Analysis, gear: GearNumber, key: &str) -> Option<Figure> {
    let ladder = analysis.gears().ladder.as_ref()?;
    let (lower, upper, drop) = (*gear.of(ladder.ratios())?, *gear.next().of(ladder.ratios())?, *gear.of(&ladder.drops())?);
    let worked = Worked::of(1.0, 0).minus(decimal(upper), 4).over(decimal(lower), 4).times_unseen(100.0).to(1);
    let source = "engine speed follows the ratio at one road speed (plain kinematics)";
    Some(Figure::percent(key, drop, 0).worked("share of rpm lost = 1 − next ratio ÷ this ratio", worked, source))
}

fn character_verdict(character: Character, drops: &[f64]) -> Option<Piece> {
    let every_smaller = drops.windows(2).all(|pair| matches!(pair, [lower, upper] if upper < lower));
    Some(match character {
        Character::Progressive if every_smaller => Piece::good("each drop smaller than the one before"),
        Character::Progressive => Piece::good("the drops grow smaller towards the top"),
        Character::Geometric => Piece::good("every drop alike"),
        Character::Uneven(gear) => Piece::caution(format!("{gear} to {} falls further than {} to {gear}", gear.next(), gear.below()?)),
        Character::Inverted(gear) => Piece::caution(format!("{} is not faster than {gear}: check the counts", gear.next())),
        Character::Short => return None,
    })
}

fn sums_cell(analysis: &Analysis) -> Cell {
    let Some(range) = analysis.gears().sums.as_ref().and_then(crate::gearing::check::ToothSums::range) else {
        return uncounted_or(analysis, "needs every gear");
    };
    let (least, greatest) = range;
    let source = "one centre distance holds one tooth sum at one pitch (any textbook of gears)";
    let sums = sums_text(analysis);
    let figure = |key: &str, sum: u16| Figure::number(key, f64::from(sum), 0).by("sum = teeth of both gears of a pair", &sums, source);
    let centres = case::centres(analysis);
    if least == greatest && centres.is_none_or(|centres| centres.agree) {
        return Cell::line([figure("tooth_sum", least).into(), Piece::good("every pair")]);
    }
    let line = if least == greatest {
        vec![figure("tooth_sum", least).into()]
    } else {
        vec![figure("tooth_sum_least", least).into(), Piece::words("to"), figure("tooth_sum_greatest", greatest).into()]
    };
    Cell::line(line).and([sums_verdict(greatest - least, centres)])
}

/// Whether pairs whose tooth sums are so far apart share one centre distance, as far as that is known.
fn sums_verdict(apart: u16, centres: Option<case::Centres>) -> Piece {
    match centres {
        Some(centres) if centres.agree => Piece::good(format!("cut for one centre distance: {}", centres.words())),
        Some(centres) => {
            Piece::caution(format!("by their pitches {}: these pairs cannot share one centre distance; check the pitches", centres.words()))
        }
        None if apart > SUM_TOLERANCE => Piece::caution(format!(
            "{apart} teeth apart: pairs of one pitch cannot share one centre distance; count again, look for mixed parts, or say under Inside \
             which pairs are cut otherwise"
        )),
        None => Piece::words("within what profile shift takes up"),
    }
}

fn first_overall_cell(analysis: &Analysis) -> Cell {
    first_overall(analysis, "first_overall")
        .map_or_else(|| Cell::needed(needs_behind(analysis, GearNumber::FIRST)), |figure| Cell::line([figure.into()]))
}

/// `25 + 30 = 55; 18 + 37 = 55`, the constant pair first.
fn sums_text(analysis: &Analysis) -> String {
    let pairs = analysis.setup.gears.iter().copied().flatten().filter_map(Gear::mesh);
    let text = |mesh: Mesh| format!("{} + {} = {}", mesh.driver, mesh.driven, mesh.sum());
    analysis.setup.constant.into_iter().chain(pairs).map(text).collect::<Vec<_>>().join("; ")
}

/// First gear's overall ratio, to two digits behind the point.
pub fn first_overall(analysis: &Analysis, key: &str) -> Option<Figure> {
    let overall = analysis.gears().first_overall()?;
    let first = analysis.setup.steps.iter().find(|step| step.gear == GearNumber::FIRST && step.is_at_rest())?;
    let mut figure = overall_figure(analysis, first)?;
    figure.key = key.into();
    figure.shown = number::show(decimal(overall), 2);
    figure.size = crate::sheet::Size::Plain;
    Some(figure)
}

fn spread_cell(analysis: &Analysis) -> Cell {
    let (Some(spread), Some(ladder)) = (analysis.gears().spread(), &analysis.gears().ladder) else {
        return Cell::needed("needs every gear");
    };
    let (first, top) =
        ladder.ratios().first().zip(ladder.ratios().last()).map_or((0.0, 0.0), |(first, top)| (decimal(*first), decimal(*top)));
    let worked = Worked::of(first, 4).over(top, 4).to(4);
    let source = "spread of a gearbox (Naunheimer and others, Automotive Transmissions, ch. 4, from memory)";
    Cell::line([Figure::ratio("spread", spread, 2).worked("spread = 1st ÷ top", worked, source).into()])
}
