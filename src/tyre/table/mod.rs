//! Sizes whose dimensions are tabled rather than ruled.
//!
//! Rows read in the standards are few; most are from memory and their source text says so. `car` has the sizes after the war,
//! `truck` those of trucks and vans, `old` those of the first forty years; `letters` says what stands in for a letter size.

mod car;
mod letters;
mod old;
mod truck;

use super::size::{Construction, Form, Hundredths, Rim, Size};
pub use letters::stand_in;

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

/// The row of two numbers in a table of their kind.
fn find(rows: &[(u16, u16, f64, f64)], first: u16, second: u16, source: &'static str) -> Option<Row> {
    let &(_, _, diameter_mm, width_mm) = rows.iter().find(|row| (row.0, row.1) == (first, second))?;
    Some(Row { diameter_mm, width_mm, source })
}

/// The tabled row of a size, where one is known.
pub fn row(size: &Size) -> Option<Row> {
    let Rim::Code(rim_tenths) = size.rim else { return None };
    match size.form {
        Form::Numeric { width } => numeric(size, width, rim_tenths),
        Form::Metric { width_mm, aspect_percent: None } if size.construction == Construction::Radial => car::radial(width_mm, rim_tenths),
        Form::Flotation { diameter, width } => truck::flotation(diameter.0, width.0, rim_tenths),
        Form::BeadedInch { diameter, width } => truck::high_pressure(diameter.0, width.0),
        Form::Metric { .. } | Form::Alpha { .. } | Form::Dual { .. } | Form::BeadedMetric { .. } => None,
    }
}

/// An inch size: as a car's where it is diagonal, as a truck's, as a balloon tyre.
fn numeric(size: &Size, width: Hundredths, rim_tenths: u16) -> Option<Row> {
    let diagonal = size.construction != Construction::Radial;
    let car = car::diagonal(width.0, rim_tenths).filter(|_| diagonal && !size.is_light_truck());
    let truck = || truck::inch(width.0, rim_tenths).filter(|_| !is_car_too(size, width, rim_tenths));
    car.or_else(truck).or_else(|| old::balloon(width.0, rim_tenths).filter(|_| diagonal))
}

/// The truck's row of a size that cars of the sixties had too, with a far lower section: 8.25-15.
pub fn truck_row(size: &Size) -> Option<Row> {
    match (size.form, size.rim) {
        (Form::Numeric { width }, Rim::Code(tenths)) if is_car_too(size, width, tenths) => truck::inch(width.0, tenths),
        _ => None,
    }
}

fn is_car_too(size: &Size, width: Hundredths, rim_tenths: u16) -> bool {
    let is_truck = size.construction == Construction::Radial || size.is_light_truck();
    (width, rim_tenths) == (Hundredths(825), 150) && !is_truck
}

/// Whether a beaded edge size is a known one.
pub fn is_known_beaded(form: Form) -> bool {
    match form {
        Form::BeadedMetric { diameter_mm, width_mm } => old::is_beaded_mm(diameter_mm, width_mm),
        Form::BeadedInch { diameter, width } => old::is_beaded_inch(diameter.0, width.0),
        _ => false,
    }
}
