//! From the height of the hub over the road to what the tyre rolls: it rolls on a larger circle than it stands on.

use std::f64::consts::PI;

use super::dimension::{Basis, Measure};
use super::rolling::{How, Rolling};
use crate::units::{Length, common, number};

/// Where the relation stands.
pub(super) const SOURCE: &str = "R = F − k (F − S), F the free, S the standing radius: k = 1/3 radial, Jazar, Vehicle Dynamics, chapter 3 (from memory), 2/3 diagonal, from its 0.96 F rolled and 0.94 F stood; without a size a radial is taken to stand 7 % below its free radius (5 to 9 %: common practice, no published source)";

/// How a carcass rolls against how it stands.
struct Carcass {
    /// The part of the deflection by which the rolling radius is below the free one, as above and below the fraction's line.
    part: (f64, f64),
    /// The deflection taken over the free radius, where the free radius is not known.
    deflection: f64,
    /// How sure the result is without and with the free radius.
    plus_minus: (f64, f64),
}

/// A belt hardly shortens: the rolling radius falls by a third of the deflection.
const RADIAL: Carcass = Carcass { part: (1.0, 3.0), deflection: 0.07, plus_minus: (0.015, 0.01) };
/// Without a belt the tread shortens with the carcass, by two thirds of the deflection.
const DIAGONAL: Carcass = Carcass { part: (2.0, 3.0), deflection: 0.06, plus_minus: (0.02, 0.015) };

/// The least standing over free radius at which the two can belong to one tyre.
const LEAST_STANDING: f64 = 0.85;

/// What a tyre rolls that stands so high; `moulded` is the diameter that its size says.
///
/// Model: R = F − k (F − S) with F the free and S the standing radius. Where F is not known, or does not go with S, the usual
/// deflection stands in for it: a radial then rolls 5.0 % more than 2πS, a diagonal tyre 2.1 %.
/// Source: see [`SOURCE`].
pub(super) fn rolling(standing: Length, usual: How, moulded: Option<&Measure>) -> Rolling {
    let carcass = if usual == How::Diagonal { DIAGONAL } else { RADIAL };
    let (above, below) = carcass.part;
    let free = moulded.map(|diameter| diameter.value / 2.0).filter(|free| (LEAST_STANDING..=1.0).contains(&(standing / *free).value));
    let tenths = |length| number::show(common::in_millimetres(length), 1);
    let (radius, how_got, plus_minus) = if let Some(free) = free {
        let shown = format!("{} − {above:.0}/{below:.0} × ({0} − {})", tenths(free), tenths(standing));
        (free - (free - standing) * (above / below), shown, carcass.plus_minus.1)
    } else {
        let times = (1.0 - carcass.deflection * above / below) / (1.0 - carcass.deflection);
        (standing * times, format!("{} × {}", number::show(times, 3), tenths(standing)), carcass.plus_minus.0)
    };
    let circumference = radius * (2.0 * PI);
    let working = format!("2π × ({how_got}) = {} mm", number::show(common::in_millimetres(circumference), 0));
    Rolling { circumference, how: How::LoadedRadius, basis: Basis::Approximate, plus_minus, working }
}
