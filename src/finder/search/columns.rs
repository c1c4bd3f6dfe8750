//! The tyres as columns: one run of plain numbers for each thing that is asked of them.
//!
//! Tyres that meet every must about the tyre alone stand first, the smallest first among them; then the others likewise.

use super::plan::{Figure, Slot};
use crate::finder::inputs::{FittedTyre, Given};
use crate::finder::table::{AxleRow, Pairs, Table, TyreRow};
use crate::finder::wish::{Measure, Wish};
use uom::si::length::meter;
use uom::si::linear_number_density::per_meter;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Column {
    /// Turns of the wheel a metre.
    Turns,
    /// Metres rolled at each turn.
    Way,
    /// Diameter in metres.
    Diameter,
    /// 0 for the tyre on the car, else 1.
    Other,
    /// 0 in stock, else 1.
    Order,
    /// What the speedometer reads too much with the best pair of a housing, behind the final drive at hand.
    Error(usize),
}

/// Least and greatest of a column, over the tyres that meet the musts about tyres and over all.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ends {
    pub(super) fit: (f64, f64),
    pub(super) all: (f64, f64),
}

#[derive(Clone, Debug)]
pub(super) struct Tyres {
    pub(super) rows: Vec<TyreRow>,
    /// How many meet every must about the tyre alone.
    pub(super) fit: usize,
    columns: Vec<Vec<f64>>,
    ends: Vec<Ends>,
}

/// The columns that stay as they are, before those of the speedometer.
const FIXED: [Column; 5] = [Column::Turns, Column::Way, Column::Diameter, Column::Other, Column::Order];

impl Column {
    fn place(self) -> usize {
        match self {
            Self::Turns => 0,
            Self::Way => 1,
            Self::Diameter => 2,
            Self::Other => 3,
            Self::Order => 4,
            Self::Error(housing) => FIXED.len() + housing,
        }
    }

    fn of(self, tyre: &TyreRow) -> f64 {
        let flag = |is_so: bool| if is_so { 1.0 } else { 0.0 };
        match self {
            Self::Turns => 1.0 / tyre.circumference_m,
            Self::Way => tyre.circumference_m,
            Self::Diameter => tyre.diameter_m,
            Self::Other => flag(tyre.place.is_some()),
            Self::Order => flag(!tyre.in_stock),
            Self::Error(_) => f64::NAN,
        }
    }
}

impl Tyres {
    pub(super) fn new(table: &Table, given: &Given, slots: &[Slot], housings: usize) -> Self {
        let mut rows = table.tyres.clone();
        rows.extend(given.fitted.as_ref().map(fitted_row));
        crate::order::by(&mut rows, |a, b| a.circumference_m.total_cmp(&b.circumference_m));
        let meets = |tyre: &TyreRow| slots.iter().filter(|slot| slot.weight.is_none()).all(|slot| meets_alone(slot, tyre));
        let (fit, others): (Vec<TyreRow>, Vec<TyreRow>) = rows.into_iter().partition(meets);
        let count = fit.len();
        let rows: Vec<TyreRow> = fit.into_iter().chain(others).collect();
        let columns: Vec<Vec<f64>> = FIXED.iter().map(|column| rows.iter().map(|tyre| column.of(tyre)).collect()).collect();
        let columns: Vec<Vec<f64>> = columns.into_iter().chain((0..housings).map(|_| vec![f64::NAN; rows.len()])).collect();
        let ends = columns.iter().map(|column| ends(column, count)).collect();
        Self { rows, fit: count, columns, ends }
    }

    pub(super) fn column(&self, column: Column) -> &[f64] {
        self.columns.get(column.place()).map_or(&[], Vec::as_slice)
    }

    /// Least and greatest of a column; nothing for one that does not exist.
    pub(super) fn ends(&self, column: Column) -> Ends {
        let none = (f64::NAN, f64::NAN);
        self.ends.get(column.place()).copied().unwrap_or(Ends { fit: none, all: none })
    }

    /// Works out what the speedometer reads behind a final drive, with the best pair of each housing on each tyre.
    pub(super) fn read_speedometer(&mut self, axle: &AxleRow, pairs: &[Pairs], given: &Given, (least, greatest): (f64, f64)) {
        // What a dial shows of which nothing is known stays unknown.
        let Some(constant) = given.dial.map(|dial| dial.constant().get::<per_meter>()) else { return };
        let shaft = given.turns_at_take_off(axle.ratio);
        for (housing, group) in pairs.iter().enumerate() {
            let place = Column::Error(housing).place();
            let Some(column) = self.columns.get_mut(place) else { continue };
            for (error, tyre) in column.iter_mut().zip(&self.rows) {
                *error = group.best_error(constant * tyre.circumference_m / shaft, least, greatest);
            }
            if let Some(kept) = self.ends.get_mut(place) {
                *kept = ends(column, self.fit);
            }
        }
    }
}

fn fitted_row(fitted: &FittedTyre) -> TyreRow {
    let [circumference_m, diameter_m] = [fitted.circumference, fitted.diameter].map(|length| length.get::<meter>());
    TyreRow { place: None, circumference_m, diameter_m, in_stock: true }
}

/// Whether a tyre meets a must as far as it is about the tyre alone.
fn meets_alone(slot: &Slot, tyre: &TyreRow) -> bool {
    let value = match slot.figure {
        Figure::Tyre(column) => column.of(tyre),
        // The other parts only add to the count.
        Figure::Parts { of_tyre, .. } if slot.least <= 0.0 => of_tyre.of(tyre),
        _ => return true,
    };
    slot.steps(value) <= 0.0
}

fn ends(column: &[f64], fit: usize) -> Ends {
    let of = |part: &[f64]| part.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(*value), high.max(*value)));
    Ends { fit: of(column.get(..fit).unwrap_or(&[])), all: of(column) }
}

/// The range in which the speedometer is wished to read, from the first wish about it; any where there is none.
pub(super) fn speedometer_range(wishes: &[Wish]) -> (f64, f64) {
    let first = wishes.iter().find(|wish| wish.measure == Measure::Speedometer);
    first.map_or((f64::NEG_INFINITY, f64::INFINITY), |wish| (wish.least, wish.greatest))
}
