//! Texts under keys as a page has them, and as they are written where they outlive it: what waits to be written, and what another page wrote
//! meanwhile.
//!
//! A change waits with the text it was made upon. Whoever writes it looks whether that still stands there; where another page was quicker,
//! its text is taken and the change gives way. Where and how is written is not here.

use std::collections::BTreeMap;

/// A change that waits to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// Under which key.
    pub key: String,
    /// The text it was made upon; none where there was none.
    pub was: Option<String>,
    /// The text to be written; none to remove what is there.
    pub now: Option<String>,
}

impl Change {
    /// Whether it can be written where a text stands: the one it was made upon, or its own.
    pub fn fits(&self, there: Option<&str>) -> bool {
        there == self.was.as_deref() || there == self.now.as_deref()
    }
}

/// The texts of a page.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Ledger {
    texts: BTreeMap<String, String>,
    /// Of each key that is not written as it stands here, what is.
    behind: BTreeMap<String, Option<String>>,
}

impl Ledger {
    /// The texts as they are written, none of them changed yet.
    pub fn of(texts: BTreeMap<String, String>) -> Self {
        Self { texts, behind: BTreeMap::new() }
    }

    /// The text under a key.
    pub fn text(&self, key: &str) -> Option<&str> {
        self.texts.get(key).map(String::as_str)
    }

    /// Every key that begins so.
    pub fn keys<'a>(&'a self, prefix: &'a str) -> impl Iterator<Item = &'a str> {
        self.texts.keys().map(String::as_str).filter(move |key| key.starts_with(prefix))
    }

    /// Puts a text under a key, or takes it away; it then waits to be written.
    pub fn put(&mut self, key: &str, text: Option<&str>) {
        let was = self.set(key, text.map(str::to_owned));
        let written = self.behind.entry(key.to_owned()).or_insert(was);
        if written.as_deref() == text {
            self.behind.remove(key);
        }
    }

    /// Whether the text under a key waits to be written.
    pub fn is_behind(&self, key: &str) -> bool {
        self.behind.contains_key(key)
    }

    /// Whatever waits to be written.
    pub fn changes(&self) -> Vec<Change> {
        let change =
            |(key, was): (&String, &Option<String>)| Change { key: key.clone(), was: was.clone(), now: self.texts.get(key).cloned() };
        self.behind.iter().map(change).collect()
    }

    /// Notes that a change is written. What was put there meanwhile still waits.
    pub fn note_written(&mut self, change: &Change) {
        if self.text(&change.key) == change.now.as_deref() {
            self.behind.remove(&change.key);
        } else {
            self.behind.insert(change.key.clone(), change.now.clone());
        }
    }

    /// Takes what another page wrote under a key, in place of what is here.
    pub fn note_theirs(&mut self, key: &str, theirs: Option<String>) {
        self.behind.remove(key);
        self.set(key, theirs);
    }

    /// Goes back to what is written under a key.
    pub fn take_back(&mut self, key: &str) {
        if let Some(written) = self.behind.remove(key) {
            self.set(key, written);
        }
    }

    fn set(&mut self, key: &str, text: Option<String>) -> Option<String> {
        match text {
            Some(text) => self.texts.insert(key.to_owned(), text),
            None => self.texts.remove(key),
        }
    }
}
