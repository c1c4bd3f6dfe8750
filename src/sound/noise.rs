//! What can be said of a noise by ear.

use crate::gearing::speeds::Selected;
use crate::units::Frequency;

/// What kind of noise it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A clear tone that rises with speed.
    Whine,
    /// A rough tone.
    Growl,
    /// A low, uneven rolling.
    Rumble,
    /// Knocks without a tone.
    Clatter,
    /// A low tone that fills the car.
    Boom,
    /// Felt in the steering wheel.
    WheelShake,
    /// Felt in floor or seat.
    FloorShake,
}

/// When it is there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Load {
    /// While the engine pulls.
    Pulling,
    /// On the overrun.
    Coasting,
    /// Both alike.
    Both,
}

/// What it keeps step with while gears are changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum GoesWith {
    /// The engine's speed.
    Engine,
    /// The road speed, faster than the wheels: the driveshaft.
    Shaft,
    /// The turns of the wheels.
    Wheel,
}

/// What pressing the clutch does to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Clutch {
    /// It goes away.
    Goes,
    /// It stays.
    Stays,
    /// It is there with the clutch down alone.
    Comes,
}

/// All that is said of a noise.
#[derive(Clone, Debug, PartialEq)]
pub struct Heard {
    /// The gear it is heard in.
    pub selected: Selected,
    /// Whether the car stands while it is heard.
    pub stands: bool,
    /// What kind of noise it is.
    pub kind: Option<Kind>,
    /// Further gears in which it is there.
    pub there: Vec<Selected>,
    /// Gears in which it is gone.
    pub gone: Vec<Selected>,
    /// When it is there.
    pub load: Option<Load>,
    /// What it keeps step with.
    pub goes_with: Option<GoesWith>,
    /// What pressing the clutch does.
    pub clutch: Option<Clutch>,
    /// Its pitch.
    pub pitch: Option<Frequency>,
}

impl Heard {
    /// Whether anything is said but the gear.
    pub fn says_something(&self) -> bool {
        self.kind.is_some() || self.load.is_some() || self.goes_with.is_some() || self.clutch.is_some() || self.pitch.is_some()
    }
}
