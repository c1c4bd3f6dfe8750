//! Reading what people type about gears: `37/18`, `37 18`, `direct`, `43:11`, `3.909`.

use super::axle::FinalDrive;
use super::gearbox::{Gear, Idler, Layout};
use super::teeth::{Mesh, Ratio, Teeth};
use crate::problem::Explain;
use crate::units::number;

/// Why a text tells no gears.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum GearTextError {
    /// Nothing was typed.
    Blank,
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
            Self::NotAPair { text } => format!("“{}” is not a pair of tooth counts", number::clip(text)),
            Self::Count { text } => format!("{} teeth cannot be", number::clip(text)),
            Self::NotADrive { text } => format!("“{}” is neither two tooth counts nor a ratio", number::clip(text)),
            Self::DirectInTwoShaft => "a two-shaft box has no direct gear".into(),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Blank | Self::NotAPair { .. } => "type both counts, such as 37/18".into(),
            Self::Count { .. } => format!("type a count from {} to {}", Teeth::LEAST, Teeth::GREATEST),
            Self::NotADrive { .. } => "type both counts, such as 43/11, or a ratio from 0.1 to 20, such as 3.909".into(),
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
    let mut parts = text
        .split(|c: char| c.is_whitespace() || matches!(c, '/' | ':' | ',' | '-' | '–' | '×' | 'x' | '\\'))
        .filter(|part| !part.is_empty());
    let (Some(first), Some(second), None) = (parts.next(), parts.next(), parts.next()) else {
        return Err(GearTextError::NotAPair { text: text.to_owned() });
    };
    Ok((count_of(first, text)?, count_of(second, text)?))
}

/// One tooth count.
///
/// # Errors
/// When it is no whole number from 8 to 150.
pub fn count(text: &str) -> Result<Teeth, GearTextError> {
    let text = text.trim();
    if text.is_empty() { Err(GearTextError::Blank) } else { count_of(text, text) }
}

fn count_of(part: &str, whole: &str) -> Result<Teeth, GearTextError> {
    if part.is_empty() || !part.bytes().all(|b| b.is_ascii_digit()) {
        return Err(GearTextError::NotAPair { text: whole.to_owned() });
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
    if matches!(text.trim().to_lowercase().as_str(), "direct" | "dir" | "d" | "1" | "1.0" | "1.00" | "1.000") {
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
/// As [`counts`].
pub fn idler(text: &str) -> Result<Idler, GearTextError> {
    if text.trim().is_empty() {
        return Ok(Idler::Plain(None));
    }
    if let Ok(teeth) = count(text) {
        return Ok(Idler::Plain(Some(teeth)));
    }
    counts(text).map(|(entry, exit)| Idler::Compound { entry, exit })
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

/// An extra stage: driven over driver teeth, or a plain ratio.
///
/// # Errors
/// When it is neither.
pub fn drive(text: &str) -> Result<FinalDrive, GearTextError> {
    if text.trim().is_empty() {
        return Err(GearTextError::Blank);
    }
    match counts(text) {
        Ok((driven, driver)) => Ok(FinalDrive::Pair(Mesh { driver, driven })),
        Err(count @ GearTextError::Count { .. }) if plain_ratio(text).is_none() => Err(count),
        Err(_) => plain_ratio(text).map(FinalDrive::Plain).ok_or_else(|| GearTextError::NotADrive { text: text.trim().to_owned() }),
    }
}

/// A decimal ratio from 0.1 to 20 as an exact fraction, to at most six digits behind the point.
fn plain_ratio(text: &str) -> Option<Ratio> {
    let text = text.trim().replace(',', ".");
    let text = text.strip_suffix(":1").unwrap_or(&text).trim_end();
    let (whole, behind) = text.split_once('.').unwrap_or((text, ""));
    if whole.len() > 2 || behind.len() > 6 || !whole.bytes().chain(behind.bytes()).all(|b| b.is_ascii_digit()) {
        return None;
    }
    let scale = 10_i128.pow(u32::try_from(behind.len()).ok()?);
    let ratio = Ratio::new(format!("{whole}{behind}").parse().ok()?, scale);
    (ratio >= Ratio::new(1, 10) && ratio <= Ratio::from_integer(20)).then_some(ratio)
}
