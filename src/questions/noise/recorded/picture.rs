//! The pictures of a recording, with the tones of the parts drawn in at the speed that was found: its spectrum, and how it goes over time.

use super::said::Heard;
use super::{Asked, Findings, heard};
use crate::chart::order_map::{OrderMap, Trace};
use crate::chart::palette::Hue;
use crate::chart::recorded::{Mark, Recorded};
use crate::questions::Source;

/// How many places along the picture the spectrum is drawn at.
const PLACES: usize = 700;
/// How far behind the highest tone that is drawn it goes on.
const BEYOND: f64 = 1.35;
/// It goes at least so far, in Hz.
const LEAST: f64 = 200.0;
/// Orders below this are the microphone's own rumble.
const FROM_HERTZ: f64 = 5.0;

/// The picture.
pub fn spectrum(source: Source<'_>, asked: &Asked, findings: &Findings) -> Option<Recorded> {
    let heard = heard(source, asked, findings)?;
    let firing = findings.turns * f64::from(asked.cylinders()) / 2.0;
    let highest = heard.parts.iter().map(|part| part.hertz).fold(firing, f64::max);
    let most = (BEYOND * highest).max(LEAST);
    Some(Recorded { title: "Spectrum of the recording".into(), most, levels: levels(findings, most), marks: marks(source, &heard, firing) })
}

/// The recording over time.
pub fn order_map(source: Source<'_>, asked: &Asked, findings: &Findings) -> Option<OrderMap> {
    let heard = heard(source, asked, findings)?;
    let map = &findings.map;
    let trace = |mark: Mark| {
        let order = mark.hertz / findings.turns;
        Trace { hue: mark.hue, name: mark.name, points: findings.speeds.iter().map(|(time, speed)| (*time, order * speed)).collect() }
    };
    let firing = findings.turns * f64::from(asked.cylinders()) / 2.0;
    let traces = marks(source, &heard, firing).into_iter().map(trace).collect();
    let columns = map.columns.clone();
    (!columns.is_empty()).then(|| OrderMap {
        title: "The recording over time".into(),
        seconds: map.seconds,
        most: map.most,
        columns,
        traces,
    })
}

fn marks(source: Source<'_>, heard: &Heard, firing: f64) -> Vec<Mark> {
    let mark = |(at, part): (usize, &super::Part)| Mark {
        hue: if at == 0 { Hue::Dye } else { Hue::Ink },
        name: source.reader.words.say(&part.name),
        hertz: part.hertz,
    };
    let parts = heard.parts.iter().enumerate().map(mark);
    parts.chain([Mark { hue: Hue::Muted, name: "firing".into(), hertz: firing }]).collect()
}

/// The loudest bin of each stretch, in dB over the noise.
fn levels(findings: &Findings, most: f64) -> Vec<(f64, f64)> {
    let step = findings.spectrum.order_of_bin * findings.turns;
    let mut levels: Vec<(f64, f64)> = Vec::new();
    let mut stretch = usize::MAX;
    let mut hertz = 0.0;
    for power in &findings.spectrum.bins {
        let here = place(hertz, most);
        if hertz > most {
            break;
        }
        let level = 10.0 * power.max(0.1).log10();
        match levels.last_mut() {
            Some(last) if here == stretch => *last = if level > last.1 { (hertz, level) } else { *last },
            _ if hertz >= FROM_HERTZ => levels.push((hertz, level)),
            _ => {}
        }
        stretch = here;
        hertz += step;
    }
    levels
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "a share of a few hundred places")]
fn place(hertz: f64, most: f64) -> usize {
    (hertz / most * PLACES as f64) as usize
}
