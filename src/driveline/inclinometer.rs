//! What a phone laid on a shaft says of its slope: the mean of its readings, how far they spread, its zero, and the slope as it is typed.
//!
//! It lies with its long side along the tube, its top to the front of the car; or stands with its back against a flange, its top up.

use super::slope::End;
use crate::units::{Angle, number, unit};

/// How long readings are taken, in seconds.
pub const SECONDS: u32 = 2;
/// The fewest readings that make a mean.
const FEWEST: usize = 5;
/// Readings that spread further were taken while it moved, in degrees.
const STILL: f64 = 0.5;
/// Beyond this tilt, in degrees, the phone stands at a flange and does not lie on a tube.
const UPRIGHT: f64 = 45.0;

/// The mean of some readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Their mean: how far the top of the phone stands higher than its foot.
    pub mean: Angle,
    /// Their standard deviation.
    pub spread: Angle,
}

/// Why readings say nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ReadingError {
    /// There are none, or too few.
    NoTilt,
    /// It moved while they were taken: their standard deviation.
    Moved(Angle),
}

explain! { ReadingError:
    Self::NoTilt => "this device tells no tilt", "let the browser use its motion sensors, or type what an inclinometer reads";
    Self::Moved(spread) => format!("it moved by {}°", number::show(unit::DEGREE.number(*spread), 1)),
        format!("lay it down, press, and let go for {SECONDS} seconds");
}

impl Reading {
    /// The mean of readings of the tilt front to back, in degrees.
    ///
    /// # Errors
    /// Where there are too few, or it moved.
    pub fn of(degrees: &[f64]) -> Result<Self, ReadingError> {
        let many = u32::try_from(degrees.len()).map_or(f64::INFINITY, f64::from);
        if degrees.len() < FEWEST || degrees.iter().any(|each| !each.is_finite()) {
            return Err(ReadingError::NoTilt);
        }
        let mean = degrees.iter().sum::<f64>() / many;
        let spread = (degrees.iter().map(|each| (each - mean).powi(2)).sum::<f64>() / (many - 1.0)).sqrt();
        let spread_angle = unit::DEGREE.of(spread);
        if spread > STILL { Err(ReadingError::Moved(spread_angle)) } else { Ok(Self { mean: unit::DEGREE.of(mean), spread: spread_angle }) }
    }

    /// The reading less the zero of the phone.
    #[must_use]
    pub fn from_zero(self, zero: Angle) -> Self {
        Self { mean: self.mean - zero, ..self }
    }

    /// How far the shaft falls towards the rear. At a flange the phone's back lies against it: the gearbox's faces the rear, the axle's
    /// the front.
    pub fn fall(self, end: End) -> Angle {
        if unit::DEGREE.number(self.mean.abs()) <= UPRIGHT {
            return self.mean;
        }
        let from_upright = self.mean - unit::DEGREE.of(90.0);
        if end == End::Rear { from_upright } else { -from_upright }
    }
}

/// The zero of a phone that was read, turned end for end, and read again on the same spot: half the sum of the two, since the slope counts
/// once each way and the zero twice the same. Source: common practice with a spirit level, no published source.
///
/// ```
/// use layshaft::driveline::inclinometer::zero;
/// use layshaft::units::unit;
/// // It slopes 4.8°, the phone reads 0.3° too much: 5.1° one way, −4.5° the other.
/// assert!((unit::DEGREE.number(zero(unit::DEGREE.of(5.1), unit::DEGREE.of(-4.5))) - 0.3).abs() < 1e-12);
/// ```
pub fn zero(first: Angle, turned: Angle) -> Angle {
    (first + turned) / 2.0
}

/// A fall towards the rear as it is typed: `4.8 down`, of a nose `4.8 up`.
pub fn typed(fall: Angle, end: End) -> String {
    let degrees = unit::DEGREE.number(fall);
    let shown = number::show(degrees.abs(), 1);
    let [falls, rises] = if end == End::Rear { ["down", "up"] } else { ["up", "down"] };
    if shown == "0.0" { "level".into() } else { format!("{shown} {}", if degrees > 0.0 { falls } else { rises }) }
}

/// The text of a field with a slope that was taken put in: what it said of right and left stays. A shaft of several pieces takes one after
/// the other, and begins anew once it has all.
pub fn put(text: &str, taken: &str, pieces: usize) -> String {
    let mut kept: Vec<String> = text.split(';').map(|part| part.trim().to_owned()).filter(|part| !part.is_empty()).collect();
    if pieces > 1 {
        if kept.len() >= pieces {
            kept.clear();
        }
        kept.push(taken.to_owned());
        return kept.join("; ");
    }
    let sideways = text.split(',').map(str::trim).filter(|part| ["right", "left"].iter().any(|way| part.to_lowercase().contains(way)));
    std::iter::once(taken)
        .chain(sideways.filter(|part| !["up", "down", ";"].iter().any(|other| part.contains(other))))
        .collect::<Vec<_>>()
        .join(", ")
}
