//! What is said of a fault, what was tried, and what was measured of worn parts.
//!
//! [`super::inputs::faults`] is its table; [`crate::faults`] knows what the words stand for.

use super::document::document;

document! {
    /// The texts about a fault. Whatever is blank is left out of a file.
    pub struct Faults {}
    left out while blank {
        /// Symptoms and conditions by their names, a semicolon between them.
        pub said: String,
        /// The tests, one a line, with what they gave.
        pub tried: String,
        /// Worn parts on the bench, one a line, with what was measured.
        pub worn: String,
    }
}
