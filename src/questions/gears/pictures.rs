//! The picture of Gears: the ladder of every setup.

use crate::chart::ladder::{Ladder, Rung, Rungs};
use crate::gearing::teeth::decimal;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::sheet::ordinal;
use crate::units::common::in_rpm;
use crate::units::{Measured, Velocity};

/// The gear ladder of every setup; the rpm lost stand on it where the shift rpm is known.
pub fn ladder(source: Source<'_>, focus: Option<usize>) -> Ladder {
    let unit = Velocity::usual(source.reader.units);
    let rung = |analysis: &Analysis, gear: usize| {
        let ratio = analysis.gears().ratios.get(gear).copied().flatten()?;
        let speed_at_shift = analysis.road().gears.get(gear).and_then(|in_gear| in_gear.at_shift).map(|speed| (unit.take)(&speed));
        Some(Rung { name: ordinal(gear), ratio: decimal(ratio), speed_at_shift })
    };
    let rungs = |(slot, analysis): (usize, &Analysis)| Rungs {
        slot,
        name: analysis.setup.name.clone(),
        gears: (0..analysis.gears().ratios.len()).filter_map(|gear| rung(analysis, gear)).collect(),
    };
    Ladder {
        setups: source.setups.iter().enumerate().map(rungs).collect(),
        shift_rpm: source.conditions.shift.map_or(0.0, in_rpm),
        speed_unit: unit.symbol.into(),
        focus,
        has_axis: true,
    }
}
