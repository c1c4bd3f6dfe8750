//! Places in a row of samples or bins, and the real numbers between them.

/// The place nearest to a number; below nothing the first.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "rounded and kept above nothing; beyond the row nothing is found"
)]
pub(crate) fn near(value: f64) -> usize {
    value.round().max(0.0) as usize
}

/// The place below a number.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "cut down and kept above nothing; beyond the row nothing is found"
)]
pub(crate) fn below(value: f64) -> usize {
    value.max(0.0) as usize
}

/// A place or a count as a number.
#[expect(clippy::cast_precision_loss, reason = "rows are far shorter than 2^53")]
pub(crate) fn real(place: usize) -> f64 {
    place as f64
}

/// The value at a place; nothing beyond the row.
pub(crate) fn at(row: &[f64], place: usize) -> f64 {
    row.get(place).copied().unwrap_or(0.0)
}

/// The value between two places, on the straight line; nothing beyond the row.
pub(crate) fn between(row: &[f64], place: f64) -> f64 {
    let low = below(place);
    let share = place - real(low);
    at(row, low) * (1.0 - share) + at(row, low + 1) * share
}

/// The middle value; nothing of an empty row.
pub(crate) fn median(values: &mut [f64]) -> f64 {
    let middle = values.len() / 2;
    if values.is_empty() {
        return 0.0;
    }
    let (_, value, _) = values.select_nth_unstable_by(middle, f64::total_cmp);
    *value
}

/// The power of two nearest to a number, by ratio, and no greater than the largest within `most`.
pub(crate) fn power_of_two(wanted: f64, most: f64) -> usize {
    let exponent = wanted.max(2.0).log2().round().min(most.max(2.0).log2().floor());
    near(exponent.exp2())
}
