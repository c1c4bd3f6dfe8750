//! A final drive on the shelf, its teeth or ratio as typed.

use serde::{Deserialize, Serialize};

use super::entry::{Entry, Kind, kept};
use super::line;
use super::table::Row;
use crate::gearing::{FinalDrive, read};
use crate::problem::Problem;

pub(super) const COLUMNS: &[&str] = &["id", "drive", "note", "in_stock"];

/// A final drive.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Axle {
    /// The id, which stays when the axle is edited.
    pub id: String,
    /// Ring over pinion such as `43/11`, or a plain ratio, as typed.
    pub drive: String,
    /// What tells it apart from another of the same teeth, or a word on its use.
    pub note: String,
    /// Whether one is on the shelf.
    pub in_stock: bool,
    /// Whether it is the shop's own, not built in.
    #[serde(skip)]
    pub own: bool,
}

impl Axle {
    /// The final drive this text tells.
    ///
    /// # Errors
    /// When it is neither two tooth counts nor a ratio.
    pub fn final_drive(&self) -> Result<FinalDrive, read::GearTextError> {
        read::final_drive(&self.drive)
    }
}

impl Entry for Axle {
    const KIND: Kind = Kind::Axles;
    const NAMED: bool = false;
    const KEY: &'static [&'static str] = &["drive", "note"];

    kept!(in_stock, note);

    fn cells(&self) -> Vec<String> {
        vec![self.id.clone(), self.drive.clone(), self.note.clone(), line::yes_or_no(self.in_stock)]
    }

    fn from_row(row: &Row) -> Result<Self, Vec<Problem>> {
        let mut problems = row.too_long();
        let in_stock = row.in_stock(&mut problems);
        let axle = Self { id: row.text("id"), drive: row.text("drive"), note: row.text("note"), in_stock, own: false };
        problems.extend(axle.problems());
        if problems.is_empty() { Ok(axle) } else { Err(problems) }
    }

    fn problems(&self) -> Vec<Problem> {
        self.final_drive().err().map(|why| Problem::stop("drive", &why)).into_iter().collect()
    }

    fn built_in() -> &'static [Self] {
        super::built_in::axles()
    }
}
