//! `cargo xtask bench`: every measurement in one run, written as one table to `target/bench.md`.
//!
//! What is measured, and beside what, stands in `tests/bench`; it is a package of its own, so that the tests do without what it needs.

use anyhow::Result;

use crate::shell;

/// Runs the benchmarks of this machine, then everything else, and writes the table.
///
/// # Errors
/// A build fails, or one of the programs it is measured beside cannot be had.
pub fn run() -> Result<()> {
    shell::run(shell::cargo("bench").args(["--package", "measurements", "--bench", "native"]))?;
    shell::run(shell::cargo("run").args(["--quiet", "--package", "measurements", "--bin", "report"]))
}
