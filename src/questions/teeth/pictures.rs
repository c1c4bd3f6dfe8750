//! The pictures of Teeth and bearings: how much more each pair bears than A's, the thrust left over, and what the bearings hold, gear by gear.

use super::answer::Thrust;
use super::bearings::Held;
use super::rows::{self, most_against_first, name, of_weakest, pairs, shaft_name};
use crate::chart::bars::{Bar, Bars};
use crate::chart::lines::Measure;
use crate::chart::palette::Hue;
use crate::gearing::GearNumber;
use crate::gearing::part::Shaft;
use crate::questions::Source;
use crate::units::{Force, Measured as _};

/// The setup that is drawn: the one brought forward, else the one with the pair that bears most more than A's, else A.
fn drawn(source: Source<'_>, focus: Option<usize>) -> usize {
    let all = source.setups.iter().enumerate().filter_map(|(slot, analysis)| Some((most_against_first(source, analysis)?.0, slot)));
    focus.or_else(|| all.reduce(|most, next| if next.0 > most.0 { next } else { most }).map(|(_, slot)| slot)).unwrap_or(0)
}

/// Pair by pair, how much more the roots of one setup bear than A's; of A itself, the share of its weakest pair.
pub fn against_first(source: Source<'_>, focus: Option<usize>) -> Option<Bars> {
    let slot = drawn(source, focus);
    let analysis = source.setups.get(slot)?;
    let value =
        |at| if slot == 0 { of_weakest(analysis, at) } else { rows::against_first(source, analysis, at).map(|[bending, _]| bending) };
    let bar = |at| Some(Bar { hue: Hue::Setup(slot), name: name(source, at), value: 100.0 * value(at)?, note: String::new() });
    let bars: Vec<Bar> = pairs(source).into_iter().filter_map(bar).collect();
    let letter = analysis.setup.letter;
    let title = if slot == 0 { format!("Bending in {letter}, of its weakest pair") } else { format!("Bending in {letter} against A") };
    let measure =
        Measure { name: if slot == 0 { "of the weakest pair" } else { "more than A" }.into(), unit: "%".into(), decimals: 0, ends: None };
    (!bars.is_empty()).then_some(Bars { title, measure, bars, zone: None, focus: Some(slot) })
}

/// The thrust left over on the countershaft, or where there is none on the output, gear by gear; above nothing away from the engine.
pub fn thrust(source: Source<'_>, focus: Option<usize>) -> Option<Bars> {
    let slot = focus.unwrap_or(0);
    let analysis = source.setups.get(slot)?;
    let thrust = &analysis.teeth().thrust;
    let has_cluster = thrust.iter().flatten().any(|thrust| thrust.shafts.iter().any(|on| on.shaft == Shaft::Countershaft));
    let shaft = if has_cluster { Shaft::Countershaft } else { Shaft::Output };
    let unit = Force::usual(source.reader.units);
    let bar = |(gear, thrust): (GearNumber, &Option<Thrust>)| {
        let thrust = thrust.as_ref()?;
        let on = thrust.shafts.iter().find(|on| on.shaft == shaft)?;
        let value = (unit.take)(&on.left);
        let value = if thrust.is_told { value } else { value.abs() };
        Some(Bar { hue: Hue::Setup(slot), name: gear.to_string(), value, note: String::new() })
    };
    let bars: Vec<Bar> = GearNumber::each(thrust).filter_map(bar).collect();
    let is_told = thrust.iter().flatten().all(|thrust| thrust.is_told);
    let (_, words) = shaft_name(shaft);
    let name = if is_told { "away from the engine" } else { "thrust" };
    let measure = Measure { name: name.into(), unit: unit.symbol.into(), decimals: 0, ends: None };
    let title = format!("Thrust left over on the {words} of {}", analysis.setup.letter);
    (!bars.is_empty()).then_some(Bars { title, measure, bars, zone: None, focus: Some(slot) })
}

/// What the two bearings of the countershaft hold across it, gear by gear.
pub fn bearings(source: Source<'_>, focus: Option<usize>) -> Option<Bars> {
    let typed = |slot: &usize| source.setups.get(*slot).is_some_and(|analysis| !analysis.teeth().bearings.is_empty());
    let slot = focus.into_iter().chain(0..source.setups.len()).find(typed)?;
    let analysis = source.setups.get(slot)?;
    let unit = Force::usual(source.reader.units);
    let bearings = analysis.teeth().bearings.first()?;
    let gears = GearNumber::each(&bearings.gears);
    let loaded = gears.filter_map(|(gear, held)| Some((gear, held.filter(Held::is_loaded)?)));
    let bar = |(gear, held): (GearNumber, Held)| {
        ["front", "rear"].into_iter().zip(held.radial).map(move |(end, radial)| Bar {
            hue: Hue::Setup(slot),
            name: format!("{gear} {end}"),
            value: (unit.take)(&radial),
            note: String::new(),
        })
    };
    let bars: Vec<Bar> = loaded.flat_map(bar).collect();
    let measure = Measure { name: "across the shaft".into(), unit: unit.symbol.into(), decimals: 0, ends: None };
    let (_, words) = shaft_name(bearings.shaft);
    let title = format!("What the bearings of the {words} hold in {}", analysis.setup.letter);
    (!bars.is_empty()).then_some(Bars { title, measure, bars, zone: None, focus: Some(slot) })
}
