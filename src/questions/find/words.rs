//! Why a result stands where it does, in words; and what a search came to, in a sentence.

use crate::finder::search::{Found, Progress, Standing};
use crate::finder::wish::{Measure, Strength, Wish};
use crate::units::number::show;
use crate::units::{Length, Measured, System, Velocity};
use uom::si::length::meter;

/// A wish's figure as it is read, with its unit.
pub fn figure(measure: Measure, value: f64, units: System) -> String {
    if value.is_nan() {
        return "none".into();
    }
    let (value, decimals, unit) = in_unit(measure, value, units);
    format!("{}{unit}", show(value, decimals))
}

/// A figure in the reader's unit: its value, its decimals, and its unit with the blank before it.
pub fn in_unit(measure: Measure, value: f64, units: System) -> (f64, usize, String) {
    match measure {
        Measure::CruiseRpm(_) | Measure::Landing => (value, 0, " rpm".into()),
        Measure::FirstOverall => (value, 2, String::new()),
        Measure::StartGrade | Measure::LargestDrop | Measure::Speedometer => (100.0 * value, 1, " %".into()),
        Measure::SpeedAtShift(_) | Measure::TopSpeed => {
            let unit = Velocity::usual(units);
            ((unit.take)(&crate::finder::search::speed(value)), 1, format!(" {}", unit.symbol))
        }
        Measure::TimeToSpeed(_) | Measure::TimeOverDistance(_) => (value, 1, " s".into()),
        Measure::TyreDiameter => {
            let unit = Length::usual(units);
            ((unit.take)(&Length::new::<meter>(value)), if units == System::Inch { 2 } else { 0 }, format!(" {}", unit.symbol))
        }
        Measure::OtherTyre
        | Measure::OtherGearSet
        | Measure::OtherAxle
        | Measure::PartsChanged
        | Measure::OtherCase
        | Measure::ToOrder
        | Measure::GearCount
        | Measure::OtherLayout(_)
        | Measure::OtherEnd { .. } => (value, 0, String::new()),
    }
}

/// What a wish is about, in a few words.
pub fn name(measure: Measure, units: System) -> String {
    let at = |speed: &Velocity| {
        let unit = Velocity::usual(units);
        format!("{} {}", show((unit.take)(speed), 0), unit.symbol)
    };
    match measure {
        Measure::CruiseRpm(speed) => format!("rpm in top at {}", at(&speed)),
        Measure::FirstOverall => "1st gear, overall".into(),
        Measure::StartGrade => "grade to start on".into(),
        Measure::LargestDrop => "largest rpm drop".into(),
        Measure::SpeedAtShift(gear) => format!("{gear} at the shift rpm"),
        Measure::Landing => "lowest landing of a shift".into(),
        Measure::TopSpeed => "top speed".into(),
        Measure::TimeToSpeed(speed) => format!("rest to {}", at(&speed)),
        Measure::TimeOverDistance(distance) => format!("time over {} m", show(distance.get::<meter>(), 0)),
        Measure::Speedometer => "speedometer error".into(),
        Measure::TyreDiameter => "tyre diameter".into(),
        Measure::OtherTyre => "tyre changed".into(),
        Measure::OtherGearSet => "gear set changed".into(),
        Measure::OtherAxle => "axle changed".into(),
        Measure::PartsChanged => "parts changed".into(),
        Measure::OtherCase => "A’s case".into(),
        Measure::ToOrder => "parts to order".into(),
        Measure::GearCount => "forward gears".into(),
        Measure::OtherLayout(_) | Measure::OtherEnd { .. } => "layout".into(),
    }
}

/// The range of a wish in words: `2,900 to 3,300 rpm`, `at most 30 %`.
pub fn range(wish: &Wish, units: System) -> String {
    let end = |value: f64| {
        let (value, decimals, unit) = in_unit(wish.measure, value, units);
        let decimals = if (value - value.round()).abs() < 1e-6 { 0 } else { decimals };
        (show(value, decimals), unit)
    };
    match wish.measure {
        Measure::OtherTyre | Measure::OtherGearSet | Measure::OtherAxle => return "to stay".into(),
        Measure::OtherCase => return "to be kept".into(),
        Measure::OtherEnd { two_shafts: true } => return "two shafts".into(),
        Measure::OtherEnd { two_shafts: false } => return "no two-shaft box".into(),
        Measure::ToOrder => return "none".into(),
        Measure::OtherLayout(layout) => return layout.words().into(),
        _ => {}
    }
    let ((least, unit), (greatest, _)) = (end(wish.least), end(wish.greatest));
    match (wish.least.is_finite(), wish.greatest.is_finite()) {
        (true, true) if least == greatest => format!("{least}{unit}"),
        (true, true) => format!("{least} to {greatest}{unit}"),
        (true, false) => format!("at least {least}{unit}"),
        (false, true) => format!("at most {greatest}{unit}"),
        (false, false) => "any".into(),
    }
}

/// A figure's distance from its range in words, `240 rpm too high`; nothing where it lies inside.
pub fn shortfall(wish: &Wish, value: f64, units: System) -> Option<String> {
    if value.is_nan() {
        return Some("there is none".into());
    }
    if wish.miss(value) <= 0.0 {
        return None;
    }
    Some(match wish.measure {
        Measure::OtherTyre => "another tyre".into(),
        Measure::OtherGearSet => "another gear set".into(),
        Measure::OtherAxle => "another axle".into(),
        Measure::PartsChanged if value > 1.5 => format!("{} parts changed", show(value, 0)),
        Measure::PartsChanged => "one part changed".into(),
        Measure::OtherCase => "not known to go into A’s case".into(),
        Measure::OtherEnd { two_shafts: true } => "not a two-shaft box, as A’s is".into(),
        Measure::OtherEnd { two_shafts: false } => "a two-shaft box, as A’s is not".into(),
        Measure::ToOrder if value > 1.5 => format!("{} parts to order", show(value, 0)),
        Measure::ToOrder => "one part to order".into(),
        Measure::OtherLayout(_) => "another layout".into(),
        _ => {
            let (low, decimals, unit) = in_unit(wish.measure, wish.least, units);
            let (high, ..) = in_unit(wish.measure, wish.greatest, units);
            let (value, ..) = in_unit(wish.measure, value, units);
            if value > high {
                format!("{}{unit} too high", show(value - high, decimals))
            } else {
                format!("{}{unit} too low", show(low - value, decimals))
            }
        }
    })
}

/// Why a result stands where it does: one sentence without its full stop.
pub fn reason(standing: &Standing, found: &Found, units: System) -> String {
    let wishes = found.wishes.iter().zip(&standing.figures).zip(&standing.missed);
    let misses = |must: bool| -> Vec<String> {
        let of = wishes.clone().filter(|((wish, _), steps)| (wish.strength == Strength::Must) == must && **steps > 0.0);
        let says =
            |wish: &Wish, short: String| if wish.measure.is_flag() { short } else { format!("{} {short}", name(wish.measure, units)) };
        of.filter_map(|((wish, value), _)| Some(says(wish, shortfall(wish, *value, units)?))).collect()
    };
    let (musts, preferences) = (misses(true), misses(false));
    if !musts.is_empty() {
        return format!("misses what must be: {}", musts.join("; "));
    }
    if preferences.is_empty() {
        return "meets every wish".into();
    }
    let place = match (standing.on_front, standing.behind) {
        (true, _) => "nothing else is as good in every wish".to_owned(),
        (false, Some(other)) => format!("number {} is as good or better in every wish", other + 1),
        (false, None) => "another is as good or better in every wish".to_owned(),
    };
    format!("{}; {place}", preferences.join("; "))
}

/// What a search came to, in a sentence or two.
pub fn summary(found: &Found) -> String {
    let progress = found.progress;
    if progress.total == 0 {
        return "There is nothing to combine: the catalogue needs at least one gear set, one final drive and one tyre that can be read."
            .into();
    }
    let counted = counted(progress);
    let how = if progress.done { format!("All {counted}") } else { format!("So far {counted}") };
    let came = if found.results.is_empty() {
        "nothing yet".to_owned()
    } else if !found.meets {
        "nothing meets all that must be; below are the nearest misses".to_owned()
    } else if found.on_front == 1 {
        "one result beats or equals all others in every wish".to_owned()
    } else {
        let kept = if found.front_complete { "" } else { " (more than can be kept)" };
        format!("{} results are such that no other is as good in every wish{kept}", show_count(found.on_front as u64))
    };
    format!("{how}: {came}.")
}

/// How many combinations are settled: judged one by one, or passed over with proof.
fn counted(progress: Progress) -> String {
    let (judged, passed) = (show_count(progress.judged), show_count(progress.passed));
    let total = show_count(progress.total);
    format!("{total} combinations: {judged} judged one by one, {passed} passed over because they cannot be better")
}

#[expect(clippy::cast_precision_loss, reason = "a count that is shown; above 2^53 its last digit does not matter")]
fn show_count(count: u64) -> String {
    show(count as f64, 0)
}
