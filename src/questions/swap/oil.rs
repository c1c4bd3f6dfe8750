//! The oil of a setup, sump by sump: what is typed of it, what its class does, how its level moves when the car stands at a tilt.

use crate::job::{Swap, SwapField};
use crate::units::common::millimetres;
use crate::units::unit::INCH;
use crate::units::{Length, System};

/// What the gearbox's oil is called among what is fitted.
pub const GEARBOX: &str = "Oil of the gearbox";

/// Where the caution about oil and bronze comes from.
pub const BRONZE: &str = "“The Difference Between GL-4 and GL-5 Gear Oils”, rev. 6-2020: two to four times the copper in used oil of the wrong class; \
     which class suits bronze is common practice";
/// Where the classes of axles come from.
pub const CLASSES: &str =
    "API Publication 1560, from memory: GL-4 for spiral bevel teeth and hypoid ones under moderate load, GL-5 for hypoid teeth";
/// Where the level comes from.
pub const LEVEL: &str = "common practice, no published source; how it moves with a tilt is plain geometry";

/// A sump.
#[derive(Clone, Copy, Debug)]
pub struct Sump {
    /// Where its oil is typed.
    pub field: SwapField,
    /// The row it stands in.
    pub label: &'static str,
    /// What it is called among what is fitted.
    pub fitted: &'static str,
    /// Its oil as typed.
    pub oil: fn(&Swap) -> &str,
    /// What is wrong with an oil for it.
    pub caution: fn(&str) -> Option<&'static str>,
}

/// Gearbox, overdrive, axle.
pub const SUMPS: [Sump; 3] = [
    Sump {
        field: SwapField::Oil,
        label: "Gearbox oil: class, viscosity, quantity",
        fitted: GEARBOX,
        oil: |swap| &swap.oil,
        caution: |oil| {
            let is_hypoid_alone = names(oil, "GL5") && !names(oil, "GL4");
            is_hypoid_alone.then_some("bronze rings last longer in GL-4: look for a copper sheen on the drained oil")
        },
    },
    Sump {
        field: SwapField::OverdriveOil,
        label: "Overdrive oil, where it has its own",
        fitted: "Oil of the overdrive",
        oil: |swap| &swap.overdrive_oil,
        caution: |oil| {
            let is_slippery = names(oil, "GL5") || names(oil, "LIMITEDSLIP");
            is_slippery.then_some("its clutch can slip in hypoid or limited-slip oil: take what its manual names")
        },
    },
    Sump {
        field: SwapField::AxleOil,
        label: "Axle oil",
        fitted: "Oil of the axle",
        oil: |swap| &swap.axle_oil,
        caution: |oil| (names(oil, "GL4") && !names(oil, "GL5")).then_some("hypoid teeth want GL-5: GL-4 is for spiral bevel ones"),
    },
];

/// Whether an oil names a class, however it is written.
fn names(oil: &str, class: &str) -> bool {
    oil.chars().filter(char::is_ascii_alphanumeric).map(|c| c.to_ascii_uppercase()).collect::<String>().contains(class)
}

/// What is wrong with the oils of a setup, each beside its sump.
pub fn cautions(swap: &Swap) -> impl Iterator<Item = (&'static Sump, &'static str)> {
    SUMPS.iter().filter_map(|sump| Some((sump, (sump.caution)((sump.oil)(swap))?)))
}

/// Whether any oil is typed.
pub fn is_typed(swap: &Swap) -> bool {
    SUMPS.iter().any(|sump| !(sump.oil)(swap).trim().is_empty())
}

/// A way along the car, and how much higher or lower the oil stands there for each degree of tilt: way × tan 1°.
pub fn level_for_a_degree(system: System) -> [Length; 2] {
    let way = if system == System::Inch { INCH.of(4.0) } else { millimetres(100.0) };
    [way, way * 1.0_f64.to_radians().tan()]
}
