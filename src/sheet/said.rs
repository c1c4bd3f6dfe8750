//! A sentence about setups: the answer of a question in words, each setup by its letter.
//!
//! In the text a setup stands as `[A]`; the page draws it in the setup's colour, everything else reads the bare letter. Words that open
//! another question stand as `[driveline:1,212 mm]`; the page makes them a link, everything else reads the bare words.

use crate::problem::listed;

/// One or more sentences in which setups are named.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Said(String);

/// A piece of a sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bit<'a> {
    /// Plain words.
    Words(&'a str),
    /// A setup, by its column counted from 0.
    Setup(usize),
    /// Words that open a question.
    Open {
        /// The question's id.
        question: &'a str,
        /// The words.
        words: &'a str,
    },
}

impl Said {
    /// Sentences as one text.
    pub fn new(text: impl Into<String>) -> Self {
        Self(text.into())
    }

    /// Sentences one behind the other; what says nothing is left out.
    pub fn of(sentences: impl IntoIterator<Item = String>) -> Self {
        Self(sentences.into_iter().filter(|sentence| !sentence.trim().is_empty()).collect::<Vec<_>>().join(" "))
    }

    /// Whether nothing is said.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The text with its marks.
    pub fn marked(&self) -> &str {
        &self.0
    }

    /// The text as it is read: setups as bare letters.
    ///
    /// ```
    /// use layshaft::sheet::Said;
    /// assert_eq!(Said::new("[A] is 4 mph faster than [C].").plain(), "A is 4 mph faster than C.");
    /// assert_eq!(Said::new("[B]: [driveline:38 mm shorter].").plain(), "B: 38 mm shorter.");
    /// ```
    pub fn plain(&self) -> String {
        let letter = |bit: Bit<'_>| match bit {
            Bit::Words(words) | Bit::Open { words, .. } => words.to_owned(),
            Bit::Setup(column) => crate::job::Job::letter(column).to_string(),
        };
        self.bits().into_iter().map(letter).collect()
    }

    /// The pieces, in order.
    pub fn bits(&self) -> Vec<Bit<'_>> {
        let mut bits = Vec::new();
        let mut rest = self.0.as_str();
        while let Some((before, bit, after)) = next_mark(rest) {
            if !before.is_empty() {
                bits.push(Bit::Words(before));
            }
            bits.push(bit);
            rest = after;
        }
        if !rest.is_empty() {
            bits.push(Bit::Words(rest));
        }
        bits
    }

    /// The same in other words.
    #[must_use]
    pub fn map(self, say: impl FnOnce(&str) -> String) -> Self {
        Self(say(&self.0))
    }
}

/// A setup in a sentence, by its column counted from 0: `[A]`.
pub fn mark(column: usize) -> String {
    format!("[{}]", crate::job::Job::letter(column))
}

/// Words in a sentence that open the question of an id.
pub fn open(question: &str, words: &str) -> String {
    format!("[{question}:{words}]")
}

/// Setups in a sentence: `[A]`, `[A] and [B]`, `[A], [B] and [C]`.
///
/// ```
/// use layshaft::sheet::said::marks;
/// assert_eq!(marks(&[0, 1, 3]), "[A], [B] and [D]");
/// ```
pub fn marks(columns: &[usize]) -> String {
    listed(&columns.iter().map(|column| mark(*column)).collect::<Vec<_>>())
}

/// What stands before the next mark, what it marks, and what stands behind it.
fn next_mark(text: &str) -> Option<(&str, Bit<'_>, &str)> {
    text.match_indices('[').find_map(|(at, _)| {
        let (before, behind) = (text.get(..at)?, text.get(at + 1..)?);
        let (inside, after) = behind.split_once(']')?;
        Some((before, marked(inside)?, after))
    })
}

/// What stands in a mark: the letter of a setup, or a question's id and words.
fn marked(inside: &str) -> Option<Bit<'_>> {
    if let Some((question, words)) = inside.split_once(':') {
        let is_id = !question.is_empty() && question.bytes().all(|b| b.is_ascii_lowercase());
        return (is_id && !words.is_empty()).then_some(Bit::Open { question, words });
    }
    let mut chars = inside.chars();
    let letter = chars.next().filter(|_| chars.next().is_none())?;
    ('A'..='F').position(|each| each == letter).map(Bit::Setup)
}
