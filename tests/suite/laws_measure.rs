//! Laws of a measured gear: what it is told to measure next does tell apart what fits, and its true reading is never held against it.

use layshaft::gearing::Teeth;
use layshaft::toothform::known::next::{Measure, next, reads, taken};
use layshaft::toothform::known::{Candidate, Readings, search};
use layshaft::toothform::{CutGear, Depth, Pitch, span};
use layshaft::units::unit;
use proptest::prelude::*;

/// Whether both are of one pitch, angle and height.
fn is_cut_as(one: &Candidate, other: &Candidate) -> bool {
    one.pitch == other.pitch && one.depth == other.depth && one.gear.cut.pressure() == other.gear.cut.pressure()
}

proptest! {
    /// Spans over k and k + 1 teeth of a standard gear: every other gear that fits them as well is told by the next measurement, whichever of those
    /// that were told apart the gear is: that one stays, and fewer fit; the tips of gears with the same flanks differ by more than a caliper may be off.
    #[test]
    fn the_next_measurement_tells_apart(teeth in 16_u16..60, at in 0_usize..40, angle in 0_usize..5, shift in -0.1_f64..0.3) {
        let pitches: Vec<Pitch> = Pitch::all().collect();
        let pressure = unit::DEGREE.of([20.0, 14.5, 17.5, 22.5, 25.0][angle]);
        let cut = Depth::Full.cut(pitches[at % pitches.len()], unit::DEGREE.of(0.0), pressure).unwrap();
        let gear = CutGear { teeth: Teeth::new(teeth).unwrap(), cut, shift };
        let over = span::teeth_to_span(&gear);
        let readings = Readings { spans: [over, over + 1].map(|over| Some(span::over_teeth(&gear, over))), ..Readings::of(gear.teeth) };
        let found = search(&readings);
        let Some(next) = next(&readings, &found.fitting) else { return Ok(()) };
        for candidate in found.fitting.iter().take(next.would_read.len()) {
            let read = reads(next.measure, candidate, None).unwrap();
            let after = search(&taken(readings, next.measure, read));
            prop_assert!(after.fitting.iter().any(|left| is_cut_as(left, candidate)), "{:?}: {:?} is lost", next.measure, candidate.pitch);
            let is_likelier = next.measure == Measure::OverTips && next.apart > readings.give_or_take * 2.0;
            let are_fewer = after.fitting.len() < found.fitting.len();
            prop_assert!(are_fewer || is_likelier, "{:?} tells none of {} apart", next.measure, found.fitting.len());
        }
    }
}
