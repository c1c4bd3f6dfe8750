//! A price as people type it: `120.00`, `1,250`, `120 EUR`, `€120`.

use crate::units::number;

/// A sum of money as it was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Typed {
    /// The number, as typed.
    pub amount: String,
    /// The currency beside it, three letters as in ISO 4217; none where none was typed.
    pub currency: Option<String>,
}

/// Signs that stand for one currency alone; a dollar is one of many.
const SIGNS: [(&str, &str); 2] = [("€", "EUR"), ("£", "GBP")];

/// Reads a price, with its currency before or behind it or without; none where it is no number that is not negative.
///
/// ```
/// use layshaft::catalogue::money::read;
/// let (amount, currency) = read("120.50 eur").map(|typed| (typed.amount, typed.currency)).unwrap_or_default();
/// assert_eq!((amount.as_str(), currency.as_deref()), ("120.50", Some("EUR")));
/// assert_eq!(read("120 to 140"), None);
/// ```
pub fn read(text: &str) -> Option<Typed> {
    let text = text.trim();
    let (amount, currency) = parted(text);
    hundredths(amount).map(|_| Typed { amount: amount.to_owned(), currency })
}

/// A price in hundredths of its currency, rounded to the nearest; none where the text is no price, or beyond ten thousand million.
///
/// ```
/// use layshaft::catalogue::money::hundredths;
/// assert_eq!((hundredths("1,250.5"), hundredths("12,50"), hundredths("12/5")), (Some(125_050), Some(1_250), None));
/// ```
#[expect(clippy::cast_possible_truncation, reason = "the greatest price is far below 2^53")]
pub fn hundredths(amount: &str) -> Option<i64> {
    let (readings, rest) = number::leading(amount).filter(|_| !amount.contains('/'))?;
    let value = readings.into_iter().flatten().next().filter(|value| (0.0..=1e10).contains(value))?;
    rest.trim().is_empty().then(|| (value * 100.0).round() as i64)
}

/// Sums of money, one for each currency, in the order the currencies came.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Totals(Vec<(i64, String)>);

impl Totals {
    /// Adds a price in hundredths to the sum of its currency.
    pub fn add(&mut self, hundredths: i64, currency: &str) {
        match self.0.iter_mut().find(|(_, known)| known == currency) {
            Some((sum, _)) => *sum = sum.saturating_add(hundredths),
            None => self.0.push((hundredths, currency.to_owned())),
        }
    }

    /// Each sum in hundredths with its currency.
    pub fn as_slice(&self) -> &[(i64, String)] {
        &self.0
    }

    /// Whether nothing was added.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The sums as they are printed: `810.00 EUR + 40.00 GBP`.
    pub fn shown(&self) -> String {
        self.0.iter().map(|(sum, currency)| shown(*sum, currency)).collect::<Vec<_>>().join(" + ")
    }
}

/// A sum as it is printed: `1,250.00 EUR`; the number alone where no currency is known.
#[expect(clippy::cast_precision_loss, reason = "a sum is far below 2^53 hundredths")]
pub fn shown(hundredths: i64, currency: &str) -> String {
    format!("{} {currency}", number::show(hundredths as f64 / 100.0, 2)).trim_end().to_owned()
}

/// The number and the currency before or behind it.
fn parted(text: &str) -> (&str, Option<String>) {
    for (sign, code) in SIGNS {
        if let Some(rest) = text.strip_prefix(sign).or_else(|| text.strip_suffix(sign)) {
            return (rest.trim(), Some(code.to_owned()));
        }
    }
    let is_code = |part: &str| part.len() == 3 && part.bytes().all(|b| b.is_ascii_alphabetic());
    let front = text.split_at_checked(3).filter(|(code, rest)| is_code(code) && !rest.starts_with(char::is_alphabetic));
    let back = text.len().checked_sub(3).and_then(|at| text.split_at_checked(at)).filter(|(_, code)| is_code(code));
    match (front, back) {
        (Some((code, rest)), _) | (None, Some((rest, code))) => (rest.trim(), Some(code.to_ascii_uppercase())),
        (None, None) => (text, None),
    }
}
