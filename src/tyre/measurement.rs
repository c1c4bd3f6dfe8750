//! A tyre given as it was measured: `rolls 1,878 mm`, `diameter 24.3 in`, `856 turns/mile`, `10 turns 18.79 m`.
//!
//! A word says what was measured and may stand before or behind the number; a bare length is refused, since 1,878 mm may be either.

use super::error::TyreError;
use crate::units::limits::{CIRCUMFERENCE, DIAMETER, Limits, ROLLED, ROLLING_RADIUS, STANDING_RADIUS, TURNS};
use crate::units::{self, Length, Measured, System, TurnsPerDistance, UnitError, number, unit};

/// What was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measurement {
    /// The roll-out distance, 500 to 6,000 mm.
    Circumference(Length),
    /// Overall diameter, 200 to 1,900 mm.
    Diameter(Length),
    /// Hub centre to road, at rest under load, 90 to 950 mm.
    LoadedRadius(Length),
    /// The roll-out distance over 2π, 90 to 950 mm.
    RollingRadius(Length),
    /// Turns over a mile or kilometre.
    Turns(TurnsPerDistance),
    /// A number of turns over a measured way.
    RollOut {
        /// Turns of the wheel, above 0 to 1,000.
        turns: f64,
        /// The roll-out distance.
        distance: Length,
    },
}

/// What a word names.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Circumference,
    Diameter,
    Radius,
    Turns,
}

/// Words that say what was measured.
const WORDS: [(&str, Kind); 28] = [
    ("rolls", Kind::Circumference),
    ("roll", Kind::Circumference),
    ("rolled", Kind::Circumference),
    ("rollout", Kind::Circumference),
    ("roll-out", Kind::Circumference),
    ("rolling", Kind::Circumference),
    ("circumference", Kind::Circumference),
    ("circ", Kind::Circumference),
    ("diameter", Kind::Diameter),
    ("dia", Kind::Diameter),
    ("dia.", Kind::Diameter),
    ("diam", Kind::Diameter),
    ("ø", Kind::Diameter),
    ("od", Kind::Diameter),
    ("o/d", Kind::Diameter),
    ("o.d", Kind::Diameter),
    ("o.d.", Kind::Diameter),
    ("tall", Kind::Diameter),
    ("high", Kind::Diameter),
    ("radius", Kind::Radius),
    ("slr", Kind::Radius),
    ("drr", Kind::Radius),
    ("turns", Kind::Turns),
    ("turn", Kind::Turns),
    ("rev", Kind::Turns),
    ("revs", Kind::Turns),
    ("revolutions", Kind::Turns),
    ("tpm", Kind::Turns),
];

/// Words that make a radius one that is rolled on, not stood on.
const ROLLED_ON: [&str; 5] = ["rolling", "dynamic", "effective", "working", "drr"];

/// What the standing radius is measured between, and what it is called here once.
#[rustfmt::skip]
const HUBS: [&str; 12] = [
    "hub centre", "hub center", "centre of hub", "center of hub", "wheel centre", "wheel center", "axle centre", "axle center",
    "axle", "hub", "centre", "center",
];
const GROUNDS: [&str; 3] = ["ground", "road", "floor"];

/// Words that may stand beside and say nothing.
const FILLERS: [&str; 19] = [
    "of",
    "=",
    ":",
    "the",
    "in_one_turn",
    "loaded",
    "static",
    "standing",
    "overall",
    "outside",
    "tyre",
    "tire",
    "measured",
    "over",
    "for",
    "is",
    "dynamic",
    "effective",
    "working",
];

/// The text in small letters, a diameter's sign apart from its number, and `hub to ground` as the one word it stands for.
pub(super) fn plain(text: &str) -> String {
    let lower = text.to_ascii_lowercase().replace(['ø', 'Ø', '⌀'], " ø ").replace("-to-", " to ").replace(" the ", " ");
    let words = lower.split_whitespace().collect::<Vec<_>>().join(" ");
    let between = HUBS.iter().flat_map(|hub| GROUNDS.map(|ground| format!("{hub} to {ground}")));
    between.fold(words, |words, between| words.replace(&between, "slr"))
}

/// Whether a word says what was measured.
pub(super) fn is_measuring(word: &str) -> bool {
    kind_of(word).is_some()
}

/// Whether a word belongs to a measurement, be it that it says what was measured or only stands beside.
pub(super) fn belongs(word: &str) -> bool {
    is_measuring(word) || FILLERS.contains(&word)
}

fn kind_of(word: &str) -> Option<Kind> {
    let bare = word.trim_matches(|c: char| matches!(c, ':' | '=' | ',' | ';' | '(' | ')'));
    let exact = WORDS.iter().find(|(known, _)| *known == bare).map(|(_, kind)| *kind);
    // 532rev/km, turns/mile, /mile
    let per = || ["/mile", "/mi", "/km"].iter().any(|per| bare.ends_with(per)).then_some(Kind::Turns);
    exact.or_else(per)
}

/// A bare length that can be but one thing: longer than any tyre is high, it is the roll-out distance.
pub(super) fn of_one_reading(text: &str, system: System) -> Option<Measurement> {
    let measured = read(&format!("rolls {text}"), system).ok()?;
    matches!(measured, Measurement::Circumference(way) if unit::MM.number(way) > DIAMETER.greatest).then_some(measured)
}

/// Reads a measurement, a bare number in the usual unit of `system`.
///
/// # Errors
/// When the number or its unit cannot be read, or the value cannot be a tyre's.
///
/// ```
/// use layshaft::tyre::{Measurement, TyreError, measurement};
/// use layshaft::units::{System, unit};
/// let taped = measurement::read("diameter 610 mm", System::Inch)?;
/// assert_eq!(taped, Measurement::Diameter(unit::MM.of(610.0)));
/// // The reader's own unit where none is typed.
/// let rolled = measurement::read("10 turns 740", System::Inch)?;
/// assert_eq!(rolled, Measurement::RollOut { turns: 10.0, distance: unit::INCH.of(740.0) });
/// # Ok::<(), TyreError>(())
/// ```
pub fn read(text: &str, system: System) -> Result<Measurement, TyreError> {
    let plain = plain(text);
    let words: Vec<&str> = plain.split(' ').collect();
    let kinds: Vec<Kind> = words.iter().filter_map(|word| kind_of(word)).collect();
    let has = |kind| kinds.contains(&kind);
    if has(Kind::Turns) {
        return turns(&words, system);
    }
    let value = rest(&words);
    let is_rolled_on = words.iter().any(|word| ROLLED_ON.contains(word));
    match kinds.first() {
        Some(_) if has(Kind::Radius) && is_rolled_on => length(&value, system, &ROLLING_RADIUS).map(Measurement::RollingRadius),
        Some(_) if has(Kind::Radius) => length(&value, system, &STANDING_RADIUS).map(Measurement::LoadedRadius),
        Some(_) if has(Kind::Diameter) => length(&value, system, &DIAMETER).map(Measurement::Diameter),
        Some(_) => length(&value, system, &CIRCUMFERENCE).map(Measurement::Circumference),
        None => Err(TyreError::NotMeasured(number::clip(text))),
    }
}

/// The words that are left when those are taken out that say what was measured.
fn rest(words: &[&str]) -> String {
    let kept = words.iter().filter(|word| !belongs(word));
    kept.map(|word| word.trim_start_matches(['=', ':'])).collect::<Vec<_>>().join(" ")
}

fn length(text: &str, system: System, limits: &Limits<Length>) -> Result<Length, TyreError> {
    if let Some(sum) = feet_and_inches(text).filter(|sum| limits.allow(*sum)) {
        return Ok(sum);
    }
    let read = units::read::<Length>(text, system, limits);
    // No tyre is 635 in tall: a bare number that cannot be in the reader's own unit is in the other one.
    let other = if system == System::Inch { System::Metric } else { System::Inch };
    let is_bare = || number::leading(text).is_some_and(|(_, rest)| rest.trim().is_empty());
    match read {
        Err(outside @ UnitError::Outside { .. }) if is_bare() => units::read(text, other, limits).map_err(|_| TyreError::Number(outside)),
        read => read.map_err(TyreError::Number),
    }
}

/// `61 ft 7 3/4 in` or `61' 7`, as a tape reads; inches from 0 to below 12.
fn feet_and_inches(text: &str) -> Option<Length> {
    const INCHES: Limits<Length> = Limits { word: "inches", unit: &unit::INCH, least: 0.0, greatest: 11.999_9, why: "twelve are a foot" };
    const FEET: Limits<Length> = Limits { word: "feet", unit: &unit::FOOT, least: 0.0, greatest: 20_000.0, why: "no roll-out is longer" };
    let (feet, inches) = ["feet", "ft", "'", "′"].into_iter().find_map(|mark| text.split_once(mark))?;
    let feet: Length = units::read(&format!("{feet} ft"), System::Inch, &FEET).ok()?;
    let inches: Length = units::read(inches, System::Inch, &INCHES).ok()?;
    Some(feet + inches)
}

/// Turns: over a named distance (`856 turns/mile`, `532 rev per km`) or over a measured way (`10 turns 18.79 m`).
fn turns(words: &[&str], system: System) -> Result<Measurement, TyreError> {
    let joined = words.iter().filter(|word| !FILLERS.contains(word)).copied().collect::<Vec<_>>().join(" ");
    if let Some(unit) = per_distance(words, &joined) {
        return per(&joined, unit, system);
    }
    let at = words.iter().position(|word| kind_of(word) == Some(Kind::Turns)).unwrap_or(0);
    let (before, behind) = words.split_at(at);
    let Some((count, front)) = before.split_last() else { return Err(TyreError::TurnsOfWhat(number::clip(&joined))) };
    let turns = count_of(count).ok_or_else(|| TyreError::TurnsOfWhat(number::clip(&joined)))?;
    let way: Vec<&str> = front.iter().chain(behind.iter().skip(1)).copied().filter(|word| *word != "in").collect();
    let way = with_inch_kept(rest(&way), behind);
    let distance = length(&way, system, &ROLLED)?;
    let circumference = distance / turns;
    if !CIRCUMFERENCE.allow(circumference) {
        // A way in feet and inches names two units.
        let unit = units::unit_typed::<Length>(&way, system).unwrap_or_else(|| Length::usual(system));
        return Err(TyreError::Number(UnitError::Outside {
            word: CIRCUMFERENCE.word,
            why: CIRCUMFERENCE.why,
            text: number::clip(&joined),
            range: format!("{} a turn", CIRCUMFERENCE.range_in(unit)),
        }));
    }
    Ok(Measurement::RollOut { turns, distance })
}

/// `10 turns 740 in`: there the last word is a unit and not the word "in".
fn with_inch_kept(way: String, behind: &[&str]) -> String {
    if behind.last() == Some(&"in") { format!("{way} in") } else { way }
}

fn count_of(word: &str) -> Option<f64> {
    let word = if word == "one" { "1" } else { word };
    let ([first, _], "") = number::leading(word)? else { return None };
    first.filter(|turns| *turns > 0.0 && *turns <= 1_000.0)
}

/// The distance that turns are counted over, where the text names one without a number before it.
fn per_distance(words: &[&str], joined: &str) -> Option<&'static str> {
    let ends = |marks: &[&str]| marks.iter().any(|mark| joined.contains(mark));
    if words.contains(&"tpm") || ends(&["/mile", "/mi", "per mile", "a mile", "/ mile"]) {
        return Some("turns/mile");
    }
    ends(&["/km", "per km", "a km", "per kilometre", "per kilometer", "/ km"]).then_some("turns/km")
}

fn per(joined: &str, symbol: &str, system: System) -> Result<Measurement, TyreError> {
    let start = joined.find(|c: char| c.is_ascii_digit()).unwrap_or(joined.len());
    let number: String = joined.get(start..).unwrap_or("").chars().take_while(|c| !c.is_alphabetic() && *c != '/').collect();
    let text = format!("{} {symbol}", number.trim());
    units::read::<TurnsPerDistance>(&text, system, &TURNS).map(Measurement::Turns).map_err(TyreError::Number)
}

/// Whether the text is a length and nothing more, so that it is not known what was measured.
pub(super) fn is_bare_length(text: &str) -> bool {
    let Some((_, unit)) = number::leading(text) else { return false };
    let unit = unit.trim().to_ascii_lowercase();
    !unit.is_empty() && Length::units().iter().any(|known| known.spellings.contains(&unit.as_str()))
}
