//! A shelf as a file that another shop loads: what stands in it, and what taking it in would do, before anything is changed.
//!
//! The file tells of parts: names, counts, who counted them. Prices, quantities and places in the store belong to a shop and stay with it:
//! with the one that writes the file, and with the one that reads it.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;
use serde_json::Value;

use super::saved::{self, SCHEMA};
use super::{Catalogue, Column, Entry, PartKind};
use crate::problem::Problem;

/// What the file calls itself.
const SHELF: &str = "shelf";
/// Whose parts they are where the file does not say.
const UNNAMED: &str = "another shop";
/// The longest name of a shop that is kept, in characters.
const LONGEST_NAME: usize = 80;

/// Why a text is no shelf of another shop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ExchangeError {
    /// A job, or a backup of jobs.
    Jobs,
    /// Not of this shape: what the parser says, or what is missing.
    NotAShelf(String),
    /// Written by a newer version: the version it names.
    Newer(u64),
}

explain! { ExchangeError:
    Self::Jobs => "the file holds jobs, not a shelf", "open it under Jobs";
    Self::NotAShelf(detail) => format!("the file is no shelf of another shop ({detail})"),
        "have the other shop save it again with “Save a shelf for another shop”";
    Self::Newer(schema) => format!("the shelf was saved by a newer version (shape {schema}, this one knows {SCHEMA})"),
        "load the page again to get the newer version, then take the file again";
}

worded! {
    /// What is to be done where two versions differ.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
    pub enum Take {
        /// Theirs is added beside mine.
        #[default]
        Both => "keep both";
        /// Mine stays, theirs is left.
        Ours => "keep mine";
        /// Theirs replaces mine.
        Theirs => "take theirs";
    }
    /// The way in words.
    pub fn words;
}

impl Take {
    /// Every way, as offered.
    pub const ALL: [Self; 3] = [Self::Both, Self::Ours, Self::Theirs];
}

/// An own entry beside one of the file with the same name or part number that says something else.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Meeting {
    /// Mine.
    pub mine: Entry,
    /// Theirs.
    pub theirs: Entry,
}

impl Meeting {
    /// Mine as theirs tells it; what only this shop knows stays.
    pub fn taken(&self) -> Entry {
        self.mine.kind.columns().filter(|column| is_told(*column)).fold(self.mine.clone(), |entry, column| {
            let theirs = self.theirs.text(column);
            entry.with(column, theirs)
        })
    }
}

/// What taking in another shop's shelf would do.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Exchange {
    /// The other shop.
    pub from: String,
    /// Parts that are new here.
    pub new: Vec<Entry>,
    /// How many say what an own one says.
    pub same: usize,
    /// Those that say something else than an own one of the same name or part number.
    pub meetings: Vec<Meeting>,
    /// Why others cannot be used: a sentence each.
    pub refused: Vec<String>,
}

impl Exchange {
    /// The counts in words: `From Mill Lane: 12 new parts, 3 as they are here, 1 different, 2 that cannot be used`.
    pub fn sentence(&self) -> String {
        let (new, refused) = (self.new.len(), self.refused.len());
        let parts = if new == 1 { "part" } else { "parts" };
        let refused = if refused == 0 { String::new() } else { format!(", {refused} that cannot be used") };
        format!("From {}: {new} new {parts}, {} as they are here, {} different{refused}", self.from, self.same, self.meetings.len())
    }

    /// How many entries are written: the new ones, and of those that differ all that are not left.
    pub fn writes(&self, takes: &[Take]) -> usize {
        self.new.len() + self.chosen(takes).filter(|(_, take)| *take != Take::Ours).count()
    }

    fn chosen<'a>(&'a self, takes: &'a [Take]) -> impl Iterator<Item = (&'a Meeting, Take)> {
        self.meetings.iter().enumerate().map(|(at, meeting)| (meeting, takes.get(at).copied().unwrap_or_default()))
    }
}

/// Whether a JSON value is a shelf, of whichever version.
pub fn is_shelf(value: &Value) -> bool {
    value.get("layshaft").and_then(Value::as_str) == Some(SHELF)
}

/// Whether a text is meant as JSON, and no list of lines.
pub fn is_json(text: &str) -> bool {
    text.trim_start().starts_with('{')
}

/// The shop's own parts that are whole as a file for another shop, and how many are left out because they cannot be read yet.
pub fn to_text(catalogue: &Catalogue, shop: &str, now: &str) -> (String, usize) {
    #[derive(Serialize)]
    struct File<'a> {
        layshaft: &'static str,
        schema: u32,
        saved: &'a str,
        from: &'a str,
        entries: Vec<Entry>,
    }
    let whole = catalogue.own.iter().filter(|entry| entry.checked().is_ok()).map(Entry::told_abroad);
    let entries: Vec<Entry> = whole.collect();
    let left = catalogue.own.len() - entries.len();
    let file = File { layshaft: SHELF, schema: SCHEMA, saved: now, from: shop.trim(), entries };
    (serde_json::to_string_pretty(&file).unwrap_or_default(), left)
}

impl Catalogue {
    /// What taking in a shelf of another shop would do; nothing is changed yet.
    ///
    /// # Errors
    /// When the text is no such file, or from a newer version. What is broken in it is refused by itself.
    pub fn meet(&self, text: &str) -> Result<Exchange, ExchangeError> {
        let not = |detail: String| ExchangeError::NotAShelf(detail);
        let value: Value = serde_json::from_str(text).map_err(|why| not(why.to_string()))?;
        if !is_shelf(&value) {
            let is_job = ["jobs", "job", "setups"].iter().any(|member| value.get(member).is_some());
            return Err(if is_job { ExchangeError::Jobs } else { not("it does not say that it is one".into()) });
        }
        match value.get("schema").and_then(Value::as_u64) {
            None => return Err(not("it names no schema".into())),
            Some(schema) if schema > u64::from(SCHEMA) => return Err(ExchangeError::Newer(schema)),
            Some(_) => {}
        }
        let Some(Value::Array(entries)) = value.get("entries") else { return Err(not("it has no list of parts".into())) };
        let named = value.get("from").and_then(Value::as_str).map_or("", str::trim);
        let from: String = if named.is_empty() { UNNAMED } else { named }.chars().take(LONGEST_NAME).collect();
        let mut sorting = Sorting::on(self);
        let mut plan = Exchange { from, ..Exchange::default() };
        for (at, value) in entries.iter().enumerate() {
            match read(value) {
                Ok(entry) => sorting.take(&mut plan, entry),
                Err(why) => plan.refused.push(format!("Part {} of the file{why}", at + 1)),
            }
        }
        Ok(plan)
    }

    /// The catalogue after the exchange; `takes` says of each meeting what is to be done.
    #[must_use]
    pub fn exchanged(&self, plan: &Exchange, takes: &[Take]) -> Self {
        let of = |wanted: Take| plan.chosen(takes).filter(move |(_, take)| *take == wanted).map(|(meeting, _)| meeting);
        let replaced = of(Take::Theirs).map(Meeting::taken).collect();
        let added = plan.new.iter().chain(of(Take::Both).map(|meeting| &meeting.theirs)).cloned().collect();
        self.replace_all(replaced).add_all(added)
    }
}

/// An entry of the file, or what is wrong with it behind its number.
fn read(value: &Value) -> Result<Entry, String> {
    let entry = saved::entry_of_a_kind(value).map_err(|_| " is of no kind known here.".to_owned())?;
    let name = entry.title().to_owned();
    let sentences = |problems: Vec<Problem>| problems.iter().map(Problem::sentence).collect::<Vec<_>>().join(" ");
    entry.told_abroad().checked().map_err(|problems| format!(", “{}”: {}", crate::units::number::clip(&name), sentences(problems)))
}

/// Whether a column tells of the part, not of the shop that has it.
fn is_told(column: Column) -> bool {
    use Column::{Currency, Id, InStock, Place, Price, Quantity, ReorderAt};
    !matches!(column, Id | Price | Currency | Quantity | ReorderAt | Place | InStock)
}

impl Entry {
    /// What is told of it to another shop.
    fn told_abroad(&self) -> Self {
        self.kind
            .columns()
            .filter(|column| is_told(*column))
            .fold(Self::new(self.kind), |entry, column| entry.with(column, self.text(column)))
    }

    /// What it says of the part itself, wherever it came from.
    fn content(&self) -> (PartKind, Vec<String>) {
        (self.kind, self.told_abroad().with(Column::Origin, "").said())
    }

    /// Its part number as two are compared; none where it has none.
    fn number(&self) -> Option<(PartKind, String)> {
        let number: String = self.text(Column::PartNumber).split_whitespace().collect::<String>().to_lowercase();
        (!number.is_empty()).then_some((self.kind, number))
    }
}

/// The shop's own entries, ready to be met.
struct Sorting<'a> {
    /// What they say, also without the number behind a label that was in use.
    said: BTreeSet<(PartKind, Vec<String>)>,
    keys: BTreeMap<(PartKind, String), &'a Entry>,
    numbers: BTreeMap<(PartKind, String), &'a Entry>,
    /// Those that were met.
    met: BTreeSet<(PartKind, &'a str)>,
}

impl<'a> Sorting<'a> {
    fn on(catalogue: &'a Catalogue) -> Self {
        let own = || catalogue.own.iter();
        let said = own().flat_map(|entry| entry.unnumbered().iter().chain([entry]).map(Entry::content).collect::<Vec<_>>());
        Self {
            said: said.collect(),
            keys: crate::order::index(own().map(|entry| ((entry.kind, entry.key()), entry))),
            numbers: crate::order::index(own().filter_map(|entry| Some((entry.number()?, entry)))),
            met: BTreeSet::new(),
        }
    }

    fn take(&mut self, plan: &mut Exchange, theirs: Entry) {
        if !self.said.insert(theirs.content()) {
            plan.same += 1;
            return;
        }
        let theirs = if theirs.text(Column::Origin).is_empty() { theirs.with(Column::Origin, plan.from.clone()) } else { theirs };
        let by_number = || theirs.number().and_then(|number| self.numbers.get(&number));
        let mine = self.keys.get(&(theirs.kind, theirs.key())).or_else(by_number).copied();
        match mine.filter(|mine| self.met.insert((mine.kind, mine.id.as_str()))) {
            Some(mine) => plan.meetings.push(Meeting { mine: mine.clone(), theirs }),
            None => plan.new.push(theirs),
        }
    }
}
