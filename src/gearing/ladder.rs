//! What a row of gears is like as a whole: steps, spread, and how the steps change from gear to gear.

use super::teeth::{Ratio, decimal};
use crate::gearing::GearNumber;

/// How the steps of a ladder change from the bottom to the top.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Character {
    /// Every step alike, to within [`ALIKE`].
    Geometric,
    /// Each step smaller than the one before: the usual for road cars.
    Progressive,
    /// A step is larger than the one before: the lower gear of the step that grows.
    Uneven(GearNumber),
    /// A higher gear is as low as or lower than the gear before it: the lower gear.
    Inverted(GearNumber),
    /// Too few gears for steps to be compared.
    Short,
}

/// Two steps within this share of each other count as alike (tooth counts cannot hit a step exactly). Common practice, no published source.
pub const ALIKE: f64 = 0.03;

/// The ratios of the forward gears, lowest gear first, without sign.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ladder(Vec<Ratio>);

impl Ladder {
    /// A ladder of ratios, lowest gear first; signs are dropped.
    pub fn new(ratios: impl IntoIterator<Item = Ratio>) -> Self {
        Self(ratios.into_iter().map(|ratio| if ratio < Ratio::from_integer(0) { -ratio } else { ratio }).collect())
    }

    /// The ratios, lowest gear first.
    pub fn ratios(&self) -> &[Ratio] {
        &self.0
    }

    /// The step of each upshift, φₖ = iₖ / iₖ₊₁.
    pub fn steps(&self) -> Vec<Ratio> {
        self.0.windows(2).filter_map(|pair| Some(*pair.first()? / *pair.get(1)?)).collect()
    }

    /// The share of engine speed lost on each upshift at constant road speed, 1 − 1/φ.
    ///
    /// ```
    /// use layshaft::gearing::{Ladder, Ratio};
    /// let ladder = Ladder::new([Ratio::new(4, 1), Ratio::new(2, 1), Ratio::new(3, 2)]);
    /// assert_eq!(ladder.steps(), [Ratio::new(2, 1), Ratio::new(4, 3)]);
    /// // 1 − 1/2 and 1 − 3/4
    /// assert_eq!(ladder.drops(), [0.5, 0.25]);
    /// ```
    pub fn drops(&self) -> Vec<f64> {
        self.steps().into_iter().map(|step| 1.0 - 1.0 / decimal(step)).collect()
    }

    /// First over top; `None` without gears.
    pub fn spread(&self) -> Option<Ratio> {
        Some(*self.0.first()? / *self.0.last()?)
    }

    /// How the steps change from the bottom to the top.
    ///
    /// ```
    /// use layshaft::gearing::ladder::{Character, Ladder};
    /// use layshaft::gearing::{GearNumber, Ratio};
    /// let character = |ratios: [i128; 3]| Ladder::new(ratios.map(Ratio::from_integer)).character();
    /// assert_eq!(character([9, 3, 1]), Character::Geometric);
    /// assert_eq!(character([8, 4, 3]), Character::Progressive);
    /// // 6/4 is less than 4/2.
    /// assert_eq!(character([6, 4, 2]), Character::Uneven(GearNumber::SECOND));
    /// ```
    pub fn character(&self) -> Character {
        let steps: Vec<f64> = self.steps().into_iter().map(decimal).collect();
        if let Some(at) = steps.iter().position(|step| *step <= 1.0) {
            return Character::Inverted(GearNumber::at(at));
        }
        if steps.len() < 2 {
            return Character::Short;
        }
        let (least, greatest) =
            steps.iter().fold((f64::INFINITY, 0.0_f64), |(least, greatest), step| (least.min(*step), greatest.max(*step)));
        if greatest / least <= 1.0 + ALIKE {
            return Character::Geometric;
        }
        match steps.windows(2).position(|pair| matches!(pair, [lower, upper] if *upper > *lower * (1.0 + ALIKE))) {
            Some(at) => Character::Uneven(GearNumber::at(at).next()),
            None => Character::Progressive,
        }
    }
}
