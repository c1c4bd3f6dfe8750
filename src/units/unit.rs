//! The table of units: how each is written and what one of it is.
//!
//! A unit is named by its constant, so that one there is none of does not compile.
//! Factors are uom's where those are exact; its pound and what is built on it are rounded to seven digits, so these stand here exactly.

use uom::si::{
    acceleration, angle, angular_velocity, area, energy, force, frequency, heat_flux_density, length, mass, moment_of_inertia, power,
    pressure, radiant_exposure, thermodynamic_temperature, time, torque, velocity,
};

use super::{
    Acceleration, Angle, AngularVelocity, Area, Energy, Force, Frequency, Length, Mass, MomentOfInertia, Power, Pressure, System,
    ThermodynamicTemperature, Time, Torque, Velocity,
};

/// Turns of a shaft or wheel over a distance, per metre inside (1/m).
pub type TurnsPerDistance = uom::si::f64::LinearNumberDensity;
/// Work taken up by each area of a lining.
pub type WorkPerArea = uom::si::f64::RadiantExposure;
/// Power taken up by each area of a lining.
pub type PowerPerArea = uom::si::f64::HeatFluxDensity;

/// A share of a whole, 1 for all of it; typed and read in percent.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Share(pub f64);

/// A plain number without a unit, such as a coefficient of friction.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Plain(pub f64);

/// Height above the sea (m inside); typed and read in feet or metres.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Altitude(pub f64);

/// One unit of a quantity.
#[derive(Debug)]
pub struct Unit<Q: 'static> {
    /// How it is shown.
    pub symbol: &'static str,
    /// How people write it, in lower case and without blanks, dots or the sign ·.
    pub spellings: &'static [&'static str],
    /// A quantity of so many of this unit.
    pub make: fn(f64) -> Q,
    /// How many of this unit a quantity is.
    pub take: fn(&Q) -> f64,
}

/// A unit is told by its symbol among those of its quantity.
impl<Q> PartialEq for Unit<Q> {
    fn eq(&self, other: &Self) -> bool {
        self.symbol == other.symbol
    }
}

impl<Q: Copy> Unit<Q> {
    /// A quantity of so many of this unit.
    ///
    /// ```
    /// use layshaft::units::unit;
    /// // 4.448222 N × 0.3048 m × 100
    /// let torque = unit::LBF_FT.of(100.0);
    /// assert_eq!((100.0 * unit::N_M.number(torque)).round(), 13_558.0);
    /// ```
    pub fn of(&self, number: f64) -> Q {
        (self.make)(number)
    }

    /// How many of this unit a quantity is.
    pub fn number(&self, quantity: Q) -> f64 {
        (self.take)(&quantity)
    }
}

/// A quantity that people type and read.
pub trait Measured: Copy + std::fmt::Debug + Send + Sync + 'static {
    /// Every unit it can be typed in.
    fn units() -> &'static [Unit<Self>];
    /// The unit it is usually read in.
    fn usual(system: System) -> &'static Unit<Self>;
}

/// The unit a text names; the usual one where it names none.
pub(super) fn find<Q: Measured>(text: &str, system: System) -> Option<&'static Unit<Q>> {
    let spelling = spelling(text);
    if spelling.is_empty() {
        return Some(Q::usual(system));
    }
    Q::units().iter().find(|unit| is_among(&spelling, unit.spellings))
}

/// A unit as it is looked for: small letters, without what people put between them.
fn spelling(text: &str) -> String {
    text.chars().filter(|c| !matches!(c, ' ' | '.' | '·' | '-' | '*' | '\u{a0}')).map(|c| c.to_ascii_lowercase()).collect()
}

/// By itself, since [`find`] is there once for every quantity.
fn is_among(spelling: &str, spellings: &[&str]) -> bool {
    spellings.contains(&spelling)
}

macro_rules! units {
    ($($quantity:ty, inch $inch:ident, metric $metric:ident {
        $($name:ident $symbol:literal [$($spelling:literal),*] $make:expr, $take:expr;)*
    })*) => {
        $(
            $(
                #[doc = concat!("One ", $symbol, " of `", stringify!($quantity), "`.")]
                pub const $name: Unit<$quantity> = Unit { symbol: $symbol, spellings: &[$($spelling),*], make: $make, take: $take };
            )*

            impl Measured for $quantity {
                fn units() -> &'static [Unit<Self>] {
                    &[$($name),*]
                }

                fn usual(system: System) -> &'static Unit<Self> {
                    match system {
                        System::Inch => &$inch,
                        System::Metric => &$metric,
                    }
                }
            }
        )*
    };
}

macro_rules! si {
    ($quantity:ident, $unit:path) => {
        |value| $quantity::new::<$unit>(value)
    };
}

units! {
    Length, inch INCH, metric MM {
        INCH "in" ["in", "inch", "inches", "\"", "”", "″"] si!(Length, length::inch), |q| q.get::<length::inch>();
        MM "mm" ["mm", "millimetre", "millimetres", "millimeter"] si!(Length, length::millimeter), |q| q.get::<length::millimeter>();
        THOU "thou" ["thou", "mil", "thousandths"] si!(Length, length::mil), |q| q.get::<length::mil>();
        MICRON "µm" ["µm", "um", "μm", "micron", "microns"] si!(Length, length::micrometer), |q| q.get::<length::micrometer>();
        CM "cm" ["cm"] si!(Length, length::centimeter), |q| q.get::<length::centimeter>();
        METRE "m" ["m", "metre", "metres", "meter", "meters"] si!(Length, length::meter), |q| q.get::<length::meter>();
        FOOT "ft" ["ft", "'", "foot", "feet", "′"] si!(Length, length::foot), |q| q.get::<length::foot>();
        MILE "mi" ["mi", "mile", "miles"] si!(Length, length::mile), |q| q.get::<length::mile>();
        KM "km" ["km", "kilometre", "kilometres", "kilometer"] si!(Length, length::kilometer), |q| q.get::<length::kilometer>();
    }
    Velocity, inch MPH, metric KM_H {
        MPH "mph" ["mph", "mi/h", "mileperhour", "milesperhour"] si!(Velocity, velocity::mile_per_hour), |q| q.get::<velocity::mile_per_hour>();
        KM_H "km/h" ["km/h", "kmh", "kph", "kmph"] si!(Velocity, velocity::kilometer_per_hour), |q| q.get::<velocity::kilometer_per_hour>();
        M_S "m/s" ["m/s", "mps"] si!(Velocity, velocity::meter_per_second), |q| q.get::<velocity::meter_per_second>();
    }
    AngularVelocity, inch RPM, metric RPM {
        RPM "rpm" ["rpm", "rev/min", "r/min", "1/min", "min⁻¹", "/min", "u/min"]
            si!(AngularVelocity, angular_velocity::revolution_per_minute), |q| q.get::<angular_velocity::revolution_per_minute>();
        RAD_S "rad/s" ["rad/s"] si!(AngularVelocity, angular_velocity::radian_per_second), |q| q.get::<angular_velocity::radian_per_second>();
    }
    Torque, inch LBF_FT, metric N_M {
        LBF_FT "lbf·ft" ["lbfft", "lbft", "ftlb", "ftlbf", "ftlbs", "lbsft", "lb/ft"] |value| Torque::new::<torque::newton_meter>(POUND_FORCE_N * 0.3048 * value), |q| q.get::<torque::newton_meter>() / (POUND_FORCE_N * 0.3048);
        N_M "N·m" ["nm", "newtonmetre", "newtonmetres"] si!(Torque, torque::newton_meter), |q| q.get::<torque::newton_meter>();
        LBF_IN "lbf·in" ["lbfin", "lbin", "inlb", "inlbf", "inlbs"] |value| Torque::new::<torque::newton_meter>(POUND_FORCE_N * 0.0254 * value), |q| q.get::<torque::newton_meter>() / (POUND_FORCE_N * 0.0254);
        KGF_M "kgf·m" ["kgfm", "kgm", "kpm", "mkg"] si!(Torque, torque::kilogram_force_meter), |q| q.get::<torque::kilogram_force_meter>();
    }
    Mass, inch LB, metric KG {
        LB "lb" ["lb", "lbs", "lbm", "pound", "pounds"] |value| Mass::new::<mass::kilogram>(POUND_KG * value), |q| q.get::<mass::kilogram>() / POUND_KG;
        KG "kg" ["kg", "kilo", "kilos", "kilogram", "kilograms"] si!(Mass, mass::kilogram), |q| q.get::<mass::kilogram>();
        TONNE "t" ["t", "tonne", "tonnes"] si!(Mass, mass::megagram), |q| q.get::<mass::megagram>();
        CWT "cwt" ["cwt"] |value| Mass::new::<mass::kilogram>(112.0 * POUND_KG * value), |q| q.get::<mass::kilogram>() / (112.0 * POUND_KG);
        GRAM "g" ["g", "gram", "grams"] si!(Mass, mass::gram), |q| q.get::<mass::gram>();
    }
    Power, inch HP, metric KW {
        HP "hp" ["hp", "bhp", "horsepower"] |value| Power::new::<power::watt>(MECHANICAL_HORSEPOWER_W * value), |q| q.get::<power::watt>() / MECHANICAL_HORSEPOWER_W;
        KW "kW" ["kw"] si!(Power, power::kilowatt), |q| q.get::<power::kilowatt>();
        PS "PS" ["ps", "cv", "ch", "pk"] |value| Power::new::<power::watt>(METRIC_HORSEPOWER_W * value), |q| q.get::<power::watt>() / METRIC_HORSEPOWER_W;
        WATT "W" ["w"] si!(Power, power::watt), |q| q.get::<power::watt>();
    }
    Force, inch LBF, metric NEWTON {
        LBF "lbf" ["lbf", "lb", "lbs"] |value| Force::new::<force::newton>(POUND_FORCE_N * value), |q| q.get::<force::newton>() / POUND_FORCE_N;
        NEWTON "N" ["n", "newton", "newtons"] si!(Force, force::newton), |q| q.get::<force::newton>();
        KN "kN" ["kn"] si!(Force, force::kilonewton), |q| q.get::<force::kilonewton>();
        KGF "kgf" ["kgf", "kp", "kg"] si!(Force, force::kilogram_force), |q| q.get::<force::kilogram_force>();
    }
    Energy, inch KJ, metric KJ {
        KJ "kJ" ["kj"] si!(Energy, energy::kilojoule), |q| q.get::<energy::kilojoule>();
        JOULE "J" ["j"] si!(Energy, energy::joule), |q| q.get::<energy::joule>();
    }
    Time, inch SECOND, metric SECOND {
        SECOND "s" ["s", "sec", "second", "seconds"] si!(Time, time::second), |q| q.get::<time::second>();
        MS "ms" ["ms"] si!(Time, time::millisecond), |q| q.get::<time::millisecond>();
        MINUTE "min" ["min", "minute", "minutes"] si!(Time, time::minute), |q| q.get::<time::minute>();
        HOUR "h" ["h", "hour", "hours"] si!(Time, time::hour), |q| q.get::<time::hour>();
    }
    Angle, inch DEGREE, metric DEGREE {
        DEGREE "°" ["°", "deg", "degree", "degrees"] si!(Angle, angle::degree), |q| q.get::<angle::degree>();
        RADIAN "rad" ["rad"] si!(Angle, angle::radian), |q| q.get::<angle::radian>();
    }
    Frequency, inch HERTZ, metric HERTZ {
        HERTZ "Hz" ["hz"] si!(Frequency, frequency::hertz), |q| q.get::<frequency::hertz>();
    }
    Area, inch SQ_FT, metric SQ_M {
        SQ_FT "ft²" ["ft²", "ft2", "sqft"] si!(Area, area::square_foot), |q| q.get::<area::square_foot>();
        SQ_M "m²" ["m²", "m2", "sqm"] si!(Area, area::square_meter), |q| q.get::<area::square_meter>();
        SQ_MM "mm²" ["mm²", "mm2"] si!(Area, area::square_millimeter), |q| q.get::<area::square_millimeter>();
        SQ_IN "in²" ["in²", "in2", "sqin"] si!(Area, area::square_inch), |q| q.get::<area::square_inch>();
    }
    Acceleration, inch FT_S2, metric M_S2 {
        FT_S2 "ft/s²" ["ft/s²", "ft/s2"] si!(Acceleration, acceleration::foot_per_second_squared), |q| q.get::<acceleration::foot_per_second_squared>();
        M_S2 "m/s²" ["m/s²", "m/s2"] si!(Acceleration, acceleration::meter_per_second_squared), |q| q.get::<acceleration::meter_per_second_squared>();
        G "g" ["g"] si!(Acceleration, acceleration::standard_gravity), |q| q.get::<acceleration::standard_gravity>();
    }
    MomentOfInertia, inch LB_IN2, metric KG_M2 {
        LB_IN2 "lb·in²" ["lbin²", "lbin2"] |value| MomentOfInertia::new::<moment_of_inertia::kilogram_square_meter>(POUND_SQUARE_INCH_KG_M2 * value), |q| q.get::<moment_of_inertia::kilogram_square_meter>() / POUND_SQUARE_INCH_KG_M2;
        KG_M2 "kg·m²" ["kgm²", "kgm2"] si!(MomentOfInertia, moment_of_inertia::kilogram_square_meter), |q| q.get::<moment_of_inertia::kilogram_square_meter>();
    }
    Pressure, inch IN_HG, metric MBAR {
        IN_HG "inHg" ["inhg", "\"hg"] |value| Pressure::new::<pressure::pascal>(INCH_OF_MERCURY_PA * value), |q| q.get::<pressure::pascal>() / INCH_OF_MERCURY_PA;
        MBAR "mbar" ["mbar", "hpa", "mb"] si!(Pressure, pressure::millibar), |q| q.get::<pressure::millibar>();
        KPA "kPa" ["kpa"] si!(Pressure, pressure::kilopascal), |q| q.get::<pressure::kilopascal>();
        PSI "psi" ["psi"] |value| Pressure::new::<pressure::pascal>(POUND_FORCE_N / (0.0254 * 0.0254) * value), |q| q.get::<pressure::pascal>() / (POUND_FORCE_N / (0.0254 * 0.0254));
        BAR "bar" ["bar"] si!(Pressure, pressure::bar), |q| q.get::<pressure::bar>();
        N_MM2 "N/mm²" ["n/mm²", "n/mm2", "mpa"] si!(Pressure, pressure::megapascal), |q| q.get::<pressure::megapascal>();
    }
    ThermodynamicTemperature, inch FAHRENHEIT, metric CELSIUS {
        FAHRENHEIT "°F" ["°f", "f", "degf"] si!(ThermodynamicTemperature, thermodynamic_temperature::degree_fahrenheit), |q| q.get::<thermodynamic_temperature::degree_fahrenheit>();
        CELSIUS "°C" ["°c", "c", "degc"] si!(ThermodynamicTemperature, thermodynamic_temperature::degree_celsius), |q| q.get::<thermodynamic_temperature::degree_celsius>();
    }
    WorkPerArea, inch J_MM2, metric J_MM2 {
        J_MM2 "J/mm²" ["j/mm²", "j/mm2"] si!(WorkPerArea, radiant_exposure::megajoule_per_square_meter), |q| q.get::<radiant_exposure::megajoule_per_square_meter>();
    }
    PowerPerArea, inch W_MM2, metric W_MM2 {
        W_MM2 "W/mm²" ["w/mm²", "w/mm2"] si!(PowerPerArea, heat_flux_density::watt_per_square_millimeter), |q| q.get::<heat_flux_density::watt_per_square_millimeter>();
    }
    Share, inch PERCENT, metric PERCENT {
        PERCENT "%" ["%", "percent"] |value| Share(value / 100.0), |q| q.0 * 100.0;
    }
    Altitude, inch FEET_UP, metric METRES_UP {
        METRES_UP "m" ["m", "metre", "metres", "meter", "meters"] Altitude, |q| q.0;
        FEET_UP "ft" ["ft", "'", "foot", "feet", "′"] |value| Altitude(value * METRES_PER_FOOT), |q| q.0 / METRES_PER_FOOT;
    }
    Plain, inch NUMBER, metric NUMBER {
        NUMBER "" [""] Plain, |q| q.0;
    }
    TurnsPerDistance, inch TURNS_MILE, metric TURNS_KM {
        TURNS_MILE "turns/mile" ["turns/mile", "rev/mile", "/mile", "revs/mile", "turnspermile", "revspermile", "revpermile", "permile", "tpm", "rev/mi", "/mi", "pulses/mile", "pulse/mile"]
            |value| per_metre(value / METRES_PER_MILE), |q| METRES_PER_MILE * turns_per_metre(*q);
        TURNS_KM "turns/km" ["turns/km", "rev/km", "/km", "revs/km", "turnsperkm", "revsperkm", "revperkm", "perkm", "pulses/km", "pulse/km", "imp/km"]
            |value| per_metre(value / 1000.0), |q| 1000.0 * turns_per_metre(*q);
    }
}

/// The avoirdupois pound, exact (NIST SP 811, Appendix B).
const POUND_KG: f64 = 0.453_592_37;
/// The pound-force, 0.453 592 37 kg × 9.806 65 m/s², exact.
const POUND_FORCE_N: f64 = 4.448_221_615_260_5;
/// 550 ft·lbf/s exactly, from the foot, the pound and standard gravity (NIST SP 811, Appendix B).
const MECHANICAL_HORSEPOWER_W: f64 = 745.699_871_582_270_2;
/// 75 kgf·m/s exactly (NIST SP 811, Appendix B).
const METRIC_HORSEPOWER_W: f64 = 735.498_75;
/// The conventional inch of mercury (NIST SP 811, Appendix B, 3.386 389 kPa; more digits from the conventional density of mercury).
const INCH_OF_MERCURY_PA: f64 = 3_386.388_640_341;
/// 0.453 592 37 kg × (0.0254 m)², exact.
const POUND_SQUARE_INCH_KG_M2: f64 = POUND_KG * 0.0254 * 0.0254;
/// The international mile, exact.
const METRES_PER_MILE: f64 = 1_609.344;
/// The international foot, exact.
const METRES_PER_FOOT: f64 = 0.3048;

fn per_metre(turns: f64) -> TurnsPerDistance {
    TurnsPerDistance::new::<uom::si::linear_number_density::per_meter>(turns)
}

fn turns_per_metre(quantity: TurnsPerDistance) -> f64 {
    quantity.get::<uom::si::linear_number_density::per_meter>()
}

/// Units and conversions that several rooms need by name.
pub mod common {
    use super::{AngularVelocity, Length, TurnsPerDistance, Velocity, angular_velocity, length, per_metre, turns_per_metre, velocity};

    /// An engine or shaft speed from revolutions per minute.
    pub fn rpm(value: f64) -> AngularVelocity {
        AngularVelocity::new::<angular_velocity::revolution_per_minute>(value)
    }

    /// A shaft speed in revolutions per minute.
    pub fn in_rpm(speed: AngularVelocity) -> f64 {
        speed.get::<angular_velocity::revolution_per_minute>()
    }

    /// A shaft speed in whole revolutions per minute, as it is shown: `6,500`.
    pub fn show_rpm(speed: AngularVelocity) -> String {
        crate::units::number::show(in_rpm(speed), 0)
    }

    /// A length from metres.
    pub fn metres(value: f64) -> Length {
        Length::new::<length::meter>(value)
    }

    /// A length from millimetres.
    pub fn millimetres(value: f64) -> Length {
        Length::new::<length::millimeter>(value)
    }

    /// A length in millimetres.
    pub fn in_millimetres(value: Length) -> f64 {
        value.get::<length::millimeter>()
    }

    /// A speed from metres per second.
    pub fn metres_per_second(value: f64) -> Velocity {
        Velocity::new::<velocity::meter_per_second>(value)
    }

    /// A speed in metres per second.
    pub fn in_metres_per_second(speed: Velocity) -> f64 {
        speed.get::<velocity::meter_per_second>()
    }

    /// The road speed of a wheel that rolls `circumference` at each turn.
    ///
    /// v = ω · C / 2π. uom takes the radian for a number, so the turn must be named here.
    ///
    /// ```
    /// use layshaft::units::common::{metres, rolling_speed, rpm};
    /// use layshaft::units::{show, unit};
    /// // 600 rpm are 10 turns a second, of 2 m each.
    /// assert_eq!(show(&rolling_speed(rpm(600.0), metres(2.0)), &unit::M_S, 1), "20.0 m/s");
    /// ```
    pub fn rolling_speed(wheel: AngularVelocity, circumference: Length) -> Velocity {
        circumference * wheel.get::<angular_velocity::revolution_per_second>() / uom::si::f64::Time::new::<uom::si::time::second>(1.0)
    }

    /// Turns over a distance of a wheel that rolls `circumference` at each turn.
    ///
    /// ```
    /// use layshaft::units::common::{millimetres, turns_of};
    /// use layshaft::units::{show, unit};
    /// // 1,609,344 mm ÷ 2,000 mm
    /// assert_eq!(show(&turns_of(millimetres(2_000.0)), &unit::TURNS_MILE, 1), "804.7 turns/mile");
    /// ```
    pub fn turns_of(circumference: Length) -> TurnsPerDistance {
        per_metre(1.0 / circumference.get::<length::meter>())
    }

    /// The roll-out distance at each turn; the inverse of [`turns_of`].
    pub fn way_per_turn(turns: TurnsPerDistance) -> Length {
        metres(1.0 / turns_per_metre(turns))
    }

    /// The speed of a wheel that rolls `circumference` at each turn; the inverse of [`rolling_speed`].
    ///
    /// ```
    /// use layshaft::units::common::{in_rpm, metres, wheel_speed};
    /// use layshaft::units::unit;
    /// // 90 km/h are 25 m/s: 10 turns a second of 2.5 m.
    /// assert_eq!(in_rpm(wheel_speed(unit::KM_H.of(90.0), metres(2.5))).round(), 600.0);
    /// ```
    pub fn wheel_speed(road: Velocity, circumference: Length) -> AngularVelocity {
        let turns_per_second = road.get::<velocity::meter_per_second>() / circumference.get::<length::meter>();
        AngularVelocity::new::<angular_velocity::revolution_per_second>(turns_per_second)
    }
}
