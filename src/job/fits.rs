//! What is typed about a fit: a bore and a shaft as measured, and what is wanted between them.
//!
//! [`super::inputs::fits`] is its table.

use super::choice::{BoreMaterial, Chosen, ShaftMaterial};
use super::document::document;
use crate::units::Typed;

document! {
    /// The texts about a fit, and what is chosen. Whatever is blank is left out of a file.
    pub struct Fits {}
    left out while blank {
        /// Readings of the bore.
        pub bore: Typed,
        /// Readings of the shaft.
        pub shaft: Typed,
        /// The fit wanted: a code of ISO 286 or a range of clearance.
        pub wanted: Typed,
        /// The size that a code is looked up at; blank for the nearest that is usual.
        pub nominal: Typed,
        /// The outside of the part around the bore.
        pub outside: Typed,
        /// How long the seat is.
        pub seat_length: Typed,
        /// Across one loose needle, where needles run between the two.
        pub needle: Typed,
        /// How many of them stand in a row.
        pub needles: String,
        /// What the bore is in; blank for aluminium.
        pub bore_material: Chosen<BoreMaterial>,
        /// What the shaft is made of; blank for steel.
        pub shaft_material: Chosen<ShaftMaterial>,
    }
}
