//! How much thinner than without backlash a gear is cut, by a row of DIN 3967: `25cd`.
//!
//! The letters give the least thinning on the reference circle, the number how much more there may be; both by the gear's own diameter.
//! Thickness is meant square to the teeth. Source: DIN 3967:1978-08, tables 1 and 2; read are a, cd and h up to 125 mm and series 21, 25 and 27 in part, the
//! other cells are from memory.

use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Length, number};

/// A row of each table, such as 25cd.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Allowance {
    letters: usize,
    series: usize,
}

/// The reference diameters in mm up to and including which a column holds.
const UP_TO_MM: [f64; 6] = [10.0, 50.0, 125.0, 280.0, 560.0, 1_000.0];
/// The least thinning in µm, column by column.
const LEAST_UM: [(&str, [f64; 6]); 11] = [
    ("a", [100.0, 135.0, 180.0, 250.0, 330.0, 450.0]),
    ("ab", [85.0, 110.0, 150.0, 200.0, 280.0, 370.0]),
    ("b", [70.0, 95.0, 125.0, 170.0, 230.0, 310.0]),
    ("bc", [58.0, 75.0, 105.0, 140.0, 190.0, 260.0]),
    ("c", [48.0, 65.0, 85.0, 115.0, 155.0, 210.0]),
    ("cd", [40.0, 54.0, 70.0, 95.0, 130.0, 175.0]),
    ("d", [33.0, 44.0, 60.0, 80.0, 110.0, 145.0]),
    ("e", [22.0, 30.0, 40.0, 56.0, 75.0, 100.0]),
    ("f", [10.0, 14.0, 19.0, 26.0, 35.0, 48.0]),
    ("g", [5.0, 7.0, 9.0, 12.0, 17.0, 22.0]),
    ("h", [0.0; 6]),
];
/// The tolerance in µm of each series, column by column.
const TOLERANCE_UM: [(u8, [f64; 6]); 10] = [
    (21, [3.0, 5.0, 6.0, 8.0, 10.0, 12.0]),
    (22, [5.0, 8.0, 10.0, 12.0, 16.0, 20.0]),
    (23, [8.0, 12.0, 16.0, 20.0, 25.0, 30.0]),
    (24, [12.0, 20.0, 25.0, 30.0, 40.0, 50.0]),
    (25, [20.0, 30.0, 40.0, 50.0, 60.0, 80.0]),
    (26, [30.0, 50.0, 60.0, 80.0, 100.0, 120.0]),
    (27, [50.0, 80.0, 100.0, 120.0, 160.0, 200.0]),
    (28, [80.0, 130.0, 160.0, 200.0, 250.0, 300.0]),
    (29, [130.0, 200.0, 250.0, 300.0, 400.0, 500.0]),
    (30, [200.0, 300.0, 400.0, 500.0, 600.0, 800.0]),
];

/// A text that names no row: what was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NoAllowance(pub String);

explain! { NoAllowance:
    Self(text) => format!("“{}” is no row of DIN 3967", number::clip(text)),
        "type a series from 21 to 30 and letters from a to h, such as 25cd";
}

impl Allowance {
    /// The largest reference diameter that the rows here reach.
    pub const MOST_MM: f64 = 1_000.0;

    /// Reads `25cd`, `25 cd` or `cd25`.
    ///
    /// # Errors
    /// When it names no row.
    pub fn read(text: &str) -> Result<Self, NoAllowance> {
        let wrong = || NoAllowance(text.trim().to_owned());
        let lower = text.to_ascii_lowercase();
        let (digits, letters): (String, String) = lower.chars().filter(|one| !one.is_whitespace()).partition(char::is_ascii_digit);
        let is_split = lower.trim().trim_matches(|one: char| one.is_ascii_digit()).chars().all(|one| !one.is_ascii_digit());
        let series = digits.parse::<u8>().ok().and_then(|typed| TOLERANCE_UM.iter().position(|(series, _)| *series == typed));
        let letters = LEAST_UM.iter().position(|(row, _)| *row == letters);
        series.zip(letters).filter(|_| is_split).map(|(series, letters)| Self { letters, series }).ok_or_else(wrong)
    }

    /// How it is called: `25cd`.
    pub fn said(self) -> String {
        let row = TOLERANCE_UM.get(self.series).zip(LEAST_UM.get(self.letters));
        row.map_or_else(String::new, |((series, _), (letters, _))| format!("{series}{letters}"))
    }

    /// By how much the teeth of a gear of that reference diameter are thinner, square to them, at least and at most; none beyond the rows.
    ///
    /// ```
    /// use layshaft::toothform::allowance::Allowance;
    /// use layshaft::units::{common::millimetres, show, unit};
    /// // 70 µm, and the tolerance of series 27 more: the example of DIN 3967, section 3.1.
    /// let thinner = Allowance::read("27cd").ok().and_then(|row| row.thinner(millimetres(100.0)));
    /// let shown = thinner.map(|both| both.map(|thinner| show(&thinner, &unit::MM, 3)));
    /// assert_eq!(shown, Some(["0.070 mm".to_owned(), "0.170 mm".to_owned()]));
    /// ```
    pub fn thinner(self, reference: Length) -> Option<[Length; 2]> {
        // A rounding beyond the end of a column is not beyond it.
        let column = UP_TO_MM.iter().position(|up_to| in_millimetres(reference) <= up_to + 1e-9)?;
        let least = LEAST_UM.get(self.letters)?.1.get(column)?;
        let tolerance = TOLERANCE_UM.get(self.series)?.1.get(column)?;
        Some([millimetres(least / 1e3), millimetres((least + tolerance) / 1e3)])
    }
}
