//! The pictures of the inside: the gear train to scale, and the fastest countershaft of each setup.

mod turned;

pub use turned::turned;

use crate::chart::bars::{Bar, Bars};
use crate::chart::lines::Measure;
use crate::chart::palette::Hue;
use crate::chart::train::{Coupling, Line, Shaft, Train, Wheel};
use crate::gearing::part::{Part, Shaft as Axis};
use crate::gearing::speeds::{Selected, Turning, Turns};
use crate::gearing::{GearNumber, Gearbox, Layout};
use crate::job::JobChoice;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::units::AngularVelocity;
use crate::units::common::in_rpm;
use crate::units::number;

/// The place of the setup whose train is drawn: the one brought forward, else the one chosen before, else the first.
pub fn drawn(source: Source<'_>, focus: Option<usize>) -> usize {
    let chosen = source.conditions.inside.setup.and_then(|id| source.setups.iter().position(|analysis| analysis.setup.id == id));
    focus.or(chosen).unwrap_or(0)
}

/// The gear that stands at a slot of the train; none where it is the constant pair or reverse.
pub fn gear_at(gearbox: &Gearbox, slot: f64) -> Option<Selected> {
    let places = Places::of(gearbox);
    let near = |at: f64| (at - slot).abs() < 0.5;
    let gear = gearbox.numbers().find(|gear| places.gear(*gear).is_some_and(near));
    let direct = gearbox.gears().iter().position(|gear| gear.is_direct()).filter(|_| near(places.constant)).map(GearNumber::at);
    gear.or(direct).map(Selected::Gear).or_else(|| near(places.reverse).then_some(Selected::Reverse))
}

/// The gear that is chosen by pressing the train at a slot: the word that is kept for it, blank for 2nd.
pub fn pressed(source: Source<'_>, focus: Option<usize>, slot: f64) -> Option<(JobChoice, String)> {
    let analysis = source.setups.get(drawn(source, focus))?;
    let word = match gear_at(analysis.setup.gearbox.as_ref()?, slot)? {
        Selected::Gear(GearNumber::SECOND) => String::new(),
        Selected::Gear(gear) => gear.number().to_string(),
        Selected::Neutral => "n".into(),
        Selected::Reverse => "r".into(),
    };
    Some((JobChoice::InsideGear, word))
}

/// Which slot each pair stands in.
struct Places {
    constant: f64,
    gears: Vec<Option<f64>>,
    reverse: f64,
    last: f64,
}

impl Places {
    /// In line: the constant pair at its end, the gears from high to low. Two shafts: from low to high. Reverse stands last.
    fn of(gearbox: &Gearbox) -> Self {
        let meshes: Vec<usize> = gearbox.gears().iter().enumerate().filter(|(_, gear)| gear.mesh().is_some()).map(|(at, _)| at).collect();
        let first = if gearbox.layout() == Layout::InputReduced { 1.0 } else { 0.0 };
        let mut gears = vec![None; gearbox.gears().len()];
        let order: Vec<usize> = if gearbox.layout() == Layout::TwoShaft { meshes } else { meshes.into_iter().rev().collect() };
        let mut next = first;
        for gear in order {
            if let Some(place) = gears.get_mut(gear) {
                *place = Some(next);
            }
            next += 1.0;
        }
        let reverse = next;
        let after = if gearbox.reverse_gears().is_some() { next + 1.0 } else { next };
        let constant = if gearbox.layout() == Layout::OutputReduced { after } else { 0.0 };
        let last = if gearbox.layout() == Layout::OutputReduced { after } else { after - 1.0 };
        Self { constant, gears, reverse, last }
    }

    fn gear(&self, gear: GearNumber) -> Option<f64> {
        gear.of(&self.gears).copied().flatten()
    }

    /// Whether the gears of a pair stand there, as those of 5th do half way between 3rd and a direct 4th.
    fn is_taken(&self, slot: f64) -> bool {
        self.gears.iter().flatten().any(|place| (place - slot).abs() < 0.25)
    }

    fn slot(&self, part: Part) -> Option<f64> {
        match part {
            Part::Shaft(_) => None,
            Part::ConstantDriver | Part::ConstantDriven => Some(self.constant),
            Part::Driver(gear) | Part::Driven(gear) => self.gear(gear),
            Part::ReverseDriver | Part::ReverseDriven | Part::IdlerEntry | Part::IdlerExit => Some(self.reverse),
        }
    }
}

/// The gear train of one setup in the gear selected.
pub fn train(source: Source<'_>, focus: Option<usize>) -> Train {
    train_with_parts(source, focus).0
}

/// The same, and which part of the box each of its wheels is.
pub fn train_with_parts(source: Source<'_>, focus: Option<usize>) -> (Train, Vec<Part>) {
    let slot = drawn(source, focus);
    let empty = Train {
        title: "Gear train".into(),
        hue: Hue::Setup(slot),
        shafts: Vec::new(),
        wheels: Vec::new(),
        meshes: Vec::new(),
        couplings: Vec::new(),
        pushes: Vec::new(),
        thrusts: Vec::new(),
    };
    let Some(analysis) = source.setups.get(slot) else { return (empty, Vec::new()) };
    let (Some(gearbox), Some(turning), Some(at)) = (&analysis.setup.gearbox, &analysis.inside().turning, analysis.inside().at) else {
        return (empty, Vec::new());
    };
    // A train without some of its gears would show another box.
    if !gearbox.is_counted() {
        return (empty, Vec::new());
    }
    let places = Places::of(gearbox);
    let wheels = turning.parts.iter().filter_map(|turns| wheel(gearbox.layout(), &places, turns, at));
    let (parts, wheels): (Vec<Part>, Vec<Wheel>) = wheels.unzip();
    let mut shafts = shafts(gearbox, &places, turning, at);
    for shaft in &mut shafts {
        shaft.name = source.reader.words.say(&shaft.name);
    }
    let train = Train {
        title: format!("Gear train of setup {}", analysis.setup.letter),
        meshes: meshes(&parts),
        couplings: couplings(gearbox, &places, turning.selected),
        shafts,
        wheels,
        ..empty
    };
    (train, parts)
}

/// The shafts of every layout: input, output, countershaft, idler; a box without one leaves it out at the end.
fn shafts(gearbox: &Gearbox, places: &Places, turning: &Turning, at: (AngularVelocity, AngularVelocity)) -> Vec<Shaft> {
    let rpm =
        |axis: Axis| turning.part(Part::Shaft(axis)).map_or_else(String::new, |turns| number::show(in_rpm(turns.speed_at(at)).abs(), 0));
    let shaft =
        |name: &str, rpm: String, line: Line, from: f64, to: f64| Shaft { name: name.into(), rpm, line, from, to, is_on_path: false };
    let (last, low) = (places.last, -0.45);
    let idler = shaft("", String::new(), Line::Idler, places.reverse - 0.3, places.reverse + 0.3);
    let mut shafts = match gearbox.layout() {
        Layout::InputReduced => vec![
            shaft("", String::new(), Line::Upper, low, 0.12),
            shaft("output", rpm(Axis::Output), Line::Upper, 0.18, last + 0.8),
            shaft("cluster", rpm(Axis::Countershaft), Line::Lower, -0.2, last + 0.3),
        ],
        Layout::OutputReduced => vec![
            shaft("", String::new(), Line::Upper, low, last - 0.18),
            shaft("output", rpm(Axis::Output), Line::Upper, last - 0.12, last + 0.8),
            shaft("cluster", rpm(Axis::Countershaft), Line::Lower, -0.2, last + 0.3),
        ],
        Layout::TwoShaft => vec![
            shaft("input", rpm(Axis::Input), Line::Upper, low, last + 0.8),
            shaft("output", rpm(Axis::Output), Line::Lower, -0.2, last + 0.8),
        ],
    };
    if turning.part(Part::IdlerEntry).is_some() {
        if shafts.len() < 3 {
            shafts.push(shaft("", String::new(), Line::Lower, 0.0, 0.0));
        }
        shafts.push(idler);
    }
    for (at, shaft) in shafts.iter_mut().enumerate() {
        shaft.is_on_path = carries(gearbox.layout(), turning, at);
    }
    shafts
}

/// Whether power runs through one of [`shafts`]: input and output wherever a gear is engaged, the others where one of their gears is in it.
fn carries(layout: Layout, turning: &Turning, shaft: usize) -> bool {
    let engaged = turning.selected != Selected::Neutral;
    let of_gears =
        || turning.parts.iter().any(|turns| turns.in_path && turns.teeth.is_some() && shaft_of(turns.part.shaft(layout)) == shaft);
    engaged && (shaft < 2 || of_gears())
}

/// Which of `shafts` it is.
pub fn shaft_of(axis: Axis) -> usize {
    match axis {
        Axis::Input => 0,
        Axis::Output => 1,
        Axis::Countershaft => 2,
        Axis::Idler => 3,
    }
}

fn wheel(layout: Layout, places: &Places, turns: &Turns, at: (AngularVelocity, AngularVelocity)) -> Option<(Part, Wheel)> {
    let speaks = turns.loose || matches!(turns.part, Part::ConstantDriver | Part::IdlerEntry);
    let name = match turns.part {
        Part::Driver(gear) | Part::Driven(gear) if turns.loose => gear.to_string(),
        Part::ReverseDriven if layout != Layout::OutputReduced => "R".into(),
        Part::ReverseDriver if layout == Layout::OutputReduced => "R".into(),
        Part::ConstantDriver if layout == Layout::InputReduced => "input".into(),
        Part::IdlerEntry => "idler".into(),
        _ => String::new(),
    };
    let speed = in_rpm(turns.speed_at(at)).abs();
    let rpm = if speaks && speed >= 0.5 { number::show(speed, 0) } else { String::new() };
    let wheel = Wheel {
        shaft: shaft_of(turns.part.shaft(layout)),
        slot: places.slot(turns.part)?,
        teeth: u32::from(turns.teeth?.count()),
        name,
        rpm,
        is_on_path: turns.in_path,
    };
    Some((turns.part, wheel))
}

fn meshes(parts: &[Part]) -> Vec<(usize, usize)> {
    let place = |part: Part| parts.iter().position(|other| *other == part);
    let exit = if place(Part::IdlerExit).is_some() { Part::IdlerExit } else { Part::IdlerEntry };
    let pairs = parts.iter().filter_map(|part| match part {
        Part::Driver(gear) => Some((Part::Driver(*gear), Part::Driven(*gear))),
        Part::ConstantDriver => Some((Part::ConstantDriver, Part::ConstantDriven)),
        Part::ReverseDriver => Some((Part::ReverseDriver, Part::IdlerEntry)),
        Part::ReverseDriven => Some((exit, Part::ReverseDriven)),
        _ => None,
    });
    pairs.filter_map(|(one, other)| place(one).zip(place(other))).collect()
}

/// Hubs between neighbours: 1st and 2nd share one, 3rd and 4th the next.
fn couplings(gearbox: &Gearbox, places: &Places, selected: Selected) -> Vec<Coupling> {
    let line = usize::from(gearbox.layout() == Layout::InputReduced);
    let hub = |low: GearNumber| {
        let high = gearbox.numbers().nth(low.next().place());
        let slots: Vec<f64> = [Some(low), high].into_iter().flatten().map(|gear| places.gear(gear).unwrap_or(places.constant)).collect();
        let slot = match slots.as_slice() {
            [one] => *one + if gearbox.layout() == Layout::TwoShaft { 0.5 } else { -0.5 },
            [low, high] if places.is_taken(f64::midpoint(*low, *high)) => low + 0.5 * (high - low).signum(),
            several => several.iter().sum::<f64>() / f64::from(u8::try_from(several.len()).unwrap_or(1)),
        };
        let name = high.map_or_else(|| low.number().to_string(), |high| format!("{}–{}", low.number(), high.number()));
        let is_on_path = matches!(selected, Selected::Gear(gear) if gear == low || Some(gear) == high);
        Coupling { shaft: line, slot, name, is_on_path }
    };
    gearbox.numbers().step_by(2).map(hub).collect()
}

/// The fastest countershaft of each setup at the shift rpm.
pub fn countershafts(source: Source<'_>, focus: Option<usize>) -> Bars {
    let bar = |(slot, analysis): (usize, &Analysis)| {
        let peak = analysis.inside().fastest_countershaft.as_ref()?;
        Some(Bar { hue: Hue::Setup(slot), name: analysis.setup.name.clone(), value: in_rpm(peak.speed).abs(), note: String::new() })
    };
    Bars {
        title: "Fastest countershaft at the shift rpm".into(),
        measure: Measure { name: "countershaft".into(), unit: "rpm".into(), decimals: 0, ends: None },
        bars: source.setups.iter().enumerate().filter_map(bar).collect(),
        zone: None,
        focus,
    }
}
