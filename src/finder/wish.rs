//! What can be wished for: a figure of a combination, the range it should lie in, and how much that matters.

use crate::gearing::{GearNumber, Layout};
use crate::units::{Length, Velocity};

/// A figure of a combination of gear set, final drive, tyre and speedometer pair.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measure {
    /// Engine speed in top gear, an overdrive in, at this steady road speed, rpm.
    CruiseRpm(Velocity),
    /// First gear times everything behind the box.
    FirstOverall,
    /// The steepest grade first gear starts on, rise over run.
    StartGrade,
    /// The largest share of engine speed lost on an upshift, 0 to 1; nothing for a single gear.
    LargestDrop,
    /// Road speed at the shift rpm in this gear, m/s. A box without that gear cannot meet any range.
    SpeedAtShift(GearNumber),
    /// The lowest engine speed at which an upshift lands, rpm.
    Landing,
    /// Top speed at full throttle, m/s.
    TopSpeed,
    /// Time from rest to this road speed, s.
    TimeToSpeed(Velocity),
    /// Time from rest over this way, s.
    TimeOverDistance(Length),
    /// What the speedometer reads too much, as a share of true speed; below 0 where it reads low. With the best pair of the shelf.
    Speedometer,
    /// The tyre's diameter, m.
    TyreDiameter,
    /// Tyres to be changed: 0 where the fitted one stays, else 1.
    OtherTyre,
    /// 0 where the gear set of the first setup stays, else 1.
    OtherGearSet,
    /// 0 where the final drive of the first setup stays, else 1.
    OtherAxle,
    /// Parts of gear set, final drive and tyre that are not those of the first setup, 0 to 3.
    PartsChanged,
    /// 0 for a gear set that goes into the case of the first setup by name or by its tooth sums, else 1.
    OtherCase,
    /// Parts of gear set, final drive and tyre that are neither on the car nor in stock, 0 to 3; where that is a must, speedometer gears are taken from stock alone.
    ToOrder,
    /// The number of forward gears.
    GearCount,
    /// 0 for a box of this layout, else 1.
    OtherLayout(Layout),
    /// 0 for a box that drives the same end of a car, else 1: a box of two shafts has the final drive in its own case.
    OtherEnd {
        /// Whether it is a box of two shafts that is wanted.
        two_shafts: bool,
    },
}

/// How much a wish matters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Strength {
    /// What does not meet it is no answer.
    Must,
    /// What misses it stands further back: by this weight for every [`Measure::step`] missed.
    Prefer(f64),
}

/// A wish: a figure and the range it should lie in, in the figure's unit. An open end is infinite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wish {
    /// The figure.
    pub measure: Measure,
    /// The least that meets it.
    pub least: f64,
    /// The greatest that meets it.
    pub greatest: f64,
    /// How much it matters.
    pub strength: Strength,
}

impl Measure {
    /// The miss that counts as one, in the figure's unit: it sets what one wish is worth beside another of the same weight.
    ///
    /// Common practice, no published source: about the least difference a driver or a customer remarks on.
    pub fn step(self) -> f64 {
        match self {
            Self::CruiseRpm(_) | Self::Landing => 100.0,
            Self::FirstOverall => 0.25,
            Self::StartGrade | Self::LargestDrop | Self::Speedometer | Self::TyreDiameter => 0.01,
            Self::TimeToSpeed(_) | Self::TimeOverDistance(_) => 0.2,
            Self::SpeedAtShift(_)
            | Self::TopSpeed
            | Self::OtherTyre
            | Self::OtherGearSet
            | Self::OtherAxle
            | Self::PartsChanged
            | Self::OtherCase
            | Self::ToOrder
            | Self::GearCount
            | Self::OtherLayout(_)
            | Self::OtherEnd { .. } => 1.0,
        }
    }

    /// Whether it takes an engine and a car to work it out.
    pub fn needs_engine(self) -> bool {
        matches!(self, Self::StartGrade | Self::TopSpeed | Self::TimeToSpeed(_) | Self::TimeOverDistance(_))
    }

    /// Whether it only says yes or no, or counts parts, so that no picture is drawn of it.
    pub fn is_flag(self) -> bool {
        matches!(
            self,
            Self::OtherTyre
                | Self::OtherGearSet
                | Self::OtherAxle
                | Self::PartsChanged
                | Self::OtherCase
                | Self::ToOrder
                | Self::OtherLayout(_)
                | Self::OtherEnd { .. }
        )
    }

    /// Whether it needs the shift rpm.
    pub fn needs_shift(self) -> bool {
        matches!(self, Self::SpeedAtShift(_) | Self::Landing)
    }
}

impl Wish {
    /// Must lie between two values.
    pub fn must(measure: Measure, least: f64, greatest: f64) -> Self {
        Self { measure, least, greatest, strength: Strength::Must }
    }

    /// Should lie between two values.
    pub fn prefer(measure: Measure, least: f64, greatest: f64, weight: f64) -> Self {
        Self { measure, least, greatest, strength: Strength::Prefer(weight) }
    }

    /// By how much a figure misses the range, in the figure's unit; nothing inside it. What is no number misses by more than any.
    ///
    /// ```
    /// use layshaft::finder::{Measure, Wish};
    /// let wish = Wish::must(Measure::FirstOverall, 9.0, 10.5);
    /// assert_eq!((wish.miss(8.5), wish.miss(10.0), wish.miss(11.0)), (0.5, 0.0, 0.5));
    /// ```
    pub fn miss(&self, value: f64) -> f64 {
        if value.is_nan() {
            return f64::INFINITY;
        }
        (self.least - value).max(value - self.greatest).max(0.0)
    }

    /// The weight of a preference; `None` for a must.
    pub fn weight(&self) -> Option<f64> {
        match self.strength {
            Strength::Must => None,
            Strength::Prefer(weight) => Some(weight),
        }
    }
}
