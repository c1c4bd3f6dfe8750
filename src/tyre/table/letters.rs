//! The metric tyres that the trade fits in place of a letter size.

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
