//! Turns of a speedometer's cable as they are counted over a stretch of road, `12 1/4 in 52.8 ft`, and the axle ratio they tell.

use super::reading::{Interval, ReadingError, exact};
use super::spoken::spoken;
use crate::gearing::teeth::{Ratio, decimal};
use crate::units::{Length, TurnsPerDistance, Typed, UnitError, limits};

/// Why a text is no count of a cable.
#[derive(Clone, Debug, PartialEq)]
pub enum CableError {
    /// There is no stretch behind the turns.
    NoStretch,
    /// The turns cannot be read.
    Turns(ReadingError),
    /// The stretch cannot be read.
    Stretch(UnitError),
}

explain! { CableError:
    Self::NoStretch => "the stretch that the cable was counted over is not given",
        "type the turns and the stretch, such as 12 1/4 in 52.8 ft, which is a hundredth of a mile";
    Self::Turns(why) => why.what(), why.what_to_do();
    Self::Stretch(why) => why.what(), why.what_to_do();
}

/// Reads turns over a stretch.
///
/// # Errors
/// When the stretch is missing, or one of the two cannot be read.
pub fn read(typed: &Typed) -> Result<TurnsPerDistance, CableError> {
    let text = typed.text.trim();
    let parts = [" in ", " over ", " per ", " on ", ";", "@"].iter().find_map(|word| text.split_once(word));
    let (turns, stretch) = parts.ok_or(CableError::NoStretch)?;
    let turns = spoken(turns).map_err(CableError::Turns)?.turns;
    let stretch: Length = Typed::new(stretch.trim(), typed.units).read(&limits::ROLLED).map_err(CableError::Stretch)?;
    if turns == Ratio::from_integer(0) {
        return Err(CableError::Turns(ReadingError::NoTurns));
    }
    Ok((decimal(turns) / stretch).into())
}

/// How far such a ratio may be out: the tyre's rolling by rule to 1.5 %, the count and the dial to half a percent. Common practice, no
/// published source.
pub const UNCERTAIN: f64 = 0.02;

/// The axle ratios that a cable's turns leave, by what the wheel rolls at each turn, the turns of the cable for one of the output shaft,
/// and all other stages behind the gearbox.
///
/// Model: cable = output shaft × gears of the speedometer, output shaft = wheel × axle × stages; no slip. Plain kinematics.
pub fn axle_by_cable(cable: TurnsPerDistance, circumference: Length, speedometer: f64, stages: f64) -> Option<Interval> {
    let ratio = (cable * circumference).value / (speedometer * stages);
    let [least, greatest] = [ratio * (1.0 - UNCERTAIN), ratio * (1.0 + UNCERTAIN)].map(exact);
    Some(Interval { least: least.filter(|least| *least > Ratio::from_integer(0))?, greatest: greatest? })
}
