//! Thrust at the wheels in every gear over road speed: `F = T·i·i_f·η/r`. Needs no mass.
//!
//! Source of the formula: every text on vehicle dynamics (Gillespie ch. 2; Jazar ch. 4), losses as an efficiency a mesh.

use uom::si::length::meter;

use super::curve::{Band, EngineCurve, Peak};
use super::error::MotionError;
use super::piecewise::{self, Cubic};
use super::{car::Efficiencies, in_metres_per_second, in_rpm, metres_per_second, newtons, rpm};
use crate::gearing::GearNumber;
use crate::units::{AngularVelocity, Force, Length, Velocity};

/// A gear set with its axle and tyre, plainly.
#[derive(Clone, Debug, PartialEq)]
pub struct Gears {
    /// Ratio of each forward gear, lowest gear first, without sign.
    pub ratios: Vec<f64>,
    /// Ratio of everything behind the box: final drive and extra stages.
    pub final_drive: f64,
    /// Distance from wheel centre to road as the wheel rolls: circumference/2π.
    pub rolling_radius: Length,
    /// Meshes under load in each gear (0 in direct drive); gears without an entry count as one mesh.
    pub meshes: Vec<u8>,
}

/// One gear's thrust.
#[derive(Clone, Debug, PartialEq)]
pub struct GearPull {
    /// The gear.
    pub gear: GearNumber,
    /// Its ratio in the box.
    pub ratio: f64,
    /// Its ratio times everything behind the box.
    pub overall: f64,
    /// Share of engine torque that reaches the wheels, 0 to 1.
    pub efficiency: f64,
    /// Engine rpm for each m/s of road speed, 30·N/(π·r).
    pub rpm_per_m_per_s: f64,
    /// Road speed at the curve's first rpm.
    pub slowest: Velocity,
    /// Road speed at the rev limit.
    pub fastest: Velocity,
    /// Thrust (N) over road speed (m/s), to the end of the curve.
    pub(super) thrust: Vec<Cubic>,
}

impl GearPull {
    /// Engine speed at a road speed, clutch closed.
    pub fn engine_speed(&self, speed: Velocity) -> AngularVelocity {
        rpm(self.rpm_per_m_per_s * in_metres_per_second(speed))
    }

    /// Road speed at an engine speed, clutch closed.
    pub fn road_speed(&self, engine: AngularVelocity) -> Velocity {
        metres_per_second(in_rpm(engine) / self.rpm_per_m_per_s)
    }

    /// Thrust at full throttle; `None` where the engine would turn slower or faster than its curve tells.
    pub fn thrust(&self, speed: Velocity) -> Option<Force> {
        self.thrust_n(in_metres_per_second(speed)).map(newtons)
    }

    pub(super) fn thrust_n(&self, speed_m_per_s: f64) -> Option<f64> {
        piecewise::value(&self.thrust, speed_m_per_s)
    }

    /// Wheel thrust for each N·m at the clutch (N per N·m).
    pub fn thrust_per_torque_1_per_m(&self) -> f64 {
        self.overall * self.efficiency / self.radius_m()
    }

    pub(super) fn radius_m(&self) -> f64 {
        30.0 * self.overall / (std::f64::consts::PI * self.rpm_per_m_per_s)
    }
}

/// Thrust in every gear.
#[derive(Clone, Debug, PartialEq)]
pub struct Pull {
    curve: EngineCurve,
    gears: Vec<GearPull>,
    limit_rpm: f64,
    is_limit_given: bool,
    cautions: Vec<MotionError>,
}

impl Pull {
    /// Puts engine and gears together; `limit` is the engine speed that is not to be passed, the end of the curve where `None`.
    ///
    /// A limit above the curve's end is brought down to it, with a caution.
    ///
    /// # Errors
    /// Without gears, with a ratio, radius or efficiency that cannot be, or with a limit below the curve's first rpm.
    ///
    /// ```
    /// use layshaft::gearing::GearNumber;
    /// use layshaft::motion::{CurvePoint, EngineCurve, Gears, Pull, car::Efficiencies};
    /// use layshaft::units::{common::rpm, show, unit};
    /// # fn example() -> Option<()> {
    /// let point = |speed| CurvePoint { speed: rpm(speed), torque: unit::N_M.of(200.0) };
    /// let curve = EngineCurve::through(&[point(1_000.0), point(6_000.0)]).ok()?;
    /// let gears = Gears { ratios: vec![2.0, 1.0], final_drive: 4.0, rolling_radius: unit::METRE.of(0.3), meshes: vec![2, 0] };
    /// let pull = Pull::new(&curve, &gears, Efficiencies::default(), None).ok()?;
    /// let first = pull.gear(GearNumber::FIRST)?;
    /// // 3,000 rpm ÷ 8 is 6.25 turns of the wheel a second: × 2π × 0.3 m
    /// let speed = first.road_speed(rpm(3_000.0));
    /// assert_eq!(show(&speed, &unit::M_S, 2), "11.78 m/s");
    /// // 200 N·m × 8 × (0.98² × 0.96) ÷ 0.3 m
    /// assert_eq!(show(&first.thrust(speed)?, &unit::NEWTON, 0), "4,917 N");
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn new(
        curve: &EngineCurve,
        gears: &Gears,
        efficiencies: Efficiencies,
        limit: Option<AngularVelocity>,
    ) -> Result<Self, MotionError> {
        check(gears, efficiencies)?;
        let (least, greatest) = curve.ends_rpm();
        let wanted = limit.map_or(greatest, in_rpm);
        if wanted <= least || wanted.is_nan() {
            return Err(MotionError::LimitBelowCurve { limit_rpm: wanted, first_rpm: least });
        }
        let beyond = wanted > greatest * (1.0 + 1e-9);
        let cautions = beyond.then_some(MotionError::LimitBeyondCurve { limit_rpm: wanted, last_rpm: greatest }).into_iter().collect();
        let limit_rpm = wanted.min(greatest);
        let radius_m = gears.rolling_radius.get::<meter>();
        let gears = gears.ratios.iter().enumerate().map(|(at, ratio)| {
            let overall = ratio * gears.final_drive;
            let meshes = gears.meshes.get(at).copied().unwrap_or(1);
            let efficiency = efficiencies.mesh.value.powi(i32::from(meshes)) * efficiencies.final_drive.value;
            let rpm_per_m_per_s = 30.0 * overall / (std::f64::consts::PI * radius_m);
            let up = overall * efficiency / radius_m;
            GearPull {
                gear: GearNumber::at(at),
                ratio: *ratio,
                overall,
                efficiency,
                rpm_per_m_per_s,
                slowest: metres_per_second(least / rpm_per_m_per_s),
                fastest: metres_per_second(limit_rpm / rpm_per_m_per_s),
                thrust: curve.pieces().iter().map(|piece| piece.stretched(1.0 / rpm_per_m_per_s, up)).collect(),
            }
        });
        Ok(Self { curve: curve.clone(), gears: gears.collect(), limit_rpm, is_limit_given: limit.is_some() && !beyond, cautions })
    }

    /// The engine.
    pub fn curve(&self) -> &EngineCurve {
        &self.curve
    }

    /// Every gear, lowest first.
    pub fn gears(&self) -> &[GearPull] {
        &self.gears
    }

    /// A gear.
    pub fn gear(&self, gear: GearNumber) -> Option<&GearPull> {
        self.gears.get(gear.place())
    }

    /// The engine speed that is not passed.
    pub fn limit(&self) -> AngularVelocity {
        rpm(self.limit_rpm)
    }

    /// Whether that speed was given; else it is where the curve happens to end.
    pub fn is_limit_given(&self) -> bool {
        self.is_limit_given
    }

    /// The band around the power peak, both below the limit, in which power is at least `share` (0 to 1) of its peak.
    pub fn band(&self, share: f64) -> Band {
        self.curve.band_to(share, self.limit())
    }

    /// Where power is greatest below the limit.
    pub fn peak_power(&self) -> Peak {
        self.curve.peak_power_to(self.limit())
    }

    pub(super) fn limit_rpm(&self) -> f64 {
        self.limit_rpm
    }

    /// What wants attention though the figures stand.
    pub fn cautions(&self) -> &[MotionError] {
        &self.cautions
    }

    /// The engine speed (rpm) a launch is held at: the one asked for, kept inside the curve and the rev limit.
    pub fn held_launch_rpm(&self, launch: AngularVelocity) -> f64 {
        let (least, _) = self.curve.ends_rpm();
        in_rpm(launch).max(least).min(self.limit_rpm)
    }
}

fn check(gears: &Gears, efficiencies: Efficiencies) -> Result<(), MotionError> {
    if gears.ratios.is_empty() {
        return Err(MotionError::NoGears);
    }
    let possible = |value: f64, most: f64| value.is_finite() && value > 0.0 && value <= most;
    let radius_m = gears.rolling_radius.get::<meter>();
    if let Some(at) = gears.ratios.iter().position(|ratio| !possible(*ratio, 100.0)) {
        return Err(MotionError::Ratio(GearNumber::at(at)));
    }
    if !possible(gears.final_drive, 100.0) {
        return Err(MotionError::FinalDrive(gears.final_drive));
    }
    if !possible(radius_m, 5.0) {
        return Err(MotionError::Radius(radius_m));
    }
    [efficiencies.mesh.value, efficiencies.final_drive.value]
        .into_iter()
        .find(|share| !possible(*share, 1.0))
        .map_or(Ok(()), |share| Err(MotionError::Efficiency(share)))
}
