//! What is typed about a gear to be cut, as far as it can be read; what is blank comes from the measured gear.

use crate::gearing::Teeth;
use crate::gearing::geometry::Cut;
use crate::job::{Bench, CutterField, InputProblem};
use crate::questions::measure;
use crate::questions::measure::answer::Known;
use crate::questions::reader::Reader;
use crate::questions::setup::keep;
use crate::speedometer::Hand;
use crate::toothform::allowance::Allowance;
use crate::toothform::known::Candidate;
use crate::toothform::split::Split;
use crate::toothform::standard::Rack;
use crate::toothform::{Depth, Pitch};
use crate::units::{Angle, Length, limits};

/// A gear to be cut, as far as it is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// z.
    pub teeth: Option<Teeth>,
    /// mₙ.
    pub module: Option<Length>,
    /// The pitch as it is called, where it is the measured gear's.
    pub pitch: Option<Pitch>,
    /// αₙ.
    pub pressure: Angle,
    /// β.
    pub helix: Angle,
    /// Its hand.
    pub hand: Option<Hand>,
    /// x as typed, else as measured; none where the rule gives it.
    pub profile_shift: Option<f64>,
    /// b.
    pub face: Option<Length>,
    /// The tool.
    pub rack: Option<Rack>,
    /// The mate's count.
    pub mate_teeth: Option<Teeth>,
    /// a.
    pub centre: Option<Length>,
    /// The rule of the split.
    pub split: Option<Split>,
    /// Least and most backlash on the working circle.
    pub backlash: [Option<Length>; 2],
    /// A row of DIN 3967 in place of the backlash.
    pub allowance: Option<Allowance>,
    /// How much the tips are relieved, and from which circle on.
    pub relief: Option<(Length, Option<Length>)>,
    /// The pins to check with.
    pub pin: Option<Length>,
    /// Whether anything comes from the measured gear.
    pub is_measured: bool,
    /// What cannot be read, by field.
    pub problems: Vec<InputProblem>,
}

impl Wanted {
    /// Reads what is typed.
    pub fn of(bench: &Bench) -> Self {
        use CutterField as F;
        let typed = &bench.cutter;
        let measured = measure::read::Measured::of(bench);
        let known = Known::of_measured(&measured);
        let best: Option<&Candidate> = known.as_ref().and_then(Known::best);
        let mut problems = Vec::new();
        let module = if typed.pitch.is_blank() {
            None
        } else {
            keep(&mut problems, F::Pitch, Cut::read_module(&typed.pitch.text, typed.pitch.units))
        };
        let mut read = Reader::new(&mut problems);
        let profile_shift = read.number(&typed.profile_shift, F::ProfileShift, (-1.0, 1.5));
        let teeth = read.teeth(&typed.teeth, F::Teeth);
        let mate_teeth = read.teeth(&typed.mate_teeth, F::MateTeeth).or(measured.mate.teeth);
        let (pressure, helix) =
            (read.quantity(&typed.pressure, F::Pressure, &limits::PRESSURE_ANGLE), read.quantity(&typed.helix, F::Helix, &limits::HELIX));
        let centre = read.quantity(&typed.centre, F::Centre, &limits::CENTRE_DISTANCE).or(measured.mate.centre);
        let face = read.quantity(&typed.face, F::Face, &limits::FACE_WIDTH);
        let backlash = [
            read.quantity(&typed.backlash_least, F::BacklashLeast, &limits::BACKLASH),
            read.quantity(&typed.backlash_most, F::BacklashMost, &limits::BACKLASH),
        ];
        let relief = read.quantity(&typed.relief, F::Relief, &limits::TIP_RELIEF).filter(|amount| amount.value > 0.0);
        let relief_from = read.quantity(&typed.relief_from, F::ReliefFrom, &limits::GEAR_OUTSIDE);
        let pin = read.quantity(&typed.pin, F::Pin, &limits::GAUGE_PIN);
        let named = Some(typed.allowance.as_str()).filter(|text| !text.trim().is_empty());
        let allowance = named.and_then(|text| keep(&mut problems, F::Allowance, Allowance::read(text)));
        // Another count or pitch is another gear: the measured profile shift is not its.
        let same = best.filter(|best| module.is_none() && teeth.is_none_or(|teeth| teeth == best.gear.teeth));
        Self {
            teeth: teeth.or_else(|| measured.readings.map(|readings| readings.teeth)),
            module: module.or_else(|| best.map(|best| best.gear.cut.normal_module())),
            pitch: best.filter(|_| module.is_none()).map(|best| best.pitch),
            pressure: pressure.or_else(|| best.map(|best| best.gear.cut.pressure())).unwrap_or_else(Cut::usual_pressure_angle),
            helix: helix.or_else(|| best.map(|best| best.gear.cut.helix())).unwrap_or_default(),
            hand: typed.hand.value().or(measured.hand),
            profile_shift: profile_shift.or_else(|| same.filter(|best| best.has_shift).map(|best| best.gear.shift)),
            face: face.or_else(|| known.as_ref().and_then(|known| known.readings.face)),
            rack: typed
                .rack
                .given()
                .or_else(|| best.filter(|best| best.depth == Depth::Stub).map(|_| Rack::Stub))
                .or_else(|| typed.rack.value()),
            mate_teeth,
            centre,
            split: typed.split.value(),
            backlash,
            allowance,
            relief: relief.map(|amount| (amount, relief_from)),
            pin,
            is_measured: best.is_some() && (module.is_none() || teeth.is_none()),
            problems,
        }
    }
}
