//! What turns inside the box, how fast, and what must each synchroniser do?

use super::read::LookedAt;
use crate::gearing::GearNumber;
use crate::gearing::geometry::pair_cuts::PairAt;
use crate::gearing::geometry::{Cut, Geometry, GeometryError, Setting, geometry};
use crate::gearing::hunting::{Hunting, mesh_frequency};
use crate::gearing::speeds::meshes::{Meeting, meetings};
use crate::gearing::speeds::overrun::{Downshift, downshifts_at_engine, downshifts_at_output};
use crate::gearing::speeds::peaks::{Peak, highest_countershaft, highest_slip};
use crate::gearing::speeds::{Arrangement, Selected, Turning};
use crate::gearing::teeth::decimal;
use crate::gearing::{FinalDrive, Gearbox, Mesh, Place, Ratio, part::Part, part::Shaft};
use crate::questions::alike::rounded;
use crate::questions::{Conditions, Setup};
use crate::toothload::path;
use crate::toothload::synchroniser::{self, Reflected, Synchroniser, clutch};
use crate::units::common::{in_rpm, wheel_speed};
use crate::units::{AngularVelocity, Frequency, MomentOfInertia, Torque, Velocity};

/// The inside of one setup's box.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Inside {
    /// How every part turns with the gear selected; a box without that gear shows its top gear.
    pub turning: Option<Turning>,
    /// Input and output speed looked at.
    pub at: Option<(AngularVelocity, AngularVelocity)>,
    /// The fastest the countershaft turns at the shift rpm, and in which gear.
    pub fastest_countershaft: Option<Peak>,
    /// The fastest an idle gear turns against its shaft at the shift rpm, and in which gear.
    pub fastest_idle: Option<Peak>,
    /// Every pair in mesh, with how often its teeth meet.
    pub meetings: Vec<Meeting>,
    /// The same under load at the cruise speed in top gear.
    pub cruise_meetings: Vec<Meeting>,
    /// How often the teeth of ring and pinion meet there, where they are counted.
    pub cruise_final: Option<(Mesh, Frequency)>,
    /// What each downshift at the shift rpm would spin the engine to.
    pub downshifts: Vec<Downshift>,
    /// The same at the cruise speed.
    pub cruise_downshifts: Vec<Downshift>,
    /// What each synchroniser takes up, up first.
    pub shifts: Vec<synchroniser::Shift>,
    /// The inertia the synchronisers work against.
    pub inertia: Option<Reflected>,
    /// Each pair of the case, its hunting and, where the cut is given, its geometry; the constant pair first.
    pub pairs: Vec<Pair>,
    /// The greatest thrust along a shaft at peak torque in the selected gear, by the mesh it comes from.
    pub thrust: Vec<(Part, crate::toothload::ToothForces)>,
}

/// A pair of the case.
#[derive(Clone, Debug, PartialEq)]
pub struct Pair {
    /// The forward gear it belongs to; none for the constant pair.
    pub gear: Option<GearNumber>,
    /// Its counts.
    pub mesh: Mesh,
    /// How its teeth meet again.
    pub hunting: Hunting,
    /// Its geometry, where the cut is given.
    pub geometry: Option<Result<Geometry, GeometryError>>,
}

impl Inside {
    /// The inside of a setup's box.
    pub fn of(setup: &Setup, conditions: &Conditions) -> Self {
        let Some(gearbox) = &setup.gearbox else { return Self::default() };
        let arrangement = Arrangement::usual(gearbox);
        let shared = &conditions.inside;
        let selected = available(gearbox, shared.selected);
        let turning = Turning::new(gearbox, &arrangement, selected);
        let at = turning.as_ref().and_then(|turning| ends(turning, setup, shared.at?));
        let inertia = inertia(setup, gearbox, &arrangement);
        Self {
            meetings: turning.as_ref().zip(at).map_or_else(Vec::new, |(turning, at)| meetings(gearbox, turning, arrangement.reverse, at)),
            cruise_meetings: cruise_meetings(setup, gearbox, &arrangement, conditions),
            cruise_final: cruise_final(setup, conditions),
            fastest_countershaft: conditions.shift.and_then(|shift| highest_countershaft(gearbox, &arrangement, shift)),
            fastest_idle: conditions.shift.and_then(|shift| highest_slip(gearbox, &arrangement, shift)),
            downshifts: conditions.shift.map_or_else(Vec::new, |shift| downshifts_at_engine(gearbox, shift, limit(conditions, shift))),
            cruise_downshifts: at_cruise(setup, gearbox, conditions),
            shifts: at.filter(|(input, _)| input.value != 0.0).map_or_else(Vec::new, |(input, _)| {
                synchronisers(setup, gearbox, &arrangement, inertia.as_ref(), (input.abs(), conditions))
            }),
            pairs: pairs(setup, gearbox),
            thrust: thrust(setup, gearbox, selected, conditions),
            turning,
            at,
            inertia,
        }
    }

    /// The speed of the countershaft in the selected gear.
    pub fn countershaft(&self) -> Option<AngularVelocity> {
        Some(self.turning.as_ref()?.part(Part::Shaft(Shaft::Countershaft))?.speed_at(self.at?))
    }
}

/// The speeds of input and output for what is looked at.
fn ends(turning: &Turning, setup: &Setup, at: LookedAt) -> Option<(AngularVelocity, AngularVelocity)> {
    match at {
        LookedAt::Input(input) => Some(turning.at_input(input)),
        LookedAt::Road(road) => {
            let forward = turning.ratio.is_none_or(|ratio| ratio > Ratio::from_integer(0));
            let output = output_at(setup, road)?;
            Some(turning.at_output(if forward { output } else { -output }))
        }
    }
}

/// The speed of the box's output at a road speed.
fn output_at(setup: &Setup, road: Velocity) -> Option<AngularVelocity> {
    Some(wheel_speed(road, setup.rolling.as_ref()?.circumference) * decimal(setup.behind_gearbox()?))
}

/// What each downshift at the cruise speed would spin the engine to.
fn at_cruise(setup: &Setup, gearbox: &Gearbox, conditions: &Conditions) -> Vec<Downshift> {
    let output = conditions.cruise.and_then(|cruise| output_at(setup, cruise));
    output.zip(conditions.shift).map_or_else(Vec::new, |(output, shift)| downshifts_at_output(gearbox, output, limit(conditions, shift)))
}

/// The pairs that carry the power at the cruise speed in top gear.
fn cruise_meetings(setup: &Setup, gearbox: &Gearbox, arrangement: &Arrangement, conditions: &Conditions) -> Vec<Meeting> {
    let found = || {
        let turning = Turning::new(gearbox, arrangement, Selected::Gear(gearbox.numbers().next_back()?))?;
        let at = turning.at_output(output_at(setup, conditions.cruise?)?);
        Some(meetings(gearbox, &turning, arrangement.reverse, at).into_iter().filter(|meeting| meeting.in_path).collect())
    };
    found().unwrap_or_default()
}

/// How often the teeth of ring and pinion meet at the cruise speed.
fn cruise_final(setup: &Setup, conditions: &Conditions) -> Option<(Mesh, Frequency)> {
    let FinalDrive::Pair(mesh) = setup.final_drive? else { return None };
    let wheel = wheel_speed(conditions.cruise?, setup.rolling.as_ref()?.circumference);
    let behind = setup.stages.as_ref()?.iter().filter(|stage| stage.place == Place::BehindAxle).map(|stage| decimal(stage.at_rest()));
    Some((mesh, mesh_frequency(mesh.driven, wheel * behind.product::<f64>())))
}

/// The engine speed that a downshift must not pass: the rev limit where it is known, else the shift rpm.
fn limit(conditions: &Conditions, shift: AngularVelocity) -> AngularVelocity {
    conditions.pull.limit.unwrap_or(shift)
}

/// The gear selected, or top gear if the box has fewer gears.
fn available(gearbox: &Gearbox, selected: Selected) -> Selected {
    match (selected, gearbox.numbers().next_back()) {
        (Selected::Gear(gear), Some(top)) => Selected::Gear(gear.min(top)),
        _ => selected,
    }
}

/// What the synchronisers work against: as given, else an estimate as soon as pitch and face width or the clutch plate are given.
fn inertia(setup: &Setup, gearbox: &Gearbox, arrangement: &Arrangement) -> Option<Reflected> {
    let inside = &setup.inside;
    if let Some(given) = inside.inertia {
        return Some(Reflected::given(given));
    }
    let plate = clutch::plate(inside.clutch.unwrap_or_else(clutch::usual_diameter));
    let beside_gears = plate + clutch::input_shaft();
    let cut_of = |rest: Cut| move |part: Part| PairAt::of(part).and_then(|at| inside.cut_of(at)).unwrap_or(rest);
    match inside.cut.zip(inside.face).filter(|_| gearbox.is_counted()) {
        Some((rest, face)) => Some(Reflected::estimated_by(gearbox, arrangement, cut_of(rest), face, beside_gears)),
        None => inside.clutch.map(|_| Reflected { at_input: beside_gears, is_estimate: true, beside_gears, rows: Vec::new() }),
    }
}

fn synchronisers(
    setup: &Setup,
    gearbox: &Gearbox,
    arrangement: &Arrangement,
    inertia: Option<&Reflected>,
    (at, conditions): (AngularVelocity, &Conditions),
) -> Vec<synchroniser::Shift> {
    let sized = setup.inside.cone.map_or(Synchroniser::Unsized, Synchroniser::Cone);
    let of = |gear: GearNumber| if setup.inside.unsynchronised.contains(&gear) { Synchroniser::Missing } else { sized };
    let each: Vec<Synchroniser> = gearbox.numbers().map(of).collect();
    let inertia = inertia.map_or_else(MomentOfInertia::default, |inertia| inertia.at_input);
    synchroniser::shifts(gearbox, arrangement, inertia, at, conditions.inside.shift_time, &each)
}

fn pairs(setup: &Setup, gearbox: &Gearbox) -> Vec<Pair> {
    let inside = &setup.inside;
    let at = PairAt::of_gear;
    let pair = |(gear, mesh): (Option<GearNumber>, Mesh)| Pair {
        gear,
        mesh,
        hunting: Hunting::of(mesh),
        geometry: inside.cut_of(at(gear)).map(|cut| {
            geometry(&Setting {
                mesh,
                cut,
                centre: inside.centre,
                driver_shift: inside.driver_shift(at(gear)),
                face_width: inside.face_of(at(gear)),
            })
        }),
    };
    gearbox.pairs_of_gears().map(pair).collect()
}

/// The forces of every mesh of the path at the engine's peak torque.
fn thrust(setup: &Setup, gearbox: &Gearbox, selected: Selected, conditions: &Conditions) -> Vec<(Part, crate::toothload::ToothForces)> {
    let Some(curve) = &conditions.pull.curve else { return Vec::new() };
    let cut_of = |part: Part| setup.inside.cut_of(PairAt::of(part)?);
    let torque: Torque = curve.peak_torque().torque;
    let meshes = path::meshes(gearbox, selected);
    meshes.iter().filter_map(|mesh| Some((mesh.driver, mesh.forces(gearbox, torque, &cut_of(mesh.driver)?)?))).collect()
}

/// What each gear's ratio says of a part's speed, for the workings.
pub fn share_text(turning: &Turning, part: Part) -> Option<f64> {
    turning.part(part).map(|turns| decimal(turns.speed.of_input))
}

/// The shift that asks most of its synchroniser, as it is shown; of several alike the first, upshifts before downshifts.
///
/// The slip work is ½ J Δω² of the input whatever turns at the cone, so of one box the widest change of input speed is the hardest.
pub fn hardest(inside: &Inside) -> Option<&synchroniser::Shift> {
    let mut hardest: Option<&synchroniser::Shift> = None;
    for shift in inside.shifts.iter().filter(|shift| shift.absorbed.is_some()) {
        if hardest.is_none_or(|hardest| rounded(input_change(shift), 0) > rounded(input_change(hardest), 0)) {
            hardest = Some(shift);
        }
    }
    hardest
}

/// By how much the input's speed changes in a shift, in rpm.
pub fn input_change(shift: &synchroniser::Shift) -> f64 {
    (in_rpm(shift.input_before) - in_rpm(shift.input_after)).abs()
}
