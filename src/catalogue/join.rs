//! Two versions of a shelf made one, so that nothing of either is lost: a backup's and the one here, or two pages' of one store.
//!
//! Entries are taken as they were typed, half counted ones too: what a file of lines would refuse is kept all the same.

use std::collections::BTreeSet;

use super::entry::{Entry, said, says_it_numbered};
use super::{Catalogue, Shelf};

impl<T: Entry> Shelf<T> {
    /// The shelf with those of another's own entries that no entry here says, and how many they are. One that is told
    /// differently here is added beside it, its label numbered; added once, it is not added again.
    #[must_use]
    pub fn joined(&self, theirs: &Self) -> (Self, usize) {
        let here: BTreeSet<Vec<String>> = self.all().map(said).collect();
        let is_here = |entry: &T| here.contains(&said(entry)) || self.own().iter().any(|own| says_it_numbered(own, entry));
        let new: Vec<T> = theirs.own().iter().filter(|entry| !is_here(entry)).cloned().collect();
        let many = new.len();
        (self.add_all(new), many)
    }

    /// The shelf, which another page keeps, with the changes that led from `before` to `after` on this one. Where both pages
    /// changed an entry, both versions stay; one that either left alone follows the other page.
    #[must_use]
    pub fn with_changes(&self, before: &Self, after: &Self) -> Self {
        let (mut replaced, mut added) = (Vec::new(), Vec::new());
        for entry in after.own() {
            let was = before.own_entry(entry.id());
            let is = self.own_entry(entry.id());
            if was == Some(entry) || is == Some(entry) {
                continue;
            }
            if was.is_some() && is == was {
                replaced.push((entry.id().to_owned(), entry.clone()));
            } else {
                added.push(entry.clone());
            }
        }
        let gone = before.own().iter().filter(|was| after.own_entry(was.id()).is_none() && self.own_entry(was.id()) == Some(was));
        let left = gone.fold(self.clone(), |shelf, was| shelf.delete(was.id()).unwrap_or(shelf));
        left.replace_all(replaced).add_all(added)
    }

    fn own_entry(&self, id: &str) -> Option<&T> {
        self.own().iter().find(|entry| entry.id() == id)
    }
}

impl Catalogue {
    /// The catalogue with those of another's own entries that it does not have, and how many they are; see [`Shelf::joined`].
    #[must_use]
    pub fn joined(&self, theirs: &Self) -> (Self, usize) {
        let (gear_sets, sets) = self.gear_sets.joined(&theirs.gear_sets);
        let (axles, drives) = self.axles.joined(&theirs.axles);
        let (tyres, sizes) = self.tyres.joined(&theirs.tyres);
        let (speedometer_gears, gears) = self.speedometer_gears.joined(&theirs.speedometer_gears);
        (Self { gear_sets, axles, tyres, speedometer_gears }, sets + drives + sizes + gears)
    }

    /// The catalogue with the changes that led from `before` to `after`; see [`Shelf::with_changes`].
    #[must_use]
    pub fn with_changes(&self, before: &Self, after: &Self) -> Self {
        Self {
            gear_sets: self.gear_sets.with_changes(&before.gear_sets, &after.gear_sets),
            axles: self.axles.with_changes(&before.axles, &after.axles),
            tyres: self.tyres.with_changes(&before.tyres, &after.tyres),
            speedometer_gears: self.speedometer_gears.with_changes(&before.speedometer_gears, &after.speedometer_gears),
        }
    }
}
