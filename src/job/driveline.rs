//! What is typed about the driveline: the shaft of each setup, and what all of them are judged at.
//!
//! [`super::inputs::shared`] and [`super::inputs::setup`] are its tables.

use super::choice::Chosen;
use super::document::document;
use crate::driveline::{Ends, Margin, TubeMaterial, Yokes};
use crate::units::Typed;

document! {
    /// What all setups share: they are driven on one road.
    pub struct DrivelineShared {
        /// The road speed that the shaft is judged at; blank for the fastest the car goes.
        pub at: Typed,
        /// The share of its critical speed that a shaft may turn at; blank for 70 %.
        pub margin: Chosen<Margin>,
    }
    left out while blank {
        /// The speed that pinion and bearings are made for; blank where it is not known.
        pub pinion: Typed,
    }
}

document! {
    /// The shaft of one setup.
    pub struct Shaft {
        /// From joint centre to joint centre, a length for each piece.
        pub lengths: Typed,
        /// The tube's outside diameter.
        pub outside: Typed,
        /// The tube's wall.
        pub wall: Typed,
        /// What the tube is made of; blank for steel.
        pub material: Chosen<TubeMaterial>,
        /// How the gearbox's output falls towards the rear at ride height: `3 down`, `3 down, 1 right`.
        pub gearbox_slope: String,
        /// The same of the shaft, for each piece, parted by semicolons.
        pub slopes: String,
        /// How the axle's nose points: `3 up`.
        pub pinion_slope: String,
        /// How the yokes at both ends of a piece stand to each other; blank for in line.
        pub yokes: Chosen<Yokes>,
    }
    left out while blank {
        /// How its ends are held; blank for a joint each.
        pub ends: Chosen<Ends>,
        /// Modulus and density of a tube of one's own material: `120; 1,600`.
        pub own_material: String,
        /// How far the axle's nose rises under drive.
        pub windup: Typed,
        /// With the axle hanging: how far it drops, or how the last piece slopes then; behind a semicolon the axle's nose.
        pub droop: String,
        /// The thickness of one shim of the centre bearing.
        pub shim: Typed,
        /// What an indicator swings by at the middle of the tube.
        pub run_out: Typed,
    }
}
