//! What is typed about the build: the order of work with what was read at each step, the parts it takes, and who does it.
//!
//! [`crate::checklist`] reads and changes the steps, [`crate::job::parts`] reads the parts.

use super::{Kind, Row, words};
use crate::job::document::document;

document! {
    /// The texts about the build. Whatever is blank is left out of a file.
    pub struct Build, BuildField of build {}
    left out while blank {
        /// The steps, one a line.
        steps: String, Steps: Row::new("build-steps", "the steps, one a line; want and got stand behind a bar", Kind::Lines)
            .like("Cluster end play | want 0.002 to 0.006 in");
        /// The parts, one a line.
        parts: String, Parts: Row::new("build-parts", "parts, one a line: how many, what, number: price of one", Kind::Lines)
            .like("2 x front bearing, B-205: 14.50 EUR");
        /// Who ticks them.
        by: String, By: words("build-by", "ticked by").like("your initials");
    }
}
