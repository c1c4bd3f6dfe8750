//! Drills and reamers as they are sold: the next size up and the next size down, in fractions, letters, numbers and mm.
//!
//! Source: ASME B94.11M (letters and numbers, several of the numbers from memory), sixty-fourths of an inch exactly, tenths of a mm
//! (the steps of DIN 338, from memory).

use crate::units::common::in_millimetres;
use crate::units::{Length, unit};

/// A size that is sold.
#[derive(Clone, Debug, PartialEq)]
pub struct Drill {
    /// What stands on it: `5/16`, `Q`, `No. 7`, `8.4 mm`.
    pub name: String,
    /// Its diameter.
    pub diameter: Length,
}

/// Thousandths of an inch from A on.
const LETTERS: [u16; 26] =
    [234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368, 377, 386, 397, 404, 413];
/// Ten-thousandths of an inch from No. 1 on.
const NUMBERS: [u16; 60] = [
    2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695, 1660, 1610, 1590, 1570,
    1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065, 1040, 1015, 995, 980, 960, 935, 890, 860, 820, 810,
    785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430, 420, 410, 400,
];
/// Fractions go to two inches, tenths of a mm to 50.
const SIXTY_FOURTHS: u32 = 128;
const TENTHS: u32 = 500;

/// The sizes next to a diameter: none smaller than it above, none larger below. A size that is hit is both.
pub fn next(diameter: Length) -> [Option<Drill>; 2] {
    let all = || fractions().chain(letters()).chain(numbers()).chain(millimetres());
    next_of(all, diameter)
}

/// As [`next`], of the sizes of one system alone: tenths of a mm, or else all that an inch shop has.
pub fn next_in(diameter: Length, is_metric: bool) -> [Option<Drill>; 2] {
    if is_metric { next_of(millimetres, diameter) } else { next_of(|| fractions().chain(letters()).chain(numbers()), diameter) }
}

fn next_of<I: Iterator<Item = Drill>>(all: impl Fn() -> I, diameter: Length) -> [Option<Drill>; 2] {
    // A size counts as hit within a tenth of a micron.
    let off = |drill: &Drill| (in_millimetres(drill.diameter - diameter) * 1e6).round() / 1e6;
    let above = all().filter(|drill| off(drill) > -1e-4).min_by(|a, b| off(a).total_cmp(&off(b)));
    let below = all().filter(|drill| off(drill) < 1e-4).min_by(|a, b| off(b).total_cmp(&off(a)));
    [below, above]
}

fn fractions() -> impl Iterator<Item = Drill> {
    (1..=SIXTY_FOURTHS).map(|above| Drill { name: fraction(above), diameter: unit::INCH.of(f64::from(above) / 64.0) })
}

/// So many sixty-fourths as a person says them: `5/16`, `1 1/4`.
fn fraction(sixty_fourths: u32) -> String {
    let (whole, left) = (sixty_fourths / 64, sixty_fourths % 64);
    let twos = left.trailing_zeros().min(6);
    let part = format!("{}/{}", left >> twos, 64_u32 >> twos);
    match (whole, left) {
        (whole, 0) => format!("{whole} in"),
        (0, _) => format!("{part} in"),
        _ => format!("{whole} {part} in"),
    }
}

fn letters() -> impl Iterator<Item = Drill> {
    ('A'..='Z').zip(LETTERS).map(|(letter, thou)| Drill { name: format!("letter {letter}"), diameter: unit::THOU.of(f64::from(thou)) })
}

fn numbers() -> impl Iterator<Item = Drill> {
    (1..)
        .zip(NUMBERS)
        .map(|(number, tenths): (u32, u16)| Drill { name: format!("No. {number}"), diameter: unit::THOU.of(f64::from(tenths) / 10.0) })
}

fn millimetres() -> impl Iterator<Item = Drill> {
    (10..=TENTHS)
        .map(|tenths| Drill { name: format!("{}.{} mm", tenths / 10, tenths % 10), diameter: unit::MM.of(f64::from(tenths) / 10.0) })
}
