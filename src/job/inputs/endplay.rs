//! What is typed about end play: a stack of measured parts, the play wanted, what is left in the kit of shims.

use super::{Kind, Row, length_unit, notation};
use crate::fits::ShimsGo;
use crate::job::choice::{CaseMaterial, Chosen};
use crate::job::document::document;
use crate::units::Typed;

document! {
    /// The texts about end play, and what is chosen. Whatever is blank is left out of a file.
    pub struct EndPlay, EndPlayField of endplay {}
    left out while blank {
        /// The stack, a part a line.
        stack: Typed, Stack: Row::new("endplay-stack", "the stack, a part a line; a minus before what is taken off", Kind::Lines)
            .like("case depth 112.40 ±0.02 mm\n- cluster 105.91 ±0.02 mm\n- thrust washer 3.05 mm x2");
        /// The range of play wanted; preload with a minus.
        wanted: Typed, Wanted: notation("endplay-wanted", "end play wanted", length_unit)
            .like("0.002 to 0.006 in");
        /// The shims that are left.
        kit: Typed, Kit: notation("endplay-kit", "shims left", length_unit)
            .like("0.10 mm x3, 0.15, 0.20 x2");
        /// The play read once assembled, at one or several places.
        assembled: Typed, Assembled: notation("endplay-assembled", "read once assembled, three places", length_unit)
            .like("0.004 0.0045 0.004");
        /// What the case is made of; blank for aluminium.
        case: Chosen<CaseMaterial>;
        /// Where the shims stand; blank for inside the stack.
        shims_go: Chosen<ShimsGo>;
    }
}
