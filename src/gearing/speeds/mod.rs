//! How fast every shaft and gear of a gearbox turns, and which way.
//!
//! Here: [`Turning`], the exact speed of each part in a gear, in neutral or in reverse. [`arrangement`] says which gears are
//! loose on their shafts, [`peaks`] finds the highest speeds, [`overrun`] what a downshift would spin the engine to,
//! [`meshes`] how often teeth meet.
//! Road speeds and torques are not here.

use std::fmt::{Display, Formatter};

pub mod arrangement;
pub mod meshes;
pub mod overrun;
pub mod peaks;
mod share;

pub use arrangement::{Arrangement, ReverseMesh, Side};
pub use meshes::Meeting;
pub use overrun::Downshift;
pub use peaks::Peak;
pub use share::Share;

use super::gearbox::{Gearbox, Layout};
use super::part::{Part, Shaft};
use super::teeth::{Ratio, Teeth};
use crate::gearing::GearNumber;
use crate::units::AngularVelocity;

/// What the gear lever has chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Selected {
    /// A forward gear.
    Gear(GearNumber),
    /// Nothing: input and output turn by themselves.
    Neutral,
    /// The reverse gear, idler in mesh.
    Reverse,
}

impl Display for Selected {
    fn fmt(&self, f: &mut Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Gear(gear) => gear.fmt(f),
            Self::Neutral => f.write_str("neutral"),
            Self::Reverse => f.write_str("reverse"),
        }
    }
}

/// One part and its exact speed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turns {
    /// The shaft or gear that turns.
    pub part: Part,
    /// Its teeth; a shaft has none.
    pub teeth: Option<Teeth>,
    /// The shaft it sits on.
    pub shaft: Shaft,
    /// Whether it can turn on its shaft.
    pub loose: bool,
    /// Whether the power goes through it.
    pub in_path: bool,
    /// Its speed, signed against the input's direction.
    pub speed: Share,
    /// Its speed less its shaft's; exactly zero for what is fixed or engaged.
    pub slip: Share,
}

/// Every part of a gearbox and how it turns.
///
/// Model: an ideal gear train; n₂/n₁ = −z₁/z₂ at each external mesh, and a gear locked to its shaft turns with it.
/// Source: the elementary gear-train relations of any theory-of-machines text (for instance Khurmi and Gupta, chapter 13).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Turning {
    /// Where the lever stands.
    pub selected: Selected,
    /// Input turns for one output turn, signed; `None` in neutral.
    pub ratio: Option<Ratio>,
    /// The shafts first, then the gears; an idler of unknown teeth is left out.
    pub parts: Vec<Turns>,
}

impl Turning {
    /// How a gearbox turns with that gear selected; `None` where it has no such gear.
    pub fn new(gearbox: &Gearbox, arrangement: &Arrangement, selected: Selected) -> Option<Self> {
        let ratio = match selected {
            Selected::Gear(gear) => Some(gearbox.ratio(gear)?),
            Selected::Neutral => None,
            Selected::Reverse => Some(gearbox.reverse_ratio()?),
        };
        let train = Train { gearbox, arrangement, selected };
        let shafts = [Shaft::Input, Shaft::Countershaft, Shaft::Output].map(Part::Shaft);
        let parts = shafts.into_iter().chain(Part::gears_of(gearbox)).filter_map(|part| train.turns(part, ratio));
        Some(Self { selected, ratio, parts: parts.collect() })
    }

    /// How a part turns; `None` where the box has no such part or its teeth are not known.
    pub fn part(&self, part: Part) -> Option<&Turns> {
        self.parts.iter().find(|turns| turns.part == part)
    }

    /// The input's and the output's speed for a given input speed; in neutral the output stands.
    ///
    /// ```
    /// use layshaft::gearing::speeds::{Arrangement, Selected, Turning};
    /// use layshaft::gearing::{Gear, GearNumber, Gearbox, Layout, Mesh};
    /// use layshaft::units::common::{in_rpm, rpm};
    /// # fn example() -> Option<()> {
    /// let gears = vec![Gear::Mesh(Mesh::new(18, 37)?), Gear::Direct];
    /// let gearbox = Gearbox::new(Layout::InputReduced, Mesh::new(25, 30), gears, None).ok()?;
    /// let first = Turning::new(&gearbox, &Arrangement::usual(&gearbox), Selected::Gear(GearNumber::FIRST))?;
    /// // 3,700 rpm ÷ 37/15
    /// let (_, output) = first.at_input(rpm(3_700.0));
    /// assert_eq!(in_rpm(output).round(), 1_500.0);
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn at_input(&self, input: AngularVelocity) -> (AngularVelocity, AngularVelocity) {
        (input, self.ratio.map_or(input * 0.0, |ratio| input / super::teeth::decimal(ratio)))
    }

    /// The input's and the output's speed for a given output speed; in neutral the input stands.
    pub fn at_output(&self, output: AngularVelocity) -> (AngularVelocity, AngularVelocity) {
        (self.ratio.map_or(output * 0.0, |ratio| output * super::teeth::decimal(ratio)), output)
    }
}

impl Turns {
    /// Its speed for given speeds of input and output (see [`Turning::at_input`]); in gear the input alone decides.
    pub fn speed_at(&self, (input, output): (AngularVelocity, AngularVelocity)) -> AngularVelocity {
        self.speed.at(input, output)
    }

    /// Its speed against its own shaft for given speeds of input and output.
    pub fn slip_at(&self, (input, output): (AngularVelocity, AngularVelocity)) -> AngularVelocity {
        self.slip.at(input, output)
    }
}

/// A gearbox while its parts' speeds are worked out.
struct Train<'a> {
    gearbox: &'a Gearbox,
    arrangement: &'a Arrangement,
    selected: Selected,
}

impl Train<'_> {
    fn turns(&self, part: Part, ratio: Option<Ratio>) -> Option<Turns> {
        let tie = |share: Share| ratio.map_or(share, |ratio| share.tied(ratio));
        let shaft = part.shaft(self.gearbox.layout());
        let speed = self.speed(part)?;
        // The idler turns with its spindle, or on it: nothing slips that is not counted at its meshes.
        let of_shaft = if shaft == Shaft::Idler { speed } else { self.shaft(shaft)? };
        Some(Turns {
            part,
            teeth: part.teeth(self.gearbox),
            shaft,
            loose: self.is_loose(part),
            in_path: self.in_path(part),
            speed: tie(speed),
            slip: tie(speed - of_shaft),
        })
    }

    fn speed(&self, part: Part) -> Option<Share> {
        match part {
            Part::Shaft(shaft) => self.shaft(shaft),
            Part::IdlerEntry | Part::IdlerExit => self.idler(),
            _ if !self.is_loose(part) => self.shaft(part.shaft(self.gearbox.layout())),
            Part::Driver(gear) => self.across(Part::Driven(gear), part),
            Part::Driven(gear) => self.across(Part::Driver(gear), part),
            Part::ReverseDriver => Some(self.speed(Part::ReverseDriven)? * self.gearbox.reverse_gears()?.ratio()),
            Part::ReverseDriven => Some(self.speed(Part::ReverseDriver)? / self.gearbox.reverse_gears()?.ratio()),
            Part::ConstantDriver | Part::ConstantDriven => None,
        }
    }

    fn shaft(&self, shaft: Shaft) -> Option<Share> {
        match (shaft, self.gearbox.layout()) {
            (Shaft::Input, _) => Some(Share::INPUT),
            (Shaft::Output, _) => Some(Share::OUTPUT),
            (Shaft::Countershaft, Layout::InputReduced) => Some(-(Share::INPUT / self.gearbox.constant()?.ratio())),
            (Shaft::Countershaft, Layout::OutputReduced) => Some(-(Share::OUTPUT * self.gearbox.constant()?.ratio())),
            (Shaft::Countershaft, Layout::TwoShaft) | (Shaft::Idler, _) => None,
        }
    }

    /// The speed of `to`, which meshes with `from`, a gear fixed on its shaft.
    fn across(&self, from: Part, to: Part) -> Option<Share> {
        let speed = self.shaft(from.shaft(self.gearbox.layout()))?;
        let teeth = Ratio::new(from.teeth(self.gearbox)?.exact(), to.teeth(self.gearbox)?.exact());
        Some(-(speed * teeth))
    }

    fn idler(&self) -> Option<Share> {
        let entry = Part::IdlerEntry.teeth(self.gearbox)?;
        if self.arrangement.reverse == ReverseMesh::Sliding && self.selected != Selected::Reverse {
            return Some(Share::REST);
        }
        let driver = self.speed(Part::ReverseDriver)?;
        Some(-(driver * Ratio::new(Part::ReverseDriver.teeth(self.gearbox)?.exact(), entry.exact())))
    }

    fn is_loose(&self, part: Part) -> bool {
        let reverse = |side| self.arrangement.reverse == ReverseMesh::Constant && self.arrangement.loose_in_reverse() == side;
        match part {
            Part::Driver(gear) => self.arrangement.loose(gear) == Side::Driver,
            Part::Driven(gear) => self.arrangement.loose(gear) == Side::Driven,
            Part::ReverseDriver => reverse(Side::Driver),
            Part::ReverseDriven => reverse(Side::Driven),
            _ => false,
        }
    }

    fn in_path(&self, part: Part) -> bool {
        let through_teeth = match self.selected {
            Selected::Gear(gear) => gear.of(self.gearbox.gears()).is_some_and(|gear| !gear.is_direct()),
            Selected::Neutral => false,
            Selected::Reverse => true,
        };
        match part {
            Part::Shaft(Shaft::Input | Shaft::Output) => self.selected != Selected::Neutral,
            Part::Shaft(_) | Part::ConstantDriver | Part::ConstantDriven => through_teeth,
            Part::Driver(gear) | Part::Driven(gear) => self.selected == Selected::Gear(gear),
            Part::ReverseDriver | Part::ReverseDriven | Part::IdlerEntry | Part::IdlerExit => self.selected == Selected::Reverse,
        }
    }
}
