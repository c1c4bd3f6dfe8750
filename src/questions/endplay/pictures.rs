//! The picture of End play and shims: the play each pack leaves, against the range wanted.

use super::answer::{Play, Shims};
use super::read::Measured;
use super::rows::{decimals, pack_said};
use crate::chart::bars::{Bar, Bars, Zone};
use crate::chart::lines;
use crate::chart::palette::Hue;
use crate::fits::shims::Pack;
use crate::questions::Source;
use crate::units::{Length, Measured as _, number};

/// How many packs are drawn.
const DRAWN: usize = 5;

/// The play without shims and with each pack, the range wanted shaded behind.
pub fn shims(source: Source<'_>) -> Option<Bars> {
    let measured = Measured::of_source(source);
    let play = Play::of(&source.job.bench, &measured)?;
    let shims = play.shims.as_ref()?;
    let unit = Length::usual(source.reader.units);
    let value = |length: Length| (unit.take)(&length);
    let bar = |(hue, name, cold, hot): (Hue, String, Length, Option<Length>)| {
        let note = hot.map_or_else(String::new, |hot| format!("hot {}", number::show(value(hot), decimals(source))));
        Bar { hue, name, value: value(cold), note }
    };
    let packs = shims.found.landing.iter().filter(|pack| !pack.sizes.is_empty()).take(DRAWN).chain(&shims.found.nearest);
    let with = packs.map(|pack| of_pack(&measured, &play, shims, pack));
    let none = (Hue::Muted, "no shims".to_owned(), play.gap, play.opens.map(|opens| play.gap + opens));
    let zone = Zone { least: value(shims.wanted.least), greatest: value(shims.wanted.greatest), name: "wanted".into(), hue: Hue::Ok };
    Some(Bars {
        title: "End play with each pack of shims".into(),
        measure: lines::Measure { name: "end play at the bench".into(), unit: unit.symbol.into(), decimals: decimals(source), ends: None },
        bars: std::iter::once(none).chain(with).map(bar).collect(),
        zone: Some(zone),
        focus: None,
    })
}

fn of_pack(measured: &Measured, play: &Play, shims: &Shims, pack: &Pack) -> (Hue, String, Length, Option<Length>) {
    let (cold, hot) = play.with(shims, pack);
    let hue = if shims.wanted.holds(cold) { Hue::Dye } else { Hue::Caution };
    (hue, pack_said(&measured.kit, pack), cold, hot)
}
