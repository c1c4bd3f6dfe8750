//! A line of a box cut into its items: counts, ratios, `direct`, each with the label before it.

use super::LineError;

/// What a label says of the item behind it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Label {
    /// A forward gear.
    Gear,
    /// The constant pair.
    Constant,
    /// Reverse.
    Reverse,
    /// Something else of the car: the axle.
    Other,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Item {
    pub(super) label: Option<Label>,
    /// The label as typed.
    said: String,
    /// As the reader of a gear takes it.
    pub(super) text: String,
}

impl Item {
    pub(super) fn said(&self) -> String {
        format!("{} {}", self.said, self.text).trim().to_owned()
    }
}

/// The items of a text, and whether bare counts were put together two by two.
pub(super) fn items(text: &str) -> Result<(Vec<Item>, bool), LineError> {
    let mut items: Vec<Item> = Vec::new();
    let (mut label, mut said) = (None, String::new());
    for word in words(text) {
        let (name, value) = parted(&word, items.len() + 1);
        if let Some(name) = name {
            label = label_of(&name).map_or(label, Some);
            format!("{said} {name}").trim().clone_into(&mut said);
        }
        if let Some(text) = value {
            items.push(Item { label: label.take(), said: std::mem::take(&mut said), text });
        }
    }
    if said.is_empty() { Ok(two_by_two(items)) } else { Err(LineError::NotUnderstood(said)) }
}

/// A word as a label, as a value, or as both (`1st:2.47`). `next` is the number of the gear that comes next, so that `2:` can name it.
fn parted(word: &str, next: usize) -> (Option<String>, Option<String>) {
    let is_number = |text: &str| text.trim_matches(['(', ')', '.']) == next.to_string();
    if let Some((name, value)) = word.split_once([':', '=', ')']).filter(|(name, _)| is_label(name) || is_number(name)) {
        let is_value = value.is_empty() || is_label(name) || value.contains(['.', '/', 'd']);
        if is_value && !(value == "1" && is_number(name)) {
            return (Some(name.to_owned()), Some(value.to_owned()).filter(|value| !value.is_empty()));
        }
    }
    let bare = word.trim_end_matches('.');
    if is_label(bare) || (bare.len() < word.len() && is_number(bare)) {
        (Some(bare.to_owned()), None)
    } else {
        (None, Some(word.trim_matches(['(', ')']).to_owned()))
    }
}

fn is_label(word: &str) -> bool {
    let begins = word.starts_with(|c: char| c.is_alphabetic());
    (begins && !matches!(word, "direct" | "dir" | "d")) || is_ordinal(word)
}

fn is_ordinal(word: &str) -> bool {
    let letters = word.trim_start_matches(|c: char| c.is_ascii_digit());
    letters.len() < word.len() && matches!(letters, "st" | "nd" | "rd" | "th")
}

/// What a label names; `None` for a word that only stands beside, such as the `gear` of `reverse gear`.
fn label_of(word: &str) -> Option<Label> {
    match word {
        "constant" | "input" | "output" | "primary" | "head" => Some(Label::Constant),
        "reverse" | "rev" | "r" => Some(Label::Reverse),
        "axle" | "final" | "diff" | "differential" | "fd" | "overdrive" | "od" => Some(Label::Other),
        "first" | "second" | "third" | "fourth" | "fifth" | "sixth" | "seventh" | "eighth" | "top" | "i" | "ii" | "iii" | "iv" | "v"
        | "vi" | "vii" | "viii" => Some(Label::Gear),
        word => is_ordinal(word).then_some(Label::Gear),
    }
}

/// The text in small letters, cut at blanks, semicolons, bars and commas; a comma between digits is a decimal one where neither point
/// nor slash stands anywhere. What belongs to one item, such as `24 / 29` or `2.47 : 1`, is put together again.
fn words(text: &str) -> Vec<String> {
    let lower = text.to_ascii_lowercase();
    let is_decimal_comma = !lower.contains(['.', '/']);
    let chars: Vec<char> = lower.chars().collect();
    let is_digit = |at: Option<usize>| at.and_then(|at| chars.get(at)).is_some_and(char::is_ascii_digit);
    let plain = |(at, c): (usize, &char)| match c {
        ',' if is_decimal_comma && is_digit(at.checked_sub(1)) && is_digit(at.checked_add(1)) => '.',
        ',' | ';' | '|' => ' ',
        '×' | '*' => 'x',
        '–' | '—' => '-',
        other => *other,
    };
    let plain: String = chars.iter().enumerate().map(plain).collect();
    let mut words: Vec<String> = Vec::new();
    for word in plain.split_whitespace() {
        match words.last_mut().filter(|last| belong_together(last, word)) {
            Some(last) => last.push_str(if matches!(word, "x" | "-") { "/" } else { word }),
            None => words.push(word.to_owned()),
        }
    }
    words
}

/// Whether a word goes on with the one before it: a mark between two counts, or the `: 1` behind a ratio.
fn belong_together(last: &str, word: &str) -> bool {
    let is_open = last.ends_with('/') && word.starts_with(|c: char| c.is_ascii_digit());
    let goes_on = last.ends_with(|c: char| c.is_ascii_digit()) && (word.starts_with('/') || matches!(word, "x" | "-"));
    let is_ratio = last.contains('.') && !last.contains('/');
    let is_to_one = is_ratio && (matches!(word, ":" | ":1") || (last.ends_with(':') && word == "1"));
    let is_colon_of_label = matches!(word, ":" | "=") && is_label(last);
    is_open || goes_on || is_to_one || is_colon_of_label
}

/// Bare counts in pairs, where the line has nothing else but direct gears: `24 29 36 17 31 22 direct`.
fn two_by_two(items: Vec<Item>) -> (Vec<Item>, bool) {
    let is_bare = |item: &Item| item.text.len() > 1 && item.text.bytes().all(|b| b.is_ascii_digit());
    let counts = items.iter().filter(|item| is_bare(item)).count();
    let others_are_direct = items.iter().filter(|item| !is_bare(item)).all(|item| matches!(item.text.as_str(), "direct" | "dir" | "d"));
    if counts < 4 || !counts.is_multiple_of(2) || !others_are_direct {
        return (items, false);
    }
    let mut paired: Vec<Item> = Vec::new();
    let mut open: Option<Item> = None;
    for item in items {
        match open.take() {
            Some(first) => paired.push(Item { text: format!("{}/{}", first.text, item.text), ..first }),
            None if is_bare(&item) => open = Some(item),
            None => paired.push(item),
        }
    }
    (paired, true)
}
