//! The shop's own rows beside the built-in tables: one text in which each table begins with the names of its columns.

use super::TableError;
use super::read::{Kind, Texts};
use super::table::Table;
use crate::spreadsheet;

/// How many lines are read.
const MOST_LINES: usize = 2_000;

/// What a shop begins with: the names of the columns, and one row of each table that is not read as long as `# example` stands before it.
pub const EXAMPLE: &str = "\
# Take “# example ” off a row and make it yours. Lines that begin with # are not read.
symptom;under;said;asks;never;branch;implies
# example own-hums;noise and shaking;hums in top on a steady throttle;load since;;noise;
test;cost;ask;yes;no
# example own-level;0;Car level, plug out: does oil run out?;it is filled too high;the level is right
cause;name;reach;symptoms;fits;against;shows;together;measure
# example own-long-plug;level plug of another box, set too high;1;leak-breather:3 own-hums:1;oil;slowly;own-level=yes;plug and filler;
";

/// The built-in tables with the shop's own rows behind theirs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnRows {
    /// All rows; the built-in ones keep their places.
    pub table: Table,
    /// How many of them are the shop's own.
    pub taken: usize,
    /// What cannot be used of the text, by its lines.
    pub problems: Vec<TableError>,
}

impl OwnRows {
    /// Reads a shop's text. What cannot be used is left out and said.
    ///
    /// ```
    /// use layshaft::faults::OwnRows;
    /// let head = "cause;name;reach;symptoms;fits;against;shows;together;measure";
    /// let own = OwnRows::read(&format!("{head}\nown-plug;level plug too high;1;leak-breather:3;oil;;;;\nown-none;of nothing;1;;;;;;"));
    /// assert_eq!((own.taken, own.problems.len()), (1, 1));
    /// assert_eq!(own.problems[0].line(), Some(3));
    /// ```
    pub fn read(text: &str) -> Self {
        let mut table = Table::built_in().clone();
        let (built_in, mut problems) = (table.rows(), Vec::new());
        for (kind, text) in parts(text, &mut problems) {
            table.add(kind, &text, true, &mut problems);
        }
        crate::order::by_key(&mut problems, TableError::line);
        Self { taken: table.rows() - built_in, table, problems }
    }
}

/// A text cut at its head lines, in the order of the tables; each part keeps the numbers of its lines.
fn parts(text: &str, problems: &mut Vec<TableError>) -> Vec<(Kind, String)> {
    let mut parts: Vec<(Kind, String)> = Vec::new();
    let mut is_under: Option<bool> = None;
    for (at, line) in text.trim_start_matches('\u{feff}').lines().enumerate() {
        if at == MOST_LINES {
            problems.push(TableError::TooMany(MOST_LINES));
            break;
        }
        let line = line.trim();
        match head_of(line) {
            Some((kind, true)) => {
                parts.push((kind, "\n".repeat(at) + line + "\n"));
                is_under = Some(true);
            }
            Some((kind, false)) => {
                problems.push(TableError::Head { line: at + 1, head: kind.head() });
                is_under = Some(false);
            }
            None => {
                let is_read = !line.is_empty() && !line.starts_with('#') && !line.starts_with("\"#") && !line.starts_with("sep=");
                if is_read && is_under.is_none() {
                    problems.push(TableError::NoHead(at + 1));
                    is_under = Some(false);
                }
                if let Some((_, part)) = parts.last_mut().filter(|_| is_under == Some(true)) {
                    part.push_str(if is_read { line } else { "" });
                    part.push('\n');
                }
            }
        }
    }
    crate::order::by_key(&mut parts, |(kind, _)| *kind);
    parts
}

/// The table whose head line this is, and whether it names that table's columns.
fn head_of(line: &str) -> Option<(Kind, bool)> {
    let file = spreadsheet::Table::of(line)?;
    let cells: Vec<String> = file.cells(line)?.into_iter().map(|cell| cell.to_lowercase()).collect();
    Kind::ALL.into_iter().find_map(|kind| {
        let head: Vec<&str> = kind.head().split(';').collect();
        (cells.first().map(String::as_str) == head.first().copied()).then(|| (kind, cells == head))
    })
}

/// What is built in, as one text of the same shape.
pub fn built_in() -> String {
    let Texts { symptoms, conditions, tests, causes } = Texts::BUILT_IN;
    [symptoms, conditions, tests, causes].join("\n")
}

/// A shop's text with the rows of another that it does not have yet.
///
/// ```
/// use layshaft::faults::own::joined;
/// assert_eq!(joined("test;cost;ask;yes;no\na;0;A?;b;c", "test;cost;ask;yes;no\na;0;A?;b;c"), "test;cost;ask;yes;no\na;0;A?;b;c");
/// ```
pub fn joined(ours: &str, theirs: &str) -> String {
    let (added, new) = added(ours, theirs);
    match (new, ours.trim().is_empty()) {
        (0, false) => ours.to_owned(),
        (_, true) => theirs.to_owned(),
        (_, false) => format!("{}\n{}", ours.trim_end(), added.join("\n")),
    }
}

/// How many rows of another text a shop's text does not have yet.
pub fn new_rows(ours: &str, theirs: &str) -> usize {
    added(ours, theirs).1
}

/// The lines of another text that are new, the head lines above them with them, and how many of them are rows.
fn added<'a>(ours: &str, theirs: &'a str) -> (Vec<&'a str>, usize) {
    let here: std::collections::BTreeSet<&str> = ours.lines().map(str::trim).collect();
    let is_row = |line: &str| !line.trim().is_empty() && !line.trim().starts_with('#') && head_of(line.trim()).is_none();
    let (mut lines, mut head, mut rows) = (Vec::new(), None, 0);
    for line in theirs.lines() {
        if head_of(line.trim()).is_some() {
            head = Some(line);
        } else if is_row(line) && !here.contains(line.trim()) {
            lines.extend(head.take());
            lines.push(line);
            rows += 1;
        }
    }
    (lines, rows)
}
