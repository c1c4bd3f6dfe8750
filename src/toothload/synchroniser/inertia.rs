//! What turns with the input while the clutch is open: given, or estimated from the gears as steel discs.

use std::f64::consts::PI;

use crate::gearing::Gearbox;
use crate::gearing::geometry::Cut;
use crate::gearing::part::Part;
use crate::gearing::speeds::{Arrangement, Selected, Turning};
use crate::gearing::teeth::{Ratio, Teeth, decimal};
use crate::units::{Length, MassDensity, MomentOfInertia};

/// The density of steel, 7 850 kg/m³ (handbook value for carbon steel, 0.283 to 0.284 lb/in³).
pub const STEEL_KG_PER_M3: f64 = 7_850.0;

/// The inertia that a synchroniser works against, told at the input.
#[derive(Clone, Debug, PartialEq)]
pub struct Reflected {
    /// All of it, at the input's speed.
    pub at_input: MomentOfInertia,
    /// Whether it is an estimate.
    pub is_estimate: bool,
    /// What of an estimate is clutch plate and input shaft.
    pub beside_gears: MomentOfInertia,
    /// The gears it was added up from; empty where it was given.
    pub rows: Vec<Row>,
}

/// One gear's part in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// The gear.
    pub part: Part,
    /// The count, which gives its diameter.
    pub teeth: Teeth,
    /// Its own inertia as a disc.
    pub own: MomentOfInertia,
    /// Its turns for one of the input.
    pub turns: Ratio,
    /// Its inertia told at the input: own · turns².
    pub at_input: MomentOfInertia,
}

impl Reflected {
    /// An inertia that was measured or looked up.
    pub fn given(at_input: MomentOfInertia) -> Self {
        Self { at_input, is_estimate: false, beside_gears: MomentOfInertia::default(), rows: Vec::new() }
    }

    /// An estimate: every gear that turns with the input in neutral as a solid steel disc of its pitch diameter and the face width,
    /// J = ρ π b d⁴ / 32, reduced by its speed squared; and what hangs on the input beside them, clutch plate and shaft.
    ///
    /// Shafts and hubs are left out, bores are not taken off; the two errors oppose each other. Common practice, no published source.
    pub fn estimated(gearbox: &Gearbox, arrangement: &Arrangement, cut: &Cut, face_width: Length, beside_gears: MomentOfInertia) -> Self {
        Self::estimated_by(gearbox, arrangement, |_| *cut, face_width, beside_gears)
    }

    /// As [`Reflected::estimated`], where the pairs are not all cut alike.
    pub fn estimated_by(
        gearbox: &Gearbox,
        arrangement: &Arrangement,
        cut: impl Fn(Part) -> Cut,
        face_width: Length,
        beside_gears: MomentOfInertia,
    ) -> Self {
        let rows: Vec<Row> = Turning::new(gearbox, arrangement, Selected::Neutral)
            .map(|turning| turning.parts)
            .unwrap_or_default()
            .into_iter()
            .filter(|turns| turns.speed.of_output == Ratio::from_integer(0) && turns.speed.of_input != Ratio::from_integer(0))
            .filter_map(|turns| {
                let (teeth, share) = (turns.teeth?, decimal(turns.speed.of_input));
                let own = disc(cut(turns.part).reference_diameter(teeth), face_width);
                Some(Row { part: turns.part, teeth, own, turns: turns.speed.of_input, at_input: own * (share * share) })
            })
            .collect();
        let at_input = rows.iter().fold(beside_gears, |sum, row| sum + row.at_input);
        Self { at_input, is_estimate: true, beside_gears, rows }
    }
}

/// The inertia of a solid steel disc, J = ρ π b d⁴ / 32.
///
/// ```
/// use layshaft::toothload::synchroniser::inertia::disc;
/// use layshaft::units::{common::millimetres, show, unit};
/// // 7,850 × π × 0.02 × 0.1⁴ ÷ 32
/// assert_eq!(show(&disc(millimetres(100.0), millimetres(20.0)), &unit::KG_M2, 5), "0.00154 kg·m²");
/// ```
pub fn disc(diameter: Length, width: Length) -> MomentOfInertia {
    let density = MassDensity::new::<uom::si::mass_density::kilogram_per_cubic_meter>(STEEL_KG_PER_M3);
    let kg_m2 = density.value * PI * width.value * diameter.value.powi(4) / 32.0;
    MomentOfInertia::new::<uom::si::moment_of_inertia::kilogram_square_meter>(kg_m2)
}
