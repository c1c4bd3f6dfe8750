//! A sign on every door, and no room too large to see across.

use super::{Finding, Sources};

const MOST_LINES: usize = 400;

/// Every Rust file begins with `//!` and has no more than 400 lines.
pub(super) fn check(sources: &Sources) -> Vec<Finding> {
    let mut findings = Vec::new();
    for source in sources.all().iter().filter(|source| source.is("rs")) {
        if !source.text.starts_with("//!") {
            findings.push(Finding::new(source, 1, "begin the file with `//!`: what question it answers, what is not here, where next"));
        }
        let lines = source.text.lines().count();
        if lines > MOST_LINES {
            findings.push(Finding::new(source, lines, format!("{lines} lines; a file tells one story in at most {MOST_LINES}: split it")));
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::{Sources, check};

    #[test]
    fn finds_missing_signs_and_long_files() {
        let long = format!("//! Long.\n{}", "\n".repeat(400));
        let sources = Sources::of(&[("src/a.rs", "//! A sign."), ("src/b.rs", "use std::fmt;"), ("src/c.rs", &long)]);
        let places: Vec<String> = check(&sources).into_iter().map(|f| f.place).collect();
        assert_eq!(places, ["src/b.rs:1", "src/c.rs:401"]);
    }
}
