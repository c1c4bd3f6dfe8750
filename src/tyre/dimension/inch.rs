//! Sizes in inches, of every age, and the beaded edge ones: from the tables where they have them, else by a rule that says how good it is.

use super::{Basis, Dimensions, MOULDED, Measure, around, inches, measure, rim_mm};
use crate::tyre::size::{Form, Hundredths, Rim, Size};
use crate::tyre::table::{self, Row};
use crate::units::{common, number};

const LOW_SECTION: &str = "82 series for a width ending in 5 on a rim of 13 to 15 in: European Commission vehicle simulator, version 4.3.7, and a wheel-trade sizing page; good to some 3 %";
const HIGH_SECTION: &str =
    "92 series: European Commission vehicle simulator, version 4.3.7, and a wheel-trade sizing page; good to some 3 %";
const BALLOON: &str = "on a rim of 16 in or more the section is as high as the width is named: balloon tyres, from memory; good to some 3 %, and a truck's is higher";
const DUAL: &str = "one tyre that serves for both sizes: half-way between them, from memory; good to some 2 %";
const BEADED: &str = "beaded edge sizes name the diameter over the tread, then the section: from memory; good to some 2 %";
const UNKNOWN_BEADED: &str = "read as a beaded edge size, diameter over the tread by section, though it is none that is known here";
const NO_RIM: &str = "the size names no rim: diameter less twice the section";

/// The section height that an inch size stands for where no table has it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Series {
    /// Section height over nominal width, percent.
    pub percent: u8,
    /// Where the rule stands.
    pub source: &'static str,
}

/// The rule for an inch size: low sections came with the sixties, on rims of 13 to 15 in and with widths ending in 5; the balloon
/// tyres before the war, on rims of 16 in and more, are as high as they are wide.
pub fn numeric_series(width: Hundredths, rim: Rim) -> Series {
    let rim_in = rim_exact_in(rim);
    match width.0 {
        _ if rim_in >= 16.0 => Series { percent: 100, source: BALLOON },
        low if low % 10 == 5 && low >= 560 && rim_in >= 13.0 => Series { percent: 82, source: LOW_SECTION },
        _ => Series { percent: 92, source: HIGH_SECTION },
    }
}

pub(super) fn numeric(size: &Size, width: Hundredths) -> Dimensions {
    let ruled = ruled(size, width);
    let truck = table::truck_row(size).map(|row| diameter_of(&row));
    match table::row(size) {
        Some(row) => {
            let width = measure(row.width_mm, Basis::Table, row.source, format!("{:.0} mm", row.width_mm));
            around(size, diameter_of(&row), width, vec![ruled])
        }
        None => around(size, ruled, inches(width.inches(), Basis::Rule, MOULDED), truck.into_iter().collect()),
    }
}

fn diameter_of(row: &Row) -> Measure {
    measure(row.diameter_mm, Basis::Table, row.source, format!("{:.0} mm", row.diameter_mm))
}

/// d + 2H with the height of the series.
fn ruled(size: &Size, width: Hundredths) -> Measure {
    let Series { percent, source } = numeric_series(width, size.rim);
    let rim = rim_exact_in(size.rim);
    let diameter = rim + 2.0 * f64::from(percent) / 100.0 * width.inches();
    let working = format!("{rim:.1} + 2 × {percent} % × {width} = {diameter:.3} in");
    Measure { working, ..inches(diameter, Basis::Approximate, source) }
}

fn rim_exact_in(rim: Rim) -> f64 {
    match rim {
        Rim::Code(tenths) => f64::from(tenths) / 10.0,
        Rim::Millimetres(mm) => f64::from(mm) / 25.4,
    }
}

/// Half-way between the two sizes, each by its own table or rule.
pub(super) fn dual(size: &Size, first: Hundredths, second: Hundredths) -> Dimensions {
    let of = |width| numeric(&Size { form: Form::Numeric { width }, ..*size }, width);
    let (one, other) = (of(first), of(second));
    let half_way = |one: &Measure, other: &Measure| {
        let [low, high] = [one, other].map(|side| common::in_millimetres(side.value));
        let middle = f64::midpoint(low, high);
        let [low_mm, high_mm, middle_mm] = [low, high, middle].map(|mm| number::show(mm, 1));
        measure(middle, Basis::Approximate, DUAL, format!("({low_mm} + {high_mm}) / 2 = {middle_mm} mm"))
    };
    let (diameter, width) = (half_way(&one.diameter, &other.diameter), half_way(&one.section_width, &other.section_width));
    around(size, diameter, width, vec![one.diameter, other.diameter])
}

pub(super) fn beaded_metric(size: &Size, diameter_mm: u16, width_mm: u16) -> Dimensions {
    let width = measure(f64::from(width_mm), Basis::Rule, MOULDED, format!("{width_mm} mm"));
    beaded(size, |basis, source| measure(f64::from(diameter_mm), basis, source, format!("{diameter_mm} mm")), width)
}

/// As marked; a truck's high-pressure size by what took its place, since it stands far above its mark.
pub(super) fn beaded_inch(size: &Size, diameter: Hundredths, width: Hundredths) -> Dimensions {
    let section = inches(width.inches(), Basis::Rule, MOULDED);
    let marked = |basis, source| inches(diameter.inches(), basis, source);
    match table::row(size) {
        Some(row) => {
            let stand_in = Measure { basis: Basis::Approximate, ..diameter_of(&row) };
            around(size, stand_in, section, vec![marked(Basis::Approximate, MOULDED)])
        }
        None => beaded(size, marked, section),
    }
}

fn beaded(size: &Size, marked: impl Fn(Basis, &'static str) -> Measure, section_width: Measure) -> Dimensions {
    let (basis, source) = if table::is_known_beaded(size.form) { (Basis::Rule, BEADED) } else { (Basis::Approximate, UNKNOWN_BEADED) };
    let (diameter, rim) = (marked(basis, source), rim_mm(size.rim));
    let (across, wide) = (common::in_millimetres(diameter.value), common::in_millimetres(section_width.value));
    let working = format!("{} − 2 × {} = {rim:.0} mm", number::show(across, 1), number::show(wide, 1));
    let dimensions = around(size, diameter, section_width, Vec::new());
    Dimensions { rim: measure(rim, Basis::Approximate, NO_RIM, working), ..dimensions }
}
