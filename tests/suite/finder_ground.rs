//! Ground for the finder's tests: small catalogues of plain numbers, and what every combination costs, worked out the long way.

use std::sync::Arc;

use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::finder::{Found, Given, Measure, Search, Table, Wish};
use layshaft::speedometer::Role;
use layshaft::units::common::in_rpm;

/// A gear set of the shop's own.
pub(crate) fn gear_set(name: &str, constant: &str, gears: &[&str], in_stock: bool) -> Entry {
    let set = stocked(PartKind::GearSet, in_stock).with(Column::Name, name).with(Column::Layout, "input-reduced");
    Column::GEARS.into_iter().zip(gears).fold(set.with(Column::Constant, constant), |set, (column, gear)| set.with(column, *gear))
}

/// A ring and pinion.
pub(crate) fn axle(drive: &str, in_stock: bool) -> Entry {
    stocked(PartKind::RingAndPinion, in_stock).with(Column::Drive, drive)
}

/// A tyre.
pub(crate) fn tyre(designation: &str, in_stock: bool) -> Entry {
    stocked(PartKind::Tyre, in_stock).with(Column::Designation, designation)
}

/// A speedometer gear.
pub(crate) fn speedo(role: Role, teeth: u16, housing: &str) -> Entry {
    stocked(PartKind::SpeedometerGear, true)
        .with(Column::Name, format!("{} {teeth} {housing}", role.word()))
        .with(Column::Role, role.word())
        .with(Column::Teeth, teeth.to_string())
        .with(Column::Housing, housing)
}

fn stocked(kind: PartKind, in_stock: bool) -> Entry {
    Entry::new(kind).with(Column::InStock, if in_stock { "yes" } else { "no" })
}

/// A catalogue of the shop's own entries alone.
pub(crate) fn catalogue(entries: impl IntoIterator<Item = Vec<Entry>>) -> Catalogue {
    Catalogue::empty().with_own(entries.into_iter().flatten().collect())
}

/// A search run to its end in one go.
pub(crate) fn search(table: &Arc<Table>, wishes: &[Wish], given: &Given) -> Found {
    let mut search = Search::new(Arc::clone(table), wishes.to_vec(), given.clone());
    search.advance(u64::MAX);
    search.found()
}

/// What one combination comes to, by the formulas as they stand in the handbooks, without any of the finder's arrays.
///
/// Only for wishes that need no engine.
pub(crate) fn figure(table: &Table, given: &Given, wish: &Wish, [set, axle, tyre]: [usize; 3]) -> f64 {
    let (set, axle, tyre) = (&table.sets[set], &table.axles[axle], &table.tyres[tyre]);
    let behind = axle.ratio * given.stages.at_rest;
    match wish.measure {
        Measure::CruiseRpm(speed) => speed.value * 60.0 / tyre.circumference_m * behind * set.ratios.last().unwrap(),
        Measure::FirstOverall => set.ratios[0] * behind,
        Measure::LargestDrop => set.ratios.windows(2).map(|two| 1.0 - two[1] / two[0]).fold(0.0, f64::max),
        Measure::Landing => {
            let lowest = set.ratios.windows(2).map(|two| two[1] / two[0]).fold(1.0, f64::min);
            given.shift.map_or(f64::NAN, in_rpm) * lowest
        }
        Measure::SpeedAtShift(gear) => gear
            .of(&set.ratios)
            .map_or(f64::NAN, |ratio| given.shift.map_or(f64::NAN, in_rpm) / 60.0 * tyre.circumference_m / (ratio * behind)),
        Measure::TyreDiameter => tyre.diameter_m,
        Measure::GearCount => f64::from(u8::try_from(set.ratios.len()).unwrap()),
        Measure::ToOrder => [set.in_stock, axle.in_stock, tyre.in_stock].iter().filter(|in_stock| !**in_stock).map(|_| 1.0).sum(),
        Measure::PartsChanged => [set.is_fitted, axle.is_fitted, tyre.place.is_none()].iter().filter(|is_own| !**is_own).map(|_| 1.0).sum(),
        Measure::OtherGearSet => f64::from(u8::from(!set.is_fitted)),
        Measure::OtherAxle => f64::from(u8::from(!axle.is_fitted)),
        Measure::OtherTyre => f64::from(u8::from(tyre.place.is_some())),
        Measure::OtherEnd { two_shafts } => f64::from(u8::from((set.layout == layshaft::gearing::Layout::TwoShaft) != two_shafts)),
        Measure::OtherLayout(layout) => f64::from(u8::from(set.layout != layout)),
        Measure::Speedometer => {
            let wanted = given.dial.unwrap().constant().value * tyre.circumference_m / given.turns_at_take_off(axle.ratio);
            let errors = table.pairs[set.housing].sorted.iter().map(|pair| f64::from(pair.drive) / f64::from(pair.driven) / wanted - 1.0);
            errors.min_by(|a, b| wish.miss(*a).total_cmp(&wish.miss(*b)).then(a.abs().total_cmp(&b.abs()))).unwrap_or(f64::NAN)
        }
        _ => unreachable!("needs an engine"),
    }
}

/// Steps missed of each wish.
pub(crate) fn steps(table: &Table, given: &Given, wishes: &[Wish], rows: [usize; 3]) -> Vec<f64> {
    let of = |wish: &Wish| {
        let value = figure(table, given, wish, rows);
        if value.is_nan() { 1_000.0 } else { wish.miss(value) / wish.measure.step() }
    };
    wishes.iter().map(of).collect()
}

/// Every combination of a table: misses of musts, score, and misses of each preference.
pub(crate) fn all_costs(table: &Table, given: &Given, wishes: &[Wish]) -> Vec<(f64, f64, Vec<f64>)> {
    let mut all = Vec::new();
    for set in 0..table.sets.len() {
        for axle in 0..table.axles.len() {
            for tyre in 0..table.tyres.len() {
                let steps = steps(table, given, wishes, [set, axle, tyre]);
                let must = wishes.iter().zip(&steps).filter(|(wish, _)| wish.weight().is_none()).map(|(_, steps)| steps).sum();
                let preferences: Vec<(f64, f64)> =
                    wishes.iter().zip(&steps).filter_map(|(wish, steps)| Some((wish.weight()?, *steps))).collect();
                let score = preferences.iter().map(|(weight, steps)| weight * steps).sum();
                all.push((must, score, preferences.into_iter().map(|(_, steps)| steps).collect()));
            }
        }
    }
    all
}
