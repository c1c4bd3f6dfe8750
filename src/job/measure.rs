//! What is typed about a gear that is measured, and about its mate.
//!
//! [`super::inputs::measure`] is its table.

use super::choice::Chosen;
use super::document::document;
use crate::speedometer::Hand;
use crate::units::Typed;

document! {
    /// The texts about a measured gear, and what is chosen. Whatever is blank is left out of a file.
    pub struct Measure {}
    left out while blank {
        /// How many teeth it has.
        pub teeth: String,
        /// The largest reading over the tips.
        pub over_tips: Typed,
        /// The reading over several teeth.
        pub span: Typed,
        /// The reading over one tooth more.
        pub span_more: Typed,
        /// Over how many teeth the first span went; blank where the reading tells it.
        pub spanned: String,
        /// The helix as the rolled print of the tips shows it.
        pub print: Typed,
        /// The lead, in place of the print.
        pub lead: Typed,
        /// The diameter of the pins or balls.
        pub pin: Typed,
        /// The reading over them.
        pub over_pins: Typed,
        /// The root diameter.
        pub root: Typed,
        /// The face width.
        pub face: Typed,
        /// How far off a reading may be; blank for a caliper's.
        pub give_or_take: Typed,
        /// How many teeth its mate has.
        pub mate_teeth: String,
        /// The centre distance they run at.
        pub centre: Typed,
        /// The reading over several teeth of the mate.
        pub mate_span: Typed,
        /// The backlash felt between them.
        pub backlash: Typed,
        /// The hand of its teeth.
        pub hand: Chosen<Hand>,
    }
}
