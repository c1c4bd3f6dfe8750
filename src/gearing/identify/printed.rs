//! Printed ratios: `2.47 1.67 1.24 1.00`, each with its own number of decimals and the ratios that round to it.

use super::Candidate;
use super::reading::size;
use crate::gearing::read::decimal_ratio;
use crate::gearing::teeth::{Ratio, decimal};
use crate::problem::Explain;
use crate::units::number;

/// A ratio as it was printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Figure {
    /// The figure itself.
    pub value: Ratio,
    /// Its digits behind the point.
    pub decimals: u32,
}

/// Why a text is no ladder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FigureError {
    /// Nothing was typed.
    Blank,
    /// A part that is no ratio.
    NotARatio {
        /// That part.
        text: String,
    },
    /// More figures than a gearbox has gears.
    TooMany {
        /// How many.
        given: usize,
    },
}

impl Explain for FigureError {
    fn what(&self) -> String {
        match self {
            Self::Blank => "no printed ratios are given".into(),
            Self::NotARatio { text } => format!("“{}” is not a ratio from 0.1 to 20", number::clip(text)),
            Self::TooMany { given } => format!("{given} ratios are more than a gearbox has"),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Blank | Self::NotARatio { .. } => {
                "type the ratios as they are printed, lowest gear first, such as 2.47 1.67 1.24 1.00".into()
            }
            Self::TooMany { .. } => "type the forward gears only, at most eight".into(),
        }
    }
}

impl Figure {
    /// One printed ratio, as [`decimal_ratio`] reads it; `None` outside 0.1 to 20 or beyond six decimals.
    pub fn read(text: &str) -> Option<Self> {
        decimal_ratio(text).map(|(value, decimals)| Self { value, decimals })
    }

    /// Half a unit in its last place.
    pub fn half_unit(&self) -> Ratio {
        Ratio::new(1, 2 * 10_i128.pow(self.decimals))
    }

    /// The least ratio that is printed so.
    pub fn least(&self) -> Ratio {
        self.value - self.half_unit()
    }

    /// The least ratio that is printed larger: a half is rounded up, as is the custom.
    pub fn below(&self) -> Ratio {
        self.value + self.half_unit()
    }

    /// Whether a ratio, whatever its sign, is printed so.
    pub fn prints(&self, ratio: Ratio) -> bool {
        let size = size(ratio);
        self.least() <= size && size < self.below()
    }

    /// How far a ratio is from the figure, in halves of its last place: below 1 it is printed so.
    pub fn off(&self, ratio: Ratio) -> f64 {
        (decimal(size(ratio) - self.value) / decimal(self.half_unit())).abs()
    }

    /// Whether it is exactly one: a direct gear, where input and output are in line.
    pub fn is_one(&self) -> bool {
        self.value == Ratio::from_integer(1)
    }

    /// It, written with as many decimals as it was printed with.
    pub fn shown(&self) -> String {
        number::show(decimal(self.value), usize::try_from(self.decimals).unwrap_or_default())
    }
}

/// Reads a ladder: figures parted by blanks, semicolons, slashes, dashes, or commas where the decimals have points.
///
/// # Errors
/// When there is none, too many, or a part is no ratio.
pub fn figures(text: &str) -> Result<Vec<Figure>, FigureError> {
    // `2.47 : 1` is one figure, whatever stands about its colon
    let text = text.split(':').map(str::trim).collect::<Vec<_>>().join(":");
    let points = text.contains('.');
    let parts = text.split(|c: char| c.is_whitespace() || matches!(c, ';' | '/' | '|' | '-' | '–') || (points && c == ','));
    let parts: Vec<&str> = parts.map(|part| part.trim_matches(',')).filter(|part| !part.is_empty()).collect();
    if parts.is_empty() {
        return Err(FigureError::Blank);
    }
    if parts.len() > crate::gearing::Gearbox::MOST_GEARS {
        return Err(FigureError::TooMany { given: parts.len() });
    }
    parts.into_iter().map(|part| Figure::read(part).ok_or_else(|| FigureError::NotARatio { text: part.to_owned() })).collect()
}

/// How well a set agrees with a printed ladder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Match {
    /// Which candidate, by its place in the list.
    pub candidate: usize,
    /// Whether every gear is printed so.
    pub fits: bool,
    /// How far its worst gear is off, in halves of the last place printed; infinite where the number of gears differs.
    pub off: f64,
}

/// Every candidate against a printed ladder, those that fit first, each group by nearness.
pub fn by_printed(figures: &[Figure], candidates: &[Candidate<'_>]) -> Vec<Match> {
    let judge = |(at, candidate): (usize, &Candidate<'_>)| {
        let ratios = candidate.gearbox.ratios();
        let alike = ratios.len() == figures.len();
        let pairs = || figures.iter().zip(&ratios);
        let off = if alike { pairs().map(|(figure, ratio)| figure.off(*ratio)).fold(0.0, f64::max) } else { f64::INFINITY };
        Match { candidate: at, fits: alike && pairs().all(|(figure, ratio)| figure.prints(*ratio)), off }
    };
    let mut matches: Vec<Match> = candidates.iter().enumerate().map(judge).collect();
    crate::order::by(&mut matches, |one, other| other.fits.cmp(&one.fits).then(one.off.total_cmp(&other.off)));
    matches
}
