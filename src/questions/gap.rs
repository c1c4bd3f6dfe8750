//! What was typed of engine, car and run that cannot be used alone: said, never passed over.

use crate::units::number::show;

/// Why something typed is not used, or is used outside what it is made for.
#[derive(Clone, Debug, PartialEq)]
pub enum Gap {
    /// Peak power without the engine speed it is made at.
    PowerWithoutSpeed,
    /// The engine speed of a peak without the peak.
    SpeedWithoutPeak {
        /// Torque or power.
        peak: &'static str,
    },
    /// A peak beside pasted rows.
    PeakUnderRows {
        /// Which, in words.
        which: &'static str,
    },
    /// Inertia of engine or gearbox without that of engine and wheels.
    InertiaAlone,
    /// A standard to correct to, without pressure and temperature of the air.
    AirUnknown,
    /// The air of the test, without a standard to correct to.
    AirWithoutStandard,
    /// A correction by more than its standard allows.
    CorrectionBeyond {
        /// What measured torque would be multiplied by.
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
    /// A rolling start with a speed or both missing.
    RollHalf {
        /// The words for what must still be typed.
        missing: &'static str,
    },
    /// Diameter or width of the synchronisers' cones without the other: the words for what must still be typed.
    ConeHalf(&'static str),
    /// An angle of the teeth without their pitch: what the angle is called.
    AngleWithoutPitch(&'static str),
    /// A reverse idler without the gears it runs between.
    IdlerAlone,
    /// A gear that the box does not have.
    NoGearOfBox {
        /// What was typed.
        text: String,
        /// How many gears it has.
        gears: usize,
    },
    /// A number of cones that no synchroniser has: what was typed.
    NoCones(String),
    /// A gear that the box does not have, for an extra stage.
    NotSwitchedIn {
        /// What was typed.
        text: String,
        /// How many gears it has.
        gears: usize,
    },
    /// More switchable stages than are worked out: how many are.
    TooManySwitched(usize),
    /// The ratio at rest of a stage that is always in.
    RestOfFixedStage,
    /// More speeds than there are rows for.
    TooManySpeeds {
        /// How many are timed.
        most: usize,
    },
}

explain! { Gap:
    Self::PowerWithoutSpeed => "peak power is not used: the engine speed it is made at is not given", "type the rpm of peak power as well";
    Self::SpeedWithoutPeak { peak } => format!("the rpm of peak {peak} is not used: peak {peak} is not given"),
        format!("type the peak {peak} as well, or clear its rpm");
    Self::PeakUnderRows { which } => format!("the {which} is not used: the curve is drawn from the pasted rows"),
        "clear the rows to draw the curve through the peaks, or clear the peaks";
    Self::InertiaAlone => "rotating parts are taken by the usual rule: inertia is given for some of them only",
        "type the inertia of engine and wheels, or leave all of them blank";
    Self::AirUnknown => "nothing is corrected: pressure and temperature of the air at the test are not both given",
        "type the air pressure and temperature of the test, or choose no correction";
    Self::AirWithoutStandard => "nothing is corrected: the air of the test is given, but no standard to correct to",
        "choose the standard to correct to, or clear the air of the test";
    Self::CorrectionBeyond { factor, least, greatest } =>
        {
                let [factor, least, greatest] = [factor, least, greatest].map(|value| show(*value, 3));
                format!("the correction by {factor} is outside what its standard allows, {least} to {greatest}")
            },
        "check the air of the test; figures so far corrected are a guess";
    Self::NoSuchGear { text } => format!("“{text}” is no gear from 1 to 8"), "type a gear such as 3, or leave it blank for top gear";
    Self::RollHalf { missing } => format!("the rolling start is not timed: {missing} not given"),
        "type the speeds it begins and ends at, or clear what is typed of it";
    Self::ConeHalf(missing) => format!("the lining is not judged: the {missing} is not given"), "type diameter and width, or clear both";
    Self::AngleWithoutPitch(angle) => format!("the {angle} is not used: module or pitch is not given"),
        "type module or pitch as well, or clear the angle";
    Self::IdlerAlone => "the idler is not used: the outer gears of reverse are not given",
        "type the outer gears of reverse, such as 33/16, or clear the idler";
    Self::NoGearOfBox { text, gears } => format!("“{text}” is no gear of this box, which has {gears}: it is left out"),
        "type the numbers of its gears parted by blanks, such as 1 2, or nothing where every gear has one";
    Self::NoCones(text) => format!("“{text}” is not a number from 1 to 3: one cone is taken"), "type 1, 2 or 3";
    Self::NotSwitchedIn { text, gears } => format!("“{text}” is no gear of this box, which has {gears}: this stage is not switched in it"),
        "type the gears it is switched in parted by blanks, such as 3 4, or all, or always";
    Self::TooManySwitched(most) => format!("only the first {most} stages are switched, this one stays out"),
        "type always for a stage that stays in, or take one out";
    Self::RestOfFixedStage => "the ratio when it is out is not used: this stage is always in",
        "type the gears it is switched in, or clear the ratio";
    Self::TooManySpeeds { most } => format!("only the first {most} speeds are timed"), "take out the speeds that matter less";
}
