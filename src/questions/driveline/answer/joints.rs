//! At which angles the joints work, what they leave of one another, and what would mend it.

use uom::si::angle::radian;

use crate::driveline::{Joint, Line, Yokes, joint_limits};
use crate::units::{Angle, AngularAcceleration, AngularVelocity, unit};

/// The joints of a line at a shaft speed.
#[derive(Clone, Debug, PartialEq)]
pub struct Joints {
    /// The line.
    pub line: Line,
    /// The working angles, the joint at the gearbox first.
    pub angles: Vec<Angle>,
    /// How far the nose has risen under drive.
    pub windup: Angle,
    /// The angle of the one joint that swings as all of them do.
    pub left_over: Angle,
    /// From the pinion's lowest to its highest speed over a turn, as a share of the gearbox's.
    pub swing: f64,
    /// What the shaft's speed allows, where that is known.
    pub at_speed: Option<AtSpeed>,
    /// The change of the pinion's slope that leaves least.
    pub mended: Mended,
    /// The yokes that would leave clearly less, and how much.
    pub yokes: Option<(Yokes, Angle)>,
}

/// What depends on the shaft's speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtSpeed {
    /// The shaft's speed.
    pub shaft: AngularVelocity,
    /// The largest working angle.
    pub allowed: Angle,
    /// The greatest angular acceleration of the pinion: it shakes the axle and all that stands behind.
    pub pinion: AngularAcceleration,
    /// The greatest of the shaft's pieces: it shakes the joints and the gearbox.
    pub piece: AngularAcceleration,
}

/// The line with the pinion's slope that leaves least.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mended {
    /// How much further the pinion's nose goes up.
    pub change: Angle,
    /// How far it then points up at rest.
    pub nose_up: Angle,
    /// What is left over.
    pub left_over: Angle,
}

/// What is wrong with the joints of a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Finding {
    /// A joint works so sharply that it binds: the joint, counted from 0.
    Binds(usize),
    /// A joint works at more than the shaft's speed allows: the joint, counted from 0.
    TooLarge(usize),
    /// The two ends of a shaft differ by more than a degree: by how much.
    Uneven(Angle),
    /// Yokes a quarter turn off make the joints add up instead of cancelling.
    AddUp,
    /// More is left over than a line may have.
    LeftOver,
    /// A joint works at so little that its needles do not roll: the joint, counted from 0.
    Idle(usize),
}

impl Joints {
    /// The joints of a line whose nose has risen by `windup` under drive, at the speed of the shaft where that is known.
    pub fn of(line: &Line, windup: Angle, shaft: Option<AngularVelocity>) -> Self {
        let angles: Vec<Angle> = line.joints().into_iter().map(Joint::angle).collect();
        let left_over = line.resultant();
        Self {
            at_speed: shaft.map(|shaft| AtSpeed::of(line, left_over, shaft)),
            swing: line.swing(),
            mended: Mended::of(line, windup),
            yokes: better_yokes(line, left_over),
            line: line.clone(),
            windup,
            angles,
            left_over,
        }
    }

    /// By how much the two ends of a one-piece shaft differ; none for a shaft of several pieces.
    pub fn difference(&self) -> Option<Angle> {
        if let [front, rear] = self.angles.as_slice() { Some((*front - *rear).abs()) } else { None }
    }

    /// What is wrong, the worst first; nothing where all is as it should be.
    pub fn findings(&self) -> Vec<Finding> {
        let angles = || self.angles.iter().copied().enumerate();
        let binding = joint_limits::binding_angle();
        let binds = angles().filter(|(_, angle)| *angle > binding).map(|(joint, _)| Finding::Binds(joint));
        let allowed = self.at_speed.map(|at_speed| at_speed.allowed);
        let is_large = |angle: Angle| angle <= binding && allowed.is_some_and(|allowed| is_more(angle, allowed));
        let large = angles().filter(|(_, angle)| is_large(*angle));
        let large = large.reduce(|worst, next| if next.1 > worst.1 { next } else { worst });
        let uneven = self.difference().filter(|difference| is_more(*difference, joint_limits::most_difference()));
        let add_up = self.line.yokes() != Yokes::InLine && self.yokes.is_some();
        let is_left_over = uneven.is_none() && !add_up && is_more(self.left_over, joint_limits::most_left_over());
        // The front piece of several runs in line with the gearbox as a rule (common practice, no published source).
        let resting = usize::from(self.angles.len() > 2);
        let idle = angles().skip(resting).filter(|(_, angle)| is_more(joint_limits::least_angle(), *angle));
        binds
            .chain(large.map(|(joint, _)| Finding::TooLarge(joint)))
            .chain(uneven.map(Finding::Uneven))
            .chain(add_up.then_some(Finding::AddUp))
            .chain(is_left_over.then_some(Finding::LeftOver))
            .chain(idle.map(|(joint, _)| Finding::Idle(joint)))
            .collect()
    }
}

/// Whether an angle is more than a limit, as closely as slopes that were typed in tenths tell.
fn is_more(angle: Angle, limit: Angle) -> bool {
    unit::DEGREE.number(angle - limit) > 1e-6
}

impl AtSpeed {
    fn of(line: &Line, left_over: Angle, shaft: AngularVelocity) -> Self {
        let pieces = line.shafts().len().saturating_sub(2);
        let worst = (0..pieces)
            .map(|piece| line.resultant_of_piece(piece))
            .fold(Angle::default(), |worst, next| if next > worst { next } else { worst });
        Self {
            shaft,
            allowed: joint_limits::largest_angle(shaft),
            pinion: Joint::at(left_over).greatest_acceleration(shaft),
            piece: Joint::at(worst).greatest_acceleration(shaft),
        }
    }
}

impl Mended {
    fn of(line: &Line, windup: Angle) -> Self {
        let change = line.best_change_of_pinion();
        let side = line.shafts().last().map_or_else(Angle::default, |pinion| pinion.side()) + change;
        Self { change, nose_up: side - windup, left_over: line.with_pinion_at(side).resultant() }
    }
}

/// Other yokes that leave at least half a degree less.
fn better_yokes(line: &Line, left_over: Angle) -> Option<(Yokes, Angle)> {
    let others = Yokes::ALL.into_iter().filter(|yokes| *yokes != line.yokes());
    let left = others.map(|yokes| (yokes, line.with_yokes(yokes).resultant()));
    let best = left.reduce(|best, next| if next.1 < best.1 { next } else { best })?;
    (best.1 + unit::DEGREE.of(0.5) < left_over).then_some(best)
}

/// How a line's pinion and first piece turn over one turn of the gearbox, in steps: the turn, and both speeds as shares of the gearbox's.
pub fn over_a_turn(line: &Line, steps: u32) -> Vec<(Angle, [f64; 2])> {
    let at = |step: u32| {
        let turn = Angle::new::<radian>(std::f64::consts::TAU * f64::from(step) / f64::from(steps.max(1)));
        (turn, [line.speed_ratio_of_piece(0, turn), line.speed_ratio(turn)])
    };
    (0..=steps).map(at).collect()
}
