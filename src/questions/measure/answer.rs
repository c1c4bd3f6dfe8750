//! Which standard gears the readings fit, what to measure next, and how the likeliest runs with its mate.

use super::read::{Mate, Measured};
use crate::gearing::geometry::{GeometryError, Setting, geometry};
use crate::gearing::{Mesh, Teeth};
use crate::job::Bench;
use crate::toothform::known::next::{Next, next};
use crate::toothform::known::{Candidate, Found, Reading, Readings, search};
use crate::toothform::pair::{self, Meshing};
use crate::toothform::pins::{self, PinError};
use crate::toothform::{CutGear, span};
use crate::units::Length;
use crate::units::common::in_millimetres;

/// What is known of a measured gear.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// What was read of it.
    pub readings: Readings,
    /// The gears that fit, and those that do not.
    pub found: Found,
    /// What would tell those that fit apart.
    pub next: Option<Next>,
    /// Why the pins that were laid in give no reading.
    pub pin: Option<PinError>,
    /// How the likeliest runs with the mate.
    pub with_mate: Option<WithMate>,
}

/// What the mate's teeth were taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MateFrom {
    /// A span over its teeth.
    Span,
    /// The backlash felt.
    Backlash,
    /// Nothing: it is taken as cut to match, and unworn.
    CutToMatch,
}

/// A gear with its mate at their centre distance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WithMate {
    /// The mate, its profile shift as its flanks show it.
    pub mate: CutGear,
    /// What that rests on.
    pub from: MateFrom,
    /// Over how many teeth of the mate the span went.
    pub spanned: Option<u16>,
    /// The centre distance.
    pub centre: Length,
    /// How they mesh there.
    pub meshing: Meshing,
    /// The centre distance at which they would touch without play.
    pub tightest: Option<Length>,
}

impl WithMate {
    /// Whether the flanks bind.
    pub fn binds(&self, give_or_take: Length) -> bool {
        self.meshing.backlash.normal < -give_or_take * 2.0
    }

    /// Whether a tip comes nearer to a root than a tenth of a module (common practice, no published source).
    pub fn bottoms(&self) -> bool {
        self.meshing.clearances.iter().any(|clearance| *clearance < self.mate.cut.normal_module() * 0.1)
    }
}

impl Known {
    /// What is known of the gear that is typed; nothing without its count and something that shows its size.
    pub fn of(bench: &Bench) -> Option<Self> {
        Self::of_measured(&Measured::of(bench))
    }

    /// The same of what was read already.
    pub fn of_measured(measured: &Measured) -> Option<Self> {
        let readings = measured.readings.filter(Readings::has_size)?;
        let found = search(&readings);
        let next = next(&readings, &found.fitting);
        let best = found.best();
        // Where only the pins contradict, the gear that the other readings name tells whether they lay in their place.
        let beside_pins = || found.without.as_ref().filter(|(of, _)| *of == Reading::Pins).map(|(_, candidate)| candidate);
        let laid_in = best.or_else(beside_pins);
        let pin = laid_in.zip(readings.pins).and_then(|(gear, (pin, _))| pins::lay(&gear.worn(), pin).err());
        let with_mate = best.and_then(|best| with_mate(best, readings.root, &measured.mate)?.ok());
        Some(Self { readings, found, next, pin, with_mate })
    }

    /// The likeliest gear.
    pub fn best(&self) -> Option<&Candidate> {
        self.found.best()
    }
}

/// Why the likeliest gear and its mate have no geometry at their centre distance, and the distance they want.
pub fn mate_problem(measured: &Measured, best: &Candidate) -> Option<(GeometryError, Option<Length>)> {
    let why = with_mate(best, None, &measured.mate)?.err()?;
    let mate = CutGear { teeth: measured.mate.teeth?, ..best.worn() }.with_shift(0.0);
    Some((why, pair::tightest_centre([best.worn(), mate])))
}

/// The likeliest gear, its roots as measured where they were, with its mate; nothing where the mate or the centre distance is not typed.
fn with_mate(best: &Candidate, root: Option<Length>, typed: &Mate) -> Option<Result<WithMate, GeometryError>> {
    let (teeth, centre) = (typed.teeth?, typed.centre?);
    Some(run_with(best, root, typed, teeth, centre))
}

fn run_with(best: &Candidate, root: Option<Length>, typed: &Mate, teeth: Teeth, centre: Length) -> Result<WithMate, GeometryError> {
    let worn = best.worn();
    let mesh = Mesh { driver: worn.teeth, driven: teeth };
    let setting = Setting { mesh, cut: worn.cut, centre: Some(centre), driver_shift: Some(best.gear.shift), face_width: None };
    let geometry = geometry(&setting)?;
    let matching = geometry.shift_sum - best.gear.shift;
    let bare = CutGear { teeth, cut: worn.cut, shift: matching };
    let (from, spanned, shift) = match (typed.span.and_then(|read| span::told(&bare, read, matching)), typed.backlash) {
        (Some((over, shift)), _) => (MateFrom::Span, Some(over), shift),
        (None, Some(felt)) => (MateFrom::Backlash, None, pair::flank_sum_of(&worn, &geometry, felt) - worn.shift),
        (None, None) => (MateFrom::CutToMatch, None, matching),
    };
    let mate = bare.with_shift(shift);
    let tightest = pair::tightest_centre([worn, mate]);
    // Tips and roots are as measured, else those of the cut, whatever the flanks have lost.
    let tips = [best.tip.unwrap_or_else(|| best.gear.tip_diameter()), bare.tip_diameter()];
    let roots = [root.unwrap_or_else(|| best.gear.root_diameter()), bare.root_diameter()];
    let clearances = pair::clearances(centre, tips, roots);
    let meshing = Meshing { clearances, ..pair::meshing([worn, mate], centre, tips.map(Some))? };
    Ok(WithMate { mate, from, spanned, centre, meshing, tightest })
}

/// How far two backlashes lie apart where one was felt and one follows from both spans.
pub fn felt_otherwise(with: &WithMate, typed: &Mate, give_or_take: Length) -> Option<Length> {
    let felt = typed.backlash.filter(|_| with.from == MateFrom::Span)?;
    let apart = felt - with.meshing.backlash.around;
    (in_millimetres(apart).abs() > 4.0 * in_millimetres(give_or_take)).then_some(apart)
}
