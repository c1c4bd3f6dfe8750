//! Pairs of lengths typed in one line, `0: 6; 12: 4 1/2 in`: the outline of a box or a tunnel station by station, the holes of a case.

use super::with_shared_unit;
use crate::units::common::millimetres;
use crate::units::{Length, System, UnitError, limits, number, read};

/// A place and what is measured there.
pub type Station = (Length, Length);

/// Heights above the shaft's line at distances behind the case face, straight between them; at least two.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline(Vec<Station>);

/// The bolt holes of a case face.
#[derive(Clone, Debug, PartialEq)]
pub enum Pattern {
    /// By a name that the shop has for it.
    Named(String),
    /// Across and up from the shaft, hole by hole.
    Holes(Vec<Station>),
}

/// Why a text is no line of pairs.
#[derive(Clone, Debug, PartialEq)]
pub enum StationError {
    /// A part without a colon between two lengths: the part.
    NoPair(String),
    /// One station is no outline.
    Alone,
    /// A length that cannot be read.
    Length(UnitError),
}

explain! { StationError:
    Self::NoPair(text) => format!("“{}” is no pair of lengths", number::clip(text)),
        "type a length, a colon and a length for each, with semicolons between: 0: 6; 12: 4 1/2";
    Self::Alone => "one station makes no outline",
        "type the distance behind the case face and the height above the shaft at two places or more";
    Self::Length(why) => why.what(), why.what_to_do();
}

/// The room that a box wants below its tunnel, since the engine rocks: 12 mm or 1/2 in (common practice, no published source).
pub fn usual_room() -> Length {
    millimetres(12.0)
}

/// Holes no further apart than this take the same bolt.
const SAME_HOLE_MM: f64 = 0.8;

fn pairs(text: &str, system: System) -> Result<Vec<Station>, StationError> {
    let parts = text.split([';', '\n']).map(str::trim).filter(|part| !part.is_empty());
    let pair = |part: &str| {
        let sizes: Vec<&str> = part.split(':').collect();
        let [first, second] = sizes.as_slice() else { return Err(StationError::NoPair(part.to_owned())) };
        let whole = with_shared_unit(&[first, second]);
        let mut sizes = whole.iter().map(|size| read(size, system, &limits::STATION).map_err(StationError::Length));
        let (Some(first), Some(second)) = (sizes.next(), sizes.next()) else { return Err(StationError::Alone) };
        Ok((first?, second?))
    };
    parts.map(pair).collect()
}

impl Outline {
    /// Reads an outline, its stations in any order.
    ///
    /// # Errors
    /// When a part is no pair of lengths, or there are fewer than two.
    ///
    /// ```
    /// use layshaft::swap::Outline;
    /// use layshaft::units::{System, unit};
    /// let outline = Outline::read("0: 150; 300: 90; 600: 60", System::Metric)?;
    /// // Half way between 150 and 90.
    /// let height = outline.heights_at(unit::MM.of(150.0)).map(|[_, highest]| unit::MM.number(highest).round());
    /// assert_eq!(height, Some(120.0));
    /// # Ok::<(), layshaft::swap::StationError>(())
    /// ```
    pub fn read(text: &str, system: System) -> Result<Self, StationError> {
        let mut stations = pairs(text, system)?;
        if stations.len() < 2 {
            return Err(StationError::Alone);
        }
        crate::order::by(&mut stations, |one, other| one.0.value.total_cmp(&other.0.value));
        Ok(Self(stations))
    }

    /// The stations, the foremost first.
    pub fn stations(&self) -> &[Station] {
        &self.0
    }

    /// The least and the greatest height at a distance: two of them only at a step; none where it does not reach.
    pub fn heights_at(&self, distance: Length) -> Option<[Length; 2]> {
        let within = self.0.windows(2).filter_map(|pair| {
            let [(from, low), (to, high)] = pair else { return None };
            if distance < *from || distance > *to {
                return None;
            }
            let run = *to - *from;
            let share = if run.value > 0.0 { ((distance - *from) / run).value } else { 0.0 };
            Some(if run.value > 0.0 { [*low + (*high - *low) * share; 2] } else { [low.min(*high), low.max(*high)] })
        });
        within.reduce(|all, next| [all[0].min(next[0]), all[1].max(next[1])])
    }

    /// The least room below another outline, and where; below nothing it does not go in. None where the two have no stretch in common.
    ///
    /// Model: both are straight between their stations, so the least lies at a station of either.
    pub fn room_below(&self, tunnel: &Self) -> Option<Station> {
        let places = self.0.iter().chain(&tunnel.0).map(|(distance, _)| *distance);
        let room = |at: Length| Some((at, tunnel.heights_at(at)?[0] - self.heights_at(at)?[1]));
        places.filter_map(room).reduce(|least, next| if next.1 < least.1 { next } else { least })
    }
}

impl Pattern {
    /// Reads a bolt pattern: holes where a colon stands in it, else a name.
    ///
    /// # Errors
    /// When a hole is no pair of lengths.
    pub fn read(text: &str, system: System) -> Result<Self, StationError> {
        if text.contains(':') { pairs(text, system).map(Self::Holes) } else { Ok(Self::Named(text.trim().to_ascii_lowercase())) }
    }

    /// How many of its holes meet one of another's, and how many there are; none where one is told by name and the other by holes.
    ///
    /// Model: holes within 0.8 mm (1/32 in) of each other take the same bolt (common practice, no published source). Of two names all
    /// or none meet.
    pub fn meets(&self, other: &Self) -> Option<(usize, usize)> {
        match (self, other) {
            (Self::Named(own), Self::Named(other)) => Some((usize::from(own == other), 1)),
            (Self::Holes(own), Self::Holes(other)) => {
                let near = |one: &Station, two: &Station| {
                    let (across, up) = (one.0 - two.0, one.1 - two.1);
                    across.value.hypot(up.value) * 1_000.0 <= SAME_HOLE_MM
                };
                let meeting = own.iter().filter(|hole| other.iter().any(|each| near(hole, each))).count();
                Some((meeting, own.len().max(other.len())))
            }
            _ => None,
        }
    }
}
