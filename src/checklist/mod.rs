//! A list of steps as text, a line a step: what is to be done, whether it is, what was read, what is wanted, who did it and when.
//!
//! A line reads as it would be written: `[x] Cluster end play | want 0.002 to 0.006 in | got 0.004 in; 0.005 in | by JB | on 28 Nov 2026`.
//! What stands behind a bar and begins with no such word is a note. A line that ends in a colon is a heading.
//!
//! [`edit`] ticks a step and puts a reading into it, [`range`] judges a reading by what is wanted. What the steps are about is not here.

pub mod edit;
pub mod error;
pub mod range;

pub use error::ChecklistError;
pub use range::{Amount, Range};

/// What stands between the parts of a line.
const BAR: char = '|';
/// What a part begins with.
const WANT: &str = "want";
const GOT: &str = "got";
const BY: &str = "by";
const ON: &str = "on";
const NOTE: &str = "note";
const PHOTOGRAPHS: &str = "photographs of";

/// A line of a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Line {
    /// Nothing.
    Blank,
    /// What the steps below it are about.
    Heading(String),
    /// Something to be done.
    Step(Step),
}

/// Something to be done. Texts are as typed, blanks included, so that nothing moves under whoever types.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Step {
    /// Whether it is ticked.
    pub is_done: bool,
    /// What is to be done.
    pub what: String,
    /// The range wanted of what is read; blank where nothing is read, or no range is known.
    pub wanted: String,
    /// What was read, the last reading last.
    pub readings: Vec<String>,
    /// Whether something is to be read.
    pub is_read: bool,
    /// Who ticked it.
    pub by: String,
    /// When.
    pub on: String,
    /// Anything worth keeping.
    pub note: String,
    /// The words under which photographs of it are kept, where they are not its own: it was reworded since.
    pub photographs: String,
}

/// The lines of a list.
///
/// ```
/// use layshaft::checklist::{Line, lines};
/// let lines = lines("Cluster:\n[x] end play | want 0.002 to 0.006 in | got 0.004 in; 0.005 in");
/// let Some(Line::Step(step)) = lines.get(1) else { return };
/// assert_eq!((step.is_done, step.what.as_str(), step.wanted.as_str()), (true, "end play", "0.002 to 0.006 in"));
/// assert_eq!(step.readings, ["0.004 in", "0.005 in"]);
/// ```
pub fn lines(text: &str) -> Vec<Line> {
    text.split('\n').map(Line::read).collect()
}

/// How many steps of a list are not ticked.
pub fn open(text: &str) -> usize {
    lines(text).iter().filter(|line| matches!(line, Line::Step(step) if !step.is_done)).count()
}

impl Line {
    /// What a line says.
    pub fn read(line: &str) -> Self {
        let bare = line.trim();
        if bare.is_empty() {
            return Self::Blank;
        }
        match bare.strip_suffix(':') {
            Some(heading) if !bare.contains(BAR) && !bare.starts_with('[') => Self::Heading(heading.to_owned()),
            _ => Self::Step(Step::read(line)),
        }
    }
}

impl Step {
    fn read(line: &str) -> Self {
        let (is_done, line) = mark(line);
        let mut step = Self { is_done, ..Self::default() };
        let last = line.matches(BAR).count();
        for (at, part) in line.split(BAR).enumerate() {
            // Of the blanks around a bar one is the bar's.
            let part = if at == 0 { part } else { part.strip_prefix(' ').unwrap_or(part) };
            let part = if at == last { part } else { part.strip_suffix(' ').unwrap_or(part) };
            if at == 0 { part.clone_into(&mut step.what) } else { step.take(part) }
        }
        step
    }

    fn take(&mut self, part: &str) {
        if let Some(wanted) = behind(part, WANT) {
            wanted.clone_into(&mut self.wanted);
            self.is_read = true;
        } else if let Some(got) = behind(part, GOT) {
            self.readings = got.split(';').enumerate().map(|(at, one)| spaced(at, one).to_owned()).collect();
            self.is_read = true;
        } else if let Some(by) = behind(part, BY) {
            by.clone_into(&mut self.by);
        } else if let Some(on) = behind(part, ON) {
            on.clone_into(&mut self.on);
        } else if let Some(photographs) = behind(part, PHOTOGRAPHS) {
            photographs.clone_into(&mut self.photographs);
        } else {
            let note = behind(part, NOTE).unwrap_or(part);
            if !self.note.is_empty() && !note.is_empty() {
                self.note.push_str("; ");
            }
            self.note.push_str(note);
        }
    }

    /// The step as a line.
    pub fn written(&self) -> String {
        let mut line = format!("[{}] {}", if self.is_done { 'x' } else { ' ' }, self.what);
        let readings = self.readings.join("; ");
        let has_readings = self.readings.iter().any(|one| !one.is_empty());
        let says_read = has_readings || (self.is_read && self.wanted.is_empty());
        let parts = [
            (WANT, self.wanted.as_str(), !self.wanted.is_empty()),
            (GOT, readings.as_str(), says_read),
            (BY, self.by.as_str(), !self.by.is_empty()),
            (ON, self.on.as_str(), !self.on.is_empty()),
            (NOTE, self.note.as_str(), !self.note.is_empty()),
            (PHOTOGRAPHS, self.photographs.as_str(), !self.photographs.is_empty()),
        ];
        for (word, text, _) in parts.into_iter().filter(|(_, _, is_there)| *is_there) {
            line.extend([" | ", word, " ", text]);
        }
        line
    }

    /// The words under which photographs of it are kept.
    pub fn photographed(&self) -> &str {
        if self.photographs.trim().is_empty() { self.what.trim() } else { self.photographs.trim() }
    }

    /// The last reading that was taken.
    pub fn last_reading(&self) -> Option<&str> {
        self.readings.iter().map(|one| one.trim()).rfind(|one| !one.is_empty())
    }
}

/// Whether a line is ticked, and what stands behind its mark.
fn mark(line: &str) -> (bool, &str) {
    let start = line.trim_start();
    for (mark, is_done) in [("[x]", true), ("[X]", true), ("[✓]", true), ("✓", true), ("[ ]", false), ("[]", false)] {
        if let Some(rest) = start.strip_prefix(mark) {
            return (is_done, rest.strip_prefix(' ').unwrap_or(rest));
        }
    }
    (false, start)
}

/// What stands behind a word that a part begins with, without the blank between them.
fn behind<'a>(part: &'a str, word: &str) -> Option<&'a str> {
    let rest = part.strip_prefix(word)?;
    if rest.is_empty() { Some(rest) } else { rest.strip_prefix(' ') }
}

/// A reading without the blank behind the semicolon before it.
fn spaced(at: usize, reading: &str) -> &str {
    if at == 0 { reading } else { reading.strip_prefix(' ').unwrap_or(reading) }
}
