//! The parts a job needs: what of the customer's setup stands on the shop's own shelf, and what is listed with its build; how many are
//! there, how many are still to order, what they cost.

use super::Job;
use crate::catalogue::{Column, Entry, money};
use crate::checklist::{self, Line, Step};

/// A part that the job needs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Needed<'a> {
    /// What it is, in the words of its line or of its entry.
    pub what: String,
    /// How many of it.
    pub many: u32,
    /// What one costs, in hundredths, and in which money.
    pub price: Option<(i64, String)>,
    /// The entry of the shop's own shelf that it is.
    pub entry: Option<&'a Entry>,
    /// Whether its line is ticked: it is in hand, or fitted.
    pub is_used: bool,
    /// Its line in the list, counted from 0; none of a part of the setup.
    pub line: Option<usize>,
}

impl Job {
    /// Every part: those of the setup for the customer first, then the list's in its order. A part of the setup that the list names too
    /// stands there alone.
    pub fn parts_needed<'a>(&self, own: &'a [Entry]) -> Vec<Needed<'a>> {
        let lines = checklist::lines(&self.bench.build.parts);
        let listed: Vec<Needed<'a>> = lines
            .iter()
            .enumerate()
            .filter_map(|(at, line)| if let Line::Step(step) = line { Needed::listed(at, step, own) } else { None })
            .collect();
        let fitted = self.setup_for_customer().into_iter().flat_map(|setup| {
            // Of several that fit one place the first that has a price counts.
            let priced = setup.own_parts(own, |entry| price_of(entry).is_some());
            let place = |entry: &Entry| (entry.kind, entry.text(Column::Role).to_owned());
            let others = setup.own_parts(own, |entry| !priced.iter().any(|known| place(known) == place(entry)));
            priced.into_iter().chain(others).collect::<Vec<_>>()
        });
        let fitted = fitted.filter(|entry| !listed.iter().any(|part| part.entry == Some(*entry))).map(Needed::of_setup);
        let mut all: Vec<Needed<'a>> = fitted.collect();
        all.extend(listed);
        all
    }

    /// A line of a quote for each part that has a price.
    pub fn quote_lines(&self, own: &[Entry]) -> Vec<String> {
        self.parts_needed(own).iter().filter_map(Needed::quote_line).collect()
    }
}

impl<'a> Needed<'a> {
    fn of_setup(entry: &'a Entry) -> Self {
        let what = entry.title().to_owned();
        Self { what, many: entry.kind.on_a_car(), price: price_of(entry), entry: Some(entry), is_used: false, line: None }
    }

    /// The part of a line: `2 x front bearing, B-205: 14.50 EUR`; none of one that names nothing.
    fn listed(at: usize, step: &Step, own: &'a [Entry]) -> Option<Self> {
        let text = step.what.trim();
        let priced = text.rsplit_once(':').and_then(|(what, price)| Some((what, money::read(price)?)));
        let (what, price) = priced.map_or((text, None), |(what, price)| (what, Some(price)));
        let (many, what) = counted(what.trim());
        if what.is_empty() {
            return None;
        }
        let entry = own.iter().find(|entry| has_number(what, entry)).or_else(|| own.iter().find(|entry| is_called(what, entry)));
        let typed = price.and_then(|price| Some((money::hundredths(&price.amount)?, price.currency.unwrap_or_default())));
        let price = typed.or_else(|| entry.and_then(price_of));
        Some(Self { what: what.to_owned(), many, price, entry, is_used: step.is_done, line: Some(at) })
    }

    /// How many are on the shelf, as far as that is known.
    pub fn there(&self) -> u32 {
        self.entry.map_or(0, |entry| entry.count().unwrap_or(if entry.in_stock() { self.many } else { 0 }))
    }

    /// How many are still to order.
    pub fn to_order(&self) -> u32 {
        if self.is_used { 0 } else { self.many.saturating_sub(self.there()) }
    }

    /// What all of it costs.
    pub fn cost(&self) -> Option<(i64, &str)> {
        self.price.as_ref().map(|(each, currency)| (each.saturating_mul(i64::from(self.many)), currency.as_str()))
    }

    /// Its name with its part number, where the words do not say it.
    pub fn named(&self) -> String {
        let number = self.entry.map_or("", |entry| entry.text(Column::PartNumber).trim());
        let is_said = number.is_empty() || self.entry.is_some_and(|entry| has_number(&self.what, entry));
        if is_said { self.what.clone() } else { format!("{}, {number}", self.what) }
    }

    /// Its line in a quote: `Gear set: Corner four, A-101: 480.00 EUR`, `Front bearing, B-205, 2 at 14.50 EUR: 29.00 EUR`.
    fn quote_line(&self) -> Option<String> {
        let (cost, currency) = self.cost()?;
        let kind = self
            .entry
            .filter(|_| self.line.is_none())
            .map_or_else(String::new, |entry| format!("{}: ", crate::problem::capital(entry.kind.word(1))));
        let each = self.price.as_ref().filter(|_| self.many > 1);
        let each = each.map_or_else(String::new, |(each, currency)| format!(", {} at {}", self.many, money::shown(*each, currency)));
        Some(format!("{kind}{}{each}: {}", self.named(), money::shown(cost, currency)))
    }
}

fn price_of(entry: &Entry) -> Option<(i64, String)> {
    Some((money::hundredths(entry.text(Column::Price).trim())?, entry.text(Column::Currency).trim().to_owned()))
}

/// How many a line names, and the rest of it: `2 x seal`, `2× seal`, `seal x2`; one where it says nothing.
fn counted(what: &str) -> (u32, &str) {
    let digits = what.len() - what.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    if let Some((number, rest)) = what.split_at_checked(digits)
        && let Ok(many @ 1..=999) = number.parse::<u32>()
        && let Some(rest) = rest.trim_start().strip_prefix(['x', '×'])
        && !rest.starts_with(char::is_alphanumeric)
    {
        return (many, rest.trim_start());
    }
    let last = what.rsplit_once(char::is_whitespace).and_then(|(what, last)| {
        let many = last.strip_prefix(['x', '×'])?.parse::<u32>().ok().filter(|many| (1..=999).contains(many))?;
        Some((many, what.trim_end().trim_end_matches(',')))
    });
    last.unwrap_or((1, what))
}

/// Whether words name the part number of an entry.
fn has_number(what: &str, entry: &Entry) -> bool {
    let number = entry.text(Column::PartNumber).trim();
    let is_it = |word: &str| word.trim().eq_ignore_ascii_case(number);
    !number.is_empty()
        && (what.split_whitespace().map(|word| word.trim_end_matches([',', ';'])).any(is_it) || what.split([',', ';']).any(is_it))
}

/// Whether words are the name of an entry.
fn is_called(what: &str, entry: &Entry) -> bool {
    !entry.title().trim().is_empty() && what.trim().eq_ignore_ascii_case(entry.title().trim())
}
