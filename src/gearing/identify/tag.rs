//! What a tag or a stamp on an axle can mean: `10/43`, `43 10`, `3 54`, `3L27`, `46 1?`; counts in either order, or a ratio.

use crate::gearing::axle::FinalDrive;
use crate::gearing::identify::slips::Turned;
use crate::gearing::identify::tooth_pairs::Counts;
use crate::gearing::read::decimal_ratio;
use crate::gearing::teeth::Mesh;
use crate::units::number;

/// A text that says nothing of an axle: what was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TagError(pub String);

explain! { TagError:
    Self(text) => format!("“{}” is neither two tooth counts nor a ratio of an axle", number::clip(text)),
        "type the figures as they stand on the tag, a question mark for each that cannot be read, such as 43 1? or 3 54";
}

/// What a tag can mean, pairs first; nothing for a blank text.
///
/// Model: pinion and ring as [`Counts::of_axle`] has them, the ratio as [`Turned::usual`] of an axle; letters between figures part them.
///
/// # Errors
/// When it can mean nothing.
pub fn meanings(text: &str) -> Result<Vec<FinalDrive>, TagError> {
    if text.trim().is_empty() {
        return Ok(Vec::new());
    }
    let groups: Vec<&str> = text.split(|c: char| !(c.is_ascii_digit() || c == '?' || c == '.')).filter(|group| !group.is_empty()).collect();
    let mut found = match groups.as_slice() {
        [one] => alone(one),
        [first, second] => two(first, second),
        _ => Vec::new(),
    };
    crate::order::by_key(&mut found, |drive| matches!(drive, FinalDrive::Plain(_)));
    found.dedup();
    if found.is_empty() { Err(TagError(text.trim().to_owned())) } else { Ok(found) }
}

/// `3.54`, `354`, `4310`.
fn alone(group: &str) -> Vec<FinalDrive> {
    if group.contains('.') {
        return ratio(group).into_iter().collect();
    }
    let split = |at: usize| group.split_at_checked(at);
    match group.len() {
        3 => split(1).and_then(|(whole, parts)| ratio(&format!("{whole}.{parts}"))).into_iter().collect(),
        4 => split(2).map_or_else(Vec::new, |(first, second)| pairs(first, second)),
        _ => Vec::new(),
    }
}

/// `10/43`, `43 10`, `3 54`.
fn two(first: &str, second: &str) -> Vec<FinalDrive> {
    let mut found = pairs(first, second);
    if first.len() == 1 && second.len() == 2 {
        found.extend(ratio(&format!("{first}.{second}")));
    }
    found
}

/// A ratio that is usual of an axle.
fn ratio(text: &str) -> Option<FinalDrive> {
    let usual = Turned::Axle.usual();
    decimal_ratio(text).map(|(ratio, _)| ratio).filter(|ratio| usual.contains(*ratio)).map(FinalDrive::Plain)
}

/// Every plausible pair that the figures can be, in either order.
fn pairs(first: &str, second: &str) -> Vec<FinalDrive> {
    let Counts { driver, driven } = Counts::of_axle();
    let usual = Turned::Axle.usual();
    let all = driver.flat_map(|pinion| driven.clone().map(move |ring| (pinion, ring)));
    let matching = all.filter(|(pinion, ring)| {
        (is_read(*ring, first) && is_read(*pinion, second)) || (is_read(*pinion, first) && is_read(*ring, second))
    });
    let meshes = matching.filter_map(|(pinion, ring)| Mesh::new(pinion, ring));
    meshes.filter(|mesh| usual.contains(mesh.ratio())).map(FinalDrive::Pair).collect()
}

/// Whether a count can be read so: each figure the same, or a question mark.
fn is_read(count: u16, text: &str) -> bool {
    let count = count.to_string();
    count.len() == text.len() && count.chars().zip(text.chars()).all(|(figure, read)| read == figure || read == '?')
}
