//! What the shop offers the customer, as typed: words to the customer, what is charged, and how long that holds.

use serde::{Deserialize, Serialize};

use super::Setup;
use crate::catalogue::{Column, Entry, PartKind};

/// The offer, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
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
    /// The parts of the setup that stand on the shop's own shelf, of those that are wanted, one for each place of the car.
    ///
    /// The demo's parts are never among them. Of several that fit one place the first counts.
    pub fn own_parts<'a>(&self, own: &'a [Entry], is_wanted: impl Fn(&Entry) -> bool) -> Vec<&'a Entry> {
        let is_it = |entry: &&Entry, kind: PartKind| entry.kind == kind && self.has_part(entry) && is_wanted(entry);
        let wanted = |kind: PartKind| own.iter().filter(|entry| is_it(entry, kind)).collect::<Vec<_>>();
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
