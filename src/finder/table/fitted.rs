//! The gear set and the final drive of the car among those of the catalogue: marked where the catalogue has them, added where it has not.

use super::{AxleRow, SetRow, Table};
use crate::finder::inputs::{FittedSet, Given};

/// Two ratios nearer than this are one: exact fractions come out of another order of operations no further apart.
const SAME: f64 = 1e-9;

impl Table {
    /// The table with what the car has. Whatever has its ratios need not be bought: it counts as in stock.
    #[must_use]
    pub fn with_fitted(&self, given: &Given) -> Self {
        let mut table = self.clone();
        if let Some(fitted) = &given.fitted_set {
            table.fit_set(fitted, given);
        }
        if let Some(ratio) = given.fitted_axle {
            table.fit_axle(ratio);
        }
        table.sort();
        table
    }

    fn fit_set(&mut self, fitted: &FittedSet, given: &Given) {
        let mut is_known = false;
        for set in self.sets.iter_mut().filter(|set| fitted.is(set)) {
            (set.is_fitted, set.in_stock, is_known) = (true, true, true);
        }
        if !is_known {
            self.sets.push(SetRow {
                place: None,
                ratios: fitted.ratios.clone(),
                meshes: fitted.meshes.clone(),
                layout: fitted.layout,
                in_stock: true,
                housing: self.pairs.len().saturating_sub(1),
                case: given.case.clone().unwrap_or_default(),
                is_fitted: true,
            });
        }
    }

    fn fit_axle(&mut self, ratio: f64) {
        let mut is_known = false;
        for axle in self.axles.iter_mut().filter(|axle| (axle.ratio - ratio).abs() < SAME) {
            (axle.is_fitted, axle.in_stock, is_known) = (true, true, true);
        }
        if !is_known {
            self.axles.push(AxleRow { place: None, ratio, in_stock: true, is_fitted: true });
        }
    }
}

impl FittedSet {
    /// Whether a gear set of the catalogue has the same gears in the same layout.
    fn is(&self, set: &SetRow) -> bool {
        self.is_alike(&set.ratios, set.layout)
    }

    /// Whether a box has the same ratios in the same layout.
    pub fn is_alike(&self, ratios: &[f64], layout: crate::gearing::Layout) -> bool {
        self.layout == layout
            && self.ratios.len() == ratios.len()
            && self.ratios.iter().zip(ratios).all(|(own, other)| (own - other).abs() < SAME)
    }
}
