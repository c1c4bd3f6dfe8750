//! Catalogue: what is on the shop's shelf; its entries stand in the section itself, each with what a rebuilder asks of it.

use crate::catalogue::{Column, Entry, Part, PartKind};
use crate::gearing::teeth::decimal;
use crate::gearing::{FinalDrive, Gearbox, Ladder};
use crate::speedometer::SpeedoGear;
use crate::swap::BoxSize;
use crate::tyre::{Measure, Tyre};
use crate::units::{Length, Measured, System, TurnsPerDistance, number};

/// An entry as it is read in a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// What it is called.
    pub name: String,
    /// The figures that decide, each with its unit.
    pub figures: Vec<String>,
    /// All else that is known, what stands in quotation marks as typed.
    pub words: Vec<String>,
}

/// What is told of an entry, lengths and turns in the units the sheet is read in.
pub fn told(entry: &Entry, units: System) -> Told {
    let mut figures = match entry.part() {
        Ok(Part::GearSet(gearbox)) => vec![of_gearbox(&gearbox)],
        Ok(Part::RingAndPinion(drive)) => vec![of_drive(drive)],
        Ok(Part::Tyre(tyre)) => of_tyre(&tyre, units),
        Ok(Part::SpeedometerGear(gear)) => vec![of_speedometer_gear(&gear)],
        Ok(Part::CaseFamily) => sizes(entry),
        Ok(Part::SmallPart(thickness)) => thickness.map(|_| thickness_of(entry)).into_iter().collect(),
        Err(_) if entry.kind == PartKind::SmallPart => vec!["thickness not readable".into()],
        Err(_) if entry.kind == PartKind::CaseFamily => vec!["sizes not readable".into()],
        Err(_) if entry.kind == PartKind::Tyre => vec!["size not readable".into()],
        Err(_) => vec!["teeth not readable".into()],
    };
    figures.extend((entry.kind == PartKind::GearSet).then(|| counts(entry)));
    let text = |column| entry.text(column).trim().to_owned();
    let in_words = |column, words: fn(String) -> String| Some(text(column)).filter(|text| !text.is_empty()).map(words);
    let words = [
        Some(text(Column::Maker)),
        (entry.kind == PartKind::GearSet).then(|| entry.layout().words().to_owned()),
        in_words(Column::Housing, |housing| format!("fits the {housing} housing")),
        in_words(Column::Hand, |hand| format!("{hand} hand")),
        Some(text(Column::Note)),
        in_words(Column::PartNumber, |number| format!("part number {number}")),
        Some(format!("{} {}", text(Column::Price), text(Column::Currency)).trim().to_owned()).filter(|_| !text(Column::Price).is_empty()),
        in_words(Column::Place, |place| place),
        counted(entry),
        in_words(Column::Origin, |shop| format!("from {shop}")),
    ];
    figures.retain(|text| !text.is_empty());
    Told { name: entry.title().to_owned(), figures, words: words.into_iter().flatten().filter(|text| !text.is_empty()).collect() }
}

/// The sizes of a case family that decide, as typed.
fn sizes(entry: &Entry) -> Vec<String> {
    let decide = [BoxSize::Length, BoxSize::Mount, BoxSize::Lever, BoxSize::InputSpline];
    let said = decide.into_iter().map(|size| (size.about().1, entry.text(Column::Size(size)).trim()));
    said.filter(|(_, text)| !text.is_empty()).map(|(word, text)| format!("{word} {}", with_unit(entry, text))).collect()
}

/// How thick a shim is, as typed, with its unit.
pub fn thickness_of(entry: &Entry) -> String {
    with_unit(entry, entry.text(Column::Thickness).trim())
}

/// A size of an entry: what it is bare in stands behind it, unless it names a unit itself. The x of a spline is none.
fn with_unit(entry: &Entry, text: &str) -> String {
    let names_one = text.chars().any(|c| (c.is_alphabetic() && c != 'x') || matches!(c, '"' | '″'));
    if names_one { text.to_owned() } else { format!("{text} {}", entry.text(Column::Units)) }
}

/// Who counted the teeth, and when; none where nobody put a name to them.
pub fn counted(entry: &Entry) -> Option<String> {
    match (entry.text(Column::CountedBy).trim(), entry.text(Column::CountedOn).trim()) {
        ("", "") => None,
        ("", on) => Some(format!("counted {on}")),
        (by, "") => Some(format!("counted by {by}")),
        (by, on) => Some(format!("counted by {by}, {on}")),
    }
}

/// How many are on the shelf, in words: `2 in stock`, `1 left: reorder at 2`, `none left`, `in stock`, `not in stock`.
pub fn stock(entry: &Entry) -> String {
    let [there, least] = [Column::Quantity, Column::ReorderAt].map(|column| entry.text(column).trim());
    match there {
        "" if entry.in_stock() => "in stock".into(),
        "" => "not in stock".into(),
        "0" => "none left".into(),
        there if entry.is_low() => format!("{there} left: reorder at {least}"),
        there => format!("{there} in stock"),
    }
}

/// The ratios of a gear set, lowest gear first, two decimals; nothing where its counts make no gearbox.
pub fn ratios(set: &Entry) -> Option<String> {
    set.gearbox().as_ref().map(of_gearbox)
}

fn of_gearbox(gearbox: &Gearbox) -> String {
    let ratios = Ladder::new(gearbox.ratios());
    ratios.ratios().iter().map(|ratio| number::show(decimal(*ratio), 2)).collect::<Vec<_>>().join("  ")
}

/// The counts of a gear set as typed: `25/30 with 37/18  32/23  direct, reverse 33/16 over 19`.
pub fn counts(set: &Entry) -> String {
    let [constant, reverse, idler] = [Column::Constant, Column::Reverse, Column::Idler].map(|column| set.text(column).trim());
    let reverse = match (reverse, idler) {
        ("", _) => String::new(),
        (pair, "") => format!(", reverse {pair}"),
        (pair, idler) => format!(", reverse {pair} over {idler}"),
    };
    let constant = if constant.is_empty() { String::new() } else { format!("{constant} with ") };
    format!("{constant}{}{reverse}", set.gears().join("  "))
}

fn of_drive(drive: FinalDrive) -> String {
    number::show(decimal(drive.ratio()), 3)
}

fn of_tyre(tyre: &Tyre, units: System) -> Vec<String> {
    let unit = Length::usual(units);
    let length = |value: &Length| {
        let decimals = usize::from(units == System::Inch);
        format!("{} {}", number::show((unit.take)(value), decimals), unit.symbol)
    };
    let across = tyre.diameter().map_or_else(String::new, |Measure { value, .. }| format!("{} across", length(&value)));
    let rolling = tyre.rolling();
    let turns = TurnsPerDistance::usual(units);
    let turns = format!("{} {}", number::show((turns.take)(&rolling.turns()), 0), turns.symbol);
    vec![across, format!("rolls {}", length(&rolling.circumference)), turns]
}

fn of_speedometer_gear(gear: &SpeedoGear) -> String {
    match gear.second {
        Some(second) => format!("{}, {}/{second}", gear.role.word(), gear.teeth),
        None => format!("{}, {} teeth", gear.role.word(), gear.teeth),
    }
}

/// What an own entry is told differently by: `maker “Curlew” becomes “Redshank”`.
pub fn difference(before: &Entry, after: &Entry) -> String {
    let shown = |text: &str| if text.is_empty() { "blank".to_owned() } else { format!("“{text}”") };
    let becomes = |[word, before, after]: [&str; 3]| format!("{word} {} becomes {}", shown(before), shown(after));
    differing(before, after).into_iter().map(becomes).collect::<Vec<_>>().join(", ")
}

/// The columns in which two entries of a kind differ: the word for each, and both texts.
pub fn differing<'a>(one: &'a Entry, other: &'a Entry) -> Vec<[&'a str; 3]> {
    let columns = one.kind.columns().filter(|column| *column != Column::Id);
    let sides = columns.map(|column| [column.about().word, one.cell(column), other.cell(column)]);
    sides.filter(|[_, one, other]| one != other).collect()
}
