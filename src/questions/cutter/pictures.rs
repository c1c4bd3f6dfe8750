//! The pictures of For the cutter: the gear in mesh with its mate, to scale, and one tooth as the rack leaves it.

use std::f64::consts::PI;

use super::answer::{Order, tips};
use crate::chart::own_size::OwnSize;
use crate::chart::palette::Hue;
use crate::chart::shapes::{Body, Guide, Laid, Shapes};
use crate::chart::turning::Turning;
use crate::questions::Source;
use crate::questions::measure::said::{bare, length};
use crate::toothform::outline::{HalfTooth, PointMm, arc, sector, whole_gear};
use crate::toothform::split::Shared;
use crate::toothform::{CutGear, span};
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Length, Measured as _, number};

/// How deep the rims are drawn below the roots, in modules.
const RIM: f64 = 1.1;
/// How many pitches are drawn to either side of where they mesh.
const PITCHES: f64 = 2.4;

struct Scale<'a> {
    source: Source<'a>,
    /// What one mm is of the reader's unit.
    per_mm: f64,
}

impl<'a> Scale<'a> {
    fn of(source: Source<'a>) -> Self {
        Self { source, per_mm: (Length::usual(source.reader.units).take)(&millimetres(1.0)) }
    }

    fn place(&self, (x, y): PointMm) -> (f64, f64) {
        (x * self.per_mm, y * self.per_mm)
    }

    fn all(&self, points: Vec<PointMm>) -> Vec<(f64, f64)> {
        points.into_iter().map(|point| self.place(point)).collect()
    }

    fn shapes(&self, title: &str, says: String) -> Shapes {
        Shapes { title: title.into(), unit: Length::usual(self.source.reader.units).symbol.into(), says: vec![says], ..Shapes::default() }
    }

    fn guide(&self, name: &str, diameter: Length, half_rad: f64) -> Guide {
        let points = arc(in_millimetres(diameter) / 2.0, -half_rad, half_rad);
        Guide { name: format!("{name} {}", bare(self.source, diameter)), points: self.all(points) }
    }
}

/// The gear below, its mate above, and where their flanks touch; the tooth alone where there is no mate.
pub fn in_mesh(source: Source<'_>) -> Option<Shapes> {
    let order = Order::of(&source.job.bench)?;
    let Some(shared) = order.pair.as_ref() else { return tooth(source) };
    let (_, _, radius) = order.rack.sizes();
    let scale = Scale::of(source);
    let centre_mm = in_millimetres(shared.geometry.centre);
    let [one, two] = shared.gears;
    let [_, tip2] = tips(shared);
    let [half1, half2] = [&one, &two].map(|gear| working_half_rad(gear, shared));
    let [pitch1, pitch2] = [&one, &two].map(|gear| 2.0 * PI / gear.count());
    // A tooth of the first stands in the middle; the second's right neighbour leans on its right flank.
    let turned = half1 * one.count() / two.count() + half2;
    let below = sector(&one, &order.tooth(&one), 0.0, PITCHES * pitch1, RIM);
    let above = sector(&two, &HalfTooth::of(&two, radius, tip2), turned, PITCHES * pitch2, RIM);
    let above = above.into_iter().map(|(x, y)| (x, centre_mm - y)).collect();
    let contacts = contacts(&one, shared, half1);
    let ratio = number::show(shared.geometry.transverse_contact_ratio, 2);
    let says = format!(
        "{} teeth below, {} above, {} apart. Blue is where they touch: {ratio} teeth on average. Drag along the picture to turn them.",
        one.teeth,
        two.teeth,
        length(source, shared.geometry.centre)
    );
    let mut shapes = scale.shapes("The pair in mesh, to scale", says);
    shapes.bodies = vec![
        Body { name: "mate".into(), hue: Hue::Muted, outline: scale.all(above) },
        Body { name: "gear".into(), hue: Hue::Dye, outline: scale.all(below) },
    ];
    let [working, _] = shared.geometry.working_diameters;
    shapes.guides = vec![scale.guide("working", working, PITCHES * pitch1)];
    shapes.laid = vec![Laid { points: scale.all(line_of_contact(shared)) }];
    shapes.contacts = scale.all(contacts);
    shapes.turning = Some(turning(&scale, &shapes, shared));
    Some(shapes)
}

/// The pair turning as a finger draws it along: the pitch line goes with the finger, one gear below it, the other above.
fn turning(scale: &Scale, shapes: &Shapes, shared: &Shared) -> Turning {
    let [one, _] = shared.gears;
    let [lower, upper] = shared.geometry.working_diameters.map(|diameter| scale.place((in_millimetres(diameter) / 2.0, 0.0)).0);
    let outlines = || shapes.bodies.iter().flat_map(|body| body.outline.iter().copied());
    let corner = |pick: fn(f64, f64) -> f64| outlines().reduce(|a, b| (pick(a.0, b.0), pick(a.1, b.1))).unwrap_or_default();
    let pitch = 2.0 * PI * lower / one.count();
    Turning {
        // The mate is drawn first, above: its lowest tooth goes to the right where it turns against the clock.
        axes: vec![(scale.place((0.0, in_millimetres(shared.geometry.centre))), -upper.recip()), ((0.0, 0.0), lower.recip())],
        pitch,
        line: [-in_millimetres(shared.geometry.path_of_approach), in_millimetres(shared.geometry.path_of_recess)]
            .map(|along| scale.place(along_line(shared, along))),
        touch_apart: pitch * shared.geometry.working_pressure_rad.cos(),
        frame: [corner(f64::min), corner(f64::max)],
    }
}

/// Half the angle of a tooth on the working circle.
fn working_half_rad(gear: &CutGear, shared: &Shared) -> f64 {
    let diameter = gear.base_diameter() / shared.geometry.working_pressure_rad.cos();
    gear.half_tooth_rad(diameter).unwrap_or(0.0)
}

/// A point so far from the pitch point along the line on which the flanks touch.
fn along_line(shared: &Shared, along_mm: f64) -> PointMm {
    let working = shared.geometry.working_pressure_rad;
    let [first, _] = shared.geometry.working_diameters;
    (along_mm * working.cos(), in_millimetres(first) / 2.0 + along_mm * working.sin())
}

fn line_of_contact(shared: &Shared) -> Vec<PointMm> {
    let ends = [-in_millimetres(shared.geometry.path_of_approach), in_millimetres(shared.geometry.path_of_recess)];
    ends.into_iter().map(|along| along_line(shared, along)).collect()
}

/// Where right flanks of the first gear touch the second.
fn contacts(one: &CutGear, shared: &Shared, half_rad: f64) -> Vec<PointMm> {
    let base_mm = in_millimetres(one.base_diameter()) / 2.0;
    let pitch_mm = 2.0 * PI * base_mm / one.count();
    let [from, to] = [-in_millimetres(shared.geometry.path_of_approach), in_millimetres(shared.geometry.path_of_recess)];
    let each = (-4_i32..=4).map(|tooth| base_mm * half_rad + f64::from(tooth) * pitch_mm);
    each.filter(|along| (from..=to).contains(along)).map(|along| along_line(shared, along)).collect()
}

/// One tooth with its neighbours' roots.
pub fn tooth(source: Source<'_>) -> Option<Shapes> {
    let order = Order::of(&source.job.bench)?;
    let scale = Scale::of(source);
    let gear = &order.gear;
    let half = order.tooth(gear);
    let pitch = 2.0 * PI / gear.count();
    let undercut = if half.is_undercut { " The tool digs into the flank." } else { "" };
    let form = length(source, millimetres(2.0 * half.form_mm));
    let mut shapes = scale.shapes("The tooth across the shaft, to scale", format!("The involute begins on a circle of {form}.{undercut}"));
    shapes.bodies = vec![Body { name: "gear".into(), hue: Hue::Dye, outline: scale.all(sector(gear, &half, 0.0, 1.2 * pitch, 0.6)) }];
    let circles =
        [("tip", order.tip), ("pitch", gear.reference_diameter()), ("base", gear.base_diameter()), ("root", gear.root_diameter())];
    shapes.own_size = Some(own_size(source, &order));
    shapes.guides = circles.into_iter().map(|(name, diameter)| scale.guide(name, diameter, 1.2 * pitch)).collect();
    Some(shapes)
}

/// The whole gear, as thick as the middle of its limits.
fn own_size(source: Source<'_>, order: &Order) -> OwnSize {
    let [upper, lower] = order.own_thinner();
    let middle = (upper + lower) * 0.5;
    let gear = order.thinned(middle);
    let span = length(source, span::over_teeth(&order.gear, order.over) - middle);
    OwnSize {
        title: format!("{} teeth, across the shaft, {span} over {} teeth: the middle of its limits.", gear.teeth, order.over),
        outline: whole_gear(&gear, &order.tooth(&gear)),
    }
}
