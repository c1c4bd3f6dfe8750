//! The demo setups of the picture tests, and the table of what is looked at: an invented job of three setups and its variations.
use layshaft::chart::{
    Picture,
    ladder::{Ladder, Rung, Rungs},
    shift::{Climb, ClimbGear, ShiftChart},
};

const ORDINALS: [&str; 8] = ["1st", "2nd", "3rd", "4th", "5th", "6th", "7th", "8th"];
/// Rolling circumference in metres, and mph in a metre per second.
const CIRCUMFERENCE_M: f64 = 1.8788;
const MPH: f64 = 2.236_936_292;
const SHIFT_RPM: f64 = 6500.0;

/// A setup's name, its gear ratios and its axle ratio.
pub(crate) type Setup = (&'static str, Vec<f64>, f64);

/// Curlew four wide and close, Redshank five, all with 43/11.
pub(crate) fn three() -> Vec<Setup> {
    let box_of = |input: (f64, f64), pairs: &[Option<(f64, f64)>]| {
        pairs.iter().map(|pair| pair.map_or(1.0, |(driven, driver)| input.1 / input.0 * driven / driver)).collect::<Vec<_>>()
    };
    let axle = 43.0 / 11.0;
    vec![
        ("As it came", box_of((25.0, 30.0), &[Some((37.0, 18.0)), Some((32.0, 23.0)), Some((28.0, 27.0)), None]), axle),
        ("Close", box_of((27.0, 28.0), &[Some((37.0, 18.0)), Some((32.0, 23.0)), Some((29.0, 26.0)), None]), axle),
        (
            "Five-speed, overdrive 5th",
            box_of((22.0, 33.0), &[Some((36.0, 19.0)), Some((31.0, 24.0)), Some((27.0, 28.0)), None, Some((20.0, 35.0))]),
            axle,
        ),
    ]
}

/// Six setups: the three, a taller axle, a six-speed with close top gears, and a box with a repeated gear.
pub(crate) fn six() -> Vec<Setup> {
    let mut setups = three();
    setups.push(("Taller axle", vec![2.467, 1.670, 1.244, 1.0], 3.545));
    setups.push(("Six close", vec![2.66, 1.90, 1.48, 1.21, 1.05, 0.96], 4.1));
    setups.push(("Repeated", vec![3.2, 1.8, 1.8, 1.0], 43.0 / 11.0));
    setups
}

fn speed_mph(ratio: f64, axle: f64) -> f64 {
    SHIFT_RPM / 60.0 * CIRCUMFERENCE_M / (ratio * axle) * MPH
}

pub(crate) fn ladder(setups: &[Setup], focus: Option<usize>) -> Ladder {
    let row = |(slot, (name, ratios, axle)): (usize, &Setup)| {
        let rung =
            |(name, ratio): (&&str, &f64)| Rung { name: (*name).to_owned(), ratio: *ratio, speed_at_shift: Some(speed_mph(*ratio, *axle)) };
        Rungs { slot, name: (*name).to_owned(), gears: ORDINALS.iter().zip(ratios).map(rung).collect() }
    };
    let setups = setups.iter().enumerate().map(row).collect();
    Ladder { setups, shift_rpm: SHIFT_RPM, speed_unit: "mph".to_owned(), focus, has_axis: true }
}

pub(crate) fn shift(setups: &[Setup], focus: Option<usize>) -> ShiftChart {
    let climb = |(slot, (name, ratios, axle)): (usize, &Setup)| {
        let gear = |(name, ratio): (&&str, &f64)| ClimbGear { name: (*name).to_owned(), speed_at_shift: speed_mph(*ratio, *axle) };
        Climb { slot, name: (*name).to_owned(), gears: ORDINALS.iter().zip(ratios).map(gear).collect() }
    };
    let setups = setups.iter().enumerate().map(climb).collect();
    ShiftChart { setups, shift_rpm: SHIFT_RPM, cruise_speed: Some(70.0), unit: "mph".to_owned(), focus }
}

/// Every picture that is looked at, with its file name.
pub(crate) fn pictures() -> Vec<(String, Box<dyn Picture>)> {
    let mut pictures: Vec<(String, Box<dyn Picture>)> = Vec::new();
    let six = six();
    for count in 1..=six.len() {
        let setups = six.get(..count).unwrap_or_default();
        pictures.push((format!("ladder-{count}"), Box::new(ladder(setups, None))));
        pictures.push((format!("shift-{count}"), Box::new(shift(setups, None))));
    }
    pictures.push(("ladder-focus".to_owned(), Box::new(ladder(&six, Some(1)))));
    pictures.push(("shift-focus".to_owned(), Box::new(shift(&six, Some(2)))));
    pictures.extend(crate::charts_demo_more::pictures());
    pictures.extend(crate::charts_demo_trains::pictures());
    pictures.extend(crate::charts_demo_views::pictures());
    pictures.extend(crate::charts_demo_shapes::pictures());
    pictures.extend(crate::pull_by_hand::pictures());
    pictures
}
