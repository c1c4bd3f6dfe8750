//! What was read of one gear: any of it may be missing but its count.

use crate::gearing::Teeth;
use crate::units::common::millimetres;
use crate::units::{Angle, Length, System, unit};

/// The readings of a gear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Readings {
    /// z.
    pub teeth: Teeth,
    /// Over the tips, the largest reading.
    pub over_tips: Option<Length>,
    /// Over so many teeth, and over one more.
    pub spans: [Option<Length>; 2],
    /// Over how many teeth the first span went; where it is not known it is found out.
    pub spanned: Option<u16>,
    /// A pin and the reading over two of them.
    pub pins: Option<(Length, Length)>,
    /// The root diameter.
    pub root: Option<Length>,
    /// The angle that the tips print.
    pub print: Option<Angle>,
    /// The lead.
    pub lead: Option<Length>,
    /// The face width.
    pub face: Option<Length>,
    /// A centre distance and the count of the mate it runs with.
    pub centre: Option<(Length, Teeth)>,
    /// How far off each length may be.
    pub give_or_take: Length,
}

impl Readings {
    /// Nothing but the count.
    pub fn of(teeth: Teeth) -> Self {
        Self {
            teeth,
            over_tips: None,
            spans: [None; 2],
            spanned: None,
            pins: None,
            root: None,
            print: None,
            lead: None,
            face: None,
            centre: None,
            give_or_take: usual_give_or_take(System::Metric),
        }
    }

    /// Whether the flanks were measured: without that no pressure angle can be told.
    pub fn has_flanks(&self) -> bool {
        self.spans.iter().any(Option::is_some) || self.pins.is_some()
    }

    /// Whether anything was measured from which a pitch follows.
    pub fn has_size(&self) -> bool {
        self.has_flanks() || self.over_tips.is_some() || self.root.is_some()
    }
}

/// How far off a length read with a caliper may be: a thousandth of an inch, or 0.02 mm. Common practice, no published source.
pub fn usual_give_or_take(system: System) -> Length {
    match system {
        System::Inch => unit::THOU.of(1.0),
        System::Metric => millimetres(0.02),
    }
}

/// How far off the angle of an inked print may be: half a degree. Common practice, no published source.
pub fn print_give_or_take() -> Angle {
    unit::DEGREE.of(0.5)
}
