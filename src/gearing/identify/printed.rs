//! Printed ratios: `2.47 1.67 1.24 1.00`, each with its own number of decimals and the ratios that round to it.

use super::Candidate;
use crate::gearing::gearbox::Gear;
use crate::gearing::printed::PrintedRatio;
use crate::gearing::teeth::Ratio;
use crate::units::number;

/// One figure of a ladder.
pub type Figure = PrintedRatio;

/// Why a text is no ladder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FigureError {
    /// Nothing was typed.
    Blank,
    /// A part that is no ratio: that part.
    NotARatio(String),
    /// More figures than a gearbox has gears: how many.
    TooMany(usize),
}

explain! { FigureError:
    Self::Blank => "no printed ratios are given", "type the ratios as they are printed, lowest gear first, such as 2.47 1.67 1.24 1.00";
    Self::NotARatio(text) => format!("“{}” is not a ratio from 0.1 to 20", number::clip(text)),
        "type the ratios as they are printed, lowest gear first, such as 2.47 1.67 1.24 1.00";
    Self::TooMany(given) => format!("{given} ratios are more than a gearbox has"), "type the forward gears only, at most eight";
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
        return Err(FigureError::TooMany(parts.len()));
    }
    parts.into_iter().map(|part| Figure::read(part).ok_or_else(|| FigureError::NotARatio(part.to_owned()))).collect()
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

/// Every candidate against a printed ladder, those that fit first, each group by nearness. A candidate that is itself known only as
/// printed fits where one ratio can be behind both figures.
pub fn by_printed(figures: &[Figure], candidates: &[Candidate<'_>]) -> Vec<Match> {
    let judge = |(at, candidate): (usize, &Candidate<'_>)| {
        let (gears, ratios) = (candidate.gearbox.gears(), candidate.gearbox.ratios());
        let alike = ratios.len() == figures.len();
        let off = figures.iter().zip(&ratios).map(|(figure, ratio)| figure.off(*ratio)).fold(0.0, f64::max);
        let fits = |((figure, gear), ratio): ((&Figure, &Gear), &Ratio)| match gear {
            Gear::Printed(printed) => figure.agrees_with(printed),
            Gear::Mesh(_) | Gear::Direct => figure.prints(*ratio),
        };
        let all_fit = alike && figures.iter().zip(gears).zip(&ratios).all(fits);
        Match { candidate: at, fits: all_fit, off: if alike { off } else { f64::INFINITY } }
    };
    let mut matches: Vec<Match> = candidates.iter().enumerate().map(judge).collect();
    crate::order::by(&mut matches, |one, other| other.fits.cmp(&one.fits).then(one.off.total_cmp(&other.off)));
    matches
}
