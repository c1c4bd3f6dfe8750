//! What is typed about a swap: the sizes of each setup's box, and what the car has room for.
//!
//! [`super::inputs::shared`] and [`super::inputs::setup`] are its tables.

use super::choice::Chosen;
use super::document::document;
use crate::swap::Release;
use crate::units::Typed;

document! {
    /// What all setups share: they go into one car, and setup A's box came out of it.
    pub struct SwapShared {
        /// How far the slip joint can still go in at ride height; blank for the usual inch.
        pub slip: Typed,
        /// Between the outer wall of a rear tyre and its arch.
        pub arch: Typed,
        /// The tunnel above the shaft's line, station by station: `0: 200; 400: 150`.
        pub tunnel: Typed,
    }
}

document! {
    /// The sizes of one setup's box, all lengths from the case face that bolts to the clutch housing or engine.
    pub struct Swap {
        /// To the output flange, or the joint centre of a sliding yoke at ride height.
        pub length: Typed,
        /// To the mount.
        pub mount: Typed,
        /// To the lever.
        pub lever: Typed,
        /// To the nose of the input shaft, forwards.
        pub nose: Typed,
        /// The diameter that runs in the pilot bush.
        pub spigot: Typed,
        /// The splines that carry the clutch plate: count, outside, root.
        pub input_spline: Typed,
        /// The splines of the output.
        pub output_spline: Typed,
        /// The bolt holes of the case face, across and up from the shaft, or a name for them.
        pub holes: Typed,
        /// The top of the case above the shaft's line, station by station.
        pub outline: Typed,
        /// What it weighs, dry.
        pub weight: Typed,
        /// Where the clutch fork comes out.
        pub release: Chosen<Release>,
        /// Between the faces of the axle that its wheels are bolted to.
        pub axle_width: Typed,
        /// From the face of the wheel to the inner edge of its rim.
        pub backspace: Typed,
        /// The splines of a half shaft.
        pub half_shaft: Typed,
        /// Its oil in words: class, viscosity, quantity.
        pub oil: String,
        /// The oil of its overdrive, where that has its own.
        pub overdrive_oil: String,
        /// The oil of the axle.
        pub axle_oil: String,
        /// How far the release bearing travels.
        pub release_travel: Typed,
        /// The holes of the output flange, across and up from the shaft, or a name for them.
        pub flange: Typed,
    }
}
