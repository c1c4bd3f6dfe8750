//! How often the teeth of each pair meet in the selected gear, those that run idle included.

use super::{ReverseMesh, Selected, Turning, Turns};
use crate::gearing::gearbox::Gearbox;
use crate::gearing::hunting::{Hunting, mesh_frequency};
use crate::gearing::part::Part;
use crate::gearing::teeth::Mesh;
use crate::units::{AngularVelocity, Frequency};

/// A pair in mesh.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meeting {
    /// The driving gear.
    pub driver: Part,
    /// The driven gear.
    pub driven: Part,
    /// Their counts.
    pub mesh: Mesh,
    /// How often teeth meet, z · n.
    pub frequency: Frequency,
    /// How often the same two teeth meet.
    pub repeat: Frequency,
    /// Whether the power goes through it; the others only rattle or whine.
    pub in_path: bool,
}

/// Every pair in mesh with input and output turning so (see [`Turning::at_input`]), the constant pair first.
///
/// A sliding reverse idler is in mesh in reverse alone; an idler of unknown teeth is left out.
pub fn meetings(gearbox: &Gearbox, turning: &Turning, reverse: ReverseMesh, at: (AngularVelocity, AngularVelocity)) -> Vec<Meeting> {
    let forward = gearbox.numbers().map(|gear| (Part::Driver(gear), Part::Driven(gear)));
    let exit = if turning.part(Part::IdlerExit).is_some() { Part::IdlerExit } else { Part::IdlerEntry };
    let idler = [(Part::ReverseDriver, Part::IdlerEntry), (exit, Part::ReverseDriven)];
    let in_mesh = reverse == ReverseMesh::Constant || turning.selected == Selected::Reverse;
    let pairs = [(Part::ConstantDriver, Part::ConstantDriven)].into_iter().chain(forward).chain(idler.into_iter().filter(|_| in_mesh));
    pairs.filter_map(|(driver, driven)| Some(meeting(turning.part(driver)?, turning.part(driven)?, at)).flatten()).collect()
}

fn meeting(driver: &Turns, driven: &Turns, at: (AngularVelocity, AngularVelocity)) -> Option<Meeting> {
    let mesh = Mesh { driver: driver.teeth?, driven: driven.teeth? };
    let frequency = mesh_frequency(mesh.driver, driver.speed_at(at));
    let repeat = frequency / f64::from(Hunting::of(mesh).meshes(mesh));
    Some(Meeting { driver: driver.part, driven: driven.part, mesh, frequency, repeat, in_path: driver.in_path && driven.in_path })
}
