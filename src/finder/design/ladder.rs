//! Ladders to be aimed at: geometric, progressive, or ratio by ratio.

/// What the ratios of a gear set should be.
#[derive(Clone, Debug, PartialEq)]
pub enum Target {
    /// Ratio by ratio, lowest gear first.
    Ratios(Vec<f64>),
    /// From first to top with steps that widen downwards by `growth` each; 1 makes every step alike.
    ///
    /// Model: `φ₁ = ((i₁/i_z)/φ₂^((z−1)(z−2)/2))^(1/(z−1))`; `i_n = i_z·φ₁^(z−n)·φ₂^((z−n)(z−n−1)/2)`, φ₂ the growth.
    /// Source: geometric, Liu, Hybrid Electric Vehicle System Modeling and Control, 2nd ed., eq. 10.22, and Heisler, Advanced Vehicle
    /// Technology, 2nd ed., sec. 3.8.3; progressive, Naunheimer et al., Automotive Transmissions, ch. 4 (from memory), algebra verified.
    Steps {
        /// The ratio of first.
        first: f64,
        /// The ratio of top.
        top: f64,
        /// How many gears, 1 to 8.
        gears: u8,
        /// Each step over the next one above it.
        growth: f64,
    },
}

impl Target {
    /// The ratios, lowest gear first.
    ///
    /// ```
    /// use layshaft::finder::design::Target;
    /// let shown = |growth, first| {
    ///     let ratios = Target::Steps { first, top: 1.0, gears: 4, growth }.ratios();
    ///     ratios.iter().map(|ratio| format!("{ratio:.3}")).collect::<Vec<_>>()
    /// };
    /// // Steps of ∛8 = 2 each; and steps of 1.5, 1.5 × 1.1 and 1.5 × 1.1² from the top down.
    /// assert_eq!(shown(1.0, 8.0), ["8.000", "4.000", "2.000", "1.000"]);
    /// assert_eq!(shown(1.1, 1.5_f64.powi(3) * 1.331), ["4.492", "2.475", "1.500", "1.000"]);
    /// ```
    pub fn ratios(&self) -> Vec<f64> {
        match *self {
            Self::Ratios(ref ratios) => ratios.clone(),
            Self::Steps { first, gears: 0 | 1, .. } => vec![first],
            Self::Steps { first, top, gears, growth } => {
                let last = f64::from(gears) - 1.0;
                let base = (first / top / growth.powf(last * (last - 1.0) / 2.0)).powf(1.0 / last);
                let ratio = |below: f64| top * base.powf(below) * growth.powf(below * (below - 1.0) / 2.0);
                (0..gears).rev().map(|below| ratio(f64::from(below))).collect()
            }
        }
    }
}
