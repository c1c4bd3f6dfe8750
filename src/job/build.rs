//! What is typed about the build: the order of work with what was read at each step, the parts it takes, and who does it.
//!
//! [`super::inputs::build`] is its table, [`crate::checklist`] reads and changes the steps, [`super::parts`] reads the parts.

use super::document::document;

document! {
    /// The texts about the build. Whatever is blank is left out of a file.
    pub struct Build {}
    left out while blank {
        /// The steps, one a line.
        pub steps: String,
        /// The parts, one a line.
        pub parts: String,
        /// Who ticks them.
        pub by: String,
    }
}
