//! Epicyclic sets: an overdrive or a range stage from the teeth of its sun and ring.

use super::teeth::{Ratio, Teeth};

/// Two central gears and the carrier of the planets between them.
///
/// Model: Willis, (n₁ − n₀) / (n₂ − n₀) = i₀ with n₀ the carrier's speed, i₀ being what the train would give with its carrier held.
/// Source: Khurmi and Gupta, Theory of Machines, chapter 13. Speeds are in any one unit, signed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Epicyclic {
    standing_ratio: Ratio,
}

/// A member of a simple set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Member {
    /// The central gear.
    Sun,
    /// The gear around the planets.
    Ring,
    /// What the planets are carried on.
    Carrier,
}

impl Epicyclic {
    /// A train by its ratio with the carrier held; `None` for a ratio of nothing, or of one, which moves nothing.
    pub fn new(standing_ratio: Ratio) -> Option<Self> {
        let useful = standing_ratio != Ratio::from_integer(0) && standing_ratio != Ratio::from_integer(1);
        useful.then_some(Self { standing_ratio })
    }

    /// A sun and a ring with simple planets, i₀ = −z₂ / z₁; `None` where the ring is not larger than the sun by an even number
    /// of teeth of two planets.
    pub fn simple(sun: Teeth, ring: Teeth) -> Option<Self> {
        let room = ring.count().checked_sub(sun.count())?;
        (room > 0 && room.is_multiple_of(2)).then(|| Self { standing_ratio: -Ratio::new(ring.exact(), sun.exact()) })
    }

    /// The carrier's speed from both central gears'.
    pub fn carrier(self, first: Ratio, second: Ratio) -> Ratio {
        (first - self.standing_ratio * second) / (Ratio::from_integer(1) - self.standing_ratio)
    }

    /// The first (sun) gear's speed.
    pub fn first(self, second: Ratio, carrier: Ratio) -> Ratio {
        carrier + self.standing_ratio * (second - carrier)
    }

    /// The second (ring) gear's speed.
    pub fn second(self, first: Ratio, carrier: Ratio) -> Ratio {
        carrier + (first - carrier) / self.standing_ratio
    }

    /// Input turns for one output turn with the third member held; `None` where input and output are one member.
    ///
    /// ```
    /// use layshaft::gearing::planetary::{Epicyclic, Member};
    /// use layshaft::gearing::{Ratio, Teeth};
    /// # fn example() -> Option<()> {
    /// let set = Epicyclic::simple(Teeth::new(30)?, Teeth::new(60)?)?;
    /// // A range stage, ring held: 1 + 60/30. An overdrive, sun held: 1 ÷ (1 + 30/60).
    /// assert_eq!(set.ratio(Member::Sun, Member::Carrier), Some(Ratio::new(3, 1)));
    /// assert_eq!(set.ratio(Member::Carrier, Member::Ring), Some(Ratio::new(2, 3)));
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn ratio(self, input: Member, output: Member) -> Option<Ratio> {
        let (one, i0) = (Ratio::from_integer(1), self.standing_ratio);
        Some(match (input, output) {
            (Member::Sun, Member::Carrier) => one - i0,
            (Member::Carrier, Member::Sun) => (one - i0).recip(),
            (Member::Ring, Member::Carrier) => one - i0.recip(),
            (Member::Carrier, Member::Ring) => (one - i0.recip()).recip(),
            (Member::Sun, Member::Ring) => i0,
            (Member::Ring, Member::Sun) => i0.recip(),
            _ => return None,
        })
    }
}

/// Whether `planets` can stand at equal distances: the sum of the counts divided by the planets is whole. From memory; the usual assembly condition.
pub fn spaces_evenly(sun: Teeth, ring: Teeth, planets: u16) -> bool {
    planets > 0 && (sun.count() + ring.count()).is_multiple_of(planets)
}
