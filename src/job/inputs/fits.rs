//! What is typed about a fit: a bore and a shaft as measured, and what is wanted between them.

use super::{Bounds, length_unit, notation, quantity, whole};
use crate::job::choice::{BoreMaterial, Chosen, ShaftMaterial};
use crate::job::document::document;
use crate::units::Typed;
use crate::units::limits;

/// How many needles stand in a row.
const NEEDLES: Bounds = (5.0, 200.0);

document! {
    /// The texts about a fit, and what is chosen. Whatever is blank is left out of a file.
    pub struct Fits, FitsField of fits {}
    left out while blank {
        /// Readings of the bore.
        bore: Typed, Bore: notation("fits-bore", "bore: readings across, a semicolon before the next depth", length_unit)
            .like("1.0002 1.0004; 1.0003 1.0005");
        /// Readings of the shaft.
        shaft: Typed, Shaft: notation("fits-shaft", "shaft, read the same way", length_unit)
            .like("0.9992 0.9993; 0.9990 0.9992");
        /// The fit wanted: a code of ISO 286 or a range of clearance.
        wanted: Typed, Wanted: notation("fits-wanted", "fit or clearance wanted", length_unit)
            .like("H7/g6");
        /// The size that a code is looked up at; blank for the nearest that is usual.
        nominal: Typed, Nominal: quantity("fits-nominal", "nominal size", &limits::FIT_DIAMETER);
        /// The outside of the part around the bore.
        outside: Typed, Outside: quantity("fits-outside", "outside of the part around it", &limits::FIT_OUTSIDE);
        /// How long the seat is.
        seat_length: Typed, SeatLength: quantity("fits-seat-length", "length of the seat", &limits::SEAT_LENGTH);
        /// Across one loose needle, where needles run between the two.
        needle: Typed, Needle: quantity("fits-needle", "across one needle", &limits::NEEDLE).like("5/32");
        /// How many of them stand in a row.
        needles: String, Needles: whole("fits-needles", "needles in a row", NEEDLES);
        /// What the bore is in; blank for aluminium.
        bore_material: Chosen<BoreMaterial>;
        /// What the shaft is made of; blank for steel.
        shaft_material: Chosen<ShaftMaterial>;
    }
}
