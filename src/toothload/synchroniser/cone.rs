//! A friction cone by itself: torque, force, sticking.

use std::f64::consts::PI;

use super::super::forces::newtons;
use crate::problem::Explain;
use crate::units::{Angle, Area, Force, Length, MomentOfInertia, Pressure, Time, Torque, number};

/// A friction cone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cone {
    /// The mean diameter of the lining.
    pub mean_diameter: Length,
    /// The width of the lining along its slope.
    pub width: Length,
    /// The angle of the slope to the shaft, half the cone's angle.
    pub half_angle: Angle,
    /// The coefficient of friction; 0.08 to 0.12 is usual in oil (from memory, no published source read).
    pub friction: f64,
    /// How many cones work at once: 1, 2 or 3.
    pub cones: u8,
}

impl Cone {
    /// The friction that is taken where none is given; 0.08 to 0.12 is usual in oil (from memory, no published source read).
    pub const USUAL_FRICTION: f64 = 0.10;

    /// The angle to the shaft that is taken where none is given; 6 to 7.5° is usual (from memory, no published source read).
    pub fn usual_half_angle() -> Angle {
        Angle::new::<uom::si::angle::degree>(6.5)
    }

    /// The lining's area, π d b on each cone.
    pub fn area(&self) -> Area {
        self.mean_diameter * self.width * PI * f64::from(self.cones.max(1))
    }

    /// The torque while slipping, T = μ F d / (2 sin α) on each cone, at an axial force.
    ///
    /// Source: Jindal, Machine Design, example 22-8; Khurmi and Gupta, section on cone clutches.
    ///
    /// ```
    /// use layshaft::toothload::synchroniser::Cone;
    /// use layshaft::units::{common::millimetres, show, unit};
    /// let cone = Cone {
    ///     mean_diameter: millimetres(60.0),
    ///     width: millimetres(8.0),
    ///     half_angle: unit::DEGREE.of(6.0),
    ///     friction: 0.1,
    ///     cones: 1,
    /// };
    /// // 0.1 × 1,000 N × 0.06 m ÷ (2 × 0.104528)
    /// assert_eq!(show(&cone.torque(unit::NEWTON.of(1_000.0)), &unit::N_M, 1), "28.7 N·m");
    /// // tan 6° = 0.1051 is still above the friction.
    /// assert!(!cone.sticks());
    /// ```
    pub fn torque(&self, axial: Force) -> Torque {
        let newton_metres = self.friction * axial.value * self.mean_diameter.value / (2.0 * self.half_angle.value.sin());
        Torque::new::<uom::si::torque::newton_meter>(newton_metres * f64::from(self.cones.max(1)))
    }

    /// The force square to the lining, on all cones together, that gives a torque: N = 2 T / (μ d).
    pub fn normal_force(&self, torque: Torque) -> Force {
        newtons(2.0 * torque.value / (self.friction * self.mean_diameter.value))
    }

    /// The pressure on the lining at a torque.
    pub fn pressure(&self, torque: Torque) -> Pressure {
        self.normal_force(torque) / self.area()
    }

    /// How long a torque takes to bring an inertia over a speed difference, t = J Δω / T.
    pub fn time(&self, axial: Force, inertia: MomentOfInertia, difference: crate::units::AngularVelocity) -> Time {
        Time::new::<uom::si::time::second>(inertia.value * difference.value.abs() / self.torque(axial).value)
    }

    /// Whether the cone sticks once it is pressed in: tan α ≤ μ.
    pub fn sticks(&self) -> bool {
        self.half_angle.value.tan() <= self.friction
    }
}

/// The half angle below which a cone sticks, atan μ.
///
/// ```
/// use layshaft::toothload::synchroniser::cone::sticking_angle;
/// use layshaft::units::unit;
/// // atan 0.1 = 0.0996687 rad = 5.71°
/// assert_eq!((100.0 * unit::DEGREE.number(sticking_angle(0.1))).round(), 571.0);
/// ```
pub fn sticking_angle(friction: f64) -> Angle {
    Angle::new::<uom::si::angle::radian>(friction.atan())
}

/// A cone too flat for its friction: once pressed in, it does not come off by itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sticking(pub Cone);

impl Explain for Sticking {
    fn what(&self) -> String {
        let degrees = self.0.half_angle.get::<uom::si::angle::degree>();
        format!("a cone of {}° sticks at a friction of {}", number::show(degrees, 1), number::show(self.0.friction, 2))
    }

    fn what_to_do(&self) -> String {
        let least = sticking_angle(self.0.friction).get::<uom::si::angle::degree>();
        format!("measure the cone again; it must be steeper than {}°", number::show(least, 1))
    }
}
