//! The words of a slope: numbers, units, ways, ends.

use super::End;

/// One word of a slope.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token {
    /// Digits with their sign and point, or a fraction.
    Number(String),
    /// What may be a unit.
    Unit(String),
    /// Which way.
    Way(Way),
    /// Which end that is told of.
    End(End),
    /// No slope at all.
    Level,
}

impl Token {
    /// The token as it may be said back.
    pub(super) fn typed(&self) -> String {
        match self {
            Self::Number(typed) | Self::Unit(typed) => typed.clone(),
            Self::Way(_) | Self::End(_) | Self::Level => String::new(),
        }
    }
}

/// Which way an end of a shaft points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    Down,
    Up,
    Right,
    Left,
}

impl Way {
    pub(super) fn is_sideways(self) -> bool {
        matches!(self, Self::Right | Self::Left)
    }

    /// 1 where a shaft whose `end` points so falls, or runs to the right, towards the rear.
    pub(super) fn sign(self, end: End) -> f64 {
        let of_rear = if matches!(self, Self::Down | Self::Right) { 1.0 } else { -1.0 };
        if end == End::Rear { of_rear } else { -of_rear }
    }
}

/// The words of a text; the one that is not understood where there is one.
pub(super) fn of(text: &str) -> Result<Vec<Token>, String> {
    let chars: Vec<char> = text.to_ascii_lowercase().chars().collect();
    let mut tokens = Vec::new();
    let mut at = 0;
    while let Some(c) = chars.get(at).copied() {
        let kind = Kind::of(c, chars.get(at + 1).copied());
        let same = |(place, next): (usize, &char)| kind.goes_on(*next, chars.get(at + place + 1).copied());
        let length =
            1 + chars.iter().skip(at + 1).enumerate().map(|(place, next)| (place + 1, next)).take_while(|each| same(*each)).count();
        let word: String = chars.iter().skip(at).take(length).collect();
        match kind {
            Kind::Number => tokens.push(Token::Number(word)),
            Kind::Word => tokens.extend(named(word)),
            Kind::Mark => tokens.push(Token::Unit(word)),
            Kind::Between => {}
            Kind::Strange => return Err(word),
        }
        at += length;
    }
    Ok(tokens)
}

/// What a run of characters is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Number,
    Word,
    /// The sign of a unit.
    Mark,
    /// Blanks and marks that part words.
    Between,
    Strange,
}

impl Kind {
    fn of(c: char, next: Option<char>) -> Self {
        let digit_follows = next.is_some_and(|next| next.is_ascii_digit() || next == '.');
        match c {
            '0'..='9' => Self::Number,
            '-' | '−' | '+' | '.' if digit_follows => Self::Number,
            '°' | '"' | '″' => Self::Mark,
            ',' | ':' | '(' | ')' | '.' => Self::Between,
            c if c.is_whitespace() => Self::Between,
            c if c.is_alphabetic() => Self::Word,
            _ => Self::Strange,
        }
    }

    /// Whether the run goes on with `c`, which `next` follows.
    fn goes_on(self, c: char, next: Option<char>) -> bool {
        let digit_follows = next.is_some_and(|next| next.is_ascii_digit());
        match self {
            Self::Number => c.is_ascii_digit() || (matches!(c, '.' | ',' | '/') && digit_follows),
            Self::Word => c.is_alphabetic(),
            Self::Mark | Self::Between | Self::Strange => false,
        }
    }
}

/// What a word means; nothing for one that only joins others. A word that is none of these may be a unit.
fn named(word: String) -> Option<Token> {
    Some(match word.as_str() {
        "and" | "to" | "the" | "at" => return None,
        "down" | "dn" | "d" => Token::Way(Way::Down),
        "up" | "u" => Token::Way(Way::Up),
        "right" | "r" => Token::Way(Way::Right),
        "left" | "l" => Token::Way(Way::Left),
        "nose" | "front" => Token::End(End::Front),
        "rear" | "tail" | "back" => Token::End(End::Rear),
        "level" | "straight" | "flat" => Token::Level,
        _ => Token::Unit(word),
    })
}
