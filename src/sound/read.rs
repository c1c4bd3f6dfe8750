//! Bearings as they are typed, a line each: `cluster front: 9 x 7.94 on 38.5 mm, 15°`.
//!
//! What it is called, with the shaft it sits on; how many balls or rollers; their diameter; the pitch circle they run on; their contact
//! angle where they have one.

use super::bearing::RollingBearing;
use super::orders::Fitted;
use super::tone::Seat;
use crate::units::{self, Angle, Length, System, Typed, UnitError, limits, number};

/// The most bearings that are listened for.
pub const MOST_BEARINGS: usize = 12;

/// Why a line is no bearing.
#[derive(Clone, Debug, PartialEq)]
pub enum BearingTextError {
    /// Number, diameter and circle are not all there: the line.
    NoGeometry(String),
    /// No shaft of the car is named: the line.
    NoSeat(String),
    /// A figure cannot be read, or is outside what it can be.
    Quantity {
        /// The line.
        line: String,
        /// Why.
        why: UnitError,
    },
    /// No bearing can be so: the line.
    CannotBe(String),
    /// More than are listened for.
    TooMany,
}

explain! { BearingTextError:
    Self::NoGeometry(line) => format!("“{}” does not say how many balls of what diameter run on what circle", number::clip(line)),
        "type it such as cluster front: 9 x 7.94 on 38.5 mm";
    Self::NoSeat(line) => format!("“{}” does not say on which shaft it sits", number::clip(line)),
        "begin with input, cluster, mainshaft, pinion or wheel, such as pinion rear: 9 x 7.94 on 38.5 mm";
    Self::Quantity { line, why } => format!("in “{}”: {}", number::clip(line), why.what()), why.what_to_do();
    Self::CannotBe(line) => format!("“{}” can be no bearing: so many balls have no room on that circle", number::clip(line)),
        "check the number, the diameter of a ball and that of the circle through their centres";
    Self::TooMany => format!("only the first {MOST_BEARINGS} bearings are listened for"), "take out those that are not in question";
}

/// Reads bearings, a line each or parted by semicolons; a blank text has none.
///
/// # Errors
/// Every line that cannot be read; the others are answered beside them.
pub fn bearings(typed: &Typed) -> (Vec<Fitted>, Vec<BearingTextError>) {
    let lines = typed.text.split(['\n', ';']).map(str::trim).filter(|line| !line.is_empty());
    let (mut fitted, mut errors) = (Vec::new(), Vec::new());
    for line in lines {
        match bearing(line, typed.units) {
            Ok(_) if fitted.len() == MOST_BEARINGS => {
                errors.push(BearingTextError::TooMany);
                break;
            }
            Ok(bearing) => fitted.push(bearing),
            Err(why) => errors.push(why),
        }
    }
    (fitted, errors)
}

fn bearing(line: &str, system: System) -> Result<Fitted, BearingTextError> {
    let no_geometry = || BearingTextError::NoGeometry(line.to_owned());
    let (name, geometry) = line.split_once(':').ok_or_else(no_geometry)?;
    let seat = seat_of(name).ok_or_else(|| BearingTextError::NoSeat(line.to_owned()))?;
    let geometry = geometry.to_lowercase().replace(['×', '*'], "x");
    let (elements, sizes) = geometry.split_once('x').ok_or_else(no_geometry)?;
    let elements: u16 = elements.trim().parse().map_err(|_| no_geometry())?;
    let (element, behind) = sizes.split_once("on").ok_or_else(no_geometry)?;
    let (circle, contact) = behind.split_once(", ").unwrap_or((behind, ""));
    let wrong = |why| BearingTextError::Quantity { line: line.to_owned(), why };
    let (element, circle) = (element.trim(), circle.trim());
    // A bare diameter is in the unit of the circle.
    let unit = circle.trim_start_matches(|c: char| !c.is_alphabetic() && c != '"');
    let is_bare = element.ends_with(|c: char| c.is_ascii_digit());
    let element = if is_bare { format!("{element} {unit}") } else { element.to_owned() };
    let element: Length = units::read(&element, system, &limits::ROLLING_ELEMENT).map_err(wrong)?;
    let circle: Length = units::read(circle, system, &limits::PITCH_CIRCLE).map_err(wrong)?;
    let contact: Angle =
        if contact.trim().is_empty() { Angle::default() } else { units::read(contact, system, &limits::CONTACT_ANGLE).map_err(wrong)? };
    let bearing = RollingBearing::new(elements, element, circle, contact);
    let bearing = bearing.ok_or_else(|| BearingTextError::CannotBe(line.to_owned()))?;
    Ok(Fitted { name: name.trim().to_owned(), seat, bearing })
}

/// The shaft that a name begins with or holds.
fn seat_of(name: &str) -> Option<Seat> {
    const WORDS: [(&str, Seat); 14] = [
        ("input", Seat::Input),
        ("first motion", Seat::Input),
        ("cluster", Seat::Countershaft),
        ("countershaft", Seat::Countershaft),
        ("layshaft", Seat::Countershaft),
        ("laygear", Seat::Countershaft),
        ("mainshaft", Seat::Output),
        ("output", Seat::Output),
        ("pinion", Seat::Pinion),
        ("driveshaft", Seat::Pinion),
        ("propshaft", Seat::Pinion),
        ("wheel", Seat::Wheel),
        ("hub", Seat::Wheel),
        ("axle", Seat::Wheel),
    ];
    let name = name.to_lowercase();
    let found = WORDS.iter().filter_map(|(word, seat)| Some((name.find(word)?, *seat)));
    found.min_by_key(|(at, _)| *at).map(|(_, seat)| seat)
}
