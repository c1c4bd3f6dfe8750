//! The forces on a train's gears: a ring for what goes into the drawing or out of it, arrows for what pushes apart and along.
use super::{Line, Train, layout::Plan};
use crate::chart::{
    face::Face,
    palette::Theme,
    place::Taken,
    scene::{Anchor, Pen, Point, Rect, Scene, Text},
};

/// The forces on one gear.
#[derive(Clone, Debug, PartialEq)]
pub struct Push {
    /// Its gear's place in [`Train::wheels`].
    pub wheel: usize,
    /// Along the shaft, to the right above nothing, as a share of the longest arrow; nothing where the way is not known.
    pub along: f64,
    /// Away from its mate, as a share of the longest arrow.
    pub apart: f64,
    /// Whether the force along the pitch line comes out of the drawing.
    pub is_towards: bool,
    /// As shown: along the pitch line with its unit, apart, along the shaft.
    pub words: [String; 3],
}

/// What is left over along a shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct EndThrust {
    /// Its place in [`Train::shafts`].
    pub shaft: usize,
    /// To the right above nothing; nothing where the way is not known.
    pub along: f64,
    /// As shown.
    pub words: String,
}

/// How long the longest arrow is.
const LONGEST_PX: f64 = 34.0;
/// An arrow's head, along and to either side.
const HEAD_PX: (f64, f64) = (8.0, 4.0);
/// The ring of a force across the drawing.
const RING_PX: f64 = 6.0;

impl Push {
    /// `4,619 N along the pitch line, 1,941 apart, 2,667 along the shaft`.
    pub(super) fn listed(&self) -> String {
        let [round, apart, along] = &self.words;
        format!("{round} along the pitch line, {apart} apart, {along} along the shaft")
    }

    pub(super) fn said(&self, train: &Train) -> Option<String> {
        let wheel = train.wheels.get(self.wheel)?;
        let way = match self.along {
            along if along > 0.0 => ", to the right",
            along if along < 0.0 => ", to the left",
            _ => "",
        };
        let shaft = train.shaft_of(wheel).map(|shaft| format!(" on the {}", shaft.name)).unwrap_or_default();
        Some(format!("{} teeth{shaft}: {}{way}.", wheel.teeth, self.listed()))
    }
}

impl EndThrust {
    pub(super) fn said(&self, train: &Train) -> Option<String> {
        let way = match self.along {
            along if along > 0.0 => " to the right",
            along if along < 0.0 => " to the left",
            _ => "",
        };
        train.shafts.get(self.shaft).map(|shaft| format!("{}: {}{way}.", shaft.name, self.words))
    }
}

pub(super) fn draw(train: &Train, scene: &mut Scene, theme: &Theme, plan: &Plan, taken: &mut Taken) {
    let mut labels: Vec<Text> = Vec::new();
    for push in &train.pushes {
        labels.extend(draw_push(train, push, scene, (theme, plan), taken).unwrap_or_default());
    }
    for thrust in &train.thrusts {
        labels.extend(draw_thrust(train, thrust, scene, (theme, plan), taken));
    }
    for label in labels {
        scene.text_over(label, theme.sheet);
    }
}

fn draw_push(train: &Train, push: &Push, scene: &mut Scene, (theme, plan): (&Theme, &Plan), taken: &mut Taken) -> Option<Vec<Text>> {
    let wheel = train.wheels.get(push.wheel)?;
    let block = plan.block(train, push.wheel, wheel)?;
    let is_upper = train.shaft_of(wheel)?.line == Line::Upper;
    let [round, apart, along] = &push.words;
    // Where it meshes, a little inside the gear.
    let inside = (RING_PX + 4.0).min(block.height() / 4.0);
    let y = if is_upper { block.bottom - inside } else { block.top + inside };
    let centre = (f64::midpoint(block.left, block.right), y);
    ring(scene, theme, centre, push.is_towards);
    let (edge, up) = if is_upper { (block.top, -1.0) } else { (block.bottom, 1.0) };
    let out = (centre.0, edge + up * push.apart * LONGEST_PX * 0.6);
    arrow(scene, theme, (centre.0, edge), out);
    let side = if push.along < 0.0 { block.left } else { block.right };
    let tip = (side + push.along * LONGEST_PX, y);
    if push.along.abs() > 0.02 {
        arrow(scene, theme, (side, y), tip);
        taken.keep(Rect::new(side.min(tip.0), y - 5.0, side.max(tip.0), y + 5.0));
    }
    let size = plan.scale.figures_px;
    let label = |words: &str, at: Point, anchor| Text::new(words, at, Face::Figures, size, theme.ink).anchored(anchor);
    let (right, left) = (Anchor::Start, Anchor::End);
    let (past, anchor) = if push.along < 0.0 { (tip.0 - 4.0, left) } else { (tip.0 + 4.0, right) };
    let off = if is_upper { size + 2.0 } else { -size - 2.0 };
    let beyond = if is_upper { out.1 - 3.0 } else { out.1 + size + 1.0 };
    let sets = [
        taken.choose_free([label(apart, (out.0 + 6.0, beyond), right), label(apart, (out.0, beyond), Anchor::Middle)]),
        (push.along.abs() > 0.02).then(|| taken.choose_free([label(along, (past, y + size * 0.35), anchor)])).flatten(),
        taken.choose_free([
            label(round, (block.left - 4.0, y - off), left),
            label(round, (block.right + 4.0, y - off), right),
            label(round, (block.left - 4.0, y), left),
        ]),
    ];
    Some(sets.into_iter().flatten().collect())
}

/// A ring with a point comes towards the reader, one with a cross goes away.
fn ring(scene: &mut Scene, theme: &Theme, (x, y): Point, is_towards: bool) {
    scene.disc((x, y), RING_PX + 1.0, theme.ink);
    scene.disc((x, y), RING_PX - 0.6, theme.sheet);
    if is_towards {
        return scene.disc((x, y), 2.2, theme.ink);
    }
    let half = RING_PX * 0.6;
    for sign in [-1.0, 1.0] {
        scene.line(vec![(x - half, y - sign * half), (x + half, y + sign * half)], Pen::full(theme.ink, 1.6));
    }
}

/// An arrow along one axis of the drawing.
fn arrow(scene: &mut Scene, theme: &Theme, from: Point, to: Point) {
    let length = (to.0 - from.0).hypot(to.1 - from.1);
    if length < 2.0 {
        return;
    }
    let (x, y) = ((to.0 - from.0) / length, (to.1 - from.1) / length);
    let (long, wide) = (HEAD_PX.0.min(length), HEAD_PX.1);
    let neck = (to.0 - x * long, to.1 - y * long);
    scene.line(vec![from, neck], Pen::full(theme.ink, 2.0));
    scene.fill(vec![to, (neck.0 - y * wide, neck.1 + x * wide), (neck.0 + y * wide, neck.1 - x * wide)], theme.ink);
}

/// Net thrust beside the end of its shaft that is free.
fn draw_thrust(train: &Train, thrust: &EndThrust, scene: &mut Scene, (theme, plan): (&Theme, &Plan), taken: &mut Taken) -> Option<Text> {
    let shaft = train.shafts.get(thrust.shaft)?;
    let rod = plan.rod(shaft);
    let size = plan.scale.words_px;
    let is_left = shaft.to < 0.5;
    let x = if is_left { rod.left } else { rod.right - LONGEST_PX };
    let is_upper = shaft.line == Line::Upper;
    let y = if is_upper { rod.top - 12.0 } else { rod.bottom + 12.0 };
    let ends = if thrust.along < 0.0 { ((x + LONGEST_PX, y), (x, y)) } else { ((x, y), (x + LONGEST_PX, y)) };
    if thrust.along.abs() > 0.0 {
        arrow(scene, theme, ends.0, ends.1);
        taken.keep(Rect::new(x, y - 5.0, x + LONGEST_PX, y + 5.0));
    }
    let lines = [8.0, 26.0, 44.0].map(|off| if is_upper { y - off } else { y + off + size * 0.6 });
    let anchored = |y: f64| {
        if is_left {
            Text::new(&thrust.words, (x, y), Face::Text, size, theme.ink)
        } else {
            Text::new(&thrust.words, (rod.right, y), Face::Text, size, theme.ink).anchored(Anchor::End)
        }
    };
    taken.choose_free(lines.map(anchored))
}
