//! What the teeth, the bearings and the synchronisers of a gearbox have to bear.
//!
//! [`forces`]: the forces at a mesh. [`path`]: the torque through each mesh of the selected gear. [`reactions`]: what a shaft's two
//! bearings hold. [`strength`]: what root and flank bear. [`sliding`]: how fast flanks slide and what that costs. [`thrust`]: which way teeth
//! push along their shafts. [`along`]: where gears and bearings sit. [`bearing`]: how long bearings last. [`taper`]: two taper bearings
//! against each other. [`duty`]: how
//! a box is used. [`synchroniser`]: what each cone takes up at a shift.
//!
//! These figures plan; they do not certify. Dynamic factors, shock and deflection are left out, and a bearing or a gear that
//! someone's safety hangs on is for a qualified engineer and the rules of the place.

pub mod along;
pub mod bearing;
pub mod duty;
pub mod forces;
pub mod path;
pub mod reactions;
pub mod sliding;
pub mod strength;
pub mod synchroniser;
pub mod taper;
pub mod thrust;

pub use forces::ToothForces;
