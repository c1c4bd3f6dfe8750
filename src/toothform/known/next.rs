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

/// The measurement that tells the likeliest from the others best; none where no reading does by more than it can be off.
pub fn next(readings: &Readings, fitting: &[Candidate]) -> Option<Next> {
    let gears: Vec<&Candidate> = fitting.iter().take(MOST).collect();
    let best = gears.first()?;
    if gears.len() < 2 {
        return None;
    }
    let measures = open(readings, best).into_iter();
    let each = measures.filter_map(|measure| {
        let would_read: Option<Vec<Length>> = gears.iter().map(|candidate| reads(measure, candidate, readings.face)).collect();
        let would_read = would_read?;
        let first = *would_read.first()?;
        let apart_mm = would_read.iter().skip(1).map(|read| in_millimetres(*read - first).abs()).fold(f64::INFINITY, f64::min);
        Some(Next { measure, would_read, apart: millimetres(apart_mm) })
    });
    let least_mm = 2.0 * in_millimetres(readings.give_or_take);
    each.filter(|next| in_millimetres(next.apart) > least_mm).max_by(|a, b| a.apart.value.total_cmp(&b.apart.value))
}

/// What was not measured yet. The readings over other spans and pins come from the likeliest gear.
fn open(readings: &Readings, best: &Candidate) -> Vec<Measure> {
    let mut open = Vec::new();
    if readings.over_tips.is_none() {
        open.push(Measure::OverTips);
    }
    let usual = span::teeth_to_span(&best.gear);
    match (readings.spans, best.spanned) {
        ([Some(_), Some(_)], Some(over)) => open.extend(far_spans(best, over).map(Measure::Span)),
        ([Some(_), None], Some(over)) => open.push(Measure::Span(over + 1)),
        _ => open.push(Measure::Span(usual)),
    }
    match readings.pins {
        None => open.push(Measure::OverPins(rounded(pins::usual_pin(&best.gear)))),
        // A second, larger pin rides higher on the flank and tells the pressure angle.
        Some((pin, _)) => open.push(Measure::OverPins(rounded(pin * 1.25))),
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

/// Spans over fewer or more teeth than were measured, that still touch the flanks.
fn far_spans(best: &Candidate, over: u16) -> impl Iterator<Item = u16> {
    let gear = best.worn();
    let tip_mm = in_millimetres(gear.tip_diameter());
    let base_mm = in_millimetres(gear.base_diameter());
    let touches = move |over: u16| {
        let at_mm = in_millimetres(span::contact_diameter(&gear, span::over_teeth(&gear, over)));
        at_mm < tip_mm - 0.1 && at_mm > base_mm + 0.1
    };
    (2..over.saturating_add(6)).filter(move |count| *count != over && *count != over + 1).filter(move |count| touches(*count))
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
