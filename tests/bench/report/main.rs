//! Report.
fn main() {}
