//! Reading what people type about a speedometer: `7/17`, `7/17 x 20/18`, `637 rev/km`, `8 pulses/turn 16,000 pulses/mile`, `60 57; 70 at 66`.

use super::dial::Dial;
use super::gear::SpeedoGear;
use super::road_check::Reading;
use super::train::{Adapter, Train};
use crate::units::limits::{DIAL_CONSTANT, DIAL_PULSES, ROAD_CHECK_SPEED};
use crate::units::{self, Length, Measured, System, Time, TurnsPerDistance, UnitError, Velocity, number, unit};

/// Why a text says nothing about a speedometer.
#[derive(Clone, Debug, PartialEq)]
pub enum SpeedometerTextError {
    /// Nothing was typed.
    Blank,
    /// Drive and driven teeth were wanted, and perhaps an adapter's: what was typed.
    NotATrain(String),
    /// A count no speedometer gear has: what was typed.
    Teeth(String),
    /// Pulses for each turn outside 1 to 100: what was typed.
    PulsesPerTurn(String),
    /// A reading that is not a dial speed and a true one: what was typed.
    NotAReading(String),
    /// Seconds between two posts that make no road speed.
    Seconds {
        /// What was typed.
        text: String,
        /// The true speed it comes to, with its unit.
        speed: String,
        /// The way between the posts.
        posts: &'static str,
    },
    /// More readings than a road check has.
    TooManyReadings,
    /// A number or its unit.
    Number(UnitError),
}

explain! { SpeedometerTextError:
    Self::Blank => "no speedometer gears are given",
        "type drive and driven teeth, such as 7/17, and an adapter behind them, such as 7/17 x 20/18";
    Self::NotATrain(text) => format!("“{}” is not a drive and a driven gear", number::clip(text)),
        "type drive and driven teeth, such as 7/17, and an adapter behind them, such as 7/17 x 20/18";
    Self::Teeth(text) => format!("a speedometer gear cannot have {} teeth", number::clip(text)),
        format!("type a count from {} to {}", SpeedoGear::LEAST, SpeedoGear::GREATEST);
    Self::PulsesPerTurn(text) => format!("“{}” is not a number of pulses for each turn", number::clip(text)),
        "type 1 to 100 pulses, such as 8 pulses/turn 8,000 pulses/mile";
    Self::NotAReading(text) => format!("“{}” is not a reading of the dial with the true speed", number::clip(text)),
        "type the dial, then the true speed, such as 60 57, or the seconds between two posts, such as 60 in 63 s; part readings by a \
         semicolon";
    Self::Seconds { text, speed, posts, .. } => format!("“{}” comes to a true speed of {speed}", number::clip(text)),
        format!("check the seconds between the posts, {posts} apart");
    Self::TooManyReadings => format!("there are more than {MOST_READINGS} readings"), "keep those at steady speeds";
    Self::Number(error) => error.what(), error.what_to_do();
}

/// No road check has more readings.
pub const MOST_READINGS: usize = 200;

/// Drive and driven teeth, in this order, and perhaps an adapter's behind them (gearbox side, cable side).
///
/// # Errors
/// When there are not two or four counts, or one is not a speedometer gear's.
///
/// ```
/// use layshaft::speedometer::read::{SpeedometerTextError, train};
/// use layshaft::speedometer::{Adapter, Train};
/// assert_eq!(Some(train("7/17")?), Train::new(7, 17));
/// assert_eq!(train("7/17 x 20/18")?.adapter(), Adapter::new(20, 18));
/// # Ok::<(), SpeedometerTextError>(())
/// ```
pub fn train(text: &str) -> Result<Train, SpeedometerTextError> {
    if text.trim().is_empty() {
        return Err(SpeedometerTextError::Blank);
    }
    let refused = || SpeedometerTextError::NotATrain(text.trim().to_owned());
    let lower = text.trim().to_ascii_lowercase();
    let counts = counted(&lower).ok_or_else(refused)?;
    let counts = counts.iter().map(|digits| count(digits)).collect::<Result<Vec<u16>, _>>()?;
    let found = match counts.as_slice() {
        [drive, driven] => Train::new(*drive, *driven),
        [drive, driven, first, second] => {
            Train::new(*drive, *driven).and_then(|train| Some(train.with_adapter(Some(Adapter::new(*first, *second)?))))
        }
        _ => None,
    };
    found.ok_or_else(refused)
}

/// The runs of digits of a text that holds nothing else but one mark between two of them, or words that join an adapter to its pair.
fn counted(text: &str) -> Option<Vec<&str>> {
    let mut counts: Vec<&str> = Vec::new();
    let mut rest = text;
    while !rest.is_empty() {
        let (digits, behind) = rest.split_at_checked(rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(rest.len()))?;
        let (between, next) = behind.split_at_checked(behind.find(|c: char| c.is_ascii_digit()).unwrap_or(behind.len()))?;
        let is_last = next.is_empty();
        if digits.is_empty() || (is_last && !between.is_empty()) || (!is_last && !joins(between)) {
            return None;
        }
        counts.push(digits);
        rest = next;
    }
    Some(counts)
}

/// Whether what stands between two counts is one mark at the most, beside words that join.
fn joins(between: &str) -> bool {
    let joining = ["adapter", "adaptor", "and", "with", "through", "to"];
    let is_mark = |c: char| matches!(c, 'x' | '/' | '\\' | ':' | '-' | '–' | '×' | '.' | ',' | ';' | '+');
    let marks = between.chars().filter(|c| is_mark(*c)).count();
    let mut words = between.split(|c: char| is_mark(c) || c.is_whitespace()).filter(|word| !word.is_empty());
    marks <= 1 && words.all(|word| joining.contains(&word))
}

fn count(digits: &str) -> Result<u16, SpeedometerTextError> {
    let teeth = digits.parse().ok().filter(|teeth| SpeedoGear::allows(*teeth));
    teeth.ok_or_else(|| SpeedometerTextError::Teeth(digits.to_owned()))
}

/// A dial: nothing where it is not known, turns over a distance as its face may say, or pulses per turn with pulses over a distance.
///
/// # Errors
/// When a number or unit cannot be read or lies outside what a dial can be.
///
/// ```
/// use layshaft::speedometer::Dial;
/// use layshaft::speedometer::read::{SpeedometerTextError, dial};
/// use layshaft::units::{System, show, unit};
/// // 16,000 pulses ÷ 8 a turn
/// let sender = dial("8 pulses/turn 16,000 pulses/mile", System::Inch)?.map(Dial::constant);
/// assert_eq!(sender.map(|turns| show(&turns, &unit::TURNS_MILE, 0)).as_deref(), Some("2,000 turns/mile"));
/// assert_eq!(dial(" ", System::Inch)?, None);
/// # Ok::<(), SpeedometerTextError>(())
/// ```
pub fn dial(text: &str, system: System) -> Result<Option<Dial>, SpeedometerTextError> {
    if text.trim().is_empty() { Ok(None) } else { typed_dial(text, system).map(Some) }
}

fn typed_dial(text: &str, system: System) -> Result<Dial, SpeedometerTextError> {
    let lower = text.to_ascii_lowercase();
    let mark =
        ["pulses/turn", "pulse/turn", "pulses per turn", "pulses/rev", "pulses per rev"].into_iter().find(|mark| lower.contains(mark));
    let Some((before, behind)) = mark.and_then(|mark| lower.split_once(mark)) else {
        let bare = units::read::<TurnsPerDistance>(text, system, &DIAL_CONSTANT);
        return bare.map(Dial::Cable).map_err(SpeedometerTextError::Number);
    };
    let per_turn = match number::leading(before) {
        Some(([Some(first), _], rest)) if rest.trim().is_empty() && (1.0..=100.0).contains(&first) => first,
        _ => return Err(SpeedometerTextError::PulsesPerTurn(before.trim().to_owned())),
    };
    let behind = behind.trim_start_matches([' ', ',', ';', '+']).trim_start_matches("and ").trim_start_matches("at ");
    let per_distance = units::read::<TurnsPerDistance>(behind, system, &DIAL_PULSES).map_err(SpeedometerTextError::Number)?;
    Ok(Dial::Pulses { per_turn, per_distance })
}

/// The readings of a road check, parted by semicolons or lines: `60 57; 70 at 66.5`, or timed over a mile or kilometre, `60 in 63 s`,
/// `60 in 63.6 s to the mile`.
///
/// # Errors
/// When one is not a dial speed with a true speed or a time.
///
/// ```
/// use layshaft::speedometer::read::{SpeedometerTextError, readings};
/// use layshaft::units::{System, show, unit};
/// let found = readings("60 57; 60 in 64 s", System::Inch)?;
/// let true_speeds: Vec<String> = found.iter().map(|reading| show(&reading.truth, &unit::MPH, 2)).collect();
/// // A mile in 64 s: 3,600 ÷ 64.
/// assert_eq!(true_speeds, ["57.00 mph", "56.25 mph"]);
/// # Ok::<(), SpeedometerTextError>(())
/// ```
pub fn readings(text: &str, system: System) -> Result<Vec<Reading>, SpeedometerTextError> {
    let lines: Vec<&str> = text.split([';', '\n']).map(str::trim).filter(|line| !line.is_empty()).collect();
    if lines.len() > MOST_READINGS {
        return Err(SpeedometerTextError::TooManyReadings);
    }
    lines.into_iter().map(|line| reading(line, system)).collect()
}

fn reading(line: &str, system: System) -> Result<Reading, SpeedometerTextError> {
    let lower = line.to_ascii_lowercase();
    let (dial, truth) = parted(&lower).ok_or_else(|| SpeedometerTextError::NotAReading(line.to_owned()))?;
    let dial = units::read::<Velocity>(dial, system, &ROAD_CHECK_SPEED).map_err(SpeedometerTextError::Number)?;
    if let Some((seconds, way)) = seconds(truth) {
        return timed(line, dial, seconds, way.unwrap_or(system));
    }
    let truth = units::read::<Velocity>(truth, system, &ROAD_CHECK_SPEED).map_err(SpeedometerTextError::Number)?;
    Ok(Reading { dial, truth })
}

/// A reading timed over the mile or kilometre of a system.
fn timed(line: &str, dial: Velocity, seconds: f64, system: System) -> Result<Reading, SpeedometerTextError> {
    let reading = Reading::timed(dial, milestone(system), time_s(seconds));
    if ROAD_CHECK_SPEED.allow(reading.truth) {
        return Ok(reading);
    }
    let speed = units::show(&reading.truth, Velocity::usual(system), 1);
    let posts = if system == System::Inch { "a mile" } else { "a kilometre" };
    Err(SpeedometerTextError::Seconds { text: line.to_owned(), speed, posts })
}

/// The two halves of a reading: at a word or sign, or else at the last blank before a digit.
fn parted(line: &str) -> Option<(&str, &str)> {
    let signs = [" in ", " at ", " is ", " true ", "=", "→", ":", "|", "\t", ", "];
    let at_sign = signs.into_iter().find_map(|sign| line.split_once(sign));
    let at_blank = || {
        let blanks = line.char_indices().filter(|(_, c)| c.is_whitespace()).map(|(at, c)| (at, at + c.len_utf8()));
        let before_digit =
            |(_, behind): &(usize, usize)| line.get(*behind..).and_then(|rest| rest.chars().next()).is_some_and(|c| c.is_ascii_digit());
        let (end, start) = blanks.rev().find(before_digit)?;
        line.get(..end).zip(line.get(start..))
    };
    at_sign.or_else(at_blank).map(|(dial, truth)| (dial.trim(), truth.trim()))
}

/// The seconds of a text such as `63 s` or `63.6 s to the mile`, and the system of the way it names.
fn seconds(text: &str) -> Option<(f64, Option<System>)> {
    let (readings, rest) = number::leading(text)?;
    let seconds = readings[0].or(readings[1]).filter(|seconds| *seconds > 0.0)?;
    let words = rest.replace('/', " per ");
    let mut words = words.split_whitespace().map(|word| word.trim_end_matches('.'));
    let is_time = matches!(words.next()?, "s" | "sec" | "secs" | "second" | "seconds" | "″" | "\"");
    let mut way = None;
    for word in words {
        match word {
            "mile" | "mi" => way = Some(System::Inch),
            "km" | "kilometre" | "kilometer" => way = Some(System::Metric),
            "to" | "for" | "over" | "per" | "a" | "an" | "the" | "one" | "each" | "every" | "measured" => {}
            _ => return None,
        }
    }
    is_time.then_some((seconds, way))
}

fn time_s(seconds: f64) -> Time {
    unit::SECOND.of(seconds)
}

/// The way between two posts: a mile, or a kilometre.
fn milestone(system: System) -> Length {
    if system == System::Inch { unit::MILE.of(1.0) } else { unit::KM.of(1.0) }
}
