//! The highest speeds inside a gearbox at one engine speed, and in which gear they are reached.

use super::{Arrangement, Selected, Turning, Turns};
use crate::gearing::GearNumber;
use crate::gearing::gearbox::Gearbox;
use crate::gearing::part::{Part, Shaft};
use crate::units::AngularVelocity;

/// The highest speed of its kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// The part that turns so fast.
    pub part: Part,
    /// The lowest forward gear in which it does.
    pub gear: GearNumber,
    /// Its speed, signed against the input's direction; against its shaft for a loose gear.
    pub speed: AngularVelocity,
}

/// The highest countershaft speed with the input at `input` in any forward gear; a two-shaft box has no countershaft.
pub fn highest_countershaft(gearbox: &Gearbox, arrangement: &Arrangement, input: AngularVelocity) -> Option<Peak> {
    let counter = |turns: &Turns| turns.part == Part::Shaft(Shaft::Countershaft);
    highest(gearbox, arrangement, input, counter, Turns::speed_at)
}

/// The highest speed of a loose gear against its shaft with the input at `input` in any forward gear.
///
/// This is what its bush or needle bearing runs at without passing torque. `None` where a gear is not counted: it could be the fastest.
pub fn highest_slip(gearbox: &Gearbox, arrangement: &Arrangement, input: AngularVelocity) -> Option<Peak> {
    if !gearbox.is_counted() {
        return None;
    }
    highest(gearbox, arrangement, input, |turns| turns.loose, Turns::slip_at)
}

fn highest(
    gearbox: &Gearbox,
    arrangement: &Arrangement,
    input: AngularVelocity,
    wanted: impl Fn(&Turns) -> bool,
    speed: impl Fn(&Turns, (AngularVelocity, AngularVelocity)) -> AngularVelocity,
) -> Option<Peak> {
    let mut peak: Option<Peak> = None;
    for gear in gearbox.numbers() {
        let turning = Turning::new(gearbox, arrangement, Selected::Gear(gear))?;
        let at = turning.at_input(input);
        for turns in turning.parts.iter().filter(|turns| wanted(turns)) {
            let speed = speed(turns, at);
            if peak.is_none_or(|peak| speed.abs() > peak.speed.abs()) {
                peak = Some(Peak { part: turns.part, gear, speed });
            }
        }
    }
    peak
}
