//! The rows of Teeth: pair by pair against A, the thrust left over; forces, stresses, sliding and what is typed behind them.

use super::answer::{PairLoad, Thrust};
use super::bearing_rows;
use crate::gearing::geometry::pair_cuts::PairAt;
use crate::gearing::part::Shaft;
use crate::gearing::speeds::Selected;
use crate::gearing::{GearNumber, Layout, Teeth};
use crate::job::{InsideField, SetupChoice, SetupField};
use crate::questions::deciding::{MOST, few};
use crate::questions::entries::choice;
use crate::questions::inside;
use crate::questions::needs::uncounted_or;
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::toothload::ToothForces;
use crate::toothload::sliding::USUAL_FRICTION;
use crate::units::{Force, Length, Measured, Pressure, System, Torque, Velocity, number, unit};

const FORCES: &str = "Shigley, Mechanical Engineering Design, section 13-16";
const LEWIS: &str = "Lewis, with the factor for speed of shaved or ground teeth; Shigley, Mechanical Engineering Design, section 14-1";
/// Source of contact.
const HERTZ: &str = "Hertz, by the basic terms of ISO 6336-2 (from memory); steel on steel";

/// The rows that decide: pitch and face width, without which there is nothing to say, the pairs, the thrust.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let typed = inside::rows::cut::typed_rows(source)
        .into_iter()
        .filter(|row| [InsideField::Pitch, InsideField::Face].iter().any(|field| row.key == SetupField::Inside(*field).path()));
    let mut rows: Vec<Row> = typed.collect();
    let life = bearing_rows::life_rows(source);
    let room = MOST.saturating_sub(rows.len() + 1 + life.len());
    rows.extend(pairs(source).into_iter().take(room).map(|at| bears_row(source, at)));
    rows.push(thrust_row(source, selected(source)));
    rows.extend(life);
    few(rows, None)
}

/// The other rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let mut rows: Vec<Row> = inside::rows::cut::typed_rows(source).into_iter().collect();
    rows.push(source.row("cluster-hand", "Hand of the cluster’s teeth", |analysis| {
        choice(source, analysis, Cell::default(), SetupChoice::ClusterHand, "hand of the cluster’s teeth")
    }));
    rows.extend(bearing_rows::typed_rows(source));
    rows.extend(pairs(source).into_iter().map(|at| bears_row(source, at)));
    for at in pairs(source) {
        let (key, name) = (key(at), name(source, at));
        rows.push(source.row(format!("forces-{key}"), format!("Forces, {name}"), |analysis| forces_cell(source, analysis, at)));
        rows.push(source.row(format!("bending-{key}"), format!("Bending, {name}"), |analysis| bending_cell(source, analysis, at)));
        rows.push(source.row(format!("contact-{key}"), format!("Contact, {name}"), |analysis| contact_cell(source, analysis, at)));
        rows.push(source.row(format!("sliding-{key}"), format!("Sliding, {name}"), |analysis| sliding_cell(analysis, at)));
    }
    rows.extend(GearNumber::lowest(source.most_gears()).map(|gear| thrust_row(source, gear)));
    rows.extend(bearing_rows::life_rows(source));
    rows.extend(bearing_rows::held_rows(source));
    rows
}

/// The gear looked at; top where there are not so many, 2nd where none is engaged.
pub(super) fn selected(source: Source<'_>) -> GearNumber {
    let gear = if let Selected::Gear(gear) = source.conditions.inside.selected { gear } else { GearNumber::SECOND };
    gear.min(GearNumber::at(source.most_gears().saturating_sub(1)))
}

/// Every pair of any setup: the constant pair, then gear by gear.
pub fn pairs(source: Source<'_>) -> Vec<PairAt> {
    let all = || source.setups.iter().flat_map(|analysis| &analysis.teeth().pairs);
    let constant = all().any(|pair| pair.at == PairAt::Constant).then_some(PairAt::Constant);
    let gears = GearNumber::lowest(source.most_gears()).map(PairAt::Gear).filter(|at| all().any(|pair| pair.at == *at));
    constant.into_iter().chain(gears).collect()
}

/// What a pair is called: `input pair`, `2nd`.
pub fn name(source: Source<'_>, at: PairAt) -> String {
    let is_input = source.setups.iter().all(|analysis| analysis.setup.layout == Layout::InputReduced);
    match at {
        PairAt::Constant if is_input => "input pair".into(),
        PairAt::Constant => "constant pair".into(),
        PairAt::Gear(gear) => gear.to_string(),
        PairAt::Reverse => "reverse".into(),
    }
}

fn key(at: PairAt) -> String {
    match at {
        PairAt::Constant => "constant".into(),
        PairAt::Gear(gear) => format!("gear_{}", gear.number()),
        PairAt::Reverse => "reverse".into(),
    }
}

/// By how much the roots of a pair bear more than those of A's, and its flanks; none without both, or of A itself.
pub fn against_first(source: Source<'_>, analysis: &Analysis, at: PairAt) -> Option<[f64; 2]> {
    let first = source.setups.first().filter(|first| first.setup.id != analysis.setup.id)?.teeth().pair(at)?;
    let own = analysis.teeth().pair(at)?;
    let more = |own: Pressure, first: Pressure| (own / first).value - 1.0;
    Some([more(own.root()?, first.root()?), more(own.contact?, first.contact?)])
}

/// The pair of a setup that bears most more than A's, and the share; of A itself nothing.
pub fn most_against_first(source: Source<'_>, analysis: &Analysis) -> Option<(f64, PairAt)> {
    let differs = |at: PairAt| against_first(source, analysis, at).map(|[bending, _]| (bending, at));
    let all = pairs(source).into_iter().filter_map(differs);
    all.reduce(|most, next| if next.0 > most.0 { next } else { most })
}

/// What the roots of a pair bear as a share of what the weakest of its own box bears.
pub fn of_weakest(analysis: &Analysis, at: PairAt) -> Option<f64> {
    let teeth = analysis.teeth();
    Some((teeth.pair(at)?.root()? / teeth.weakest()?.root()?).value)
}

/// `+16 %`.
fn signed(key: &str, share: f64) -> Figure {
    let mut figure = Figure::percent(key, share, 0);
    figure.shown = number::show_signed(100.0 * share, 0);
    figure
}

fn bears_row(source: Source<'_>, at: PairAt) -> Row {
    let name = name(source, at);
    let label = format!("{} bears", crate::problem::capital(&name));
    source.row(format!("bears-{}", key(at)), label, |analysis| bears_cell(source, analysis, at))
}

/// Of A the share of its own weakest pair, of the others how much more than A's.
fn bears_cell(source: Source<'_>, analysis: &Analysis, at: PairAt) -> Cell {
    let key = format!("teeth.{}", key(at));
    let Some(pair) = analysis.teeth().pair(at).filter(|pair| pair.bending.is_some()) else { return absent(analysis, at) };
    let is_first = source.setups.first().is_some_and(|first| first.setup.id == analysis.setup.id);
    if let Some([bending, contact]) = against_first(source, analysis, at) {
        let [one, two] = [
            (bending, "bending", "σ = K_v F_t ÷ (b m Y)", LEWIS),
            (contact, "contact", "σ_H = Z_H Z_E Z_ε Z_β √(K_v F_t (u + 1) ÷ (d₁ b u))", HERTZ),
        ]
        .map(|(share, what, formula, from)| {
            let figure = signed(&format!("{key}.{what}_against_a"), share);
            let filled =
                format!("{what} stress of {} × A’s, {} teeth driving {}", number::show(1.0 + share, 3), pair.mesh.driver, pair.mesh.driven);
            (figure.by(formula, filled, from), what)
        });
        return Cell::line([one.0.into(), Piece::words(one.1)]).and([two.0.small().into(), Piece::words(two.1)]);
    }
    match of_weakest(analysis, at).filter(|_| is_first) {
        Some(share) if share > 1.0 - 1e-12 => Cell::line([Piece::words("its weakest pair")]),
        Some(share) => Cell::line([Figure::percent(&format!("{key}.of_weakest"), share, 0).into(), Piece::words("of its weakest pair")]),
        None => Cell::needed("needs the same of A"),
    }
}

/// Why there is nothing of a pair.
fn absent(analysis: &Analysis, at: PairAt) -> Cell {
    let setup = &analysis.setup;
    if setup.inside.cut.is_none() {
        return uncounted_or(analysis, "needs module or pitch");
    }
    match at {
        PairAt::Gear(gear) if gear.of(&setup.gears).copied().flatten().is_some_and(|gear| gear.mesh().is_none()) => {
            Cell::absent("direct: no teeth in mesh carry it")
        }
        PairAt::Gear(gear) if gear.place() >= setup.gears.len() => Cell::absent("no such gear"),
        _ if setup.inside.face_of(at).is_none() => Cell::needed("needs the face width"),
        _ => uncounted_or(analysis, needs_torque(analysis)),
    }
}

fn needs_torque(analysis: &Analysis) -> &'static str {
    if analysis.conditions().inside.by_grip {
        "needs the engine’s curve and the car’s weight, typed in Pull"
    } else {
        "needs the engine’s torque"
    }
}

/// What is left over on countershaft and output in a gear.
fn thrust_row(source: Source<'_>, gear: GearNumber) -> Row {
    source.row(format!("thrust-{}", gear.number()), format!("Thrust in {gear}"), |analysis| {
        match gear.of(&analysis.teeth().thrust).and_then(Option::as_ref) {
            Some(thrust) => thrust_cell(source, thrust, gear),
            None if analysis.setup.inside.cut.is_none() => uncounted_or(analysis, "needs module or pitch, helix and torque"),
            None if gear.place() >= analysis.setup.gears.len() => Cell::absent("no such gear"),
            None => Cell::absent("none: direct, or straight teeth"),
        }
    })
}

fn thrust_cell(source: Source<'_>, thrust: &Thrust, gear: GearNumber) -> Cell {
    let unit = Force::usual(source.reader.units);
    let cell = thrust.shafts.iter().fold(Cell::default(), |cell, on| {
        let (name, words) = shaft_name(on.shaft);
        let figure = Figure::quantity(&format!("teeth.gear_{}.thrust_{name}", gear.number()), &on.left.abs(), unit, 0).small();
        let of_gears: Vec<String> = on.of_gears.iter().map(|force| number::show_signed((unit.take)(force), 0)).collect();
        let filled = format!("{} {}", of_gears.join(" and "), unit.symbol);
        let figure = figure.by("sum of F_a = F_t tan β over the shaft’s gears, each with its sign", filled, FORCES);
        let way = thrust.is_told.then(|| Piece::words(way(on.left)));
        cell.and([Piece::words(words), figure.into()].into_iter().chain(way).collect::<Vec<_>>())
    });
    let cancels = thrust.cancels.map(|helix| {
        let shown = number::show(unit::DEGREE.number(helix), 1);
        Piece::words(format!("{shown}° on this pair leaves the cluster none"))
    });
    cell.and_maybe(cancels)
}

fn way(force: Force) -> &'static str {
    if force.value >= 0.0 { "away from the engine" } else { "towards the engine" }
}

/// For keys, and as it is read.
pub fn shaft_name(shaft: Shaft) -> (&'static str, &'static str) {
    match shaft {
        Shaft::Input => ("input", "input"),
        Shaft::Countershaft => ("cluster", "cluster"),
        Shaft::Idler => ("idler", "idler"),
        Shaft::Output => ("output", "output"),
    }
}

fn forces_cell(source: Source<'_>, analysis: &Analysis, at: PairAt) -> Cell {
    let Some(pair) = analysis.teeth().pair(at) else { return absent(analysis, at) };
    let (force, torque) = (Force::usual(source.reader.units), Torque::usual(source.reader.units));
    let key = format!("teeth.{}", key(at));
    let driver = format!("T = {} {} on {} teeth", number::show((torque.take)(&pair.torque.abs()), 1), torque.symbol, pair.mesh.driver);
    let figure = |what: &str, value: Force, formula: &str| {
        Piece::from(Figure::quantity(&format!("{key}.{what}"), &value, force, 0).small().by(formula, driver.clone(), FORCES))
    };
    let ToothForces { tangential, radial, axial } = pair.forces;
    Cell::line([Piece::words("along the pitch line"), figure("tangential", tangential, "F_t = 2 T ÷ d")])
        .and([Piece::words("apart"), figure("radial", radial, "F_r = F_t tan α ÷ cos β")])
        .and([Piece::words("along the shaft"), figure("axial", axial, "F_a = F_t tan β")])
}

fn stress(source: Source<'_>, key: &str, stress: Pressure) -> Figure {
    if source.reader.units == System::Inch {
        return Figure::quantity(key, &stress, &unit::PSI, 0).small();
    }
    let mut figure = Figure::number(format!("{key}_mpa"), stress.get::<uom::si::pressure::megapascal>(), 0).small();
    figure.unit = "MPa".into();
    figure
}

/// What no stress here is good for.
const NOT_RATED: &str = "to compare, not to rate: no shock, load spread, notch or hardness in it";

fn bending_cell(source: Source<'_>, analysis: &Analysis, at: PairAt) -> Cell {
    let Some((pair, bending, form)) = analysis.teeth().pair(at).and_then(|pair| Some((pair, pair.bending?, pair.form?))) else {
        return absent(analysis, at);
    };
    let figure = |what: &str, value: Pressure, form: f64, teeth: Teeth| {
        let filled = format!("{}, Y = {} for {teeth} teeth", load_words(source, pair), number::show(form, 3));
        Piece::from(stress(source, &format!("teeth.{}.bending_{what}", key(at)), value).by("σ = K_v F_t ÷ (b m Y)", filled, LEWIS))
    };
    let ([driver, driven], [one, two]) = (bending, form);
    Cell::line([
        figure("driver", driver, one, pair.mesh.driver),
        Piece::words("driver,"),
        figure("driven", driven, two, pair.mesh.driven),
        Piece::words("driven"),
    ])
    .and([Piece::words(NOT_RATED)])
}

fn contact_cell(source: Source<'_>, analysis: &Analysis, at: PairAt) -> Cell {
    let Some((pair, contact)) = analysis.teeth().pair(at).and_then(|pair| Some((pair, pair.contact?))) else {
        return absent(analysis, at);
    };
    let formula = "σ_H = Z_H Z_E Z_ε Z_β √(K_v F_t (u + 1) ÷ (d₁ b u))";
    let figure = stress(source, &format!("teeth.{}.contact", key(at)), contact).by(formula, load_words(source, pair), HERTZ);
    Cell::line([figure.into()]).and([Piece::words(NOT_RATED)])
}

/// `F_t = 4,100 N, b = 18 mm, K_v = 1.2`.
fn load_words(source: Source<'_>, pair: &PairLoad) -> String {
    let (force, length) = (Force::usual(source.reader.units), Length::usual(source.reader.units));
    let face = pair.face.map_or_else(String::new, |face| format!(", b = {} {}", number::show((length.take)(&face), 3), length.symbol));
    let factor = number::show(pair.speed.map_or(1.0, |(factor, _)| factor), 3);
    format!("F_t = {} {}{face}, K_v = {factor}", number::show((force.take)(&pair.forces.tangential), 0), force.symbol)
}

fn sliding_cell(analysis: &Analysis, at: PairAt) -> Cell {
    let Some((pair, loss)) = analysis.teeth().pair(at).and_then(|pair| Some((pair, pair.loss?))) else { return absent(analysis, at) };
    let key = format!("teeth.{}", key(at));
    let figure = Figure::percent(&format!("{key}.efficiency"), 1.0 - loss, 2).small();
    let filled = format!("H_v of {} and a friction of {}", number::show(loss / USUAL_FRICTION, 4), number::show(USUAL_FRICTION, 2));
    let from = "Niemann and Winter, Maschinenelemente, vol. 2 (from memory); friction from memory; oil churning left out";
    let cell = Cell::line([figure.by("1 − μ H_v", filled, from).into(), Piece::words("passes on")]);
    let Some([begins, ends]) = pair.sliding else { return cell };
    let speed = |what: &str, value: Velocity| {
        let mut figure = Figure::number(format!("{key}.sliding_{what}_ms"), value.value, 2).small();
        figure.unit = "m/s".into();
        let from = "any textbook of the theory of machines (for instance Khurmi and Gupta, ch. 12)";
        Piece::from(figure.by(
            "v = (ω₁ + ω₂) × path of contact",
            format!("{} m/s, {} ft/s", number::show(value.value, 2), number::show(value.value / 0.3048, 1)),
            from,
        ))
    };
    cell.and([Piece::words("flanks slide"), speed("approach", begins), Piece::words("and"), speed("recess", ends)])
}
