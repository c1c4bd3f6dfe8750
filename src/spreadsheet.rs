//! Tables as text that a spreadsheet opens: written with a guard against formulas, read with the guard taken off.
//!
//! One row is one line, so that a broken line cannot swallow the next. What the columns mean is not here.

/// A table as comma-separated text (RFC 4180, lines ended by CR LF). Line breaks inside a cell become blanks.
///
/// ```
/// assert_eq!(layshaft::spreadsheet::write([["name", "note"], ["Close, quick", "=1+1"]]), "name,note\r\n\"Close, quick\",'=1+1\r\n");
/// ```
pub fn write<R>(rows: impl IntoIterator<Item = R>) -> String
where
    R: IntoIterator,
    R::Item: AsRef<str>,
{
    let mut writer = csv::WriterBuilder::new().flexible(true).terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    for row in rows {
        let cells = row.into_iter().map(|cell| guarded(one_line(cell.as_ref())));
        // What is written into memory can always be written.
        let _ = writer.write_record(cells.collect::<Vec<_>>());
    }
    writer.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
}

/// A text as one line of a file can hold it: without outer blanks and line breaks.
pub fn one_line(text: &str) -> String {
    text.trim().replace("\r\n", " ").replace(['\r', '\n'], " ")
}

/// What a line begins with that only shows how one is filled in: it is not read.
pub const EXAMPLE: &str = "# example";

/// A table being read: comma, semicolon or tab between the cells.
#[derive(Clone, Debug)]
pub struct Table<'a> {
    delimiter: u8,
    /// The first line that is neither blank nor a comment: the names of the columns.
    pub header: &'a str,
    /// The lines behind it that are neither blank nor an [`EXAMPLE`], each with its number in the text, counted from 1.
    pub lines: Vec<(usize, &'a str)>,
}

impl<'a> Table<'a> {
    /// The header and the lines of a text; nothing where it holds no line but blanks and comments.
    pub fn of(text: &'a str) -> Option<Self> {
        let mut lines = numbered(text.strip_prefix('\u{feff}').unwrap_or(text));
        let said = lines.clone().find_map(|(_, line)| line.strip_prefix("sep=")?.bytes().next().filter(|b| b",;\t".contains(b)));
        let is_comment = |line: &str| line.starts_with('#') || line.starts_with("\"#") || line.starts_with("sep=");
        let (_, header) = lines.find(|(_, line)| !line.trim().is_empty() && !is_comment(line))?;
        let is_example = |line: &str| line.strip_prefix('"').unwrap_or(line).starts_with(EXAMPLE);
        let lines = lines.filter(|(_, line)| !is_blank(line) && !is_example(line)).collect();
        Some(Self { delimiter: said.unwrap_or_else(|| likeliest_delimiter(header)), header, lines })
    }

    /// The cells of one line, without outer blanks and guard; nothing where a quotation mark is opened and not closed on it.
    pub fn cells(&self, line: &str) -> Option<Vec<String>> {
        let cell = |cell: &str| unguarded(cell.trim()).trim().to_owned();
        if !line.contains('"') {
            // Most lines: making a reader for each costs more than all the rest of reading a file.
            return Some(line.split(char::from(self.delimiter)).map(cell).collect());
        }
        if quote_stays_open(line, self.delimiter) {
            return None;
        }
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .delimiter(self.delimiter)
            .buffer_capacity(line.len() + 1)
            .from_reader(line.as_bytes());
        let mut record = csv::StringRecord::new();
        reader.read_record(&mut record).ok()?;
        Some(record.iter().map(cell).collect())
    }
}

/// The lines of a text, counted from 1, whichever way they end.
fn numbered(text: &str) -> impl Iterator<Item = (usize, &str)> + Clone {
    let end = if text.contains('\n') { '\n' } else { '\r' };
    text.split(end).map(|line| line.trim_end_matches('\r')).enumerate().map(|(at, line)| (at + 1, line))
}

/// Whether a spreadsheet left nothing but separators on the line.
fn is_blank(line: &str) -> bool {
    line.chars().all(|c| c.is_whitespace() || matches!(c, ',' | ';' | '"'))
}

fn likeliest_delimiter(header: &str) -> u8 {
    let count = |delimiter: u8| header.bytes().filter(|b| *b == delimiter).count();
    b",;\t".iter().copied().rev().max_by_key(|delimiter| count(*delimiter)).unwrap_or(b',')
}

/// Whether a cell begins with a quotation mark that this line does not close.
fn quote_stays_open(line: &str, delimiter: u8) -> bool {
    let (mut open, mut fresh) = (false, true);
    for byte in line.bytes() {
        match byte {
            b'"' if open || fresh => (open, fresh) = (!open, open),
            other => fresh = !open && other == delimiter,
        }
    }
    open
}

/// The cell with an apostrophe before what a spreadsheet would calculate; a plain number stays one.
///
/// A text with apostrophes of its own before such a sign gets one more, so that taking one off always gives the text back.
/// Common practice, no published source.
fn guarded(cell: String) -> String {
    if looks_like_formula(&cell) && !is_number(&cell) { format!("'{cell}") } else { cell }
}

/// The cell as it was before [`guarded`].
fn unguarded(cell: &str) -> &str {
    cell.strip_prefix('\'').filter(|_| looks_like_formula(cell)).unwrap_or(cell)
}

/// Whether a spreadsheet could take the text, its leading apostrophes and blanks set aside, for a formula.
fn looks_like_formula(text: &str) -> bool {
    let bare = text.trim_start_matches(|c: char| c == '\'' || c.is_whitespace());
    bare.starts_with(['=', '+', '-', '@', '＝', '＋', '－', '＠'])
}

/// A sign, digits and at most one point: `-0.25`.
fn is_number(text: &str) -> bool {
    let digits = text.strip_prefix(['-', '+']).unwrap_or(text);
    let (whole, behind) = digits.split_once('.').unwrap_or((digits, ""));
    !whole.is_empty() && [whole, behind].iter().all(|part| part.bytes().all(|b| b.is_ascii_digit()))
}
