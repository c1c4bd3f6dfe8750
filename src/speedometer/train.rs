//! The gears between the output shaft and the dial: a drive gear, a driven gear and perhaps an adapter.

use std::fmt;

use super::gear::SpeedoGear;
use crate::gearing::Ratio;

/// An adapter: a pair of gears between the driven gear and the cable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Adapter {
    gearbox_side: u16,
    cable_side: u16,
}

impl Adapter {
    /// An adapter of two counts, on the gearbox's side and on the cable's; `None` outside what a speedometer gear can have.
    pub fn new(gearbox_side: u16, cable_side: u16) -> Option<Self> {
        (SpeedoGear::allows(gearbox_side) && SpeedoGear::allows(cable_side)).then_some(Self { gearbox_side, cable_side })
    }

    /// Teeth on the gearbox's side and on the cable's.
    pub fn counts(self) -> (u16, u16) {
        (self.gearbox_side, self.cable_side)
    }

    /// Turns of the cable for one turn of the driven gear.
    pub fn ratio(self) -> Ratio {
        Ratio::new(i128::from(self.gearbox_side), i128::from(self.cable_side))
    }
}

impl fmt::Display for Train {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.drive, self.driven)?;
        match self.adapter {
            Some(adapter) => write!(f, " x {}/{}", adapter.gearbox_side, adapter.cable_side),
            None => Ok(()),
        }
    }
}

/// The gears from the output shaft to the cable or sender.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Train {
    drive: u16,
    driven: u16,
    adapter: Option<Adapter>,
}

impl Train {
    /// A train of a drive gear and a driven one; `None` where a count is outside what a speedometer gear can have.
    pub fn new(drive: u16, driven: u16) -> Option<Self> {
        (SpeedoGear::allows(drive) && SpeedoGear::allows(driven)).then_some(Self { drive, driven, adapter: None })
    }

    /// The same with an adapter, or without.
    #[must_use]
    pub fn with_adapter(self, adapter: Option<Adapter>) -> Self {
        Self { adapter, ..self }
    }

    /// Teeth (or starts) of the drive gear.
    pub fn drive(self) -> u16 {
        self.drive
    }

    /// Teeth of the driven gear.
    pub fn driven(self) -> u16 {
        self.driven
    }

    /// The pair between driven gear and cable, where there is one.
    pub fn adapter(self) -> Option<Adapter> {
        self.adapter
    }

    /// Turns of the cable for one turn of the output shaft: drive over driven, times the adapter's ratio.
    ///
    /// Source: kinematics; the formula for choosing the gears is common practice (two worked examples in the trade, no standard).
    ///
    /// ```
    /// use layshaft::gearing::Ratio;
    /// use layshaft::speedometer::{Adapter, Train};
    /// let train = Train::new(7, 17).map(|train| train.with_adapter(Adapter::new(20, 18)));
    /// // 7/17 × 20/18 = 140/306
    /// assert_eq!(train.map(Train::ratio), Some(Ratio::new(70, 153)));
    /// ```
    pub fn ratio(self) -> Ratio {
        self.adapter.map_or(Ratio::from_integer(1), Adapter::ratio) * Ratio::new(i128::from(self.drive), i128::from(self.driven))
    }

    /// The same as a plain number, to the last bit: whole numbers as small as these are exact before the one division.
    pub fn turns(self) -> f64 {
        let (gearbox_side, cable_side) = self.adapter.map_or((1, 1), Adapter::counts);
        let product = |one: u16, other: u16| f64::from(u32::from(one) * u32::from(other));
        product(self.drive, gearbox_side) / product(self.driven, cable_side)
    }
}
