//! The shop's own entries worked on: put there, changed, copied, taken away and put back.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::{Catalogue, Column, Entry, PartKind};
use crate::problem::{Explain, Problem};

/// No own entry has that id.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// Whether the id belongs to a built-in entry, which cannot be changed.
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

impl Catalogue {
    /// The catalogue with these own entries instead; ids that are missing or used twice are made anew, nothing is dropped.
    #[must_use]
    pub fn with_own(&self, own: Vec<Entry>) -> Self {
        let empty = Self { own: Arc::default(), ..self.clone() };
        let mut taken = Taken::of(&empty);
        let identified = own.into_iter().map(|mut entry| {
            taken.identify(&mut entry);
            entry
        });
        Self { own: Arc::new(identified.collect()), ..empty }
    }

    /// The catalogue with one more own entry, and the id it was given; see [`Catalogue::add_all`].
    #[must_use]
    pub fn add(&self, entry: Entry) -> (Self, String) {
        let after = self.add_all(vec![entry]);
        let id = after.own.last().map_or_else(String::new, |entry| entry.id.clone());
        (after, id)
    }

    /// The catalogue with more own entries. An id that is free is kept, a label in use already gets a number behind it.
    #[must_use]
    pub fn add_all(&self, entries: Vec<Entry>) -> Self {
        let mut own = Vec::clone(&self.own);
        let mut taken = Taken::of(self);
        for mut entry in entries {
            taken.number(&mut entry);
            taken.identify(&mut entry);
            own.push(entry);
        }
        self.owning(own)
    }

    /// The catalogue with own entries replaced by those of the same id; what is there no longer is left alone.
    #[must_use]
    pub fn replace_all(&self, entries: Vec<Entry>) -> Self {
        let mut own = Vec::clone(&self.own);
        let mut taken = Taken::of(self);
        let places = crate::order::index(self.own.iter().enumerate().map(|(at, entry)| ((entry.kind, entry.id.as_str()), at)));
        for mut entry in entries {
            let Some(place) = places.get(&(entry.kind, entry.id.as_str())).and_then(|at| own.get_mut(*at)) else { continue };
            taken.keys.remove(&key(place));
            taken.number(&mut entry);
            taken.keys.insert(key(&entry));
            entry.own = true;
            *place = entry;
        }
        self.owning(own)
    }

    /// The catalogue with an entry as it was typed: a new one of the shop's own, or the one of `id` changed; and its id.
    ///
    /// # Errors
    /// When it cannot stand in the catalogue, each problem at its column, or the entry to be changed is not one of the shop's own.
    pub fn put(&self, id: Option<&str>, entry: &Entry) -> Result<(Self, String), Vec<Problem>> {
        let mut entry = entry.checked()?;
        let Some(id) = id else {
            entry.id.clear();
            return Ok(self.add(entry));
        };
        self.own_place(entry.kind, id).map_err(|why| vec![Problem::stop("line", &why)])?;
        id.clone_into(&mut entry.id);
        Ok((self.replace_all(vec![entry]), id.to_owned()))
    }

    /// The catalogue with an own copy of any entry, labelled as one, and the copy's id.
    ///
    /// # Errors
    /// When there is no such entry.
    pub fn copied(&self, kind: PartKind, id: &str) -> Result<(Self, String), Missing> {
        let entry = self.get(kind, id).ok_or(Missing { built_in: false })?;
        Ok(self.add(entry.labelled("(copy)").placed("", true)))
    }

    /// The catalogue without an entry of the shop's own.
    ///
    /// # Errors
    /// When it is not one of the shop's own.
    pub fn without(&self, kind: PartKind, id: &str) -> Result<Self, Missing> {
        let at = self.own_place(kind, id)?;
        let mut own = Vec::clone(&self.own);
        own.remove(at);
        Ok(self.owning(own))
    }

    /// The catalogue with an entry of the shop's own said to be on the shelf, or not.
    ///
    /// # Errors
    /// When it is not one of the shop's own.
    pub fn stocked(&self, kind: PartKind, id: &str, in_stock: bool) -> Result<Self, Missing> {
        let at = self.own_place(kind, id)?;
        let mut own = Vec::clone(&self.own);
        if let Some(entry) = own.get_mut(at) {
            entry.put_in_stock(in_stock);
        }
        Ok(self.owning(own))
    }

    /// The catalogue with so many of an entry of the shop's own; as it is where the entry is none.
    pub(super) fn counted(&self, kind: PartKind, id: &str, count: u32) -> Self {
        let mut own = Vec::clone(&self.own);
        for entry in own.iter_mut().filter(|entry| entry.kind == kind && entry.id == id) {
            entry.set(Column::Quantity, count.to_string());
            entry.put_in_stock(count > 0);
        }
        self.owning(own)
    }

    /// The catalogue with other own entries, as they are.
    fn owning(&self, own: Vec<Entry>) -> Self {
        Self { own: Arc::new(own), ..self.clone() }
    }

    fn own_place(&self, kind: PartKind, id: &str) -> Result<usize, Missing> {
        let place = self.own.iter().position(|entry| entry.kind == kind && entry.id == id);
        place.ok_or_else(|| Missing { built_in: self.get(kind, id).is_some() })
    }
}

/// What two entries must not share: the kind, and an id or a key.
type Mark = (PartKind, String);

fn key(entry: &Entry) -> Mark {
    (entry.kind, entry.key())
}

/// The ids and keys in use.
struct Taken {
    ids: BTreeSet<Mark>,
    keys: BTreeSet<Mark>,
}

impl Taken {
    fn of(catalogue: &Catalogue) -> Self {
        let keys = catalogue.all().filter(|entry| entry.own || entry.kind.is_named()).map(key);
        Self { ids: catalogue.all().map(|entry| (entry.kind, entry.id.clone())).collect(), keys: keys.collect() }
    }

    /// Makes an entry an own one under its id, or under a free one where it has none or a used one.
    fn identify(&mut self, entry: &mut Entry) {
        entry.own = true;
        entry.id = entry.id.trim().to_owned();
        if entry.id.is_empty() || self.ids.contains(&(entry.kind, entry.id.clone())) {
            entry.id = self.free_id(entry);
        }
        self.ids.insert((entry.kind, entry.id.clone()));
        self.keys.insert(key(entry));
    }

    /// Numbers the label of an entry that could not be told from another.
    fn number(&self, entry: &mut Entry) {
        let plain = entry.clone();
        for number in 2..=self.keys.len() + 2 {
            if !self.keys.contains(&key(entry)) {
                return;
            }
            *entry = plain.labelled(&format!("({number})"));
        }
    }

    /// An id that nothing has.
    fn free_id(&self, entry: &Entry) -> String {
        let stem = format!("own-{}", slug(&entry.key()));
        let numbered = (2..=self.ids.len() + 2).map(|number| format!("{stem}-{number}"));
        let mut ids = std::iter::once(stem.clone()).chain(numbered);
        ids.find(|id| !self.ids.contains(&(entry.kind, id.clone()))).unwrap_or(stem)
    }
}

/// A text made fit for an id: letters and digits in lower case, all else a dash.
fn slug(text: &str) -> String {
    const LONGEST: usize = 60;
    let mut slug = String::with_capacity(text.len().min(LONGEST));
    for c in text.chars().flat_map(char::to_lowercase) {
        if slug.len() >= LONGEST {
            break;
        }
        if c.is_alphanumeric() {
            slug.push(c);
        } else if !slug.is_empty() && !slug.ends_with('-') {
            slug.push('-');
        }
    }
    let slug = slug.trim_end_matches('-');
    if slug.is_empty() { "entry".to_owned() } else { slug.to_owned() }
}
