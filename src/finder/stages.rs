//! Extra stages as numbers: what they make of the gears of any box, at rest and put in.

use crate::gearing::stage::MOST_SWITCHED;
use crate::gearing::teeth::decimal;
use crate::gearing::{GearNumber, Stage, UsedIn};

/// A stage that is switched while the car moves.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Switched {
    /// What putting it in multiplies a gear's ratio by.
    factor: f64,
    /// Meshes of it that carry the power at rest and put in.
    meshes: [u8; 2],
    used_in: UsedIn,
}

/// The extra stages that stay, whatever box stands before them; none by default.
#[derive(Clone, Debug, PartialEq)]
pub struct Stages {
    /// The ratio of all of them together at rest; 1 without any.
    pub at_rest: f64,
    /// Meshes of all of them that carry the power at rest.
    meshes: u8,
    switched: Vec<Switched>,
}

/// The steps of a box with its stages, the lowest first: what a run shifts through.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Steps {
    /// The ratio of each: that of the gear times what is put in.
    pub ratios: Vec<f64>,
    /// Meshes of box and stages that each passes through.
    pub meshes: Vec<u8>,
}

impl Default for Stages {
    fn default() -> Self {
        Self { at_rest: 1.0, meshes: 0, switched: Vec::new() }
    }
}

impl Stages {
    /// The stages of a setup. Those that are switched at a stand, as a transfer box is, stay at rest.
    pub fn of(stages: &[Stage]) -> Self {
        let switched = stages.iter().filter(|stage| stage.changes() && stage.shifts_on_the_move()).filter_map(|stage| {
            let meshes = [stage.meshes(false), stage.meshes(true)];
            Some(Switched { factor: decimal(stage.factor()?), meshes, used_in: stage.switch?.used_in })
        });
        Self {
            at_rest: stages.iter().map(|stage| decimal(stage.at_rest())).product(),
            meshes: stages.iter().map(|stage| stage.meshes(false)).fold(0, u8::saturating_add),
            switched: switched.take(MOST_SWITCHED).collect(),
        }
    }

    /// Stages that are always in, of one ratio together and without a mesh, for tests and measurements.
    pub fn fixed(ratio: f64) -> Self {
        Self { at_rest: ratio, ..Self::default() }
    }

    /// The steps of a box with these gears (ratios without sign, lowest gear first). Without a switched stage they are its gears, in their
    /// order.
    pub fn steps(&self, ratios: &[f64], meshes: &[u8]) -> Steps {
        let gears = GearNumber::lowest(ratios.len()).zip(ratios.iter().zip(meshes));
        let mut steps: Vec<(f64, u8)> = gears.flat_map(|(gear, (ratio, meshes))| self.of_gear(gear, *ratio, *meshes)).collect();
        if !self.switched.is_empty() {
            crate::order::by(&mut steps, |(a, _), (b, _)| b.total_cmp(a));
        }
        let (ratios, meshes) = steps.into_iter().unzip();
        Steps { ratios, meshes }
    }

    /// A gear with each of the stages at rest and in, alone and together.
    fn of_gear(&self, gear: GearNumber, ratio: f64, meshes: u8) -> Vec<(f64, u8)> {
        let mut steps = vec![(ratio, meshes.saturating_add(self.meshes))];
        for stage in self.switched.iter().filter(|stage| stage.used_in.contains(gear)) {
            let [at_rest, put_in] = stage.meshes;
            let with_it = |(ratio, meshes): &(f64, u8)| (ratio * stage.factor, meshes.saturating_sub(at_rest).saturating_add(put_in));
            let with_it: Vec<(f64, u8)> = steps.iter().map(with_it).collect();
            steps.extend(with_it);
        }
        steps
    }
}
