//! The picture of Gears: the ladder of every setup.

use crate::chart::ladder::{Ladder, Rung, Rungs};
use crate::gearing::Step;
use crate::gearing::teeth::decimal;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::road::answer::InGear;
use crate::units::common::in_rpm;
use crate::units::{Measured, Velocity};

/// The gear ladder of every setup; the rpm lost stand on it where the shift rpm is known.
pub fn ladder(source: Source<'_>, focus: Option<usize>) -> Ladder {
    let unit = Velocity::usual(source.reader.units);
    let rung = |(step, in_gear): (&Step, &InGear)| {
        let speed_at_shift = in_gear.at_shift.map(|speed| (unit.take)(&speed));
        Some(Rung { name: step.short_name(), ratio: decimal(step.ratio?), speed_at_shift })
    };
    let rungs = |(slot, analysis): (usize, &Analysis)| Rungs {
        slot,
        name: analysis.setup.name.clone(),
        gears: analysis.setup.steps.iter().zip(&analysis.road().steps).filter_map(rung).collect(),
    };
    Ladder {
        setups: source.setups.iter().enumerate().map(rungs).collect(),
        shift_rpm: source.conditions.shift.map_or(0.0, in_rpm),
        speed_unit: unit.symbol.into(),
        focus,
        has_axis: true,
    }
}
