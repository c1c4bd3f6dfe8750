//! The pictures of a job: what has been worked out, as the plain data each picture is drawn from.

use super::ladder::{Ladder, Rung, Rungs};
use super::shift::{Climb, ClimbGear, ShiftChart};
use crate::analysis::Analysis;
use crate::gearing::teeth::decimal;
use crate::sheet::{Source, ordinal};
use crate::units::common::in_rpm;
use crate::units::{Measured, Velocity};

/// The gear ladder of every setup; the rpm lost stand on it where the shift rpm is known.
pub fn ladder(source: Source<'_>, focus: Option<usize>) -> Ladder {
    let unit = Velocity::usual(source.reader.units);
    let rung = |analysis: &Analysis, gear: usize| {
        let ratio = analysis.gears.ratios.get(gear).copied().flatten()?;
        let speed_at_shift = analysis.road.gears.get(gear).and_then(|in_gear| in_gear.at_shift).map(|speed| (unit.take)(&speed));
        Some(Rung { name: ordinal(gear), ratio: decimal(ratio), speed_at_shift })
    };
    let rungs = |(slot, analysis): (usize, &Analysis)| Rungs {
        slot,
        name: analysis.setup.name.clone(),
        gears: (0..analysis.gears.ratios.len()).filter_map(|gear| rung(analysis, gear)).collect(),
    };
    Ladder {
        setups: source.setups.iter().enumerate().map(rungs).collect(),
        shift_rpm: source.conditions.shift.map_or(0.0, in_rpm),
        speed_unit: unit.symbol.into(),
        focus,
        has_axis: true,
    }
}

/// The shift chart of every setup whose road speeds are known.
pub fn shift_chart(source: Source<'_>, focus: Option<usize>) -> ShiftChart {
    let unit = Velocity::usual(source.reader.units);
    let gear = |analysis: &Analysis, gear: usize| {
        let speed = analysis.road.gears.get(gear)?.at_shift?;
        Some(ClimbGear { name: ordinal(gear), speed_at_shift: (unit.take)(&speed) })
    };
    let climb = |(slot, analysis): (usize, &Analysis)| Climb {
        slot,
        name: analysis.setup.name.clone(),
        gears: (0..analysis.road.gears.len()).filter_map(|at| gear(analysis, at)).collect(),
    };
    ShiftChart {
        setups: source.setups.iter().enumerate().map(climb).collect(),
        shift_rpm: source.conditions.shift.map_or(0.0, in_rpm),
        cruise_speed: source.conditions.cruise.map(|cruise| (unit.take)(&cruise)),
        unit: unit.symbol.into(),
        focus,
    }
}
