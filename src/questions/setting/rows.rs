//! The rows of Bearings and torque: the shim of a pair, its play hot, turning torque, ring and pinion, clutch housing.

mod fasteners;
mod pattern;

use super::answer::{BORE_RUN_OUT_MM, FACE_RUN_OUT_MM, USUAL_BACKLASH_MM, adds_up, ends, mean};
use super::read::Set;
use crate::checklist::Amount;
use crate::checklist::range::Slip;
use crate::fits::PlayRange;
use crate::fits::clock::Clock;
use crate::fits::tapered::Mounting;
use crate::questions::bench::unusable;
use crate::questions::deciding::few;
use crate::questions::endplay::rows::{decimals, said};
use crate::questions::{Source, small, warmth};
use crate::sheet::{Cell, Figure, Piece, Row, Worked};
use crate::units::common::millimetres;
use crate::units::{Length, Measured as _, System, Torque, Unit, number, unit};

const SHIM: &str = "makers’ manuals: installed shim + measured float + preload";
/// Source of what heat does to a pair.
const HEAT: &str = "the bearing trade’s usual formula, from memory; it assumes that the cups follow the case";

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let mut rows = rows(source);
    rows.retain(|row| !row.waits());
    few(rows, None)
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let set = Set::of(&source.job.bench);
    let mut rows = unusable(set.problems.iter().take(2));
    rows.extend(shim_row(source, &set));
    rows.extend(set.opens().map(|opens| hot_row(source, &set, opens)));
    rows.extend(set.turning().map(|torque| torque_row(source, &set, torque)));
    rows.extend(depth_row(source, &set));
    rows.extend(lash_row(source, &set));
    rows.extend(pattern::rows(&source.job.bench.setting));
    rows.extend(set.bore.as_ref().map(|bore| Row::of_one("bore", "Clutch housing, bore", bore_cell(source, bore))));
    rows.extend(set.face.as_ref().map(|face| Row::of_one("face", "Clutch housing, face", face_cell(source, face))));
    rows.extend(fasteners::rows(source, &set));
    let oil = source.job.bench.setting.oil.trim();
    rows.extend((!oil.is_empty()).then(|| Row::of_one("oil", "Oil", Cell::line([Piece::words(oil)]))));
    rows
}

fn figure(source: Source<'_>, key: &str, length: Length) -> Figure {
    source.quantity(&format!("setting.{key}"), &length, decimals(source))
}

/// A turning torque is read in lbf·in, not in lbf·ft.
pub(super) fn turning_unit(source: Source<'_>) -> &'static Unit<Torque> {
    match source.reader.units {
        System::Inch => &unit::LBF_IN,
        System::Metric => &unit::N_M,
    }
}

fn shim_row(source: Source<'_>, set: &Set) -> Option<Row> {
    let needs = |what: &str| Some(Row::of_one("shim", "Shim", Cell::needed(what)));
    let (installed, float) = match (set.shim_in, set.float()) {
        (Some(installed), Some(float)) => (installed, float),
        (None, None) => return None,
        (None, _) => return needs("needs the shim that is in now"),
        (_, None) => return needs("needs the float it leaves"),
    };
    let (Some([least, greatest]), Some(wanted)) = (set.shims(), set.wanted) else { return needs("needs the end play or preload wanted") };
    let best = figure(source, "shim", (least + greatest) / 2.0).big();
    let (unit, digits) = (Length::usual(source.reader.units).symbol, decimals(source));
    let [float, wished] = [float, wanted.middle()].map(|length| small::in_usual(source, length));
    let worked = small::worked(source, installed).in_unit(unit).plus(float, digits).in_unit(unit);
    let worked = worked.minus(wished, digits).in_unit(unit).in_brackets();
    let best = best.worked("shim = shim in now + float − end play wanted; preload counts as less than nothing", worked, SHIM);
    let [low, high] = [figure(source, "shim_least", least), figure(source, "shim_greatest", greatest)];
    let cell = Cell::line([best.into()]).and([low.into(), Piece::words("to"), high.into(), Piece::words("does it")]);
    let cell =
        cell.and_maybe((least < Length::default()).then(|| Piece::stop("no shim is thinner than nothing: check the float and its unit")));
    let apart = ends(&set.floats).filter(|_| set.floats.len() > 1).map(|[low, high]| high - low);
    let apart = apart.filter(|apart| *apart > millimetres(0.02));
    Some(Row::of_one(
        "shim",
        "Shim",
        cell.and_maybe(
            apart.map(|apart| Piece::caution(format!("the floats differ by {}: roll the bearings in and read again", said(source, apart)))),
        ),
    ))
}

fn hot_row(source: Source<'_>, set: &Set, opens: Length) -> Row {
    let [_, working] = set.temperatures;
    let label = format!("At {}", warmth::said(source, working));
    let Some(pair) = set.pair() else { return Row::of_one("hot", label, Cell::default()) };
    let (along, across) = (pair.along(set.warmer_k()), pair.across(set.warmer_k()));
    let sign = if pair.mounting == Mounting::FaceToFace { "+" } else { "−" };
    let filled = format!("{} {sign} {} = {}", said(source, across), said(source, along), said(source, opens));
    let opens_figure =
        figure(source, "opens", opens).by(format!("what the cups give {sign} what the case grows along the shaft"), filled, HEAT);
    let line = [opens_figure.into(), Piece::words("change in play with heat:")];
    let parts = [
        figure(source, "across", across).into(),
        Piece::words(format!("by the cups, {sign}")),
        figure(source, "along", along).into(),
        Piece::words("along the shaft"),
    ];
    let mut cell = Cell::line(line);
    if let Some((cold, hot)) = set.wanted.map(PlayRange::middle).zip(set.hot()) {
        let filled = format!("{} + {} = {}", said(source, cold), said(source, opens), said(source, hot));
        let hot_figure = figure(source, "hot", hot).big().by("hot = wanted at the bench + what comes with heat", filled, HEAT);
        let nothing = Length::default();
        let verdict = match (cold < nothing, hot < nothing) {
            (true, false) => Some(Piece::caution("the preload is gone when hot")),
            (false, true) => Some(Piece::stop("preload when hot: the bearings run themselves out")),
            _ => None,
        };
        let words = if hot < nothing { "preload" } else { "of end play" };
        cell = Cell::line([hot_figure.into(), Piece::words(words)]).and_maybe(verdict).and(cell.lines.concat());
    }
    let cell = cell.and(parts);
    let no_cups = set.cups.is_none().then(|| Piece::words("without the cups, which give more than the length does: type them"));
    Row::of_one("hot", label, cell.and_maybe(no_cups))
}

fn torque_row(source: Source<'_>, set: &Set, torque: Torque) -> Row {
    let unit = turning_unit(source);
    let places = if source.reader.units == System::Inch { 1 } else { 2 };
    let shown = Figure::quantity("setting.turning", &torque, unit, places).big();
    let (pull, radius) = (set.pull.unwrap_or_default(), set.radius.unwrap_or_default());
    let (force, length) = (crate::units::Force::usual(source.reader.units), Length::usual(source.reader.units));
    let arm = small::in_usual(source, radius);
    let worked = Worked::of((force.take)(&pull), 2).in_unit(force.symbol).times(arm, decimals(source)).in_unit(length.symbol);
    // Millimetres in a metre; in inches the torque is one of inches too.
    let worked = if source.reader.units == System::Metric { worked.over(1_000.0, 0) } else { worked };
    let shown = shown.worked("turning torque = pull × radius", worked, "plain statics");
    let wanted = set.torque_wanted();
    let words = wanted.as_ref().map(|wanted| {
        let usual = if set.torque.is_some() { "wanted" } else { "usual without the seal" };
        Piece::words(format!("{} {usual}", wanted.said()))
    });
    let slip = wanted.and_then(|wanted| wanted.slip(&Amount::of_torque(torque)));
    let verdict = set.turns_right().map(|is_right| match (is_right, slip) {
        (true, _) => Piece::good("inside"),
        (false, Some(Slip::FeetForInches)) => Piece::stop("twelve times off: is lbf·in meant, not lbf·ft?"),
        (false, Some(_)) => Piece::stop("ten times off: is the point in its place?"),
        (false, None) => Piece::caution("outside: change the shim or spacer; a crushed one is renewed, never slackened"),
    });
    let cell = Cell::line([shown.into()]).and_maybe(words).and_maybe(verdict);
    Row::of_one("turning", "Turning torque", cell)
}

fn depth_row(source: Source<'_>, set: &Set) -> Option<Row> {
    let (depth, mark) = (set.depth?, set.mark?);
    let shim = set.depth_shim()?;
    let sign = if shim <= depth && mark >= Length::default() || shim > depth && mark < Length::default() { "−" } else { "+" };
    let shown = figure(source, "depth", shim).big();
    let filled = format!("{} {sign} ({}) = {}", said(source, depth), said(source, mark), shown.text());
    let shown = shown.by(format!("shim = shim by the gauge {sign} mark"), filled, "a maker’s manual; the sense of the mark varies");
    let cell = Cell::line([shown.into(), Piece::words("under the pinion’s head")]);
    Some(Row::of_one("depth", "Pinion depth shim", cell.and([Piece::words("check by the axle’s manual which way its mark goes")])))
}

fn lash_row(source: Source<'_>, set: &Set) -> Option<Row> {
    if set.lash.is_empty() {
        return None;
    }
    let lash = set.backlash();
    let Some((middle, [least, greatest])) = mean(&lash).zip(ends(&lash)) else {
        return Some(Row::of_one(
            "lash",
            "Backlash at the tooth",
            Cell::needed("needs the radius of the dial and of the gear’s pitch circle"),
        ));
    };
    let shown = figure(source, "lash", middle).big();
    let way = mean(&set.lash.iter().map(|way| way.abs()).collect::<Vec<_>>()).unwrap_or_default();
    let (dial, pitch) = (set.dial_radius.unwrap_or_default(), set.pitch_radius.unwrap_or_default());
    let (unit, digits) = (Length::usual(source.reader.units).symbol, decimals(source));
    let [pitch, dial] = [pitch, dial].map(|length| small::in_usual(source, length));
    let worked = small::worked(source, way).in_unit(unit).times(pitch, digits).in_unit(unit).over(dial, digits).in_unit(unit);
    let shown = shown.worked("backlash = way of the dial × pitch radius ÷ radius of the dial", worked, "plain geometry");
    let [low, high] = USUAL_BACKLASH_MM.map(millimetres);
    let verdict = if least >= low && greatest <= high {
        Piece::good("inside what is usual for cars")
    } else if greatest > high {
        Piece::caution("more than is usual for cars: ring nearer, unless its manual says so")
    } else {
        Piece::caution("less than is usual for cars: ring further off, unless its manual says so")
    };
    let mut cell = Cell::line([shown.into()]);
    if lash.len() > 1 {
        cell = cell.and([
            figure(source, "lash_least", least).into(),
            Piece::words("to"),
            figure(source, "lash_greatest", greatest).into(),
            Piece::words("round the ring"),
        ]);
    }
    Some(Row::of_one("lash", "Backlash at the tooth", cell.and([verdict])))
}

/// `10 o’clock`, from the hour a thing stands off to.
pub(super) fn towards(hour: u32) -> String {
    format!("{hour} o’clock")
}

/// The hour across the dial.
pub(super) fn across(hour: u32) -> u32 {
    if hour > 6 { hour - 6 } else { hour + 6 }
}

fn bore_cell(source: Source<'_>, bore: &Clock) -> Cell {
    let off = figure(source, "bore_off", bore.off()).big();
    let [right, up] = bore.offset();
    let unit = Length::usual(source.reader.units);
    let bare = |length: Length| number::show((unit.take)(&length), decimals(source));
    let filled = format!("√(({})² + ({})²) = {}", bare(right), bare(up), off.text());
    let off = off.by(
        "offset = √(half of nine less three, squared + half of six less twelve, squared)",
        filled,
        "plain geometry: the run-out is twice the offset",
    );
    let mut line: Vec<Piece> = vec![off.into()];
    line.push(Piece::words(bore.hour().map_or_else(|| "off".into(), |hour| format!("off, towards {}", towards(hour)))));
    let total = [figure(source, "bore_run_out", bore.run_out()).into(), Piece::words("in total on the dial")];
    let verdict = if !adds_up(bore) {
        Piece::caution(format!(
            "opposite readings do not add up, by {}: hold the crank forward and read again",
            said(source, bore.misses())
        ))
    } else if bore.run_out() <= millimetres(BORE_RUN_OUT_MM) {
        Piece::good(format!("inside {} in total", said(source, millimetres(BORE_RUN_OUT_MM))))
    } else {
        let hour = bore.hour().map_or_else(String::new, |hour| format!(" towards {}", towards(across(hour))));
        Piece::caution(format!("move the housing {}{hour}: offset dowels", said(source, bore.off())))
    };
    Cell::line(line).and(total).and([verdict])
}

fn face_cell(source: Source<'_>, face: &Clock) -> Cell {
    let total = figure(source, "face_run_out", face.run_out()).big();
    let verdict = if !adds_up(face) {
        Piece::caution(format!(
            "opposite readings do not add up, by {}: the face is warped, or the crank moved",
            said(source, face.misses())
        ))
    } else if face.run_out() <= millimetres(FACE_RUN_OUT_MM) {
        Piece::good(format!("inside {} in total", said(source, millimetres(FACE_RUN_OUT_MM))))
    } else {
        Piece::caution("out of square: dress the face, or shim it")
    };
    Cell::line([total.into(), Piece::words("in total on the dial")]).and([verdict])
}
