//! What a reading of turns may have been meant as, where it leaves no usual ratio: ten times off, the wrong way round, another wheel held.

use super::reading::Interval;
use crate::gearing::teeth::Ratio;

/// A slip of reading or typing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// The other wheel was taken to be held, and both turned.
    BothTurned,
    /// Both wheels were taken to turn, and one was held.
    OneHeld,
    /// The turns of one end were typed for those of the other.
    WrongWayRound,
    /// The ratio is ten times what it should be.
    TenTimesTooLarge,
    /// The ratio is a tenth of what it should be.
    TenTimesTooSmall,
}

/// What the turns went through; each has its usual ratios.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turned {
    /// A gearbox: 0.6 to 6 is usual of a forward gear.
    Gearbox,
    /// An axle with both wheels turning: 2.2 to 7 is usual.
    Axle,
    /// An axle with one wheel held.
    AxleHeld,
}

impl Turned {
    /// The ratios that are usual. Common practice, no published source.
    pub fn usual(self) -> Interval {
        let tenths = |least: i128, greatest: i128| Interval { least: Ratio::new(least, 10), greatest: Ratio::new(greatest, 10) };
        match self {
            Self::Gearbox => tenths(6, 60),
            Self::Axle | Self::AxleHeld => tenths(22, 70),
        }
    }
}

/// The likeliest slip that makes an unusual reading a usual one, and what it then leaves; none where the reading is usual, or where no
/// single slip explains it.
pub fn slip(read: Interval, turned: Turned) -> Option<(Slip, Interval)> {
    let usual = turned.usual();
    let meets = |one: Interval| one.least <= usual.greatest && usual.least <= one.greatest;
    if meets(read) {
        return None;
    }
    let times = |by: Ratio| Interval { least: read.least * by, greatest: read.greatest * by };
    let inverse = Interval { least: read.greatest.recip(), greatest: read.least.recip() };
    let wheels = match turned {
        Turned::Gearbox => None,
        Turned::Axle => Some((Slip::OneHeld, times(Ratio::from_integer(2)))),
        Turned::AxleHeld => Some((Slip::BothTurned, times(Ratio::new(1, 2)))),
    };
    let others = [
        (Slip::WrongWayRound, inverse),
        (Slip::TenTimesTooLarge, times(Ratio::new(1, 10))),
        (Slip::TenTimesTooSmall, times(Ratio::from_integer(10))),
    ];
    wheels.into_iter().chain(others).find(|(_, meant)| meets(*meant))
}
