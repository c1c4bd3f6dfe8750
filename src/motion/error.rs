//! Why engine, gears and car give no motion, or what about their figures wants attention.

use crate::gearing::GearNumber;
use crate::problem::Explain;
use crate::units::number::show;

/// Why there is no answer, or (where it comes as a caution) what stands beside the answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MotionError {
    /// No forward gear.
    NoGears,
    /// A ratio that cannot be: the gear.
    Ratio(GearNumber),
    /// A final drive that cannot be: as given; above 0 and up to 100 can be.
    FinalDrive(f64),
    /// A rolling radius that cannot be: as given (m); above 0 and up to 5 can be.
    Radius(f64),
    /// An efficiency that is not above 0 and up to 1: as given.
    Efficiency(f64),
    /// The mass is missing, nothing or no number: as given (kg).
    Mass(f64),
    /// Another value of the car that cannot be.
    CarValue {
        /// Its name.
        word: &'static str,
        /// The value, in SI.
        value: f64,
    },
    /// The rev limit is not above the curve's first rpm.
    LimitBelowCurve {
        /// As given (rpm).
        limit_rpm: f64,
        /// The first rpm of the curve.
        first_rpm: f64,
    },
    /// The rev limit or shift lies above the curve's end; the end is used instead.
    LimitBeyondCurve {
        /// The speed asked for (rpm).
        limit_rpm: f64,
        /// The last rpm of the curve.
        last_rpm: f64,
    },
    /// The launch rpm lies outside the curve; its nearer end is used instead.
    LaunchOutsideCurve {
        /// The launch asked for (rpm).
        launch_rpm: f64,
        /// The speed used (rpm).
        used_rpm: f64,
    },
    /// The car does not move off: thrust below road load.
    TooWeak {
        /// Thrust at the start (N).
        thrust_n: f64,
        /// Road load at the start (N).
        load_n: f64,
    },
    /// The gear asked for does not exist: the gear.
    NoSuchGear(GearNumber),
    /// The engine would turn faster than its limit in the gear asked for.
    TooFastForGear {
        /// The gear.
        gear: GearNumber,
        /// The engine speed there (rpm).
        engine_rpm: f64,
    },
    /// A rolling start in no gear of its own: the engine is past its limit even in top.
    TooFastForAll,
    /// A rolling start in no gear of its own: the engine is below its curve in every gear that is not past its limit.
    TooSlowForAll,
    /// A rolling start whose end is not above its beginning.
    NotRising,
}

impl Explain for MotionError {
    fn what(&self) -> String {
        let rpm = |speed: f64| format!("{} rpm", show(speed, 0));
        match *self {
            Self::NoGears => "there is no forward gear".into(),
            Self::Ratio(gear) => format!("the ratio of gear {} cannot be", gear.number()),
            Self::FinalDrive(ratio) => format!("a final drive of {} cannot be", show(ratio, 3)),
            Self::Radius(radius_m) => format!("a rolling radius of {} mm cannot be", show(1000.0 * radius_m, 0)),
            Self::Efficiency(share) => format!("an efficiency of {} % cannot be", show(100.0 * share, 1)),
            Self::Mass(0.0) => "the mass of the car is nothing".into(),
            Self::Mass(mass_kg) => format!("a mass of {} kg cannot be", show(mass_kg, 0)),
            Self::CarValue { word, value } => format!("a {word} of {} cannot be", show(value, 3)),
            Self::LimitBelowCurve { limit_rpm, first_rpm } => {
                format!("the rev limit of {} is not above the first point of the torque curve, {}", rpm(limit_rpm), rpm(first_rpm))
            }
            Self::LimitBeyondCurve { limit_rpm, last_rpm } => {
                format!("a shift or rev limit of {} lies above the end of the torque curve, {}", rpm(limit_rpm), rpm(last_rpm))
            }
            Self::LaunchOutsideCurve { launch_rpm, used_rpm } => {
                format!("a launch at {} lies outside the torque curve or past the limit; {} is used", rpm(launch_rpm), rpm(used_rpm))
            }
            Self::TooWeak { thrust_n, load_n } => {
                format!("the car does not move: {} N at the wheels against a road load of {} N", show(thrust_n, 0), show(load_n, 0))
            }
            Self::NoSuchGear(gear) => format!("there is no gear {}", gear.number()),
            Self::TooFastForGear { gear, engine_rpm } => format!("in gear {} the engine would turn {}", gear.number(), rpm(engine_rpm)),
            Self::TooFastForAll => "at the lower of the two speeds the engine is past its limit even in top gear".into(),
            Self::TooSlowForAll => "at the lower of the two speeds no gear turns the engine fast enough for its torque curve".into(),
            Self::NotRising => "the speed to be reached is not above the one to start from".into(),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::NoGears | Self::Ratio(_) => "count the teeth or type the ratios; the torque curve itself still stands".into(),
            Self::FinalDrive(_) => "type ring over pinion, such as 41/11; box ratios and drops still stand".into(),
            Self::Radius(_) => "give the tyre size or a rolling circumference; ratios and drops still stand".into(),
            Self::Efficiency(_) => "give more than 0 % and up to 100 %, or leave it blank for the usual value".into(),
            Self::Mass(_) => {
                "type the mass with driver; thrust, road speeds and the equal-thrust shift stand without it, times and grades do not".into()
            }
            Self::CarValue { .. } => "correct it or leave it blank for the usual value; thrust and road speeds stand without it".into(),
            Self::LimitBelowCurve { .. } => {
                "raise the limit or check the unit of the curve's speeds; ratios and road speeds still stand".into()
            }
            Self::LimitBeyondCurve { .. } => {
                "add points up to that speed, or lower it; until then everything is worked to the curve's end".into()
            }
            Self::LaunchOutsideCurve { .. } => "add points there, or launch inside the curve".into(),
            Self::TooWeak { .. } => "check torque, mass and their units, or the grade; thrust, ratios and road speeds still stand".into(),
            Self::NoSuchGear(_) => "choose one of the gears of this box".into(),
            Self::TooFastForGear { .. } => "choose a higher gear or a lower speed".into(),
            Self::TooFastForAll => "start from a lower speed".into(),
            Self::TooSlowForAll => "start from a higher speed, choose the gear, or add points of the curve at lower rpm".into(),
            Self::NotRising => "type a higher speed to reach".into(),
        }
    }
}
