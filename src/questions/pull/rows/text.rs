//! Close or wide as plain text, to be read out on the phone or sent: the rows of the sheet, setup under setup.

use crate::job::Job;
use crate::questions::pull::QUESTION;
use crate::sheet::export::cell_text;
use crate::sheet::{Row, Sheet};

/// The rows that are told: how they set off, how fast they are, where each shift lands, the cruise, and what is gained and given up.
const TOLD: [&str; 9] = ["launch", "clutch", "to-speed-", "plan", "distance-", "shift-", "in-band", "cruise", "against"];

/// The comparison as text; `None` with fewer than two setups, of which there is nothing to compare.
pub fn text(job: &Job, sheet: &Sheet) -> Option<String> {
    let section = sheet.sections.iter().find(|section| section.id == QUESTION.id).filter(|_| job.setups.len() > 1)?;
    let named = job.setups.iter().enumerate().map(|(column, setup)| format!("{}: {}", Job::letter(column), setup.name));
    let head = std::iter::once(job.title.clone()).chain(named).collect::<Vec<_>>().join("\n");
    let told = section.rows.iter().filter(|row| TOLD.iter().any(|key| row.key.starts_with(key))).map(row_text);
    Some(std::iter::once(head).chain(told).collect::<Vec<_>>().join("\n\n"))
}

/// A row's label, and under it every setup's answer behind its letter.
fn row_text(row: &Row) -> String {
    let cells = row.cells.iter().enumerate().map(|(column, cell)| format!("{}: {}", Job::letter(column), cell_text(cell)));
    std::iter::once(row.label.clone()).chain(cells).collect::<Vec<_>>().join("\n")
}
