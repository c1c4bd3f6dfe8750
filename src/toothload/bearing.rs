//! How long a rolling bearing lasts, how large it must be, and how sure that is.
//!
//! The basic rating life of ISO 281:2007, in millions of turns. Lubrication and dirt (the modified life of the standard) are
//! left out: in a gearbox that has been apart they often decide.

use crate::units::{AngularVelocity, Force, Time};

/// What rolls in a bearing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rolling {
    /// Balls: life falls with the third power of the load.
    Balls,
    /// Rollers, taper rollers and needles: with the power 10/3.
    Rollers,
}

impl Rolling {
    /// The exponent p of the life equation (ISO 281:2007).
    pub fn exponent(self) -> f64 {
        match self {
            Self::Balls => 3.0,
            Self::Rollers => 10.0 / 3.0,
        }
    }
}

/// L₁₀ = (C / P)ᵖ in millions of turns, which nine bearings of ten outlast (ISO 281:2007).
///
/// ```
/// use layshaft::toothload::bearing::{Rolling, life_million_turns};
/// use layshaft::units::unit;
/// // (30/10)³ million turns
/// let life = life_million_turns(unit::KN.of(30.0), unit::KN.of(10.0), Rolling::Balls);
/// assert_eq!(life.round(), 27.0);
/// ```
pub fn life_million_turns(rating: Force, load: Force, rolling: Rolling) -> f64 {
    (rating.value / load.value).powf(rolling.exponent())
}

/// How many million turns a shaft makes in that time.
pub fn million_turns(speed: AngularVelocity, time: Time) -> f64 {
    speed.get::<uom::si::angular_velocity::revolution_per_second>().abs() * time.get::<uom::si::time::second>() / 1e6
}

/// The share of its life that a bearing uses up over rows of million turns and load, Σ N / L (Palmgren and Miner).
///
/// ```
/// use layshaft::toothload::bearing::{Rolling, damage};
/// use layshaft::units::unit;
/// // 2 of 8 million turns at half the rating, 0.5 of 1 million at all of it
/// let rows = [(2.0, unit::KN.of(10.0)), (0.5, unit::KN.of(20.0))];
/// assert_eq!((100.0 * damage(unit::KN.of(20.0), &rows, Rolling::Balls)).round(), 75.0);
/// ```
pub fn damage(rating: Force, rows: &[(f64, Force)], rolling: Rolling) -> f64 {
    rows.iter().map(|(turns, load)| turns / life_million_turns(rating, *load, rolling)).sum()
}

/// The life that nine of ten shafts reach whose bearings last so long each, (Σ L^−e)^(−1/e); none where no bearing is given.
///
/// e is the Weibull slope of Lundberg and Palmgren that ISO 281:2007 rests on: 10/9 for balls, 9/8 where only rollers run (from memory).
///
/// ```
/// use layshaft::toothload::bearing::{Rolling, shared_life};
/// use layshaft::units::{show, unit};
/// // Two alike: 2^(−0.9) of the life of one.
/// let one = (unit::HOUR.of(1_000.0), Rolling::Balls);
/// let both = shared_life(&[one, one]).map(|life| show(&life, &unit::HOUR, 0));
/// assert_eq!(both.as_deref(), Some("536 h"));
/// ```
pub fn shared_life(lives: &[(Time, Rolling)]) -> Option<Time> {
    let has_balls = lives.iter().any(|(_, rolling)| *rolling == Rolling::Balls);
    let slope = if has_balls { 10.0 / 9.0 } else { 9.0 / 8.0 };
    let sum: f64 = lives.iter().map(|(life, _)| life.value.powf(-slope)).sum();
    (sum > 0.0).then(|| Time::new::<uom::si::time::second>(sum.powf(-f64::recip(slope))))
}

/// P = X V Fᵣ + Y Fₐ.
fn equivalent_load(radial: Force, axial: Force, radial_factor: f64, axial_factor: f64) -> Force {
    radial * radial_factor + axial * axial_factor
}

/// One row of the table for deep-groove ball bearings: Fₐ/C₀, e, Y.
///
/// Source: Shigley, Mechanical Engineering Design, table 11-1 (rows 0.028, 0.056 and 0.084 to 0.28 read in the text, the others from
/// memory). A coarser table is also about; its figures differ.
const DEEP_GROOVE: [(f64, f64, f64); 9] = [
    (0.014, 0.19, 2.30),
    (0.028, 0.22, 1.99),
    (0.056, 0.26, 1.71),
    (0.084, 0.28, 1.55),
    (0.110, 0.30, 1.45),
    (0.17, 0.34, 1.31),
    (0.28, 0.38, 1.15),
    (0.42, 0.42, 1.04),
    (0.56, 0.44, 1.00),
];

/// The radial factor X of deep-groove ball bearings when thrust counts.
pub const DEEP_GROOVE_RADIAL_FACTOR: f64 = 0.56;

/// e and Y of a deep-groove ball bearing at Fₐ/C₀, read between the rows of the table and held at its ends.
pub fn deep_groove_factors(thrust_share: f64) -> (f64, f64) {
    let [first, .., last] = DEEP_GROOVE;
    let clamped = thrust_share.clamp(first.0, last.0);
    let row = DEEP_GROOVE.windows(2).find_map(|rows| match rows {
        [low, high] if clamped <= high.0 => {
            let part = (clamped - low.0) / (high.0 - low.0);
            Some((low.1 + part * (high.1 - low.1), low.2 + part * (high.2 - low.2)))
        }
        _ => None,
    });
    row.unwrap_or((last.1, last.2))
}

/// The equivalent load of a deep-groove ball bearing with static rating `static_rating`, inner ring turning.
pub fn deep_groove_load(radial: Force, axial: Force, static_rating: Force) -> Force {
    let (threshold, axial_factor) = deep_groove_factors(axial.value.abs() / static_rating.value);
    if axial.value.abs() > threshold * radial.value.abs() {
        let mixed = equivalent_load(radial.abs(), axial.abs(), DEEP_GROOVE_RADIAL_FACTOR, axial_factor);
        if mixed > radial.abs() { mixed } else { radial.abs() }
    } else {
        radial.abs()
    }
}
