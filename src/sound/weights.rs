//! How well each class of parts goes with what is said of a noise: plain points, common practice, no published source.
//!
//! A clear tone is teeth under load, a rough one a bearing, knocks are teeth without load, a boom is firing or the driveshaft, what is
//! felt in the steering wheel is a wheel, what is felt in the floor a shaft. Points are added; they are no probabilities.

use super::noise::{GoesWith, Kind, Load};
use super::orders::Follows;
use super::tone::{Origin, Seat, Tone};

/// What points hang on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Class {
    /// A pair of the box that carries the power, or the mesh of an extra stage.
    Loaded,
    /// A pair of the box that turns along.
    Idle,
    /// Ring and pinion.
    FinalDrive,
    /// A bearing.
    Bearing,
    /// A shaft of the box, once a turn.
    BoxShaft,
    /// The driveshaft.
    Driveshaft,
    /// Its joints.
    Joint,
    /// Tyres and wheels.
    Tyre,
    /// The engine's firing.
    Firing,
    /// The engine, once a turn.
    Engine,
    /// The release bearing.
    Release,
}

impl Class {
    pub(super) fn of(tone: &Tone) -> Self {
        match tone.origin {
            Origin::Pair(_) | Origin::Stage(_) if tone.carries => Self::Loaded,
            Origin::Pair(_) | Origin::Stage(_) => Self::Idle,
            Origin::FinalDrive => Self::FinalDrive,
            Origin::Bearing(..) | Origin::AnyBearing(_) => Self::Bearing,
            Origin::Countershaft | Origin::Mainshaft => Self::BoxShaft,
            Origin::Driveshaft => Self::Driveshaft,
            Origin::Joint => Self::Joint,
            Origin::Tyre => Self::Tyre,
            Origin::Firing => Self::Firing,
            Origin::Engine => Self::Engine,
            Origin::ReleaseBearing => Self::Release,
        }
    }

    /// Whether it is quiet without load.
    pub(super) fn needs_load(self) -> bool {
        matches!(self, Self::Loaded | Self::Idle)
    }

    /// Whether it is the engine's own.
    pub(super) fn is_engine(self) -> bool {
        matches!(self, Self::Firing | Self::Engine | Self::Release)
    }

    /// Whether its level changes between pull and overrun.
    pub(super) fn feels_load(self) -> bool {
        matches!(self, Self::Loaded | Self::FinalDrive | Self::Joint)
    }

    /// Points for the kind of noise, in the order whine, growl, rumble, clatter, boom, steering wheel, floor.
    const fn by_kind(self) -> [i8; 7] {
        match self {
            Self::Loaded => [4, 2, 0, 1, -2, -3, -3],
            Self::Idle => [1, 1, 0, 4, -3, -3, -3],
            Self::FinalDrive => [4, 2, 0, 0, -2, -3, -3],
            Self::Bearing => [1, 4, 3, 1, -2, -1, 0],
            Self::BoxShaft => [-2, 0, 1, 0, 0, 0, 1],
            Self::Driveshaft => [-2, 0, 2, -1, 3, 1, 4],
            Self::Joint => [-2, 0, 1, 2, 2, 1, 3],
            Self::Tyre => [0, 1, 3, -2, 1, 4, 2],
            Self::Firing => [-2, 0, 1, 1, 4, 0, 2],
            Self::Engine => [-3, -1, 1, -1, 2, 0, 2],
            Self::Release => [0, 0, 0, 0, -3, -3, -3],
        }
    }

    /// Points for when it is there: pulling, coasting, both.
    const fn by_load(self) -> [i8; 3] {
        match self {
            Self::Loaded => [2, 1, 0],
            Self::Idle => [-2, 1, 0],
            Self::FinalDrive => [2, 2, 0],
            Self::Bearing => [0, 0, 1],
            Self::BoxShaft | Self::Driveshaft | Self::Engine => [-1, -1, 1],
            Self::Joint => [1, 1, 0],
            Self::Tyre => [-2, -2, 2],
            Self::Firing => [1, -1, -1],
            Self::Release => [0, 0, 0],
        }
    }
}

/// Points for the kind of noise.
pub(super) fn of_kind(class: Class, kind: Kind) -> f64 {
    let [whine, growl, rumble, clatter, boom, wheel, floor] = class.by_kind();
    f64::from(match kind {
        Kind::Whine => whine,
        Kind::Growl => growl,
        Kind::Rumble => rumble,
        Kind::Clatter => clatter,
        Kind::Boom => boom,
        Kind::WheelShake => wheel,
        Kind::FloorShake => floor,
    })
}

/// Points for when it is there.
pub(super) fn of_load(class: Class, load: Load) -> f64 {
    let [pulling, coasting, both] = class.by_load();
    f64::from(match load {
        Load::Pulling => pulling,
        Load::Coasting => coasting,
        Load::Both => both,
    })
}

/// Points for what it keeps step with.
pub(super) fn of_step(tone: &Tone, follows: Follows, with: GoesWith) -> f64 {
    let at_wheel = tone.origin == Origin::Tyre || tone.seat == Some(Seat::Wheel);
    match (with, follows) {
        (GoesWith::Engine, Follows::Engine) => 2.0,
        (GoesWith::Engine, Follows::Road) | (GoesWith::Shaft | GoesWith::Wheel, Follows::Engine) => -3.0,
        (GoesWith::Shaft, Follows::Road) => {
            if at_wheel {
                0.0
            } else {
                2.0
            }
        }
        (GoesWith::Wheel, Follows::Road) => {
            if at_wheel {
                3.0
            } else {
                -2.0
            }
        }
    }
}

/// How many of its harmonics can be taken for its pitch.
pub(super) const fn harmonics(class: Class) -> u8 {
    match class {
        Class::Loaded | Class::Idle | Class::FinalDrive | Class::Bearing => 3,
        Class::Tyre => 6,
        Class::Firing => 4,
        Class::BoxShaft | Class::Driveshaft | Class::Joint | Class::Engine | Class::Release => 2,
    }
}
