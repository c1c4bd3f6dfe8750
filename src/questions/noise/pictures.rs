//! The picture of a noise: the tones of all that turns on an axis of pitch, those that fit it best highest, and the pitch that was heard.

use super::answer::Noise;
use super::names;
use super::read::Told;
use crate::chart::palette::Hue;
use crate::chart::spectrum::{Spectrum, Stem};
use crate::problem::capital;
use crate::questions::Source;
use crate::sound::Origin;
use crate::sound::by_ear::LEAST_FIT;
use crate::units::unit;

/// The most tones that are drawn.
const DRAWN: usize = 12;
/// The height of a tone of which nothing is said.
const PLAIN: f64 = 0.5;

/// The tones while the noise is heard.
pub fn tones(source: Source<'_>) -> Option<Spectrum> {
    let told = Told::of(source.job);
    let noise = Noise::of(source, &told).ok()?;
    let ranked = noise.heard.says_something();
    let most = noise.suspects.first().map_or(1.0, |first| first.points.max(LEAST_FIT));
    let drawn = noise.suspects.iter().filter(|suspect| suspect.frequency.value > 0.0 && suspect.tone.origin != Origin::ReleaseBearing);
    let stem = |(at, suspect): (usize, &crate::sound::by_ear::Suspect)| Stem {
        hue: match at {
            0 if ranked && suspect.points >= LEAST_FIT => Hue::Dye,
            _ if !ranked || suspect.points >= LEAST_FIT => Hue::Ink,
            _ => Hue::Muted,
        },
        name: source.reader.words.say(&names::bare(source, &told, &noise, suspect.tone.origin)),
        hertz: unit::HERTZ.number(suspect.frequency),
        share: if ranked { suspect.points / most } else { PLAIN },
    };
    let tones: Vec<Stem> = drawn.take(DRAWN).enumerate().map(stem).collect();
    let heard = told.pitch.map(|pitch| (unit::HERTZ.number(pitch), format!("heard {}", names::frequency(pitch))));
    let asked = super::sentence::Asked { source, told: &told, noise: &noise };
    Some(Spectrum {
        title: capital(&format!("tones at {}", asked.moment())),
        height: if ranked { "how well it fits".into() } else { "what turns".into() },
        tones,
        heard,
    })
}
