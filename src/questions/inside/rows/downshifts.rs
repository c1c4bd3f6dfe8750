//! What a downshift at one road speed would spin the engine to, at the shift rpm and at the cruise speed.

use super::TRAIN;
use super::speeds::{missing, rpm_figure};
use crate::gearing::speeds::overrun::Downshift;
use crate::gearing::teeth::decimal;
use crate::problem::{Explain, capital};
use crate::questions::Analysis;
use crate::sheet::{Cell, Piece, Worked};
use crate::units::common::{in_rpm, show_rpm};

/// Every downshift with the engine at the shift rpm, and from where down each stays within the limit.
pub(super) fn at_shift_cell(analysis: &Analysis) -> Cell {
    let downshifts = &analysis.inside().downshifts;
    if downshifts.is_empty() {
        return missing(analysis);
    }
    let safe = |shift: &Downshift| format!("{} to {} below {}", shift.from, shift.to, show_rpm(shift.safe_before()));
    let over: Vec<String> = downshifts.iter().filter(|shift| shift.is_over()).map(safe).collect();
    let cell = each(downshifts, "downshift");
    if over.is_empty() { cell } else { cell.and([Piece::driving(format!("Over-revs: shift down {} rpm", over.join(", ")))]) }
}

/// Every downshift at the cruise speed from a gear that is within the limit there. One from top gear that passes it is a caution;
/// from a lower gear it is one for the driver, as every box has such a gear.
pub(super) fn at_cruise_cell(analysis: &Analysis) -> Cell {
    let all = &analysis.inside().cruise_downshifts;
    if all.is_empty() {
        let one = analysis.setup.gears.len() == 1;
        return Cell::needed(if one { "one gear only".into() } else { crate::questions::needs(analysis) });
    }
    let reached: Vec<Downshift> = all.iter().filter(|shift| in_rpm(shift.before) <= in_rpm(shift.limit)).copied().collect();
    if reached.is_empty() {
        return Cell::absent("every gear turns the engine over its limit at that speed");
    }
    let top = analysis.setup.gears.len();
    reached.iter().filter(|shift| shift.is_over()).fold(each(&reached, "cruise_downshift"), |cell, shift| {
        let said = format!("{}; {}", capital(&shift.what()), shift.what_to_do());
        cell.and([if shift.from.number() == top { Piece::caution(said) } else { Piece::driving(said) }])
    })
}

fn each(downshifts: &[Downshift], key: &str) -> Cell {
    downshifts.iter().fold(Cell::default(), |cell, shift| {
        let key = format!("inside.{key}_{}_to_{}_rpm", shift.from.number(), shift.to.number());
        let worked = Worked::of(in_rpm(shift.before), 0).times(decimal(shift.step).abs(), 4);
        let figure = rpm_figure(key, shift.after).worked(
            "engine after = engine before × lower ratio ÷ higher ratio, at one road speed",
            worked,
            TRAIN,
        );
        cell.and([Piece::words(format!("{} to {}", shift.from, shift.to)), figure.into()])
    })
}
