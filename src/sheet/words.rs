//! The trade's words, US or UK, in one table.
//!
//! Everything is written once in the project's own words; what a reader sees goes through [`Words::say`], which puts the reader's
//! word for each. Longer phrases stand before the words they hold.

use super::{Cell, Filled, Piece, Row, Sheet, Working};

/// Whose words are used.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Words {
    /// As in the United States.
    #[default]
    Us,
    /// As in Great Britain.
    Uk,
}

/// The project's word, the US one, the UK one.
pub const TABLE: &[(&str, &str, &str)] = &[
    ("ring and pinion", "ring and pinion", "crown wheel and pinion"),
    ("ring, pinion", "ring, pinion", "crown wheel, pinion"),
    ("input shaft", "input shaft", "first motion shaft"),
    ("input pair", "input pair", "first motion pair"),
    ("blocker ring", "blocker ring", "baulk ring"),
    ("cluster", "cluster", "laygear"),
    ("profile shift", "profile shift", "profile shift"),
    ("profile shifts", "profile shifts", "profile shifts"),
    ("double-clutch", "double-clutch", "double-declutch"),
    ("upshift drop", "upshift drop", "drop on the upward change"),
    ("upshift", "upshift", "upward change"),
    ("upshifts", "upshifts", "upward changes"),
    ("downshift", "downshift", "downward change"),
    ("downshifts", "downshifts", "downward changes"),
    ("shift", "shift", "change"),
    ("shifts", "shifts", "changes"),
    ("shifted", "shifted", "changed"),
    ("shifting", "shifting", "changing"),
    ("driveshaft", "driveshaft", "propshaft"),
    ("tyre", "tire", "tyre"),
    ("tyres", "tires", "tyres"),
    ("synchroniser", "synchronizer", "synchroniser"),
    ("synchronisers", "synchronizers", "synchronisers"),
    ("synchronise", "synchronize", "synchronise"),
    ("synchronised", "synchronized", "synchronised"),
    ("centre", "center", "centre"),
    ("catalogue", "catalog", "catalogue"),
    ("aluminium", "aluminum", "aluminium"),
    ("colour", "color", "colour"),
    ("metre", "meter", "metre"),
    ("metres", "meters", "metres"),
    ("odometer", "odometer", "mileometer"),
];

impl Words {
    /// The words a browser language asks for: US for `en-US`, UK for everything else.
    pub fn of_language(tag: &str) -> Self {
        if tag.to_ascii_lowercase().starts_with("en-us") { Self::Us } else { Self::Uk }
    }

    /// A text in the reader's words; what stands between “ and ” was typed and stays as it is.
    ///
    /// ```
    /// use layshaft::sheet::Words;
    /// assert_eq!(Words::Us.say("Tyre and driveshaft"), "Tire and driveshaft");
    /// assert_eq!(Words::Uk.say("Tyre and driveshaft"), "Tyre and propshaft");
    /// assert_eq!(Words::Us.say("the tyre of “Tyre hall”"), "the tire of “Tyre hall”");
    /// ```
    pub fn say(self, text: &str) -> String {
        self.reworded(text).unwrap_or_else(|| text.to_owned())
    }

    /// Puts a text into the reader's words.
    fn put_into(self, text: &mut String) {
        if let Some(said) = self.reworded(text) {
            *text = said;
        }
    }

    /// A text in the reader's words; none where it is in them already.
    fn reworded(self, text: &str) -> Option<String> {
        let mut said = None;
        let mut passed = 0;
        let mut copied = 0;
        let (mut inside_word, mut quoted) = (false, false);
        for (at, c) in text.char_indices() {
            if at < passed {
                continue;
            }
            quoted = (quoted || c == '“') && c != '”';
            let found = if inside_word || quoted { None } else { self.replacement(c, text.get(at..).unwrap_or("")) };
            inside_word = found.is_some() || c.is_alphanumeric();
            let Some((taken, word)) = found else { continue };
            passed = at + taken;
            if text.get(at..passed) != Some(&word) {
                let said = said.get_or_insert_with(|| String::with_capacity(text.len() + 16));
                said.push_str(text.get(copied..at).unwrap_or(""));
                said.push_str(&word);
                copied = passed;
            }
        }
        if let Some(said) = &mut said {
            said.push_str(text.get(copied..).unwrap_or(""));
        }
        said
    }

    /// The reader's word for what `text` begins with, and how many bytes it stands for; `first` is its first letter.
    ///
    /// A whole sheet is said at every keystroke, so most of the table is passed over by its first letters alone.
    fn replacement(self, first: char, text: &str) -> Option<(usize, String)> {
        let first = u8::try_from(first).ok()?.to_ascii_lowercase();
        TABLE.iter().filter(|(ours, ..)| ours.as_bytes().first() == Some(&first)).find_map(|(ours, us, uk)| {
            let head = text.get(..ours.len())?;
            let ends = text.get(ours.len()..)?.chars().next().is_none_or(|next| !next.is_alphanumeric());
            let word = if self == Self::Us { us } else { uk };
            (ends && head.eq_ignore_ascii_case(ours)).then(|| (ours.len(), like(head, word)))
        })
    }
}

/// The word with a capital where `head` has one.
fn like(head: &str, word: &str) -> String {
    if head.starts_with(char::is_uppercase) { crate::problem::capital(word) } else { word.to_owned() }
}

/// Puts the reader's words into every text of a sheet. A working is put into them when it is asked for: see [`Working::said`].
pub fn localise(sheet: &mut Sheet, words: Words) {
    row(&mut sheet.short, words);
    for section in &mut sheet.sections {
        words.put_into(&mut section.title);
        words.put_into(&mut section.ask);
        section.answer = std::mem::take(&mut section.answer).map(|text| words.say(text));
        for rest in &mut section.rests {
            for text in [&mut rest.label, &mut rest.value, &mut rest.source] {
                words.put_into(text);
            }
        }
        section.rows.iter_mut().for_each(|each| row(each, words));
    }
}

/// Puts the reader's words into a row.
pub fn row(row: &mut Row, words: Words) {
    words.put_into(&mut row.label);
    row.cells.iter_mut().for_each(|each| cell(each, words));
}

fn cell(cell: &mut Cell, words: Words) {
    for entry in &mut cell.entries {
        words.put_into(&mut entry.label);
    }
    for piece in cell.lines.iter_mut().flatten() {
        match piece {
            Piece::Words(text) | Piece::Open(_, text) | Piece::Absent(text) | Piece::Needed(text) => words.put_into(text),
            Piece::Verdict(verdict) => words.put_into(&mut verdict.text),
            Piece::Figure(_) => {}
        }
    }
}

impl Working {
    /// The working in the reader's words.
    #[must_use]
    pub fn said(mut self, words: Words) -> Self {
        let mut filled = self.filled();
        for text in [&mut self.formula, &mut filled, &mut self.source] {
            words.put_into(text);
        }
        Self { filled: Filled::Said(filled), ..self }
    }
}
