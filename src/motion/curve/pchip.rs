//! The monotone cubic through given points: it never goes beyond the data, and a flat or turning point stays one.
//!
//! Model: Fritsch and Butland's weighted harmonic mean of the neighbouring secants inside, and the one-sided three-point rule,
//! clipped, at the ends. Source: F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984); C. Moler, Numerical Computing
//! with MATLAB, section 3.4 (ends); both from memory. It is what scipy's `PchipInterpolator` does.

use super::super::piecewise::Cubic;

/// The pieces through points with strictly rising x; empty for fewer than two points.
pub(super) fn pieces(points: &[(f64, f64)]) -> Vec<Cubic> {
    let slopes = slopes(points);
    points
        .windows(2)
        .zip(slopes.windows(2))
        .filter_map(|(points, slopes)| {
            let ([from, to], [at_from, at_to]) = (points, slopes) else { return None };
            Some(Cubic::hermite(*from, *to, (*at_from, *at_to)))
        })
        .collect()
}

/// The slope at each point.
fn slopes(points: &[(f64, f64)]) -> Vec<f64> {
    let secants: Vec<(f64, f64)> = points
        .windows(2)
        .filter_map(|pair| {
            let [from, to] = pair else { return None };
            Some((to.0 - from.0, (to.1 - from.1) / (to.0 - from.0)))
        })
        .collect();
    match secants.as_slice() {
        [] => Vec::new(),
        [(_, only)] => vec![*only, *only],
        [first, second, ..] => {
            let mut slopes = vec![end(*first, *second)];
            slopes.extend(secants.windows(2).filter_map(|pair| Some(inner(*pair.first()?, *pair.get(1)?))));
            slopes.extend(
                secants.iter().rev().copied().zip(secants.iter().rev().skip(1).copied()).next().map(|(last, before)| end(last, before)),
            );
            slopes
        }
    }
}

/// The slope at a point between two secants, each (width, slope).
fn inner((width_before, before): (f64, f64), (width_after, after): (f64, f64)) -> f64 {
    if before * after <= 0.0 {
        return 0.0;
    }
    let (near, far) = (2.0 * width_after + width_before, width_after + 2.0 * width_before);
    (near + far) / (near / before + far / after)
}

/// The slope at an end, from the secant beside it and the next one.
fn end((width, beside): (f64, f64), (next_width, next): (f64, f64)) -> f64 {
    let slope = ((2.0 * width + next_width) * beside - width * next) / (width + next_width);
    if slope * beside <= 0.0 {
        0.0
    } else if beside * next <= 0.0 && slope.abs() > 3.0 * beside.abs() {
        3.0 * beside
    } else {
        slope
    }
}
