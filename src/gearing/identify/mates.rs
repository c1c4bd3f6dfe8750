//! The missing mates of counted gears: one centre distance holds one tooth sum at one pitch, so a whole pair gives every partner.

use super::counts::Counted;
use crate::gearing::part::Part;
use crate::gearing::teeth::{Mesh, Teeth};
use crate::gearing::{Gear, GearNumber, Gearbox, Layout};

/// What the case's tooth sum gives.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mates {
    /// Driver and driven teeth together, the same for every pair of the case.
    pub sum: u16,
    /// The pair it was counted at.
    pub counted: Mesh,
    /// The gears that were not counted, the constant pair's first.
    pub missing: Vec<Mate>,
    /// The box they make with a direct top gear, where every gear from 1st up is counted or found.
    pub gearbox: Option<Gearbox>,
}

/// A gear found by the sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mate {
    /// Where it sits.
    pub at: Part,
    /// Its teeth: the sum less those of its partner.
    pub teeth: Teeth,
    /// Its partner, which was counted.
    pub partner: Teeth,
}

/// The missing mates; none where no pair is counted whole, where whole pairs differ in sum, or where nothing is missing.
///
/// Model: straight or equally helical teeth of one pitch, no profile shift; a set with shifted profiles may be a tooth off.
pub fn mates(counted: &[Counted], layout: Layout) -> Option<Mates> {
    let teeth = |part: Part| counted.iter().find(|count| count.at == Some(part)).map(|count| count.teeth);
    let constant = (layout != Layout::TwoShaft).then_some([Part::ConstantDriver, Part::ConstantDriven]);
    let forward = GearNumber::lowest(Gearbox::MOST_GEARS).map(|gear| [Part::Driver(gear), Part::Driven(gear)]);
    let pairs: Vec<[(Part, Option<Teeth>); 2]> =
        constant.into_iter().chain(forward).map(|pair| pair.map(|part| (part, teeth(part)))).collect();
    let mut whole = pairs.iter().filter_map(|[driver, driven]| Some(Mesh { driver: driver.1?, driven: driven.1? }));
    let first = whole.next()?;
    if whole.any(|mesh| mesh.sum() != first.sum()) {
        return None;
    }
    let mate = |(at, _): (Part, Option<Teeth>), partner: Teeth| {
        Some(Mate { at, teeth: Teeth::new(first.sum().checked_sub(partner.count())?)?, partner })
    };
    let missing: Vec<Mate> = pairs
        .iter()
        .filter_map(|pair| match *pair {
            [driver, (_, Some(driven))] if driver.1.is_none() => mate(driver, driven),
            [(_, Some(driver)), driven] if driven.1.is_none() => mate(driven, driver),
            _ => None,
        })
        .collect();
    let found = |part: Part| teeth(part).or_else(|| missing.iter().find(|mate| mate.at == part).map(|mate| mate.teeth));
    let mesh = |[driver, driven]: [Part; 2]| Some(Mesh { driver: found(driver)?, driven: found(driven)? });
    let gearbox = gearbox(layout, mesh);
    (!missing.is_empty()).then_some(Mates { sum: first.sum(), counted: first, missing, gearbox })
}

/// The box of whole pairs from 1st up; a direct gear is added where input and output are in line and none of the pairs is as high.
fn gearbox(layout: Layout, mesh: impl Fn([Part; 2]) -> Option<Mesh>) -> Option<Gearbox> {
    let constant = mesh([Part::ConstantDriver, Part::ConstantDriven]).filter(|_| layout != Layout::TwoShaft);
    let forward = GearNumber::lowest(Gearbox::MOST_GEARS).map(|gear| mesh([Part::Driver(gear), Part::Driven(gear)]));
    let mut gears: Vec<Gear> = forward.map_while(|pair| pair.map(Gear::Mesh)).collect();
    if gears.is_empty() {
        return None;
    }
    if layout != Layout::TwoShaft && gears.len() < Gearbox::MOST_GEARS {
        gears.push(Gear::Direct);
    }
    Gearbox::new(layout, constant, gears, None).ok()
}
