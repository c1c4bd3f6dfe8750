//! A whole box in one line, as a list, a table or a letter has it: `2.47 1.67 1.24 1.00`, `24/29 36/17 31/22 27/26 direct`.
//!
//! Blanks, commas, tabs and new lines part the gears, labels such as `1st:` may stand before them. Here: which item is which;
//! `items` cuts the text.

mod items;

use super::{GearTextError, constant, gear, pair};
use crate::gearing::GearNumber;
use crate::gearing::gearbox::{Gear, Gearbox, Idler, Layout};
use crate::gearing::teeth::{Mesh, Ratio};
use crate::units::number;
use items::{Item, Label};

/// The texts of a box for the fields they belong in, each as its reader takes it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct BoxLine {
    /// The constant pair, where the line has it.
    pub constant: Option<String>,
    /// The forward gears, lowest first.
    pub gears: Vec<String>,
    /// The pair or ratio of reverse, where the line has it.
    pub reverse: Option<String>,
    /// What was taken where the line leaves it open.
    pub taken: Vec<Taken>,
}

/// Something that was taken, to be said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Taken {
    /// The first pair is the constant one: the pair as it stands in the line.
    ConstantFirst(String),
    /// The gears stand from the top down, and were turned round.
    TurnedRound,
    /// Bare numbers were put together two by two.
    Paired,
    /// An item that belongs in none of these fields: its text, with its label.
    LeftOut(String),
}

impl Taken {
    /// What was taken, in a few words.
    pub fn words(&self) -> String {
        match self {
            Self::ConstantFirst(text) => format!("{text} taken as the constant pair"),
            Self::TurnedRound => "listed from top gear down: turned round".into(),
            Self::Paired => "counts taken two by two".into(),
            Self::LeftOut(text) => format!("“{}” left out", number::clip(text)),
        }
    }
}

/// Why a text is no line of a box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LineError {
    /// Nothing, or nothing but labels.
    NoGears,
    /// More gears than a box can have: how many.
    TooMany(usize),
    /// Something that is no gear: what was not understood.
    NotUnderstood(String),
    /// A gear that cannot be.
    Gear {
        /// Which, 0 is first.
        gear: GearNumber,
        /// What its text is not.
        why: GearTextError,
    },
    /// A constant or reverse pair that cannot be.
    Pair(GearTextError),
}

explain! { LineError:
    Self::NoGears => "no gears are given",
        "paste the gears from the lowest up, such as 2.47 1.67 1.24 1.00 or 24/29 36/17 31/22 27/26 direct";
    Self::TooMany(given) => format!("{given} gears are more than a box can have here"),
        format!("paste the forward gears only, at most {}", Gearbox::MOST_GEARS);
    Self::NotUnderstood(text) => format!("“{}” is no gear", number::clip(text)),
        "paste the gears from the lowest up, such as 2.47 1.67 1.24 1.00 or 24/29 36/17 31/22 27/26 direct";
    Self::Gear { gear, why } => format!("{}: {}", gear, why.what()), why.what_to_do();
    Self::Pair(why) => why.what(), why.what_to_do();
}

/// Reads a whole box. `forward` is how many forward gears it is known to have; where that is open, the first pair of a box in line is
/// the constant one where it reduces and a counted gear follows.
///
/// # Errors
/// When there is no gear, more than eight, or something that is none.
///
/// ```
/// use layshaft::gearing::Layout;
/// use layshaft::gearing::read::line::{LineError, line};
/// let found = line("24/29 36/17 31/22 27/26 direct", Layout::InputReduced, None)?;
/// assert_eq!(found.constant.as_deref(), Some("24/29"));
/// assert_eq!(found.gears, ["36/17", "31/22", "27/26", "direct"]);
/// # Ok::<(), LineError>(())
/// ```
pub fn line(text: &str, layout: Layout, forward: Option<usize>) -> Result<BoxLine, LineError> {
    let (items, paired) = items::items(text)?;
    let mut found = BoxLine::default();
    if paired {
        found.taken.push(Taken::Paired);
    }
    let mut unnamed = Vec::new();
    for item in items {
        match item.label {
            Some(Label::Constant) if layout != Layout::TwoShaft => found.constant = Some(item.text),
            Some(Label::Reverse) => found.reverse = Some(item.text),
            Some(Label::Other | Label::Constant) => found.taken.push(Taken::LeftOut(item.said())),
            Some(Label::Gear) | None => unnamed.push(item),
        }
    }
    if found.constant.is_none() && begins_with_constant(&unnamed, layout, forward) {
        let text = unnamed.remove(0).text;
        found.taken.push(Taken::ConstantFirst(text.clone()));
        found.constant = Some(text);
    }
    found.gears = unnamed.into_iter().map(|item| item.text).collect();
    checked(found, layout)
}

/// Whether the first item is the constant pair: counts before gears of which one is counted too, in a box that has such a pair.
fn begins_with_constant(items: &[Item], layout: Layout, forward: Option<usize>) -> bool {
    let is_pair = |item: &Item| pair(&item.text, layout).is_ok();
    let [first, rest @ ..] = items else { return false };
    let possible = layout != Layout::TwoShaft && first.label.is_none() && is_pair(first) && !rest.is_empty();
    let reduces = || constant(&first.text, layout).is_ok_and(|mesh| mesh.driven > mesh.driver);
    possible && forward.map_or_else(|| reduces() && rest.iter().any(is_pair), |forward| items.len() > forward)
}

/// Every text read once, so that what fills the fields can be used; the lowest gear first.
fn checked(mut found: BoxLine, layout: Layout) -> Result<BoxLine, LineError> {
    let given = found.gears.len();
    match given {
        0 => return Err(LineError::NoGears),
        1..=Gearbox::MOST_GEARS => {}
        _ => return Err(LineError::TooMany(given)),
    }
    let read = |(at, text): (usize, &String)| gear(text, layout).map_err(|why| LineError::Gear { gear: GearNumber::at(at), why });
    let gears = found.gears.iter().enumerate().map(read).collect::<Result<Vec<Gear>, _>>()?;
    let joint = found.constant.as_deref().map(|text| constant(text, layout)).transpose().map_err(LineError::Pair)?;
    if let Some(text) = &found.reverse {
        super::reverse(text, Idler::Plain(None), layout).map_err(LineError::Pair)?;
    }
    let sizes: Vec<Option<Ratio>> = gears.iter().map(|gear| size(*gear, layout, joint)).collect();
    let rises = sizes.windows(2).all(|two| matches!(two, [Some(lower), Some(higher)] if lower < higher));
    if given > 1 && rises {
        found.gears.reverse();
        found.taken.push(Taken::TurnedRound);
    }
    Ok(found)
}

/// A gear's ratio without sign; without the constant pair, its own.
fn size(gear: Gear, layout: Layout, joint: Option<Mesh>) -> Option<Ratio> {
    let own = gear.ratio(layout, joint).or_else(|| gear.mesh().map(Mesh::ratio))?;
    Some(num_traits::Signed::abs(&own))
}
