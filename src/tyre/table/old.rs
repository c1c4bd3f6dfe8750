//! Sizes of the first forty years: balloon tyres on rims of 16 in and more, beaded edge in mm and inches.

use super::Row;

const BALLOON_SOURCE: &str = "balloon sizes of the twenties and thirties, from memory of the trade's lists; good to some 2 %";

/// Balloon sizes: width in hundredths of an inch, rim in tenths, diameter and width in mm.
#[rustfmt::skip]
const BALLOON: [(u16, u16, f64, f64); 44] = [
    (350, 190, 661.0, 93.0), (400, 180, 656.0, 108.0), (400, 190, 682.0, 108.0), (440, 210, 758.0, 118.0),
    (450, 170, 664.0, 120.0), (450, 180, 690.0, 120.0), (450, 190, 714.0, 120.0), (450, 200, 740.0, 120.0),
    (450, 210, 764.0, 120.0), (475, 170, 672.0, 126.0), (475, 180, 698.0, 126.0), (475, 190, 724.0, 126.0),
    (475, 200, 750.0, 126.0), (500, 160, 666.0, 134.0), (500, 170, 690.0, 134.0), (500, 180, 714.0, 134.0),
    (500, 190, 738.0, 134.0), (500, 200, 762.0, 134.0), (500, 210, 790.0, 134.0), (525, 160, 672.0, 138.0),
    (525, 170, 698.0, 138.0), (525, 180, 722.0, 138.0), (525, 190, 748.0, 138.0), (525, 200, 774.0, 138.0),
    (525, 210, 798.0, 138.0), (550, 160, 684.0, 146.0), (550, 170, 710.0, 146.0), (550, 180, 734.0, 146.0),
    (550, 190, 760.0, 146.0), (575, 160, 694.0, 152.0), (600, 170, 746.0, 160.0), (600, 180, 772.0, 160.0),
    (600, 190, 796.0, 160.0), (600, 200, 820.0, 160.0), (600, 210, 846.0, 160.0), (625, 160, 710.0, 162.0),
    (650, 170, 764.0, 172.0), (650, 180, 790.0, 172.0), (650, 190, 816.0, 172.0), (700, 170, 790.0, 186.0),
    (700, 180, 816.0, 186.0), (700, 190, 840.0, 186.0), (700, 210, 896.0, 186.0), (750, 180, 876.0, 205.0),
];

pub(super) fn balloon(width: u16, rim_tenths: u16) -> Option<Row> {
    super::find(&BALLOON, width, rim_tenths, BALLOON_SOURCE)
}

/// Beaded edge sizes in millimetres, diameter by section; the last row is of the balloon beaded edges.
#[rustfmt::skip]
const BEADED_MM: [(u16, u16); 29] = [
    (650, 65), (700, 80), (700, 85), (710, 90), (750, 85), (760, 90), (760, 100), (765, 105), (810, 90), (810, 100),
    (815, 105), (815, 120), (820, 120), (820, 135), (835, 135), (870, 90), (875, 105), (880, 120), (880, 135), (895, 135),
    (895, 150), (915, 105), (920, 120), (935, 135), (1085, 185),
    (715, 115), (730, 130), (775, 145), (860, 160),
];

/// Beaded edge and clincher sizes in hundredths of an inch, diameter by section.
#[rustfmt::skip]
const BEADED_IN: [(u16, u16); 23] = [
    (2_600, 250), (2_600, 300), (2_800, 250), (2_800, 300), (2_800, 350), (2_900, 350), (3_000, 300), (3_000, 350),
    (3_000, 400), (3_100, 400), (3_200, 350), (3_200, 400), (3_200, 450), (3_300, 400), (3_300, 450), (3_400, 350),
    (3_400, 400), (3_400, 450), (3_500, 450), (3_500, 500), (3_600, 400), (3_600, 450), (3_700, 500),
];

/// Whether a beaded edge size in millimetres is a known one.
pub(super) fn is_beaded_mm(diameter_mm: u16, width_mm: u16) -> bool {
    BEADED_MM.contains(&(diameter_mm, width_mm))
}

/// Whether a beaded edge size in hundredths of an inch is a known one.
pub(super) fn is_beaded_inch(diameter: u16, width: u16) -> bool {
    BEADED_IN.contains(&(diameter, width))
}
