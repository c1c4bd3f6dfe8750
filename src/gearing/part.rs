//! The parts of a gearbox by name, the shaft each sits on, and the teeth it has.

use super::gearbox::{Gearbox, Idler, Layout};
use super::teeth::{Mesh, Teeth};
use crate::gearing::GearNumber;

/// A shaft of a gearbox.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shaft {
    /// The input shaft, which the clutch drives.
    Input,
    /// The countershaft, or the cluster on its pin.
    Countershaft,
    /// The spindle of the reverse idler.
    Idler,
    /// The output shaft; in line with the input it is the mainshaft.
    Output,
}

/// A part that turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// A shaft by itself.
    Shaft(Shaft),
    /// The driving gear of the constant pair.
    ConstantDriver,
    /// The driven gear of the constant pair.
    ConstantDriven,
    /// The driving gear of a forward gear.
    Driver(GearNumber),
    /// The driven gear of a forward gear.
    Driven(GearNumber),
    /// The gear that drives the reverse idler.
    ReverseDriver,
    /// The reverse idler, or that gear of a compound one which the driver meshes with.
    IdlerEntry,
    /// The second gear of a compound reverse idler.
    IdlerExit,
    /// The gear that the reverse idler drives.
    ReverseDriven,
}

impl Part {
    /// The shaft it sits on in a box of that layout.
    pub fn shaft(self, layout: Layout) -> Shaft {
        match self {
            Self::Shaft(shaft) => shaft,
            Self::IdlerEntry | Self::IdlerExit => Shaft::Idler,
            Self::ConstantDriver if layout == Layout::InputReduced => Shaft::Input,
            Self::ConstantDriven if layout == Layout::OutputReduced => Shaft::Output,
            Self::ConstantDriver | Self::ConstantDriven => Shaft::Countershaft,
            Self::Driver(_) | Self::ReverseDriver if layout == Layout::InputReduced => Shaft::Countershaft,
            Self::Driver(_) | Self::ReverseDriver => Shaft::Input,
            Self::Driven(_) | Self::ReverseDriven if layout == Layout::OutputReduced => Shaft::Countershaft,
            Self::Driven(_) | Self::ReverseDriven => Shaft::Output,
        }
    }

    /// Its teeth in that gearbox; `None` for a shaft, and for a gear the box has not or whose count is unknown.
    pub fn teeth(self, gearbox: &Gearbox) -> Option<Teeth> {
        match self {
            Self::Shaft(_) => None,
            Self::ConstantDriver => Some(gearbox.constant()?.driver),
            Self::ConstantDriven => Some(gearbox.constant()?.driven),
            Self::Driver(gear) => Some(mesh(gearbox, gear)?.driver),
            Self::Driven(gear) => Some(mesh(gearbox, gear)?.driven),
            Self::ReverseDriver => Some(gearbox.reverse_gears()?.pair.driver),
            Self::ReverseDriven => Some(gearbox.reverse_gears()?.pair.driven),
            Self::IdlerEntry => match gearbox.reverse_gears()?.idler {
                Idler::Plain(teeth) => teeth,
                Idler::Compound { entry, .. } => Some(entry),
            },
            Self::IdlerExit => match gearbox.reverse_gears()?.idler {
                Idler::Plain(_) => None,
                Idler::Compound { exit, .. } => Some(exit),
            },
        }
    }

    /// Every gear of a gearbox whose teeth are known: the constant pair, the forward gears from the lowest, reverse.
    pub fn gears_of(gearbox: &Gearbox) -> Vec<Self> {
        let forward = gearbox.numbers().flat_map(|gear| [Self::Driver(gear), Self::Driven(gear)]);
        let reverse = [Self::ReverseDriver, Self::IdlerEntry, Self::IdlerExit, Self::ReverseDriven];
        let all = [Self::ConstantDriver, Self::ConstantDriven].into_iter().chain(forward).chain(reverse);
        all.filter(|part| part.teeth(gearbox).is_some()).collect()
    }

    /// What it is called, in neutral words: `2nd gear on the countershaft`.
    pub fn name(self, layout: Layout) -> String {
        let on = match self.shaft(layout) {
            Shaft::Input => "on the input shaft",
            Shaft::Countershaft => "on the countershaft",
            Shaft::Idler => "on the idler spindle",
            Shaft::Output => "on the output shaft",
        };
        match self {
            Self::Shaft(Shaft::Input) => "input shaft".into(),
            Self::Shaft(Shaft::Countershaft) => "countershaft".into(),
            Self::Shaft(Shaft::Idler) => "idler spindle".into(),
            Self::Shaft(Shaft::Output) => "output shaft".into(),
            Self::ConstantDriver | Self::ConstantDriven => format!("constant gear {on}"),
            Self::Driver(gear) | Self::Driven(gear) => format!("{gear} gear {on}"),
            Self::ReverseDriver | Self::ReverseDriven => format!("reverse gear {on}"),
            Self::IdlerEntry => "reverse idler".into(),
            Self::IdlerExit => "second gear of the reverse idler".into(),
        }
    }
}

fn mesh(gearbox: &Gearbox, gear: GearNumber) -> Option<Mesh> {
    gear.of(gearbox.gears())?.mesh()
}
