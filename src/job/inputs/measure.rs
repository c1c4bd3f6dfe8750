//! What is typed about a gear that is measured, and about its mate.

use super::{COUNTS, quantity, whole};
use crate::job::choice::Chosen;
use crate::job::document::document;
use crate::speedometer::Hand;
use crate::toothform::known::readings;
use crate::units::Typed;
use crate::units::limits;

document! {
    /// The texts about a measured gear, and what is chosen. Whatever is blank is left out of a file.
    pub struct Measure, MeasureField of measure {}
    left out while blank {
        /// How many teeth it has.
        teeth: String, Teeth: whole("measure-teeth", "teeth", COUNTS);
        /// The largest reading over the tips.
        over_tips: Typed, OverTips: quantity("measure-over-tips", "over the tips, largest reading", &limits::GEAR_OUTSIDE);
        /// The reading over several teeth.
        span: Typed, Span: quantity("measure-span", "span over several teeth", &limits::GEAR_SPAN);
        /// The reading over one tooth more.
        span_more: Typed, SpanMore: quantity("measure-span-more", "over one tooth more", &limits::GEAR_SPAN);
        /// Over how many teeth the first span went; blank where the reading tells it.
        spanned: String, Spanned: whole("measure-spanned", "the span went over", (1.0, 149.0));
        /// The helix as the rolled print of the tips shows it.
        print: Typed, Print: quantity("measure-print", "angle the tips print", &limits::TIP_PRINT);
        /// The lead, in place of the print.
        lead: Typed, Lead: quantity("measure-lead", "lead, if known", &limits::LEAD);
        /// The diameter of the pins or balls.
        pin: Typed, Pin: quantity("measure-pin", "pin or ball", &limits::GAUGE_PIN);
        /// The reading over them.
        over_pins: Typed, OverPins: quantity("measure-over-pins", "over two of them", &limits::GEAR_OUTSIDE);
        /// The root diameter.
        root: Typed, Root: quantity("measure-root", "root diameter", &limits::GEAR_OUTSIDE);
        /// The face width.
        face: Typed, Face: quantity("measure-face", "face width", &limits::FACE_WIDTH);
        /// How far off a reading may be; blank for a caliper's.
        give_or_take: Typed, GiveOrTake: quantity("measure-give-or-take", "lengths give or take", &limits::GIVE_OR_TAKE)
            .or(|job| limits::bare(readings::usual_give_or_take(job.units), job.units));
        /// How many teeth its mate has.
        mate_teeth: String, MateTeeth: whole("measure-mate-teeth", "teeth of the mate", COUNTS);
        /// The centre distance they run at.
        centre: Typed, Centre: quantity("measure-centre", "centre distance of the two", &limits::CENTRE_DISTANCE);
        /// The reading over several teeth of the mate.
        mate_span: Typed, MateSpan: quantity("measure-mate-span", "span over several teeth of the mate", &limits::GEAR_SPAN);
        /// The backlash felt between them.
        backlash: Typed, Backlash: quantity("measure-backlash", "backlash felt, on the teeth", &limits::BACKLASH);
        /// The hand of its teeth.
        hand: Chosen<Hand>;
    }
}
