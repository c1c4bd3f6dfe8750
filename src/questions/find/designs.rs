//! A gear set that could be made, in words: its pairs, its ratios beside their aims, and how near it comes.

use crate::finder::design::Design;
use crate::gearing::teeth::decimal;
use crate::gearing::{Gear, Mesh};
use crate::units::number::ordinal;
use crate::units::number::show;

/// A design as it is read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToldDesign {
    /// How near it comes, and which pairs do not hunt.
    pub says: String,
    /// Its gears, lowest first.
    pub gears: Vec<ToldGear>,
}

/// A gear of a design as it is read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToldGear {
    /// Its ordinal.
    pub name: String,
    /// Its ratio.
    pub ratio: String,
    /// Its teeth, and the ratio aimed at.
    pub about: String,
}

/// A design in words.
pub fn told(design: &Design) -> ToldDesign {
    let ratios = design.gearbox.ratios();
    let gear = |((at, gear), aim): ((usize, &Gear), &f64)| ToldGear {
        name: ordinal(at),
        ratio: ratios.get(at).map_or_else(String::new, |ratio| show(decimal(*ratio).abs(), 3)),
        about: format!("{}, aim {}", gear.mesh().map_or_else(|| "direct".to_owned(), teeth), show(*aim, 3)),
    };
    let constant = design.gearbox.constant().map_or_else(|| "Two shafts".to_owned(), |mesh| format!("Constant pair {}", teeth(mesh)));
    let shared = match design.not_hunting {
        0 => "every pair hunts".to_owned(),
        1 => "one pair shares a factor".to_owned(),
        many => format!("{many} pairs share a factor"),
    };
    ToldDesign {
        says: format!("{constant}: off by {} % at most; {shared}", show(100.0 * design.worst, 2)),
        gears: design.gearbox.gears().iter().enumerate().zip(&design.aims).map(gear).collect(),
    }
}

/// The name a design gets on the shelf.
pub fn to_be_made(design: &Design) -> String {
    let sum = design.gearbox.pairs().next().map_or(0, Mesh::sum);
    format!("To be made: {} gears, {sum} teeth", design.gearbox.gears().len())
}

/// Driving and driven teeth.
fn teeth(mesh: Mesh) -> String {
    format!("{} drives {}", mesh.driver, mesh.driven)
}
