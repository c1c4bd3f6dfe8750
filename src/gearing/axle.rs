//! The final drive, and where extra stages stand about it.

use super::teeth::{Mesh, Ratio};

/// A final drive, as teeth or as the ratio alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FinalDrive {
    /// Pinion (driver) and ring (driven) counted.
    Pair(Mesh),
    /// The ratio alone, as it was typed.
    Plain(Ratio),
}

impl FinalDrive {
    /// Turns of the driveshaft for one turn of the wheels, without regard to direction.
    ///
    /// ```
    /// use layshaft::gearing::{FinalDrive, Ratio, read};
    /// assert_eq!(read::final_drive("43/11")?.ratio(), Ratio::new(43, 11));
    /// assert_eq!(read::final_drive("3.909")?.ratio(), Ratio::new(3_909, 1_000));
    /// # Ok::<(), read::GearTextError>(())
    /// ```
    pub fn ratio(self) -> Ratio {
        match self {
            Self::Pair(mesh) => mesh.ratio(),
            Self::Plain(ratio) => ratio,
        }
    }
}

/// Where an extra stage stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// Between gearbox and final drive: an overdrive, a range box, drop gears.
    #[default]
    BeforeAxle,
    /// Between final drive and wheels: hub reduction.
    BehindAxle,
}
