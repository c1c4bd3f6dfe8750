//! The table of least and greatest values: one row feeds the check, the sentence, the field's hint and the random test values.
//!
//! A row knows its quantity, so a mass cannot be read with the row of a torque.

use super::unit::{self, Altitude, Measured, Plain, Share, TurnsPerDistance, Unit};
use super::{
    Angle, AngularVelocity, Area, Force, Frequency, Length, Mass, MomentOfInertia, Power, Pressure, System, ThermodynamicTemperature, Time,
    Torque, Velocity, number,
};
#[cfg(not(target_arch = "wasm32"))]
use super::{UnitError, read};

/// One row: what a typed quantity may be.
#[derive(Clone, Copy, Debug)]
pub struct Limits<Q: Measured> {
    /// The quantity's name in a sentence, without its article.
    pub word: &'static str,
    /// The unit of the two bounds.
    pub unit: &'static Unit<Q>,
    /// The least value allowed.
    pub least: f64,
    /// The greatest value allowed.
    pub greatest: f64,
    /// Why the bounds stand where they do.
    pub why: &'static str,
}

impl<Q: Measured> Limits<Q> {
    /// Whether a quantity is inside, the bounds included as closely as a conversion from another unit hits them.
    pub fn allow(&self, quantity: Q) -> bool {
        let value = self.unit.number(quantity);
        let slack = |bound: f64| 1e-9 * bound.abs();
        value.is_finite() && value >= self.least - slack(self.least) && value <= self.greatest + slack(self.greatest)
    }

    /// The bounds in words, in the row's own unit: `500 to 20,000 rpm`.
    pub fn range(&self) -> String {
        in_words(self.least, self.greatest, self.unit.symbol)
    }

    /// The bounds in words, in the unit a person types in, rounded inwards: `0.63 to 248 mph`.
    ///
    /// ```
    /// use layshaft::units::{limits, unit};
    /// // 400 km/h are 248.5 mph, 1 km/h is 0.621 mph.
    /// assert_eq!(limits::CRUISE_SPEED.range_in(&unit::MPH), "0.63 to 248 mph");
    /// ```
    pub fn range_in(&self, unit: &Unit<Q>) -> String {
        if unit == self.unit {
            return self.range();
        }
        let bound = |value: f64, round| {
            let exact = unit.number(self.unit.of(value));
            let near = rounded(exact, f64::round);
            if self.allow(unit.of(near)) && is_near(near, exact) { near } else { rounded(exact, round) }
        };
        in_words(bound(self.least, f64::ceil), bound(self.greatest, f64::floor), unit.symbol)
    }
}

/// A row of the table whatever its quantity, for what shows the fields and tries them.
///
/// What tries them is not in the browser's program: what stands in a table of functions stays in it, called or not.
pub trait AnyLimits: std::fmt::Debug + Sync {
    /// The quantity's name in a sentence, without its article.
    fn word(&self) -> &'static str;
    /// The symbol of the unit that a bare number is read in.
    fn symbol(&self, system: System) -> &'static str;
    /// Every unit that the quantity is typed in, with the bounds in words.
    #[cfg(not(target_arch = "wasm32"))]
    fn ranges(&self) -> Vec<(&'static str, String)>;
    /// The value at a share of the way from the least to the greatest, in the usual unit of a system; beyond 0 and 1 it lies outside.
    #[cfg(not(target_arch = "wasm32"))]
    fn value_at(&self, share: f64, system: System) -> f64;
    /// Reads a text.
    ///
    /// # Errors
    /// When the text is no number with a known unit, or lies outside the limits.
    #[cfg(not(target_arch = "wasm32"))]
    fn check(&self, text: &str, system: System) -> Result<(), UnitError>;
}

impl<Q: Measured> AnyLimits for Limits<Q> {
    fn word(&self) -> &'static str {
        self.word
    }

    fn symbol(&self, system: System) -> &'static str {
        Q::usual(system).symbol
    }

    #[cfg(not(target_arch = "wasm32"))]
    fn ranges(&self) -> Vec<(&'static str, String)> {
        Q::units().iter().map(|unit| (unit.symbol, self.range_in(unit))).collect()
    }

    #[cfg(not(target_arch = "wasm32"))]
    fn value_at(&self, share: f64, system: System) -> f64 {
        Q::usual(system).number(self.unit.of(self.least + share * (self.greatest - self.least)))
    }

    #[cfg(not(target_arch = "wasm32"))]
    fn check(&self, text: &str, system: System) -> Result<(), UnitError> {
        read(text, system, self).map(|_| ())
    }
}

/// A quantity with its unit and three significant digits, in the reader's units: `9.69 ft²`.
///
/// ```
/// use layshaft::units::{System, limits::say, unit};
/// // 0.9 m² ÷ 0.09290304
/// assert_eq!(say(unit::SQ_M.of(0.9), System::Inch), "9.69 ft²");
/// ```
pub fn say<Q: Measured>(quantity: Q, system: System) -> String {
    with_unit(&bare(quantity, system), Q::usual(system).symbol)
}

/// As [`say`], without the unit: what would be typed.
pub fn bare<Q: Measured>(quantity: Q, system: System) -> String {
    significant(Q::usual(system).number(quantity))
}

/// A value as it was given where four digits hold it, else rounded to three.
fn significant(value: f64) -> String {
    let tens = (-MOST_DECIMALS..MOST_DECIMALS).find(|tens| value.abs() < 10_f64.powi(*tens)).unwrap_or(MOST_DECIMALS);
    let to = |digits: i32| {
        let scale = 10_f64.powi(digits - tens);
        (value * scale).round() / scale
    };
    let four = to(4);
    shown(if is_near(four, value) { four } else { to(3) })
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
    ($($(#[$doc:meta])* $name:ident: $quantity:ty, $word:literal, $least:literal to $greatest:literal $unit:ident, $why:literal;)*) => {
        $(
            $(#[$doc])*
            pub const $name: Limits<$quantity> = Limits { word: $word, unit: &unit::$unit, least: $least, greatest: $greatest, why: $why };
        )*
        /// Every row, for tests that walk the table.
        pub const ALL: &[&dyn AnyLimits] = &[$(&$name),*];
    };
}

rows! {
    /// The engine speed at which the driver shifts.
    SHIFT_SPEED: AngularVelocity, "shift rpm", 500.0 to 20_000.0 RPM, "slower than idle or faster than any engine is a slip of the pen";
    /// The road speed of a steady cruise.
    CRUISE_SPEED: Velocity, "cruise speed", 1.0 to 400.0 KM_H, "walking pace to beyond any road";
    /// Any other speed of an engine: of a peak, a limit, a start.
    ENGINE_SPEED: AngularVelocity, "engine rpm", 500.0 to 20_000.0 RPM, "slower than idle or faster than any engine is a slip of the pen";
    /// Any other speed on the road: of a rolling start, of a time asked for.
    ROAD_SPEED: Velocity, "road speed", 1.0 to 400.0 KM_H, "walking pace to beyond any road";
    /// A distance rolled in one turn.
    CIRCUMFERENCE: Length, "rolling circumference", 500.0 to 6_000.0 MM, "smaller than a cart's or larger than a tractor's wheel";
    /// The diameter of a tyre.
    DIAMETER: Length, "tyre diameter", 200.0 to 1_900.0 MM, "smaller than a cart's or larger than a tractor's wheel";
    /// From the hub's centre to the road, under load.
    STANDING_RADIUS: Length, "loaded radius", 90.0 to 950.0 MM, "half of what a tyre's diameter can be";
    /// The radius of the circle that a tyre rolls on.
    ROLLING_RADIUS: Length, "rolling radius", 90.0 to 950.0 MM, "half of what a tyre's diameter can be";
    /// The roll-out distance in a number of turns.
    ROLLED: Length, "way rolled", 0.25 to 6_000.0 METRE, "from half a turn of a small wheel to a thousand of a large one";
    /// Tread depth lost.
    TREAD_LOST: Length, "tread depth lost", 0.0 to 30.0 MM, "deeper than any car's tread";
    /// Turns of the cable over a distance at which a dial reads true.
    DIAL_CONSTANT: TurnsPerDistance, "dial constant", 200.0 to 5_000.0 TURNS_MILE, "a third to several times the usual 1,000";
    /// Pulses over a distance at which an electronic dial reads true.
    DIAL_PULSES: TurnsPerDistance, "number of pulses per distance", 200.0 to 200_000.0 TURNS_MILE, "from one pulse for each turn of a cable to a modern wheel sensor";
    /// What a speedometer shows or a satellite receiver says.
    ROAD_CHECK_SPEED: Velocity, "speed of a road check", 1.0 to 500.0 KM_H, "walking pace to beyond any road";
    /// Mass of a car with driver and load.
    MASS: Mass, "mass", 100.0 to 20_000.0 KG, "a cycle car to a lorry";
    /// Mass of a trailer.
    TRAILER: Mass, "trailer mass", 0.0 to 20_000.0 KG, "nothing to a lorry's trailer";
    /// A share of a whole.
    SHARE: Share, "share", 1.0 to 100.0 PERCENT, "a share of a whole";
    /// Distance between the axles.
    WHEELBASE: Length, "wheelbase", 1_000.0 to 6_000.0 MM, "the shortest car to a long van";
    /// Height of the centre of gravity.
    GRAVITY_HEIGHT: Length, "height of the centre of gravity", 100.0 to 2_000.0 MM, "a racing car's to a van's";
    /// Drag coefficient times frontal area.
    DRAG_AREA: Area, "drag area", 0.1 to 6.0 SQ_M, "a record car's to a lorry's";
    /// Rolling resistance over weight.
    ROLLING: Plain, "rolling resistance", 0.002 to 0.2 NUMBER, "a rail wheel's to soft ground";
    /// Greatest grip over load.
    GRIP: Plain, "grip", 0.05 to 2.5 NUMBER, "ice to a racing tyre";
    /// A moment of inertia.
    INERTIA: MomentOfInertia, "moment of inertia", 0.000_1 to 100.0 KG_M2, "a small gear to the wheels of a lorry";
    /// Torque of an engine.
    TORQUE: Torque, "torque", 1.0 to 5_000.0 N_M, "a moped's to a lorry's";
    /// Power of an engine.
    POWER: Power, "power", 0.5 to 2_000.0 KW, "a moped's to a record car's";
    /// Barometric pressure.
    AIR_PRESSURE: Pressure, "air pressure", 500.0 to 1_100.0 MBAR, "a high pass to a deep high";
    /// Air temperature.
    AIR_TEMPERATURE: ThermodynamicTemperature, "air temperature", -40.0 to 60.0 CELSIUS, "any place a car is tested";
    /// Relative humidity.
    HUMIDITY: Share, "relative humidity", 0.0 to 100.0 PERCENT, "dry to saturated";
    /// Height above the sea of where a car is driven.
    ALTITUDE: Altitude, "height above the sea", -450.0 to 6_000.0 METRES_UP, "the lowest road to the highest";
    /// Time without thrust in a shift.
    SHIFT_TIME: Time, "shift time", 0.0 to 5.0 SECOND, "none to a very slow one";
    /// Turns of the wheel over a distance.
    TURNS: TurnsPerDistance, "number of turns per distance", 160.0 to 2_000.0 TURNS_KM, "smaller than a cart's or larger than a tractor's wheel";
    /// The normal module of gears.
    MODULE: Length, "normal module", 0.5 to 20.0 MM, "finer teeth carry no car, coarser ones fit into no gearbox";
    /// The helix angle of gears.
    HELIX: Angle, "helix angle", 0.0 to 50.0 DEGREE, "straight teeth to steeper than any gearbox has";
    /// The normal pressure angle of gears.
    PRESSURE_ANGLE: Angle, "pressure angle", 10.0 to 35.0 DEGREE, "14.5, 17.5 and 20° are usual";
    /// Between the axes of input or output and countershaft.
    CENTRE_DISTANCE: Length, "centre distance", 20.0 to 500.0 MM, "smaller than a moped's or larger than a lorry's gearbox";
    /// The width of a gear's teeth.
    FACE_WIDTH: Length, "face width", 2.0 to 200.0 MM, "thinner or wider than any gear of a gearbox";
    /// How long a synchroniser is given.
    SYNCHRONISING_TIME: Time, "synchronising time", 0.01 to 5.0 SECOND, "quicker than a hand or slower than patience";
    /// What turns with the input while the clutch is open.
    INPUT_INERTIA: MomentOfInertia, "inertia", 0.000_01 to 2.0 KG_M2, "lighter than a clutch plate or heavier than a flywheel";
    /// The mean diameter of a synchroniser's cone.
    CONE_DIAMETER: Length, "cone diameter", 20.0 to 250.0 MM, "smaller or larger than any gearbox holds";
    /// The width of a synchroniser's lining.
    LINING_WIDTH: Length, "lining width", 2.0 to 60.0 MM, "narrower or wider than any ring";
    /// The slope of a synchroniser's cone against the shaft.
    CONE_ANGLE: Angle, "cone angle", 3.0 to 30.0 DEGREE, "6 to 7.5° is usual (from memory)";
    /// One piece of a driveshaft, from joint centre to joint centre.
    SHAFT_LENGTH: Length, "shaft length", 150.0 to 4_000.0 MM, "two joints back to back to a lorry's longest";
    /// The outside of a driveshaft's tube.
    TUBE_OUTSIDE: Length, "outside of the tube", 15.0 to 250.0 MM, "a half shaft to a lorry's";
    /// The wall of a driveshaft's tube.
    TUBE_WALL: Length, "wall of the tube", 0.5 to 60.0 MM, "thin sheet to a solid bar";
    /// The bore of a driveshaft's tube.
    TUBE_BORE: Length, "bore of the tube", 1.0 to 249.0 MM, "a solid bar nearly, to a lorry's";
    /// How a shaft leans in side or plan view; below nothing it rises towards the rear, or runs to the left.
    SLOPE: Angle, "slope", -45.0 to 45.0 DEGREE, "no joint of a car turns through more";
    /// How far the rear joint of a shaft lies below, or right of, its front joint.
    JOINT_OFFSET: Length, "offset of a joint", -2_000.0 to 2_000.0 MM, "further than a lorry's axle lies below its gearbox";
    /// From the case face of a box to something on it.
    FROM_FACE: Length, "distance from the case face", 5.0 to 2_500.0 MM, "a nose to a lorry's box: a figure in another unit needs it behind it";
    /// A place on a box or in a tunnel, along the shaft or beside it.
    STATION: Length, "place", -1_000.0 to 2_500.0 MM, "a lorry's box: a figure in another unit needs it behind it";
    /// How far a slip joint can still go in.
    SLIP: Length, "slip", 0.0 to 200.0 MM, "home to drawn out of any yoke";
    /// Between the faces of an axle that its wheels are bolted to.
    AXLE_WIDTH: Length, "width of the axle", 500.0 to 3_000.0 MM, "a cycle car's to a lorry's";
    /// From the face of a wheel to the inner edge of its rim.
    BACKSPACE: Length, "backspace", 20.0 to 400.0 MM, "a narrow rim to a lorry's twin: a figure in another unit needs it behind it";
    /// Between a tyre and its arch.
    ARCH: Length, "room to the arch", 0.0 to 300.0 MM, "touching to an off-roader's";
    /// How far a clutch's release bearing travels.
    RELEASE_TRAVEL: Length, "release travel", 1.0 to 60.0 MM, "no clutch lets go in less, and none needs more";
    /// What a gearbox weighs.
    BOX_WEIGHT: Mass, "weight of the box", 2.0 to 1_000.0 KG, "a moped's to a lorry's";
    /// How far an axle's nose rises as its springs wind up.
    WINDUP: Angle, "rise of the nose", 0.0 to 15.0 DEGREE, "springs that wind up further tramp";
    /// What an indicator swings by over one turn of a shaft.
    RUN_OUT: Length, "run-out", 0.0 to 10.0 MM, "a shaft bent further is scrap: a figure in mm or thou needs its unit behind it";
    /// How fast a pinion may turn.
    PINION_SPEED: AngularVelocity, "pinion speed", 500.0 to 20_000.0 RPM, "slower than a loaded lorry's or faster than any";
    /// A part of a stack along a shaft.
    STACK_LENGTH: Length, "length of a part", 0.01 to 1_000.0 MM, "longer than any gearbox: a figure in mm or thou needs its unit behind it";
    /// How far off a measured length may be.
    STACK_TOLERANCE: Length, "tolerance", 0.0 to 0.5 MM, "a rule reads as closely: is the point in its place?";
    /// The play along a shaft that is wanted, below nothing preload.
    PLAY: Length, "end play", -0.5 to 5.0 MM, "more than a gearbox is set to: a figure in mm or thou needs its unit behind it";
    /// The diameter of a bore or of what sits in it.
    FIT_DIAMETER: Length, "diameter", 1.0 to 250.0 MM, "a needle to the largest bearing of a gearbox: a figure in another unit needs it behind it";
    /// The outside of a part with a bore.
    FIT_OUTSIDE: Length, "outside", 2.0 to 500.0 MM, "a bush to a wheel: a figure in another unit needs it behind it";
    /// How long a seat is.
    SEAT_LENGTH: Length, "length of a seat", 1.0 to 500.0 MM, "a washer to a shaft: a figure in another unit needs it behind it";
    /// Across one loose needle.
    NEEDLE: Length, "size of a needle", 1.0 to 12.0 MM, "a watch's to a small roller: a figure in mm needs its unit behind it";
    /// The room wanted between a bore and a shaft, below nothing interference.
    CLEARANCE: Length, "clearance", -0.5 to 1.0 MM, "more than any seat has: a figure in mm or thou needs its unit behind it";
    /// Over the tips, over pins or at the root of a gear.
    GEAR_OUTSIDE: Length, "diameter of the gear", 4.0 to 900.0 MM, "smaller or larger than any gear of a gearbox: a figure in another unit needs it behind it";
    /// Over several teeth of a gear.
    GEAR_SPAN: Length, "span over teeth", 0.5 to 500.0 MM, "less than two of the finest teeth or more than half the largest gear";
    /// The angle that the tips of a gear print.
    TIP_PRINT: Angle, "angle of the print", 0.0 to 60.0 DEGREE, "between the marks and the shaft: straight teeth print 0°, and at 90° there is no gear";
    /// How far a tooth runs along the shaft for a turn.
    LEAD: Length, "lead", 10.0 to 50_000.0 MM, "steeper or flatter than any gear of a gearbox";
    /// The diameter of a pin or ball laid between teeth.
    GAUGE_PIN: Length, "diameter of the pin", 0.5 to 40.0 MM, "1.7 times the module is usual";
    /// How far off a reading may be.
    GIVE_OR_TAKE: Length, "doubt of a reading", 0.000_5 to 0.5 MM, "a micrometer to a rule";
    /// The play between the teeth of two gears.
    BACKLASH: Length, "backlash", 0.0 to 5.0 MM, "more than any pair of gears has";
    /// How much is taken off a flank at its tip.
    TIP_RELIEF: Length, "tip relief", 0.0 to 0.3 MM, "more than any tip is relieved: a figure in mm or thou needs its unit behind it";
    /// The thickness of a shim or thrust washer.
    SHIM: Length, "thickness of a shim", 0.01 to 8.0 MM, "foil to a thrust washer: a figure in mm or thou needs its unit behind it";
    /// Between two bearings of a shaft.
    BEARING_SPAN: Length, "distance between the bearings", 10.0 to 1_000.0 MM, "longer than any gearbox: a figure in mm needs its unit behind it";
    /// The dynamic rating of a bearing.
    BEARING_RATING: Force, "rating of the bearing", 0.5 to 500.0 KN, "a needle cage to a lorry's axle";
    /// The radius that a balance pulls at or a dial stands at.
    LEVER: Length, "radius", 3.0 to 500.0 MM, "a pinion's flange to a wheel: a figure in mm needs its unit behind it";
    /// The pull of a spring balance.
    PULL: Force, "pull", 0.5 to 500.0 NEWTON, "a finger to a man's weight";
    /// The ratio of the radial to the axial load rating of a tapered bearing.
    BEARING_K: Plain, "K of the bearings", 0.5 to 3.0 NUMBER, "steep to flat rollers";
    /// The mark on a pinion.
    PINION_MARK: Length, "mark on the pinion", -0.6 to 0.6 MM, "a mark in thousandths needs thou behind it, one in hundredths of a mm its point";
    /// What a dial reads.
    DIAL_READING: Length, "dial reading", -6.0 to 6.0 MM, "further than a dial goes: a figure in mm or thou needs its unit behind it";
    /// How warm the parts are when they are measured.
    BENCH_TEMPERATURE: ThermodynamicTemperature, "bench temperature", -20.0 to 120.0 CELSIUS, "a cold shed to a case out of the oven";
    /// How warm the box gets.
    WORKING_TEMPERATURE: ThermodynamicTemperature, "working temperature", 0.0 to 180.0 CELSIUS, "80 to 110 °C is usual, oil does not last beyond";
    /// A pitch that is heard.
    PITCH: Frequency, "pitch", 5.0 to 20_000.0 HERTZ, "slower than a wheel turns or higher than an ear hears";
    /// The diameter of a ball or roller.
    ROLLING_ELEMENT: Length, "diameter of a ball", 1.0 to 80.0 MM, "a needle to a lorry's roller: a figure in another unit needs it behind it";
    /// The circle through the centres of a bearing's balls.
    PITCH_CIRCLE: Length, "circle of the balls", 6.0 to 400.0 MM, "the smallest needle cage to a lorry's hub: a figure in another unit needs it behind it";
    /// The angle at which the balls of a bearing touch their races.
    CONTACT_ANGLE: Angle, "contact angle", 0.0 to 60.0 DEGREE, "a deep-groove bearing to a thrust bearing";
    /// The friction of a synchroniser's cone.
    CONE_FRICTION: Plain, "friction of the cones", 0.02 to 0.4 NUMBER, "0.08 to 0.12 is usual in oil (from memory)";
    /// The outer diameter of a clutch plate.
    CLUTCH_DIAMETER: Length, "clutch plate", 80.0 to 500.0 MM, "smaller than a cycle's or larger than a lorry's";
    /// An engine speed wished for.
    WISHED_RPM: AngularVelocity, "engine rpm", 100.0 to 20_000.0 RPM, "slower than idle or faster than any engine is a slip of the pen";
    /// A road speed wished for.
    WISHED_SPEED: Velocity, "road speed", 1.0 to 500.0 KM_H, "walking pace to beyond any road";
    /// A time wished for.
    WISHED_TIME: Time, "time", 0.5 to 600.0 SECOND, "quicker than any car or slower than walking";
    /// A distance over which a time is wished for.
    WISHED_DISTANCE: Length, "distance", 1.0 to 10_000.0 METRE, "a car's length to ten kilometres";
}
