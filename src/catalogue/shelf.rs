//! A shelf: the built-in entries of one kind and the shop's own, and what can be done with the own ones.
//!
//! Every change answers a new shelf and leaves the old one as it was, so that it can be undone.

use std::collections::BTreeSet;

use super::entry::{Entry, slug};
use crate::problem::Explain;

/// The entries of one kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Shelf<T: Entry> {
    built_in: &'static [T],
    own: Vec<T>,
}

/// No own entry has that id.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// The id that was asked for.
    pub id: String,
    /// Whether it belongs to a built-in entry, which cannot be changed.
    pub built_in: bool,
}

impl Explain for Missing {
    fn what(&self) -> String {
        if self.built_in { "a built-in entry cannot be changed".into() } else { "this entry is no longer in the catalogue".into() }
    }

    fn what_to_do(&self) -> String {
        if self.built_in { "make a copy and change that".into() } else { "choose another, or enter it again".into() }
    }
}

impl<T: Entry> Shelf<T> {
    /// The built-in entries alone.
    pub fn built_in() -> Self {
        Self { built_in: T::built_in(), own: Vec::new() }
    }

    /// Nothing at all.
    pub fn empty() -> Self {
        Self { built_in: &[], own: Vec::new() }
    }

    /// The same built-in entries with these own ones; ids that are missing or used twice are made anew, nothing is dropped.
    #[must_use]
    pub fn with_own(&self, own: Vec<T>) -> Self {
        let mut shelf = Self { built_in: self.built_in, own: Vec::with_capacity(own.len()) };
        let mut taken = Taken::on(&shelf);
        for mut entry in own {
            taken.identify(&mut entry);
            shelf.own.push(entry);
        }
        shelf
    }

    /// Every entry, the built-in ones first.
    pub fn all(&self) -> impl Iterator<Item = &T> {
        self.built_in.iter().chain(&self.own)
    }

    /// The shop's own entries.
    pub fn own(&self) -> &[T] {
        &self.own
    }

    /// How many there are in all.
    pub fn len(&self) -> usize {
        self.built_in.len() + self.own.len()
    }

    /// Whether there is nothing on it.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The entry of that id.
    pub fn get(&self, id: &str) -> Option<&T> {
        self.all().find(|entry| entry.id() == id)
    }

    /// The shelf with one more own entry, and the id it was given. A label in use already gets a number behind it.
    #[must_use]
    pub fn add(&self, entry: T) -> (Self, String) {
        let shelf = self.add_all(vec![entry]);
        let id = shelf.own.last().map_or_else(String::new, |entry| entry.id().to_owned());
        (shelf, id)
    }

    /// The shelf with more own entries. An id that is free is kept, a label in use already gets a number behind it.
    #[must_use]
    pub fn add_all(&self, entries: Vec<T>) -> Self {
        let mut shelf = self.clone();
        let mut taken = Taken::on(self);
        for mut entry in entries {
            taken.number(&mut entry);
            taken.identify(&mut entry);
            shelf.own.push(entry);
        }
        shelf
    }

    /// The shelf with an own entry replaced; it keeps its id and its place.
    ///
    /// # Errors
    /// When no own entry has that id.
    pub fn edit(&self, id: &str, entry: T) -> Result<Self, Missing> {
        self.own_place(id)?;
        Ok(self.replace_all(vec![(id.to_owned(), entry)]))
    }

    /// The shelf with own entries replaced, each keeping its id and its place; what is there no longer is left alone.
    #[must_use]
    pub fn replace_all(&self, entries: Vec<(String, T)>) -> Self {
        let mut shelf = self.clone();
        let mut taken = Taken::on(self);
        let places = crate::order::index(self.own.iter().enumerate().map(|(at, entry)| (entry.id(), at)));
        for (id, mut entry) in entries {
            let Some(place) = places.get(id.as_str()).and_then(|at| shelf.own.get_mut(*at)) else { continue };
            taken.keys.remove(&place.key());
            taken.number(&mut entry);
            taken.keys.insert(entry.key());
            entry.place(id, true);
            *place = entry;
        }
        shelf
    }

    /// The shelf with an own copy of any entry, labelled as one, and the copy's id.
    ///
    /// # Errors
    /// When no entry has that id.
    pub fn copy(&self, id: &str) -> Result<(Self, String), Missing> {
        let mut entry = self.get(id).cloned().ok_or_else(|| Missing { id: id.to_owned(), built_in: false })?;
        entry.relabel(format!("{} (copy)", entry.label()).trim().to_owned());
        entry.place(String::new(), true);
        Ok(self.add(entry))
    }

    /// The shelf without an own entry.
    ///
    /// # Errors
    /// When no own entry has that id.
    pub fn delete(&self, id: &str) -> Result<Self, Missing> {
        let at = self.own_place(id)?;
        let mut shelf = self.clone();
        shelf.own.remove(at);
        Ok(shelf)
    }

    fn own_place(&self, id: &str) -> Result<usize, Missing> {
        let built_in = self.built_in.iter().any(|entry| entry.id() == id);
        self.own.iter().position(|entry| entry.id() == id).ok_or_else(|| Missing { id: id.to_owned(), built_in })
    }
}

/// The ids and keys in use on a shelf.
struct Taken {
    ids: BTreeSet<String>,
    keys: BTreeSet<String>,
}

impl Taken {
    fn on<T: Entry>(shelf: &Shelf<T>) -> Self {
        let keys = shelf.all().filter(|entry| entry.own() || T::NAMED).map(Entry::key);
        Self { ids: shelf.all().map(|entry| entry.id().to_owned()).collect(), keys: keys.collect() }
    }

    /// Makes an entry an own one under its id, or under a free one where it has none or a used one.
    fn identify<T: Entry>(&mut self, entry: &mut T) {
        let id = entry.id().trim().to_owned();
        let id = if id.is_empty() || self.ids.contains(&id) { self.free_id(entry) } else { id };
        self.ids.insert(id.clone());
        self.keys.insert(entry.key());
        entry.place(id, true);
    }

    /// Numbers the label of an entry that could not be told from another.
    fn number<T: Entry>(&self, entry: &mut T) {
        let label = entry.label().to_owned();
        for number in 2..=self.keys.len() + 2 {
            if !self.keys.contains(&entry.key()) {
                return;
            }
            entry.relabel(format!("{label} ({number})").trim().to_owned());
        }
    }

    /// An id that nothing on the shelf has.
    fn free_id<T: Entry>(&self, entry: &T) -> String {
        let stem = format!("own-{}", slug(&entry.key()));
        let numbered = (2..=self.ids.len() + 2).map(|number| format!("{stem}-{number}"));
        std::iter::once(stem.clone()).chain(numbered).find(|id| !self.ids.contains(id)).unwrap_or(stem)
    }
}
