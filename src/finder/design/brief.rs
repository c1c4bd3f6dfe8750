//! What a gear set to be designed must keep to.

use super::Target;
use crate::gearing::Layout;
use crate::units::limits::shown;

/// What a gear set to be designed must keep to.
#[derive(Clone, Debug, PartialEq)]
pub struct Brief {
    /// The tooth sum of every pair, which the centre distance gives at one pitch.
    pub sum: u16,
    /// The fewest teeth of a gear.
    pub least_teeth: u16,
    /// The most teeth of a gear.
    pub most_teeth: u16,
    /// How the box is laid out.
    pub layout: Layout,
    /// The ladder to aim at.
    pub target: Target,
}

/// Why a brief cannot be used.
#[derive(Clone, Debug, PartialEq)]
pub enum BriefError {
    /// No two counts inside the limits add up to the sum.
    NoPair {
        /// The tooth sum asked for.
        sum: u16,
        /// The fewest teeth.
        least: u16,
        /// The most teeth.
        most: u16,
    },
    /// First is not lower than top.
    NotFalling,
    /// A growth that turns the ladder over: each step over the next one above it, as typed.
    TurnsOver(f64),
}

explain! { BriefError:
    Self::NoPair { sum, least, most } => format!("no two gears of {least} to {most} teeth add up to {sum}"),
        "change the tooth sum, or widen the limits";
    Self::NotFalling => "the ratio of first is not above that of top", "type a larger ratio for first, or a smaller one for top";
    Self::TurnsOver(growth) => format!("with a growth of {} a higher gear would be lower than the one below it", shown(*growth)),
        "type a growth nearer 1, or fewer gears";
}
