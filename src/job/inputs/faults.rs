//! What is said of a fault, what was tried, and what was measured of worn parts; [`crate::faults`] knows what the words stand for.

use super::{Kind, Row, no_unit, notation};
use crate::job::document::document;

document! {
    /// The texts about a fault. Whatever is blank is left out of a file.
    pub struct Faults, FaultsField of faults {}
    left out while blank {
        /// Symptoms and conditions by their names, a semicolon between them.
        said: String, Said: notation("faults-said", "what it does, and when", no_unit).like("jumps-out; g3; overrun");
        /// The tests, one a line, with what they gave.
        tried: String, Tried: Row::new("faults-tried", "tests, one a line; got yes or got no stands behind a bar", Kind::Lines);
        /// Worn parts on the bench, one a line, with what was measured.
        worn: String, Worn: Row::new("faults-worn", "worn parts, one a line; got and a reading stand behind a bar", Kind::Lines);
    }
}
