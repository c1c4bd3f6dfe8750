//! What the figures of Teeth and bearings rest on: the torque, the cut of the teeth, their hand, and what is left out.

use super::bearings::USUAL_STATIC_SHARE;
use crate::gearing::geometry::Hand;
use crate::gearing::part::Shaft;
use crate::questions::rests::{by_setup, typed, usual};
use crate::questions::{Source, inside};
use crate::sheet::Rest;
use crate::toothload::sliding::USUAL_FRICTION;
use crate::toothload::taper::USUAL_AXIAL_FACTOR;
use crate::units::common::in_rpm;
use crate::units::{Measured, Torque, number, show};

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    if source.setups.iter().all(|analysis| analysis.teeth().pairs.is_empty()) {
        return Vec::new();
    }
    let mut rests: Vec<Rest> = torque(source);
    rests.extend(inside::rests::cut(source));
    rests.extend(by_setup(source, |analysis| {
        analysis.teeth().thrust.iter().flatten().next()?;
        Some(match analysis.setup.inside.hand {
            Some(Hand::Right) => typed("Hand of the cluster’s teeth", "right"),
            Some(Hand::Left) => typed("Hand of the cluster’s teeth", "left"),
            None => usual("Hand of the cluster’s teeth", "all alike", "common practice: two thrusts then oppose; the way is not said"),
        })
    }));
    rests.extend(bearings(source));
    rests.extend([
        usual("Engine", "turns clockwise seen from its front", "nearly all do"),
        usual("Friction of the flanks", number::show(USUAL_FRICTION, 2), "from memory, no published source"),
        usual(
            "Left out",
            "shock, load spread, notch, hardness, oil",
            "a comparison, no certificate: a gear someone’s safety hangs on is for a qualified engineer",
        ),
    ]);
    rests
}

/// What the lives of the bearings rest on, where any are typed.
fn bearings(source: Source<'_>) -> Vec<Rest> {
    let all = || source.setups.iter().flat_map(|analysis| &analysis.teeth().bearings);
    let Some(use_of) = source.conditions.inside.duty.filter(|_| all().next().is_some()) else { return Vec::new() };
    let stints = use_of.from_top().map(|stint| [stint.time, stint.torque, stint.speed].map(|share| number::show(100.0 * share, 0)));
    let stints = ["top", "next", "the one below", "lower gears"].into_iter().zip(stints);
    let stints: Vec<String> = stints
        .map(|(gear, [time, pull, turns])| format!("{gear} {time} % of the time at {pull} % of the torque and {turns} % of the shift rpm"))
        .collect();
    let cycle = usual("Use", stints.join("; "), "common practice and from memory, no published source: it tells boxes apart");
    let share = all().any(|bearings| bearings.takes_thrust.is_some()).then(|| {
        let share = number::show(USUAL_STATIC_SHARE, 2);
        usual(
            "Static rating of a ball bearing",
            format!("{share} C"),
            "from memory: 0.5 to 0.6 in the sizes of a gearbox; table of X and Y in Shigley, ch. 11",
        )
    });
    let runs_in = all().any(|bearings| bearings.shaft == Shaft::Output).then(|| {
        usual(
            "Front bearing of the mainshaft",
            "runs in the input gear",
            "turns by the difference of both; in a two-shaft box it sits in the case",
        )
    });
    let tapers = all().flat_map(|bearings| bearings.bearings).find_map(|bearing| bearing.taper).map(|_| {
        usual(
            "Taper bearings",
            format!("Y {USUAL_AXIAL_FACTOR} and e = 0.6 ÷ Y where not typed, face to face where not said"),
            "a cone of 14°; from memory. No preload and no play, loads at the places typed",
        )
    });
    std::iter::once(cycle).chain(share).chain(tapers).chain(runs_in).collect()
}

fn torque(source: Source<'_>) -> Vec<Rest> {
    let label = "Torque at the input";
    let mut rests = by_setup(source, |analysis| {
        let (torque, _) = analysis.teeth().torque?;
        let shown = show(&torque, Torque::usual(source.reader.units), 0);
        Some(match (source.conditions.inside.by_grip, source.conditions.inside.torque) {
            (true, _) => {
                usual(label, shown, "what the driven tyres hold in 1st, worked out in Pull; a dropped clutch gives no more for long")
            }
            (false, Some(_)) => typed(label, shown),
            (false, None) => usual(label, shown, "the engine’s greatest"),
        })
    });
    let speed = source.setups.iter().find_map(|analysis| analysis.teeth().torque?.1);
    rests.extend(speed.map(|speed| {
        usual("Engine speed there", format!("{} rpm", number::show(in_rpm(speed), 0)), "at its torque peak, else the shift rpm")
    }));
    rests
}
