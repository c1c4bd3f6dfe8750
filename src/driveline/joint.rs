//! One Hooke's joint: how the shaft behind it swells and sinks twice a turn, and the acceleration that gives.
//!
//! Symbols: β the working angle, θ the turn of the driving shaft from where its yoke lies in the plane of both shafts, ω its speed.
//! Source: any textbook of the theory of machines (universal joint).

use uom::si::angle::radian;
use uom::si::angular_acceleration::radian_per_second_squared;
use uom::si::angular_velocity::radian_per_second;

use crate::units::{Angle, AngularAcceleration, AngularVelocity};

/// A joint at its working angle, from nothing to below a right angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    angle: Angle,
}

impl Joint {
    /// A joint at a working angle, whichever way it bends.
    pub fn at(angle: Angle) -> Self {
        Self { angle: angle.abs() }
    }

    /// The joint whose speed swings so much, from its lowest to its highest as a share of the mean: U = 1 ÷ cos β − cos β solved for β.
    pub fn of_swing(swing: f64) -> Self {
        let cosine = ((swing * swing + 4.0).sqrt() - swing) / 2.0;
        Self { angle: Angle::new::<radian>(cosine.clamp(-1.0, 1.0).acos()) }
    }

    /// Its working angle.
    pub fn angle(self) -> Angle {
        self.angle
    }

    fn sin_cos(self) -> (f64, f64) {
        self.angle.get::<radian>().sin_cos()
    }

    /// The lowest and the highest speed of the driven shaft as a share of the driving one's: cos β and 1 ÷ cos β.
    pub fn speed_limits(self) -> (f64, f64) {
        let (_, cosine) = self.sin_cos();
        (cosine, 1.0 / cosine)
    }

    /// From the lowest to the highest speed as a share of the mean: U = 1 ÷ cos β − cos β = sin β × tan β.
    pub fn swing(self) -> f64 {
        let (sine, cosine) = self.sin_cos();
        sine * sine / cosine
    }

    /// The speed of the driven shaft as a share of the driving one's at a turn: cos β ÷ (1 − sin² β × cos² θ).
    pub fn speed_ratio(self, turn: Angle) -> f64 {
        let (sine, cosine) = self.sin_cos();
        cosine / (1.0 - (sine * turn.get::<radian>().cos()).powi(2))
    }

    /// The turn, up to a quarter, at which the driven shaft is slowed hardest: cos 2θ = (√(k² + 8) − k) ÷ 2, k = (2 − sin² β) ÷ sin² β,
    /// here without the division by sin² β. Books often print the approximation cos 2θ = 2 sin² β ÷ (2 − sin² β).
    pub fn turn_of_greatest_acceleration(self) -> Angle {
        let (sine, _) = self.sin_cos();
        let square = sine * sine;
        let rest = 2.0 - square;
        let twice = 4.0 * square / (rest + (rest * rest + 8.0 * square * square).sqrt());
        Angle::new::<radian>(twice.acos() / 2.0)
    }

    /// The greatest angular acceleration of the driven shaft: ω² × cos β × sin² β × sin 2θ ÷ (1 − sin² β × cos² θ)² at that turn; about
    /// ω² × β² with β in radians.
    pub fn greatest_acceleration(self, speed: AngularVelocity) -> AngularAcceleration {
        let (sine, cosine) = self.sin_cos();
        let turn = self.turn_of_greatest_acceleration().get::<radian>();
        let square = sine * sine;
        let share = cosine * square * (2.0 * turn).sin() / (1.0 - square * turn.cos().powi(2)).powi(2);
        AngularAcceleration::new::<radian_per_second_squared>(speed.get::<radian_per_second>().powi(2) * share)
    }
}
