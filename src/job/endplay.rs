//! What is typed about end play: a stack of measured parts, the play wanted, what is left in the kit of shims.
//!
//! [`super::inputs::endplay`] is its table.

use super::choice::{CaseMaterial, Chosen};
use super::document::document;
use crate::fits::ShimsGo;
use crate::units::Typed;

document! {
    /// The texts about end play, and what is chosen. Whatever is blank is left out of a file.
    pub struct EndPlay {}
    left out while blank {
        /// The stack, a part a line.
        pub stack: Typed,
        /// The range of play wanted; preload with a minus.
        pub wanted: Typed,
        /// The shims that are left.
        pub kit: Typed,
        /// The play read once assembled, at one or several places.
        pub assembled: Typed,
        /// What the case is made of; blank for aluminium.
        pub case: Chosen<CaseMaterial>,
        /// Where the shims stand; blank for inside the stack.
        pub shims_go: Chosen<ShimsGo>,
    }
}
