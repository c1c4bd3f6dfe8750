//! What is typed about the setting of bearings and gears: a tapered pair, turning torque, ring and pinion, the clutch housing, fasteners.

use super::{Kind, Row, length_unit, no_unit, notation, quantity, words};
use crate::fits::ring_pinion::{MarkSense, Pattern};
use crate::fits::tapered::USUAL_K;
use crate::fits::tapered::{BearingState, Mounting};
use crate::job::choice::Chosen;
use crate::job::document::document;
use crate::units::Typed;
use crate::units::limits;

document! {
    /// The texts about setting, and what is chosen. Whatever is blank is left out of a file.
    pub struct Setting, SettingField of setting {}
    left out while blank {
        /// The shim that was in when the float was read.
        shim_in: Typed, ShimIn: quantity("setting-shim-in", "shim in now", &limits::SHIM);
        /// The float that it left, at one or several places.
        float: Typed, Float: notation("setting-float", "float read, three places", length_unit).like("0.004 0.005 0.004");
        /// The end play wanted, preload with a minus.
        wanted: Typed, Wanted: notation("setting-wanted", "end play or preload wanted", length_unit).like("preload 0.002 to 0.004 in");
        /// Between the bearings.
        span: Typed, Span: quantity("setting-span", "between the bearings", &limits::BEARING_SPAN);
        /// The outsides of the cups.
        cups: Typed, Cups: notation("setting-cups", "outsides of the cups", length_unit).like("62 72 mm");
        /// The K of the bearings; blank for 1.6.
        k: Typed, K: quantity("setting-k", "K in the bearing list", &limits::BEARING_K).or(|_| USUAL_K.to_string());
        /// How the pair stands; blank for face to face.
        mounting: Chosen<Mounting>;
        /// What the spring balance shows.
        pull: Typed, Pull: quantity("setting-pull", "pull on the balance", &limits::PULL);
        /// The radius it pulls at.
        radius: Typed, Radius: quantity("setting-radius", "at a radius of", &limits::LEVER);
        /// The turning torque wanted.
        torque: String, Torque: notation("setting-torque", "turning torque wanted", no_unit).like("20 to 32 lbf·in");
        /// Whether the bearings are new, and the seal is on; blank for new without.
        bearings: Chosen<BearingState>;
        /// The depth shim as measured for a nominal pinion.
        depth: Typed, Depth: quantity("setting-depth", "depth shim by the gauge", &limits::SHIM);
        /// The mark on the pinion.
        mark: Typed, Mark: quantity("setting-mark", "mark on the pinion", &limits::PINION_MARK).like("+2 thou");
        /// Which way the mark goes; blank for plus takes off.
        sense: Chosen<MarkSense>;
        /// The way of the dial, at one or several places.
        lash: Typed, Lash: notation("setting-lash", "dial, four places", length_unit).like("0.006 0.007 0.007 0.006");
        /// The radius the dial stands at.
        dial_radius: Typed, DialRadius: quantity("setting-dial-radius", "dial at a radius of", &limits::LEVER);
        /// The pitch radius of the gear it stands on.
        pitch_radius: Typed, PitchRadius: quantity("setting-pitch-radius", "pitch radius of that gear", &limits::LEVER);
        /// Where the drive side of the ring gear's teeth bears.
        pattern_drive: Chosen<Pattern>;
        /// Where their coast side bears.
        pattern_coast: Chosen<Pattern>;
        /// The clutch housing's bore at twelve, three, six and nine o'clock.
        bore: Typed, Bore: notation("setting-bore", "bore at 12, 3, 6, 9 o’clock", length_unit).like("0 0.002 0.006 0.004");
        /// Its face, read the same way.
        face: Typed, Face: notation("setting-face", "face at 12, 3, 6, 9 o’clock", length_unit).like("0 0.001 0.003 0.002");
        /// The fasteners, one a line.
        fasteners: String, Fasteners: Row::new("setting-fasteners", "fasteners, one a line: thread, grade, what it goes into, how deep, order", Kind::Lines)
            .like("rear cover M8 8.8 in aluminium 18 mm order 1-4-2-3\nring gear 7/16-20 grade 8 oiled");
        /// Oil: grade and quantity.
        oil: String, Oil: words("setting-oil", "oil, grade and quantity").like("as the tag says");
    }
}

impl Setting {
    /// Whether nothing of ring and pinion is typed or chosen.
    pub fn has_no_ring_and_pinion(&self) -> bool {
        let typed = [&self.depth, &self.mark, &self.lash, &self.dial_radius, &self.pitch_radius];
        typed.into_iter().all(Typed::is_blank) && self.pattern_drive.is_nothing() && self.pattern_coast.is_nothing()
    }
}
