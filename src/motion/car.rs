//! The car as its motion sees it: mass, axle loads, drag, losses and rotating parts, each value given or a marked default.

use uom::si::{
    area::square_meter, length::meter, mass::kilogram, mass_density::kilogram_per_cubic_meter, moment_of_inertia::kilogram_square_meter,
};

use super::GRAVITY_M_PER_S2;
use super::road_load::RoadLoad;
use crate::units::common::rpm;
use crate::units::{Altitude, AngularVelocity, Area, Length, Mass, MassDensity, MomentOfInertia};

/// Where a value comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// It was typed.
    Given,
    /// It stands in for what was not typed; the text says why this value.
    Default(&'static str),
}

/// A value and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sourced<T> {
    /// What is reckoned with.
    pub value: T,
    /// Where it comes from.
    pub origin: Origin,
}

impl<T> Sourced<T> {
    /// A value that was typed.
    pub fn given(value: T) -> Self {
        Self { value, origin: Origin::Given }
    }

    /// A value that stands in.
    pub fn default(value: T, why: &'static str) -> Self {
        Self { value, origin: Origin::Default(why) }
    }

    /// The value typed, or this one.
    ///
    /// ```
    /// use layshaft::motion::Sourced;
    /// let usual = Sourced::default(0.8, "road tyre on dry asphalt");
    /// assert_eq!(Sourced::or(None, usual).value, 0.8);
    /// assert!(Sourced::or(Some(0.9), usual).is_given());
    /// ```
    pub fn or(typed: Option<T>, standing_in: Self) -> Self {
        typed.map_or(standing_in, Self::given)
    }

    /// Whether it was typed.
    pub fn is_given(&self) -> bool {
        self.origin == Origin::Given
    }
}

/// Which wheels drive.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Drive {
    /// The front wheels.
    Front,
    /// The rear wheels.
    #[default]
    Rear,
    /// All four, as their loads allow.
    All,
}

/// How much the turning parts add to the mass that is accelerated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rotating {
    /// Moments of inertia, each about its own axis: the engine with flywheel and clutch cover; the box reduced to its input shaft,
    /// with the clutch plate; all wheels and what turns with them.
    ///
    /// Model: `m + [J_wheels + (J_engine + J_box)·N²]/r²`, N the overall ratio; no efficiency on the inertia terms.
    /// Source: T. D. Gillespie, Fundamentals of Vehicle Dynamics, eq. 2-9; from memory.
    Given {
        /// Engine, flywheel and clutch cover.
        engine: MomentOfInertia,
        /// The box, reduced to its input shaft.
        gearbox: MomentOfInertia,
        /// All wheels together.
        wheels: MomentOfInertia,
    },
    /// The published rule: m·(1.04 + 0.0025·N²); 1.04 alone while the clutch is open.
    ///
    /// Source: Gillespie, mass factor of a typical car; Mannering et al. write it the same way; from memory.
    MassFactor,
}

impl Rotating {
    /// Mass that acts (kg) with the clutch closed, slipping, and open, for a car's mass, an overall ratio and a rolling radius.
    pub(super) fn masses_kg(self, mass_kg: f64, overall: f64, radius_m: f64) -> [f64; 3] {
        match self {
            Self::MassFactor => [mass_kg * (1.04 + 0.0025 * overall * overall), mass_kg * 1.04, mass_kg * 1.04],
            Self::Given { engine, gearbox, wheels } => {
                let [engine, gearbox, wheels] = [engine, gearbox, wheels].map(|inertia| inertia.get::<kilogram_square_meter>());
                let (square, area) = (overall * overall, radius_m * radius_m);
                let with = |turning: f64| mass_kg + turning / area;
                [with(wheels + (engine + gearbox) * square), with(wheels + gearbox * square), with(wheels)]
            }
        }
    }
}

/// What the losses between clutch and road leave over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Efficiencies {
    /// Share of the torque that one gear mesh under load passes on, 0 to 1.
    pub mesh: Sourced<f64>,
    /// Share that final drive, joints and bearings behind the box pass on, 0 to 1.
    pub final_drive: Sourced<f64>,
}

impl Default for Efficiencies {
    /// Those of a box with input and output in line.
    fn default() -> Self {
        Defaults::efficiencies(false)
    }
}

impl Efficiencies {
    /// The same with what stands in as a box of two shafts has it, where nothing was typed.
    #[must_use]
    pub fn with_box(mut self, two_shafts: bool) -> Self {
        if !self.final_drive.is_given() {
            self.final_drive = Defaults::efficiencies(two_shafts).final_drive;
        }
        self
    }
}

/// A car; lengths and loads as it stands on level ground with its driver.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Car {
    /// Mass with driver and load.
    pub mass: Mass,
    /// Which wheels drive.
    pub drive: Sourced<Drive>,
    /// Share of the weight that stands on the driven axle, 0 to 1; not used with four driven wheels.
    pub driven_share: Sourced<f64>,
    /// Distance between the axles.
    pub wheelbase: Sourced<Length>,
    /// Height of the centre of gravity above the road.
    pub gravity_height: Sourced<Length>,
    /// Drag coefficient times frontal area.
    pub drag_area: Sourced<Area>,
    /// Rolling resistance over weight at a crawl.
    pub rolling: Sourced<f64>,
    /// The share of itself by which rolling resistance grows with each m/s (s/m); nothing where it does not grow.
    pub rolling_growth: Sourced<f64>,
    /// Greatest grip of the tyres: force along the road over load.
    pub grip: Sourced<f64>,
    /// Losses.
    pub efficiencies: Efficiencies,
    /// Turning parts.
    pub rotating: Sourced<Rotating>,
    /// Mass of air for each volume, which the drag grows with.
    pub air_density: Sourced<MassDensity>,
}

/// The values that stand in for what was not typed, each with its reason.
#[derive(Clone, Copy, Debug)]
pub struct Defaults;

/// Source of rolling resistance over speed.
const ROLLING_SOURCE: &str =
    "f = 0.01·(1 + v/147 ft/s) on a paved road (Mannering, Kilareski and Washburn, Principles of Highway Engineering, ch. 2, from memory)";

impl Defaults {
    /// Rear drive; front drive where input and output lie on two shafts.
    pub fn drive(two_shafts: bool) -> Sourced<Drive> {
        if two_shafts {
            Sourced::default(Drive::Front, "most boxes of two shafts drive the front wheels; common practice, no published source")
        } else {
            Sourced::default(
                Drive::Rear,
                "most boxes with input and output in line drive the rear wheels; common practice, no published source",
            )
        }
    }

    /// Half the weight on driven rear wheels, 0.6 on front ones, all of it on four.
    pub fn driven_share(drive: Drive) -> Sourced<f64> {
        match drive {
            Drive::Rear => {
                Sourced::default(0.5, "engine in front, driver aboard: about half on the rear; common practice, no published source")
            }
            Drive::Front => {
                Sourced::default(0.6, "engine over driven front wheels: about 60 % there; common practice, no published source")
            }
            Drive::All => Sourced::default(1.0, "all wheels drive"),
        }
    }

    /// 2.6 m.
    pub fn wheelbase() -> Sourced<Length> {
        Sourced::default(Length::new::<meter>(2.6), "an older saloon of 1,600 kg in a textbook exercise (Yu, Automobile Theory, ex. 1.6)")
    }

    /// 0.57 m.
    pub fn gravity_height() -> Sourced<Length> {
        Sourced::default(Length::new::<meter>(0.57), "an older saloon of 1,600 kg in a textbook exercise (Yu, Automobile Theory, ex. 1.6)")
    }

    /// 0.9 m².
    pub fn drag_area() -> Sourced<Area> {
        let why = "drag coefficient 0.45 times 2.00 m², an older saloon in a textbook exercise (Yu, Automobile Theory, ex. 1.6)";
        Sourced::default(Area::new::<square_meter>(0.9), why)
    }

    /// 0.01 at a crawl.
    pub fn rolling() -> Sourced<f64> {
        Sourced::default(0.01, ROLLING_SOURCE)
    }

    /// As much again at 147 ft/s, exactly 44.8056 m/s: about 100 mph.
    pub fn rolling_growth() -> Sourced<f64> {
        const FOOT_M: f64 = 0.3048;
        Sourced::default(1.0 / (147.0 * FOOT_M), ROLLING_SOURCE)
    }

    /// 0.8.
    pub fn grip() -> Sourced<f64> {
        Sourced::default(0.8, "road tyre on dry asphalt; common practice, no published source")
    }

    /// 0.98 for each mesh; behind the box 0.96, or 0.97 where its final drive is a pair of helical gears, as boxes of two shafts have it.
    pub fn efficiencies(two_shafts: bool) -> Efficiencies {
        Efficiencies {
            mesh: Sourced::default(0.98, "one helical mesh with its bearings and churning; common practice, no published source"),
            final_drive: if two_shafts {
                Sourced::default(0.97, "helical final drive with joints and bearings; common practice, no published source")
            } else {
                Sourced::default(0.96, "hypoid final drive with joints and bearings; common practice, no published source")
            },
        }
    }

    /// The published mass-factor rule.
    pub fn rotating() -> Sourced<Rotating> {
        Sourced::default(Rotating::MassFactor, "mass factor 1.04 + 0.0025 × overall ratio² (Gillespie, from memory)")
    }

    /// At the sea.
    pub fn altitude() -> Sourced<Altitude> {
        Sourced::default(Altitude(0.0), "at the sea")
    }

    /// 1.225 kg/m³.
    pub fn air_density() -> Sourced<MassDensity> {
        let why = "standard atmosphere at sea level, 15 °C (ISO 2533)";
        Sourced::default(MassDensity::new::<kilogram_per_cubic_meter>(1.225), why)
    }

    /// 0.5 s without thrust for each shift.
    pub fn shift_time_s() -> Sourced<f64> {
        Sourced::default(0.5, "a brisk shift with a worn-in synchroniser; common practice, no published source")
    }

    /// 0.9 of peak power is still the power band.
    pub fn band_share() -> Sourced<f64> {
        Sourced::default(0.9, "power within 90 % of its peak; common practice, no published source")
    }

    /// Where peak torque is put when only its amount is known: half the speed of peak power, else 3,000 rpm.
    pub fn peak_torque_at(power_at: Option<AngularVelocity>) -> Sourced<AngularVelocity> {
        let usual = || Sourced::default(rpm(3_000.0), "peak torque of a mild road engine; common practice, no published source");
        let law = "half the speed of peak power, as the cubic power law has it (Jazar, Vehicle Dynamics, from memory)";
        power_at.map_or_else(usual, |power_at| Sourced::default(power_at * 0.5, law))
    }

    /// 2,500 rpm at the clutch when setting off briskly.
    pub fn launch_rpm() -> Sourced<f64> {
        Sourced::default(2_500.0, "a brisk start that spares the clutch; common practice, no published source")
    }
}

impl Car {
    /// The car with what stands in for its drive, axle load and final drive as a box of two shafts has it, where nothing was typed.
    #[must_use]
    pub fn with_box(mut self, two_shafts: bool) -> Self {
        if !self.drive.is_given() {
            self.drive = Defaults::drive(two_shafts);
        }
        if !self.driven_share.is_given() {
            self.driven_share = Defaults::driven_share(self.drive.value);
        }
        self.efficiencies = self.efficiencies.with_box(two_shafts);
        self
    }

    /// The car as it pulls backwards: the load that moves as it pulls moves the other way, off driven rear wheels and onto driven front ones.
    #[must_use]
    pub fn reversing(mut self) -> Self {
        self.drive.value = match self.drive.value {
            Drive::Front => Drive::Rear,
            Drive::Rear => Drive::Front,
            Drive::All => Drive::All,
        };
        self
    }

    /// A car of which the mass alone is known; everything else stands in and says so.
    pub fn of_mass(mass: Mass) -> Self {
        let drive = Defaults::drive(false);
        Self {
            mass,
            drive,
            driven_share: Defaults::driven_share(drive.value),
            wheelbase: Defaults::wheelbase(),
            gravity_height: Defaults::gravity_height(),
            drag_area: Defaults::drag_area(),
            rolling: Defaults::rolling(),
            rolling_growth: Defaults::rolling_growth(),
            grip: Defaults::grip(),
            efficiencies: Defaults::efficiencies(false),
            rotating: Defaults::rotating(),
            air_density: Defaults::air_density(),
        }
    }

    pub(super) fn mass_kg(&self) -> f64 {
        self.mass.get::<kilogram>()
    }

    /// Road load on a grade (rise over run).
    ///
    /// Model: F = m·g·(f·(1 + k·v)·cos θ + sin θ) + ½·ρ·CdA·v², θ = atan(grade); `extra_kg` is a trailer that rolls like the car and adds
    /// no drag.
    /// Source: 40 CFR 1066.210(d)(3) has the same terms; rolling resistance over speed as in [`Defaults::rolling`].
    pub(super) fn road_load(&self, grade: f64, extra_kg: f64) -> RoadLoad {
        let slope = grade.atan();
        let weight = (self.mass_kg() + extra_kg) * GRAVITY_M_PER_S2;
        let rolling = weight * self.rolling.value * slope.cos();
        let level = rolling + weight * slope.sin();
        let square = 0.5 * self.air_density.value.get::<kilogram_per_cubic_meter>() * self.drag_area.value.get::<square_meter>();
        RoadLoad { level, linear: rolling * self.rolling_growth.value, square }
    }
}
