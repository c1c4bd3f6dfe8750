//! Reading what people type about gears: `37/18`, `37 18`, `37.18`, `2.47`, `direct`, `43:11`, `3.909`.
//!
//! Here: a gear, a pair, an idler, a drive. [`counts`] reads bare tooth counts, `ratio` decimal ratios, [`mod@line`] a whole line of a box.

mod counts;
mod error;
pub mod line;
mod ratio;

pub use counts::{PointForSlash, count, counts, point_for_slash};
pub use error::GearTextError;
pub use ratio::decimal_ratio;

use super::axle::FinalDrive;
use super::gearbox::{Gear, Idler, Layout, Reverse, ReverseGears, needs_constant};
use super::teeth::Mesh;
use counts::parted;
use ratio::{plain_ratio, printed_ratio};

/// The constant pair, typed as the gear on the input or output line over the countershaft's.
///
/// # Errors
/// As [`counts()`].
///
/// ```
/// use layshaft::gearing::read::{GearTextError, constant};
/// use layshaft::gearing::{Layout, Mesh};
/// assert_eq!(Some(constant("25/30", Layout::InputReduced)?), Mesh::new(25, 30));
/// // At the output the countershaft drives.
/// assert_eq!(Some(constant("25/30", Layout::OutputReduced)?), Mesh::new(30, 25));
/// # Ok::<(), GearTextError>(())
/// ```
pub fn constant(text: &str, layout: Layout) -> Result<Mesh, GearTextError> {
    let (line, counter) = counts(text)?;
    Ok(match layout {
        Layout::OutputReduced => Mesh { driver: counter, driven: line },
        Layout::InputReduced | Layout::TwoShaft => Mesh { driver: line, driven: counter },
    })
}

/// The constant pair of a box in line with these gears: none where nothing is typed and no gear goes by its own pair.
///
/// # Errors
/// As [`counts()`].
pub fn constant_of(text: &str, layout: Layout, gears: &[Gear]) -> Result<Option<Mesh>, GearTextError> {
    if text.trim().is_empty() && !needs_constant(gears) { Ok(None) } else { constant(text, layout).map(Some) }
}

/// One forward gear: `direct`; the gear on the input or output line over the countershaft's (two-shaft: output over input); or its
/// whole ratio as printed, `2.47`. Where input and output are in line, a printed ratio of exactly one is direct.
///
/// # Errors
/// As [`counts()`]; direct in a two-shaft box; and where it can be two counts as well as one ratio (`11.43`).
///
/// ```
/// use layshaft::gearing::read::{GearTextError, gear};
/// use layshaft::gearing::{Gear, Layout, Mesh, Ratio};
/// // The gear on the output line stands first, and is driven.
/// assert_eq!(gear("37/18", Layout::InputReduced)?.mesh(), Mesh::new(18, 37));
/// assert_eq!(gear("direct", Layout::InputReduced)?, Gear::Direct);
/// let printed = gear("2.47", Layout::InputReduced)?;
/// assert_eq!(printed.ratio(Layout::InputReduced, None), Some(Ratio::new(247, 100)));
/// # Ok::<(), GearTextError>(())
/// ```
pub fn gear(text: &str, layout: Layout) -> Result<Gear, GearTextError> {
    if matches!(text.trim().to_ascii_lowercase().as_str(), "direct" | "dir" | "d" | "1" | "1:1" | "1/1") {
        return if layout == Layout::TwoShaft { Err(GearTextError::DirectInTwoShaft) } else { Ok(Gear::Direct) };
    }
    match (pair(text, layout), printed_ratio(text)) {
        (Ok(mesh), _) => either(text).map_or(Ok(Gear::Mesh(mesh)), Err),
        (_, Some(printed)) if printed.is_one() && layout != Layout::TwoShaft => Ok(Gear::Direct),
        (_, Some(printed)) => Ok(Gear::Printed(printed)),
        (Err(GearTextError::NotAPair(text)), None) => Err(GearTextError::NotAGear(text)),
        (Err(why), None) => Err(why),
    }
}

/// A pair of gears on the same two shafts as a forward gear's, in the order of [`gear`].
///
/// # Errors
/// As [`counts()`].
pub fn pair(text: &str, layout: Layout) -> Result<Mesh, GearTextError> {
    let (line, counter) = counts(text)?;
    Ok(match layout {
        Layout::OutputReduced => Mesh { driver: line, driven: counter },
        Layout::InputReduced | Layout::TwoShaft => Mesh { driver: counter, driven: line },
    })
}

/// Reverse with the idler that was read for it: the pair in the order of [`gear`], or the whole ratio as printed.
///
/// # Errors
/// As [`gear`]; and where it is direct.
pub fn reverse(text: &str, idler: Idler, layout: Layout) -> Result<Reverse, GearTextError> {
    match gear(text, layout)? {
        Gear::Mesh(pair) => Ok(Reverse::Geared(ReverseGears { pair, idler })),
        Gear::Printed(printed) => Ok(Reverse::Printed(printed)),
        Gear::Direct => Err(GearTextError::NotAGear(text.trim().to_owned())),
    }
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
        Err(GearTextError::NotACount(text)) => match counts(&text) {
            Ok((entry, exit)) => Ok(Idler::Compound { entry, exit }),
            Err(GearTextError::NotAPair(text)) => Err(GearTextError::NotAnIdler(text)),
            Err(why) => Err(why),
        },
        Err(why) => Err(why),
    }
}

/// A final drive: two tooth counts in either order (the larger is the ring), or a plain ratio.
///
/// # Errors
/// When it is neither.
///
/// ```
/// use layshaft::gearing::read::{GearTextError, final_drive};
/// use layshaft::gearing::{FinalDrive, Mesh};
/// let axle = final_drive("11/43")?;
/// assert_eq!(axle, final_drive("43:11")?);
/// assert_eq!(Some(axle), Mesh::new(11, 43).map(FinalDrive::Pair));
/// # Ok::<(), GearTextError>(())
/// ```
pub fn final_drive(text: &str) -> Result<FinalDrive, GearTextError> {
    match drive(text)? {
        FinalDrive::Pair(mesh) if mesh.driven < mesh.driver => Ok(FinalDrive::Pair(Mesh { driver: mesh.driven, driven: mesh.driver })),
        drive => Ok(drive),
    }
}

/// An extra stage: driven over driver teeth, or a plain ratio from 0.1 to 20.
///
/// A point parts two counts only where the number is too large for a ratio: `37.18` is 37/18, `11.43` a ratio.
///
/// # Errors
/// When it is neither, or when a comma leaves it open which of the two it is (`11,43`).
///
/// ```
/// use layshaft::gearing::Ratio;
/// use layshaft::gearing::read::{GearTextError, drive};
/// // An overdrive by its ratio, and drop gears by their teeth, driven over driver.
/// assert_eq!(drive("0.78")?.ratio(), Ratio::new(39, 50));
/// assert_eq!(drive("28/35")?.ratio(), Ratio::new(4, 5));
/// # Ok::<(), GearTextError>(())
/// ```
pub fn drive(text: &str) -> Result<FinalDrive, GearTextError> {
    if text.trim().is_empty() {
        return Err(GearTextError::BlankDrive);
    }
    match (counts(text), plain_ratio(text)) {
        (Ok(_), Some(ratio)) => either(text).filter(|_| !text.contains('.')).map_or(Ok(FinalDrive::Plain(ratio)), Err),
        (Ok((driven, driver)), None) => Ok(FinalDrive::Pair(Mesh { driver, driven })),
        (Err(_), Some(ratio)) => Ok(FinalDrive::Plain(ratio)),
        (Err(count @ GearTextError::Count(_)), None) => Err(count),
        (Err(_), None) => Err(GearTextError::NotADrive(text.trim().to_owned())),
    }
}

/// The refusal of two counts that can be one decimal ratio as well; `None` where they cannot.
fn either(text: &str) -> Option<GearTextError> {
    let (parted, _) = parted(text.trim()).zip(decimal_ratio(text))?;
    Some(GearTextError::PairOrRatio { text: text.trim().to_owned(), first: parted.first.to_owned(), second: parted.second.to_owned() })
}
