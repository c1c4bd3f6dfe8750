//! A line of shafts from gearbox to axle, a Hooke's joint between each two: what the joints leave of one another's swing.

use std::f64::consts::PI;

use uom::si::angle::radian;

use super::direction::{cross, dot};
use super::{Direction, Joint};
use crate::problem::Explain;
use crate::units::{Angle, limits, number, unit};

worded! {
    /// How the yokes at the two ends of the line's pieces stand to each other.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Yokes {
        /// In line on every piece.
        InLine => "in line";
        /// A quarter turn off on the first piece, or the only one.
        FirstTurned => "a quarter turn off, first piece";
        /// A quarter turn off on the last piece, or the only one.
        LastTurned => "a quarter turn off, last piece";
    }
    /// In words.
    pub fn word;
}

impl Yokes {
    /// Every way there is.
    pub const ALL: [Self; 3] = [Self::InLine, Self::FirstTurned, Self::LastTurned];

    /// Whether the yokes of a piece stand a quarter turn off, pieces counted from 0.
    fn turns(self, piece: usize, pieces: usize) -> bool {
        match self {
            Self::InLine => false,
            Self::FirstTurned => piece == 0,
            Self::LastTurned => piece + 1 == pieces,
        }
    }
}

/// A line of shafts: the gearbox's output, one or more pieces, the axle's pinion.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    shafts: Vec<Direction>,
    yokes: Yokes,
}

/// Why shafts make no line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LineError {
    /// A joint would work at an angle that none turns through.
    TooSharp {
        /// The joint, counted from 0 behind the gearbox.
        joint: usize,
        /// Its angle.
        angle: Angle,
    },
}

impl Explain for LineError {
    fn what(&self) -> String {
        let Self::TooSharp { joint, angle } = self;
        format!("joint {} would work at {}°, which none turns through", joint + 1, number::show(unit::DEGREE.number(*angle), 0))
    }

    fn what_to_do(&self) -> String {
        "check which slopes are up and which are down; the axle’s is that of its nose".into()
    }
}

impl Line {
    /// The line from the gearbox's output through its pieces to the pinion.
    ///
    /// # Errors
    /// Where a joint would work at more than 45°.
    pub fn new(gearbox: Direction, pieces: &[Direction], pinion: Direction, yokes: Yokes) -> Result<Self, LineError> {
        let shafts = std::iter::once(gearbox).chain(pieces.iter().copied()).chain([pinion]).collect();
        let line = Self { shafts, yokes };
        let sharp = line.joints().into_iter().map(Joint::angle).enumerate().find(|(_, angle)| !limits::SLOPE.allow(*angle));
        sharp.map_or(Ok(line), |(joint, angle)| Err(LineError::TooSharp { joint, angle }))
    }

    /// The shafts, the gearbox's output first, the pinion last.
    pub fn shafts(&self) -> &[Direction] {
        &self.shafts
    }

    /// How its yokes stand.
    pub fn yokes(&self) -> Yokes {
        self.yokes
    }

    /// The line with its yokes set otherwise.
    #[must_use]
    pub fn with_yokes(&self, yokes: Yokes) -> Self {
        Self { yokes, ..self.clone() }
    }

    fn pieces(&self) -> usize {
        self.shafts.len().saturating_sub(2)
    }

    /// The joints, the one at the gearbox first.
    pub fn joints(&self) -> Vec<Joint> {
        let joint = |pair: &[Direction]| if let [front, rear] = pair { Some(Joint::at(front.angle_to(*rear))) } else { None };
        self.shafts.windows(2).filter_map(joint).collect()
    }

    /// The angle of the one joint that swings as the whole line does.
    ///
    /// Model: to second order in the angles a joint swings the speed by β² ÷ 2 × cos 2(θ − α), where α is the way it bends. Yokes in line
    /// hand the next joint its turn a quarter on, so that every second joint counts against the others; a quarter turn in the yokes
    /// turns that round. β² = |β₁² ∠ 2α₁ − β₂² ∠ 2α₂ + …|. Source: handbooks of cardan shafts; [`Line::swing`] is exact.
    pub fn resultant(&self) -> Angle {
        self.resultant_behind(self.shafts.len())
    }

    /// As [`Line::resultant`], of the joints before a piece, pieces counted from 0: what the piece itself swings by.
    pub fn resultant_of_piece(&self, piece: usize) -> Angle {
        self.resultant_behind(piece + 2)
    }

    /// The resultant of the joints between the first so many shafts.
    fn resultant_behind(&self, shafts: usize) -> Angle {
        let (mut down, mut right, mut sign) = (0.0, 0.0, 1.0);
        for (joint, pair) in self.shafts.windows(2).take(shafts.saturating_sub(1)).enumerate() {
            let [front, rear] = pair else { continue };
            let (side, plan) = front.bend_to(*rear);
            let (side, plan) = (side.get::<radian>(), plan.get::<radian>());
            down += sign * (side * side - plan * plan);
            right += sign * 2.0 * side * plan;
            // The yokes of the piece behind this joint.
            sign = if self.yokes.turns(joint, self.pieces()) { sign } else { -sign };
        }
        Angle::new::<radian>(down.hypot(right).sqrt())
    }

    /// The speed of the pinion as a share of the gearbox's, at a turn of the gearbox's output from where its yoke stands level; exact.
    pub fn speed_ratio(&self, turn: Angle) -> f64 {
        self.speed_ratio_before(turn, self.shafts.len())
    }

    /// The same of a piece, pieces counted from 0.
    pub fn speed_ratio_of_piece(&self, piece: usize, turn: Angle) -> f64 {
        self.speed_ratio_before(turn, piece + 2)
    }

    /// Model: the pin of each driving yoke, u, and that of the driven one, v, stay square to each other and to their shafts a and b, so
    /// v lies along b × u. With w = u × v across both pins, `ω_b ÷ ω_a = (a · w) ÷ (b · w)`. The next driving pin is v, or a quarter turn
    /// on. Source: kinematics of the cross between two yokes.
    fn speed_ratio_before(&self, turn: Angle, shafts: usize) -> f64 {
        let Some(first) = self.shafts.first() else { return 1.0 };
        let mut pin = pin_of(unit_of(first.vector()), turn.get::<radian>());
        let mut ratio = 1.0;
        for (joint, pair) in self.shafts.windows(2).take(shafts.saturating_sub(1)).enumerate() {
            let [front, rear] = pair else { continue };
            let (front, rear) = (unit_of(front.vector()), unit_of(rear.vector()));
            let driven = unit_of(cross(rear, pin));
            let across = cross(pin, driven);
            ratio *= dot(front, across) / dot(rear, across);
            pin = if self.yokes.turns(joint, self.pieces()) { cross(rear, driven) } else { driven };
        }
        ratio
    }

    /// From the pinion's lowest to its highest speed over a turn as a share of the gearbox's, by going through half a turn in steps of
    /// half a degree; a peak between two steps is missed by less than a part in ten thousand of the swing.
    pub fn swing(&self) -> f64 {
        const STEPS: u32 = 360;
        let ratio = |step: u32| self.speed_ratio(Angle::new::<radian>(PI * f64::from(step) / f64::from(STEPS)));
        let (least, most) =
            (0..STEPS).map(ratio).fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), ratio| (least.min(ratio), most.max(ratio)));
        most - least
    }

    /// The line with another slope of its pinion in side view.
    #[must_use]
    pub fn with_pinion_at(&self, side: Angle) -> Self {
        let mut line = self.clone();
        if let Some(pinion) = line.shafts.last_mut() {
            *pinion = Direction::new(side, pinion.plan());
        }
        line
    }

    /// How the pinion's slope in side view should change so that least is left over: by whole tenths of a degree, as an inclinometer and a
    /// wedge can follow, as little as does.
    ///
    /// Of two changes that leave the same within 0.02° the smaller is taken, so a line with nothing to mend answers none.
    pub fn best_change_of_pinion(&self) -> Angle {
        /// The furthest that is looked, in tenths of a degree.
        const FURTHEST: i32 = 200;
        const WORTH_DEGREES: f64 = 0.02;
        let side = self.shafts.last().map_or_else(Angle::default, |pinion| pinion.side());
        let left = |tenths: i32| unit::DEGREE.number(self.with_pinion_at(side + unit::DEGREE.of(f64::from(tenths) / 10.0)).resultant());
        let tried = (1..=FURTHEST).flat_map(|tenths| [tenths, -tenths]);
        let (best, _) = tried.fold((0, left(0)), |(best, least), tenths| {
            let left = left(tenths);
            if left < least - WORTH_DEGREES { (tenths, left) } else { (best, least) }
        });
        unit::DEGREE.of(f64::from(best) / 10.0)
    }
}

/// A pin square to a shaft, turned on by an angle from where it lies level.
fn pin_of(shaft: [f64; 3], turn_rad: f64) -> [f64; 3] {
    let level = unit_of(cross([0.0, 0.0, 1.0], shaft));
    let upright = cross(shaft, level);
    let (sine, cosine) = turn_rad.sin_cos();
    let ([l0, l1, l2], [u0, u1, u2]) = (level, upright);
    [cosine * l0 + sine * u0, cosine * l1 + sine * u1, cosine * l2 + sine * u2]
}

fn unit_of(vector: [f64; 3]) -> [f64; 3] {
    let length = dot(vector, vector).sqrt();
    vector.map(|part| part / length)
}
