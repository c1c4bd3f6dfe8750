//! What a speedometer reads: at a speed, over a distance, and which gear would make it true.

use super::dial::Dial;
use super::train::{Adapter, Train};
use crate::gearing::teeth::decimal;
use crate::units::{Length, TurnsPerDistance, Velocity};

/// Turns of the output shaft over a distance: axle ratio (and whatever stands between it and the drive gear) × wheel turns.
///
/// Units: `axle_ratio` is driveshaft turns for one turn of the wheels. Source: kinematics.
///
/// ```
/// use layshaft::speedometer::{dial::per_mile, shaft_turns};
/// use layshaft::units::{show, unit};
/// // 800 turns of the wheel, 4 of the shaft for each
/// assert_eq!(show(&shaft_turns(4.0, per_mile(800.0)), &unit::TURNS_MILE, 0), "3,200 turns/mile");
/// ```
pub fn shaft_turns(axle_ratio: f64, wheel: TurnsPerDistance) -> TurnsPerDistance {
    wheel * axle_ratio
}

/// A speedometer in its car.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Speedometer {
    /// Turns over a distance of the shaft that carries the drive gear.
    pub shaft: TurnsPerDistance,
    /// The gears.
    pub train: Train,
    /// What the cable drives.
    pub dial: Dial,
}

impl Speedometer {
    /// Turns of the cable over a true distance.
    pub fn cable(&self) -> TurnsPerDistance {
        self.shaft * self.train.turns()
    }

    /// What it reads over what is true: 1 where it is right, 1.05 where it reads 5 % high.
    ///
    /// Model: indicated = true × shaft turns × drive / driven × adapter / dial constant.
    /// Source: kinematics; trade examples of choosing speedometer gears.
    pub fn reads(&self) -> f64 {
        (self.cable() / self.dial.constant()).value
    }

    /// By how much it reads high, as a share of the true speed; negative where it reads low.
    pub fn error(&self) -> f64 {
        self.reads() - 1.0
    }

    /// What it shows at a true speed.
    ///
    /// ```
    /// use layshaft::speedometer::{Dial, Speedometer, Train, dial::per_mile};
    /// use layshaft::units::{show, unit};
    /// # fn example() -> Option<()> {
    /// let fitted = Speedometer { shaft: per_mile(3_200.0), train: Train::new(8, 25)?, dial: Dial::default() };
    /// // 3,200 × 8/25 = 1,024 turns of the cable a mile, where the dial wants 1,000
    /// assert_eq!(show(&fitted.cable(), &unit::TURNS_MILE, 0), "1,024 turns/mile");
    /// assert_eq!(show(&fitted.indicated(unit::MPH.of(50.0)), &unit::MPH, 1), "51.2 mph");
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn indicated(&self, true_speed: Velocity) -> Velocity {
        true_speed * self.reads()
    }

    /// The true speed when it shows one.
    pub fn true_speed(&self, indicated: Velocity) -> Velocity {
        indicated / self.reads()
    }

    /// What the odometer adds over a true distance. Cable and sender drive it as they drive the needle.
    pub fn odometer(&self, true_distance: Length) -> Length {
        true_distance * self.reads()
    }

    /// Turns of the cable for one turn of the shaft that would read true.
    pub fn wanted_ratio(&self) -> f64 {
        (self.dial.constant() / self.shaft).value
    }

    /// The driven count that would read true with this drive gear and adapter, as a fraction of a tooth.
    ///
    /// N = drive teeth × adapter × shaft turns over the dial constant. Source: as [`Self::reads`].
    pub fn driven_wanted(&self) -> f64 {
        driven_wanted(self.shaft, self.dial, self.train.drive(), self.train.adapter())
    }

    /// A car as a road check found it: the shaft turns so fast that the fitted gears read `ratio` times the truth.
    ///
    /// `ratio` is dial over true, above 0. What the tyre and axle are thought to be does not count.
    pub fn found_by_road(train: Train, dial: Dial, ratio: f64) -> Self {
        Self { shaft: dial.constant() * (ratio / train.turns()), train, dial }
    }

    /// The same with other gears.
    #[must_use]
    pub fn with(&self, train: Train) -> Self {
        Self { train, ..*self }
    }

    /// The whole driven count that reads nearest to true, never low where `never_low`; `None` where no speedometer gear has it.
    ///
    /// ```
    /// use layshaft::speedometer::{Dial, Speedometer, Train, dial::per_mile};
    /// # fn example() -> Option<()> {
    /// let fitted = Speedometer { shaft: per_mile(3_200.0), train: Train::new(8, 30)?, dial: Dial::default() };
    /// // 8 × 3,200/1,000 = 25.6: with 26 it reads 1.5 % low, with 25 it reads 2.4 % high
    /// assert_eq!((fitted.driven_wanted() * 10.0).round(), 256.0);
    /// assert_eq!(fitted.driven_to_fit(false), Train::new(8, 26));
    /// assert_eq!(fitted.driven_to_fit(true), Train::new(8, 25));
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn driven_to_fit(&self, never_low: bool) -> Option<Train> {
        let wanted = self.driven_wanted();
        let choices = (super::SpeedoGear::LEAST..=super::SpeedoGear::GREATEST).filter_map(|driven| Train::new(self.train.drive(), driven));
        let trains = choices.map(|train| train.with_adapter(self.train.adapter()));
        let allowed =
            trains.filter(|train| (f64::from(train.driven()) - wanted).abs() < 1.0 && (!never_low || f64::from(train.driven()) <= wanted));
        allowed.min_by(|a, b| self.with(*a).error().abs().total_cmp(&self.with(*b).error().abs()))
    }
}

/// The driven count that would read true with a drive gear and an adapter, as a fraction of a tooth.
pub fn driven_wanted(shaft: TurnsPerDistance, dial: Dial, drive: u16, adapter: Option<Adapter>) -> f64 {
    let through = adapter.map_or(1.0, |adapter| decimal(adapter.ratio()));
    f64::from(drive) * through * (shaft / dial.constant()).value
}
