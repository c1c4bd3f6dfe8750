//! The table of least and greatest values: one row feeds the check, the sentence, the field's hint and the random test values.

use super::number;
use super::table::{Measured, Unit};

/// One row: what a typed quantity may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// The quantity's name in a sentence, without its article.
    pub word: &'static str,
    /// The unit of the two bounds, by its symbol.
    pub unit: &'static str,
    /// The least value allowed.
    pub least: f64,
    /// The greatest value allowed.
    pub greatest: f64,
    /// Why the bounds stand where they do.
    pub why: &'static str,
}

impl Limits {
    /// Whether a value in the row's own unit is inside, the bounds included as closely as a conversion from another unit hits them.
    pub fn allow(&self, value: f64) -> bool {
        let slack = |bound: f64| 1e-9 * bound.abs();
        value.is_finite() && value >= self.least - slack(self.least) && value <= self.greatest + slack(self.greatest)
    }

    /// A quantity in the row's own unit; not a number where the row names a unit the quantity does not have.
    pub fn measure<Q: Measured>(&self, quantity: &Q) -> f64 {
        self.own_unit::<Q>().map_or(f64::NAN, |unit| (unit.take)(quantity))
    }

    /// A quantity in the row's own unit, with no more digits than it has: `0.9 m²`.
    pub fn say<Q: Measured>(&self, quantity: &Q) -> String {
        with_unit(&shown(self.measure(quantity)), self.unit)
    }

    /// The bounds in words, in the row's own unit: `500 to 20,000 rpm`.
    pub fn range(&self) -> String {
        in_words(self.least, self.greatest, self.unit)
    }

    /// The bounds in words, in the unit a person types in, rounded inwards: `0.63 to 248 mph`.
    pub fn range_in<Q: Measured>(&self, unit: &Unit<Q>) -> String {
        let Some(own) = self.own_unit::<Q>().filter(|own| own.symbol != unit.symbol) else { return self.range() };
        let bound = |value: f64, round| {
            let exact = (unit.take)(&(own.make)(value));
            let near = rounded(exact, f64::round);
            if self.allow((own.take)(&(unit.make)(near))) && is_near(near, exact) { near } else { rounded(exact, round) }
        };
        in_words(bound(self.least, f64::ceil), bound(self.greatest, f64::floor), unit.symbol)
    }

    fn own_unit<Q: Measured>(&self) -> Option<&'static Unit<Q>> {
        Q::units().iter().find(|unit| unit.symbol == self.unit)
    }
}

/// Two bounds and their unit.
fn in_words(least: f64, greatest: f64, unit: &str) -> String {
    with_unit(&format!("{} to {}", shown(least), shown(greatest)), unit)
}

/// Figures and their unit, parted by a blank; degrees of angle and what has no unit go without one.
fn with_unit(figures: &str, unit: &str) -> String {
    let blank = if matches!(unit, "" | "°") { "" } else { " " };
    format!("{figures}{blank}{unit}")
}

/// The most digits behind the point: a hundredth of a second in hours has seven.
const MOST_DECIMALS: i32 = 12;

/// A figure with no more digits behind the point than it has.
pub fn shown(bound: f64) -> String {
    let has_no_more = |decimals: &i32| {
        let scaled = bound * 10_f64.powi(*decimals);
        is_near(scaled.round(), scaled)
    };
    let decimals = (0..MOST_DECIMALS).find(has_no_more).unwrap_or(MOST_DECIMALS);
    number::show(bound, usize::try_from(decimals).unwrap_or_default())
}

/// Whether two values are the same but for the rounding of a conversion.
fn is_near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * other.abs()
}

/// A bound rounded by `round` to two significant digits, or to a whole number where that has more.
fn rounded(bound: f64, round: fn(f64) -> f64) -> f64 {
    if bound == 0.0 {
        return bound;
    }
    let tens = (0..MOST_DECIMALS).find(|tens| bound.abs() * 10_f64.powi(*tens) >= 10.0).unwrap_or(MOST_DECIMALS);
    let scale = 10_f64.powi(tens);
    round(bound * scale) / scale
}

macro_rules! rows {
    ($($(#[$doc:meta])* $name:ident: $word:literal, $least:literal to $greatest:literal $unit:literal, $why:literal;)*) => {
        $($(#[$doc])* pub const $name: Limits = Limits { word: $word, unit: $unit, least: $least, greatest: $greatest, why: $why };)*
        /// Every row, for tests that walk the table.
        pub const ALL: &[Limits] = &[$($name),*];
    };
}

rows! {
    /// The engine speed at which the driver shifts.
    SHIFT_SPEED: "shift rpm", 500.0 to 20_000.0 "rpm", "slower than idle or faster than any engine is a slip of the pen";
    /// The road speed of a steady cruise.
    CRUISE_SPEED: "cruise speed", 1.0 to 400.0 "km/h", "walking pace to beyond any road";
    /// Any other speed of an engine: of a peak, a limit, a start.
    ENGINE_SPEED: "engine rpm", 500.0 to 20_000.0 "rpm", "slower than idle or faster than any engine is a slip of the pen";
    /// Any other speed on the road: of a rolling start, of a time asked for.
    ROAD_SPEED: "road speed", 1.0 to 400.0 "km/h", "walking pace to beyond any road";
    /// A distance rolled in one turn.
    CIRCUMFERENCE: "rolling circumference", 500.0 to 6_000.0 "mm", "smaller than a cart's or larger than a tractor's wheel";
    /// The diameter of a tyre.
    DIAMETER: "tyre diameter", 200.0 to 1_900.0 "mm", "smaller than a cart's or larger than a tractor's wheel";
    /// From the hub's centre to the road, under load.
    STANDING_RADIUS: "loaded radius", 90.0 to 950.0 "mm", "half of what a tyre's diameter can be";
    /// The radius of the circle that a tyre rolls on.
    ROLLING_RADIUS: "rolling radius", 90.0 to 950.0 "mm", "half of what a tyre's diameter can be";
    /// The way rolled in a number of turns.
    ROLLED: "way rolled", 0.25 to 6_000.0 "m", "from half a turn of a small wheel to a thousand of a large one";
    /// Tread depth lost.
    TREAD_LOST: "tread depth lost", 0.0 to 30.0 "mm", "deeper than any car's tread";
    /// Turns of the cable over a distance at which a dial reads true.
    DIAL_CONSTANT: "dial constant", 200.0 to 5_000.0 "turns/mile", "a third to several times the usual 1,000";
    /// Pulses over a distance at which an electronic dial reads true.
    DIAL_PULSES: "number of pulses per distance", 200.0 to 200_000.0 "turns/mile", "from one pulse for each turn of a cable to a modern wheel sensor";
    /// What a speedometer shows or a satellite receiver says.
    ROAD_CHECK_SPEED: "speed of a road check", 1.0 to 500.0 "km/h", "walking pace to beyond any road";
    /// Mass of a car with driver and load.
    MASS: "mass", 100.0 to 20_000.0 "kg", "a cycle car to a lorry";
    /// Mass of a trailer.
    TRAILER: "trailer mass", 0.0 to 20_000.0 "kg", "nothing to a lorry's trailer";
    /// A share of a whole.
    SHARE: "share", 1.0 to 100.0 "%", "a share of a whole";
    /// Distance between the axles.
    WHEELBASE: "wheelbase", 1_000.0 to 6_000.0 "mm", "the shortest car to a long van";
    /// Height of the centre of gravity.
    GRAVITY_HEIGHT: "height of the centre of gravity", 100.0 to 2_000.0 "mm", "a racing car's to a van's";
    /// Drag coefficient times frontal area.
    DRAG_AREA: "drag area", 0.1 to 6.0 "m²", "a record car's to a lorry's";
    /// Rolling resistance over weight.
    ROLLING: "rolling resistance", 0.002 to 0.2 "", "a rail wheel's to soft ground";
    /// Greatest grip over load.
    GRIP: "grip", 0.05 to 2.5 "", "ice to a racing tyre";
    /// A moment of inertia.
    INERTIA: "moment of inertia", 0.000_1 to 100.0 "kg·m²", "a small gear to the wheels of a lorry";
    /// Torque of an engine.
    TORQUE: "torque", 1.0 to 5_000.0 "N·m", "a moped's to a lorry's";
    /// Power of an engine.
    POWER: "power", 0.5 to 2_000.0 "kW", "a moped's to a record car's";
    /// Barometric pressure.
    AIR_PRESSURE: "air pressure", 500.0 to 1_100.0 "mbar", "a high pass to a deep high";
    /// Air temperature.
    AIR_TEMPERATURE: "air temperature", -40.0 to 60.0 "°C", "any place a car is tested";
    /// Relative humidity.
    HUMIDITY: "relative humidity", 0.0 to 100.0 "%", "dry to saturated";
    /// Time without thrust in a shift.
    SHIFT_TIME: "shift time", 0.0 to 5.0 "s", "none to a very slow one";
    /// Turns of the wheel over a distance.
    TURNS: "number of turns per distance", 160.0 to 2_000.0 "turns/km", "smaller than a cart's or larger than a tractor's wheel";
    /// The normal module of gears.
    MODULE: "normal module", 0.5 to 20.0 "mm", "finer teeth carry no car, coarser ones fit into no gearbox";
    /// The helix angle of gears.
    HELIX: "helix angle", 0.0 to 50.0 "°", "straight teeth to steeper than any gearbox has";
    /// The normal pressure angle of gears.
    PRESSURE_ANGLE: "pressure angle", 10.0 to 35.0 "°", "14.5, 17.5 and 20° are usual";
    /// Between the axes of input or output and countershaft.
    CENTRE_DISTANCE: "centre distance", 20.0 to 500.0 "mm", "smaller than a moped's or larger than a lorry's gearbox";
    /// The width of a gear's teeth.
    FACE_WIDTH: "face width", 2.0 to 200.0 "mm", "thinner or wider than any gear of a gearbox";
    /// How long a synchroniser is given.
    SYNCHRONISING_TIME: "synchronising time", 0.01 to 5.0 "s", "quicker than a hand or slower than patience";
    /// What turns with the input while the clutch is open.
    INPUT_INERTIA: "inertia", 0.000_01 to 2.0 "kg·m²", "lighter than a clutch plate or heavier than a flywheel";
    /// The mean diameter of a synchroniser's cone.
    CONE_DIAMETER: "cone diameter", 20.0 to 250.0 "mm", "smaller or larger than any gearbox holds";
    /// The width of a synchroniser's lining.
    LINING_WIDTH: "lining width", 2.0 to 60.0 "mm", "narrower or wider than any ring";
    /// The slope of a synchroniser's cone against the shaft.
    CONE_ANGLE: "cone angle", 3.0 to 30.0 "°", "6 to 7.5° is usual (from memory)";
    /// An engine speed wished for.
    WISHED_RPM: "engine rpm", 100.0 to 20_000.0 "rpm", "slower than idle or faster than any engine is a slip of the pen";
    /// A road speed wished for.
    WISHED_SPEED: "road speed", 1.0 to 500.0 "km/h", "walking pace to beyond any road";
    /// A time wished for.
    WISHED_TIME: "time", 0.5 to 600.0 "s", "quicker than any car or slower than walking";
    /// A distance over which a time is wished for.
    WISHED_DISTANCE: "distance", 1.0 to 10_000.0 "m", "a car's length to ten kilometres";
}
