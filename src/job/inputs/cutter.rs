//! The inputs of a gear to be cut.

use super::setup::pitch_unit;
use super::{Kind, Row, inputs, quantity, whole, words};
use crate::gearing::geometry::Cut;
use crate::job::document::Blank;
use crate::job::{Cutter, Job};
use crate::units::{Angle, limits};

inputs! {
    /// The texts about a gear to be cut.
    CutterField of cutter: Cutter;

    /// What the part is called.
    Part at part: words("cutter-part", "part, in words");
    /// How many teeth it has.
    Teeth at teeth: whole("cutter-teeth", "teeth", super::COUNTS).or(|job| job.bench.measure.teeth.clone());
    /// Its normal module or diametral pitch.
    Pitch at pitch: Row::new("cutter-pitch", "module or pitch", Kind::Notation(pitch_unit));
    /// Its normal pressure angle.
    Pressure at pressure: quantity("cutter-pressure", "pressure angle", &limits::PRESSURE_ANGLE)
        .or(|job| unless_measured(job, Cut::usual_pressure_angle()));
    /// Its helix on the pitch circle.
    Helix at helix: quantity("cutter-helix", "helix on the pitch circle", &limits::HELIX)
        .or(|job| unless_measured(job, Angle::default()));
    /// Its profile shift.
    ProfileShift at profile_shift: Row::new("cutter-profile-shift", "profile shift, in modules", Kind::Number("", (-1.0, 1.5)));
    /// Its face width.
    Face at face: quantity("cutter-face", "face width", &limits::FACE_WIDTH);
    /// How many teeth its mate has.
    MateTeeth at mate_teeth: whole("cutter-mate-teeth", "teeth of the mate", super::COUNTS).or(|job| job.bench.measure.mate_teeth.clone());
    /// The centre distance.
    Centre at centre: quantity("cutter-centre", "centre distance of the two", &limits::CENTRE_DISTANCE);
    /// The least backlash.
    BacklashLeast at backlash_least: quantity("cutter-backlash-least", "backlash from", &limits::BACKLASH);
    /// The most backlash.
    BacklashMost at backlash_most: quantity("cutter-backlash-most", "backlash to", &limits::BACKLASH);
    /// How much thinner it is cut.
    Allowance at allowance: Row::new("cutter-allowance", "or allowance by DIN 3967", Kind::Notation(|_, _| None)).like("25cd");
    /// How much its tips are relieved.
    Relief at relief: quantity("cutter-relief", "tip relief", &limits::TIP_RELIEF);
    /// Where relief begins.
    ReliefFrom at relief_from: quantity("cutter-relief-from", "relief begins on a diameter of", &limits::GEAR_OUTSIDE);
    /// The pins it is checked with.
    Pin at pin: quantity("cutter-pin", "pin or ball to check with", &limits::GAUGE_PIN);
    /// What it is made of.
    Material at material: words("cutter-material", "material").like("16MnCr5");
    /// How it is hardened.
    Hardening at hardening: words("cutter-hardening", "hardening").like("case 0.6 mm, 58 to 62 HRC");
    /// Its quality.
    Quality at quality: words("cutter-quality", "quality").like("ISO 1328 grade 7");
}

/// What a blank angle is where no gear was measured; else nothing, for that depends on what was measured.
fn unless_measured(job: &Job, usual: Angle) -> String {
    if job.bench.measure.is_blank() { limits::bare(usual, job.units) } else { String::new() }
}
