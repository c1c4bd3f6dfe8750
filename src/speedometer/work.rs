//! Which of the combinations that read near enough to true costs the least work, the shop's own gears before any other.

use super::gear::{Role, SpeedoGear};
use super::shelf::Candidate;
use super::train::Train;

worded! {
    /// What must be done to fit a combination, the least first. Common practice, no published source.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
    pub enum Work {
        /// Nothing: it is what is fitted.
        Fitted => "as fitted";
        /// Another driven gear in the housing that is there: it comes out with the cable.
        Driven => "driven gear only, a ten-minute job";
        /// A driven gear that goes into another housing; the drive gear stays.
        OtherDriven => "driven gear with its own housing, the drive stays";
        /// Another drive gear: the tail of the gearbox comes apart.
        Drive => "drive gear too: the tail housing comes off";
        /// An adapter between gearbox and cable.
        Adapter => "with an adapter in the cable";
    }
    /// What is to be done, in a few words.
    pub fn words;
}

/// The most a dial may read high for a combination to count as near enough: SAE J2976 allows 4 % high (summary page of the standard).
pub const NEAR_HIGH: f64 = 0.04;

/// How little low still counts as true: 0.1 mph in 60, far closer than a dial can be read.
pub const NEAR_LOW: f64 = 0.1 / 60.0;

/// Whether an error, as a share of the true speed, is near enough: never low as far as a dial can be read, and little high.
pub fn is_near(error: f64) -> bool {
    (-NEAR_LOW..=NEAR_HIGH).contains(&error)
}

/// What is fitted, and the housings of the shelf it may lie in.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted<'s> {
    train: Train,
    shelf: &'s [SpeedoGear],
    housings: Vec<&'s str>,
}

impl<'s> Fitted<'s> {
    /// The housings that have both gears; where none has, those that have the drive gear.
    pub fn new(train: Train, shelf: &'s [SpeedoGear]) -> Self {
        let with = |role: Role, teeth: u16| {
            let found = shelf.iter().filter(move |gear| gear.role == role && gear.teeth == teeth);
            found.map(|gear| gear.housing.as_str()).collect::<Vec<&str>>()
        };
        let (drives, driven) = (with(Role::Drive, train.drive()), with(Role::Driven, train.driven()));
        let both: Vec<&str> = drives.iter().copied().filter(|housing| driven.contains(housing)).collect();
        Self { train, shelf, housings: if both.is_empty() { drives } else { both } }
    }

    /// What must be done to fit a combination instead.
    pub fn work(&self, candidate: &Candidate) -> Work {
        let housing = self.shelf.get(candidate.drive).map_or("", |gear| gear.housing.as_str());
        match candidate.train {
            train if train == self.train => Work::Fitted,
            train if train.adapter() != self.train.adapter() => Work::Adapter,
            train if train.drive() != self.train.drive() => Work::Drive,
            _ if self.housings.contains(&housing) => Work::Driven,
            _ => Work::OtherDriven,
        }
    }

    /// Whether everything that is not in the car already is the shop's own.
    fn is_own(&self, candidate: &Candidate) -> bool {
        let stays = candidate.train.drive() == self.train.drive();
        let own = |at: usize| self.shelf.get(at).is_some_and(|gear| gear.own);
        own(candidate.driven) && (stays || own(candidate.drive)) && candidate.adapter.is_none_or(own)
    }

    /// Puts combinations in the order they are proposed in: those that are near enough first, of them the shop's own, then by the
    /// work, then by the size of the error; the others by their error alone.
    pub fn put_in_order(&self, candidates: &mut Vec<Candidate>) {
        let rank = |candidate: &Candidate| {
            let near = is_near(candidate.error);
            (!near, near && !self.is_own(candidate), if near { self.work(candidate) } else { Work::Fitted })
        };
        crate::order::by(candidates, |a, b| rank(a).cmp(&rank(b)).then_with(|| a.error.abs().total_cmp(&b.error.abs())));
    }
}
