//! The wishes made ready for the search: which column each figure is read from, and with which factor.

use super::columns::Column;
use crate::catalogue::case::fit;
use crate::finder::inputs::Given;
use crate::finder::stages::Steps;
use crate::finder::table::{AxleRow, SetRow, Table};
use crate::finder::wish::{Measure, Wish};
use crate::gearing::Layout;
use crate::units::common::{in_rpm, metres_per_second};
use uom::si::velocity::meter_per_second;

/// Steps that count as missed where a figure does not exist, such as the speed in a gear the box has not.
pub(super) const ABSENT: f64 = 1_000.0;

/// How a figure follows from the rows of a combination.
#[derive(Clone, Debug)]
pub(super) enum Figure {
    /// One value a gear set.
    Set(Vec<f64>),
    /// One value a gear set, times the final drive.
    SetTimesAxle(Vec<f64>),
    /// One value a gear set, times the final drive, times the tyre's column.
    TimesAxle(Vec<f64>, Column),
    /// One value a gear set, over the final drive, times the tyre's column.
    OverAxle(Vec<f64>, Column),
    /// The tyre's column alone.
    Tyre(Column),
    /// Parts counted: one value a gear set, one of the final drive, the tyre's column.
    Parts { of_sets: Vec<f64>, of_axle: fn(&AxleRow) -> f64, of_tyre: Column },
    /// The final drive's alone.
    Axle(fn(&AxleRow) -> f64),
    /// The speedometer's best error.
    Error,
    /// It takes engine and car.
    Engine(Measure),
}

/// One wish made ready.
#[derive(Clone, Debug)]
pub(super) struct Slot {
    pub(super) wish: usize,
    pub(super) least: f64,
    pub(super) greatest: f64,
    /// Steps for one of the figure's unit.
    pub(super) per_step: f64,
    /// The weight of a preference; nothing for a must.
    pub(super) weight: Option<f64>,
    pub(super) figure: Figure,
}

impl Slot {
    /// Steps missed by a figure.
    pub(super) fn steps(&self, value: f64) -> f64 {
        if value.is_nan() { ABSENT } else { positive(larger(self.least - value, value - self.greatest)) * self.per_step }
    }

    /// The fewest steps missed by any figure between two values.
    pub(super) fn steps_between(&self, low: f64, high: f64) -> f64 {
        positive(larger(self.least - high, low - self.greatest)) * self.per_step
    }
}

/// The larger of two, without the care for what is no number that hinders doing several at once.
pub(super) fn larger(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

pub(super) fn positive(value: f64) -> f64 {
    if value > 0.0 { value } else { 0.0 }
}

/// Every wish made ready, what is constant along the tyres first, what takes an engine last.
pub(super) fn slots(wishes: &[Wish], table: &Table, steps: &[Steps], given: &Given) -> Vec<Slot> {
    let slot = |(at, wish): (usize, &Wish)| Slot {
        wish: at,
        least: wish.least,
        greatest: wish.greatest,
        per_step: 1.0 / wish.measure.step(),
        weight: wish.weight(),
        figure: figure(wish.measure, table, steps, given),
    };
    let mut slots: Vec<Slot> = wishes.iter().enumerate().map(slot).collect();
    crate::order::by_key(&mut slots, |slot| match slot.figure {
        Figure::Set(_) | Figure::SetTimesAxle(_) | Figure::Axle(_) => 0,
        Figure::Engine(_) => 2,
        _ => 1,
    });
    slots
}

fn figure(measure: Measure, table: &Table, steps: &[Steps], given: &Given) -> Figure {
    let shift = given.shift.map_or(f64::NAN, in_rpm);
    let of = |value: &dyn Fn(&SetRow) -> f64| table.sets.iter().map(value).collect::<Vec<f64>>();
    match measure {
        Measure::CruiseRpm(speed) => {
            let per_minute = 60.0 * given.stages.at_rest * speed.get::<meter_per_second>();
            let in_top = |steps: &Steps| steps.ratios.last().map_or(f64::NAN, |top| per_minute * top);
            Figure::TimesAxle(steps.iter().map(in_top).collect(), Column::Turns)
        }
        Measure::FirstOverall => Figure::SetTimesAxle(of(&|set| set.ratios.first().map_or(f64::NAN, |first| given.stages.at_rest * first))),
        Measure::SpeedAtShift(gear) => {
            let of_gear = |set: &SetRow| gear.of(&set.ratios).map_or(f64::NAN, |ratio| shift / 60.0 / (given.stages.at_rest * ratio));
            Figure::OverAxle(of(&of_gear), Column::Way)
        }
        Measure::LargestDrop => Figure::Set(of(&|set| largest_drop(&set.ratios))),
        Measure::Landing => Figure::Set(of(&|set| shift * (1.0 - largest_drop(&set.ratios)))),
        Measure::GearCount => Figure::Set(of(&|set| set.ratios.iter().map(|_| 1.0).sum())),
        Measure::OtherLayout(layout) => Figure::Set(of(&|set| one_unless(set.layout == layout))),
        Measure::OtherEnd { two_shafts } => Figure::Set(of(&|set| one_unless((set.layout == Layout::TwoShaft) == two_shafts))),
        Measure::OtherCase => Figure::Set(of(&|set| one_unless(given.case.as_ref().is_some_and(|case| fit(&set.case, case).goes_in())))),
        Measure::OtherGearSet => Figure::Set(of(&|set| one_unless(set.is_fitted))),
        Measure::OtherAxle => Figure::Axle(|axle| one_unless(axle.is_fitted)),
        Measure::PartsChanged => Figure::Parts {
            of_sets: of(&|set| one_unless(set.is_fitted)),
            of_axle: |axle| one_unless(axle.is_fitted),
            of_tyre: Column::Other,
        },
        Measure::ToOrder => Figure::Parts {
            of_sets: of(&|set| one_unless(set.in_stock)),
            of_axle: |axle| one_unless(axle.in_stock),
            of_tyre: Column::Order,
        },
        Measure::TyreDiameter => Figure::Tyre(Column::Diameter),
        Measure::OtherTyre => Figure::Tyre(Column::Other),
        Measure::Speedometer => Figure::Error,
        Measure::StartGrade | Measure::TopSpeed | Measure::TimeToSpeed(_) | Measure::TimeOverDistance(_) => Figure::Engine(measure),
    }
}

/// A part that is counted unless something holds of it.
pub fn one_unless(holds: bool) -> f64 {
    if holds { 0.0 } else { 1.0 }
}

/// The largest share of engine speed lost on an upshift, 1 − iₖ₊₁/iₖ; nothing for a single gear.
pub fn largest_drop(ratios: &[f64]) -> f64 {
    ratios.windows(2).filter_map(|pair| if let [low, high] = pair { Some(1.0 - high / low) } else { None }).fold(0.0, f64::max)
}

/// A road speed from metres per second, for words.
pub fn speed(value: f64) -> crate::units::Velocity {
    metres_per_second(value)
}
