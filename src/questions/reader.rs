//! Fields read one after the other: what is blank says nothing, what cannot be read is kept as a problem of its field.

use super::setup::keep;
use crate::gearing::Teeth;
use crate::job::{InputId, InputProblem};
use crate::problem::Explain;
use crate::units::{Limits, Measured, Typed, limits, number};

#[derive(Clone, Debug, PartialEq)]
struct NoCount {
    text: String,
    least: u16,
    most: u16,
}

explain! { NoCount:
    error => format!("“{}” is not a number from {} to {}", number::clip(&error.text), error.least, error.most),
        "type how many teeth, counted once round";
}

/// A text that is no number within bounds.
#[derive(Clone, Debug, PartialEq)]
struct NoNumber {
    text: String,
    bounds: (f64, f64),
}

impl Explain for NoNumber {
    fn what(&self) -> String {
        let (least, most) = self.bounds;
        format!("“{}” is not a number from {} to {}", number::clip(&self.text), limits::shown(least), limits::shown(most))
    }

    fn what_to_do(&self) -> String {
        "type the profile shift in modules, as +0.2".into()
    }
}

/// Reads fields, and keeps what is wrong with each.
pub struct Reader<'a> {
    /// What cannot be read, by field.
    pub problems: &'a mut Vec<InputProblem>,
}

impl<'a> Reader<'a> {
    /// One that keeps problems there.
    pub fn new(problems: &'a mut Vec<InputProblem>) -> Self {
        Self { problems }
    }

    /// A quantity inside limits.
    pub fn quantity<Q: Measured>(&mut self, typed: &Typed, field: impl Into<InputId>, limits: &Limits<Q>) -> Option<Q> {
        self.read(typed, field, |typed| typed.read(limits))
    }

    /// What a notation of its own says.
    pub fn read<T, E: Explain>(
        &mut self,
        typed: &Typed,
        field: impl Into<InputId>,
        read: impl FnOnce(&Typed) -> Result<T, E>,
    ) -> Option<T> {
        if typed.is_blank() { None } else { keep(self.problems, field, read(typed)) }
    }

    /// A whole number.
    pub fn whole(&mut self, text: &str, field: impl Into<InputId>, (least, most): (u16, u16)) -> Option<u16> {
        if text.trim().is_empty() {
            return None;
        }
        let count = text.trim().parse::<u16>().ok().filter(|count| (least..=most).contains(count));
        keep(self.problems, field, count.ok_or_else(|| NoCount { text: text.trim().to_owned(), least, most }))
    }

    /// The teeth of a gear.
    pub fn teeth(&mut self, text: &str, field: impl Into<InputId>) -> Option<Teeth> {
        self.whole(text, field, (Teeth::LEAST, Teeth::GREATEST)).and_then(Teeth::new)
    }

    /// A plain number, `+0.2` or `-0,35`.
    pub fn number(&mut self, text: &str, field: impl Into<InputId>, bounds: (f64, f64)) -> Option<f64> {
        let text = text.trim();
        if text.is_empty() {
            return None;
        }
        let (sign, digits) = match text.strip_prefix(['-', '−']) {
            Some(rest) => (-1.0, rest),
            None => (1.0, text.strip_prefix('+').unwrap_or(text)),
        };
        let value = number::read_decimal(&digits.trim().replace(',', ".")).map(|value| sign * value);
        let value = value.filter(|value| (bounds.0..=bounds.1).contains(value));
        keep(self.problems, field, value.ok_or_else(|| NoNumber { text: text.to_owned(), bounds }))
    }
}
