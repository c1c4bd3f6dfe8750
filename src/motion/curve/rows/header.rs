//! What the head of a column says: engine speed, road speed, torque, power or something else, in which unit, and measured where.

use super::MeasuredAt;
use crate::units::{Measured, Power, Torque, Unit, Velocity};

/// What a column holds.
#[derive(Clone, Copy, Debug)]
pub(super) enum Column {
    /// Engine speed in rpm.
    Engine,
    /// Engine speed in thousands of rpm.
    Thousands,
    /// A speed, of what is not said.
    Speed,
    /// Road speed, or the rollers' speed.
    Road,
    /// Torque, in a unit where the head names one.
    Torque(Option<&'static Unit<Torque>>),
    /// Power, in a unit where the head names one.
    Power(Option<&'static Unit<Power>>),
    /// Something no curve is made of: time, boost, mixture.
    Other,
}

impl Column {
    /// Whether two words can stand in one head.
    fn alike(self, other: Self) -> bool {
        let kind = |column: Self| match column {
            Self::Engine | Self::Thousands => 0,
            Self::Road => 1,
            Self::Torque(_) => 2,
            Self::Power(_) => 3,
            Self::Other => 4,
            Self::Speed => 5,
        };
        let (a, b) = (kind(self), kind(other));
        a == b || (a == 5 && b < 2) || (b == 5 && a < 2)
    }
}

const ENGINE_WORDS: [&str; 9] = ["rpm", "rev/min", "r/min", "1/min", "min⁻¹", "min-1", "u/min", "revs", "n"];
const THOUSANDS_WORDS: [&str; 6] = ["x1000", "×1000", "1000rpm", "krpm", "1000/min", "rpm/1000"];
const ROAD_WORDS: [&str; 4] = ["road", "vehicle", "roller", "drum"];
const SPEED_WORDS: [&str; 4] = ["speed", "drehzahl", "régime", "geschwindigkeit"];
const TORQUE_WORDS: [&str; 4] = ["torque", "drehmoment", "couple", "tq"];
const POWER_WORDS: [&str; 5] = ["power", "leistung", "puissance", "horsepower", "pwr"];
const OTHER_WORDS: [&str; 12] =
    ["time", "zeit", "temp", "temperature", "boost", "afr", "lambda", "gear", "distance", "map", "throttle", "fuel"];
const WHEEL_WORDS: [&str; 6] = ["wheel", "wheels", "hub", "hubs", "atw", "rad"];
const ENGINE_SIDE_WORDS: [&str; 6] = ["flywheel", "crank", "crankshaft", "engine", "motor", "bhp"];
/// Units with the wheels in front of them, as chassis dynamometers print them.
const AT_WHEELS: [(&str, &str); 9] = [
    ("whp", "hp"),
    ("rwhp", "hp"),
    ("fwhp", "hp"),
    ("awhp", "hp"),
    ("wkw", "kw"),
    ("wps", "ps"),
    ("wtq", "torque"),
    ("rwtq", "torque"),
    ("wnm", "nm"),
];

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
    } else if says(&THOUSANDS_WORDS) {
        Some(Column::Thousands)
    } else if says(&ENGINE_WORDS) {
        Some(Column::Engine)
    } else if unit::<Velocity>(&words).is_some() || (says(&SPEED_WORDS) && says(&ROAD_WORDS)) {
        Some(Column::Road)
    } else if says(&SPEED_WORDS) {
        Some(if says(&ENGINE_SIDE_WORDS) { Column::Engine } else { Column::Speed })
    } else if power.is_some() {
        Some(Column::Power(power))
    } else {
        says(&OTHER_WORDS).then_some(Column::Other)
    }
}

/// Where a head says its figures were measured.
pub(super) fn measured_at(head: &str) -> Option<MeasuredAt> {
    let raw: Vec<String> = raw_words(head).collect();
    let says = |known: &[&str]| raw.iter().any(|word| known.contains(&word.as_str()));
    if says(&ENGINE_SIDE_WORDS) {
        Some(MeasuredAt::Engine)
    } else if says(&WHEEL_WORDS) || raw.iter().any(|word| AT_WHEELS.iter().any(|(at, _)| at == word)) {
        Some(MeasuredAt::Wheels)
    } else {
        None
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
            (Some(known), Some(next)) => !known.alike(next) && !word.starts_with(['(', '[']),
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

/// The words of a head in lower case, without the signs around them; a unit at the wheels as the unit it is.
fn words(head: &str) -> Vec<String> {
    let plain = |word: String| AT_WHEELS.iter().find(|(at, _)| *at == word).map_or(word, |(_, plain)| (*plain).to_owned());
    raw_words(head).map(plain).collect()
}

fn raw_words(head: &str) -> impl Iterator<Item = String> {
    head.split(|c: char| c.is_whitespace() || matches!(c, '(' | ')' | '[' | ']' | ',' | ':' | '_' | '"' | '@'))
        .map(|word| word.trim_matches('.').to_ascii_lowercase())
        .filter(|word| !word.is_empty())
}

/// The unit that a word, or two neighbouring ones, name.
fn unit<Q: Measured>(words: &[String]) -> Option<&'static Unit<Q>> {
    let dense = |text: &str| text.replace(['.', '·', '-', '*', '\u{22c5}'], "");
    let find = |text: &str| Q::units().iter().find(|unit| unit.spellings.contains(&text));
    let pairs = words.windows(2).map(|pair| dense(&pair.concat()));
    let singles = words.iter().map(|word| dense(word));
    pairs.chain(singles).find_map(|word| find(&word))
}
