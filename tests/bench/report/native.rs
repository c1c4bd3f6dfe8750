//! What criterion measured on this machine, as it keeps it.

use std::collections::BTreeMap;

use anyhow::{Context, Result};
use serde_json::Value;
use xtask::shell;

/// Medians in seconds, by group and name.
pub(crate) type Native = BTreeMap<String, f64>;

/// Reads what the last benchmark kept.
pub(crate) fn read() -> Result<Native> {
    let folder = shell::target().join("criterion");
    let mut found = Native::new();
    for group in std::fs::read_dir(&folder).context("criterion has measured nothing yet: `cargo xtask bench` does both")?.flatten() {
        for bench in std::fs::read_dir(group.path()).into_iter().flatten().flatten() {
            let Ok(text) = std::fs::read_to_string(bench.path().join("new/estimates.json")) else { continue };
            let estimates: Value = serde_json::from_str(&text)?;
            let median =
                estimates.pointer("/median/point_estimate").and_then(Value::as_f64).context("criterion keeps its medians otherwise")?;
            let name = format!("{}/{}", group.file_name().to_string_lossy(), bench.file_name().to_string_lossy());
            found.insert(name, median * 1e-9);
        }
    }
    Ok(found)
}
