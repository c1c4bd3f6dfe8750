//! Catalogue: what is on the shop's shelf; its entries stand in the section itself.

use super::Section;

/// The section, without rows: the catalogue is not a setup's.
pub(super) fn section() -> Section {
    let ask = "What is on the shelf, and what is your own?".into();
    Section { id: "catalogue", title: "Catalogue".into(), ask, rows: Vec::new() }
}
