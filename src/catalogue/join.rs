//! Two versions of the shop's own entries made one, so that nothing of either is lost: a backup's and those here, or two pages' of
//! one store.
//!
//! Entries are taken as they were typed, half counted ones too: what a file of lines would refuse is kept all the same.

use std::collections::BTreeSet;

use super::{Catalogue, Entry, PartKind};

impl Catalogue {
    /// The catalogue with those of another's own entries that no entry here says, and how many they are. One that is told
    /// differently here is added beside it, its label numbered; added once, it is not added again.
    #[must_use]
    pub fn joined(&self, theirs: &Self) -> (Self, usize) {
        let here: BTreeSet<(PartKind, Vec<String>)> = self.all().map(|entry| (entry.kind, entry.said())).collect();
        let is_numbered = |entry: &Entry| self.own(entry.kind).any(|own| own.says_numbered(entry));
        let is_here = |entry: &Entry| here.contains(&(entry.kind, entry.said())) || is_numbered(entry);
        let new: Vec<Entry> = theirs.own.iter().filter(|entry| !is_here(entry)).cloned().collect();
        let many = new.len();
        (self.add_all(new), many)
    }

    /// The catalogue, which another page keeps, with the changes that led from `before` to `after` on this one. Where both pages
    /// changed an entry, both versions stay; one that either left alone follows the other page.
    #[must_use]
    pub fn with_changes(&self, before: &Self, after: &Self) -> Self {
        let (mut replaced, mut added) = (Vec::new(), Vec::new());
        for entry in after.own.iter() {
            let (was, is) = (before.own_like(entry), self.own_like(entry));
            if was == Some(entry) || is == Some(entry) {
                continue;
            }
            let list = if was.is_some() && is == was { &mut replaced } else { &mut added };
            list.push(entry.clone());
        }
        let gone = before.own.iter().filter(|was| after.own_like(was).is_none() && self.own_like(was) == Some(was));
        let left = gone.fold(self.clone(), |left, was| left.without(was.kind, &was.id).unwrap_or(left));
        left.replace_all(replaced).add_all(added)
    }

    /// The own entry that says what another catalogue's entry says, or says so but for a number behind its label.
    pub fn own_saying(&self, theirs: &Entry) -> Option<&Entry> {
        let all = || self.own(theirs.kind);
        all().find(|own| own.said() == theirs.said()).or_else(|| all().find(|own| own.says_numbered(theirs)))
    }

    /// The own entry with the id of another.
    fn own_like(&self, entry: &Entry) -> Option<&Entry> {
        self.own(entry.kind).find(|own| own.id == entry.id)
    }
}
