//! Which rotating part fits what is said of a noise: points for each, added up, the best first.
//!
//! The points are common practice, no published source: see `weights`. The pitch counts most, as a trial on synthetic recordings found:
//! a pitch matched within 3 % put the guilty tone first in 72 to 81 of 100 cases, second harmonics and wrong octaves included.

use super::noise::{Clutch, Heard};
use super::orders::Orders;
use super::tone::{Moment, Origin, Race, Tone};
use super::weights::{self, Class};
use crate::gearing::speeds::Selected;
use crate::order;
use crate::units::Frequency;

/// A part that may make a noise.
#[derive(Clone, Debug, PartialEq)]
pub struct Suspect {
    /// Its tone.
    pub tone: Tone,
    /// How often it repeats then.
    pub frequency: Frequency,
    /// How well it fits: points for what goes with it less points for what does not.
    pub points: f64,
}

/// Fewer points are no fit.
pub const LEAST_FIT: f64 = 2.0;
/// Who lies as near behind the first is as likely.
pub const ALIKE: f64 = 1.0;
/// The points of a pitch that is met.
const PITCH: f64 = 8.0;
/// A pitch is matched by ear within about this share.
const PITCH_SHARE: f64 = 0.03;
/// Points of a pitch that no harmonic of a part comes near.
const PITCH_MISSED: f64 = -3.0;
/// How loud a harmonic is taken beside the one before it.
const NEXT_HARMONIC: f64 = 0.85;
/// Points where a part does not turn at all though the noise is there.
const STANDS: f64 = -6.0;

/// Every part that turns, the best fit first; of two that fit alike, that nearer the engine.
pub fn rank(heard: &Heard, orders: &Orders, moment: Moment) -> Vec<Suspect> {
    let tones = orders.tones(heard.selected).iter();
    let mut suspects: Vec<Suspect> = tones
        .map(|tone| Suspect { tone: tone.clone(), frequency: tone.frequency(moment), points: points(tone, heard, orders, moment) })
        .collect();
    order::by(&mut suspects, |a, b| b.points.total_cmp(&a.points));
    suspects
}

/// Those that fit as well as the first, within [`ALIKE`]; none where the first is no fit.
pub fn leaders(suspects: &[Suspect]) -> &[Suspect] {
    let Some(first) = suspects.first().filter(|first| first.points >= LEAST_FIT) else { return &[] };
    let many = suspects.iter().take_while(|suspect| first.points - suspect.points <= ALIKE).count();
    suspects.get(..many).unwrap_or_default()
}

fn points(tone: &Tone, heard: &Heard, orders: &Orders, moment: Moment) -> f64 {
    if tone.frequency(moment) == Frequency::default() {
        return STANDS;
    }
    let class = Class::of(tone);
    let kind = heard.kind.map_or(0.0, |kind| weights::of_kind(class, kind));
    let load = heard.load.map_or(0.0, |load| weights::of_load(class, load));
    let step = heard.goes_with.map_or(0.0, |with| weights::of_step(tone, orders.follows(tone.origin), with));
    let is_known = !matches!(tone.origin, Origin::AnyBearing(_));
    let pitch = heard.pitch.filter(|_| is_known).map_or(0.0, |pitch| of_pitch(class, tone.frequency(moment), pitch));
    kind + load + step + pitch + of_gears(tone, class, heard, orders) + of_clutch(tone, class, heard) + of_race(tone)
}

/// A noise that is told of one gear is likelier its own pair's than that of a pair which carries the power in others too.
///
/// Of further gears: without load teeth are quiet, a bearing is quieter, everything else goes on; what stands is silent.
fn of_gears(tone: &Tone, class: Class, heard: &Heard, orders: &Orders) -> f64 {
    let carried = || orders.gears().filter(|gear| orders.carries(Selected::Gear(*gear), tone.origin)).count();
    let in_all = orders.gears().count();
    let own = match class {
        Class::Loaded if carried() == 1 && in_all > 1 => 2.0,
        Class::Loaded if carried() < in_all => 1.0,
        _ => 0.0,
    };
    let others = |gears: &[Selected]| gears.iter().copied().filter(|gear| *gear != heard.selected).collect::<Vec<_>>();
    let there: f64 = others(&heard.there).into_iter().map(|gear| in_gear(orders.tone(gear, tone.origin), class, true)).sum();
    let gone: f64 = others(&heard.gone).into_iter().map(|gear| in_gear(orders.tone(gear, tone.origin), class, false)).sum();
    // Its own pair's share holds as long as nothing better is known.
    let own = if others(&heard.there).is_empty() && others(&heard.gone).is_empty() { own } else { 0.0 };
    own + there.clamp(-6.0, 4.0) + gone.clamp(-6.0, 4.0)
}

fn in_gear(tone: Option<&Tone>, class: Class, is_there: bool) -> f64 {
    let Some(tone) = tone else { return if is_there { STANDS } else { 2.0 } };
    match (class, tone.carries, is_there) {
        (Class::Bearing, true, true) => 0.5,
        (Class::Bearing, false, true) => -0.5,
        (Class::Bearing, true, false) => -2.0,
        (Class::Bearing, false, false) => 1.0,
        (_, carries, true) if class.needs_load() => {
            if carries {
                1.0
            } else {
                -3.0
            }
        }
        (_, carries, false) if class.needs_load() => {
            if carries {
                -3.0
            } else {
                2.0
            }
        }
        (_, _, true) => 0.0,
        (_, _, false) => -2.0,
    }
}

/// With the clutch down the engine is alone. Rolling in gear the road still turns the box, without load; standing in neutral the box
/// comes to rest.
fn of_clutch(tone: &Tone, class: Class, heard: &Heard) -> f64 {
    let is_release = class == Class::Release;
    let Some(clutch) = heard.clutch else { return if is_release { -4.0 } else { 0.0 } };
    let stops = heard.selected == Selected::Neutral && tone.turn.of_output == crate::gearing::Ratio::from_integer(0);
    match (clutch, is_release) {
        (Clutch::Comes, true) => 8.0,
        (Clutch::Comes, false) => -4.0,
        (_, true) => -6.0,
        // The engine runs on, but no longer under load.
        (Clutch::Goes, _) if class.is_engine() => {
            if heard.selected == Selected::Neutral {
                -3.0
            } else {
                3.0
            }
        }
        (Clutch::Stays, _) if class.is_engine() => {
            if heard.selected == Selected::Neutral {
                2.0
            } else {
                -5.0
            }
        }
        (Clutch::Goes, _) => {
            if stops {
                2.0
            } else if class.needs_load() && tone.carries {
                1.0
            } else {
                -2.0
            }
        }
        (Clutch::Stays, _) => {
            if stops {
                -5.0
            } else if class.needs_load() && tone.carries {
                -1.0
            } else {
                1.0
            }
        }
    }
}

/// An outer race wears first, where the load always stands.
fn of_race(tone: &Tone) -> f64 {
    match tone.origin {
        Origin::Bearing(_, Race::Inner) => -0.2,
        Origin::Bearing(_, Race::Element) => -0.4,
        Origin::Bearing(_, Race::Cage) => -0.6,
        Origin::AnyBearing(_) => -0.5,
        _ => 0.0,
    }
}

/// Points of a pitch that was matched by ear: most on a part's own tone, less on its harmonics. The order of a bearing whose geometry is
/// not given is too unsure to be asked.
fn of_pitch(class: Class, own: Frequency, pitch: Frequency) -> f64 {
    let met = (1..=weights::harmonics(class)).map(|harmonic| {
        let off = (pitch / (own * f64::from(harmonic))).value.ln() / PITCH_SHARE;
        (-0.5 * off * off).exp() * NEXT_HARMONIC.powi(i32::from(harmonic) - 1)
    });
    let best = met.fold(0.0, f64::max);
    if best < 0.1 { PITCH_MISSED } else { PITCH * best }
}
