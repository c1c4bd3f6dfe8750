//! The table of units: how each is written and what one of it is.
//!
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

/// A quantity that people type and read.
pub trait Measured: Sized + 'static {
    /// Every unit it can be typed in.
    fn units() -> &'static [Unit<Self>];
    /// The unit it is usually read in.
    fn usual(system: System) -> &'static Unit<Self>;
}

/// The unit a text names; the usual one where it names none.
pub(super) fn find<Q: Measured>(text: &str, system: System) -> Option<&'static Unit<Q>> {
    let spelling: String =
        text.chars().filter(|c| !matches!(c, ' ' | '.' | '·' | '-' | '*' | '\u{a0}')).flat_map(char::to_lowercase).collect();
    if spelling.is_empty() {
        return Some(Q::usual(system));
    }
    Q::units().iter().find(|unit| unit.spellings.contains(&spelling.as_str()))
}

macro_rules! units {
    ($($quantity:ty, inch $inch:literal, metric $metric:literal { $($symbol:literal [$($spelling:literal),*] $make:expr, $take:expr;)* })*) => {
        $(const _: () = {
            const UNITS: &[Unit<$quantity>] = &[$(Unit { symbol: $symbol, spellings: &[$($spelling),*], make: $make, take: $take }),*];
            #[expect(clippy::indexing_slicing, reason = "the compiler looks it up: a place that is not in the table does not compile")]
            const INCH: &Unit<$quantity> = &UNITS[$inch];
            #[expect(clippy::indexing_slicing, reason = "as above")]
            const METRIC: &Unit<$quantity> = &UNITS[$metric];

            impl Measured for $quantity {
                fn units() -> &'static [Unit<Self>] {
                    UNITS
                }

                fn usual(system: System) -> &'static Unit<Self> {
                    match system {
                        System::Inch => INCH,
                        System::Metric => METRIC,
                    }
                }
            }
        };)*
    };
}

macro_rules! si {
    ($quantity:ident, $unit:path) => {
        |value| $quantity::new::<$unit>(value)
    };
}

units! {
    Length, inch 0, metric 1 {
        "in" ["in", "inch", "inches", "\"", "”", "″"] si!(Length, length::inch), |q| q.get::<length::inch>();
        "mm" ["mm", "millimetre", "millimetres", "millimeter"] si!(Length, length::millimeter), |q| q.get::<length::millimeter>();
        "thou" ["thou", "mil", "thousandths"] si!(Length, length::mil), |q| q.get::<length::mil>();
        "µm" ["µm", "um", "μm", "micron", "microns"] si!(Length, length::micrometer), |q| q.get::<length::micrometer>();
        "cm" ["cm"] si!(Length, length::centimeter), |q| q.get::<length::centimeter>();
        "m" ["m", "metre", "metres", "meter", "meters"] si!(Length, length::meter), |q| q.get::<length::meter>();
        "ft" ["ft", "'", "foot", "feet", "′"] si!(Length, length::foot), |q| q.get::<length::foot>();
        "mile" ["mi", "mile", "miles"] si!(Length, length::mile), |q| q.get::<length::mile>();
        "km" ["km", "kilometre", "kilometres", "kilometer"] si!(Length, length::kilometer), |q| q.get::<length::kilometer>();
    }
    Velocity, inch 0, metric 1 {
        "mph" ["mph", "mi/h", "mileperhour", "milesperhour"] si!(Velocity, velocity::mile_per_hour), |q| q.get::<velocity::mile_per_hour>();
        "km/h" ["km/h", "kmh", "kph", "kmph"] si!(Velocity, velocity::kilometer_per_hour), |q| q.get::<velocity::kilometer_per_hour>();
        "m/s" ["m/s", "mps"] si!(Velocity, velocity::meter_per_second), |q| q.get::<velocity::meter_per_second>();
    }
    AngularVelocity, inch 0, metric 0 {
        "rpm" ["rpm", "rev/min", "r/min", "1/min", "min⁻¹", "/min", "u/min"]
            si!(AngularVelocity, angular_velocity::revolution_per_minute), |q| q.get::<angular_velocity::revolution_per_minute>();
        "rad/s" ["rad/s"] si!(AngularVelocity, angular_velocity::radian_per_second), |q| q.get::<angular_velocity::radian_per_second>();
    }
    Torque, inch 0, metric 1 {
        "lbf·ft" ["lbfft", "lbft", "ftlb", "ftlbf", "ftlbs", "lbsft", "lb/ft"] |value| Torque::new::<torque::newton_meter>(POUND_FORCE_N * 0.3048 * value), |q| q.get::<torque::newton_meter>() / (POUND_FORCE_N * 0.3048);
        "N·m" ["nm", "newtonmetre", "newtonmetres"] si!(Torque, torque::newton_meter), |q| q.get::<torque::newton_meter>();
        "lbf·in" ["lbfin", "lbin", "inlb", "inlbf", "inlbs"] |value| Torque::new::<torque::newton_meter>(POUND_FORCE_N * 0.0254 * value), |q| q.get::<torque::newton_meter>() / (POUND_FORCE_N * 0.0254);
        "kgf·m" ["kgfm", "kgm", "kpm", "mkg"] si!(Torque, torque::kilogram_force_meter), |q| q.get::<torque::kilogram_force_meter>();
    }
    Mass, inch 0, metric 1 {
        "lb" ["lb", "lbs", "lbm", "pound", "pounds"] |value| Mass::new::<mass::kilogram>(POUND_KG * value), |q| q.get::<mass::kilogram>() / POUND_KG;
        "kg" ["kg", "kilo", "kilos", "kilogram", "kilograms"] si!(Mass, mass::kilogram), |q| q.get::<mass::kilogram>();
        "t" ["t", "tonne", "tonnes"] si!(Mass, mass::megagram), |q| q.get::<mass::megagram>();
        "cwt" ["cwt"] |value| Mass::new::<mass::kilogram>(112.0 * POUND_KG * value), |q| q.get::<mass::kilogram>() / (112.0 * POUND_KG);
        "g" ["g", "gram", "grams"] si!(Mass, mass::gram), |q| q.get::<mass::gram>();
    }
    Power, inch 0, metric 1 {
        "hp" ["hp", "bhp", "horsepower"] |value| Power::new::<power::watt>(MECHANICAL_HORSEPOWER_W * value), |q| q.get::<power::watt>() / MECHANICAL_HORSEPOWER_W;
        "kW" ["kw"] si!(Power, power::kilowatt), |q| q.get::<power::kilowatt>();
        "PS" ["ps", "cv", "ch", "pk"] |value| Power::new::<power::watt>(METRIC_HORSEPOWER_W * value), |q| q.get::<power::watt>() / METRIC_HORSEPOWER_W;
        "W" ["w"] si!(Power, power::watt), |q| q.get::<power::watt>();
    }
    Force, inch 0, metric 1 {
        "lbf" ["lbf", "lb", "lbs"] |value| Force::new::<force::newton>(POUND_FORCE_N * value), |q| q.get::<force::newton>() / POUND_FORCE_N;
        "N" ["n", "newton", "newtons"] si!(Force, force::newton), |q| q.get::<force::newton>();
        "kN" ["kn"] si!(Force, force::kilonewton), |q| q.get::<force::kilonewton>();
        "kgf" ["kgf", "kp", "kg"] si!(Force, force::kilogram_force), |q| q.get::<force::kilogram_force>();
    }
    Energy, inch 0, metric 0 {
        "kJ" ["kj"] si!(Energy, energy::kilojoule), |q| q.get::<energy::kilojoule>();
        "J" ["j"] si!(Energy, energy::joule), |q| q.get::<energy::joule>();
    }
    Time, inch 0, metric 0 {
        "s" ["s", "sec", "second", "seconds"] si!(Time, time::second), |q| q.get::<time::second>();
        "ms" ["ms"] si!(Time, time::millisecond), |q| q.get::<time::millisecond>();
        "min" ["min", "minute", "minutes"] si!(Time, time::minute), |q| q.get::<time::minute>();
        "h" ["h", "hour", "hours"] si!(Time, time::hour), |q| q.get::<time::hour>();
    }
    Angle, inch 0, metric 0 {
        "°" ["°", "deg", "degree", "degrees"] si!(Angle, angle::degree), |q| q.get::<angle::degree>();
        "rad" ["rad"] si!(Angle, angle::radian), |q| q.get::<angle::radian>();
    }
    Frequency, inch 0, metric 0 {
        "Hz" ["hz"] si!(Frequency, frequency::hertz), |q| q.get::<frequency::hertz>();
    }
    Area, inch 0, metric 1 {
        "ft²" ["ft²", "ft2", "sqft"] si!(Area, area::square_foot), |q| q.get::<area::square_foot>();
        "m²" ["m²", "m2", "sqm"] si!(Area, area::square_meter), |q| q.get::<area::square_meter>();
        "mm²" ["mm²", "mm2"] si!(Area, area::square_millimeter), |q| q.get::<area::square_millimeter>();
        "in²" ["in²", "in2", "sqin"] si!(Area, area::square_inch), |q| q.get::<area::square_inch>();
    }
    Acceleration, inch 0, metric 1 {
        "ft/s²" ["ft/s²", "ft/s2"] si!(Acceleration, acceleration::foot_per_second_squared), |q| q.get::<acceleration::foot_per_second_squared>();
        "m/s²" ["m/s²", "m/s2"] si!(Acceleration, acceleration::meter_per_second_squared), |q| q.get::<acceleration::meter_per_second_squared>();
        "g" ["g"] si!(Acceleration, acceleration::standard_gravity), |q| q.get::<acceleration::standard_gravity>();
    }
    MomentOfInertia, inch 0, metric 1 {
        "lb·in²" ["lbin²", "lbin2"] |value| MomentOfInertia::new::<moment_of_inertia::kilogram_square_meter>(POUND_SQUARE_INCH_KG_M2 * value), |q| q.get::<moment_of_inertia::kilogram_square_meter>() / POUND_SQUARE_INCH_KG_M2;
        "kg·m²" ["kgm²", "kgm2"] si!(MomentOfInertia, moment_of_inertia::kilogram_square_meter), |q| q.get::<moment_of_inertia::kilogram_square_meter>();
    }
    Pressure, inch 0, metric 1 {
        "inHg" ["inhg", "\"hg"] |value| Pressure::new::<pressure::pascal>(INCH_OF_MERCURY_PA * value), |q| q.get::<pressure::pascal>() / INCH_OF_MERCURY_PA;
        "mbar" ["mbar", "hpa", "mb"] si!(Pressure, pressure::millibar), |q| q.get::<pressure::millibar>();
        "kPa" ["kpa"] si!(Pressure, pressure::kilopascal), |q| q.get::<pressure::kilopascal>();
        "psi" ["psi"] |value| Pressure::new::<pressure::pascal>(POUND_FORCE_N / (0.0254 * 0.0254) * value), |q| q.get::<pressure::pascal>() / (POUND_FORCE_N / (0.0254 * 0.0254));
        "bar" ["bar"] si!(Pressure, pressure::bar), |q| q.get::<pressure::bar>();
        "N/mm²" ["n/mm²", "n/mm2", "mpa"] si!(Pressure, pressure::megapascal), |q| q.get::<pressure::megapascal>();
    }
    ThermodynamicTemperature, inch 0, metric 1 {
        "°F" ["°f", "f", "degf"] si!(ThermodynamicTemperature, thermodynamic_temperature::degree_fahrenheit), |q| q.get::<thermodynamic_temperature::degree_fahrenheit>();
        "°C" ["°c", "c", "degc"] si!(ThermodynamicTemperature, thermodynamic_temperature::degree_celsius), |q| q.get::<thermodynamic_temperature::degree_celsius>();
    }
    WorkPerArea, inch 0, metric 0 {
        "J/mm²" ["j/mm²", "j/mm2"] si!(WorkPerArea, radiant_exposure::megajoule_per_square_meter), |q| q.get::<radiant_exposure::megajoule_per_square_meter>();
    }
    PowerPerArea, inch 0, metric 0 {
        "W/mm²" ["w/mm²", "w/mm2"] si!(PowerPerArea, heat_flux_density::watt_per_square_millimeter), |q| q.get::<heat_flux_density::watt_per_square_millimeter>();
    }
    Share, inch 0, metric 0 {
        "%" ["%", "percent"] |value| Share(value / 100.0), |q| q.0 * 100.0;
    }
    Plain, inch 0, metric 0 {
        "" [""] Plain, |q| q.0;
    }
    TurnsPerDistance, inch 0, metric 1 {
        "turns/mile" ["turns/mile", "rev/mile", "/mile", "revs/mile", "turnspermile", "revspermile", "revpermile", "permile", "tpm", "rev/mi", "/mi", "pulses/mile", "pulse/mile"]
            |value| per_metre(value / METRES_PER_MILE), |q| METRES_PER_MILE * turns_per_metre(*q);
        "turns/km" ["turns/km", "rev/km", "/km", "revs/km", "turnsperkm", "revsperkm", "revperkm", "perkm", "pulses/km", "pulse/km", "imp/km"]
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

fn per_metre(turns: f64) -> TurnsPerDistance {
    TurnsPerDistance::new::<uom::si::linear_number_density::per_meter>(turns)
}

fn turns_per_metre(quantity: TurnsPerDistance) -> f64 {
    quantity.get::<uom::si::linear_number_density::per_meter>()
}

/// Units and conversions that several rooms need by name.
pub mod common {
    use super::{
        AngularVelocity, Length, Measured, TurnsPerDistance, Velocity, angular_velocity, length, per_metre, turns_per_metre, velocity,
    };

    /// An engine or shaft speed from revolutions per minute.
    pub fn rpm(value: f64) -> AngularVelocity {
        AngularVelocity::new::<angular_velocity::revolution_per_minute>(value)
    }

    /// A shaft speed in revolutions per minute.
    pub fn in_rpm(speed: AngularVelocity) -> f64 {
        speed.get::<angular_velocity::revolution_per_minute>()
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
    pub fn rolling_speed(wheel: AngularVelocity, circumference: Length) -> Velocity {
        circumference * wheel.get::<angular_velocity::revolution_per_second>() / uom::si::f64::Time::new::<uom::si::time::second>(1.0)
    }

    /// Turns over a distance of a wheel that rolls `circumference` at each turn.
    pub fn turns_of(circumference: Length) -> TurnsPerDistance {
        per_metre(1.0 / circumference.get::<length::meter>())
    }

    /// The way rolled at each turn; the inverse of [`turns_of`].
    pub fn way_per_turn(turns: TurnsPerDistance) -> Length {
        metres(1.0 / turns_per_metre(turns))
    }

    /// The speed of a wheel that rolls `circumference` at each turn; the inverse of [`rolling_speed`].
    pub fn wheel_speed(road: Velocity, circumference: Length) -> AngularVelocity {
        let turns_per_second = road.get::<velocity::meter_per_second>() / circumference.get::<length::meter>();
        AngularVelocity::new::<angular_velocity::revolution_per_second>(turns_per_second)
    }

    /// A unit by its symbol, the usual inch one where there is none of that name.
    pub fn unit<Q: Measured>(symbol: &str) -> &'static super::Unit<Q> {
        Q::units().iter().find(|unit| unit.symbol == symbol).unwrap_or_else(|| Q::usual(super::System::Inch))
    }
}
