//! The sheet's figures for other programs: JSON for scripts, CSV for spreadsheets. The same rows as on the page.

use super::{Figure, Piece, Row, Sheet};
use crate::job::Job;
use crate::spreadsheet;
use serde_json::{Map, Value, json};

/// Every figure of a job's sheet, one object a setup; cautions beside them.
pub fn figures(job: &Job, sheet: &Sheet) -> Value {
    let setups: Vec<Value> = job
        .setups
        .iter()
        .enumerate()
        .map(|(column, setup)| {
            let mut values = Map::new();
            for figure in std::iter::once(&sheet.short)
                .chain(rows(sheet))
                .filter_map(|row| row.cells.get(column))
                .flat_map(super::Cell::pieces)
                .filter_map(as_figure)
            {
                values.insert(figure.key.clone(), json!(figure.value));
            }
            let cautions: Vec<&str> = sheet
                .sections
                .iter()
                .flat_map(super::Section::cautions)
                .filter(|(at, _, _)| *at == column)
                .map(|(_, _, verdict)| verdict.text.as_str())
                .collect();
            json!({ "letter": Job::letter(column).to_string(), "name": setup.name, "figures": values, "cautions": cautions })
        })
        .collect();
    json!({ "title": job.title, "setups": setups })
}

/// The sheet as a table: a line a row, a column a setup, each cell as it is read.
pub fn csv(job: &Job, sheet: &Sheet) -> String {
    let mut table =
        vec![["section".to_owned(), "row".to_owned()].into_iter().chain(job.setups.iter().map(|setup| setup.name.clone())).collect()];
    for section in &sheet.sections {
        for row in &section.rows {
            let head = [section.title.clone(), row.label.clone()];
            table.push(head.into_iter().chain(row.cells.iter().map(cell_text)).collect::<Vec<_>>());
        }
    }
    spreadsheet::write(table)
}

fn rows(sheet: &Sheet) -> impl Iterator<Item = &Row> {
    sheet.sections.iter().flat_map(|section| &section.rows)
}

fn as_figure(piece: &Piece) -> Option<&Figure> {
    match piece {
        Piece::Figure(figure) => Some(figure),
        _ => None,
    }
}

/// A cell as one text, lines parted by a semicolon.
pub fn cell_text(cell: &super::Cell) -> String {
    let line = |pieces: &Vec<Piece>| pieces.iter().map(piece_text).collect::<Vec<_>>().join(" ");
    let typed = cell.entries.iter().map(|entry| entry.text.clone()).filter(|text| !text.is_empty());
    cell.lines.iter().map(line).chain(typed).collect::<Vec<_>>().join("; ")
}

fn piece_text(piece: &Piece) -> String {
    match piece {
        Piece::Figure(figure) => figure.text(),
        Piece::Words(text) | Piece::Absent(text) => text.clone(),
        Piece::Verdict(verdict) => verdict.text.clone(),
    }
}
