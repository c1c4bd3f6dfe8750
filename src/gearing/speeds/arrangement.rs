//! Which gear of each pair is loose on its shaft until it is selected, and how reverse comes into mesh.
//!
//! Tooth counts do not tell this; it is an assumption that the owner of the box can correct.

use crate::gearing::GearNumber;
use crate::gearing::gearbox::{Gearbox, Layout};

/// One gear of a pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Side {
    /// The gear that drives.
    Driver,
    /// The gear that is driven.
    Driven,
}

/// How reverse comes into mesh.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ReverseMesh {
    /// The idler slides into mesh when reverse is selected, and stands still otherwise.
    #[default]
    Sliding,
    /// The idler is always in mesh; one of the two gears is loose on the input or output line and turns backwards there.
    Constant,
}

/// Which gears are loose on their shafts.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Arrangement {
    layout: Layout,
    loose: Vec<Side>,
    /// How reverse comes into mesh.
    pub reverse: ReverseMesh,
}

impl Arrangement {
    /// The usual arrangement of a layout (common practice, no published source).
    ///
    /// - Reduced at the input: the cluster is one piece, the gears on the mainshaft are loose on it.
    /// - Reduced at the output: the cluster is one piece, the gears on the input line are loose on it.
    /// - Two shafts: 1st and 2nd are cut on the input shaft (too small to hold a hub) and loose on the output shaft;
    ///   3rd and up are loose on the input shaft.
    /// - Reverse slides into mesh.
    pub fn usual(gearbox: &Gearbox) -> Self {
        let layout = gearbox.layout();
        let loose = gearbox.numbers().map(|gear| match layout {
            Layout::TwoShaft if gear <= GearNumber::SECOND => Side::Driven,
            Layout::InputReduced => Side::Driven,
            Layout::OutputReduced | Layout::TwoShaft => Side::Driver,
        });
        Self { layout, loose: loose.collect(), reverse: ReverseMesh::default() }
    }

    /// The same arrangement but for one gear, for instance a 5th that is loose on the countershaft.
    #[must_use]
    pub fn with_loose(mut self, gear: GearNumber, side: Side) -> Self {
        if let Some(place) = self.loose.get_mut(gear.place()) {
            *place = side;
        }
        self
    }

    /// Which gear of a forward pair is loose on its shaft.
    pub fn loose(&self, gear: GearNumber) -> Side {
        gear.of(&self.loose).copied().unwrap_or(Side::Driven)
    }

    /// Which of the two reverse gears is loose where they are always in mesh: the one on the line of input and output.
    pub fn loose_in_reverse(&self) -> Side {
        match self.layout {
            Layout::OutputReduced => Side::Driver,
            Layout::InputReduced | Layout::TwoShaft => Side::Driven,
        }
    }
}
