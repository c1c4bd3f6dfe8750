//! Ratios as they are printed and typed: `3.909`, `3,909`, `.67`, `3.909:1`.

use crate::gearing::printed::PrintedRatio;
use crate::gearing::teeth::Ratio;

/// The most digits behind the point of a plain ratio: a gear, four stages and a final drive of so many multiply without leaving the
/// exact range, (20 · 10⁵)⁶ < 2¹²⁷.
const MOST_DECIMALS: u32 = 5;

/// The ratio of a gear as printed, with one digit behind the point at least: a whole number tells no ratio.
pub(super) fn printed_ratio(text: &str) -> Option<PrintedRatio> {
    PrintedRatio::read(text).filter(|ratio| (1..=MOST_DECIMALS).contains(&ratio.decimals))
}

/// A decimal ratio that four stages and a final drive can be multiplied from.
pub(super) fn plain_ratio(text: &str) -> Option<Ratio> {
    decimal_ratio(text).filter(|(_, decimals)| *decimals <= MOST_DECIMALS).map(|(ratio, _)| ratio)
}

/// A decimal ratio from 0.1 to 20 as an exact fraction, and its digits behind the point, six at most: `3.909`, `3,909`, `.67`,
/// `3.909:1`, `3.909 : 1`.
///
/// ```
/// use layshaft::gearing::{Ratio, read::decimal_ratio};
/// assert_eq!(decimal_ratio(".67:1"), Some((Ratio::new(67, 100), 2)));
/// assert_eq!(decimal_ratio("3,909"), Some((Ratio::new(3_909, 1_000), 3)));
/// assert_eq!(decimal_ratio("25"), None);
/// ```
pub fn decimal_ratio(text: &str) -> Option<(Ratio, u32)> {
    let text = text.trim().replace(',', ".");
    let text = text.strip_suffix('1').and_then(|text| text.trim_end().strip_suffix(':')).unwrap_or(&text).trim_end();
    let (whole, behind) = text.split_once('.').unwrap_or((text, ""));
    if whole.len() > 2 || behind.len() > 6 || !whole.bytes().chain(behind.bytes()).all(|b| b.is_ascii_digit()) {
        return None;
    }
    let decimals = u32::try_from(behind.len()).ok()?;
    let ratio = Ratio::new(format!("{whole}{behind}").parse().ok()?, 10_i128.pow(decimals));
    (ratio >= Ratio::new(1, 10) && ratio <= Ratio::from_integer(20)).then_some((ratio, decimals))
}
