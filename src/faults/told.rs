//! What is known of one fault: its symptoms, the conditions it shows under, what was tried.

use std::collections::{BTreeMap, BTreeSet};

use super::table::{Given, Pick, Table};
use crate::gearing::GearNumber;

/// What is known of a fault, by places in the table. The order in which it was said is not kept: it tells nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Told {
    /// The symptoms.
    pub symptoms: BTreeSet<usize>,
    /// The conditions, those that follow from others included.
    pub conditions: BTreeSet<usize>,
    /// Tests and whether each was answered yes.
    pub results: BTreeMap<usize, bool>,
}

impl Told {
    /// Takes in a symptom or a condition.
    pub fn take(&mut self, given: Given) {
        match given {
            Given::Symptom(at) => self.symptoms.insert(at),
            Given::Condition(at) => self.conditions.insert(at),
        };
    }

    /// Whether a condition is there.
    pub fn has(&self, table: &Table, condition: &str) -> bool {
        table.condition(condition).is_some_and(|at| self.conditions.contains(&at))
    }

    /// Adds what goes without saying: of the symptoms, and of the gears, one or several, direct or not. `direct` is the straight-through
    /// gear.
    pub fn imply(&mut self, table: &Table, direct: Option<GearNumber>) {
        let gears: Vec<&str> = self
            .conditions
            .iter()
            .filter_map(|at| table.conditions.get(*at))
            .filter(|one| one.group == "gear")
            .map(|one| one.id.as_str())
            .collect();
        let direct = direct.map(|gear| format!("g{}", gear.number()));
        let is_direct = |gear: &str| direct.as_deref() == Some(gear);
        let mut follows: Vec<&str> = Vec::new();
        match gears.as_slice() {
            [] => {}
            ["every"] => follows.push("several"),
            [one] => follows.extend(["one-gear", if is_direct(one) { "direct" } else { "indirect" }]),
            many => {
                follows.push("several");
                follows.extend((!many.iter().any(|gear| *gear == "every" || is_direct(gear))).then_some("indirect"));
            }
        }
        let symptoms = self.symptoms.iter().filter_map(|at| table.symptoms.get(*at));
        let of_symptoms: Vec<usize> = symptoms.flat_map(|symptom| symptom.implies.iter().copied()).collect();
        self.conditions.extend(of_symptoms);
        self.conditions.extend(follows.into_iter().filter_map(|id| table.condition(id)));
    }

    /// What is said and cannot be there together, each pair once.
    pub fn contradictions(&self, table: &Table) -> Vec<(Given, Given)> {
        let mut found: Vec<(Given, Given)> = Vec::new();
        let is_told = |given: &Given| match given {
            Given::Symptom(at) => self.symptoms.contains(at),
            Given::Condition(at) => self.conditions.contains(at),
        };
        for at in &self.symptoms {
            let never = table.symptoms.get(*at).map_or(&[][..], |symptom| &symptom.never);
            for other in never.iter().copied().filter(is_told) {
                let pair = (Given::Symptom(*at).min(other), Given::Symptom(*at).max(other));
                if !found.contains(&pair) {
                    found.push(pair);
                }
            }
        }
        for at in &self.conditions {
            let Some(condition) = table.conditions.get(*at).filter(|condition| condition.pick == Pick::One) else { continue };
            let same = |other: &&usize| *other > at && table.conditions.get(**other).is_some_and(|other| other.group == condition.group);
            found.extend(self.conditions.iter().filter(same).map(|other| (Given::Condition(*at), Given::Condition(*other))));
        }
        found
    }
}
