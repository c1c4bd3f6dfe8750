//! The rows of End play and shims: the play without shims, what the shims must be, the packs that do it, how all was read.

use super::answer::{Play, Shims};
use super::read::Measured;
use crate::fits::shims::Pack;
use crate::fits::{Shim, ShimsGo, Stack, slip};
use crate::questions::Source;
use crate::questions::bench::unusable;
use crate::questions::deciding::few;
use crate::questions::setting::answer::{ends, mean};
pub use crate::questions::small::{decimals, said};
use crate::questions::{small, warmth};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::{Length, Measured as _, limits, number};

/// How many packs decide.
const DECIDING_PACKS: usize = 3;
/// Source of the sum and of its spread.
const STACKED: &str =
    "Shigley, Mechanical Engineering Design, section 1-14; the root-sum-square holds for parts independent of one another";
const GROWTH: &str = "linear growth, case and shaft equally hot (any textbook of machine elements)";

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let mut all = rows(source);
    all.retain(|row| !matches!(row.key.as_str(), "spread" | "hot" | "read-as") && !row.waits());
    let late = |row: &Row| row.key.strip_prefix("choice-").and_then(|at| at.parse().ok()).is_some_and(|at: usize| at > DECIDING_PACKS);
    all.retain(|row| !late(row));
    few(all, None)
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let bench = &source.job.bench;
    let measured = Measured::of_source(source);
    let mut rows = unusable(measured.problems.iter().take(2));
    let Some(play) = Play::of(bench, &measured) else {
        rows.extend(assembled_row(source, &measured));
        return rows;
    };
    rows.extend(doubts(source, &measured, &play));
    rows.push(Row::of_one("gap", "Without shims", gap_cell(source, &play)));
    rows.extend(play.shims.as_ref().map(|shims| Row::of_one("needed", "Shims needed", needed_cell(source, &play, shims))));
    rows.extend(packs(source, &measured, &play));
    rows.extend(assembled_row(source, &measured));
    rows.push(Row::of_one("read-as", "Read as", Cell::line([Piece::words(read_as_said(source, &play.stack, &measured.kit))])));
    if play.stack.has_tolerances() {
        rows.push(Row::of_one("spread", "Without shims, at worst", spread_cell(source, &play)));
    }
    rows.extend(play.opens.map(|opens| Row::of_one("hot", format!("At {}", warm(source, &measured)), hot_cell(source, &play, opens))));
    rows
}

fn figure(source: Source<'_>, key: &str, length: Length) -> Figure {
    small::figure(source, &format!("endplay.{key}"), length)
}

/// A range in words, without digits it does not have: `0.002 to 0.006 in`.
pub fn range(source: Source<'_>, [least, greatest]: [Length; 2]) -> String {
    let unit = Length::usual(source.reader.units);
    let scale = 10_f64.powi(i32::try_from(decimals(source)).unwrap_or(0));
    let bare = |length: Length| limits::shown(((unit.take)(&length) * scale).round() / scale);
    format!("{} to {} {}", bare(least), bare(greatest), unit.symbol)
}

/// How warm the box gets, in words.
pub fn warm(source: Source<'_>, measured: &Measured) -> String {
    let [_, working] = measured.temperatures;
    warmth::said(source, working)
}

/// What is doubtful about what was typed: a wide range, a kit in the other unit.
fn doubts(source: Source<'_>, measured: &Measured, play: &Play) -> Vec<Row> {
    let row = |key: &str, says: String| Row::of_one(key, "Read right?", Cell::line([Piece::caution(says)]));
    let mut rows = Vec::new();
    if let Some((at, slip, gap)) = play.slip {
        rows.extend(play.stack.parts.get(at).map(|part| row("slip", super::sentence::slip_said(source, &part.name, slip, gap))));
    }
    rows.extend(measured.wanted.filter(|wanted| slip::is_unusual_play(wanted.least, wanted.greatest)).map(|wanted| {
        let range = range(source, [wanted.least, wanted.greatest]);
        row("wanted-doubt", format!("{range} is wanted, which no usual gearbox is set to: is the point in its place, and the unit right?"))
    }));
    let other = play.shims.as_ref().and_then(|shims| shims.other_system);
    rows.extend(other.map(|other| {
        let unit = Length::usual(other).symbol;
        row("kit-doubt", format!("nothing in the kit lands, but read in {unit} it would: type {unit} behind the sizes if they are"))
    }));
    rows
}

fn gap_cell(source: Source<'_>, play: &Play) -> Cell {
    let unit = Length::usual(source.reader.units);
    let terms = |makes_room: bool, first: &str, sign: &str| {
        let each = play.stack.parts.iter().filter(|part| part.makes_room == makes_room).enumerate().map(|(at, part)| {
            let times = if part.count > 1 { format!("{} × ", part.count) } else { String::new() };
            let sign = if at == 0 { first } else { sign };
            format!("{sign}{times}{}", number::show((unit.take)(&part.length), decimals(source)))
        });
        each.collect::<String>()
    };
    let filled = format!("{}{} = {}", terms(true, "", " + "), terms(false, " − ", " − "), said(source, play.gap));
    let gap = figure(source, "gap", play.gap).big().by("play = what makes room − what takes it up", filled, STACKED);
    let cell = Cell::line([gap.into(), Piece::words("at the bench")]);
    let cell = if play.stack.has_tolerances() {
        let [worst, likely] = [("worst_off", play.stack.worst_case()), ("likely_off", play.stack.root_sum_square())]
            .map(|(key, off)| figure(source, key, off));
        let worst = worst.by("worst case = Σ of all tolerances", tolerances(source, play, false), STACKED);
        let likely = likely.by("root-sum-square = √Σ of their squares", tolerances(source, play, true), STACKED);
        cell.and([Piece::words("give or take"), likely.into(), Piece::words("likely,"), worst.into(), Piece::words("at worst")])
    } else {
        cell
    };
    if play.gap < Length::default() {
        return cell.and([Piece::caution("the parts are longer than what they go into")]);
    }
    cell
}

/// The tolerances added up, or the root of their squares.
fn tolerances(source: Source<'_>, play: &Play, is_root: bool) -> String {
    let unit = Length::usual(source.reader.units);
    let square = if is_root { "²" } else { "" };
    let each = play.stack.parts.iter().filter(|part| part.tolerance > Length::default()).map(|part| {
        let times = if part.count > 1 { format!("{} × ", part.count) } else { String::new() };
        format!("{times}{}{square}", number::show((unit.take)(&part.tolerance), decimals(source)))
    });
    let sum = each.collect::<Vec<_>>().join(" + ");
    let off = if is_root { play.stack.root_sum_square() } else { play.stack.worst_case() };
    if is_root { format!("√({sum}) = {}", said(source, off)) } else { format!("{sum} = {}", said(source, off)) }
}

fn spread_cell(source: Source<'_>, play: &Play) -> Cell {
    let line = |least: &str, greatest: &str, off: Length, words: &str| {
        let (low, high) = (figure(source, least, play.gap - off), figure(source, greatest, play.gap + off));
        vec![low.into(), Piece::words("to"), high.into(), Piece::words(words)]
    };
    Cell::line(line("worst_least", "worst_greatest", play.stack.worst_case(), "every part at its worst")).and(line(
        "likely_least",
        "likely_greatest",
        play.stack.root_sum_square(),
        "root-sum-square",
    ))
}

fn hot_cell(source: Source<'_>, play: &Play, opens: Length) -> Cell {
    let hot = figure(source, "gap_hot", play.gap + opens);
    let Some(heat) = play.heat else { return Cell::line([hot.into()]) };
    let unit = Length::usual(source.reader.units);
    let bare = |length: Length| number::show((unit.take)(&length), decimals(source));
    let ppm = |value: f64| number::show(value, 1);
    let filled = format!(
        "{} + {} K × ({} × {} − {} × {}) ÷ 1,000,000 = {}",
        bare(play.gap),
        number::show(heat.warmer_k, 0),
        ppm(heat.case.growth_ppm_per_k()),
        bare(play.stack.room()),
        ppm(heat.inside.growth_ppm_per_k()),
        bare(play.stack.taken()),
        said(source, play.gap + opens)
    );
    let hot = hot.by("hot = play + ΔT × (α of the case × what makes room − α of steel × what takes it up)", filled, GROWTH);
    Cell::line([hot.into(), Piece::words("without shims")])
}

fn needed_cell(source: Source<'_>, play: &Play, shims: &Shims) -> Cell {
    let [least, most] = shims.needed;
    if !shims.can_do() {
        let off = figure(source, "beyond", -most);
        let words = match shims.go {
            ShimsGo::InTheStack => "less play than wanted already: no shim helps, fit a thinner washer or have one ground",
            ShimsGo::UnderTheCover => "more play than wanted already: no shim helps, fit a thicker washer",
        };
        return Cell::line([off.into(), Piece::stop(words)]);
    }
    let best = (least + most) / 2.0;
    let best = figure(source, "best", best.max(Length::default()));
    let wanted = said(source, shims.wanted.middle());
    let (formula, filled) = match shims.go {
        ShimsGo::InTheStack => ("shims = play without them − play wanted", format!("{} − {wanted}", said(source, play.gap))),
        ShimsGo::UnderTheCover => ("shims = play wanted − play without them", format!("{wanted} − {}", said(source, play.gap))),
    };
    let filled = format!("{filled} = {}", best.text());
    let line = [
        figure(source, "needed_least", least.max(Length::default())).into(),
        Piece::words("to"),
        figure(source, "needed_greatest", most).into(),
    ];
    Cell::line(line).and([Piece::words("best"), best.by(formula, filled, STACKED).into()])
}

/// The play that was read once assembled: its mean, how crooked it is, and whether it is what is wanted.
fn assembled_row(source: Source<'_>, measured: &Measured) -> Option<Row> {
    let [least, greatest] = ends(&measured.assembled)?;
    let middle = mean(&measured.assembled)?;
    let tilt = greatest - least;
    let mut line: Vec<Piece> = vec![figure(source, "assembled", middle).big().into()];
    if measured.assembled.len() > 1 {
        line.extend([figure(source, "tilt", tilt).into(), Piece::words("from place to place")]);
    }
    let verdict = measured.wanted.map(|wanted| match (wanted.holds(least) && wanted.holds(greatest), wanted.holds(middle)) {
        (true, _) => Piece::good("inside at every place"),
        (false, true) => {
            Piece::caution("inside on the whole, not at every place: look for a burr, a crooked case or a washer that is not flat")
        }
        (false, false) => Piece::stop("out of what is wanted: take it apart and measure the stack again"),
    });
    Some(Row::of_one("assembled", "Read once assembled", Cell::line(line).and_maybe(verdict)))
}

/// A row for each pack that lands; where none does, one for the nearest.
fn packs(source: Source<'_>, measured: &Measured, play: &Play) -> Vec<Row> {
    let Some(shims) = play.shims.as_ref().filter(|shims| shims.can_do()) else { return Vec::new() };
    if measured.kit.is_empty() {
        return vec![Row::of_one("kit", "Shims left", Cell::needed("needs the shims left in the drawer"))];
    }
    let landing = (1..).zip(&shims.found.landing).map(|(at, pack)| {
        let cell = pack_cell(source, measured, play, shims, (&format!("choice_{at}"), pack));
        Row::of_one(format!("choice-{at}"), capital_pack(&measured.kit, pack), cell)
    });
    let nearest = shims.found.nearest.iter().map(|pack| {
        let cell = pack_cell(source, measured, play, shims, ("nearest", pack));
        Row::of_one("nearest", format!("Nearest: {}", pack_said(&measured.kit, pack)), cell.and([Piece::stop("outside of what is wanted")]))
    });
    landing.chain(nearest).collect()
}

fn pack_cell(source: Source<'_>, measured: &Measured, play: &Play, shims: &Shims, (key, pack): (&str, &Pack)) -> Cell {
    let (cold, hot) = play.with(shims, pack);
    let sign = if shims.go == ShimsGo::InTheStack { "−" } else { "+" };
    let filled = format!("{} {sign} {} = {}", said(source, play.gap), said(source, pack.thickness()), said(source, cold));
    let figure_of = |name: &str, length| figure(source, &format!("{key}.{name}"), length);
    let cold_figure = figure_of("bench", cold).big().by(format!("play = play without shims {sign} shims"), filled, STACKED);
    let mut line: Vec<Piece> = vec![cold_figure.into(), Piece::words("at the bench")];
    if let Some(hot) = hot {
        line.extend([figure_of("hot", hot).into(), Piece::words(format!("at {}", warm(source, measured)))]);
    }
    let worst = play.stack.worst_case();
    let is_inside = shims.wanted.holds(cold);
    let is_sure = shims.wanted.holds(cold - worst) && shims.wanted.holds(cold + worst);
    let verdict = (is_inside && play.stack.has_tolerances()).then(|| {
        if is_sure { Piece::good("inside even at worst") } else { Piece::caution("at worst outside: measure again once assembled") }
    });
    Cell::line(line).and_maybe(verdict)
}

/// `2 × 0.20 + 0.10 mm`, `no shims`.
pub fn pack_said(kit: &[Shim], pack: &Pack) -> String {
    let mut counted: Vec<(usize, &Shim)> = Vec::new();
    for shim in pack.sizes.iter().filter_map(|size| kit.get(*size)) {
        match counted.last_mut().filter(|(_, last)| *last == shim) {
            Some((many, _)) => *many += 1,
            None => counted.push((1, shim)),
        }
    }
    let unit = |shim: &Shim| shim.label.rsplit_once(' ').map_or("", |(_, unit)| unit).to_owned();
    let is_alike = counted.iter().all(|(_, shim)| counted.first().is_some_and(|(_, first)| unit(first) == unit(shim)));
    let last = counted.len().saturating_sub(1);
    let each = counted.iter().enumerate().map(|(at, (many, shim))| {
        let bare = shim.label.rsplit_once(' ').map_or(shim.label.as_str(), |(figure, _)| figure);
        let label = if is_alike && at < last { bare } else { &shim.label };
        if *many > 1 { format!("{many} × {label}") } else { label.to_owned() }
    });
    let said = each.collect::<Vec<_>>().join(" + ");
    if said.is_empty() { "no shims".into() } else { said }
}

fn capital_pack(kit: &[Shim], pack: &Pack) -> String {
    if pack.sizes.is_empty() { "No shims".into() } else { format!("Fit {}", pack_said(kit, pack)) }
}

/// How stack and kit were read, for whoever typed them; nothing where nothing can be made of them.
pub fn read_as(source: Source<'_>) -> String {
    let measured = Measured::of_source(source);
    measured.stack.map_or_else(String::new, |stack| format!("Read as {}.", read_as_said(source, &stack, &measured.kit)))
}

/// How stack and kit were read, each figure with its unit.
fn read_as_said(source: Source<'_>, stack: &Stack, kit: &[Shim]) -> String {
    let each = stack.parts.iter().enumerate().map(|(at, part)| {
        let sign = match (part.makes_room, at) {
            (true, 0) => "",
            (true, _) => "+ ",
            (false, _) => "− ",
        };
        let times = if part.count > 1 { format!("{} × ", part.count) } else { String::new() };
        format!("{sign}{times}“{}” {}", number::clip(&part.name), said(source, part.length))
    });
    let stack = each.collect::<Vec<_>>().join(" ");
    if kit.is_empty() { stack } else { format!("{stack}; in the drawer {}", kit_said(kit)) }
}

/// `3 × 0.10 mm, 1 × 0.15 mm`.
pub(super) fn kit_said(kit: &[Shim]) -> String {
    kit.iter().map(|shim| format!("{} × {}", shim.left, shim.label)).collect::<Vec<_>>().join(", ")
}
