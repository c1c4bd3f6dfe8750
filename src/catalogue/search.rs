//! What is sought on the shelf: words, a tooth sum, a ratio, what is to be ordered. `curlew`, `sum 55`, `first near 2.5`, `near 3.9`.

use super::{Catalogue, Column, Entry, Part, PartKind};
use crate::gearing::check::ToothSums;
use crate::gearing::teeth::decimal;
use crate::units::number;
use crate::units::number::ordinal;

/// How far from a ratio sought one may be, as a share of it.
const NEAR: f64 = 0.1;

/// What is sought, as it was understood.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Query {
    /// Words that must all stand somewhere in an entry, in lower case.
    words: Vec<String>,
    sum: Option<u16>,
    near: Option<Near>,
    /// Whether only entries are sought of which it is time to order more.
    to_reorder: bool,
}

/// A ratio sought.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Near {
    /// Of which gear, counted from 0; of any where none is named.
    gear: Option<usize>,
    ratio: f64,
}

/// The entries of a kind that answer a query.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The first of them: the shop's own before the built-in ones; where a ratio is sought, the nearest first.
    pub entries: Vec<Entry>,
    /// How many fit.
    pub many: usize,
    /// How many there are of the kind.
    pub of: usize,
}

impl Query {
    /// Reads what is typed. What is not understood is a word like any other.
    pub fn read(text: &str) -> Self {
        let typed: Vec<String> = text.split_whitespace().map(str::to_lowercase).collect();
        let mut query = Self::default();
        let mut rest = typed.as_slice();
        while let Some((word, behind)) = rest.split_first() {
            rest = match (word.as_str(), behind) {
                ("tooth", [sum, teeth, behind @ ..]) if sum == "sum" && query.takes_sum(teeth) => behind,
                ("sum", [teeth, behind @ ..]) if query.takes_sum(teeth) => behind,
                ("near", [ratio, behind @ ..]) if query.takes_ratio(None, ratio) => behind,
                (gear, [near, ratio, behind @ ..]) if near == "near" && query.takes_ratio(gear_called(gear), ratio) => {
                    if gear_called(gear).is_none() {
                        query.words.push(word.clone());
                    }
                    behind
                }
                _ => {
                    query.words.push(word.clone());
                    behind
                }
            };
        }
        query
    }

    /// The same query, of what it is time to order more of alone, or not.
    #[must_use]
    pub fn only_to_reorder(self, to_reorder: bool) -> Self {
        Self { to_reorder, ..self }
    }

    fn takes_sum(&mut self, teeth: &str) -> bool {
        let sum = teeth.parse().ok();
        self.sum = sum.or(self.sum);
        sum.is_some()
    }

    fn takes_ratio(&mut self, gear: Option<usize>, text: &str) -> bool {
        let ratio = number::read_decimal(&text.replace(',', ".")).filter(|ratio| *ratio > 0.0);
        self.near = ratio.map(|ratio| Near { gear, ratio }).or(self.near);
        ratio.is_some()
    }

    /// What was understood beside words, to be said: `tooth sum 55, 1st within 10 % of 2.5`.
    pub fn understood(&self) -> Option<String> {
        let sum = self.sum.map(|sum| format!("tooth sum {sum}"));
        let near = self.near.map(|near| {
            let of = near.gear.map_or_else(|| "a ratio".to_owned(), ordinal);
            format!(
                "{of} within {} % of {}, nearest first",
                number::show(NEAR * 100.0, 0),
                number::show(near.ratio, 3).trim_end_matches('0').trim_end_matches('.')
            )
        });
        let told: Vec<String> = [sum, near].into_iter().flatten().collect();
        (!told.is_empty()).then(|| told.join(", "))
    }

    /// Whether an entry fits, and how far it is from the ratio sought, as a share of it: 0 where none is.
    fn distance(&self, entry: &Entry) -> Option<f64> {
        let fits = (!self.to_reorder || entry.is_low()) && entry.holds(&self.words) && self.sum.is_none_or(|sum| has_sum(entry, sum));
        if !fits {
            return None;
        }
        let Some(near) = self.near else { return Some(0.0) };
        let off = |ratio: f64| (ratio.abs() / near.ratio - 1.0).abs();
        let ratios = ratios(entry);
        let least = match near.gear {
            Some(gear) => ratios.get(gear).copied().map(off),
            None => ratios.into_iter().map(off).reduce(f64::min),
        };
        least.filter(|off| *off <= NEAR)
    }
}

impl Catalogue {
    /// The entries of a kind that answer what is sought, the first `most` of them; the entry `kept`, which is being changed, always.
    ///
    /// Every entry is looked at, however few are asked for.
    ///
    /// ```
    /// use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
    /// let tyre = |size: &str, note: &str| Entry::new(PartKind::Tyre).with(Column::Designation, size).with(Column::Note, note);
    /// let shelf = Catalogue::empty().add_all(vec![tyre("185/70R14", "winter"), tyre("205/60R15", "winter"), tyre("205/60R15", "summer")]);
    /// let found = shelf.found(PartKind::Tyre, "R15 winter", 10, None);
    /// assert_eq!((found.many, found.of), (1, 3));
    /// ```
    pub fn found(&self, kind: PartKind, sought: &str, most: usize, kept: Option<&str>) -> Found {
        self.answering(kind, &Query::read(sought), most, kept)
    }

    /// As [`Catalogue::found`], for a query that was read.
    pub fn answering(&self, kind: PartKind, query: &Query, most: usize, kept: Option<&str>) -> Found {
        let in_order = self.own(kind).chain(self.entries(kind).filter(|entry| !entry.own));
        let (mut of, mut fitting) = (0, Vec::new());
        for entry in in_order {
            of += 1;
            let is_kept = kept == Some(&entry.id);
            fitting.extend(query.distance(entry).or(is_kept.then_some(0.0)).map(|off| (off, entry)));
        }
        if query.near.is_some() {
            crate::order::by(&mut fitting, |(one, _), (other, _)| one.total_cmp(other));
        }
        Found { entries: fitting.iter().take(most).map(|(_, entry)| (*entry).clone()).collect(), many: fitting.len(), of }
    }

    /// How many of the shop's own entries of a kind it is time to order more of.
    pub fn many_to_reorder(&self, kind: PartKind) -> usize {
        self.own(kind).filter(|entry| entry.is_low()).count()
    }
}

/// The ratios that a part gives, lowest gear first.
fn ratios(entry: &Entry) -> Vec<f64> {
    match entry.part() {
        Ok(Part::GearSet(gearbox)) => gearbox.ratios().into_iter().map(decimal).collect(),
        Ok(Part::RingAndPinion(drive)) => vec![decimal(drive.ratio())],
        _ => Vec::new(),
    }
}

fn has_sum(entry: &Entry, sum: u16) -> bool {
    entry.gearbox().is_some_and(|gearbox| ToothSums::of(&gearbox).all().any(|known| known == sum))
}

/// The gear that a word names, counted from 0.
fn gear_called(word: &str) -> Option<usize> {
    const NAMES: [&str; 8] = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];
    NAMES.iter().position(|name| *name == word).or_else(|| (0..NAMES.len()).find(|gear| ordinal(*gear) == word))
}

impl Entry {
    /// Whether it holds every word sought, which are in lower case: in its texts, or in what a gear set works out to.
    fn holds(&self, sought: &[String]) -> bool {
        if sought.is_empty() {
            return true;
        }
        let text = self.texts().collect::<Vec<_>>().join(" ").to_lowercase();
        let mut missing = sought.iter().filter(|word| !text.contains(word.as_str())).peekable();
        let could_be_worked_out = |word: &&String| word.contains("speed") || word.bytes().any(|b| b.is_ascii_digit());
        if missing.peek().is_none() {
            return true;
        }
        let missing: Vec<&String> = missing.collect();
        self.kind == PartKind::GearSet && missing.iter().all(could_be_worked_out) && {
            let worked_out = self.worked_out();
            missing.iter().all(|word| worked_out.contains(word.as_str()))
        }
    }

    /// `4 speed 4-speed 2.47 1.67 1.24 1.00`.
    fn worked_out(&self) -> String {
        let many = self.gears().len();
        let ratios: Vec<String> = ratios(self).into_iter().map(|ratio| number::show(ratio, 2)).collect();
        format!("{many} speed {many}-speed {}", ratios.join(" "))
    }

    /// Whether it is time to order more: no more are there than the number to reorder at.
    ///
    /// ```
    /// use layshaft::catalogue::{Column, Entry, PartKind};
    /// let tyres = |many| Entry::new(PartKind::Tyre).with(Column::Quantity, many).with(Column::ReorderAt, "2");
    /// assert!(tyres("2").is_low() && !tyres("3").is_low() && !tyres("").is_low());
    /// ```
    pub fn is_low(&self) -> bool {
        let count = |column| self.text(column).trim().parse::<u32>().ok();
        count(Column::Quantity).zip(count(Column::ReorderAt)).is_some_and(|(there, least)| there <= least)
    }
}
