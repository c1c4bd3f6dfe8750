//! The inputs of a fault: what is said of it, and what was tried.

use super::{Kind, Row, inputs, notation};
use crate::job::Faults;

inputs! {
    /// The texts about a fault.
    FaultsField of faults: Faults;

    /// Symptoms and conditions.
    Said at said: notation("faults-said", "what it does, and when", super::no_unit).like("jumps-out; g3; overrun");
    /// The tests, with what they gave.
    Tried at tried: Row::new("faults-tried", "tests, one a line; got yes or got no stands behind a bar", Kind::Lines);
    /// Worn parts, with what was measured.
    Worn at worn: Row::new("faults-worn", "worn parts, one a line; got and a reading stand behind a bar", Kind::Lines);
}
