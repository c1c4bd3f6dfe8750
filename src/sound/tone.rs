//! A tone: what makes it, and how often it repeats for each turn of the engine or of the gearbox's output.

use crate::gearing::speeds::Share;
use crate::gearing::teeth::{Mesh, decimal};
use crate::gearing::{GearNumber, Ratio};
use crate::units::{AngularVelocity, Frequency};

/// A pair of gears in mesh.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Pair {
    /// The pair that joins the countershaft to the input or the output.
    Constant,
    /// The pair of a forward gear.
    Gear(GearNumber),
    /// The driving gear of reverse and its idler.
    ReverseEntry,
    /// The idler of reverse and the gear it drives.
    ReverseExit,
}

/// What of a rolling bearing strikes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Race {
    /// A damaged outer race.
    Outer,
    /// A damaged inner race.
    Inner,
    /// A damaged ball or roller.
    Element,
    /// The cage.
    Cage,
}

/// The shaft a bearing sits on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Seat {
    /// The input shaft.
    Input,
    /// The countershaft.
    Countershaft,
    /// The output shaft.
    Output,
    /// The driveshaft, and the pinion it drives.
    Pinion,
    /// A wheel.
    Wheel,
}

impl Seat {
    /// Every one, from the engine to the wheel.
    pub const ALL: [Self; 5] = [Self::Input, Self::Countershaft, Self::Output, Self::Pinion, Self::Wheel];
}

/// What makes a tone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Origin {
    /// A pair of gears of the box.
    Pair(Pair),
    /// The mesh of a counted extra stage, by its place.
    Stage(usize),
    /// Ring and pinion.
    FinalDrive,
    /// A bearing of known geometry, by its place among those that are given.
    Bearing(usize, Race),
    /// Some bearing of a shaft, its geometry not known.
    AnyBearing(Seat),
    /// The joints of the driveshaft, twice a turn.
    Joint,
    /// The driveshaft, once a turn.
    Driveshaft,
    /// A tyre or wheel, once a turn.
    Tyre,
    /// The countershaft, once a turn.
    Countershaft,
    /// The output shaft of the box, once a turn.
    Mainshaft,
    /// The firing of the engine.
    Firing,
    /// Crankshaft, flywheel and clutch, once a turn.
    Engine,
    /// The release bearing, which runs with the clutch down alone.
    ReleaseBearing,
}

/// Where something stands on the way from engine to road.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whereabouts {
    /// Engine and clutch.
    Engine,
    /// The gearbox.
    Gearbox,
    /// Between gearbox and axle.
    Line,
    /// The axle.
    Axle,
    /// The wheels.
    Wheels,
}

impl Origin {
    /// Where it stands; a bearing of known geometry as its seat.
    pub fn whereabouts(self, seat: Option<Seat>) -> Whereabouts {
        match self {
            Self::Firing | Self::Engine | Self::ReleaseBearing => Whereabouts::Engine,
            Self::Pair(_) | Self::Countershaft | Self::Mainshaft => Whereabouts::Gearbox,
            Self::Stage(_) | Self::Driveshaft | Self::Joint => Whereabouts::Line,
            Self::FinalDrive => Whereabouts::Axle,
            Self::Tyre => Whereabouts::Wheels,
            Self::AnyBearing(seat) => of_seat(seat),
            Self::Bearing(..) => seat.map_or(Whereabouts::Gearbox, of_seat),
        }
    }
}

fn of_seat(seat: Seat) -> Whereabouts {
    match seat {
        Seat::Input | Seat::Countershaft | Seat::Output => Whereabouts::Gearbox,
        Seat::Pinion => Whereabouts::Axle,
        Seat::Wheel => Whereabouts::Wheels,
    }
}

/// How fast engine and output of the box turn while a noise is heard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// The engine, and the input of the box.
    pub engine: AngularVelocity,
    /// The output of the box.
    pub output: AngularVelocity,
}

/// How often something repeats in one turn of the part that makes it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Times {
    /// Counted: teeth, twice a turn, half as often as there are cylinders.
    Counted(Ratio),
    /// Worked out from measured lengths.
    Measured(f64),
    /// A usual number, where nothing is known.
    About(f64),
}

impl Times {
    /// The number.
    pub fn value(self) -> f64 {
        match self {
            Self::Counted(times) => decimal(times),
            Self::Measured(times) | Self::About(times) => times,
        }
    }
}

/// A tone in one gear.
#[derive(Clone, Debug, PartialEq)]
pub struct Tone {
    /// What makes it.
    pub origin: Origin,
    /// The turns it counts by, as shares of the input's and the output's.
    pub turn: Share,
    /// How often it repeats in one of those turns.
    pub times: Times,
    /// The teeth, where teeth make it.
    pub mesh: Option<Mesh>,
    /// The turns of the two gears, by which its side tones stand apart: an eccentric gear or a single bad tooth shows there.
    pub beside: Vec<Share>,
    /// Whether the power goes through it in this gear.
    pub carries: bool,
    /// The shaft it sits on, where it is a bearing.
    pub seat: Option<Seat>,
}

impl Tone {
    /// A tone that no teeth make, always under the same load.
    pub(super) fn new(origin: Origin, turn: Share, times: Times) -> Self {
        Self { origin, turn, times, mesh: None, beside: Vec::new(), carries: true, seat: None }
    }

    /// How often it repeats, order × turns a second, without regard to direction.
    pub fn frequency(&self, moment: Moment) -> Frequency {
        turns_per_second(self.turn.at(moment.engine, moment.output)) * self.times.value()
    }

    /// How far its side tones stand from it and from one another.
    pub fn side_steps(&self, moment: Moment) -> Vec<Frequency> {
        self.beside.iter().map(|turn| turns_per_second(turn.at(moment.engine, moment.output))).collect()
    }

    /// How often it repeats for one repeat of another tone, whatever the speed; none where the one hangs on the engine and the other on
    /// the road, as in neutral.
    pub fn per(&self, other: &Self) -> Option<f64> {
        let (own, of) = (self.turn, other.turn);
        let none = Ratio::from_integer(0);
        let share = match (own.of_output == none && of.of_output == none, own.of_input == none && of.of_input == none) {
            (true, false) => decimal(own.of_input) / decimal(of.of_input),
            (false, true) => decimal(own.of_output) / decimal(of.of_output),
            _ => return None,
        };
        let orders = share.abs() * self.times.value() / other.times.value();
        orders.is_finite().then_some(orders)
    }
}

fn turns_per_second(speed: AngularVelocity) -> Frequency {
    Frequency::new::<uom::si::frequency::hertz>(speed.get::<uom::si::angular_velocity::revolution_per_second>().abs())
}
