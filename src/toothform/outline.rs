//! The exact form of a tooth across the shaft, as points: involute flanks, the root that the tool's rounded tip leaves, the tip.
//!
//! A rack with straight flanks and tips of radius ρ rolls without slip on the reference circle. A point of it cuts where the normal there
//! passes through the pitch point; turned back by as much as the gear has turned by then, it is a point of the gap. For helical teeth the
//! rack is cut across the shaft, its tip radius an ellipse wider by 1/cos β. Source: the law of gearing (any textbook of the theory of
//! machines); the rack of ISO 53.

use std::f64::consts::{FRAC_PI_2, PI};

use super::CutGear;
use crate::gearing::geometry::Cut;
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// A place across the shaft in mm, the axis at nothing, a tooth's middle straight up.
pub type PointMm = (f64, f64);

/// Points of a flank.
const FLANK_STEPS: u32 = 40;
/// Points of a root's half.
const ROOT_STEPS: u32 = 40;
/// Points of half the floor between two roots.
const FLOOR_STEPS: u32 = 4;
/// Points of half a tip.
const LAND_STEPS: u32 = 6;

/// The half of one tooth: radius and angle from the tooth's middle, from the middle of the gap's floor outwards to the middle of the tip.
#[derive(Clone, Debug, PartialEq)]
pub struct HalfTooth {
    /// Radii in mm and angles in rad, the angle falling from half a pitch to nothing.
    pub points: Vec<(f64, f64)>,
    /// The radius in mm at which the root ends and the involute begins.
    pub form_mm: f64,
    /// Whether the tool dug into the flank.
    pub is_undercut: bool,
}

/// The tip radius of the tool in modules where none is typed: 0.38 (ISO 53, profile A), less where the gap is too narrow for it.
pub const USUAL_TIP_RADIUS: f64 = 0.38;

/// One rounded tip of the rack: the middle of its circle and its radius, in mm, across the tooth and down from the reference line.
struct RackTip {
    across: f64,
    down: f64,
    radius: f64,
}

impl RackTip {
    fn of(cut: &Cut, radius: f64) -> Self {
        let (module, pressure) = (in_millimetres(cut.normal_module()), cut.pressure_rad());
        let depth_mm = cut.dedendum() * module;
        let across = |radius_mm: f64| PI * module / 4.0 - (depth_mm - radius_mm) * pressure.tan() - radius_mm / pressure.cos();
        // The widest radius that two flanks leave room for: then the tip is one arc.
        let most_mm = (PI * module / 4.0 - depth_mm * pressure.tan()) / (1.0 / pressure.cos() - pressure.tan());
        let radius_mm = (radius * module).clamp(0.0, most_mm.max(0.0));
        Self { across: across(radius_mm).max(0.0), down: depth_mm - radius_mm, radius: radius_mm }
    }

    /// Where its straight flank ends, in mm below the reference line.
    fn straight_mm(&self, cut: &Cut) -> f64 {
        self.down + self.radius * cut.pressure_rad().sin()
    }
}

/// How deep below its reference line the straight flanks of a rack with that tip radius go, both in modules: where they end, the involute of
/// the gear begins.
pub fn straight_depth(cut: &Cut, radius: f64) -> f64 {
    RackTip::of(cut, radius).straight_mm(cut) / in_millimetres(cut.normal_module())
}

impl HalfTooth {
    /// The form that a rack with that tip radius, in modules, cuts; the tip at `tip`.
    pub fn of(gear: &CutGear, radius: f64, tip: Length) -> Self {
        let root = Root::of(gear, radius);
        let floor_mm = root.at(0.0).0;
        let mut points: Vec<(f64, f64)> = Vec::new();
        points.extend((0..FLOOR_STEPS).map(|at| {
            let (half_pitch, begins) = (PI / gear.count(), root.at(0.0).1);
            (floor_mm, half_pitch + f64::from(at) / f64::from(FLOOR_STEPS) * (begins - half_pitch))
        }));
        points.extend((0..=ROOT_STEPS).map(|at| root.at(root.ends * f64::from(at) / f64::from(ROOT_STEPS))));
        let form_mm = root.at(root.ends).0;
        flank(gear, form_mm, in_millimetres(tip) / 2.0, &mut points);
        if let Some((tip_mm, land)) = points.last().copied() {
            points.extend((1..=LAND_STEPS).map(|at| (tip_mm, land * (1.0 - f64::from(at) / f64::from(LAND_STEPS)))));
        }
        Self { points, form_mm, is_undercut: root.is_undercut }
    }

    /// One side of the tooth, right of its middle, from the floor of the gap to the middle of the tip.
    fn side(&self, turn_rad: f64, sign: f64) -> impl DoubleEndedIterator<Item = PointMm> + '_ {
        self.points.iter().map(move |(radius_mm, angle)| {
            let at = turn_rad + sign * angle;
            (radius_mm * at.sin(), radius_mm * at.cos())
        })
    }

    /// The whole tooth from gap to gap, its middle turned clockwise from straight up.
    pub fn whole(&self, turn_rad: f64) -> Vec<PointMm> {
        self.side(turn_rad, -1.0).chain(self.side(turn_rad, 1.0).rev()).collect()
    }
}

/// The involute from where the root ends to the tip, or to where both flanks meet.
fn flank(gear: &CutGear, form_mm: f64, tip_mm: f64, points: &mut Vec<(f64, f64)>) {
    for at in 1..=FLANK_STEPS {
        // Closer together where the flank curves most, near the base circle.
        let share = (f64::from(at) / f64::from(FLANK_STEPS)).powi(2);
        let radius_mm = form_mm + share * (tip_mm.max(form_mm) - form_mm);
        let Some(half) = gear.half_tooth_rad(millimetres(2.0 * radius_mm)) else { continue };
        points.push((radius_mm, half.max(0.0)));
        if half <= 0.0 {
            return;
        }
    }
}

/// The curve that the tool's tip leaves, from the floor of the gap to the flank.
struct Root<'a> {
    gear: &'a CutGear,
    tip: RackTip,
    /// The share of the tip's arc at which it ends.
    ends: f64,
    is_undercut: bool,
}

impl<'a> Root<'a> {
    fn of(gear: &'a CutGear, radius: f64) -> Self {
        let tip = RackTip::of(&gear.cut, radius);
        // The straight flank of the rack ends so far below the rolling line; below the foot of the line of action it digs in.
        let ends_mm = tip.straight_mm(&gear.cut) - gear.shift * gear.module_mm();
        let is_undercut = ends_mm > gear.reference_mm() / 2.0 * gear.cut.transverse_pressure_rad().sin().powi(2) + 1e-12;
        let mut root = Self { gear, tip, ends: 1.0, is_undercut };
        if is_undercut {
            root.ends = root.crossing();
        }
        root
    }

    /// The point that the tip cuts at a share of its arc, 0 at the floor of the gap, 1 where the rack's flank begins.
    fn at(&self, share: f64) -> (f64, f64) {
        let helix = self.gear.cut.helix_rad();
        let turned = share * (FRAC_PI_2 - self.gear.cut.pressure_rad());
        let across_mm = (self.tip.across + self.tip.radius * turned.sin()) / helix.cos();
        let down_mm = self.tip.down + self.tip.radius * turned.cos() - self.gear.shift * self.gear.module_mm();
        let from_pitch_point_mm = down_mm * turned.tan() * helix.cos();
        let reference_mm = self.gear.reference_mm() / 2.0;
        let from_gap = (across_mm - from_pitch_point_mm) / reference_mm + from_pitch_point_mm.atan2(reference_mm - down_mm);
        (from_pitch_point_mm.hypot(reference_mm - down_mm), PI / self.gear.count() - from_gap)
    }

    /// Whether the tip takes more off at a share of its arc than the flank does.
    fn cuts_more(&self, share: f64) -> bool {
        let (radius_mm, angle) = self.at(share);
        self.gear.half_tooth_rad(millimetres(2.0 * radius_mm)).is_none_or(|half| angle <= half)
    }

    /// The share at which the curve comes out through the flank.
    fn crossing(&self) -> f64 {
        let steps = 400_u32;
        let share = |at: u32| f64::from(at) / f64::from(steps);
        let Some(first) = (0..=steps).find(|at| !self.cuts_more(share(*at))) else { return 1.0 };
        let (mut inside, mut outside) = (share(first.saturating_sub(1)), share(first));
        for _ in 0..60 {
            let middle = f64::midpoint(inside, outside);
            if self.cuts_more(middle) {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        inside
    }
}

/// Points of an arc.
const ARC_STEPS: u32 = 48;

/// An arc about the axis, angles clockwise from straight up.
pub fn arc(radius_mm: f64, from_rad: f64, to_rad: f64) -> Vec<PointMm> {
    let at = |step: u32| from_rad + (to_rad - from_rad) * f64::from(step) / f64::from(ARC_STEPS);
    (0..=ARC_STEPS).map(|step| (radius_mm * at(step).sin(), radius_mm * at(step).cos())).collect()
}

/// The whole outline of a gear, the middle of a tooth straight up.
pub fn whole_gear(gear: &CutGear, tooth: &HalfTooth) -> Vec<PointMm> {
    let pitch = 2.0 * PI / gear.count();
    (0..gear.teeth.count()).flat_map(|at| tooth.whole(f64::from(at) * pitch)).collect()
}

/// The teeth of a gear within `half_rad` of straight up, one tooth's middle turned by `turned_rad`, closed along a rim `rim` modules below the
/// roots.
pub fn sector(gear: &CutGear, tooth: &HalfTooth, turned_rad: f64, half_rad: f64, rim: f64) -> Vec<PointMm> {
    let pitch = 2.0 * PI / gear.count();
    let first = ((-half_rad - turned_rad) / pitch).ceil();
    let middles: Vec<f64> =
        (0..gear.teeth.count()).map(|at| turned_rad + (first + f64::from(at)) * pitch).take_while(|at| *at <= half_rad).collect();
    let mut outline: Vec<PointMm> = middles.iter().flat_map(|middle| tooth.whole(*middle)).collect();
    let rim_mm = (in_millimetres(gear.root_diameter()) / 2.0 - rim * gear.module_mm()).max(0.1);
    if let (Some(first), Some(last)) = (middles.first(), middles.last()) {
        outline.extend(arc(rim_mm, first - pitch / 2.0, last + pitch / 2.0).into_iter().rev());
    }
    outline
}
