//! What is typed about a measured gear, as far as it can be read.

use crate::gearing::Teeth;
use crate::job::{Bench, InputProblem, MeasureField};
use crate::questions::reader::Reader;
use crate::questions::setup::keep_or;
use crate::speedometer::Hand;
use crate::toothform::known::{Readings, readings};
use crate::units::{Length, Typed, limits};

/// A gear and its mate as they were measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// The readings of the gear; none without its count.
    pub readings: Option<Readings>,
    /// Its hand.
    pub hand: Option<Hand>,
    /// The mate.
    pub mate: Mate,
    /// What cannot be read, by field.
    pub problems: Vec<InputProblem>,
}

/// What was read of the mate.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Mate {
    /// How many teeth it has.
    pub teeth: Option<Teeth>,
    /// The centre distance they run at.
    pub centre: Option<Length>,
    /// Over several of its teeth.
    pub span: Option<Length>,
    /// The backlash felt, along the working circle.
    pub backlash: Option<Length>,
}

impl Measured {
    /// Reads what is typed.
    pub fn of(bench: &Bench) -> Self {
        use MeasureField as F;
        let typed = &bench.measure;
        let mut problems = Vec::new();
        let mut read = Reader::new(&mut problems);
        let teeth = read.teeth(&typed.teeth, F::Teeth);
        let mate = Mate {
            teeth: read.teeth(&typed.mate_teeth, F::MateTeeth),
            centre: read.quantity(&typed.centre, F::Centre, &limits::CENTRE_DISTANCE),
            span: read.quantity(&typed.mate_span, F::MateSpan, &limits::GEAR_SPAN),
            backlash: read.quantity(&typed.backlash, F::Backlash, &limits::BACKLASH),
        };
        let over_tips = read.quantity(&typed.over_tips, F::OverTips, &limits::GEAR_OUTSIDE);
        let first = read.quantity(&typed.span, F::Span, &limits::GEAR_SPAN);
        let more = read.quantity(&typed.span_more, F::SpanMore, &limits::GEAR_SPAN);
        let pin = read.quantity(&typed.pin, F::Pin, &limits::GAUGE_PIN);
        let over_pins = read.quantity(&typed.over_pins, F::OverPins, &limits::GEAR_OUTSIDE);
        let (root, face) =
            (read.quantity(&typed.root, F::Root, &limits::GEAR_OUTSIDE), read.quantity(&typed.face, F::Face, &limits::FACE_WIDTH));
        let (print, lead) = (read.quantity(&typed.print, F::Print, &limits::TIP_PRINT), read.quantity(&typed.lead, F::Lead, &limits::LEAD));
        let most = teeth.map_or(Teeth::GREATEST, Teeth::count) - 1;
        let spanned = read.whole(&typed.spanned, F::Spanned, (1, most));
        let give_or_take = give_or_take(&typed.give_or_take, read.problems);
        let readings = teeth.map(|teeth| Readings {
            over_tips,
            // Typed the wrong way round they say the same.
            spans: match (first, more) {
                (Some(first), Some(more)) if more < first => [Some(more), Some(first)],
                spans => spans.into(),
            },
            spanned,
            pins: pin.zip(over_pins),
            root,
            print,
            lead,
            face,
            centre: mate.centre.zip(mate.teeth),
            give_or_take,
            ..Readings::of(teeth)
        });
        Self { readings, hand: typed.hand.value(), mate, problems }
    }
}

fn give_or_take(typed: &Typed, problems: &mut Vec<InputProblem>) -> Length {
    let usual = readings::usual_give_or_take(typed.units);
    if typed.is_blank() {
        return usual;
    }
    let by = format!("{} is taken", limits::say(usual, typed.units));
    keep_or(problems, MeasureField::GiveOrTake, typed.read(&limits::GIVE_OR_TAKE), &by).unwrap_or(usual)
}
