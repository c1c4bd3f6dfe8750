//! What the answer of Swap rests on: the slip, the room and the limits, all common practice, and what is left out.

use super::answer::Beside;
use super::judged::{limits_words, shown};
use super::oil;
use crate::questions::Source;
use crate::questions::rests::{PRACTICE, typed_or, usual};
use crate::sheet::Rest;
use crate::swap::axle::usual_arch;
use crate::swap::stations::usual_room;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let beside: Vec<Beside> = source.setups.iter().filter_map(|analysis| Beside::of(source, analysis)).collect();
    let mut rests = Vec::new();
    if let Some(slip) = source.conditions.swap.slip.filter(|_| beside.iter().any(|beside| beside.shaft.is_some())) {
        let (label, value) = ("Slip left at ride height", shown(source, slip));
        rests.push(typed_or(!source.job.swap.slip.is_blank(), label, value, PRACTICE));
        rests.push(usual("Box and driveshaft", "in one line", "5° between them make 0.4 % of the difference"));
    }
    if source.conditions.swap.tunnel.is_some() {
        rests.push(usual("Room below the tunnel", shown(source, usual_room()), PRACTICE));
    }
    if beside.iter().any(|beside| beside.outwards.is_some()) {
        let from = "an article on the width of differentials: 25 to 30 mm; rims and tyres as wide as before";
        rests.push(usual("Room to the arch", shown(source, usual_arch()), from));
    }
    if beside.iter().any(|beside| *beside != Beside::default()) {
        rests.push(usual("Taken as the old one", limits_words(source), PRACTICE));
        rests.push(usual("Splines", "alike within 1 % of their outside", "common practice: count and size, not the form of the teeth"));
    }
    if source.job.setups.iter().any(|setup| oil::is_typed(&setup.swap)) {
        rests.push(usual("Gear oil and bronze rings", "GL-4 up to 4 % of additive, GL-5 up to 6.5 %", oil::BRONZE));
        rests.push(usual("Gear oil of axles", "GL-5 for hypoid teeth", oil::CLASSES));
        rests.push(usual("Oil level", "to the edge of the plug, car level", oil::LEVEL));
    }
    rests
}
