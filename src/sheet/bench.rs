//! Bench: what lies there, and does it belong together? Its answers come from the catalogue and stand in the section itself.

use super::Section;

/// The section, without rows: the bench is not a setup's.
pub(super) fn section() -> Section {
    let ask = "What lies on the bench, and does it belong together?".into();
    Section { id: "bench", title: "Bench".into(), ask, rows: Vec::new() }
}
