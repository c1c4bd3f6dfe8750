//! What the head of a column says: engine speed, torque or power, and in which unit.

use crate::units::{Measured, Power, Torque, Unit};

/// What a column holds.
#[derive(Clone, Copy, Debug)]
pub(super) enum Column {
    /// Engine speed in rpm.
    Speed,
    /// Torque, in a unit where the head names one.
    Torque(Option<&'static Unit<Torque>>),
    /// Power, in a unit where the head names one.
    Power(Option<&'static Unit<Power>>),
}

impl Column {
    fn alike(self, other: Self) -> bool {
        std::mem::discriminant(&self) == std::mem::discriminant(&other)
    }
}

const SPEED_WORDS: [&str; 9] = ["rpm", "rev/min", "r/min", "1/min", "min⁻¹", "min-1", "u/min", "revs", "n"];
const TORQUE_WORDS: [&str; 4] = ["torque", "drehmoment", "couple", "tq"];
const POWER_WORDS: [&str; 5] = ["power", "leistung", "puissance", "horsepower", "pwr"];

/// What one head says; `None` where it names nothing known here.
pub(super) fn column(head: &str) -> Option<Column> {
    let words = words(head);
    let torque = unit::<Torque>(&words);
    let power = unit::<Power>(&words);
    let says = |known: &[&str]| words.iter().any(|word| known.contains(&word.as_str()));
    if says(&TORQUE_WORDS) {
        Some(Column::Torque(torque))
    } else if says(&POWER_WORDS) {
        Some(Column::Power(power))
    } else if torque.is_some() {
        Some(Column::Torque(torque))
    } else if says(&SPEED_WORDS) || (words.iter().any(|word| word == "speed")) {
        Some(Column::Speed)
    } else {
        power.map(|unit| Column::Power(Some(unit)))
    }
}

/// The heads of columns in a line whose columns are parted by blanks: words are gathered until another quantity begins.
pub(super) fn gathered(line: &str) -> Vec<String> {
    let mut heads: Vec<String> = Vec::new();
    let words: Vec<&str> = line.split_whitespace().collect();
    for (at, word) in words.iter().copied().enumerate() {
        let known = heads.last().and_then(|head| column(head));
        // a unit may be two words: lb ft
        let pair = words.get(at + 1).map(|next| format!("{word} {next}"));
        let begins = match (known, column(word).or_else(|| column(&pair?))) {
            (Some(known), Some(next)) => !known.alike(next),
            _ => false,
        };
        match heads.last_mut() {
            Some(head) if !begins => {
                head.push(' ');
                head.push_str(word);
            }
            _ => heads.push(word.to_owned()),
        }
    }
    heads
}

/// The words of a head in lower case, without the signs around them.
fn words(head: &str) -> Vec<String> {
    head.split(|c: char| c.is_whitespace() || matches!(c, '(' | ')' | '[' | ']' | ',' | ':' | '_' | '"' | '@'))
        .map(|word| word.trim_matches('.').to_lowercase())
        .filter(|word| !word.is_empty())
        .collect()
}

/// The unit that a word, or two neighbouring ones, name.
fn unit<Q: Measured>(words: &[String]) -> Option<&'static Unit<Q>> {
    let dense = |text: &str| text.replace(['.', '·', '-', '*', '\u{22c5}'], "");
    let find = |text: &str| Q::units().iter().find(|unit| unit.spellings.contains(&text));
    let pairs = words.windows(2).map(|pair| dense(&pair.concat()));
    let singles = words.iter().map(|word| dense(word));
    pairs.chain(singles).find_map(|word| find(&word))
}
