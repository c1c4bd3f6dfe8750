//! Turns as people say them: `three and a quarter`, `nearly 3 1/2`, `15 of 21 splines`, `4 1/5`.

use super::reading::{ReadingError, exact};
use crate::gearing::teeth::Ratio;
use crate::units::number;

/// Turns, and how uncertain they are by the way they were said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spoken {
    /// How many, as an exact fraction.
    pub turns: Ratio,
    /// Their uncertainty, where the words tell it: half a spline, or an eighth of a turn for `nearly`; none where they do not.
    pub uncertainty: Option<Ratio>,
}

/// How far `nearly` and `about` may be out, in turns. Common practice, no published source.
fn about() -> Ratio {
    Ratio::new(1, 8)
}

/// Words that say that a number is rough.
const ROUGH: [&str; 16] = [
    "nearly",
    "almost",
    "just under",
    "just over",
    "a bit under",
    "a bit over",
    "a little under",
    "a little over",
    "roughly",
    "about",
    "around",
    "approximately",
    "circa",
    "ca.",
    "~",
    "≈",
];

/// Reads turns as they are said: a number of at most 100 000, a number with a fraction in figures or words, or splines passed of so many.
///
/// # Errors
/// When the text is blank or says no turns.
pub fn spoken(text: &str) -> Result<Spoken, ReadingError> {
    let said = plain(text);
    if said.is_empty() {
        return Err(ReadingError::Blank);
    }
    let (said, is_rough) = without_rough(&said);
    let rough = is_rough.then(about);
    let found = splines(said)
        .map(|(turns, half)| Spoken { turns, uncertainty: Some(rough.map_or(half, |rough| rough.max(half))) })
        .or_else(|| in_figures(said).or_else(|| in_words(said)).map(|turns| Spoken { turns, uncertainty: rough }));
    found.ok_or_else(|| ReadingError::NotTurns(text.trim().to_owned()))
}

/// The text in small letters, with fractions of one letter written out.
fn plain(text: &str) -> String {
    const FRACTIONS: [(&str, &str); 9] = [
        ("½", " 1/2"),
        ("¼", " 1/4"),
        ("¾", " 3/4"),
        ("⅓", " 1/3"),
        ("⅔", " 2/3"),
        ("⅛", " 1/8"),
        ("⅜", " 3/8"),
        ("⅝", " 5/8"),
        ("⅞", " 7/8"),
    ];
    let small = text.to_lowercase();
    FRACTIONS.iter().fold(small, |text, (letter, figures)| text.replace(letter, figures)).trim().to_owned()
}

/// The text without the word that makes it rough, and whether there was one.
fn without_rough(said: &str) -> (&str, bool) {
    let rest = ROUGH.iter().find_map(|word| said.strip_prefix(word));
    rest.map_or((said, false), |rest| (rest.trim_start(), true))
}

/// `15 of 21 splines`, `2 turns and 15 of 21 splines`: the turns, and half a spline.
fn splines(said: &str) -> Option<(Ratio, Ratio)> {
    if !said.contains("spline") {
        return None;
    }
    let numbers = said.split(|c: char| !c.is_ascii_digit()).filter(|part| !part.is_empty()).map(whole).collect::<Option<Vec<i128>>>()?;
    let (turns, passed, all) = match numbers.as_slice() {
        [passed, all] => (0, *passed, *all),
        [turns, passed, all] if said.contains("turn") => (*turns, *passed, *all),
        _ => return None,
    };
    let is_shaft = (6..=100).contains(&all) && turns <= 1_000 && passed <= 100 * all;
    is_shaft.then(|| (Ratio::from_integer(turns) + Ratio::new(passed, all), Ratio::new(1, 2 * all)))
}

/// A run of at most six digits.
fn whole(digits: &str) -> Option<i128> {
    digits.parse().ok().filter(|_| digits.len() <= 6)
}

/// `10`, `4.2`, `4 1/5`, `4,2`, with or without `turns` behind it.
fn in_figures(said: &str) -> Option<Ratio> {
    let (readings, rest) = number::leading(said)?;
    let is_all = matches!(rest.trim(), "" | "turn" | "turns" | "rev" | "revs");
    readings.into_iter().flatten().filter(|_| is_all).find_map(exact)
}

/// `three and a quarter`, `3 and three quarters`, `half a turn`.
fn in_words(said: &str) -> Option<Ratio> {
    /// Nobody needs more words for it.
    const MOST_WORDS: usize = 12;
    let words: Vec<&str> = said.split(|c: char| c.is_whitespace() || c == '-' || c == ',').filter(|word| !word.is_empty()).collect();
    if words.len() > MOST_WORDS {
        return None;
    }
    let (mut sum, mut count, mut is_said) = (Ratio::from_integer(0), None, false);
    for word in words {
        match word {
            "and" | "plus" | "a" | "an" => sum += Ratio::from_integer(count.take().unwrap_or(0)),
            "of" | "turn" | "turns" => {}
            _ => {
                if let Some(number) = cardinal(word) {
                    // `twenty one` is one number, `three three quarters` are two.
                    let (before, tens) = match count {
                        Some(tens) if tens >= 20 && tens % 10 == 0 && number < 10 => (0, tens),
                        other => (other.unwrap_or(0), 0),
                    };
                    sum += Ratio::from_integer(before);
                    count = Some(tens + number);
                } else if let Some(parts) = denominator(word) {
                    sum += Ratio::new(count.take().unwrap_or(1), parts);
                } else {
                    sum += slashed(word)?;
                }
                is_said = true;
            }
        }
    }
    let sum = sum + Ratio::from_integer(count.unwrap_or(0));
    (is_said && sum <= Ratio::from_integer(100_000)).then_some(sum)
}

/// `three`, or `3`.
fn cardinal(word: &str) -> Option<i128> {
    const UNITS: [&str; 21] = [
        "zero",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
        "twenty",
    ];
    const TENS: [(&str, i128); 4] = [("thirty", 30), ("forty", 40), ("fifty", 50), ("sixty", 60)];
    let unit = UNITS.iter().zip(0..).find(|(name, _)| **name == word).map(|(_, number)| number);
    let ten = || TENS.iter().find(|(name, _)| *name == word).map(|(_, number)| *number);
    unit.or_else(ten).or_else(|| whole(word))
}

/// `quarter`, `thirds`.
fn denominator(word: &str) -> Option<i128> {
    const PARTS: [(&str, i128); 10] = [
        ("half", 2),
        ("halve", 2),
        ("third", 3),
        ("quarter", 4),
        ("fourth", 4),
        ("fifth", 5),
        ("eighth", 8),
        ("tenth", 10),
        ("sixteenth", 16),
        ("twentieth", 20),
    ];
    PARTS.iter().find(|(name, _)| word == *name || word.strip_suffix('s') == Some(name)).map(|(_, parts)| *parts)
}

/// `1/4`: parts of a turn as small as a sixty-fourth.
fn slashed(word: &str) -> Option<Ratio> {
    let (above, below) = word.split_once('/')?;
    let (above, below) = (whole(above)?, whole(below)?);
    (1..=64).contains(&below).then(|| Ratio::new(above, below))
}
