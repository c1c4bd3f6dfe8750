//! What is suggested while a final drive, a tyre, speedometer gears or a dial are typed: parts in stock first.

use std::collections::BTreeSet;

use super::catalogue::told;
use crate::catalogue::{Catalogue, Entry, PartKind};
use crate::speedometer::{Role, SpeedoGear, dial};
use crate::units::System;

/// No list is longer: a browser shows it whole on a phone.
pub const MOST: usize = 240;

/// A text to be taken, and what is said of it.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Suggestion {
    /// What is put into the field.
    pub text: String,
    /// What the part is: its figure, and whether it is in stock.
    pub about: String,
}

/// The final drives or the tyres, each text once.
pub fn parts(catalogue: &Catalogue, kind: PartKind, units: System) -> Vec<Suggestion> {
    let mut entries = catalogue.found(kind, "", usize::MAX, None).entries;
    crate::order::by_key(&mut entries, |entry| !entry.in_stock());
    let mut seen = BTreeSet::new();
    let one = |entry: &Entry| {
        let told = told(entry, units);
        let figure = if kind == PartKind::Tyre { told.figures.get(1) } else { told.figures.first() };
        Suggestion { text: told.name, about: about(figure.cloned().unwrap_or_default(), entry.in_stock()) }
    };
    entries.iter().filter(|entry| seen.insert(entry.title())).take(MOST).map(one).collect()
}

/// Drive and driven gears that fit one housing, both in stock, each pair once.
pub fn speedometer_pairs(catalogue: &Catalogue) -> Vec<Suggestion> {
    let gears: Vec<SpeedoGear> = catalogue.speedometer_gears();
    let of = |role: Role| gears.iter().filter(move |gear| gear.role == role && gear.in_stock);
    let mut seen = BTreeSet::new();
    let pairs = of(Role::Drive).flat_map(|drive| {
        let fits = move |driven: &&SpeedoGear| driven.housing == drive.housing;
        of(Role::Driven).filter(fits).map(move |driven| (format!("{}/{}", drive.teeth, driven.teeth), drive.housing.clone()))
    });
    let first = pairs.filter(|(text, _)| seen.insert(text.clone())).take(MOST);
    first.map(|(text, housing)| Suggestion { text, about: format!("{housing} housing, in stock") }).collect()
}

/// Dials that many cars share, as they are typed.
pub fn dials() -> Vec<Suggestion> {
    dial::KNOWN.iter().map(|known| Suggestion { text: known.text(), about: known.name.to_owned() }).collect()
}

fn about(figure: String, is_in_stock: bool) -> String {
    if is_in_stock { format!("{figure}, in stock") } else { figure }
}
