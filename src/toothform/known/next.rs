//! The next measurement: which reading that was not taken yet would tell those apart that are left?

use super::candidate::Candidate;
use super::readings::Readings;
use crate::toothform::{across, pins, span};
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// Something that can still be measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measure {
    /// Over the tips.
    OverTips,
    /// Over so many teeth.
    Span(u16),
    /// Over two pins of that diameter.
    OverPins(Length),
    /// The root diameter.
    Root,
}

/// A measurement and what each gear would give.
#[derive(Clone, Debug, PartialEq)]
pub struct Next {
    /// What to measure.
    pub measure: Measure,
    /// What it would read for each gear, in their order.
    pub would_read: Vec<Length>,
    /// How much nearer than that no two of them lie.
    pub apart: Length,
}

/// How many of those that fit are told apart; the rest is less likely.
const MOST: usize = 4;

/// Pins in times of the usual one: smaller and larger ones lie lower and higher on the flanks, and so tell a pressure angle.
const PINS: [f64; 4] = [1.0, 0.85, 1.25, 1.5];

/// The measurement that tells those that are left apart best: whichever of them the gear is, its reading leaves some other out.
///
/// Gears of one base pitch have one base circle, and so the same flanks: of those only the tips differ, and by less than wear may have taken, so that
/// the reading over them makes one likelier and leaves none out. None where no reading differs by more than it can be off.
pub fn next(readings: &Readings, fitting: &[Candidate]) -> Option<Next> {
    let gears: Vec<&Candidate> = fitting.iter().take(MOST).collect();
    let best = gears.first()?;
    if gears.len() < 2 {
        return None;
    }
    let each = open(readings, best).into_iter().filter_map(|measure| {
        let would_read: Option<Vec<Length>> = gears.iter().map(|candidate| reads(measure, candidate, readings.face)).collect();
        let would_read = would_read?;
        let first = *would_read.first()?;
        let apart_mm = would_read.iter().skip(1).map(|read| in_millimetres(*read - first).abs()).fold(f64::INFINITY, f64::min);
        let left_out: Vec<usize> = would_read.iter().map(|read| left_out(&taken(*readings, measure, *read), &gears)).collect();
        let least = left_out.iter().copied().min()?;
        Some(((least, left_out.iter().sum::<usize>()), Next { measure, would_read, apart: millimetres(apart_mm) }))
    });
    let least_mm = 2.0 * in_millimetres(readings.give_or_take);
    let telling =
        each.filter(|((least, _), next)| *least > 0 || (next.measure == Measure::OverTips && in_millimetres(next.apart) > least_mm));
    let best = telling.max_by(|(one, a), (other, b)| one.cmp(other).then(a.apart.value.total_cmp(&b.apart.value)));
    best.map(|(_, next)| next)
}

/// How many gears the readings no longer fit.
fn left_out(readings: &Readings, gears: &[&Candidate]) -> usize {
    let fits = |gear: &&&Candidate| {
        Candidate::of(readings, gear.pitch, gear.depth, gear.gear.cut.pressure()).is_some_and(|candidate| candidate.fits())
    };
    gears.len() - gears.iter().filter(fits).count()
}

/// The readings with one more.
pub fn taken(readings: Readings, measure: Measure, read: Length) -> Readings {
    match measure {
        Measure::OverTips => Readings { over_tips: Some(read), ..readings },
        Measure::Span(_) => match readings.spans {
            [Some(first), _] => Readings { spans: [Some(first), Some(read)], ..readings },
            _ => Readings { spans: [Some(read), None], ..readings },
        },
        Measure::OverPins(pin) => Readings { pins: Some((pin, read)), ..readings },
        Measure::Root => Readings { root: Some(read), ..readings },
    }
}

/// What was not measured yet; of spans and pins one reading each has its place. Those over spans and pins come from the likeliest gear.
fn open(readings: &Readings, best: &Candidate) -> Vec<Measure> {
    let mut open = Vec::new();
    if readings.over_tips.is_none() {
        open.push(Measure::OverTips);
    }
    match (readings.spans, best.spanned) {
        ([Some(_), Some(_)], _) => {}
        ([Some(_), None], Some(over)) => open.push(Measure::Span(over + 1)),
        _ => open.push(Measure::Span(span::teeth_to_span(&best.gear))),
    }
    if readings.pins.is_none() {
        open.extend(PINS.map(|times| Measure::OverPins(rounded(pins::usual_pin(&best.gear) * times))));
    }
    if readings.root.is_none() {
        open.push(Measure::Root);
    }
    open
}

/// A pin that can be had: to a quarter of a millimetre.
fn rounded(pin: Length) -> Length {
    millimetres((in_millimetres(pin) * 4.0).round().max(1.0) / 4.0)
}

/// What a measurement would read of a gear as it is now.
pub fn reads(measure: Measure, candidate: &Candidate, face: Option<Length>) -> Option<Length> {
    let worn = candidate.worn();
    match measure {
        Measure::OverTips => Some(across::over_tips(&worn, worn.tip_diameter(), face)),
        Measure::Span(over) => Some(span::over_teeth(&worn, over)),
        Measure::OverPins(pin) => pins::lay(&worn, pin).ok().map(|laid| laid.over),
        Measure::Root => Some(candidate.gear.root_diameter()),
    }
}
