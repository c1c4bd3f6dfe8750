//! Truck and van sizes: inch sizes with a tube, the first tubeless ones, the high-pressure sizes before them, flotation.

use super::Row;

const R54: &str = "UN R54 Annex 5, from memory";
const FLOTATION_SOURCE: &str = "UN R54 Annex 5 part II, design diameter, from memory";
const HIGH_PRESSURE_SOURCE: &str = "the balloon truck size that took its place, from memory; good to some 3 %";

/// Inch sizes of trucks and vans, radial and diagonal alike: width in hundredths, rim in tenths, diameter and width in mm.
#[rustfmt::skip]
const INCH: [(u16, u16, f64, f64); 43] = [
    (500, 100, 516.0, 134.0), (450, 120, 545.0, 125.0), (500, 120, 568.0, 134.0),
    (450, 100, 490.0, 125.0), (600, 90, 540.0, 160.0), (650, 100, 588.0, 177.0), (700, 120, 672.0, 192.0),
    (750, 100, 645.0, 207.0), (600, 140, 626.0, 158.0), (650, 140, 640.0, 170.0), (700, 150, 746.0, 197.0),
    (750, 150, 772.0, 212.0), (825, 150, 836.0, 230.0), (900, 150, 840.0, 249.0), (1_000, 150, 918.0, 275.0),
    (600, 160, 728.0, 170.0), (650, 160, 742.0, 176.0), (700, 160, 778.0, 198.0), (750, 160, 802.0, 210.0),
    (825, 160, 860.0, 230.0), (900, 160, 912.0, 246.0), (1_100, 160, 980.0, 279.0), (750, 170, 852.0, 210.0),
    (825, 170, 895.0, 230.0), (650, 200, 860.0, 181.0), (700, 200, 892.0, 198.0), (750, 200, 928.0, 210.0),
    (825, 200, 962.0, 230.0), (900, 200, 1018.0, 258.0), (1_000, 200, 1052.0, 275.0), (1_100, 200, 1082.0, 286.0),
    (1_200, 200, 1122.0, 313.0), (1_300, 200, 1176.0, 336.0), (1_400, 200, 1238.0, 370.0), (1_000, 220, 1102.0, 275.0),
    (1_100, 220, 1132.0, 286.0), (1_100, 240, 1182.0, 286.0), (1_200, 240, 1226.0, 313.0), (900, 225, 974.0, 229.0),
    (1_000, 225, 1019.0, 254.0), (1_100, 225, 1054.0, 279.0), (1_200, 225, 1085.0, 300.0), (500, 80, 467.0, 132.0),
];

/// High-pressure truck sizes, nominal diameter and width in hundredths of an inch, by what replaced them: diameter and width in mm.
const HIGH_PRESSURE: [(u16, u16, f64, f64); 4] = [
    (3_000, 500, 838.0, 160.0), // 6.00-20
    (3_200, 600, 892.0, 198.0), // 7.00-20
    (3_400, 700, 928.0, 210.0), // 7.50-20
    (3_600, 800, 962.0, 230.0), // 8.25-20
];

/// Flotation sizes: nominal diameter and width in hundredths of an inch, rim in tenths, design diameter and width in mm.
const FLOTATION: [(u16, u16, u16, f64, f64); 5] = [
    (3_100, 1_050, 150, 775.0, 268.0),
    (3_000, 950, 150, 750.0, 240.0),
    (3_200, 1_150, 150, 801.0, 290.0),
    (3_300, 1_250, 150, 826.0, 318.0),
    (3_500, 1_250, 150, 877.0, 318.0),
];

/// The row of a truck or van size in inches.
pub(super) fn inch(width: u16, rim_tenths: u16) -> Option<Row> {
    super::find(&INCH, width, rim_tenths, R54)
}

/// What stands in for a high-pressure size.
pub(super) fn high_pressure(diameter: u16, width: u16) -> Option<Row> {
    super::find(&HIGH_PRESSURE, diameter, width, HIGH_PRESSURE_SOURCE)
}

pub(super) fn flotation(diameter: u16, width: u16, rim_tenths: u16) -> Option<Row> {
    let found = FLOTATION.into_iter().find(|row| (row.0, row.1, row.2) == (diameter, width, rim_tenths))?;
    Some(Row { diameter_mm: found.3, width_mm: found.4, source: FLOTATION_SOURCE })
}
