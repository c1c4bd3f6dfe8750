//! Round values along an axis, as many as there is room for.

/// Round values between two ends, 1, 2 or 5 times a power of ten apart, at most `most` of them where that can be.
///
/// Ends that are not numbers, or not in order, give none.
///
/// ```
/// use layshaft::chart::ticks::round_steps;
/// // Steps of 500 would be 14, steps of 1,000 are 7.
/// assert_eq!(round_steps(0.0, 6_500.0, 7.0), [0.0, 1_000.0, 2_000.0, 3_000.0, 4_000.0, 5_000.0, 6_000.0]);
/// ```
pub fn round_steps(least: f64, greatest: f64, most: f64) -> Vec<f64> {
    let Some(step) = round_step(least, greatest, most) else { return Vec::new() };
    let first = (least / step - 1e-9).ceil();
    let count = ((greatest / step + 1e-9).floor() - first).clamp(-1.0, 1_000.0);
    (0..=1_000).map(f64::from).take_while(|at| *at <= count).map(|at| (first + at) * step + 0.0).collect()
}

/// The round step that gives at most `most` values between two ends.
pub fn round_step(least: f64, greatest: f64, most: f64) -> Option<f64> {
    let span = greatest - least;
    if !(span > 0.0 && span.is_finite() && most >= 1.0) {
        return None;
    }
    let power = 10.0_f64.powf((span / most).log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|times| times * power).find(|step| span / step <= most * (1.0 + 1e-9))?;
    (step > 0.0 && step.is_finite()).then_some(step)
}

/// How many decimals a step needs to be written without loss, at most six.
///
/// ```
/// use layshaft::chart::ticks::decimals;
/// assert_eq!([0.25, 0.5, 20.0].map(decimals), [2, 1, 0]);
/// ```
pub fn decimals(step: f64) -> usize {
    (0..6)
        .find(|digits: &i32| {
            let scaled = step * 10.0_f64.powi(*digits);
            (scaled - scaled.round()).abs() < 1e-6 * scaled.abs()
        })
        .unwrap_or(6)
        .unsigned_abs() as usize
}

/// Round ratios for an axis of equal percentage steps: steps finer than a factor of ten, thinned until neighbours stand `gap` apart.
///
/// `place` gives a ratio's position in pixels.
pub fn ratio_steps(least: f64, greatest: f64, gap: f64, place: impl Fn(f64) -> f64) -> Vec<f64> {
    const FINENESS: [&[f64]; 4] = [
        &[1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0],
        &[1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0],
        &[1.0, 1.5, 2.0, 3.0, 5.0],
        &[1.0],
    ];
    if !(least > 0.0 && greatest > least && greatest.is_finite()) {
        return Vec::new();
    }
    let from = least.log10().floor().clamp(-300.0, 300.0);
    let decades: Vec<f64> = (0..40).map(|up| 10.0_f64.powf(from + f64::from(up))).take_while(|decade| *decade <= greatest).collect();
    let steps = |table: &[f64]| -> Vec<f64> {
        let all = decades.iter().flat_map(|decade| table.iter().map(move |step| step * decade));
        all.filter(|ratio| (least..=greatest).contains(ratio)).collect()
    };
    let roomy = |ratios: &Vec<f64>| ratios.windows(2).all(|two| matches!(two, [a, b] if (place(*a) - place(*b)).abs() >= gap));
    FINENESS.iter().map(|table| steps(table)).find(roomy).unwrap_or_default()
}
