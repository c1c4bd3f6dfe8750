//! A tyre size on the shelf, its designation as typed.

use serde::{Deserialize, Serialize};

use super::entry::{Entry, Kind, kept};
use super::line;
use super::table::Row;
use crate::problem::Problem;
use crate::tyre::{self, Tyre, TyreError};
use crate::units::System;

pub(super) const COLUMNS: &[&str] = &["id", "designation", "note", "in_stock"];

/// A tyre size.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct TyreEntry {
    /// The id, which stays when the entry is edited.
    pub id: String,
    /// What stands on the sidewall, such as `185/70R14`, as typed.
    pub designation: String,
    /// What tells it apart from another of the same size, or a word on its use.
    pub note: String,
    /// Whether it is on the shelf.
    pub in_stock: bool,
    /// Whether it is the shop's own, not built in.
    #[serde(skip)]
    pub own: bool,
}

impl TyreEntry {
    /// The tyre this text tells.
    ///
    /// # Errors
    /// When it is neither a size nor a measurement.
    pub fn tyre(&self) -> Result<Tyre, TyreError> {
        tyre::read(&self.designation, System::default())
    }
}

impl Entry for TyreEntry {
    const KIND: Kind = Kind::Tyres;
    const NAMED: bool = false;
    const KEY: &'static [&'static str] = &["designation", "note"];

    kept!(in_stock, note);

    fn cells(&self) -> Vec<String> {
        vec![self.id.clone(), self.designation.clone(), self.note.clone(), line::yes_or_no(self.in_stock)]
    }

    fn from_row(row: &Row) -> Result<Self, Vec<Problem>> {
        let mut problems = row.too_long();
        let in_stock = row.in_stock(&mut problems);
        let tyre = Self { id: row.text("id"), designation: row.text("designation"), note: row.text("note"), in_stock, own: false };
        problems.extend(tyre.problems());
        if problems.is_empty() { Ok(tyre) } else { Err(problems) }
    }

    fn problems(&self) -> Vec<Problem> {
        self.tyre().err().map(|why| Problem::stop("designation", &why)).into_iter().collect()
    }

    fn built_in() -> &'static [Self] {
        super::built_in::tyres()
    }
}
