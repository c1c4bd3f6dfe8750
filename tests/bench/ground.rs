//! An invented catalogue of ten million combinations, and wishes over it. Nothing in it is by chance, so every run measures the same.

use layshaft::finder::table::{AxleRow, Pair, Pairs, SetRow, Table, TyreRow};
use layshaft::finder::{Given, Measure, Wish};
use layshaft::units::common::{metres_per_second, rpm};

/// Gear sets, final drives and tyres: ten million combinations.
pub const COUNTS: [u32; 3] = [500, 100, 200];

/// A number from 0 to 1 that looks random and is always the same for the same place.
fn spread(place: u32, salt: u32) -> f64 {
    let mixed = place.wrapping_mul(2_654_435_761).wrapping_add(salt.wrapping_mul(40_503)) ^ 0x9e37_79b9;
    let mixed = (mixed ^ (mixed >> 15)).wrapping_mul(2_246_822_519);
    f64::from(mixed ^ (mixed >> 13)) / f64::from(u32::MAX)
}

/// The catalogue.
pub fn table() -> Table {
    let [sets, axles, tyres] = COUNTS;
    let in_stock = |place: u32, salt: u32| spread(place, salt) < 0.6;
    let set = |place: u32| {
        let gears = 3 + place % 3;
        let steps: Vec<f64> = (0..gears).map(|gear| 1.18 + 0.09 * f64::from(gear) + 0.3 * spread(place, 7 + gear)).collect();
        let top = if place.is_multiple_of(4) { 0.75 + 0.2 * spread(place, 3) } else { 1.0 };
        let mut ratios = vec![top];
        for step in steps {
            ratios.push(ratios.last().copied().unwrap_or(1.0) * step);
        }
        ratios.reverse();
        let meshes = ratios.iter().map(|_| 2).collect();
        SetRow { place: Some(place as usize), ratios, meshes, in_stock: in_stock(place, 1), ..SetRow::default() }
    };
    let axle = |place: u32| AxleRow {
        place: Some(place as usize),
        ratio: 2.8 + 2.4 * spread(place, 4),
        in_stock: in_stock(place, 5),
        is_fitted: false,
    };
    let tyre = |place: u32| {
        let circumference_m = 1.55 + 0.75 * spread(place, 6);
        TyreRow { place: Some(place as usize), circumference_m, diameter_m: circumference_m / 3.05, in_stock: in_stock(place, 8) }
    };
    let pairs = (5..=13_u16).flat_map(|drive| (15..=40_u16).map(move |driven| (drive, driven)));
    let pairs = pairs.map(|(drive, driven)| Pair { ratio: f64::from(drive) / f64::from(driven), drive, driven }).collect();
    let pairs = vec![Pairs::new("", pairs)];
    let mut table = Table {
        sets: (0..sets).map(set).collect(),
        axles: (0..axles).map(axle).collect(),
        tyres: (0..tyres).map(tyre).collect(),
        pairs_in_stock: pairs.clone(),
        pairs,
        ..Table::default()
    };
    table.sort();
    table
}

/// What is the same for every combination.
pub fn given() -> Given {
    Given { shift: Some(rpm(6_000.0)), ..Given::default() }
}

/// Preferences alone, each with one best value, so that every combination costs something and none is as good as another.
pub fn preferences() -> Vec<Wish> {
    vec![
        Wish::prefer(Measure::CruiseRpm(metres_per_second(31.0)), 3_000.0, 3_000.0, 5.0),
        Wish::prefer(Measure::FirstOverall, 10.0, 10.0, 4.0),
        Wish::prefer(Measure::LargestDrop, f64::NEG_INFINITY, 0.27, 3.0),
        Wish::prefer(Measure::Speedometer, 0.0, 0.02, 5.0),
    ]
}

/// A wish list as a customer has it: some musts, some wishes.
pub fn typical() -> Vec<Wish> {
    vec![
        Wish::prefer(Measure::CruiseRpm(metres_per_second(31.0)), 2_800.0, 3_100.0, 5.0),
        Wish::prefer(Measure::FirstOverall, 9.5, 10.5, 5.0),
        Wish::prefer(Measure::LargestDrop, f64::NEG_INFINITY, 0.3, 3.0),
        Wish::prefer(Measure::Speedometer, 0.0, 0.03, 5.0),
        Wish::must(Measure::GearCount, 5.0, 5.0),
        Wish::must(Measure::TyreDiameter, 0.58, 0.63),
        Wish::must(Measure::ToOrder, f64::NEG_INFINITY, 0.0),
    ]
}
