//! The picture of the forces: the gear train with an arrow for each force on the gears that carry the power, the torque of each shaft and its
//! net thrust.
//!
//! The train is seen from the right of the car, the engine to the left. Its input turns clockwise seen from the engine, so gears of a forward
//! gear are held back towards the reader where they drive and pushed away from him where they are driven.

use super::rows::selected;
use crate::chart::train::{EndThrust, Push, Train};
use crate::gearing::part::{Part, Shaft};
use crate::gearing::speeds::Selected;
use crate::questions::inside::pictures::{drawn, shaft_of, train_with_parts};
use crate::questions::{Analysis, Source};
use crate::toothload::ToothForces;
use crate::toothload::thrust::Pushed;
use crate::units::{Force, Measured, Torque, number, show};

/// The train in the selected gear with its forces; none where no forces are known, or no gear is engaged.
pub(super) fn picture(source: Source<'_>, focus: Option<usize>) -> Option<Train> {
    if !matches!(source.conditions.inside.selected, Selected::Gear(_)) {
        return None;
    }
    let (gear, analysis) = (selected(source), source.setups.get(drawn(source, focus))?);
    let meshes = gear.of(&analysis.teeth().meshes).filter(|meshes| !meshes.is_empty())?;
    let (mut train, parts) = train_with_parts(source, focus);
    let layout = analysis.setup.layout;
    let greatest = meshes.iter().map(|mesh| mesh.forces.axial.value.max(mesh.forces.radial.value)).fold(1e-9, f64::max);
    let thrust = gear.of(&analysis.teeth().thrust).and_then(Option::as_ref);
    let is_told = thrust.is_some_and(|thrust| thrust.is_told);
    let of_mesh = |mesh: &Pushed| {
        let axial = mesh.axial(layout).map(|(_, force)| if is_told { force.value / greatest } else { 0.0 });
        let push = |part: Part, along: f64, is_towards: bool| {
            let wheel = parts.iter().position(|known| *known == part)?;
            Some(Push { wheel, along, apart: mesh.forces.radial.value / greatest, is_towards, words: words(source, mesh.forces) })
        };
        let [driver, driven] = axial;
        [push(mesh.load.driver, driver, true), push(mesh.load.driven, driven, false)]
    };
    train.pushes = meshes.iter().flat_map(of_mesh).flatten().collect();
    let unit = Force::usual(source.reader.units);
    train.thrusts = thrust.map_or_else(Vec::new, |thrust| {
        let end = |on: &super::answer::OnShaft| EndThrust {
            shaft: shaft_of(on.shaft),
            along: if is_told { on.left.value.signum() } else { 0.0 },
            words: format!("thrust {}", show(&on.left.abs(), unit, 0)),
        };
        thrust.shafts.iter().map(end).collect()
    });
    name_torques(source, analysis, meshes, &mut train);
    let engaged = gear.to_string();
    train.title = format!("Forces on the teeth in {engaged}, setup {}", analysis.setup.letter);
    Some(train)
}

/// Each shaft says its torque in place of its speed: the way of the power through the box.
fn name_torques(source: Source<'_>, analysis: &Analysis, meshes: &[Pushed], train: &mut Train) {
    let Some((torque, _)) = analysis.teeth().torque else { return };
    let layout = analysis.setup.layout;
    for wheel in &mut train.wheels {
        wheel.rpm = String::new();
    }
    for shaft in &mut train.shafts {
        shaft.rpm = String::new();
    }
    let driven = meshes.iter().map(|mesh| (mesh.load.driven.shaft(layout), mesh.load.driven_torque(torque)));
    for (on, torque) in std::iter::once((Shaft::Input, torque)).chain(driven) {
        let Some(shaft) = train.shafts.get_mut(shaft_of(on)) else { continue };
        let name = if shaft.name.is_empty() { "input" } else { &shaft.name };
        shaft.name = format!("{name} {}", show(&torque.abs(), Torque::usual(source.reader.units), 0));
    }
}

/// Along the pitch line, apart, along the shaft.
fn words(source: Source<'_>, forces: ToothForces) -> [String; 3] {
    let unit = Force::usual(source.reader.units);
    let shown = |force: Force| number::show((unit.take)(&force), 0);
    [show(&forces.tangential, unit, 0), shown(forces.radial), shown(forces.axial)]
}
