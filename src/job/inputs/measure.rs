//! The inputs of a measured gear: what was read of it, and of its mate.

use super::{inputs, quantity, whole};
use crate::job::Measure;
use crate::toothform::known::readings;
use crate::units::limits;

inputs! {
    /// The texts about a measured gear.
    MeasureField of measure: Measure;

    /// How many teeth it has.
    Teeth at teeth: whole("measure-teeth", "teeth", super::COUNTS);
    /// Over the tips.
    OverTips at over_tips: quantity("measure-over-tips", "over the tips, largest reading", &limits::GEAR_OUTSIDE);
    /// Over several teeth.
    Span at span: quantity("measure-span", "span over several teeth", &limits::GEAR_SPAN);
    /// Over one tooth more.
    SpanMore at span_more: quantity("measure-span-more", "over one tooth more", &limits::GEAR_SPAN);
    /// The helix as the tips print it.
    Print at print: quantity("measure-print", "angle the tips print", &limits::TIP_PRINT);
    /// Over how many teeth the span went.
    Spanned at spanned: whole("measure-spanned", "the span went over", (1.0, 149.0));
    /// The lead.
    Lead at lead: quantity("measure-lead", "lead, if known", &limits::LEAD);
    /// The pins.
    Pin at pin: quantity("measure-pin", "pin or ball", &limits::GAUGE_PIN);
    /// Over the pins.
    OverPins at over_pins: quantity("measure-over-pins", "over two of them", &limits::GEAR_OUTSIDE);
    /// The root diameter.
    Root at root: quantity("measure-root", "root diameter", &limits::GEAR_OUTSIDE);
    /// The face width.
    Face at face: quantity("measure-face", "face width", &limits::FACE_WIDTH);
    /// How far off a reading may be.
    GiveOrTake at give_or_take: quantity("measure-give-or-take", "lengths give or take", &limits::GIVE_OR_TAKE)
        .or(|job| limits::bare(readings::usual_give_or_take(job.units), job.units));
    /// How many teeth the mate has.
    MateTeeth at mate_teeth: whole("measure-mate-teeth", "teeth of the mate", super::COUNTS);
    /// The centre distance.
    Centre at centre: quantity("measure-centre", "centre distance of the two", &limits::CENTRE_DISTANCE);
    /// Over several teeth of the mate.
    MateSpan at mate_span: quantity("measure-mate-span", "span over several teeth of the mate", &limits::GEAR_SPAN);
    /// The backlash felt.
    Backlash at backlash: quantity("measure-backlash", "backlash felt, on the teeth", &limits::BACKLASH);
}
