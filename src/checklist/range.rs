//! What is wanted of a reading, and whether the reading is that: lengths, torques, and plain counts.

use super::ChecklistError;
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Length, Measured, System, Torque, Unit, number, unit, unit_typed};

/// What is counted or measured, told apart so that mm are never held against turns.
#[derive(Clone, Debug, PartialEq)]
enum Kind {
    Length(&'static Unit<Length>),
    Torque(&'static Unit<Torque>),
    /// Something counted, by the word behind its number.
    Count(String),
}

/// One reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    /// Its number as typed.
    pub shown: String,
    /// The same as a number, in the unit it was typed in.
    pub number: f64,
    kind: Kind,
}

/// What is wanted: everything from one value to another.
#[derive(Clone, Debug, PartialEq)]
pub struct Range {
    least: f64,
    greatest: f64,
    /// The unit of both, and of a bare reading.
    kind: Kind,
}

/// What a reading outside of its range may have been meant as: the factor that brings it inside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// The point stands one place off.
    Point,
    /// Inches were typed for mm, or mm for inches.
    OtherSystem,
    /// lbf·ft were typed for lbf·in, or the other way round.
    FeetForInches,
}

/// Words before an end that stands alone.
const AT_LEAST: [&str; 5] = ["at least", "min", "over", "≥", ">"];
const AT_MOST: [&str; 6] = ["at most", "max", "under", "up to", "≤", "<"];
/// Ends count as inside, whatever a conversion makes of them.
const ROUNDING: f64 = 1e-9;

impl Kind {
    /// What a text behind a number names; a bare number takes `bare`.
    fn read(text: &str, bare: Option<&Self>) -> Self {
        let text = text.trim();
        if text.is_empty() {
            return bare.cloned().unwrap_or(Self::Count(String::new()));
        }
        // Whatever the system: a unit is named.
        let named = format!("1 {text}");
        let length = unit_typed::<Length>(&named, System::Metric).map(Self::Length);
        let torque = || unit_typed::<Torque>(&named, System::Metric).map(Self::Torque);
        length.or_else(torque).unwrap_or_else(|| Self::Count(text.to_lowercase()))
    }

    /// A number of this unit in the unit of another of its kind; none where they are of different kinds.
    fn in_unit_of(&self, number: f64, other: &Self) -> Option<f64> {
        match (self, other) {
            (Self::Length(own), Self::Length(other)) => Some(other.number(own.of(number))),
            (Self::Torque(own), Self::Torque(other)) => Some(other.number(own.of(number))),
            (Self::Count(own), Self::Count(other)) if own == other || own.is_empty() => Some(number),
            _ => None,
        }
    }

    fn symbol(&self) -> &str {
        match self {
            Self::Length(unit) => unit.symbol,
            Self::Torque(unit) => unit.symbol,
            Self::Count(word) => word,
        }
    }
}

impl Amount {
    /// Reads a reading, a bare number in the unit of what is wanted.
    ///
    /// # Errors
    /// When it is no number, or of another kind than what is wanted.
    pub fn read(text: &str, wanted: Option<&Range>) -> Result<Self, ChecklistError> {
        let text = text.trim();
        let (readings, rest) = number::leading(text).ok_or_else(|| ChecklistError::NoReading(text.to_owned()))?;
        if rest.contains(|c: char| c.is_ascii_digit()) && !rest.contains(char::is_alphabetic) {
            return Err(ChecklistError::NoReading(text.to_owned()));
        }
        let kind = Kind::read(rest, wanted.map(|range| &range.kind));
        let shown = text.get(..text.len() - rest.len()).unwrap_or(text).trim().to_owned();
        let amount = |number| Self { shown: shown.clone(), number, kind: kind.clone() };
        let mut amounts = readings.into_iter().flatten().map(amount);
        let first = amounts.next().ok_or_else(|| ChecklistError::NoReading(text.to_owned()))?;
        let Some(range) = wanted else { return Ok(first) };
        if kind.in_unit_of(0.0, &range.kind).is_none() {
            return Err(ChecklistError::OfAnother { text: text.to_owned(), wanted: range.said() });
        }
        // `0,105` may mark thousands or decimals: the one inside is taken.
        if range.holds(&first) { Ok(first) } else { Ok(amounts.find(|other| range.holds(other)).unwrap_or(first)) }
    }

    /// A torque that was worked out.
    pub fn of_torque(torque: Torque) -> Self {
        let number = unit::N_M.number(torque);
        Self { shown: number::show(number, 2), number, kind: Kind::Torque(&unit::N_M) }
    }

    /// Its unit.
    pub fn unit(&self) -> &str {
        self.kind.symbol()
    }
}

impl Range {
    /// Reads what is wanted: `0.002 to 0.006 in`, `20-32 lbf·in`, `2 ± 0.1 mm`, `at least 0.8 mm`, `40`.
    ///
    /// # Errors
    /// When it is none of these, or both ends are of different kinds.
    ///
    /// ```
    /// use layshaft::checklist::{Amount, ChecklistError, Range};
    /// let range = Range::read("0.002 to 0.006 in")?;
    /// // 0.10 mm ÷ 25.4 = 0.0039 in, and a bare figure is in inches here.
    /// assert!(range.holds(&Amount::read("0.10 mm", Some(&range))?));
    /// assert!(!range.holds(&Amount::read("0.008", Some(&range))?));
    /// # Ok::<(), ChecklistError>(())
    /// ```
    pub fn read(text: &str) -> Result<Self, ChecklistError> {
        let wrong = || ChecklistError::NoRange(text.trim().to_owned());
        let words = text.trim().to_lowercase();
        for (all, is_least) in [(&AT_LEAST[..], true), (&AT_MOST[..], false)] {
            if let Some(rest) = all.iter().find_map(|word| words.strip_prefix(word)) {
                let (end, kind) = end(rest, None).ok_or_else(wrong)?;
                let (least, greatest) = if is_least { (end, f64::INFINITY) } else { (f64::NEG_INFINITY, end) };
                return Ok(Self { least, greatest, kind });
            }
        }
        let words = words.replace("+/-", "±").replace('…', " to ").replace("..", " to ");
        if let Some((middle, off)) = words.split_once('±') {
            let (off, kind) = end(off, None).ok_or_else(wrong)?;
            let (middle, of_middle) = end(middle, Some(&kind)).ok_or_else(wrong)?;
            let off = kind.in_unit_of(off, &of_middle).ok_or_else(wrong)?.abs();
            return Ok(Self { least: middle - off, greatest: middle + off, kind: of_middle });
        }
        let (first, last) = ends(&words);
        let (greatest, kind) = end(last, None).ok_or_else(wrong)?;
        let Some(first) = first else { return Ok(Self { least: greatest, greatest, kind }) };
        let (least, of_first) = end(first, Some(&kind)).ok_or_else(wrong)?;
        let least = of_first.in_unit_of(least, &kind).ok_or_else(wrong)?;
        Ok(Self { least: least.min(greatest), greatest: least.max(greatest), kind })
    }

    /// A range of lengths, read in the usual unit of a system.
    pub fn of_lengths(least: Length, greatest: Length, system: System) -> Self {
        let unit = Length::usual(system);
        Self { least: unit.number(least), greatest: unit.number(greatest), kind: Kind::Length(unit) }
    }

    /// Whether a reading is what is wanted.
    pub fn holds(&self, amount: &Amount) -> bool {
        amount.kind.in_unit_of(amount.number, &self.kind).is_some_and(|number| self.has(number))
    }

    fn has(&self, number: f64) -> bool {
        let room = ROUNDING * number.abs().max(1e-6);
        number >= self.least - room && number <= self.greatest + room
    }

    /// What a reading outside may have been meant as.
    pub fn slip(&self, amount: &Amount) -> Option<Slip> {
        let number = amount.kind.in_unit_of(amount.number, &self.kind).filter(|number| !self.has(*number))?;
        // Both ends are needed: whatever is small enough lies below a single one.
        let is_closed = self.least > f64::NEG_INFINITY && self.greatest < f64::INFINITY && self.greatest > self.least;
        let other = match self.kind {
            Kind::Length(_) => Some((in_millimetres(unit::INCH.of(1.0)) / in_millimetres(millimetres(1.0)), Slip::OtherSystem)),
            Kind::Torque(_) => Some((unit::LBF_IN.number(unit::LBF_FT.of(1.0)), Slip::FeetForInches)),
            Kind::Count(_) => None,
        };
        let factors = other.into_iter().chain([(10.0, Slip::Point)]);
        let mut slips = factors.filter(|(factor, _)| self.has(number * factor) || self.has(number / factor));
        slips.next().map(|(_, slip)| slip).filter(|_| is_closed)
    }

    /// The range in words.
    pub fn said(&self) -> String {
        let one = |value: f64| crate::units::limits::shown((value * 1e5).round() / 1e5);
        let symbol = self.kind.symbol();
        let words = match (self.least.is_finite(), self.greatest.is_finite()) {
            (true, false) => format!("at least {}", one(self.least)),
            (false, _) => format!("at most {}", one(self.greatest)),
            _ if self.least.total_cmp(&self.greatest).is_eq() => one(self.least),
            _ => format!("{} to {}", one(self.least), one(self.greatest)),
        };
        format!("{words} {symbol}").trim_end().to_owned()
    }
}

/// Both ends of a range as texts; of a single value, that.
fn ends(words: &str) -> (Option<&str>, &str) {
    if let Some((first, last)) = words.split_once(" to ") {
        return (Some(first), last);
    }
    // A dash between two figures, but not that of `lbf-in`.
    let between = words.char_indices().find(|(at, c)| {
        let before = words.get(..*at).and_then(|before| before.trim_end().chars().next_back());
        let behind = words.get(at + c.len_utf8()..).and_then(|behind| behind.trim_start().chars().next());
        let is_figure = |c: char| c.is_ascii_digit() || c == '.';
        matches!(c, '-' | '–' | '—') && before.is_some_and(|c| c.is_ascii_digit()) && behind.is_some_and(is_figure)
    });
    match between.and_then(|(at, c)| Some((words.get(..at)?, words.get(at + c.len_utf8()..)?))) {
        Some((first, last)) => (Some(first), last),
        None => (None, words),
    }
}

/// One end: its number and its unit.
fn end(text: &str, bare: Option<&Kind>) -> Option<(f64, Kind)> {
    let (readings, rest) = number::leading(text)?;
    let [thousands, decimals] = readings;
    Some((decimals.or(thousands)?, Kind::read(rest, bare)))
}
