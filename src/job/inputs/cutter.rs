//! What is typed about a gear to be cut. Whatever is blank is taken from the measured gear.

use super::setup::pitch_unit;
use super::{COUNTS, Kind, Row, no_unit, quantity, whole, words};
use crate::gearing::geometry::Cut;
use crate::job::Job;
use crate::job::choice::Chosen;
use crate::job::document::Blank;
use crate::job::document::document;
use crate::speedometer::Hand;
use crate::toothform::split::Split;
use crate::toothform::standard::Rack;
use crate::units::Typed;
use crate::units::{Angle, limits};

document! {
    /// The texts about a gear to be cut, and what is chosen. Whatever is blank is left out of a file.
    pub struct Cutter, CutterField of cutter {}
    left out while blank {
        /// What the part is called.
        part: String, Part: words("cutter-part", "part, in words");
        /// How many teeth it has.
        teeth: String, Teeth: whole("cutter-teeth", "teeth", COUNTS).or(|job| job.bench.measure.teeth.clone());
        /// Its normal module or diametral pitch.
        pitch: Typed, Pitch: Row::new("cutter-pitch", "module or pitch", Kind::Notation(pitch_unit));
        /// Its normal pressure angle.
        pressure: Typed, Pressure: quantity("cutter-pressure", "pressure angle", &limits::PRESSURE_ANGLE)
            .or(|job| unless_measured(job, Cut::usual_pressure_angle()));
        /// Its helix on the pitch circle.
        helix: Typed, Helix: quantity("cutter-helix", "helix on the pitch circle", &limits::HELIX)
            .or(|job| unless_measured(job, Angle::default()));
        /// Its profile shift in normal modules; blank for what the rule gives it.
        profile_shift: String, ProfileShift: Row::new("cutter-profile-shift", "profile shift, in modules", Kind::Number("", (-1.0, 1.5)));
        /// Its face width.
        face: Typed, Face: quantity("cutter-face", "face width", &limits::FACE_WIDTH);
        /// How many teeth its mate has.
        mate_teeth: String, MateTeeth: whole("cutter-mate-teeth", "teeth of the mate", COUNTS)
            .or(|job| job.bench.measure.mate_teeth.clone());
        /// The centre distance they run at.
        centre: Typed, Centre: quantity("cutter-centre", "centre distance of the two", &limits::CENTRE_DISTANCE);
        /// The least backlash wanted between them.
        backlash_least: Typed, BacklashLeast: quantity("cutter-backlash-least", "backlash from", &limits::BACKLASH);
        /// The most.
        backlash_most: Typed, BacklashMost: quantity("cutter-backlash-most", "backlash to", &limits::BACKLASH);
        /// How much thinner it is cut, by a row of DIN 3967 as `25cd`; blank for what the backlash asks.
        allowance: String, Allowance: Row::new("cutter-allowance", "or allowance by DIN 3967", Kind::Notation(no_unit)).like("25cd");
        /// How much its tips are relieved.
        relief: Typed, Relief: quantity("cutter-relief", "tip relief", &limits::TIP_RELIEF);
        /// The circle on which relief begins.
        relief_from: Typed, ReliefFrom: quantity("cutter-relief-from", "relief begins on a diameter of", &limits::GEAR_OUTSIDE);
        /// The pins or balls it is to be checked with; blank for the usual.
        pin: Typed, Pin: quantity("cutter-pin", "pin or ball to check with", &limits::GAUGE_PIN);
        /// What it is made of, in words.
        material: String, Material: words("cutter-material", "material").like("16MnCr5");
        /// How it is hardened, in words.
        hardening: String, Hardening: words("cutter-hardening", "hardening").like("case 0.6 mm, 58 to 62 HRC");
        /// Its quality, in words.
        quality: String, Quality: words("cutter-quality", "quality").like("ISO 1328 grade 7");
        /// The hand of its teeth.
        hand: Chosen<Hand>;
        /// The rack of the tool.
        rack: Chosen<Rack>;
        /// How the profile shifts of the pair are split.
        split: Chosen<Split>;
    }
}

/// What a blank angle is where no gear was measured; else nothing, for that depends on what was measured.
fn unless_measured(job: &Job, usual: Angle) -> String {
    if job.bench.measure.is_blank() { limits::bare(usual, job.units) } else { String::new() }
}
