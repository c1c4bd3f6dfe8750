//! What does the offer come to? The lines as typed, each with its price, and a total for each currency.

use crate::catalogue::money::{self, Totals};
use crate::job;

/// One line of an offer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Charge {
    /// What is charged.
    pub what: String,
    /// Its price in hundredths, where one stands on the line.
    pub hundredths: Option<i64>,
    /// The currency; blank where none is named on any line.
    pub currency: String,
}

/// An offer, worked out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Offer {
    /// The lines in the order they were typed.
    pub charges: Vec<Charge>,
    /// A total for each currency, in the order they come.
    pub totals: Totals,
    /// How long it holds; blank where that is not said.
    pub valid: String,
}

/// Works out the offer of a job; a line without a price stays as it is, and is in no total.
///
/// ```
/// use layshaft::job::Quote;
/// use layshaft::questions::quote::offer;
/// let quote = Quote { lines: "Gear set: 480 EUR\nLabour, 6 h: 330".into(), ..Quote::default() };
/// // 480 + 330 = 810; the second line is in the only currency that is named.
/// assert_eq!(offer(&quote).total(), "810.00 EUR");
/// ```
pub fn offer(quote: &job::Quote) -> Offer {
    let mut charges: Vec<Charge> = quote.lines.lines().map(str::trim).filter(|line| !line.is_empty()).map(charge).collect();
    let mut named: Vec<String> = Vec::new();
    for charge in charges.iter().filter(|charge| !charge.currency.is_empty()) {
        if !named.contains(&charge.currency) {
            named.push(charge.currency.clone());
        }
    }
    if let [only] = named.as_slice() {
        for charge in charges.iter_mut().filter(|charge| charge.hundredths.is_some()) {
            charge.currency.clone_from(only);
        }
    }
    let mut totals = Totals::default();
    for charge in &charges {
        if let Some(price) = charge.hundredths {
            totals.add(price, &charge.currency);
        }
    }
    Offer { charges, totals, valid: quote.valid.trim().to_owned() }
}

impl Offer {
    /// Whether nothing is charged.
    pub fn is_empty(&self) -> bool {
        self.charges.is_empty()
    }

    /// The total as it is printed: `810.00 EUR`; of several currencies each.
    pub fn total(&self) -> String {
        self.totals.shown()
    }

    /// What it comes to, and what wants a look before it is printed, for whoever types it.
    pub fn remarks(&self) -> Vec<String> {
        let mut remarks = Vec::new();
        if !self.totals.is_empty() {
            remarks.push(format!("Total {}.", self.total()));
        }
        if self.totals.as_slice().len() > 1 {
            remarks.push("The lines are in more than one currency: each has its own total.".into());
        }
        for charge in self.charges.iter().filter(|charge| charge.hundredths.is_none()) {
            remarks.push(format!("“{}” ends in no price: it is printed, and not in the total.", crate::units::number::clip(&charge.what)));
        }
        remarks
    }
}

/// A line: its price stands behind the last colon or tab, or else is what the line ends in.
fn charge(line: &str) -> Charge {
    let parted = line.rsplit_once([':', '\t']).and_then(|(what, price)| Some((what, money::read(price)?)));
    match parted.or_else(|| ending(line)) {
        Some((what, price)) => {
            let hundredths = money::hundredths(&price.amount);
            Charge { what: what.trim().to_owned(), hundredths, currency: price.currency.unwrap_or_default() }
        }
        None => Charge { what: line.to_owned(), hundredths: None, currency: String::new() },
    }
}

/// The price in the last word of a line, or in the last two where the last is a currency in capitals.
fn ending(line: &str) -> Option<(&str, money::Typed)> {
    let (what, last) = line.rsplit_once(char::is_whitespace)?;
    if last.bytes().any(|b| b.is_ascii_digit()) {
        return money::read(last).map(|price| (what, price));
    }
    let is_currency = last.chars().all(|c| c.is_ascii_uppercase() || !c.is_ascii());
    let (what, amount) = what.trim_end().rsplit_once(char::is_whitespace).filter(|_| is_currency)?;
    money::read(&format!("{amount} {last}")).map(|price| (what, price))
}
