//! What usually hangs on the input beside the gears, by size: the clutch plate and the input shaft.

use super::inertia::disc;
use crate::units::common::millimetres;
use crate::units::{Length, MomentOfInertia};

/// Where both come from; to be shown beside them.
pub const SOURCE: &str = "usual values by size, from memory, no published source read: weigh the plate, or type the inertia";

/// The outer diameter of a clutch plate where none is given, 200 mm: usual of a car of 1.5 to 2 litres (from memory).
pub fn usual_diameter() -> Length {
    millimetres(200.0)
}

/// The inertia of a clutch plate with facings, springs and hub: 0.0034 kg·m² at 200 mm, growing with the fourth power of the diameter.
///
/// Model: two facings of 3.2 mm and 2,000 kg/m³ from 0.65 to 1 of the radius with 0.7 mm of steel between, J = m (R² + r²) / 2, which is
/// 0.0024 kg·m² at 200 mm, and 0.6 kg of hub and spring plates inside 60 mm, 0.001 kg·m²; thickness is the same for every size, the hub
/// grows with it. All sizes from memory, no published source read.
///
/// ```
/// use layshaft::toothload::synchroniser::clutch::plate;
/// use layshaft::units::{common::millimetres, show, unit};
/// // 0.0034 × 1.2⁴ = 0.0034 × 2.0736
/// assert_eq!(show(&plate(millimetres(240.0)), &unit::KG_M2, 5), "0.00705 kg·m²");
/// ```
pub fn plate(diameter: Length) -> MomentOfInertia {
    let size = (diameter / usual_diameter()).value;
    MomentOfInertia::new::<uom::si::moment_of_inertia::kilogram_square_meter>(0.0034 * size.powi(4))
}

/// The inertia of an input shaft without its gear: a steel bar of 25 mm and 250 mm (from memory), J = ρ π l d⁴ / 32.
pub fn input_shaft() -> MomentOfInertia {
    disc(millimetres(25.0), millimetres(250.0))
}
