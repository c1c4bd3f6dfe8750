//! The inputs of fits: a bore and a shaft as measured, what is wanted between them.

use super::{inputs, notation, quantity, whole};
use crate::job::Fits;
use crate::units::{Length, Measured, limits};

/// How many needles stand in a row.
const NEEDLES: super::Bounds = (5.0, 200.0);

inputs! {
    /// The texts about a fit.
    FitsField of fits: Fits;

    /// Readings of the bore.
    Bore at bore: notation("fits-bore", "bore: readings across, a semicolon before the next depth", |_, system| Some(Length::usual(system).symbol))
        .like("1.0002 1.0004; 1.0003 1.0005");
    /// Readings of the shaft.
    Shaft at shaft: notation("fits-shaft", "shaft, read the same way", |_, system| Some(Length::usual(system).symbol))
        .like("0.9992 0.9993; 0.9990 0.9992");
    /// The fit wanted.
    Wanted at wanted: notation("fits-wanted", "fit or clearance wanted", |_, system| Some(Length::usual(system).symbol)).like("H7/g6");
    /// The size that a code is looked up at.
    Nominal at nominal: quantity("fits-nominal", "nominal size", &limits::FIT_DIAMETER);
    /// The outside of the part around the bore.
    Outside at outside: quantity("fits-outside", "outside of the part around it", &limits::FIT_OUTSIDE);
    /// How long the seat is.
    SeatLength at seat_length: quantity("fits-seat-length", "length of the seat", &limits::SEAT_LENGTH);
    /// Across one loose needle.
    Needle at needle: quantity("fits-needle", "across one needle", &limits::NEEDLE).like("5/32");
    /// How many stand in a row.
    Needles at needles: whole("fits-needles", "needles in a row", NEEDLES);
}
