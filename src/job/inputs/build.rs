//! The inputs of the build: its steps, and who does them.

use super::{Kind, Row, inputs, words};
use crate::job::Build;

inputs! {
    /// The texts about the build.
    BuildField of build: Build;

    /// The steps, one a line.
    Steps at steps: Row::new("build-steps", "the steps, one a line; want and got stand behind a bar", Kind::Lines)
        .like("Cluster end play | want 0.002 to 0.006 in");
    /// The parts, one a line.
    Parts at parts: Row::new("build-parts", "parts, one a line: how many, what, number: price of one", Kind::Lines)
        .like("2 x front bearing, B-205: 14.50 EUR");
    /// Who ticks them.
    By at by: words("build-by", "ticked by").like("your initials");
}
