//! One standard gear held against the readings: its helix, its profile shift, what its flanks have lost, and what each reading is off.

use super::readings::{Readings, print_give_or_take};
use crate::gearing::Mesh;
use crate::gearing::geometry::{Setting, geometry};
use crate::toothform::{CutGear, Depth, Pitch, across, pins, print, span};
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Angle, Length, unit};

/// What a residual is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    /// What the span grows by with one tooth more.
    BasePitch,
    /// The span, or the pins where there is none: how thick the teeth are for their height.
    Thickness,
    /// The reading over pins, beside a span.
    Pins,
    /// The reading over the tips: how high the teeth are for their thickness.
    Tips,
    /// The profile shift that the readings come to.
    Shift,
    /// The root diameter.
    Root,
    /// The print of the tips.
    Print,
    /// The centre distance with the mate.
    Centre,
}

/// How far off a reading is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Off {
    /// A length.
    Length(Length),
    /// An angle.
    Angle(Angle),
    /// Modules.
    Modules(f64),
}

/// A reading less what the gear would give, and how much that may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Residual {
    /// Of what.
    pub of: Reading,
    /// Read less expected.
    pub off: Off,
    /// How many times what is allowed it is off; beyond 1 it does not fit.
    pub times: f64,
}

impl Residual {
    fn length(of: Reading, off_mm: f64, allowed_mm: f64) -> Self {
        Self { of, off: Off::Length(millimetres(off_mm)), times: off_mm.abs() / allowed_mm.max(1e-9) }
    }
}

/// A standard gear and how the readings stand to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// Its pitch as it is called.
    pub pitch: Pitch,
    /// How high its teeth are.
    pub depth: Depth,
    /// The gear, with the profile shift it was cut with as far as the readings tell.
    pub gear: CutGear,
    /// Whether anything tells its profile shift.
    pub has_shift: bool,
    /// The profile shift that its flanks show now.
    pub flank_shift: Option<f64>,
    /// The tip diameter that the reading over the tips comes to.
    pub tip: Option<Length>,
    /// Over how many teeth the first span went.
    pub spanned: Option<u16>,
    /// How much less a span reads than the height of the teeth asks for: wear, and the backlash it was cut with.
    pub lost: Option<Length>,
    /// How much lower the tips are than the thickness of the teeth asks for, across the gear.
    pub cut_down: Option<Length>,
    /// What every reading is off.
    pub residuals: Vec<Residual>,
}

/// How thin teeth may have become, over a span, in modules: beyond that the readings are of another gear. Common practice.
const MOST_LOST: f64 = 0.08;
/// The same for fine teeth, where the backlash they were cut with counts for more, in mm (DIN 3967, row a at small diameters).
const MOST_LOST_MM: f64 = 0.03;
/// How much of their height tips may have lost, in modules. Common practice.
const MOST_CUT_DOWN: f64 = 0.06;
/// The profile shifts that gears of gearboxes have. Common practice.
const SHIFTS: (f64, f64) = (-0.6, 0.9);

/// What the readings come to for one cut.
struct Work<'a> {
    readings: &'a Readings,
    bare: CutGear,
    residuals: Vec<Residual>,
}

impl Candidate {
    /// A standard gear held against the readings; `None` where it can have no such helix.
    pub fn of(readings: &Readings, pitch: Pitch, depth: Depth, pressure: Angle) -> Option<Self> {
        let (helix, print_off) = helix(readings, pitch, depth)?;
        let cut = depth.cut(pitch, helix, pressure).ok()?;
        let bare = CutGear { teeth: readings.teeth, cut, shift: 0.0 };
        let mut work = Work { readings, bare, residuals: Vec::new() };
        if let Some(off) = print_off {
            let times = (off / print_give_or_take()).value.abs();
            work.residuals.push(Residual { of: Reading::Print, off: Off::Angle(off), times });
        }
        Some(work.candidate(pitch, depth))
    }

    /// How far the worst reading is off, in times of what is allowed.
    pub fn worst(&self) -> f64 {
        self.residuals.iter().map(|residual| residual.times).fold(0.0, f64::max)
    }

    /// Whether every reading fits.
    pub fn fits(&self) -> bool {
        self.worst() <= 1.0
    }

    /// The reading that is farthest off.
    pub fn worst_reading(&self) -> Option<&Residual> {
        self.residuals.iter().max_by(|a, b| a.times.total_cmp(&b.times))
    }

    /// The gear as its flanks are now.
    pub fn worn(&self) -> CutGear {
        self.gear.with_shift(self.flank_shift.unwrap_or(self.gear.shift))
    }
}

/// The helix on the pitch circle that a lead or a print shows, a whole or half degree where that is as near as the print can tell, and how
/// far the print is off it.
fn helix(readings: &Readings, pitch: Pitch, depth: Depth) -> Option<(Angle, Option<Angle>)> {
    let teeth = readings.teeth;
    if let Some(lead) = readings.lead {
        let helix = print::helix_of_lead(teeth, pitch.module(), lead)?;
        return Some((rounded(helix, unit::DEGREE.of(0.05)), None));
    }
    let Some(shown) = readings.print else { return Some((Angle::default(), None)) };
    let exact = match readings.over_tips {
        Some(tip) => print::helix_of_print(teeth, pitch.module(), shown, tip)?,
        None => print::helix_of_print_alone(teeth, shown, depth.heights().0)?,
    };
    let helix = rounded(exact, print_give_or_take() * 0.5);
    Some((helix, Some(exact - helix)))
}

/// The nearest whole degree, else the nearest half, where either lies that near.
fn rounded(helix: Angle, near: Angle) -> Angle {
    let degrees = unit::DEGREE.number(helix);
    let steps = [1.0, 2.0].map(|parts: f64| unit::DEGREE.of((degrees * parts).round() / parts));
    steps.into_iter().find(|round| (*round - helix).abs() <= near).unwrap_or(helix)
}

/// The span over one tooth more, where the first was read too.
fn more_of(readings: &Readings) -> Option<Length> {
    let [first, more] = readings.spans;
    first.and(more)
}

impl Work<'_> {
    fn candidate(mut self, pitch: Pitch, depth: Depth) -> Candidate {
        let u_mm = in_millimetres(self.readings.give_or_take);
        let tip = self.readings.over_tips.map(|read| across::tip_of(&self.bare, read, self.readings.face));
        let of_tip = tip.map(|tip| self.bare.shift_of_tip(tip));
        let (spanned, of_span) = self.spans(of_tip.unwrap_or(0.0)).unzip();
        let of_pins = self.readings.pins.map(|(pin, over)| pins::shift_of(&self.bare, pin, over));
        if of_pins == Some(None) {
            self.residuals.push(Residual { of: Reading::Pins, off: Off::Modules(f64::INFINITY), times: f64::INFINITY });
        }
        let flank_shift = of_span.or(of_pins.flatten());
        let of_root = self.readings.root.map(|root| self.bare.shift_of_root(root));
        let (mut lost, mut cut_down) = (None, None);
        let shift = match (of_tip, flank_shift) {
            (Some(of_tip), Some(of_flank)) => {
                let thinner = in_millimetres(span::thinning(&self.bare, of_tip - of_flank));
                self.thickness(thinner, &mut lost, &mut cut_down);
                of_tip.max(of_flank)
            }
            (of_tip, of_flank) => of_tip.or(of_flank).or(of_root).unwrap_or(0.0),
        };
        let has_shift = of_tip.is_some() || flank_shift.is_some() || of_root.is_some();
        let gear = self.bare.with_shift(shift);
        if has_shift {
            self.shift(shift);
        }
        self.pins_beside_span(of_span, u_mm);
        self.root(&gear, of_tip.is_some() || flank_shift.is_some(), u_mm);
        self.centre(&gear, has_shift);
        Candidate { pitch, depth, gear, has_shift, flank_shift, tip, spanned, lost, cut_down, residuals: self.residuals }
    }

    /// How many teeth were spanned, and the profile shift that the spans show; nothing where none was measured.
    fn spans(&mut self, about: f64) -> Option<(u16, f64)> {
        let u_mm = in_millimetres(self.readings.give_or_take);
        let [first, more] = self.readings.spans;
        let first = match (first, more) {
            (Some(first), _) => first,
            // A span over one tooth more alone is a span all the same.
            (None, Some(more)) => more - self.bare.base_pitch(),
            (None, None) => return None,
        };
        if let ([Some(less), Some(more)], pitch) = (self.readings.spans, self.bare.base_pitch()) {
            let off_mm = in_millimetres(more - less - pitch);
            self.residuals.push(Residual::length(Reading::BasePitch, off_mm, 2.0 * u_mm));
        }
        let over = self.readings.spanned.or_else(|| span::told(&self.bare, first, about).map(|(over, _)| over))?;
        let shift = span::shift_of(&self.bare, over, first);
        let second = more_of(self.readings).map(|more| span::shift_of(&self.bare, over + 1, more));
        Some((over, second.map_or(shift, |second| f64::midpoint(shift, second))))
    }

    /// Thinner teeth than their height asks for have lost something; thicker ones have lost height.
    fn thickness(&mut self, thinner_mm: f64, lost: &mut Option<Length>, cut_down: &mut Option<Length>) {
        let module_mm = self.bare.module_mm();
        let u_mm = in_millimetres(self.readings.give_or_take);
        let sine = self.bare.cut.pressure_rad().sin();
        if thinner_mm >= 0.0 {
            *lost = Some(millimetres(thinner_mm));
            let most_mm = MOST_LOST * module_mm + MOST_LOST_MM + u_mm * (1.0 + sine);
            self.residuals.push(Residual::length(Reading::Thickness, -thinner_mm, most_mm));
        } else {
            let lower_mm = -thinner_mm / sine;
            *cut_down = Some(millimetres(lower_mm)).filter(|_| -thinner_mm > u_mm * (1.0 + sine));
            *lost = Some(Length::default());
            let most_mm = 2.0 * MOST_CUT_DOWN * module_mm + u_mm * (1.0 + 1.0 / sine);
            self.residuals.push(Residual::length(Reading::Tips, -lower_mm, most_mm));
        }
    }

    fn shift(&mut self, shift: f64) {
        let (least, most) = SHIFTS;
        let beyond = (shift - most).max(least - shift);
        // Inside the usual ones it says nothing; outside, a tenth of a module is already much.
        let times = if beyond > 0.0 { 1.0 + beyond / 0.1 } else { 0.0 };
        self.residuals.push(Residual { of: Reading::Shift, off: Off::Modules(shift), times });
    }

    /// A reading over pins where the thickness is known from a span.
    fn pins_beside_span(&mut self, of_span: Option<f64>, u_mm: f64) {
        let (Some((pin, over)), Some(shift)) = (self.readings.pins, of_span) else { return };
        let gear = self.bare.with_shift(shift);
        let Some(expected) = pins::over_pins(&gear, pin) else { return };
        // What the span may be off moves the reading over pins by more.
        let nudged = gear.with_shift(shift + u_mm / in_millimetres(span::thinning(&gear, 1.0)));
        let carried_mm = pins::over_pins(&nudged, pin).map_or(u_mm, |nudged| in_millimetres(nudged - expected));
        self.residuals.push(Residual::length(Reading::Pins, in_millimetres(over - expected), u_mm + carried_mm));
    }

    /// The root must lie where a tool of this height leaves it.
    fn root(&mut self, gear: &CutGear, is_shift_known: bool, u_mm: f64) {
        let Some(root) = self.readings.root.filter(|_| is_shift_known) else { return };
        let (least, most) = if gear.cut.addendum() < 1.0 { Depth::Stub.dedenda() } else { Depth::Full.dedenda() };
        let dedendum = gear.dedendum_of_root(root);
        let middle = f64::midpoint(least, most);
        let module_mm = gear.module_mm();
        let off_mm = 2.0 * module_mm * (middle - dedendum);
        self.residuals.push(Residual::length(Reading::Root, off_mm, module_mm * (most - least) + 2.0 * u_mm));
    }

    /// The mate must be left a profile shift that gears have.
    fn centre(&mut self, gear: &CutGear, has_shift: bool) {
        let Some((centre, mate)) = self.readings.centre else { return };
        let mesh = Mesh { driver: gear.teeth, driven: mate };
        let setting = Setting { mesh, cut: gear.cut, centre: Some(centre), driver_shift: Some(gear.shift), face_width: None };
        let residual =
            geometry(&setting).map_or(Residual { of: Reading::Centre, off: Off::Modules(f64::INFINITY), times: f64::INFINITY }, |found| {
                let left = if has_shift { found.shift_sum - gear.shift } else { found.shift_sum / 2.0 };
                let (least, most) = SHIFTS;
                let beyond = (left - most).max(least - left);
                let times = if beyond > 0.0 { 1.0 + beyond / 0.1 } else { 0.0 };
                Residual { of: Reading::Centre, off: Off::Modules(left), times }
            });
        self.residuals.push(residual);
    }
}
