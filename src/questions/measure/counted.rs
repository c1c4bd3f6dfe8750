//! The teeth of a picture in words: the count, how sure it is, and what settles it.
//!
//! A picture is not of the job: whoever shows the page keeps it while it is looked at, has it counted in slices ([`Counting`]), and asks
//! here what that comes to.

pub use crate::counting::{Circle, CountError, Counted, Counting, Grey, Mark};
use crate::counting::{Sureness, together};
use crate::problem::{Explain, capital};

/// Counts a person can say there are.
pub const TEETH: std::ops::RangeInclusive<usize> = 4..=200;

/// What one picture, or two of the same gear, come to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// How many teeth, as far as the pictures tell.
    pub teeth: usize,
    /// Whether that is sure.
    pub is_sure: bool,
    /// Which counts it may be as well.
    perhaps: Vec<usize>,
    /// Whether its ring lies where the circle was placed.
    is_placed: bool,
}

/// What pictures come to: the last one, and an earlier one of the gear before it was turned.
pub fn told(last: &Counted, earlier: Option<&Counted>) -> Told {
    let (teeth, sureness) = earlier.map_or_else(|| (last.teeth, last.sureness.clone()), |earlier| together(earlier, last));
    let (is_sure, perhaps) = match sureness {
        Sureness::Sure => (true, Vec::new()),
        Sureness::NotSure(perhaps) => (false, perhaps),
    };
    Told { teeth, is_sure, perhaps, is_placed: last.evidence.is_placed() }
}

/// The count in a sentence; `own` is what the person says instead.
pub fn says(told: &Told, marks: &[Mark], own: Option<usize>) -> String {
    let teeth = told.teeth;
    if let Some(own) = own.filter(|own| *own != teeth) {
        return format!("{own} teeth, as you say. The picture says {teeth}.");
    }
    let hidden = marks.iter().filter(|mark| !mark.is_seen).count();
    let seen = match hidden {
        0 => "every tooth seen".to_owned(),
        hidden => format!("{} seen, {hidden} assumed", teeth.saturating_sub(hidden)),
    };
    if told.is_sure {
        return format!("{teeth} teeth: {seen}.");
    }
    if !told.is_placed {
        return format!("Not sure: {teeth} teeth, on a ring beside the circle. Drag the circle onto the tips of the gear you mean.");
    }
    let perhaps: Vec<String> = told.perhaps.iter().map(usize::to_string).collect();
    let perhaps = if perhaps.is_empty() { String::new() } else { format!(", perhaps {}", perhaps.join(" or ")) };
    format!(
        "Not sure: {teeth} teeth{perhaps} ({seen}). Check the marks, or turn the gear a third of the way round and take a second picture."
    )
}

/// Why there is no count, and what to do.
pub fn refused(why: &CountError) -> String {
    format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do()))
}
