//! Several readings of one bore or shaft: its size, how much it tapers, how far it is out of round.

use super::error::FitTextError;
use super::token::{Token, measure, tokens};
use crate::units::common::in_millimetres;
use crate::units::{Length, Limits, Typed};

/// Readings of one diameter, a group for each depth.
#[derive(Clone, Debug, PartialEq)]
pub struct Readings {
    groups: Vec<Vec<Length>>,
}

/// Readings that differ by more than this share of the greatest are not of one diameter.
const APART: f64 = 0.02;

impl Readings {
    /// Reads diameters parted by blanks or commas, those of another depth behind a semicolon or on another line:
    /// `1.2502 1.2504; 1.2498 1.2501`. A bare figure takes the next unit behind it.
    ///
    /// # Errors
    /// When there is none, something is no diameter, or they are too far apart to be of one.
    pub fn read(typed: &Typed, limits: &Limits<Length>) -> Result<Self, FitTextError> {
        let text = &typed.text;
        let none = || FitTextError::NoReading(text.trim().to_owned());
        let whole = tokens(text);
        let last_unit = whole.iter().rev().find_map(|token| if let Token::Unit(unit) = token { Some(*unit) } else { None });
        let mut groups = Vec::new();
        for depth in text.split([';', '\n']) {
            let tokens = tokens(&spaced(depth));
            let mut group = Vec::new();
            let mut at = 0;
            while at < tokens.len() {
                let (read, next) = measure(&tokens, at).ok_or_else(none)?;
                let wrong = |why| FitTextError::Quantity { line: read.text(last_unit), why };
                group.push(read.read(last_unit, typed.units, limits).map_err(wrong)?);
                at = next;
            }
            groups.extend((!group.is_empty()).then_some(group));
        }
        let readings = Self { groups };
        let (least, greatest) = readings.ends().ok_or_else(none)?;
        if greatest - least > greatest * APART {
            return Err(FitTextError::TooFarApart(text.trim().to_owned()));
        }
        Ok(readings)
    }

    fn all(&self) -> impl Iterator<Item = Length> {
        self.groups.iter().flatten().copied()
    }

    fn ends(&self) -> Option<(Length, Length)> {
        self.all().fold(None, |ends, one| {
            Some(ends.map_or((one, one), |(least, greatest): (Length, Length)| (least.min(one), greatest.max(one))))
        })
    }

    /// How many there are.
    pub fn count(&self) -> usize {
        self.all().count()
    }

    /// Every one of them, in the order they were typed.
    pub fn each(&self) -> Vec<Length> {
        self.all().collect()
    }

    /// The smallest.
    pub fn least(&self) -> Length {
        self.ends().unwrap_or_default().0
    }

    /// The largest.
    pub fn greatest(&self) -> Length {
        self.ends().unwrap_or_default().1
    }

    /// How far apart the smallest and the largest are.
    pub fn spread(&self) -> Length {
        self.greatest() - self.least()
    }

    /// The mean of the means of all depths.
    pub fn mean(&self) -> Length {
        mean(self.groups.iter().map(|group| mean(group.iter().copied())))
    }

    /// How much larger the mean at the last depth is than at the first; none for one depth.
    pub fn taper(&self) -> Option<Length> {
        let (first, last) = (self.groups.first()?, self.groups.last()?);
        (self.groups.len() > 1).then(|| mean(last.iter().copied()) - mean(first.iter().copied()))
    }

    /// The greatest difference between readings at one depth; none where no depth was read twice.
    pub fn out_of_round(&self) -> Option<Length> {
        let round = |group: &Vec<Length>| {
            let ends = group.iter().fold((group.first()?, group.first()?), |(least, greatest), one| {
                (if one < least { one } else { least }, if one > greatest { one } else { greatest })
            });
            (group.len() > 1).then(|| *ends.1 - *ends.0)
        };
        self.groups.iter().filter_map(round).reduce(Length::max)
    }
}

/// Commas before a blank part readings.
fn spaced(text: &str) -> String {
    text.replace(", ", " ")
}

fn mean(values: impl Iterator<Item = Length>) -> Length {
    let (mut sum, mut count) = (Length::default(), 0.0);
    for value in values {
        (sum, count) = (sum + value, count + 1.0);
    }
    if count > 0.0 { sum / count } else { sum }
}

/// The nominal size that diameters are likely of: the nearest whole mm, or the nearest sixteenth of an inch where that lies nearer.
pub fn nominal(diameter: Length) -> Length {
    let mm = in_millimetres(diameter);
    let [whole, sixteenth] = [1.0, 25.4 / 16.0].map(|step| (mm / step).round() * step);
    crate::units::common::millimetres(if (sixteenth - mm).abs() < (whole - mm).abs() { sixteenth } else { whole })
}
