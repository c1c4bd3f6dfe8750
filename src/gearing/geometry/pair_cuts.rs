//! Pairs that are cut otherwise than the rest of their box: `1st 8 DP 0°; reverse 7 DP; 2nd x 0.3; 3rd left; 4th face 14 mm`.
//!
//! Old boxes have a spur first gear and a coarser reverse beside helical upper gears; each pair then takes the one centre distance by
//! a pitch, a helix and a share of profile shift of its own.

use super::cut::{Cut, CutError};
use super::hand::Hand;
use crate::gearing::GearNumber;
use crate::gearing::part::Part;
use crate::units::{Angle, Length, System, Typed, limits, number, unit};

/// Where a pair of the box sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PairAt {
    /// Between input or output and countershaft.
    Constant,
    /// A forward gear.
    Gear(GearNumber),
    /// The gears of reverse, idler included.
    Reverse,
}

impl PairAt {
    /// The pair of a forward gear, or the constant pair.
    pub fn of_gear(gear: Option<GearNumber>) -> Self {
        gear.map_or(Self::Constant, Self::Gear)
    }

    /// The pair that a part is of; none for a shaft.
    pub fn of(part: Part) -> Option<Self> {
        match part {
            Part::Shaft(_) => None,
            Part::ConstantDriver | Part::ConstantDriven => Some(Self::Constant),
            Part::Driver(gear) | Part::Driven(gear) => Some(Self::Gear(gear)),
            Part::ReverseDriver | Part::ReverseDriven | Part::IdlerEntry | Part::IdlerExit => Some(Self::Reverse),
        }
    }
}

/// What of a pair is cut otherwise; what is none is as everywhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PairCut {
    /// Whose cut it is.
    pub at: PairAt,
    /// Its normal module.
    pub module: Option<Length>,
    /// Its helix angle, without its hand. Where it is none, reverse is straight: its idler slides into mesh (common practice, no published
    /// source).
    pub helix: Option<Angle>,
    /// Its normal pressure angle.
    pub pressure: Option<Angle>,
    /// The profile shift of its driving gear, in normal modules.
    pub driver_shift: Option<f64>,
    /// The hand of its gear on the countershaft; of a two-shaft box, on the input shaft.
    pub hand: Option<Hand>,
    /// Its face width.
    pub face: Option<Length>,
}

impl PairCut {
    /// The cut of the pair, beside that of the rest.
    ///
    /// # Errors
    /// When the two together make none that a gearbox has.
    pub fn over(&self, rest: &Cut) -> Result<Cut, CutError> {
        let module = self.module.unwrap_or_else(|| rest.normal_module());
        let usual_helix = || if self.at == PairAt::Reverse { Angle::default() } else { rest.helix() };
        let cut = Cut::new(module, self.helix.unwrap_or_else(usual_helix), self.pressure.unwrap_or_else(|| rest.pressure()))?;
        Ok(cut.with_heights(rest.addendum(), rest.dedendum()))
    }

    /// A pair of which nothing is said.
    pub fn nothing(at: PairAt) -> Self {
        Self { at, module: None, helix: None, pressure: None, driver_shift: None, hand: None, face: None }
    }
}

/// Why a text says nothing of a pair.
#[derive(Clone, Debug, PartialEq)]
pub enum PairCutError {
    /// It does not begin with a gear of the box: what was typed.
    NoGear(String),
    /// It names a gear and nothing that is cut otherwise: what was typed.
    Nothing(String),
    /// A word that is no pitch, angle or profile shift: the word.
    NotUnderstood(String),
    /// A pitch or an angle that no gearbox has.
    Cut(CutError),
    /// A face width that no gear has: what was typed.
    Face(String),
    /// A profile shift that no gear has: the shift.
    Shift(f64),
}

/// What to type where a text does not tell how a pair is cut.
const AS_CUT: &str = "type a gear with its pitch, helix, pressure angle or x for profile shift, such as 1st 8 DP 0°; R 7 DP; 2nd x 0.3";

explain! { PairCutError:
    Self::NoGear(text) => format!("“{}” does not begin with a gear of this box", number::clip(text)), AS_CUT;
    Self::Nothing(text) => format!("“{}” does not say what is cut otherwise", number::clip(text)), AS_CUT;
    Self::NotUnderstood(text) => format!("“{}” is no pitch, angle or profile shift", number::clip(text)), AS_CUT;
    Self::Cut(why) => why.what(), why.what_to_do();
    Self::Face(text) => format!("“{}” cannot be a face width", number::clip(text)),
        format!("type {} behind face, such as 2nd face 18 mm", limits::FACE_WIDTH.range());
    Self::Shift(given) => format!("a profile shift of {} cannot be", number::show(*given, 2)),
        "type the shift of the driving gear in modules, from -1.5 to 1.5";
}

/// Reads what is cut otherwise, pair by pair, separated by semicolons; bare pitches are meant as `system` has them.
///
/// Of a pair that stands twice the last word counts.
///
/// # Errors
/// For the first of the pairs that cannot be read, with what was typed of it.
pub fn read(text: &str, system: System, gears: usize) -> Result<Vec<PairCut>, PairCutError> {
    let parts = text.split([';', '\n']).map(str::trim).filter(|part| !part.is_empty());
    parts.map(|part| one(part, system, gears)).collect()
}

fn one(part: &str, system: System, gears: usize) -> Result<PairCut, PairCutError> {
    let lower = part.to_ascii_lowercase().replace([':', '='], " ");
    let mut words = lower.split_whitespace().peekable();
    let at = words.next().and_then(|word| pair_named(word, gears)).ok_or_else(|| PairCutError::NoGear(part.to_owned()))?;
    let mut cut = PairCut::nothing(at);
    let mut number = String::new();
    while let Some(word) = words.next() {
        if word == "face" {
            pitch_of(&mut cut, &mut number, "", system)?;
            let unit = |next: &&str| matches!(*next, "mm" | "in" | "\"");
            let typed = [words.next().unwrap_or_default(), words.next_if(unit).unwrap_or_default()].join(" ");
            cut.face = Some(face(typed.trim(), system)?);
        } else {
            take(&mut cut, &mut number, word, system)?;
        }
    }
    pitch_of(&mut cut, &mut number, "", system)?;
    if cut == PairCut::nothing(at) { Err(PairCutError::Nothing(part.to_owned())) } else { Ok(cut) }
}

fn face(typed: &str, system: System) -> Result<Length, PairCutError> {
    Typed::new(typed, system).read(&limits::FACE_WIDTH).map_err(|_| PairCutError::Face(typed.to_owned()))
}

/// `1`, `1st`, `input`, `r`.
pub(crate) fn pair_named(word: &str, gears: usize) -> Option<PairAt> {
    match word {
        "r" | "rev" | "reverse" => return Some(PairAt::Reverse),
        "input" | "constant" | "c" => return Some(PairAt::Constant),
        _ => {}
    }
    let digits = word.trim_end_matches(char::is_alphabetic);
    let is_ordinal = matches!(word.strip_prefix(digits), Some("" | "st" | "nd" | "rd" | "th"));
    GearNumber::read(digits).filter(|gear| is_ordinal && gear.place() < gears).map(PairAt::Gear)
}

/// Takes a word; a bare number waits in `number` for the unit that may follow it.
fn take(cut: &mut PairCut, number: &mut String, word: &str, system: System) -> Result<(), PairCutError> {
    let not_understood = || PairCutError::NotUnderstood(word.to_owned());
    if number == "x" || word.starts_with('x') {
        let (waiting, shift) = (number == "x", word.strip_prefix('x').unwrap_or(word));
        if !waiting {
            pitch_of(cut, number, "", system)?;
        }
        number.clear();
        if shift.is_empty() {
            number.push('x');
            return Ok(());
        }
        let shift = shift.replace(',', ".").replace('−', "-").parse::<f64>().map_err(|_| not_understood())?;
        cut.driver_shift = Some(Some(shift).filter(|shift| shift.abs() <= 1.5).ok_or(PairCutError::Shift(shift))?);
        return Ok(());
    }
    if let Some(degrees) = word.strip_suffix('°').or_else(|| word.strip_suffix("deg")) {
        let typed = if degrees.is_empty() { std::mem::take(number) } else { degrees.to_owned() };
        return angle(cut, typed_angle(&typed).ok_or_else(not_understood)?);
    }
    if matches!(word, "left" | "lh" | "right" | "rh") {
        cut.hand = Hand::read(word);
        return pitch_of(cut, number, "", system);
    }
    if matches!(word, "straight" | "spur") {
        cut.helix = Some(Angle::default());
        return Ok(());
    }
    if word.starts_with(|c: char| c.is_ascii_digit()) {
        pitch_of(cut, number, "", system)?;
        word.clone_into(number);
        return Ok(());
    }
    pitch_of(cut, number, word, system)
}

/// The first angle is the helix, a second one the pressure angle.
fn angle(cut: &mut PairCut, angle: Angle) -> Result<(), PairCutError> {
    if cut.helix.is_some() {
        let is_usual = limits::PRESSURE_ANGLE.allow(angle);
        cut.pressure = Some(angle).filter(|_| is_usual);
        return if is_usual { Ok(()) } else { Err(PairCutError::Cut(CutError::Pressure(angle))) };
    }
    let is_usual = limits::HELIX.allow(angle.abs());
    cut.helix = Some(angle.abs()).filter(|_| is_usual);
    if is_usual { Ok(()) } else { Err(PairCutError::Cut(CutError::Helix(angle))) }
}

fn typed_angle(typed: &str) -> Option<Angle> {
    let degrees = typed.replace(',', ".").replace('−', "-").parse::<f64>().ok().filter(|degrees| degrees.is_finite())?;
    Some(unit::DEGREE.of(degrees))
}

/// The pitch that a waiting number is, with the unit behind it; nothing where none waits.
fn pitch_of(cut: &mut PairCut, number: &mut String, unit: &str, system: System) -> Result<(), PairCutError> {
    let typed = std::mem::take(number);
    if typed.is_empty() && unit.is_empty() {
        return Ok(());
    }
    let text = if unit == "m" || unit == "module" { format!("{typed} mm") } else { format!("{typed} {unit}") };
    cut.module = Some(Cut::read_module(&text, system).map_err(PairCutError::Cut)?);
    Ok(())
}
