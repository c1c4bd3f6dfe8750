//! What the figures of Teeth rest on: the torque, the cut of the teeth, their hand, and what is left out.

use super::answer::engine;
use crate::gearing::geometry::Hand;
use crate::questions::rests::{by_setup, typed, usual};
use crate::questions::{Source, inside};
use crate::sheet::Rest;
use crate::toothload::sliding::USUAL_FRICTION;
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

fn torque(source: Source<'_>) -> Vec<Rest> {
    let Some((torque, speed)) = engine(source.conditions) else { return Vec::new() };
    let shown = show(&torque, Torque::usual(source.reader.units), 0);
    let label = "Torque at the input";
    let mut rests =
        vec![if source.job.inside.torque.is_blank() { usual(label, shown, "the engine’s greatest") } else { typed(label, shown) }];
    rests.extend(speed.map(|speed| {
        usual("Engine speed there", format!("{} rpm", number::show(in_rpm(speed), 0)), "at its torque peak, else the shift rpm")
    }));
    rests
}
