//! A threaded fastener: its thread, what its grade bears, the torque that stretches it as far as is usual, the thread it needs below it.

use std::f64::consts::FRAC_PI_4;

use super::error::FastenerError;
use crate::units::common::in_millimetres;
use crate::units::{Area, Force, Length, Pressure, System, Torque, number, unit, unit_typed};

/// A thread.
#[derive(Clone, Debug, PartialEq)]
pub struct Thread {
    /// As it is said: `M8 × 1.25`, `5/16-18`.
    pub name: String,
    /// Its outside.
    pub diameter: Length,
    /// From crest to crest.
    pub pitch: Length,
    is_inch: bool,
}

/// What a fastener may be stretched by without staying longer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grade {
    /// As it is marked.
    pub name: &'static str,
    /// Its proof stress in N/mm² up to a diameter in mm, and beyond it.
    stress: [f64; 2],
    up_to_mm: f64,
}

worded! {
    /// What a thread is cut into.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum ThreadIn {
        /// An aluminium or magnesium case.
        LightAlloy => "aluminium";
        /// Cast iron.
        Iron => "cast iron";
        /// Steel.
        Steel => "steel";
    }
    /// In words.
    pub fn word;
}

/// A fastener as it is typed in a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Fastener {
    /// What it holds.
    pub name: String,
    /// Its thread.
    pub thread: Thread,
    /// Its grade.
    pub grade: Grade,
    /// What it is screwed into.
    pub into: ThreadIn,
    /// How far it is screwed in, where that is typed.
    pub engaged: Option<Length>,
    /// Whether it is oiled.
    pub is_oiled: bool,
    /// In which order several of them are tightened, as typed; blank where that is not said.
    pub order: String,
}

/// The grades: ISO 898-1 (8.8 and up read, lower ones from memory), SAE J429 (from memory).
const GRADES: [Grade; 8] = [
    Grade { name: "4.6", stress: [225.0, 225.0], up_to_mm: 16.0 },
    Grade { name: "5.8", stress: [380.0, 380.0], up_to_mm: 16.0 },
    Grade { name: "8.8", stress: [580.0, 600.0], up_to_mm: 16.0 },
    Grade { name: "10.9", stress: [830.0, 830.0], up_to_mm: 16.0 },
    Grade { name: "12.9", stress: [970.0, 970.0], up_to_mm: 16.0 },
    Grade { name: "grade 2", stress: [55.0 * KPSI, 33.0 * KPSI], up_to_mm: 19.05 },
    Grade { name: "grade 5", stress: [85.0 * KPSI, 74.0 * KPSI], up_to_mm: 25.4 },
    Grade { name: "grade 8", stress: [120.0 * KPSI, 120.0 * KPSI], up_to_mm: 38.1 },
];
/// A thousand pounds-force on a square inch in N/mm².
const KPSI: f64 = 6.894_757;
/// Diameter and pitch in mm of the coarse threads (ISO 261, from memory).
const METRIC: [(f64, f64); 8] = [(5.0, 0.8), (6.0, 1.0), (8.0, 1.25), (10.0, 1.5), (12.0, 1.75), (14.0, 2.0), (16.0, 2.0), (20.0, 2.5)];
/// Sixteenths of an inch and turns to the inch, coarse and fine (ASME B1.1, from memory).
const INCH: [(&str, f64, f64, f64); 7] = [
    ("1/4", 4.0, 20.0, 28.0),
    ("5/16", 5.0, 18.0, 24.0),
    ("3/8", 6.0, 16.0, 24.0),
    ("7/16", 7.0, 14.0, 20.0),
    ("1/2", 8.0, 13.0, 20.0),
    ("9/16", 9.0, 12.0, 18.0),
    ("5/8", 10.0, 11.0, 18.0),
];
/// What stands before the order of tightening.
const ORDER: &str = " order ";
/// The share of the proof load that a fastener is tightened to (common practice).
pub const PROOF_SHARE: f64 = 0.75;

impl Thread {
    /// The area that bears: π/4 · (d − 0.9382 · p)², for inch threads 0.9743 · p.
    ///
    /// Source: ISO 898-1; ASME B1.1 for inch threads (from memory).
    pub fn stress_area(&self) -> Area {
        let lost = if self.is_inch { 0.9743 } else { 0.9382 };
        let across = in_millimetres(self.diameter) - lost * in_millimetres(self.pitch);
        unit::SQ_MM.of(FRAC_PI_4 * across * across)
    }

    /// The least hole in which the thread for a wire insert can be cut: d + 0.2165 · p.
    ///
    /// The insert's thread is 1.299 p wider than the fastener's, its core 1.0825 p narrower than itself (geometry of the 60° thread).
    pub fn insert_hole(&self) -> Length {
        self.diameter + self.pitch * 0.216_506
    }
}

impl ThreadIn {
    /// How many diameters a fastener must be screwed in (common practice, no published source).
    pub fn diameters(self) -> f64 {
        match self {
            Self::LightAlloy => 2.0,
            Self::Iron => 1.5,
            Self::Steel => 1.0,
        }
    }
}

impl Fastener {
    /// What it may be pulled by without staying longer.
    pub fn proof_load(&self) -> Force {
        let [slim, thick] = self.grade.stress;
        let stress: Pressure = unit::N_MM2.of(if in_millimetres(self.thread.diameter) <= self.grade.up_to_mm { slim } else { thick });
        unit::NEWTON.of((stress * self.thread.stress_area()).value)
    }

    /// What it is pulled by when tightened as is usual.
    pub fn clamp(&self) -> Force {
        self.proof_load() * PROOF_SHARE
    }

    /// The share of torque that becomes pull: 0.2 dry, 0.15 oiled (common practice, no published source; it varies by a quarter).
    pub fn friction(&self) -> f64 {
        if self.is_oiled { 0.15 } else { 0.2 }
    }

    /// T = K · F · d. Source: Shigley, *Mechanical Engineering Design*, 8-8.
    pub fn torque(&self) -> Torque {
        unit::N_M.of(self.friction() * unit::NEWTON.number(self.clamp()) * unit::METRE.number(self.thread.diameter))
    }

    /// How far it must be screwed in.
    pub fn engagement(&self) -> Length {
        self.thread.diameter * self.into.diameters()
    }

    /// Reads a line: `M8 8.8 in aluminium 16 mm`, `cover 5/16-18 grade 5 in iron oiled`, `cover M8 8.8 order 1-3-2-4`.
    ///
    /// # Errors
    /// When it names no thread or no grade that is known here.
    pub fn read(line: &str) -> Result<Self, FastenerError> {
        let (line, order) = line.split_once(ORDER).map_or((line, ""), |(line, order)| (line, order.trim()));
        let words: Vec<&str> = line.split_whitespace().map(|word| word.trim_end_matches([',', ';'])).collect();
        let fault = || line.trim().to_owned();
        let thread = words.iter().enumerate().find_map(|(at, word)| thread(word, words.get(at + 1).copied()));
        let thread = thread.ok_or_else(|| FastenerError::NoThread(fault()))?;
        let lower = line.to_lowercase();
        let grade = GRADES.into_iter().find(|grade| {
            let short = grade.name.replace("grade ", "gr");
            lower.contains(grade.name) && grade.name.starts_with('g') || words.contains(&grade.name) || words.contains(&short.as_str())
        });
        let grade = grade.ok_or_else(|| FastenerError::NoGrade(fault()))?;
        let has = |all: &[&str]| all.iter().any(|word| lower.contains(word));
        let into = if has(&["alumin", "alu", "magnes", "alloy"]) {
            ThreadIn::LightAlloy
        } else if has(&["iron"]) {
            ThreadIn::Iron
        } else {
            ThreadIn::Steel
        };
        let engaged = (0..words.len()).find_map(|at| engaged(words.get(at..)?));
        let name = name(&words);
        Ok(Self { name, thread, grade, into, engaged, is_oiled: has(&["oiled", "lubric", "greased"]), order: order.to_owned() })
    }
}

/// The length that words begin with, its unit typed: `12 mm`, `3/4in`. The `in` of `8.8 in iron` is none.
fn engaged(words: &[&str]) -> Option<Length> {
    let (first, second, third) = (words.first()?, words.get(1).copied().unwrap_or(""), words.get(2).copied().unwrap_or(""));
    if !first.starts_with(|c: char| c.is_ascii_digit() || c == '.') {
        return None;
    }
    let is_unit = second != "in" || matches!(third, "" | "deep" | "oiled" | "dry");
    let text = if first.ends_with(|c: char| c.is_ascii_digit()) && is_unit { format!("{first} {second}") } else { (*first).to_owned() };
    let ([one, other], rest) = number::leading(&text)?;
    let unit = unit_typed::<Length>(&text, System::Metric).filter(|_| !rest.trim().is_empty())?;
    Some(unit.of(one.or(other)?))
}

/// The words before the thread.
fn name(words: &[&str]) -> String {
    let before = words.iter().enumerate().take_while(|(at, word)| thread(word, words.get(at + 1).copied()).is_none());
    before.map(|(_, word)| *word).collect::<Vec<_>>().join(" ")
}

/// The thread that a word names: `M8`, `M8x1`, `5/16-18`, `5/16` before `UNC` or `UNF`.
fn thread(word: &str, next: Option<&str>) -> Option<Thread> {
    let lower = word.to_lowercase();
    if let Some(rest) = lower.strip_prefix('m').filter(|rest| rest.starts_with(|c: char| c.is_ascii_digit())) {
        let (across, pitch) = rest.split_once(['x', '×']).map_or((rest, None), |(across, pitch)| (across, Some(pitch)));
        let across = number::read_decimal(across)?;
        let (_, coarse) = METRIC.into_iter().find(|(known, _)| (known - across).abs() < 1e-9)?;
        let pitch = match pitch {
            Some(pitch) => number::read_decimal(pitch).filter(|pitch| (0.3..=3.0).contains(pitch))?,
            None => coarse,
        };
        let name = format!("M{} × {}", number::show(across, 0), crate::units::limits::shown(pitch));
        return Some(Thread { name, diameter: unit::MM.of(across), pitch: unit::MM.of(pitch), is_inch: false });
    }
    let (across, turns) = lower.split_once('-').map_or((lower.as_str(), None), |(across, turns)| (across, Some(turns)));
    let (called, sixteenths, coarse, fine) = INCH.into_iter().find(|(known, ..)| *known == across)?;
    let turns = match (turns, next.map(str::to_lowercase).as_deref()) {
        (Some(turns), _) => number::read_decimal(turns).filter(|turns| (8.0..=40.0).contains(turns))?,
        (None, Some("unf")) => fine,
        (None, Some("unc")) => coarse,
        (None, _) => return None,
    };
    let name = format!("{called}-{}", number::show(turns, 0));
    Some(Thread { name, diameter: unit::INCH.of(sixteenths / 16.0), pitch: unit::INCH.of(1.0 / turns), is_inch: true })
}
