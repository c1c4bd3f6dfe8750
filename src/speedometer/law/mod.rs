//! The legal bands: how far a speedometer may read from the truth, rule by rule, as data.
//!
//! The rows are in `table`, the speeds each rule tests at in `test_speeds`. The rules differ by country, vehicle and year, and local rules decide; nothing here certifies a car.

mod table;
mod test_speeds;

use crate::units::{Length, System, Unit, Velocity, unit};
pub use table::{BANDS, ODOMETERS};
pub use test_speeds::{TestSpeed, Tests, speeds_of_r39};

worded! {
    /// How sure a row is.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Mark {
        /// Read in the rule itself or an official mirror of it.
        Read => "read in the rule";
        /// Read in a text that quotes it.
        Quoted => "quoted by others";
        /// From memory.
        Memory => "from memory";
    }
    /// The words for it on the sheet.
    pub fn words;
}

/// The numbers of a rule in one unit of speed: `low · V − low_less ≤ indicated ≤ high · V + high_more`, V the true speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Numbers {
    /// What the true speed is multiplied with for the least reading.
    pub low: f64,
    /// What is taken from that, in the row's unit.
    pub low_less: f64,
    /// What the true speed is multiplied with for the greatest reading.
    pub high: f64,
    /// What is added to that, in the row's unit.
    pub high_more: f64,
    /// The least true speed the rule speaks of, in the row's unit.
    pub from: f64,
    /// The greatest true speed the rule speaks of, in the row's unit.
    pub to: f64,
}

/// One rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// A short name for links and files, which never changes.
    pub id: &'static str,
    /// The rule's name.
    pub name: &'static str,
    /// What it is for, and when.
    pub scope: &'static str,
    /// Least and greatest reading over the true speed, in km/h.
    pub km_h: Numbers,
    /// Its numbers in mph, where it has its own; else those in km/h are converted.
    pub mph: Option<Numbers>,
    /// The speeds it tests at.
    pub tests: Tests,
    /// Whether it is law today for cars in use or newly approved.
    pub in_force_for_cars: bool,
    /// Where it stands.
    pub source: &'static str,
    /// How sure the row is.
    pub mark: Mark,
}

/// The rule that is usual everywhere but in the US, UN R39: the strictest of those in force for cars, which never lets a dial read low.
pub fn usual() -> &'static Band {
    &table::UN_R39
}

/// The rule that is usual in the US, SAE J2976: the one that covers cars there at every speed.
pub fn usual_in_the_us() -> &'static Band {
    &table::SAE_J2976
}

/// A reading against a rule, in the unit of the rule's numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Judgement {
    /// Inside; how far from the least and the greatest reading allowed.
    Inside {
        /// The reading less the least allowed.
        above_least: Velocity,
        /// The greatest allowed less the reading.
        below_greatest: Velocity,
    },
    /// It reads lower than allowed, by so much.
    TooLow(Velocity),
    /// It reads higher than allowed, by so much.
    TooHigh(Velocity),
    /// The rule does not speak of this speed.
    NotCovered,
}

impl Judgement {
    /// Whether the rule is broken.
    pub fn is_outside(self) -> bool {
        matches!(self, Self::TooLow(_) | Self::TooHigh(_))
    }

    /// Whether the rule is broken by more than can be told: 0.1 mph is a fifth of what a dial is read to.
    pub fn is_clearly_outside(self) -> bool {
        matches!(self, Self::TooLow(by) | Self::TooHigh(by) if by > unit::MPH.of(0.1 + 1e-9))
    }
}

impl Band {
    /// The rule's numbers in a system and the unit they are in.
    fn numbers(&self, system: System) -> (Numbers, &'static Unit<Velocity>) {
        match (system, self.mph) {
            (System::Inch, Some(mph)) => (mph, &unit::MPH),
            _ => (self.km_h, &unit::KM_H),
        }
    }

    /// The least and the greatest reading allowed at a true speed, as the numbers of a system have it; `None` where the rule does not speak of it.
    ///
    /// A speed that differs from a bound by less than the rounding of a conversion (0.5 %) counts as that bound.
    ///
    /// ```
    /// use layshaft::speedometer::law::usual;
    /// use layshaft::units::{System, show, unit};
    /// // UN R39: from the true speed to a tenth and 4 km/h above it, 80 + 8 + 4.
    /// let (least, greatest) = usual().allowed(unit::KM_H.of(80.0), System::Metric).unzip();
    /// let shown = |speed: Option<_>| speed.map(|speed| show(&speed, &unit::KM_H, 1));
    /// assert_eq!((shown(least).as_deref(), shown(greatest).as_deref()), (Some("80.0 km/h"), Some("92.0 km/h")));
    /// ```
    pub fn allowed(&self, true_speed: Velocity, system: System) -> Option<(Velocity, Velocity)> {
        let (numbers, unit) = self.numbers(system);
        let value = unit.number(true_speed);
        let covered = value >= numbers.from * 0.995 && value <= numbers.to * 1.005;
        let least = numbers.low * value - numbers.low_less;
        let greatest = numbers.high * value + numbers.high_more;
        covered.then(|| (unit.of(least), unit.of(greatest)))
    }

    /// Whether a reading is inside, and by how much.
    pub fn judge(&self, true_speed: Velocity, indicated: Velocity, system: System) -> Judgement {
        /// Far below what a dial can show, well above what arithmetic loses.
        const SLACK: f64 = 1e-9;
        let Some((least, greatest)) = self.allowed(true_speed, system) else { return Judgement::NotCovered };
        let slack = unit::M_S.of(SLACK);
        if indicated < least - slack {
            Judgement::TooLow(least - indicated)
        } else if indicated > greatest + slack {
            Judgement::TooHigh(indicated - greatest)
        } else {
            Judgement::Inside { above_least: indicated - least, below_greatest: greatest - indicated }
        }
    }

    /// The true speeds at which a dial that shows `indicated` is inside: the rule solved for the true speed, whatever speeds it speaks of.
    ///
    /// V2 from (V1 − more) / high to (V1 + less) / low; never below 0.
    pub fn true_range(&self, indicated: Velocity, system: System) -> (Velocity, Velocity) {
        let (numbers, unit) = self.numbers(system);
        let value = unit.number(indicated);
        let least = ((value - numbers.high_more) / numbers.high).max(0.0);
        (unit.of(least), unit.of((value + numbers.low_less) / numbers.low))
    }
}

/// A rule on odometers: how far the way counted may be from the true one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OdometerRule {
    /// A short name for links and files, which never changes.
    pub id: &'static str,
    /// The rule's name.
    pub name: &'static str,
    /// The ids of the speedometer rules it goes with.
    pub goes_with: &'static [&'static str],
    /// Greatest error either way, as a share of the true way.
    pub share: f64,
    /// Where it stands.
    pub source: &'static str,
    /// How sure the row is.
    pub mark: Mark,
}

impl OdometerRule {
    /// Whether a way counted over a true way is inside.
    pub fn allows(&self, counted: Length, true_way: Length) -> bool {
        ((counted - true_way) / true_way).value.abs() <= self.share + 1e-12
    }
}

/// The rule on odometers that goes with a rule on speedometers; `None` where that says nothing on odometers.
pub fn odometer_rule(band: &Band) -> Option<&'static OdometerRule> {
    ODOMETERS.iter().find(|rule| rule.goes_with.contains(&band.id))
}
