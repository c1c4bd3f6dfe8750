//! What holds of every line of joints and of every text for a slope.

use layshaft::driveline::slope::{End, read_one, read_pieces};
use layshaft::driveline::{Direction, Joint, Lean, Line, Slope, Yokes};
use layshaft::problem::Explain;
use layshaft::units::common::millimetres;
use layshaft::units::{Angle, unit};
use proptest::prelude::*;

use crate::any_job::text;

fn degrees(value: f64) -> Angle {
    unit::DEGREE.of(value)
}

fn pointing(side: f64, plan: f64) -> Direction {
    Direction::new(degrees(side), degrees(plan))
}

fn any_line(within: f64, pieces: std::ops::Range<usize>) -> impl Strategy<Value = Line> {
    let shaft = move || (-within..within, -within..within).prop_map(|(side, plan)| pointing(side, plan));
    let yokes = proptest::sample::select(Yokes::ALL.to_vec());
    (shaft(), proptest::collection::vec(shaft(), pieces), shaft(), yokes)
        .prop_map(|(gearbox, pieces, pinion, yokes)| Line::new(gearbox, &pieces, pinion, yokes).unwrap())
}

/// How far the shaft behind a joint has turned when the one before it has turned by θ, both from where the driving yoke lies in the plane
/// of both shafts: tan ψ = tan θ ÷ cos β, on the same quarter.
fn turned(theta: f64, beta: f64) -> f64 {
    let (sine, cosine) = theta.sin_cos();
    let within = sine.atan2(cosine * beta.cos());
    within + std::f64::consts::TAU * ((theta - within) / std::f64::consts::TAU).round()
}

proptest! {
    /// Equal angles with the yokes in line: parallel ends in space, and mirrored ends in a plane, give no swing at all.
    #[test]
    fn equal_angles_in_phase_swing_not_at_all(ends in (-8.0..8.0, -8.0..8.0), shaft in (-8.0..8.0, -8.0..8.0)) {
        let (end, piece) = (pointing(ends.0, ends.1), pointing(shaft.0, shaft.1));
        let parallel = Line::new(end, &[piece], end, Yokes::InLine).unwrap();
        prop_assert!(parallel.swing() < 1e-12 && parallel.resultant() < degrees(1e-5));
        let mirrored = Line::new(pointing(ends.0, 0.0), &[pointing(shaft.0, 0.0)], pointing(2.0 * shaft.0 - ends.0, 0.0), Yokes::InLine).unwrap();
        prop_assert!(mirrored.swing() < 1e-12 && mirrored.resultant() < degrees(1e-5));
    }

    /// A double joint worked by the turns of its shafts, numerically, beside the product of vectors.
    #[test]
    fn two_joints_turn_as_their_closed_forms_say(first in 0.1..40.0_f64, second in -30.0..30.0_f64, turn in 0.0..360.0_f64, is_turned: bool) {
        let end = (first + second).clamp(-45.0, 45.0);
        let (one, other) = (first.to_radians(), (end - first).to_radians().abs());
        let yokes = if is_turned { Yokes::FirstTurned } else { Yokes::InLine };
        // A line in side view; the driving pin stands level at nothing, which is square to the plane of the shafts.
        let line = Line::new(pointing(0.0, 0.0), &[pointing(first, 0.0)], pointing(end, 0.0), yokes).unwrap();
        let quarter = std::f64::consts::FRAC_PI_2;
        let behind = |turn: f64| {
            let shaft = turned(turn + quarter, one);
            turned(shaft + if is_turned { 0.0 } else { quarter }, other)
        };
        let (at, step) = (turn.to_radians(), 1e-5);
        let numerical = (behind(at + step) - behind(at - step)) / (2.0 * step);
        prop_assert!((line.speed_ratio(degrees(turn)) - numerical).abs() < 1e-6, "{} {numerical}", line.speed_ratio(degrees(turn)));
        let piece = Joint::at(degrees(first)).speed_ratio(degrees(turn + 90.0));
        prop_assert!((line.speed_ratio_of_piece(0, degrees(turn)) - piece).abs() < 1e-9);
    }

    /// The resultant swings as the line does, as long as the angles are those of a car.
    #[test]
    fn the_resultant_swings_as_the_line_does(line in any_line(2.0, 1..4)) {
        let (exact, by_resultant) = (line.swing(), Joint::at(line.resultant()).swing());
        prop_assert!((exact - by_resultant).abs() <= 0.02 * exact + 1.5e-4, "{exact} {by_resultant}");
    }

    /// Turning the whole car about its length changes no angle and nothing that is left over.
    #[test]
    fn side_and_plan_view_are_alike(slopes in proptest::collection::vec((-5.0..5.0, -5.0..5.0), 3..5)) {
        let line = |of: fn(&(f64, f64)) -> Direction| {
            let shafts: Vec<Direction> = slopes.iter().map(of).collect();
            Line::new(shafts[0], &shafts[1..shafts.len() - 1], shafts[shafts.len() - 1], Yokes::InLine).unwrap()
        };
        let (upright, laid) = (line(|(side, plan)| pointing(*side, *plan)), line(|(side, plan)| pointing(-plan, *side)));
        for (one, other) in upright.joints().iter().zip(laid.joints()) {
            prop_assert!((one.angle() - other.angle()).abs() < degrees(1e-9));
        }
        prop_assert!((upright.swing() - laid.swing()).abs() < 1e-4 * upright.swing() + 1e-9);
        prop_assert!((upright.resultant() - laid.resultant()).abs() < degrees(1e-6));
    }

    /// The best change of the pinion leaves no more than there was, and no change within 2° of it leaves clearly less.
    #[test]
    fn the_best_change_leaves_least(line in any_line(4.0, 1..3)) {
        let side = line.shafts().last().unwrap().side();
        let best = line.best_change_of_pinion();
        let left = line.with_pinion_at(side + best).resultant();
        prop_assert!(left <= line.resultant() + degrees(1e-9));
        for tenths in -20..=20 {
            let other = line.with_pinion_at(side + best + degrees(f64::from(tenths) / 10.0)).resultant();
            prop_assert!(other > left - degrees(0.021));
        }
    }

    /// An offset over the length and the angle it makes point the same way.
    #[test]
    fn an_offset_is_its_angle(side in -20.0..20.0_f64, plan in -20.0..20.0_f64, length in 200.0..3_000.0_f64) {
        let shaft = pointing(side, plan);
        let along = length / (1.0 + side.to_radians().tan().powi(2) + plan.to_radians().tan().powi(2)).sqrt();
        let offset = |angle: f64| Lean::Offset(millimetres(along * angle.to_radians().tan()));
        for (side, plan) in [(offset(side), offset(plan)), (offset(side), Lean::Angle(degrees(plan))), (Lean::Angle(degrees(side)), offset(plan))] {
            let same = Slope { side, plan }.direction(Some(millimetres(length)), "").unwrap();
            prop_assert!(same.angle_to(shaft) < degrees(1e-6));
        }
    }

    /// No text stops the readers, and what they refuse they say in a sentence.
    #[test]
    fn any_text_is_a_slope_or_a_sentence(typed in text(), words in "[0-9.,/°\"+−-]{0,4} ?(up|down|left|right|nose|level|mm|in|;)? ?[0-9]{0,2} ?(up|down|right)?") {
        for text in [&typed, &words] {
            for read in [read_one(text, End::Front).map(|_| ()), read_pieces(text).map(|_| ())] {
                if let Err(why) = read {
                    prop_assert!(!why.what().is_empty() && !why.what_to_do().is_empty());
                }
            }
        }
    }
}
