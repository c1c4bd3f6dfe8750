//! The rows of For the cutter: the data block of a gear drawing (ISO 1340), cautions before it, inspection values behind it.

use super::answer::{Fault, Order, ShiftFrom};
use super::read::Wanted;
use super::sentence::{not_hunting, rule_said};
use crate::problem::Explain;
use crate::questions::Source;
use crate::questions::deciding::few;
use crate::questions::measure::said::{angle, bare, decimals, length};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::speedometer::Hand;
use crate::toothform::allowance::Allowance;
use crate::toothform::relief::{self, Relief};
use crate::toothform::{CutGear, pins, span};
use crate::units::common::millimetres;
use crate::units::{Length, Measured as _, number, unit};

/// Source of the sizes.
const ISO: &str = "ISO 21771:2007";

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let mut all = rows(source);
    let decides = ["fault", "pitch", "helix", "shift", "diameters", "span", "pins", "mate"];
    all.retain(|row| (row.key.starts_with("problem") || decides.contains(&row.key.as_str())) && !row.waits());
    few(all, None)
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let wanted = Wanted::of(&source.job.bench);
    let mut rows: Vec<Row> = (1..)
        .zip(wanted.problems.iter().take(2))
        .map(|(at, problem)| Row::of_one(format!("problem-{at}"), "Cannot be used", Cell::absent(problem.sentence())))
        .collect();
    let Some(order) = Order::of_wanted(wanted) else { return rows };
    rows.extend(fault_row(source, &order));
    rows.push(Row::of_one("pitch", "Teeth and pitch", pitch_cell(&order)));
    rows.push(Row::of_one("helix", "Helix and lead", helix_cell(source, &order)));
    rows.push(Row::of_one("shift", "Profile shift", shift_cell(&order)));
    rows.push(Row::of_one("diameters", "Tip and root diameter", diameters_cell(source, &order)));
    rows.push(Row::of_one("span", format!("Span over {} teeth", order.over), span_cell(source, &order)));
    rows.push(pins_row(source, &order));
    rows.extend(mate_row(source, &order));
    rows.push(Row::of_one("tool", "Rack of the tool", Cell::line([Piece::words(order.rack.said())])));
    rows.extend(inspection(source, &order));
    rows.extend(pair_rows(source, &order));
    rows.extend(typed_rows(source));
    rows
}

fn figure(source: Source<'_>, key: &str, length: Length) -> Figure {
    Figure::quantity(&format!("cutter.{key}"), &length, Length::usual(source.reader.units), decimals(source))
}

fn signed(key: &str, shift: f64) -> Figure {
    let mut figure = Figure::number(format!("cutter.{key}"), shift, 4);
    figure.shown = number::show_signed(shift, 4);
    figure
}

fn fault_row(source: Source<'_>, order: &Order) -> Option<Row> {
    let mut says: Vec<Piece> = Vec::new();
    if let Some((why, reference)) = &order.no_pair {
        let wants =
            reference.map_or_else(String::new, |centre| format!("; these counts want {} without profile shift", length(source, centre)));
        says.push(Piece::stop(format!("{}{wants}", why.what())));
    }
    says.extend(order.faults().into_iter().map(|fault| match fault {
        Fault::Undercut(teeth, least) => {
            Piece::caution(format!("the {teeth}-tooth gear is undercut: {} of profile shift would do", number::show_signed(least, 2)))
        }
        Fault::Pointed(teeth, land) => Piece::caution(format!(
            "the {teeth}-tooth gear has tips {} wide, too narrow to harden: less profile shift, or lower tips",
            length(source, land)
        )),
        Fault::Interference(teeth, begins) => Piece::caution(format!(
            "the involute of the {teeth}-tooth gear begins on {}, and its mate’s tips reach below that: more profile shift, or lower tips on the mate",
            length(source, begins)
        )),
        Fault::Contact(ratio) => {
            Piece::caution(format!("a contact ratio of {} is below 1.2: less profile shift, or more teeth", number::show(ratio, 2)))
        }
        Fault::RelievedContact(ratio) => Piece::caution(format!(
            "up to where tip relief begins the contact ratio is {}, below 1.2: let relief begin higher",
            number::show(ratio, 2)
        )),
        Fault::NoRow(reference) => Piece::caution(format!(
            "the rows of DIN 3967 kept here go to a pitch diameter of {}, this one is {}: the backlash is taken instead",
            length(source, millimetres(Allowance::MOST_MM)),
            length(source, reference)
        )),
        Fault::Relief(from, [base, tip]) => Piece::caution(format!(
            "tip relief cannot begin on {}: the flank lies between {} and {}",
            length(source, from),
            length(source, base),
            length(source, tip)
        )),
        Fault::NotHunting(mesh) => Piece::caution(not_hunting(mesh)),
    }));
    let cell = says.into_iter().fold(Cell::default(), |cell, piece| cell.and([piece]));
    (!cell.lines.is_empty()).then(|| Row::of_one("fault", "Before it is cut", cell))
}

fn pitch_cell(order: &Order) -> Cell {
    let module = Figure::quantity("cutter.module", &order.gear.cut.normal_module(), &unit::MM, 4);
    let per_inch = 25.4 / unit::MM.number(order.gear.cut.normal_module());
    let dp = Figure::number("cutter.diametral_pitch", per_inch, 3).small();
    Cell::line([
        Piece::words(format!("{} teeth, normal module", order.gear.teeth)),
        module.into(),
        Piece::words("or"),
        dp.into(),
        Piece::words(format!("DP, {}", angle(order.gear.cut.pressure()))),
    ])
}

fn helix_cell(source: Source<'_>, order: &Order) -> Cell {
    let gear = &order.gear;
    let Some(lead) = gear.lead() else { return Cell::line([Piece::words("straight teeth")]) };
    let helix = Figure::quantity("cutter.helix", &gear.cut.helix(), &unit::DEGREE, 3);
    let hand = order.wanted.hand.map_or("hand not said", |hand| if hand == Hand::Right { "right hand" } else { "left hand" });
    let filled = format!(
        "π × {} ÷ tan {}° = {}",
        bare(source, gear.reference_diameter()),
        number::show(unit::DEGREE.number(gear.cut.helix()), 3),
        length(source, lead)
    );
    let lead = figure(source, "lead", lead).by("lead = π × pitch diameter ÷ tan (helix)", filled, ISO);
    Cell::line([helix.into(), Piece::words(format!("{hand}, lead")), lead.into()])
}

fn shift_cell(order: &Order) -> Cell {
    let from = match order.from {
        ShiftFrom::Given if order.wanted.is_measured => "modules, as measured or typed",
        ShiftFrom::Given => "modules, as typed",
        ShiftFrom::Rule(rule) => rule_said(rule),
        ShiftFrom::Nothing => "modules: none is asked for",
    };
    Cell::line([signed("profile_shift", order.gear.shift).into(), Piece::words(from)])
}

fn diameters_cell(source: Source<'_>, order: &Order) -> Cell {
    Cell::line([
        figure(source, "tip_diameter", order.tip).into(),
        Piece::words("and"),
        figure(source, "root_diameter", order.gear.root_diameter()).into(),
    ])
}

fn span_cell(source: Source<'_>, order: &Order) -> Cell {
    let whole = span::over_teeth(&order.gear, order.over);
    let limits = [("span_upper", 0), ("span_lower", 1)].map(|(key, at)| {
        let thinner = order.own_thinner().get(at).copied().unwrap_or_default();
        let limit = figure(source, key, whole - thinner);
        let filled = format!("{} − {} = {}", bare(source, whole), bare(source, thinner), limit.text());
        if let Some(row) = order.row {
            let from = format!("{filled} ({} on this pitch diameter)", row.said());
            return limit.by("limit = span without backlash − allowance × cos (pressure angle)", from, "DIN 3967:1978");
        }
        let around = order.backlash.and_then(|backlash| backlash.get(at).copied()).unwrap_or_default();
        limit.by(
            "limit = span without backlash − half the backlash, square to the flanks",
            format!("{filled} (for {} of backlash)", length(source, around)),
            "DIN 3967; each gear takes half",
        )
    });
    let [upper, lower] = limits;
    let cell = Cell::line([lower.into(), Piece::words("to"), upper.into()]);
    let least = span::least_face_width(&order.gear, whole);
    let narrow = order.wanted.face.filter(|face| *face < least);
    cell.and_maybe(narrow.map(|face| Piece::caution(format!("a face of {} is too narrow for it: check over balls", length(source, face)))))
}

fn pins_row(source: Source<'_>, order: &Order) -> Row {
    let pin = length(source, order.pin);
    let what = if order.gear.cut.helix_rad() > 0.0 && !order.gear.teeth.count().is_multiple_of(2) { "balls" } else { "pins" };
    let label = format!("Over two {what} of {pin}");
    if let Some([upper, lower]) = order.pin_limits() {
        let line = [figure(source, "pins_lower", lower.over).into(), Piece::words("to"), figure(source, "pins_upper", upper.over).into()];
        return Row::of_one("pins", label, Cell::line(line));
    }
    let why = pins::lay(&order.gear, order.pin).err();
    let says = why.map_or_else(|| "the pin does not lie on the flanks".into(), |why| format!("{}: {}", why.what(), why.what_to_do()));
    Row::of_one("pins", label, Cell::line([Piece::caution(says)]))
}

fn mate_row(source: Source<'_>, order: &Order) -> Option<Row> {
    let shared = order.pair.as_ref()?;
    let [_, mate] = shared.gears;
    let line = [
        Piece::words(format!("{} teeth at", mate.teeth)),
        figure(source, "centre", shared.geometry.centre).into(),
        Piece::words("with profile shift"),
        signed("mate_profile_shift", mate.shift).into(),
    ];
    let [least, most] = order.backlash?;
    let cell = Cell::line(line).and([
        figure(source, "backlash_least", least).small().into(),
        Piece::words("to"),
        figure(source, "backlash_most", most).small().into(),
        Piece::words("of backlash"),
    ]);
    Some(Row::of_one("mate", "Mate and centre distance", cell))
}

/// The circles and thicknesses that a drawing and an inspector name.
fn inspection(source: Source<'_>, order: &Order) -> Vec<Row> {
    let gear = &order.gear;
    let one =
        |key: &str, label: &str, value: Length| Row::of_one(key, label, Cell::line([figure(source, &key.replace('-', "_"), value).into()]));
    let [chord, height] = gear.chord();
    let whole = span::over_teeth(gear, order.over);
    let tip_width = order.relief.map_or_else(|| gear.thickness_at(order.tip), |relief| relief.thickness_at(gear, order.tip));
    let mut rows = vec![
        one("pitch-diameter", "Pitch diameter", gear.reference_diameter()),
        one("base-diameter", "Base diameter", gear.base_diameter()),
        one("form-diameter", "The involute begins on a circle of", form(order)),
        one("tooth-depth", "Tooth depth", (order.tip - gear.root_diameter()) / 2.0),
        one("tooth-thickness", "Tooth thickness, square, no backlash", gear.normal_thickness()),
        one("tip-width", "Width of the tip", tip_width.unwrap_or_default()),
        one("span-nominal", "Span without backlash", whole),
        one("jaws-touch", "Jaws touch on a circle of", span::contact_diameter(gear, whole)),
        one("base-pitch", "Base pitch, square", gear.base_pitch()),
    ];
    let line = [figure(source, "chord", chord).into(), Piece::words("at a height of"), figure(source, "chord_height", height).into()];
    rows.push(Row::of_one("chord", "Gear tooth caliper, no backlash", Cell::line(line)));
    let [thickest, thinnest] = order.thickness_limits();
    let limits =
        [figure(source, "thickness_lower", thinnest).into(), Piece::words("to"), figure(source, "thickness_upper", thickest).into()];
    rows.push(Row::of_one("thickness-limits", "Tooth thickness, square, its limits", Cell::line(limits)));
    rows.extend(order.relief.map(|relief| relief_row(source, gear, &relief)));
    if gear.cut.helix_rad() > 0.0 {
        let base = Figure::number("cutter.base_helix_deg", gear.base_helix_rad().to_degrees(), 4);
        rows.push(Row::of_one("base-helix", "Helix on the base circle", Cell::line([base.into(), Piece::words("°")])));
    }
    rows.extend(order.wanted.face.map(|face| one("face-width", "Face width", face)));
    rows
}

/// What an inspection chart of the flank shows: how much is off at the tip, and where on the roll it begins.
fn relief_row(source: Source<'_>, gear: &CutGear, relief: &Relief) -> Row {
    let [begins, ends] = [relief.from, relief.tip].map(|diameter| relief::roll_degrees(gear, diameter));
    let roll = |key: &str, degrees: f64| Figure::number(format!("cutter.relief_{key}_deg"), degrees, 2).small();
    let line = [
        figure(source, "relief", relief.amount).into(),
        Piece::words("off at the tip, from a diameter of"),
        figure(source, "relief_from", relief.from).into(),
    ];
    let rolls = [
        Piece::words("on the chart from"),
        roll("roll", begins).into(),
        Piece::words("to"),
        roll("roll_tip", ends).into(),
        Piece::words("° of roll"),
    ];
    Row::of_one("relief", "Tip relief", Cell::line(line).and(rolls))
}

/// Where the root ends and the involute begins.
fn form(order: &Order) -> Length {
    millimetres(2.0 * order.tooth(&order.gear).form_mm)
}

fn pair_rows(source: Source<'_>, order: &Order) -> Vec<Row> {
    let Some(shared) = &order.pair else { return Vec::new() };
    let geometry = &shared.geometry;
    let [one, two] = shared.sliding;
    let [_, mate]: [CutGear; 2] = shared.gears;
    let number = |key: &str, value: f64, decimals: usize| Figure::number(format!("cutter.{key}"), value, decimals);
    let working = Figure::number("cutter.working_angle_deg", geometry.working_pressure_rad.to_degrees(), 3);
    let mate_span = span::teeth_to_span(&mate);
    let [_, thinner] = order.thinner;
    let [upper, lower] = thinner.map(|thinner| span::over_teeth(&mate, mate_span) - thinner);
    vec![
        Row::of_one("pair-sum", "Sum of the profile shifts", Cell::line([signed("shift_sum", geometry.shift_sum).into()])),
        Row::of_one("pair-angle", "Working pressure angle", Cell::line([working.into(), Piece::words("° across the shaft")])),
        Row::of_one("pair-contact", "Contact ratio", contact_cell(order)),
        Row::of_one(
            "pair-sliding",
            "Sliding at the roots",
            Cell::line([
                number("sliding", one, 2).into(),
                Piece::words("and"),
                number("sliding_mate", two, 2).into(),
                Piece::words("times the rolling"),
            ]),
        ),
        Row::of_one(
            "pair-span",
            format!("Mate: span over {mate_span} teeth"),
            Cell::line([
                figure(source, "mate_span_lower", lower).into(),
                Piece::words("to"),
                figure(source, "mate_span_upper", upper).into(),
            ]),
        ),
    ]
}

/// Tip to tip; on the involutes alone where the mate's tips reach below them; up to where tip relief begins.
fn contact_cell(order: &Order) -> Cell {
    let Some(contact) = order.contact() else { return Cell::default() };
    let figure = |key: &str, ratio: f64| Figure::number(format!("cutter.{key}"), ratio, 3);
    let cell = Cell::line([figure("contact_ratio", contact.tip_to_tip).into()]);
    let is_short = contact.involute < contact.tip_to_tip - 5e-4;
    let cell = if is_short {
        cell.and([figure("contact_ratio_involute", contact.involute).small().into(), Piece::words("on the involutes alone")])
    } else {
        cell
    };
    let Some(relieved) = contact.relieved else { return cell };
    let figure = figure("contact_ratio_relieved", relieved);
    let filled = format!("{} teeth", figure.shown);
    let formula = "what is left of the line of contact up to where this gear’s relief begins ÷ base pitch";
    let figure = figure.by(formula, filled, "ISO 21771:2007; that relieved flanks do not count is common practice, no published source");
    cell.and([figure.small().into(), Piece::words("up to where tip relief begins")])
}

/// What was typed in words.
fn typed_rows(source: Source<'_>) -> Vec<Row> {
    let typed = &source.job.bench.cutter;
    let rows = [
        ("part", "Part", &typed.part),
        ("material", "Material", &typed.material),
        ("hardening", "Hardening", &typed.hardening),
        ("quality", "Quality", &typed.quality),
    ];
    let filled = rows.into_iter().filter(|(_, _, text)| !text.trim().is_empty());
    filled.map(|(key, label, text)| Row::of_one(key, label, Cell::line([Piece::words(format!("“{}”", text.trim()))]))).collect()
}
