//! Why points or figures make no torque curve.

use crate::problem::Explain;
use crate::units::limits;
use crate::units::number::show;

/// Why points or figures make no torque curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CurveError {
    /// Nothing at all was given.
    NoPoints,
    /// One point makes no curve: its engine speed (rpm).
    OnePoint(f64),
    /// An engine speed that cannot be: as given (rpm).
    Speed(f64),
    /// Two points at the same engine speed: where both stand (rpm).
    Repeated(f64),
    /// A speed below the one before it.
    Falling {
        /// The earlier speed (rpm).
        before_rpm: f64,
        /// The later, lower speed (rpm).
        speed_rpm: f64,
    },
    /// Torque below zero, or no number.
    Torque {
        /// Where (rpm).
        speed_rpm: f64,
        /// The torque (N·m).
        torque_nm: f64,
    },
    /// No torque above zero anywhere.
    NoTorque,
    /// The peak power asks for more torque than the peak torque.
    PowerBeyondTorque {
        /// Torque needed at the power peak (N·m).
        needed_nm: f64,
        /// The peak torque given (N·m).
        peak_nm: f64,
    },
    /// The power peak is not above the torque peak.
    PeaksCrossed {
        /// Speed of the torque peak (rpm).
        torque_rpm: f64,
        /// Speed of the power peak (rpm).
        power_rpm: f64,
    },
}

impl CurveError {
    /// The fastest engine speed taken as one (rpm).
    pub const FASTEST_RPM: f64 = limits::ENGINE_SPEED.greatest;
}

/// What a sheet without a curve can still say, for the end of a sentence.
const STILL: &str = "ratios, road speeds and rpm drops stand without it";

impl Explain for CurveError {
    fn what(&self) -> String {
        let rpm = |speed: f64| format!("{} rpm", show(speed, 0));
        match *self {
            Self::NoPoints => "no torque curve is given".into(),
            Self::OnePoint(speed_rpm) => format!("the torque curve has one point only, at {}", rpm(speed_rpm)),
            Self::Speed(speed_rpm) => format!("{} is no engine speed", rpm(speed_rpm)),
            Self::Repeated(speed_rpm) => format!("the torque curve has {} twice", rpm(speed_rpm)),
            Self::Falling { before_rpm, speed_rpm } => {
                format!("the torque curve goes back from {} to {}", rpm(before_rpm), rpm(speed_rpm))
            }
            Self::Torque { speed_rpm, torque_nm } => {
                format!("the torque at {} is {} N·m, and full throttle cannot give less than nothing", rpm(speed_rpm), show(torque_nm, 1))
            }
            Self::NoTorque => "the torque curve is nothing everywhere".into(),
            Self::PowerBeyondTorque { needed_nm, peak_nm } => format!(
                "the peak power asks for {} N·m at its speed, more than the peak torque of {} N·m",
                show(needed_nm, 1),
                show(peak_nm, 1)
            ),
            Self::PeaksCrossed { torque_rpm, power_rpm } => {
                format!("the power peak at {} is not above the torque peak at {}", rpm(power_rpm), rpm(torque_rpm))
            }
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::NoPoints => format!("give peak torque, or paste rows of rpm and torque; {STILL}"),
            Self::OnePoint(_) => format!("add a second point, or give it as peak torque; {STILL}"),
            Self::Speed(_) => format!("give speeds above 0 and up to {} rpm; {STILL}", show(Self::FASTEST_RPM, 0)),
            Self::Repeated(_) => format!("keep one of the two rows; {STILL}"),
            Self::Falling { .. } => format!("list the rows of one pull from the lowest rpm up; {STILL}"),
            Self::Torque { .. } => format!("leave out rows taken on a closed throttle; {STILL}"),
            Self::NoTorque => format!("check the column and its unit; {STILL}"),
            Self::PowerBeyondTorque { .. } => format!("check the unit of both figures; {STILL}"),
            Self::PeaksCrossed { .. } => format!("check which speed belongs to which figure; {STILL}"),
        }
    }
}
