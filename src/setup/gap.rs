//! What was typed of engine, car and run that cannot be used alone: said, never passed over.

use crate::problem::Explain;
use crate::units::number::show;

/// Why something typed is not used, or is used outside what it is made for.
#[derive(Clone, Debug, PartialEq)]
pub enum Gap {
    /// Peak power without the engine speed it is made at.
    PowerWithoutSpeed,
    /// Inertia of engine or gearbox without that of engine and wheels.
    InertiaAlone,
    /// A standard to correct to, without pressure and temperature of the air.
    AirUnknown,
    /// A correction by more than its standard allows.
    CorrectionBeyond {
        /// The factor.
        factor: f64,
        /// The least the standard allows.
        least: f64,
        /// The greatest the standard allows.
        greatest: f64,
    },
    /// A gear of a rolling start that is none.
    NoSuchGear {
        /// What was typed.
        text: String,
    },
    /// More speeds than there are rows for.
    TooManySpeeds {
        /// How many are timed.
        most: usize,
    },
}

impl Explain for Gap {
    fn what(&self) -> String {
        match self {
            Self::PowerWithoutSpeed => "peak power is not used: the engine speed it is made at is not given".into(),
            Self::InertiaAlone => "rotating parts are taken by the usual rule: inertia is given for some of them only".into(),
            Self::AirUnknown => "nothing is corrected: pressure and temperature of the air at the test are not both given".into(),
            Self::CorrectionBeyond { factor, least, greatest } => {
                let [factor, least, greatest] = [factor, least, greatest].map(|value| show(*value, 3));
                format!("the correction by {factor} is outside what its standard allows, {least} to {greatest}")
            }
            Self::NoSuchGear { text } => format!("`{text}` is no gear from 1 to 8"),
            Self::TooManySpeeds { most } => format!("only the first {most} speeds are timed"),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::PowerWithoutSpeed => "type the rpm of peak power as well",
            Self::InertiaAlone => "type the inertia of engine and wheels, or leave all of them blank",
            Self::AirUnknown => "type the air pressure and temperature of the test, or choose no correction",
            Self::CorrectionBeyond { .. } => "check the air of the test; figures so far corrected are a guess",
            Self::NoSuchGear { .. } => "type a gear such as 3, or leave it blank for the lowest that can",
            Self::TooManySpeeds { .. } => "take out the speeds that matter less",
        }
        .into()
    }
}
