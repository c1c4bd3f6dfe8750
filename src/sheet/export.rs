//! The sheet's figures for other programs: JSON for scripts, CSV for spreadsheets. The same rows as on the page.

use super::{Figure, Piece, Place, Row, Section, Sheet};
use crate::job::{Choice, Field, InputId, InputProblem, Job};
use crate::problem::Severity;
use crate::spreadsheet;
use serde_json::{Map, Value, json};

/// Every figure of a job's sheet: one object a setup and one for the bench, cautions beside them; and the answers in words.
pub fn figures(job: &Job, sheet: &Sheet) -> Value {
    let setups: Vec<Value> = job
        .setups
        .iter()
        .enumerate()
        .map(|(column, setup)| {
            let rows = std::iter::once(&sheet.short).chain(rows(sheet, Place::Compare));
            let figures = values(rows, column);
            let cautions = cautions(sheet, Some(column));
            json!({ "letter": Job::letter(column).to_string(), "name": setup.name, "figures": figures, "cautions": cautions })
        })
        .collect();
    let bench = json!({ "figures": values(rows(sheet, Place::Bench), 0), "cautions": cautions(sheet, None) });
    let said = sheet.sections.iter().filter(|section| !section.answer.is_empty());
    let answers: Map<String, Value> = said.map(|section| (section.id.to_owned(), json!(section.answer.plain()))).collect();
    json!({ "title": job.title, "setups": setups, "bench": bench, "answers": answers })
}

/// What is wrong with one input, for scripts: where it stands, how grave it is, and the sentence.
pub fn problem(job: &Job, problem: &InputProblem) -> Value {
    let setup = match problem.field {
        InputId::Text(Field::Setup(id, _)) | InputId::Choice(Choice::Setup(id, _)) => {
            job.setups.iter().position(|setup| setup.id == id).map(|column| Job::letter(column).to_string())
        }
        _ => None,
    };
    let field = match problem.field {
        InputId::Text(field) => field.path(),
        InputId::Choice(choice) => choice.slug(),
    };
    let is_grave = problem.severity == Severity::Stop;
    json!({ "setup": setup, "field": field, "leaves_no_value": is_grave, "says": problem.sentence() })
}

/// The figures of one column by their keys.
fn values<'a>(rows: impl Iterator<Item = &'a Row>, column: usize) -> Map<String, Value> {
    let pieces = rows.filter_map(|row| row.cells.get(column)).flat_map(super::Cell::pieces);
    pieces.filter_map(as_figure).map(|figure| (figure.key.clone(), json!(figure.value))).collect()
}

fn cautions(sheet: &Sheet, column: Option<usize>) -> Vec<&str> {
    let all = sheet.sections.iter().flat_map(Section::cautions);
    all.filter(|(at, _, _)| *at == column).map(|(_, _, verdict)| verdict.text.as_str()).collect()
}

/// The sheet as a table: a line a row, a column a setup, each cell as it is read; the bench in a column of its own where it has rows.
pub fn csv(job: &Job, sheet: &Sheet) -> String {
    let has_bench = rows(sheet, Place::Bench).next().is_some();
    let names = job.setups.iter().map(|setup| setup.name.clone());
    let head = ["section", "row"].into_iter().map(str::to_owned).chain(names).chain(has_bench.then(|| "bench".to_owned()));
    let mut table: Vec<Vec<String>> = vec![head.collect()];
    for section in &sheet.sections {
        let blank = if section.place == Place::Bench { job.setups.len() } else { 0 };
        for row in &section.rows {
            let cells = std::iter::repeat_n(String::new(), blank).chain(row.cells.iter().map(cell_text));
            let last = (has_bench && section.place == Place::Compare).then(String::new);
            table.push([section.title.clone(), row.label.clone()].into_iter().chain(cells).chain(last).collect());
        }
    }
    spreadsheet::write(table)
}

fn rows(sheet: &Sheet, place: Place) -> impl Iterator<Item = &Row> {
    sheet.sections.iter().filter(move |section| section.place == place).flat_map(|section| &section.rows)
}

fn as_figure(piece: &Piece) -> Option<&Figure> {
    match piece {
        Piece::Figure(figure) => Some(figure),
        _ => None,
    }
}

/// A cell as one text, lines parted by a semicolon.
///
/// ```
/// use layshaft::sheet::{Cell, Figure, Piece, export::cell_text};
/// use layshaft::units::unit;
/// let speed = Figure::quantity("gear_1.at_shift", &unit::MPH.of(47.2), &unit::MPH, 1);
/// let cell = Cell::line([speed.into(), Piece::words("in 1st")]).and([Piece::caution("past the limit")]);
/// assert_eq!(cell_text(&cell), "47.2 mph in 1st; past the limit");
/// ```
pub fn cell_text(cell: &super::Cell) -> String {
    let line = |pieces: &Vec<Piece>| pieces.iter().map(piece_text).collect::<Vec<_>>().join(" ");
    let typed = cell.entries.iter().map(|entry| entry.text.clone()).filter(|text| !text.is_empty());
    cell.lines.iter().map(line).chain(typed).collect::<Vec<_>>().join("; ")
}

fn piece_text(piece: &Piece) -> String {
    match piece {
        Piece::Figure(figure) => figure.text(),
        Piece::Words(text) | Piece::Open(_, text) | Piece::Absent(text) | Piece::Needed(text) => text.clone(),
        Piece::Verdict(verdict) => verdict.text.clone(),
    }
}
