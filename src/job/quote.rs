//! What the shop offers the customer, as typed: words to the customer, what is charged, and how long that holds.

use serde::{Deserialize, Serialize};

use super::Setup;
use crate::catalogue::{Catalogue, Column, Entry, PartKind};

/// The offer, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Quote {
    /// Words to the customer, printed on the customer's page.
    #[serde(default)]
    pub note: String,
    /// What is charged, a line each, its price at the end.
    #[serde(default)]
    pub lines: String,
    /// How long the offer holds, in words.
    #[serde(default)]
    pub valid: String,
}

impl Setup {
    /// A line of a quote for each part of the setup that the shop has on its own shelf with a price: `Gear set: Corner four, A-101: 480 EUR`.
    ///
    /// The demo's parts are never among them. Of several that fit one place the first that has a price counts.
    pub fn quote_lines(&self, catalogue: &Catalogue) -> Vec<String> {
        let parts = self.own_parts(catalogue, |entry| !entry.text(Column::Price).trim().is_empty());
        parts.into_iter().map(line).collect()
    }

    /// The parts of the setup that stand on the shop's own shelf, of those that are wanted, one for each place of the car.
    pub fn own_parts<'a>(&self, catalogue: &'a Catalogue, is_wanted: impl Fn(&Entry) -> bool) -> Vec<&'a Entry> {
        let wanted = |kind: PartKind| catalogue.own(kind).filter(|entry| self.has_part(entry) && is_wanted(entry)).collect::<Vec<_>>();
        let mut roles = Vec::new();
        let is_new = |entry: &&Entry| {
            // One part goes into each place: a drive gear, a driven gear and an adapter are three.
            let place = (entry.kind, entry.text(Column::Role).to_owned());
            let is_new = !roles.contains(&place);
            roles.push(place);
            is_new
        };
        PartKind::FITTED.into_iter().flat_map(wanted).filter(is_new).collect()
    }
}

fn line(entry: &Entry) -> String {
    let text = |column| entry.text(column).trim();
    let number = if text(Column::PartNumber).is_empty() { String::new() } else { format!(", {}", text(Column::PartNumber)) };
    let what = crate::problem::capital(entry.kind.word(1));
    let each = if entry.kind == PartKind::Tyre { ", each" } else { "" };
    format!("{what}: {}{number}{each}: {} {}", entry.title(), text(Column::Price), text(Column::Currency)).trim_end().to_owned()
}
