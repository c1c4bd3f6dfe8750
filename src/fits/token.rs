//! The words, figures and signs of a measured line, before anything is made of them.

use crate::units::{self, Length, Limits, System, UnitError};

#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token {
    /// A figure as typed: `112.40`, `.126`, `1/4`.
    Number(String),
    /// A unit of length by its symbol.
    Unit(&'static str),
    /// How often: `x3`, `3x`, `3 off`.
    Times(u32),
    /// `±`, `+/-`.
    PlusMinus,
    /// `to`, `…`.
    To,
    /// A minus of any length.
    Minus,
    /// A plus.
    Plus,
    /// Anything else.
    Word(String),
}

/// A figure and the unit that was typed behind it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Measure {
    /// The figure as typed.
    pub figure: String,
    /// Its unit, where one was typed.
    pub unit: Option<&'static str>,
}

/// More of one part than any box holds is almost certainly a typo.
const MOST_TIMES: u32 = 99;

const MINUS: [char; 4] = ['-', '−', '–', '—'];

/// The tokens of a text, left to right.
pub(super) fn tokens(text: &str) -> Vec<Token> {
    let text = text.replace("+/-", " ± ").replace("+/−", " ± ").replace("+-", " ± ").replace('±', " ± ");
    let text = text.replace('…', " to ").replace("..", " to ").replace(['×', '*'], " x ");
    let mut tokens = Vec::new();
    for word in text.split_whitespace() {
        take(word, &mut tokens);
    }
    tokens
}

fn take(word: &str, tokens: &mut Vec<Token>) {
    if let Some(token) = sign(word) {
        tokens.push(token);
    } else if let Some((sign, rest)) = signed(word) {
        tokens.push(sign);
        take(rest, tokens);
    } else if begins_with_figure(word) {
        figure(word, tokens);
    } else if let Some(times) = word.trim_matches(['(', ')', ',', ';']).strip_prefix(['x', 'X']).and_then(times) {
        tokens.push(Token::Times(times));
    } else if let Some(many) = last_count(tokens).filter(|_| word == "off") {
        tokens.pop();
        tokens.push(Token::Times(many));
    } else {
        tokens.push(unit_or_word(word, tokens.last()));
    }
}

/// The figure at the end of the tokens, where it can be a count.
fn last_count(tokens: &[Token]) -> Option<u32> {
    if let Some(Token::Number(figure)) = tokens.last() { times(figure) } else { None }
}

fn sign(word: &str) -> Option<Token> {
    match word {
        "±" => Some(Token::PlusMinus),
        "+" => Some(Token::Plus),
        "to" => Some(Token::To),
        _ if word.chars().all(|c| MINUS.contains(&c)) => Some(Token::Minus),
        _ => None,
    }
}

/// A sign that stands right before a figure, and the figure.
fn signed(word: &str) -> Option<(Token, &str)> {
    let plus = word.strip_prefix('+').map(|rest| (Token::Plus, rest));
    let signed = plus.or_else(|| word.strip_prefix(MINUS).map(|rest| (Token::Minus, rest)));
    signed.filter(|(_, rest)| begins_with_figure(rest))
}

fn begins_with_figure(word: &str) -> bool {
    word.trim_start_matches(['.', ',']).starts_with(|c: char| c.is_ascii_digit())
}

/// A figure with what stands right behind it: a unit, a count, another figure behind a dash.
fn figure(word: &str, tokens: &mut Vec<Token>) {
    let end = word.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '/'))).unwrap_or(word.len());
    let (digits, rest) = word.split_at(end);
    let bare = digits.trim_end_matches([',', '.']);
    if rest.is_empty() && matches!(tokens.last(), Some(Token::Word(cross)) if matches!(cross.as_str(), "x" | "X")) {
        tokens.pop();
        crossed(bare, tokens);
        return;
    }
    let rest = rest.trim_end_matches([',', ';']);
    match (rest, symbol(rest), times(bare)) {
        ("", ..) => tokens.push(Token::Number(bare.to_owned())),
        ("x" | "X" | "off", _, Some(times)) => tokens.push(Token::Times(times)),
        (_, Some(symbol), _) => tokens.extend([Token::Number(bare.to_owned()), Token::Unit(symbol)]),
        _ => match signed(rest) {
            Some((sign, rest)) => {
                tokens.extend([Token::Number(bare.to_owned()), sign]);
                take(rest, tokens);
            }
            None => tokens.push(Token::Word(word.to_owned())),
        },
    }
}

/// A figure behind a cross: `0.10 x 3` has its count behind it, `2 x 3.05` before it.
fn crossed(bare: &str, tokens: &mut Vec<Token>) {
    match (times(bare), last_count(tokens)) {
        (Some(many), _) => tokens.push(Token::Times(many)),
        (None, Some(many)) => {
            tokens.pop();
            tokens.extend([Token::Times(many), Token::Number(bare.to_owned())]);
        }
        (None, None) => tokens.push(Token::Number(bare.to_owned())),
    }
}

/// A word behind a figure may be its unit, or say that the figure is a count.
fn unit_or_word(word: &str, before: Option<&Token>) -> Token {
    let is_behind = matches!(before, Some(Token::Number(_) | Token::Times(_)));
    let unit = symbol(word.trim_end_matches([',', ';', '.'])).filter(|_| is_behind);
    unit.map_or_else(|| Token::Word(word.to_owned()), Token::Unit)
}

fn times(digits: &str) -> Option<u32> {
    digits.parse().ok().filter(|many| (1..=MOST_TIMES).contains(many))
}

/// The symbol of a unit of length that is spelt so.
fn symbol(word: &str) -> Option<&'static str> {
    let is_spelt = word.starts_with(|c: char| c.is_alphabetic() || matches!(c, '"' | '”' | '″'));
    is_spelt.then(|| units::unit_typed::<Length>(&format!("1 {word}"), System::Metric)).flatten().map(|unit| unit.symbol)
}

/// The measure that begins at a place, and the place behind it: `4 1/4 in` is one.
pub(super) fn measure(tokens: &[Token], at: usize) -> Option<(Measure, usize)> {
    let Some(Token::Number(first)) = tokens.get(at) else { return None };
    let (mut figure, mut next) = (first.clone(), at + 1);
    if let Some(Token::Number(fraction)) = tokens.get(next)
        && fraction.contains('/')
        && first.bytes().all(|byte| byte.is_ascii_digit())
    {
        figure = format!("{first} {fraction}");
        next += 1;
    }
    let unit = if let Some(Token::Unit(unit)) = tokens.get(next) { Some(*unit) } else { None };
    Some((Measure { figure, unit }, next + usize::from(unit.is_some())))
}

impl Measure {
    /// The length, a bare figure in `unit`, or else in the usual unit of the system.
    pub(super) fn read(&self, unit: Option<&'static str>, system: System, limits: &Limits<Length>) -> Result<Length, UnitError> {
        units::read(&self.text(unit), system, limits)
    }

    /// The figure with its unit, as it would be typed alone.
    pub(super) fn text(&self, unit: Option<&'static str>) -> String {
        format!("{} {}", self.figure, self.unit.or(unit).unwrap_or("")).trim_end().to_owned()
    }
}
