//! A ratio known only as it was printed: `2.47`, with what its last digit leaves open.

use num_traits::Signed;

use super::read::decimal_ratio;
use super::teeth::{Ratio, decimal};
use crate::units::number;

/// A ratio as it was printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct PrintedRatio {
    /// The figure itself.
    pub value: Ratio,
    /// Its digits behind the point.
    pub decimals: u32,
}

impl PrintedRatio {
    /// One printed ratio, as [`decimal_ratio`] reads it; `None` outside 0.1 to 20 or beyond six decimals.
    pub fn read(text: &str) -> Option<Self> {
        decimal_ratio(text).map(|(value, decimals)| Self { value, decimals })
    }

    /// Half a unit in its last place.
    pub fn half_unit(&self) -> Ratio {
        Ratio::new(1, 2 * 10_i128.pow(self.decimals))
    }

    /// The least ratio that is printed so.
    pub fn least(&self) -> Ratio {
        self.value - self.half_unit()
    }

    /// The least ratio that is printed larger: a half is rounded up, as is the custom.
    pub fn below(&self) -> Ratio {
        self.value + self.half_unit()
    }

    /// By how much the ratio behind it may differ, as a share of it: half a unit in its last place.
    pub fn plus_minus(&self) -> f64 {
        decimal(self.half_unit() / self.value)
    }

    /// Whether a ratio, whatever its sign, is printed so.
    ///
    /// ```
    /// use layshaft::gearing::{PrintedRatio, Ratio};
    /// # fn example() -> Option<()> {
    /// let printed = PrintedRatio::read("2.47")?;
    /// assert_eq!(printed.least(), Ratio::new(2_465, 1_000));
    /// // 37/15 = 2.4667, 5/2 = 2.50
    /// assert!(printed.prints(Ratio::new(37, 15)) && !printed.prints(Ratio::new(5, 2)));
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn prints(&self, ratio: Ratio) -> bool {
        let size = ratio.abs();
        self.least() <= size && size < self.below()
    }

    /// Whether one ratio can be behind both figures.
    pub fn agrees_with(&self, other: &Self) -> bool {
        self.least() < other.below() && other.least() < self.below()
    }

    /// How far a ratio is from the figure, in halves of its last place: below 1 it is printed so.
    pub fn off(&self, ratio: Ratio) -> f64 {
        (decimal(ratio.abs() - self.value) / decimal(self.half_unit())).abs()
    }

    /// Whether it is exactly one: a direct gear, where input and output are in line.
    pub fn is_one(&self) -> bool {
        self.value == Ratio::from_integer(1)
    }

    /// It, written with as many decimals as it was printed with.
    pub fn shown(&self) -> String {
        number::show(decimal(self.value), usize::try_from(self.decimals).unwrap_or_default())
    }
}
