//! The best of a function of several numbers, uphill from where it begins: the method of Nelder and Mead.
//!
//! Source: J. A. Nelder, R. Mead, A simplex method for function minimization, The Computer Journal 7 (1965), 308 to 313, with its own
//! coefficients (1, 2, 1/2, 1/2).

/// The best place found and its value, after about `most` looks at the function. The first simplex is `start` and a step from it in each
/// direction; where a step is nothing, that number stays as it is.
pub(super) fn climb<const N: usize>(
    start: [f64; N],
    steps: [f64; N],
    most: usize,
    mut value: impl FnMut([f64; N]) -> f64,
) -> ([f64; N], f64) {
    let mut corners: Vec<([f64; N], f64)> = vec![(start, value(start))];
    for (place, step) in steps.iter().enumerate().filter(|(_, step)| **step != 0.0) {
        let mut corner = start;
        if let Some(number) = corner.get_mut(place) {
            *number += step;
        }
        corners.push((corner, value(corner)));
    }
    let mut looks = corners.len();
    while looks < most {
        corners.sort_by(|a, b| b.1.total_cmp(&a.1));
        let (Some(best), Some(worst)) = (corners.first().copied(), corners.pop()) else { break };
        let Some(second) = corners.last().copied() else { return worst };
        if best.1 - worst.1 < 1e-4 && is_small(&best.0, &worst.0, &steps) {
            return best;
        }
        let middle = mean(&corners);
        let mut look = |share: f64| {
            looks += 1;
            let place = between(&middle, &worst.0, share);
            (place, value(place))
        };
        let mirrored = look(-1.0);
        let next = if mirrored.1 > best.1 {
            let farther = look(-2.0);
            if farther.1 > mirrored.1 { Some(farther) } else { Some(mirrored) }
        } else if mirrored.1 > second.1 {
            Some(mirrored)
        } else {
            let (side, least) = if mirrored.1 > worst.1 { (-0.5, mirrored.1) } else { (0.5, worst.1) };
            Some(look(side)).filter(|nearer| nearer.1 > least)
        };
        if let Some(next) = next {
            corners.push(next);
            continue;
        }
        corners.push(worst);
        for corner in corners.iter_mut().skip(1) {
            corner.0 = between(&best.0, &corner.0, 0.5);
            corner.1 = value(corner.0);
            looks += 1;
        }
    }
    corners.into_iter().max_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or((start, f64::MIN))
}

fn is_small<const N: usize>(a: &[f64; N], b: &[f64; N], steps: &[f64; N]) -> bool {
    a.iter().zip(b).zip(steps).all(|((a, b), step)| (a - b).abs() <= 0.02 * step.abs())
}

#[expect(clippy::cast_precision_loss, reason = "a handful of corners")]
fn mean<const N: usize>(corners: &[([f64; N], f64)]) -> [f64; N] {
    let mut sum = [0.0; N];
    for (corner, _) in corners {
        sum.iter_mut().zip(corner).for_each(|(sum, number)| *sum += number);
    }
    sum.map(|sum| sum / corners.len() as f64)
}

/// From `middle` towards `corner` by a share of the way.
fn between<const N: usize>(middle: &[f64; N], corner: &[f64; N], share: f64) -> [f64; N] {
    let mut place = *middle;
    place.iter_mut().zip(corner).for_each(|(number, corner)| *number += share * (corner - *number));
    place
}
