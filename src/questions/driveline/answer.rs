//! How fast each shaft turns, how fast it may, and what would do instead.

use std::f64::consts::TAU;

use super::read::{DrivelineShared, Shafts};
use crate::driveline::Shaft;
use crate::driveline::travel::CentreBearing;
use crate::gearing::Ratio;
use crate::gearing::teeth::decimal;
use crate::questions::road::tyres::Tyres;
use crate::questions::{Conditions, Gears, Pull, Setup};
use crate::units::common::{rolling_speed, wheel_speed};
use crate::units::{AngularVelocity, Length, Torque, Velocity};

mod joints;

pub use joints::{Finding, Joints, over_a_turn};

/// What is known of a setup's driveshaft.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Driveline {
    /// How it turns at the speed it is judged at.
    pub turning: Option<Turning>,
    /// The lowest critical speed of its pieces, and the place of that piece, counted from 0.
    pub critical: Option<(AngularVelocity, usize)>,
    /// The speed it may turn at.
    pub allowed: Option<AngularVelocity>,
    /// What would do at the speed it is judged at.
    pub instead: Option<Instead>,
    /// The greatest torque it carries in first gear.
    pub torque: Option<Torqued>,
    /// Its joints, where the slopes are known.
    pub joints: Option<Joints>,
    /// What shims of the centre bearing do, where the shaft has two pieces.
    pub bearing: Option<CentreBearing>,
}

/// How a shaft turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turning {
    /// The shaft's speed.
    pub shaft: AngularVelocity,
    /// The road speed it is judged at.
    pub road: Velocity,
    /// Why it is judged at that.
    pub why: Why,
}

/// Why a shaft is judged at a road speed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// It was typed.
    Typed,
    /// The car's top speed.
    TopSpeed,
    /// The shift rpm in the fastest gear.
    ShiftRpm,
}

/// What may turn as fast as the shaft must.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Instead {
    /// The longest piece of the same tube.
    pub longest: Length,
    /// The outside of a tube of the same length and wall; none where even a thin bar does.
    pub outside: Option<Length>,
    /// Equal pieces of the same tube.
    pub pieces: usize,
}

/// The greatest torque of a shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Torqued {
    /// The torque behind the gearbox.
    pub torque: Torque,
    /// Whether the tyres' grip limits it, and not the engine.
    pub by_grip: bool,
    /// The torque at which the tube yields, where its material's yield is known.
    pub yields: Option<Torque>,
}

impl Driveline {
    /// The shaft of a setup.
    pub fn of(setup: &Setup, gears: &Gears, pull: &Pull, tyres: &Tyres, conditions: &Conditions) -> Self {
        let shared = &conditions.driveline;
        let pieces = &setup.shaft.pieces;
        let turning = turning(setup, tyres, shared);
        let critical = critical(pieces);
        let share = shared.margin.map(crate::driveline::Margin::share);
        let allowed = critical.zip(share).map(|((critical, _), share)| critical * share);
        let instead = turning.zip(share).and_then(|(turning, share)| Instead::of(&setup.shaft, turning.shaft / share));
        let slopes = &setup.shaft.slopes;
        let joints = slopes.line.as_ref().map(|line| Joints::of(line, slopes.windup, turning.map(|turning| turning.shaft)));
        let shim = setup.shaft.shim.unwrap_or_else(usual_shim);
        let bearing = slopes.line.as_ref().and_then(|line| CentreBearing::of(line, &setup.shaft.lengths, shim));
        Self { turning, critical, allowed, instead, torque: torque(setup, gears, pull, conditions), joints, bearing }
    }

    /// The shaft's speed as a share of its critical speed.
    pub fn share(&self) -> Option<f64> {
        Some((self.turning?.shaft / self.critical?.0).value)
    }

    /// The road speed at which the shaft turns so fast.
    pub fn road_at(&self, shaft: AngularVelocity) -> Option<Velocity> {
        let turning = self.turning?;
        Some(turning.road * (shaft / turning.shaft).value)
    }
}

/// The shim of a centre bearing that is counted in where none is typed: a millimetre, so that any stack can be made of it.
pub fn usual_shim() -> Length {
    crate::units::common::millimetres(1.0)
}

fn turning(setup: &Setup, tyres: &Tyres, shared: &DrivelineShared) -> Option<Turning> {
    let circumference = setup.rolling.as_ref()?.circumference;
    let fastest = tyres.fastest.filter(|_| shared.is_blank);
    let (road, why) = match (shared.at, fastest) {
        (Some(typed), _) => (typed, Why::Typed),
        (None, Some(fastest)) => (fastest.speed, if fastest.is_top_speed { Why::TopSpeed } else { Why::ShiftRpm }),
        (None, None) => return None,
    };
    Some(Turning { shaft: shaft_speed(road, circumference, setup.behind_shaft()?), road, why })
}

/// The speed of a driveshaft at a road speed: the wheel's, times all that stands behind the shaft.
///
/// Model: no slip of the tyres. Source: plain kinematics.
pub fn shaft_speed(road: Velocity, circumference: Length, behind: Ratio) -> AngularVelocity {
    wheel_speed(road, circumference) * decimal(behind)
}

/// The road speed at which a driveshaft turns so fast; the inverse of [`shaft_speed`].
pub fn road_speed(shaft: AngularVelocity, circumference: Length, behind: Ratio) -> Velocity {
    rolling_speed(shaft / decimal(behind), circumference)
}

fn critical(pieces: &[Shaft]) -> Option<(AngularVelocity, usize)> {
    let speeds = pieces.iter().enumerate().map(|(at, piece)| (piece.critical_speed(), at));
    speeds.reduce(|least, next| if next.0 < least.0 { next } else { least })
}

impl Instead {
    /// The most pieces that are proposed.
    const MOST_PIECES: usize = 3;

    /// What has its critical speed at `needed` or above.
    fn of(shafts: &Shafts, needed: AngularVelocity) -> Option<Self> {
        let slowest = shafts.pieces.get(critical(&shafts.pieces)?.1)?;
        let whole = shafts.lengths.iter().fold(Length::default(), |sum, length| sum + *length);
        let longest = slowest.longest_for(needed);
        let pieces = (1..=Self::MOST_PIECES).find(|pieces| whole <= longest * f64::from(u8::try_from(*pieces).unwrap_or(u8::MAX)))?;
        Some(Self { longest, outside: slowest.outside_for(needed), pieces })
    }
}

/// What the engine gives the shaft in first gear, and no more than the tyres hold; losses left out, so that it is no less in truth.
fn torque(setup: &Setup, gears: &Gears, pull: &Pull, conditions: &Conditions) -> Option<Torqued> {
    let peak = conditions.pull.curve.as_ref()?.peak_torque().torque;
    let first = decimal(gears.ratios.first().copied().flatten()?) * decimal(setup.before_axle()?);
    let by_engine = peak * first.abs();
    let held = pull.vehicle.as_ref().map(crate::motion::Vehicle::grip_limit).zip(setup.rolling.as_ref()).zip(setup.behind_shaft());
    let held = held.map(|((grip, rolling), behind)| Torque::from(grip * (rolling.circumference / TAU)) / decimal(behind));
    let by_grip = held.is_some_and(|held| held < by_engine);
    let yields = setup.shaft.shear_yield();
    Some(Torqued {
        torque: held.filter(|_| by_grip).unwrap_or(by_engine),
        by_grip,
        yields: setup.shaft.pieces.first().zip(yields).map(|(piece, shear)| piece.yield_torque(shear)),
    })
}
