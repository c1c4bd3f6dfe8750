//! The inputs of setting: a tapered pair, turning torque, ring and pinion, the clutch housing, fasteners, oil.

use super::{Kind, Row, inputs, no_unit, notation, quantity, words};
use crate::fits::tapered::USUAL_K;
use crate::job::Setting;
use crate::units::{Length, Measured, System, limits};

inputs! {
    /// The texts about setting.
    SettingField of setting: Setting;

    /// The shim that was in when the float was read.
    ShimIn at shim_in: quantity("setting-shim-in", "shim in now", &limits::SHIM);
    /// The float that it left.
    Float at float: notation("setting-float", "float read, three places", lengths).like("0.004 0.005 0.004");
    /// The end play wanted.
    Wanted at wanted: notation("setting-wanted", "end play or preload wanted", lengths).like("preload 0.002 to 0.004 in");
    /// Between the bearings.
    Span at span: quantity("setting-span", "between the bearings", &limits::BEARING_SPAN);
    /// The outsides of the cups.
    Cups at cups: notation("setting-cups", "outsides of the cups", lengths).like("62 72 mm");
    /// The K of the bearings.
    K at k: quantity("setting-k", "K in the bearing list", &limits::BEARING_K).or(|_| USUAL_K.to_string());
    /// What the spring balance shows.
    Pull at pull: quantity("setting-pull", "pull on the balance", &limits::PULL);
    /// The radius it pulls at.
    Radius at radius: quantity("setting-radius", "at a radius of", &limits::LEVER);
    /// The turning torque wanted.
    Torque at torque: notation("setting-torque", "turning torque wanted", no_unit).like("20 to 32 lbf·in");
    /// The depth shim as measured for a nominal pinion.
    Depth at depth: quantity("setting-depth", "depth shim by the gauge", &limits::SHIM);
    /// The mark on the pinion.
    Mark at mark: quantity("setting-mark", "mark on the pinion", &limits::PINION_MARK).like("+2 thou");
    /// The way of the dial.
    Lash at lash: notation("setting-lash", "dial, four places", lengths).like("0.006 0.007 0.007 0.006");
    /// The radius the dial stands at.
    DialRadius at dial_radius: quantity("setting-dial-radius", "dial at a radius of", &limits::LEVER);
    /// The pitch radius of the gear it stands on.
    PitchRadius at pitch_radius: quantity("setting-pitch-radius", "pitch radius of that gear", &limits::LEVER);
    /// The clutch housing's bore.
    Bore at bore: notation("setting-bore", "bore at 12, 3, 6, 9 o’clock", lengths).like("0 0.002 0.006 0.004");
    /// Its face.
    Face at face: notation("setting-face", "face at 12, 3, 6, 9 o’clock", lengths).like("0 0.001 0.003 0.002");
    /// The fasteners, one a line.
    Fasteners at fasteners: Row::new("setting-fasteners", "fasteners, one a line: thread, grade, what it goes into, how deep, order", Kind::Lines)
        .like("rear cover M8 8.8 in aluminium 18 mm order 1-4-2-3\nring gear 7/16-20 grade 8 oiled");
    /// Oil: grade and quantity.
    Oil at oil: words("setting-oil", "oil, grade and quantity").like("as the tag says");
}

/// The unit of bare lengths.
#[expect(clippy::unnecessary_wraps, reason = "the table asks every notation for its unit, and some have none")]
fn lengths(_: &str, system: System) -> Option<&'static str> {
    Some(Length::usual(system).symbol)
}
