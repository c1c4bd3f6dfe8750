//! What each synchroniser must take up at a shift, and what its lining bears.
//!
//! Here: the shifts of a box, one row each. [`clutch`]: what usually hangs on the input beside the gears. [`cone`]: a friction cone by itself. [`inertia`]: what turns with the input and must be
//! slowed or sped up. [`lining`]: limits per lining area, to be set by the user.

pub mod clutch;
pub mod cone;
pub mod inertia;
pub mod lining;

pub use cone::Cone;
pub use inertia::Reflected;
pub use lining::{Lining, LiningKind, Stress};

use crate::gearing::speeds::{Arrangement, Selected, Share, Turning};
use crate::gearing::teeth::decimal;
use crate::gearing::{GearNumber, Gearbox};
use crate::gearing::{Ratio, part::Part, speeds::Side};
use crate::units::{AngularVelocity, Energy, MomentOfInertia, Power, Time, Torque, unit};

/// The time a synchroniser is given where none is typed: a quarter of a second. Common practice, no published source.
pub fn usual_time() -> Time {
    unit::SECOND.of(0.25)
}

/// What stands between a gear and its shaft.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Synchroniser {
    /// None: the driver matches the speeds.
    Missing,
    /// There is one, of unknown size.
    #[default]
    Unsized,
    /// One of known size.
    Cone(Cone),
}

/// One shift from a gear to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shift {
    /// The gear left.
    pub from: GearNumber,
    /// The gear taken, whose synchroniser works.
    pub to: GearNumber,
    /// The input's speed when the clutch opens.
    pub input_before: AngularVelocity,
    /// The input's speed when the new gear is in.
    pub input_after: AngularVelocity,
    /// The speed of the gear against its shaft that the cone must take out, signed; for direct, of the input against the output.
    pub difference: AngularVelocity,
    /// What must be slowed or sped up, told at the cone.
    pub inertia: MomentOfInertia,
    /// The synchroniser of the gear taken.
    pub synchroniser: Synchroniser,
    /// What the synchroniser takes up; `None` where there is none.
    pub absorbed: Option<Absorbed>,
}

/// What a synchroniser takes up at one shift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Absorbed {
    /// W = ½ J Δω².
    pub work: Energy,
    /// T = J Δω / t.
    pub mean_torque: Torque,
    /// W / t.
    pub mean_power: Power,
    /// Per lining area, where the cone is known.
    pub stress: Option<Stress>,
}

/// Every upshift and downshift between neighbours, up first.
///
/// An upshift leaves its gear at `engine`; a downshift arrives in its gear at `engine` (leaving the higher gear so much slower), so
/// that neither passes it. Road speed stays, the clutch is open, drag is left out (it helps upshifts and hinders downshifts).
///
/// Model: the input side with inertia `J_in` goes from before to after; at the cone of the gear, which turns r times against its
/// shaft for one turn of the input, J = `J_in` / r² and Δω = r Δ`ω_in`.
///
/// Source: work and time of one inertia against a steady one, as in Khurmi and Gupta, example 10.34; the reduction by squares of
/// the ratio is elementary.
pub fn shifts(
    gearbox: &Gearbox,
    arrangement: &Arrangement,
    input_inertia: MomentOfInertia,
    engine: AngularVelocity,
    time: Time,
    synchronisers: &[Synchroniser],
) -> Vec<Shift> {
    let all = GearNumber::shifts(gearbox.gears().len()).filter_map(|(from, to)| {
        let step = gearbox.ratio(to)? / gearbox.ratio(from)?;
        let (before, after) = if to > from { (engine, engine * decimal(step)) } else { (engine / decimal(step), engine) };
        let turns = cone_share(gearbox, arrangement, to)?;
        let synchroniser = to.of(synchronisers).copied().unwrap_or_default();
        Some(one_shift(from, to, [before, after], turns, input_inertia, time, synchroniser))
    });
    all.collect()
}

/// Turns of the cone's two halves against each other for one turn of the input: what of the gear's slip hangs on the input.
fn cone_share(gearbox: &Gearbox, arrangement: &Arrangement, gear: GearNumber) -> Option<Ratio> {
    let turning = Turning::new(gearbox, arrangement, Selected::Neutral)?;
    let is_direct = gear.of(gearbox.gears())?.is_direct();
    let slip = match arrangement.loose(gear) {
        _ if is_direct => Share::INPUT - Share::OUTPUT,
        Side::Driver => turning.part(Part::Driver(gear))?.slip,
        Side::Driven => turning.part(Part::Driven(gear))?.slip,
    };
    Some(slip.of_input).filter(|share| *share != Ratio::from_integer(0))
}

fn one_shift(
    from: GearNumber,
    to: GearNumber,
    [before, after]: [AngularVelocity; 2],
    turns: Ratio,
    input_inertia: MomentOfInertia,
    time: Time,
    synchroniser: Synchroniser,
) -> Shift {
    let turns = decimal(turns);
    let difference = (before - after) * turns;
    let inertia = input_inertia / (turns * turns);
    let absorbed = absorb(inertia, difference, time);
    let absorbed = match synchroniser {
        Synchroniser::Missing => None,
        Synchroniser::Unsized => Some(absorbed),
        Synchroniser::Cone(cone) => Some(Absorbed { stress: Some(lining::stress(&cone, &absorbed, difference)), ..absorbed }),
    };
    Shift { from, to, input_before: before, input_after: after, difference, inertia, synchroniser, absorbed }
}

/// What it takes to bring an inertia to a steady speed `difference` away within `time`.
///
/// ```
/// use layshaft::toothload::synchroniser::absorb;
/// use layshaft::units::{common::rpm, show, unit};
/// // 1,000 rpm are 104.72 rad/s: ½ × 0.01 × 104.72² J, and 0.01 × 104.72 ÷ 0.25 N·m
/// let absorbed = absorb(unit::KG_M2.of(0.01), rpm(1_000.0), unit::SECOND.of(0.25));
/// assert_eq!(show(&absorbed.work, &unit::JOULE, 1), "54.8 J");
/// assert_eq!(show(&absorbed.mean_torque, &unit::N_M, 2), "4.19 N·m");
/// ```
pub fn absorb(inertia: MomentOfInertia, difference: AngularVelocity, time: Time) -> Absorbed {
    let (inertia_kg_m2, rad_per_s, seconds) = (inertia.value, difference.value.abs(), time.value);
    let work_j = 0.5 * inertia_kg_m2 * rad_per_s * rad_per_s;
    Absorbed {
        work: Energy::new::<uom::si::energy::joule>(work_j),
        mean_torque: Torque::new::<uom::si::torque::newton_meter>(inertia_kg_m2 * rad_per_s / seconds),
        mean_power: Power::new::<uom::si::power::watt>(work_j / seconds),
        stress: None,
    }
}
