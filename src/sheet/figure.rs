//! What stands in a cell: figures with their workings, words, verdicts.

use super::worked::Worked;
use crate::gearing::Ratio;
use crate::gearing::teeth::decimal;
use crate::units::{Measured, Unit, number};

/// One piece of a line.
#[derive(Clone, Debug, PartialEq)]
pub enum Piece {
    /// A figure that can be asked how it came about.
    Figure(Box<Figure>),
    /// Words beside a figure.
    Words(String),
    /// Words that open the question of an id.
    Open(&'static str, String),
    /// A judgement.
    Verdict(Verdict),
    /// Why there is no figure, though what it rests on was typed.
    Absent(String),
    /// What is still needed before there can be a figure.
    Needed(String),
}

impl Piece {
    /// Whether it says more than why there is no figure.
    pub fn says(&self) -> bool {
        !matches!(self, Self::Absent(_) | Self::Needed(_))
    }
}

/// How large a figure is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Size {
    /// The figure the row is about.
    Big,
    /// A figure among others.
    #[default]
    Plain,
    /// A figure that supports another.
    Small,
}

/// A value as it is shown, with its name, its unit and how it came about.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Its name inside its setup, its unit at the end: `gear_2.at_shift_mph`.
    pub key: String,
    /// Its value in the unit it is shown in.
    pub value: f64,
    /// How it is shown, without its unit.
    pub shown: String,
    /// The unit behind it; empty for a plain number.
    pub unit: String,
    /// How large it is shown.
    pub size: Size,
    /// How it differs from the first column's, where that is asked.
    pub difference: Option<String>,
    /// How it came about.
    pub working: Option<Working>,
}

/// How a figure came about.
#[derive(Clone, Debug, PartialEq)]
pub struct Working {
    /// The formula, in symbols explained by the words beside them.
    pub formula: String,
    /// The same with this setup's numbers.
    pub filled: Filled,
    /// Where the formula comes from.
    pub source: String,
}

/// A formula with numbers in it.
#[derive(Clone, Debug, PartialEq)]
pub enum Filled {
    /// In words: cases, tables, searches, what was integrated.
    Said(String),
    /// Operands that come to the figure's value, and the end of the line.
    Worked(Worked, String),
}

impl Working {
    /// The formula with this setup's numbers, as it is read.
    pub fn filled(&self) -> String {
        match &self.filled {
            Filled::Said(text) => text.clone(),
            Filled::Worked(worked, end) => format!("{} = {end}", worked.text()),
        }
    }
}

/// How a judgement falls out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// As it should be.
    Good,
    /// Wants attention.
    Caution,
    /// A caution for the driver that every setup has in some gear: said where it stands, not counted against the setup.
    Driving,
    /// Must not be left so.
    Stop,
}

/// A judgement in words: what, by how much, and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// How it falls out.
    pub tone: Tone,
    /// The words.
    pub text: String,
}

impl Figure {
    /// A plain number.
    pub fn number(key: impl Into<String>, value: f64, decimals: usize) -> Self {
        Self {
            key: key.into(),
            value,
            shown: number::show(value, decimals),
            unit: String::new(),
            size: Size::Plain,
            difference: None,
            working: None,
        }
    }

    /// An exact ratio.
    pub fn ratio(key: impl Into<String>, ratio: Ratio, decimals: usize) -> Self {
        Self::number(key, decimal(ratio), decimals)
    }

    /// A share as percent; the unit says of what in the words beside it.
    ///
    /// ```
    /// use layshaft::sheet::Figure;
    /// let figure = Figure::percent("gear_1.drop", 0.315, 1);
    /// assert_eq!((figure.key.as_str(), figure.text().as_str()), ("gear_1.drop_percent", "31.5 %"));
    /// ```
    pub fn percent(key: &str, share: f64, decimals: usize) -> Self {
        Self::number(format!("{key}_percent"), share * 100.0, decimals).in_unit("%")
    }

    /// A quantity in a unit; the unit's name is put behind the key.
    ///
    /// ```
    /// use layshaft::sheet::Figure;
    /// use layshaft::units::unit;
    /// // 70 × 1.609344
    /// let figure = Figure::quantity("cruise", &unit::MPH.of(70.0), &unit::KM_H, 1);
    /// assert_eq!((figure.key.as_str(), figure.text().as_str()), ("cruise_kmh", "112.7 km/h"));
    /// ```
    pub fn quantity<Q: Measured>(key: &str, quantity: &Q, unit: &Unit<Q>, decimals: usize) -> Self {
        let mut figure = Self::number(format!("{key}_{}", slug(unit.symbol)), (unit.take)(quantity), decimals);
        unit.symbol.clone_into(&mut figure.unit);
        figure
    }

    /// The figure with a unit behind it, where its key has one already.
    #[must_use]
    pub fn in_unit(mut self, unit: impl Into<String>) -> Self {
        self.unit = unit.into();
        self
    }

    /// The figure shown large.
    #[must_use]
    pub fn big(mut self) -> Self {
        self.size = Size::Big;
        self
    }

    /// The figure shown small.
    #[must_use]
    pub fn small(mut self) -> Self {
        self.size = Size::Small;
        self
    }

    /// The figure with how it came about.
    #[must_use]
    pub fn by(mut self, formula: impl Into<String>, filled: impl Into<String>, source: impl Into<String>) -> Self {
        self.working = Some(Working { formula: formula.into(), filled: Filled::Said(filled.into()), source: source.into() });
        self
    }

    /// The figure with the operands it came from, which come to the same value.
    #[must_use]
    pub fn worked(mut self, formula: impl Into<String>, worked: Worked, source: impl Into<String>) -> Self {
        let end = worked.own_end().map_or_else(|| self.text(), |shown| with_unit(shown, &self.unit));
        self.working = Some(Working { formula: formula.into(), filled: Filled::Worked(worked, end), source: source.into() });
        self
    }

    /// The figure with its difference from another of the same unit, as it is read off the two as they are shown; none where they show
    /// the same.
    ///
    /// ```
    /// use layshaft::sheet::Figure;
    /// // Read as 3,348 and 3,907.
    /// let figure = Figure::number("cruise_rpm", 3_348.4, 0).against(Some(3_906.6), 0);
    /// assert_eq!(figure.difference.as_deref(), Some("−559"));
    /// ```
    #[must_use]
    pub fn against(mut self, other: Option<f64>, decimals: usize) -> Self {
        let shown = |value: f64| format!("{value:.decimals$}").parse::<f64>().unwrap_or(value);
        let least = 0.5 * 10_f64.powi(-i32::try_from(decimals).unwrap_or(0));
        let difference = other.map(|other| shown(self.value) - shown(other)).filter(|difference| difference.abs() >= least);
        self.difference = difference.map(|difference| {
            let sign = if difference > 0.0 { "+" } else { "" };
            format!("{sign}{}", number::show(difference, decimals))
        });
        self
    }

    /// The figure as it is read, with its unit.
    pub fn text(&self) -> String {
        with_unit(self.shown.clone(), &self.unit)
    }
}

fn with_unit(shown: String, unit: &str) -> String {
    if unit.is_empty() { shown } else { format!("{shown} {unit}") }
}

impl From<Piece> for Vec<Piece> {
    fn from(piece: Piece) -> Self {
        vec![piece]
    }
}

impl From<Figure> for Piece {
    fn from(figure: Figure) -> Self {
        Self::Figure(Box::new(figure))
    }
}

impl Piece {
    /// Words beside a figure.
    pub fn words(text: impl Into<String>) -> Self {
        Self::Words(text.into())
    }

    /// A good judgement.
    pub fn good(text: impl Into<String>) -> Self {
        Self::Verdict(Verdict { tone: Tone::Good, text: text.into() })
    }

    /// A judgement that wants attention.
    pub fn caution(text: impl Into<String>) -> Self {
        Self::Verdict(Verdict { tone: Tone::Caution, text: text.into() })
    }

    /// A caution for the driver.
    pub fn driving(text: impl Into<String>) -> Self {
        Self::Verdict(Verdict { tone: Tone::Driving, text: text.into() })
    }

    /// A judgement that must not be left so.
    pub fn stop(text: impl Into<String>) -> Self {
        Self::Verdict(Verdict { tone: Tone::Stop, text: text.into() })
    }
}

/// A unit's symbol as part of a key: `km/h` becomes `kmh`.
fn slug(symbol: &str) -> String {
    symbol
        .chars()
        .filter_map(|c| match c {
            'µ' => Some('u'),
            '²' => Some('2'),
            '°' => Some('d'),
            c if c.is_ascii_alphanumeric() => Some(c.to_ascii_lowercase()),
            _ => None,
        })
        .collect()
}
