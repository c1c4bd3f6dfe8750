//! Reading what people type about gears: `37/18`, `37 18`, `direct`, `43:11`, `3.909`.

use super::axle::FinalDrive;
use super::gearbox::{Gear, Idler, Layout};
use super::teeth::{Mesh, Ratio, Teeth};
use crate::problem::Explain;
use crate::units::number;

/// Why a text tells no gears.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum GearTextError {
    /// Nothing was typed where tooth counts were wanted.
    Blank,
    /// Nothing was typed where tooth counts or a ratio were wanted.
    BlankDrive,
    /// Two tooth counts were wanted.
    NotAPair {
        /// What was typed.
        text: String,
    },
    /// A tooth count outside 8 to 150.
    Count {
        /// The count as typed.
        text: String,
    },
    /// One whole number was wanted.
    NotACount {
        /// What was typed.
        text: String,
    },
    /// One count, or the two of a compound idler, were wanted.
    NotAnIdler {
        /// What was typed.
        text: String,
    },
    /// Two numbers parted by a comma that can be two counts or one decimal ratio.
    PairOrRatio {
        /// The number before the comma.
        first: String,
        /// The number behind it.
        second: String,
    },
    /// Neither teeth nor a ratio from 0.1 to 20.
    NotADrive {
        /// What was typed.
        text: String,
    },
    /// Direct drive where input and output are not in line.
    DirectInTwoShaft,
}

impl Explain for GearTextError {
    fn what(&self) -> String {
        match self {
            Self::Blank => "no tooth counts are given".into(),
            Self::BlankDrive => "neither tooth counts nor a ratio are given".into(),
            Self::NotAPair { text } => format!("“{}” is not a pair of tooth counts", number::clip(text)),
            Self::Count { text } => {
                format!("a gear cannot have {} {} here", number::clip(text), if text == "1" { "tooth" } else { "teeth" })
            }
            Self::NotACount { text } => format!("“{}” is not a tooth count", number::clip(text)),
            Self::NotAnIdler { text } => format!("“{}” is not the tooth count of an idler", number::clip(text)),
            Self::PairOrRatio { first, second } => format!("“{first},{second}” can be two tooth counts or one ratio"),
            Self::NotADrive { text } => format!("“{}” is neither two tooth counts nor a ratio", number::clip(text)),
            Self::DirectInTwoShaft => "a two-shaft box has no direct gear".into(),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Blank | Self::NotAPair { .. } => "type both counts, such as 37/18".into(),
            Self::Count { .. } | Self::NotACount { .. } => format!("type a count from {} to {}", Teeth::LEAST, Teeth::GREATEST),
            Self::NotAnIdler { .. } => "type one count, such as 19, or both of a compound idler, such as 20/16".into(),
            Self::PairOrRatio { first, second } => format!("type {first}/{second} for teeth or {first}.{second} for a ratio"),
            Self::BlankDrive | Self::NotADrive { .. } => "type both counts, such as 43/11, or a ratio from 0.1 to 20, such as 3.909".into(),
            Self::DirectInTwoShaft => "type both counts of the pair, such as 31/30".into(),
        }
    }
}

/// Two tooth counts in the order typed, parted by a slash, colon, comma, dash, ×, or blanks.
///
/// # Errors
/// When there are not two counts, or one is outside 8 to 150.
pub fn counts(text: &str) -> Result<(Teeth, Teeth), GearTextError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(GearTextError::Blank);
    }
    if !text.starts_with(|c: char| c.is_ascii_digit()) {
        return Err(GearTextError::NotAPair { text: text.to_owned() });
    }
    let mut parts = text
        .split(|c: char| c.is_whitespace() || matches!(c, '/' | ':' | ',' | '-' | '–' | '×' | 'x' | '\\'))
        .filter(|part| !part.is_empty());
    let (Some(first), Some(second), None) = (parts.next(), parts.next(), parts.next()) else {
        return Err(GearTextError::NotAPair { text: text.to_owned() });
    };
    let not_a_pair = || GearTextError::NotAPair { text: text.to_owned() };
    Ok((count_of(first, not_a_pair)?, count_of(second, not_a_pair)?))
}

/// One tooth count.
///
/// # Errors
/// When it is no whole number from 8 to 150.
pub fn count(text: &str) -> Result<Teeth, GearTextError> {
    let text = text.trim();
    if text.is_empty() { Err(GearTextError::Blank) } else { count_of(text, || GearTextError::NotACount { text: text.to_owned() }) }
}

fn count_of(part: &str, not_digits: impl Fn() -> GearTextError) -> Result<Teeth, GearTextError> {
    if part.is_empty() || !part.bytes().all(|b| b.is_ascii_digit()) {
        return Err(not_digits());
    }
    part.parse().ok().and_then(Teeth::new).ok_or_else(|| GearTextError::Count { text: part.to_owned() })
}

/// The constant pair, typed as the gear on the input or output line over the countershaft's.
///
/// # Errors
/// As [`counts`].
pub fn constant(text: &str, layout: Layout) -> Result<Mesh, GearTextError> {
    let (line, counter) = counts(text)?;
    Ok(match layout {
        Layout::OutputReduced => Mesh { driver: counter, driven: line },
        Layout::InputReduced | Layout::TwoShaft => Mesh { driver: line, driven: counter },
    })
}

/// One forward gear: `direct`, or the gear on the input or output line over the countershaft's (two-shaft: output over input).
///
/// # Errors
/// As [`counts`]; and direct in a two-shaft box.
pub fn gear(text: &str, layout: Layout) -> Result<Gear, GearTextError> {
    if matches!(text.trim().to_lowercase().as_str(), "direct" | "dir" | "d" | "1" | "1.0" | "1.00" | "1.000" | "1:1" | "1/1") {
        return if layout == Layout::TwoShaft { Err(GearTextError::DirectInTwoShaft) } else { Ok(Gear::Direct) };
    }
    Ok(Gear::Mesh(pair(text, layout)?))
}

/// A pair of gears on the same two shafts as a forward gear's, in the order of [`gear`].
///
/// # Errors
/// As [`counts`].
pub fn pair(text: &str, layout: Layout) -> Result<Mesh, GearTextError> {
    let (line, counter) = counts(text)?;
    Ok(match layout {
        Layout::OutputReduced => Mesh { driver: line, driven: counter },
        Layout::InputReduced | Layout::TwoShaft => Mesh { driver: counter, driven: line },
    })
}

/// The reverse idler: nothing, one count, or the counts of a compound idler, entry first.
///
/// # Errors
/// When it is neither one count nor two, or one is outside 8 to 150.
pub fn idler(text: &str) -> Result<Idler, GearTextError> {
    if text.trim().is_empty() {
        return Ok(Idler::Plain(None));
    }
    match count(text) {
        Ok(teeth) => Ok(Idler::Plain(Some(teeth))),
        Err(GearTextError::NotACount { text }) => match counts(&text) {
            Ok((entry, exit)) => Ok(Idler::Compound { entry, exit }),
            Err(GearTextError::NotAPair { text }) => Err(GearTextError::NotAnIdler { text }),
            Err(why) => Err(why),
        },
        Err(why) => Err(why),
    }
}

/// A final drive: two tooth counts in either order (the larger is the ring), or a plain ratio.
///
/// # Errors
/// When it is neither.
pub fn final_drive(text: &str) -> Result<FinalDrive, GearTextError> {
    match drive(text)? {
        FinalDrive::Pair(mesh) if mesh.driven < mesh.driver => Ok(FinalDrive::Pair(Mesh { driver: mesh.driven, driven: mesh.driver })),
        drive => Ok(drive),
    }
}

/// An extra stage: driven over driver teeth, or a plain ratio from 0.1 to 20.
///
/// # Errors
/// When it is neither, or when a comma leaves it open which of the two it is (`11,43`).
pub fn drive(text: &str) -> Result<FinalDrive, GearTextError> {
    if text.trim().is_empty() {
        return Err(GearTextError::BlankDrive);
    }
    match (counts(text), plain_ratio(text)) {
        (Ok((first, second)), Some(_)) => Err(GearTextError::PairOrRatio { first: first.to_string(), second: second.to_string() }),
        (Ok((driven, driver)), None) => Ok(FinalDrive::Pair(Mesh { driver, driven })),
        (Err(_), Some(ratio)) => Ok(FinalDrive::Plain(ratio)),
        (Err(count @ GearTextError::Count { .. }), None) => Err(count),
        (Err(_), None) => Err(GearTextError::NotADrive { text: text.trim().to_owned() }),
    }
}

/// The most digits behind the point of a plain ratio: four stages and a final drive of so many multiply without leaving the exact range.
const MOST_DECIMALS: u32 = 5;

/// A decimal ratio that four stages and a final drive can be multiplied from.
fn plain_ratio(text: &str) -> Option<Ratio> {
    decimal_ratio(text).filter(|(_, decimals)| *decimals <= MOST_DECIMALS).map(|(ratio, _)| ratio)
}

/// A decimal ratio from 0.1 to 20 as an exact fraction, and its digits behind the point, six at most: `3.909`, `3,909`, `.67`,
/// `3.909:1`, `3.909 : 1`.
pub fn decimal_ratio(text: &str) -> Option<(Ratio, u32)> {
    let text = text.trim().replace(',', ".");
    let text = text.strip_suffix('1').and_then(|text| text.trim_end().strip_suffix(':')).unwrap_or(&text).trim_end();
    let (whole, behind) = text.split_once('.').unwrap_or((text, ""));
    if whole.len() > 2 || behind.len() > 6 || !whole.bytes().chain(behind.bytes()).all(|b| b.is_ascii_digit()) {
        return None;
    }
    let decimals = u32::try_from(behind.len()).ok()?;
    let ratio = Ratio::new(format!("{whole}{behind}").parse().ok()?, 10_i128.pow(decimals));
    (ratio >= Ratio::new(1, 10) && ratio <= Ratio::from_integer(20)).then_some((ratio, decimals))
}
