//! The torque through each mesh of the selected gear, for an ideal box.

use super::forces::{ToothForces, helical};
use crate::gearing::geometry::Cut;
use crate::gearing::part::Part;
use crate::gearing::speeds::Selected;
use crate::gearing::teeth::{Ratio, decimal};
use crate::gearing::{Gearbox, Layout};
use crate::units::Torque;

/// One mesh in the path of the power.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeshLoad {
    /// The gear that gives the power.
    pub driver: Part,
    /// The gear that takes it.
    pub driven: Part,
    /// The driver's torque for one unit of input torque, exact, signed against the input's direction.
    pub driver_share: Ratio,
    /// The driven gear's torque for one unit of input torque: −z₂/z₁ times the driver's.
    pub driven_share: Ratio,
}

impl MeshLoad {
    /// The driver's torque at that input torque.
    pub fn driver_torque(&self, input: Torque) -> Torque {
        input * decimal(self.driver_share)
    }

    /// The driven gear's torque at that input torque.
    pub fn driven_torque(&self, input: Torque) -> Torque {
        input * decimal(self.driven_share)
    }

    /// The forces between the two gears, where they are cut so.
    pub fn forces(&self, gearbox: &Gearbox, input: Torque, cut: &Cut) -> Option<ToothForces> {
        let diameter = cut.reference_diameter(self.driver.teeth(gearbox)?);
        Some(helical(self.driver_torque(input), diameter, cut))
    }
}

/// The meshes that the power of a gear goes through, in its order; none for direct and for neutral.
///
/// Model: no losses; T₂ = −T₁ z₂/z₁ at each mesh, so that T₁ω₁ = T₂ω₂. An idler of unknown teeth is passed over as one mesh
/// that keeps the direction.
///
/// ```
/// use layshaft::gearing::{Gear, GearNumber, Gearbox, Layout, Mesh, Ratio, speeds::Selected};
/// use layshaft::toothload::path::meshes;
/// # fn example() -> Option<()> {
/// let gears = vec![Gear::Mesh(Mesh::new(18, 37)?), Gear::Direct];
/// let gearbox = Gearbox::new(Layout::InputReduced, Mesh::new(25, 30), gears, None).ok()?;
/// let shares: Vec<Ratio> = meshes(&gearbox, Selected::Gear(GearNumber::FIRST)).iter().map(|mesh| mesh.driven_share).collect();
/// // The countershaft holds 30/25 of the input torque, the output 37/18 of that.
/// assert_eq!(shares, [Ratio::new(-6, 5), Ratio::new(37, 15)]);
/// # Some(())
/// # }
/// # assert!(example().is_some());
/// ```
pub fn meshes(gearbox: &Gearbox, selected: Selected) -> Vec<MeshLoad> {
    let mut share = Ratio::from_integer(1);
    steps(gearbox, selected)
        .into_iter()
        .map(|(driver, driven, times)| {
            let driver_share = share;
            share *= times;
            MeshLoad { driver, driven, driver_share, driven_share: share }
        })
        .collect()
}

/// Each mesh and what it multiplies the torque by.
fn steps(gearbox: &Gearbox, selected: Selected) -> Vec<(Part, Part, Ratio)> {
    let mesh = |driver: Part, driven: Part| {
        let times = Ratio::new(driven.teeth(gearbox)?.exact(), driver.teeth(gearbox)?.exact());
        Some((driver, driven, -times))
    };
    let own = match selected {
        Selected::Gear(gear) => match mesh(Part::Driver(gear), Part::Driven(gear)) {
            Some(own) => vec![own],
            None => return Vec::new(),
        },
        Selected::Reverse if gearbox.reverse_gears().is_some() => through_idler(gearbox, &mesh),
        _ => return Vec::new(),
    };
    let constant = mesh(Part::ConstantDriver, Part::ConstantDriven);
    match gearbox.layout() {
        Layout::InputReduced => constant.into_iter().chain(own).collect(),
        Layout::OutputReduced | Layout::TwoShaft => own.into_iter().chain(constant).collect(),
    }
}

fn through_idler(gearbox: &Gearbox, mesh: &impl Fn(Part, Part) -> Option<(Part, Part, Ratio)>) -> Vec<(Part, Part, Ratio)> {
    let exit = if Part::IdlerExit.teeth(gearbox).is_some() { Part::IdlerExit } else { Part::IdlerEntry };
    let counted = [mesh(Part::ReverseDriver, Part::IdlerEntry), mesh(exit, Part::ReverseDriven)];
    if let [Some(entry), Some(exit)] = counted {
        return vec![entry, exit];
    }
    gearbox.reverse_gears().map(|reverse| (Part::ReverseDriver, Part::ReverseDriven, reverse.ratio())).into_iter().collect()
}
