//! What parts, gears and moments are called.

use super::answer::Noise;
use super::read::Told;
use crate::gearing::Layout;
use crate::questions::Source;
use crate::sound::by_ear::Suspect;
use crate::sound::{Origin, Pair, Race, Seat};
use crate::units::common::show_rpm;
use crate::units::{Frequency, Measured, Velocity, number, show, unit};

/// The gear with what is switched in behind it: `4th overdrive`.
pub fn stepped(noise: &Noise<'_>) -> String {
    let gear = noise.heard.selected;
    if noise.called.is_empty() { gear.to_string() } else { format!("{gear} {}", noise.called) }
}

/// A part as it stands in a sentence: `the 3rd gear pair`.
pub fn the(source: Source<'_>, told: &Told, noise: &Noise<'_>, origin: Origin) -> String {
    match origin {
        Origin::AnyBearing(_) => bare(source, told, noise, origin),
        Origin::Bearing(..) => format!("the bearing {}", bare(source, told, noise, origin)),
        _ => format!("the {}", bare(source, told, noise, origin)),
    }
}

/// A part by its name: `3rd gear pair`.
pub fn bare(source: Source<'_>, told: &Told, noise: &Noise<'_>, origin: Origin) -> String {
    match origin {
        Origin::Pair(pair) => of_pair(noise.gearbox.layout(), pair),
        Origin::Stage(at) => {
            let stages = source.job.setup(noise.analysis.setup.id).map(|setup| setup.stages.as_slice()).unwrap_or_default();
            let name = stages.get(at).map(|stage| stage.name.trim()).filter(|name| !name.is_empty());
            format!("pair of {}", name.map_or_else(|| "the extra stage".into(), |name| format!("“{}”", number::clip(name))))
        }
        Origin::FinalDrive => "ring and pinion".into(),
        Origin::Bearing(at, race) => {
            let name = told.bearings.get(at).map(|fitted| number::clip(&fitted.name)).unwrap_or_default();
            format!("“{name}”, {}", of_race(race))
        }
        Origin::AnyBearing(seat) => format!("a bearing of the {}", of_seat(seat)),
        Origin::Joint => "joints of the driveshaft".into(),
        Origin::Driveshaft => "driveshaft, once a turn".into(),
        Origin::Tyre => "tyres and wheels".into(),
        Origin::Countershaft => "cluster, once a turn".into(),
        Origin::Mainshaft => "output shaft, once a turn".into(),
        Origin::Firing => "firing of the engine".into(),
        Origin::Engine => "engine and clutch, once a turn".into(),
        Origin::ReleaseBearing => "release bearing".into(),
    }
}

fn of_pair(layout: Layout, pair: Pair) -> String {
    match pair {
        Pair::Constant if layout == Layout::OutputReduced => "output pair".into(),
        Pair::Constant => "input pair".into(),
        Pair::Gear(gear) => format!("{gear} gear pair"),
        Pair::ReverseEntry => "reverse gear and its idler".into(),
        Pair::ReverseExit => "reverse idler and its driven gear".into(),
    }
}

fn of_race(race: Race) -> &'static str {
    match race {
        Race::Outer => "outer race",
        Race::Inner => "inner race",
        Race::Element => "balls",
        Race::Cage => "cage",
    }
}

fn of_seat(seat: Seat) -> &'static str {
    match seat {
        Seat::Input => "input shaft",
        Seat::Countershaft => "cluster",
        Seat::Output => "output shaft",
        Seat::Pinion => "pinion",
        Seat::Wheel => "wheels",
    }
}

/// The name of a part's figures: `gear_3`.
pub fn key(origin: Origin) -> String {
    let race = |race: Race| match race {
        Race::Outer => "outer",
        Race::Inner => "inner",
        Race::Element => "balls",
        Race::Cage => "cage",
    };
    match origin {
        Origin::Pair(Pair::Constant) => "constant".into(),
        Origin::Pair(Pair::Gear(gear)) => format!("gear_{}", gear.number()),
        Origin::Pair(Pair::ReverseEntry) => "reverse_in".into(),
        Origin::Pair(Pair::ReverseExit) => "reverse_out".into(),
        Origin::Stage(at) => format!("stage_{}", at + 1),
        Origin::FinalDrive => "final_drive".into(),
        Origin::Bearing(at, part) => format!("bearing_{}_{}", at + 1, race(part)),
        Origin::AnyBearing(seat) => format!("bearing_of_{}", of_seat(seat).replace(' ', "_")),
        Origin::Joint => "joints".into(),
        Origin::Driveshaft => "driveshaft".into(),
        Origin::Tyre => "tyres".into(),
        Origin::Countershaft => "countershaft".into(),
        Origin::Mainshaft => "output_shaft".into(),
        Origin::Firing => "firing".into(),
        Origin::Engine => "engine".into(),
        Origin::ReleaseBearing => "release_bearing".into(),
    }
}

/// A frequency in words: `1,042 Hz`, `93.4 Hz`; of a bearing whose geometry is not known `about 130 Hz`.
pub fn hertz(suspect: &Suspect) -> String {
    let value = unit::HERTZ.number(suspect.frequency);
    if matches!(suspect.tone.origin, Origin::AnyBearing(_)) {
        return format!("about {} Hz", number::show(value, decimals(value)));
    }
    frequency(suspect.frequency)
}

/// A frequency in words.
pub fn frequency(frequency: Frequency) -> String {
    let value = unit::HERTZ.number(frequency);
    show(&frequency, &unit::HERTZ, decimals(value))
}

/// Digits behind the point of a frequency in Hz.
pub fn decimals(hertz: f64) -> usize {
    usize::from(hertz < 100.0)
}

/// `2,778 rpm`.
pub fn engine(noise: &Noise<'_>) -> String {
    format!("{} rpm", show_rpm(noise.moment.engine))
}

/// `40 mph`.
pub fn road(source: Source<'_>, noise: &Noise<'_>) -> Option<String> {
    let unit = Velocity::usual(source.reader.units);
    noise.road.map(|road| {
        let value = unit.number(road);
        let whole = (value - value.round()).abs() < 0.05;
        show(&road, unit, usize::from(!whole))
    })
}
