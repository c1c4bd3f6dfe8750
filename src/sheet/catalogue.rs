//! Catalogue: what is on the shop's shelf; its entries stand in the section itself, each with what a rebuilder asks of it.

use super::Section;
use crate::catalogue::{AnyEntry, Axle, GearSet, Kind, SpeedoEntry, TyreEntry};
use crate::gearing::Ladder;
use crate::gearing::teeth::decimal;
use crate::tyre::Measure;
use crate::units::{Length, Measured, System, TurnsPerDistance, number};

/// The section, without rows: the catalogue is not a setup's.
pub(super) fn section() -> Section {
    let ask = "What is on the shop’s shelf, and what is your own?".into();
    Section { id: "catalogue", title: "Catalogue".into(), ask, rows: Vec::new() }
}

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
pub fn told(entry: &AnyEntry, units: System) -> Told {
    let mut told = match entry {
        AnyEntry::GearSet(set) => gear_set(set),
        AnyEntry::Axle(axle) => final_drive(axle),
        AnyEntry::Tyre(tyre) => tyre_size(tyre, units),
        AnyEntry::SpeedometerGear(entry) => speedometer_gear(entry),
    };
    told.figures.retain(|text| !text.is_empty());
    told.words.retain(|text| !text.is_empty());
    told
}

/// The ratios of a gear set, lowest gear first, two decimals; nothing where its counts make no gearbox.
pub fn ratios(set: &GearSet) -> Option<String> {
    let gearbox = set.gearbox().ok()?;
    let ratios = Ladder::new(gearbox.ratios());
    Some(ratios.ratios().iter().map(|ratio| number::show(decimal(*ratio), 2)).collect::<Vec<_>>().join("  "))
}

fn gear_set(set: &GearSet) -> Told {
    let reverse = match (set.reverse.trim(), set.idler.trim()) {
        ("", _) => String::new(),
        (pair, "") => format!(", reverse {pair}"),
        (pair, idler) => format!(", reverse {pair} over {idler}"),
    };
    let constant = if set.constant.trim().is_empty() { String::new() } else { format!("{} with ", set.constant.trim()) };
    Told {
        name: set.name.clone(),
        figures: vec![
            ratios(set).unwrap_or_else(|| "the counts need a look".into()),
            format!("{constant}{}{reverse}", set.gears.join("  ")),
        ],
        words: vec![set.maker.clone(), set.layout.words().to_owned(), set.note.clone()],
    }
}

fn final_drive(axle: &Axle) -> Told {
    let ratio = axle.final_drive().map(|drive| number::show(decimal(drive.ratio()), 3));
    Told {
        name: axle.drive.clone(),
        figures: vec![ratio.unwrap_or_else(|_| "the teeth need a look".into())],
        words: vec![axle.note.clone()],
    }
}

fn tyre_size(entry: &TyreEntry, units: System) -> Told {
    let Ok(tyre) = entry.tyre() else {
        return Told { name: entry.designation.clone(), figures: vec!["the size needs a look".into()], words: vec![entry.note.clone()] };
    };
    let unit = Length::usual(units);
    let length = |value: &Length| {
        let decimals = usize::from(units == System::Inch);
        format!("{} {}", number::show((unit.take)(value), decimals), unit.symbol)
    };
    let across = tyre.diameter().map_or_else(String::new, |Measure { value, .. }| format!("{} across", length(&value)));
    let rolling = tyre.rolling();
    let turns = TurnsPerDistance::usual(units);
    Told {
        name: entry.designation.clone(),
        figures: vec![
            across,
            format!("rolls {}", length(&rolling.circumference)),
            format!("{} {}", number::show((turns.take)(&rolling.turns()), 0), turns.symbol),
        ],
        words: vec![entry.note.clone()],
    }
}

fn speedometer_gear(entry: &SpeedoEntry) -> Told {
    let gear = &entry.gear;
    let teeth = match gear.second {
        Some(second) => format!("{}/{second}", gear.teeth),
        None => format!("{} teeth", gear.teeth),
    };
    let housing = if gear.housing.trim().is_empty() { String::new() } else { format!("fits the {} housing", gear.housing.trim()) };
    let hand = gear.hand.map_or_else(String::new, |hand| format!("{} hand", hand.word()));
    Told { name: gear.name.clone(), figures: vec![format!("{}, {teeth}", gear.role.word())], words: vec![housing, hand, gear.note.clone()] }
}

/// What an own entry is told differently by: `maker “Curlew” becomes “Plover”`.
pub fn difference(before: &AnyEntry, after: &AnyEntry) -> String {
    let kind = before.kind();
    let (before, after) = (before.cells(), after.cells());
    let cells =
        kind.columns().iter().zip(before.iter().zip(&after)).filter(|(column, (before, after))| **column != "id" && before != after);
    let shown = |text: &String| if text.is_empty() { "blank".to_owned() } else { format!("“{text}”") };
    cells
        .map(|(column, (before, after))| format!("{} {} becomes {}", column_word(kind, column), shown(before), shown(after)))
        .collect::<Vec<_>>()
        .join(", ")
}

/// What a column of a kind is called beside its field.
pub fn column_word(kind: Kind, column: &str) -> String {
    match (kind, column.strip_prefix("gear_").and_then(|gear| gear.parse::<usize>().ok())) {
        (_, Some(gear)) => super::ordinal(gear.saturating_sub(1)),
        (_, None) => match (kind, column) {
            (_, "constant") => "constant pair".into(),
            (_, "in_stock") => "in stock".into(),
            (_, "drive") => "ring and pinion".into(),
            (_, "designation") => "size".into(),
            (_, "second") => "second count".into(),
            (_, "idler") => "reverse idler".into(),
            (_, column) => column.to_owned(),
        },
    }
}
