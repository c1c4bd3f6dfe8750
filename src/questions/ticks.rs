//! Things that are there or not, as an input: pressed one by one, kept as their names in one text, a semicolon between them.

use super::Source;
use crate::job::JobField;

/// Things that are pressed.
#[derive(Clone, Copy, Debug)]
pub struct Ticks {
    /// Where their names are kept.
    pub field: JobField,
    /// What can be pressed, as far as it matters now.
    pub groups: fn(Source<'_>) -> Vec<TickGroup>,
}

impl PartialEq for Ticks {
    fn eq(&self, other: &Self) -> bool {
        self.field == other.field
    }
}

impl Eq for Ticks {}

/// Things that belong together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TickGroup {
    /// Its name, which tells it from the others.
    pub id: String,
    /// What stands above it.
    pub title: String,
    /// What stands in a list to choose from; empty where all are buttons.
    pub choose: &'static str,
    /// Whether one takes the place of another.
    pub is_one: bool,
    /// The things.
    pub ticks: Vec<Tick>,
}

/// A thing that is there or not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tick {
    /// Its name in the text.
    pub word: String,
    /// As it is read.
    pub says: String,
    /// What it stands under in a list.
    pub under: String,
    /// Whether it is there.
    pub is_on: bool,
}

/// The names in a text.
pub fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split([';', ',', '\n']).map(str::trim).filter(|word| !word.is_empty())
}

/// The text with a name in it, or without it where it was; `others` give place to it. Whatever else stands there stays.
///
/// ```
/// use layshaft::questions::ticks::pressed;
/// assert_eq!(pressed("jumps-out; cold", "hot", &["cold"]), "jumps-out; hot");
/// assert_eq!(pressed("jumps-out; hot", "hot", &["cold"]), "jumps-out");
/// ```
pub fn pressed(text: &str, word: &str, others: &[&str]) -> String {
    let was = words(text).any(|each| each == word);
    let stays = words(text).filter(|each| *each != word && (was || !others.contains(each)));
    stays.chain((!was).then_some(word)).collect::<Vec<_>>().join("; ")
}

impl TickGroup {
    /// The text with one of the group pressed.
    pub fn press(&self, text: &str, word: &str) -> String {
        let others: Vec<&str> = if self.is_one { self.ticks.iter().map(|tick| tick.word.as_str()).collect() } else { Vec::new() };
        pressed(text, word, &others)
    }
}
