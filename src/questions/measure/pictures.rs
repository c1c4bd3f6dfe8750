//! The pictures of Measure a gear: its teeth across the shaft to scale, with the jaws over several of them, or two pins in their gaps.

use std::f64::consts::PI;

use super::answer::Known;
use super::read::Measured;
use super::said;
use crate::chart::palette::Hue;
use crate::chart::shapes::{Body, Guide, Laid, Shapes};
use crate::questions::Source;
use crate::toothform::known::Candidate;
use crate::toothform::outline::{HalfTooth, USUAL_TIP_RADIUS, arc, sector};
use crate::toothform::{pins, span};
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Length, Measured as _};

/// How deep the rim is drawn below the roots, in modules.
const RIM: f64 = 1.1;
/// Points of a pin's circle.
const ARC_STEPS: u32 = 48;

/// A gear that is drawn, in the reader's unit.
struct Drawn<'a> {
    source: Source<'a>,
    best: &'a Candidate,
    /// Half the angle that is drawn, in rad.
    half_rad: f64,
    /// What one mm is of the reader's unit.
    per_mm: f64,
}

/// The teeth with the jaws over several of them.
pub fn spanned(source: Source<'_>) -> Option<Shapes> {
    let known = Known::of_measured(&Measured::of(&source.job.bench))?;
    let best = known.best()?;
    let over = best.spanned.unwrap_or_else(|| span::teeth_to_span(&best.gear));
    let gear = best.worn();
    let pitch = 2.0 * PI / gear.count();
    let drawn = Drawn::of(source, best, (f64::from(over) / 2.0 + 1.2) * pitch);
    // An odd span stands about the middle of a tooth, an even one about that of a gap.
    let turned = if over.is_multiple_of(2) { pitch / 2.0 } else { 0.0 };
    let read = span::over_teeth(&gear, over);
    let half_mm = in_millimetres(read) / 2.0 / gear.base_helix_rad().cos();
    let base_mm = in_millimetres(gear.base_diameter()) / 2.0;
    let jaw_mm = 1.3 * in_millimetres(gear.cut.normal_module());
    let tip_mm = in_millimetres(best.tip.unwrap_or_else(|| gear.tip_diameter())) / 2.0;
    let jaw = |x: f64| drawn.laid(&[(x, base_mm - jaw_mm), (x, tip_mm + jaw_mm)]);
    let laid = vec![drawn.laid(&[(-half_mm, base_mm), (half_mm, base_mm)]), jaw(-half_mm), jaw(half_mm)];
    let says = format!("Jaws over {over} teeth: {}. Blue is where they touch.", said::length(source, read));
    Some(drawn.shapes("Teeth to scale, with the jaws of the span", turned, laid, &[(-half_mm, base_mm), (half_mm, base_mm)], says))
}

/// The teeth with the upper of two pins in its gap: the pin that was laid in, or the usual one where that does not lie on the flanks.
pub fn pinned(source: Source<'_>) -> Option<Shapes> {
    let known = Known::of_measured(&Measured::of(&source.job.bench))?;
    let best = known.best()?;
    let gear = best.worn();
    let typed = known.readings.pins.map(|(pin, _)| pin);
    let laid = typed.into_iter().chain([pins::usual_pin(&gear)]).find_map(|pin| Some((pin, pins::lay(&gear, pin).ok()?)));
    let pitch = 2.0 * PI / gear.count();
    let drawn = Drawn::of(source, best, 2.2 * pitch);
    let title = "Teeth to scale, with a pin in its gap";
    let Some((pin, at)) = laid else {
        return Some(drawn.shapes(title, pitch / 2.0, Vec::new(), &[], "No usual pin lies on these flanks.".into()));
    };
    let [centre_mm, radius_mm] = [at.centres, pin].map(|length| in_millimetres(length) / 2.0);
    let circle: Vec<(f64, f64)> = (0..=ARC_STEPS)
        .map(|step| 2.0 * PI * f64::from(step) / f64::from(ARC_STEPS))
        .map(|turn| (radius_mm * turn.sin(), centre_mm + radius_mm * turn.cos()))
        .collect();
    // Across the shaft it touches where the gap is as wide as the flank is far from its middle.
    let touches_mm = in_millimetres(at.touches) / 2.0;
    let off = PI / gear.count() - gear.half_tooth_rad(at.touches).unwrap_or(0.0);
    let contact = |sign: f64| (sign * touches_mm * off.sin(), touches_mm * off.cos());
    let says = format!("Over two pins of {}: {}. Blue is where the pin touches.", said::length(source, pin), said::length(source, at.over));
    Some(drawn.shapes(title, pitch / 2.0, vec![drawn.laid(&circle)], &[contact(-1.0), contact(1.0)], says))
}

impl<'a> Drawn<'a> {
    fn of(source: Source<'a>, best: &'a Candidate, half_rad: f64) -> Self {
        let per_mm = (Length::usual(source.reader.units).take)(&millimetres(1.0));
        Self { source, best, half_rad: half_rad.min(PI * 0.45), per_mm }
    }

    fn place(&self, (x, y): (f64, f64)) -> (f64, f64) {
        (x * self.per_mm, y * self.per_mm)
    }

    fn laid(&self, points: &[(f64, f64)]) -> Laid {
        Laid { points: points.iter().map(|point| self.place(*point)).collect() }
    }

    /// The teeth between both ends of the sector, closed along the rim.
    fn body(&self, turned: f64) -> Body {
        let gear = self.best.worn();
        let tip = self.best.tip.unwrap_or_else(|| gear.tip_diameter());
        let tooth = HalfTooth::of(&gear, USUAL_TIP_RADIUS, tip);
        let outline = sector(&gear, &tooth, turned, self.half_rad, RIM);
        Body { name: "gear".into(), hue: Hue::Dye, outline: outline.into_iter().map(|point| self.place(point)).collect() }
    }

    fn guide(&self, name: &str, diameter: Length) -> Guide {
        let points = arc(in_millimetres(diameter) / 2.0, -self.half_rad, self.half_rad);
        let name = format!("{name} {}", said::bare(self.source, diameter));
        Guide { name, points: points.into_iter().map(|point| self.place(point)).collect() }
    }

    fn shapes(&self, title: &str, turned: f64, laid: Vec<Laid>, contacts: &[(f64, f64)], says: String) -> Shapes {
        let gear = self.best.worn();
        let tip = self.best.tip.unwrap_or_else(|| gear.tip_diameter());
        Shapes {
            title: title.into(),
            unit: Length::usual(self.source.reader.units).symbol.into(),
            bodies: vec![self.body(turned)],
            guides: vec![self.guide("tip", tip), self.guide("pitch", gear.reference_diameter()), self.guide("root", gear.root_diameter())],
            laid,
            contacts: contacts.iter().map(|contact| self.place(*contact)).collect(),
            says: vec![says],
            ..Shapes::default()
        }
    }
}
