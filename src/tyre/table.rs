//! Sizes whose dimensions are tabled rather than ruled.
//!
//! Rows read in the standards are few; most are from memory and their source text says so.

use super::size::{Construction, Form, Hundredths, Rim, Size};

/// A row of a table of sizes: overall diameter and section width, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Overall diameter, mm.
    pub diameter_mm: f64,
    /// Section width, mm.
    pub width_mm: f64,
    /// Where it stands.
    pub source: &'static str,
}

const R30_DIAGONAL: &str = "UN R30 Annex 5 Table I (diagonal), from memory";
const R30_RADIAL: &str = "UN R30 Annex 5 (radial), from memory";
const R54: &str = "UN R54 Annex 5, from memory";
const R54_FLOTATION: &str = "UN R54 Annex 5 part II, design diameter, from memory";

/// Numeric diagonal sizes: width in hundredths of an inch, rim in tenths, diameter and width in mm.
const NUMERIC: [(u16, u16, f64, f64, &str); 12] = [
    (520, 100, 508.0, 132.0, R30_DIAGONAL),
    (520, 120, 558.0, 132.0, R30_DIAGONAL),
    (560, 130, 600.0, 145.0, R30_DIAGONAL),
    (560, 150, 650.0, 145.0, R30_DIAGONAL),
    (640, 150, 692.0, 163.0, R30_DIAGONAL),
    (760, 150, 742.0, 193.0, R30_DIAGONAL),
    (700, 130, 644.0, 178.0, R30_DIAGONAL),
    (750, 140, 688.0, 190.0, R30_DIAGONAL),
    (695, 140, 638.0, 178.0, R30_DIAGONAL),
    (735, 140, 654.0, 188.0, R30_DIAGONAL),
    (775, 140, 670.0, 198.0, R30_DIAGONAL),
    (600, 160, 728.0, 170.0, R54),
];

/// Radial metric sizes without aspect ratio: width in mm, rim in tenths, diameter and width in mm.
const RADIAL: [(u16, u16, f64, f64); 7] = [
    (145, 100, 492.0, 147.0),
    (155, 130, 578.0, 157.0),
    (165, 130, 596.0, 167.0),
    (175, 130, 608.0, 178.0),
    (175, 140, 634.0, 178.0),
    (155, 150, 630.0, 157.0),
    (165, 150, 646.0, 167.0),
];

/// Flotation sizes: nominal diameter and width in hundredths of an inch, rim in tenths, design diameter and width in mm.
const FLOTATION: [(u16, u16, u16, f64, f64); 5] = [
    (3_100, 1_050, 150, 775.0, 268.0),
    (3_000, 950, 150, 750.0, 240.0),
    (3_200, 1_150, 150, 801.0, 290.0),
    (3_300, 1_250, 150, 826.0, 318.0),
    (3_500, 1_250, 150, 877.0, 318.0),
];

/// The tabled row of a size, where one is known.
pub fn row(size: &Size) -> Option<Row> {
    let Rim::Code(rim_tenths) = size.rim else { return None };
    match size.form {
        Form::Numeric { width: Hundredths(width) } if size.construction != Construction::Radial => NUMERIC
            .into_iter()
            .find(|row| (row.0, row.1) == (width, rim_tenths))
            .map(|(_, _, diameter_mm, width_mm, source)| Row { diameter_mm, width_mm, source }),
        Form::Metric { width_mm: width, aspect_percent: None } if size.construction == Construction::Radial => RADIAL
            .into_iter()
            .find(|row| (row.0, row.1) == (width, rim_tenths))
            .map(|(_, _, diameter_mm, width_mm)| Row { diameter_mm, width_mm, source: R30_RADIAL }),
        Form::Flotation { diameter, width } => FLOTATION
            .into_iter()
            .find(|row| (row.0, row.1, row.2) == (diameter.0, width.0, rim_tenths))
            .map(|(_, _, _, diameter_mm, width_mm)| Row { diameter_mm, width_mm, source: R54_FLOTATION }),
        Form::Metric { .. } | Form::Alpha { .. } | Form::Numeric { .. } => None,
    }
}

/// The stand-ins of one letter in the 78, 70 and 60 series.
type StandIns = [Option<(u16, u8)>; 3];

/// Nominal widths (mm) and aspect ratios (percent) of the metric tyres that the trade fits in place of a letter size, by series.
///
/// From memory of the trade's conversion lists, no published source at hand: good to some 2 %.
const LETTERS: [(char, StandIns); 10] = [
    ('A', [Some((165, 80)), Some((185, 70)), None]),
    ('B', [Some((175, 80)), Some((195, 70)), None]),
    ('C', [Some((185, 75)), Some((195, 70)), None]),
    ('D', [Some((185, 75)), Some((195, 70)), None]),
    ('E', [Some((195, 75)), Some((205, 70)), Some((225, 60))]),
    ('F', [Some((205, 75)), Some((215, 70)), Some((235, 60))]),
    ('G', [Some((215, 75)), Some((225, 70)), Some((245, 60))]),
    ('H', [Some((225, 75)), Some((235, 70)), Some((255, 60))]),
    ('J', [Some((225, 75)), Some((235, 70)), Some((265, 60))]),
    ('L', [Some((235, 75)), Some((255, 70)), Some((275, 60))]),
];

/// The metric tyre that stands in for a letter size: nominal width in mm and aspect ratio in percent.
pub fn stand_in(letter: char, series_percent: u8) -> Option<(u16, u8)> {
    let column = match series_percent {
        78..=83 => 0,
        70 => 1,
        60 => 2,
        _ => return None,
    };
    LETTERS.iter().find(|(known, _)| *known == letter).and_then(|(_, columns)| columns.get(column).copied().flatten())
}
