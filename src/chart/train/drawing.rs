//! A train put on a scene: rods, blocks, hubs, then the labels where there is room.
use super::{Line, Shaft, Train, Wheel, layout::Plan};
use crate::chart::{
    face::Face,
    palette::{Colour, Theme},
    place::Taken,
    scene::{Anchor, Ink, Pen, Rect, Scene, Text},
};

/// Ends of shafts on one line that lie nearer than this, in slots, meet.
const MEETING: f64 = 0.2;

/// What is drawn into the block of a gear: the scene, its place in the train, the gear, its block.
pub(super) type IntoBlock<'a> = &'a dyn Fn(&mut Scene, usize, &Wheel, Rect);

pub(super) fn draw(train: &Train, scene: &mut Scene, theme: &Theme, plan: &Plan) {
    draw_over(train, scene, theme, plan, None);
}

/// As [`draw`], with something more in every block; what is written there covers it.
pub(super) fn draw_with(train: &Train, scene: &mut Scene, theme: &Theme, plan: &Plan, into_block: IntoBlock<'_>) {
    draw_over(train, scene, theme, plan, Some(into_block));
}

fn draw_over(train: &Train, scene: &mut Scene, theme: &Theme, plan: &Plan, into_block: Option<IntoBlock<'_>>) {
    let covers = into_block.is_some();
    let mut taken = Taken::new(Rect::new(0.0, 0.0, scene.size.0, scene.size.1));
    draw_rods(train, scene, theme, plan, &mut taken);
    draw_bearings(train, scene, theme, plan, &mut taken);
    draw_far_meshes(train, scene, theme, plan);
    draw_blocks(train, scene, theme, plan, &mut taken);
    for (at, wheel) in train.wheels.iter().enumerate() {
        if let (Some(into_block), Some(block)) = (into_block, plan.block(train, at, wheel)) {
            into_block(scene, at, wheel, block);
        }
    }
    draw_hubs(train, scene, theme, plan, &mut taken);
    super::forces::draw(train, scene, theme, plan, &mut taken);
    let counts = |at_wheel: (usize, &Wheel)| write_count(train, theme, plan, at_wheel, &mut taken);
    let counts: Vec<Text> = train.wheels.iter().enumerate().filter_map(counts).collect();
    let names: Vec<Text> = train.wheels.iter().enumerate().flat_map(|wheel| name_wheel(train, theme, plan, wheel, &mut taken)).collect();
    let shafts: Vec<Text> = name_shafts(train, theme, plan, scene.size.1, &mut taken);
    for count in counts {
        if covers { scene.text_over(count, theme.sheet) } else { scene.text(count) }
    }
    names.into_iter().chain(shafts).for_each(|text| scene.text(text));
}

fn draw_rods(train: &Train, scene: &mut Scene, theme: &Theme, plan: &Plan, taken: &mut Taken) {
    for shaft in &train.shafts {
        let rod = plan.rod(shaft);
        let thickness = if shaft.line == Line::Idler { plan.thickness() * 0.6 } else { plan.thickness() };
        let y = plan.y(shaft.line);
        let colour = if shaft.is_on_path { theme.hue(train.hue, None) } else { theme.ink };
        scene.rule((rod.left, y), (rod.right, y), Pen::full(colour, thickness));
        taken.keep(rod);
    }
}

/// A crossed box, as bearings are drawn, at each end of a shaft that the case holds; where two shafts meet in line, one holds the other.
fn draw_bearings(train: &Train, scene: &mut Scene, theme: &Theme, plan: &Plan, taken: &mut Taken) {
    let held = |shaft: &Shaft, end: f64| {
        let meets = |other: &Shaft| other.line == shaft.line && [other.from, other.to].iter().any(|other| (other - end).abs() < MEETING);
        !train.shafts.iter().any(|other| other != shaft && meets(other))
    };
    for shaft in train.shafts.iter().filter(|shaft| shaft.line != Line::Idler && shaft.from < shaft.to) {
        let rod = plan.rod(shaft);
        let (width, half) = (plan.thickness(), plan.thickness() / 2.0 + 4.0);
        let y = plan.y(shaft.line);
        let ends = [(shaft.from, rod.left), (shaft.to, rod.right - width)];
        for (_, left) in ends.into_iter().filter(|(end, _)| held(shaft, *end)) {
            let bearing = Rect::new(left, y - half, left + width, y + half);
            let pen = || Pen::full(theme.ink, 1.4);
            scene.fill(bearing.corners(), theme.sheet);
            scene.line(bearing.edge(), pen());
            scene.line(vec![(bearing.left, bearing.top), (bearing.right, bearing.bottom)], pen());
            scene.line(vec![(bearing.left, bearing.bottom), (bearing.right, bearing.top)], pen());
            taken.keep(bearing);
        }
    }
}

/// A dashed line joins gears that mesh out of the drawing's plane: an idler and the gear on the upper line.
fn draw_far_meshes(train: &Train, scene: &mut Scene, theme: &Theme, plan: &Plan) {
    for (one, other) in &train.meshes {
        let block = |at: &usize| plan.block(train, *at, train.wheels.get(*at)?);
        let (Some(a), Some(b)) = (block(one), block(other)) else { continue };
        let (upper, lower) = if a.top < b.top { (a, b) } else { (b, a) };
        if lower.top - upper.bottom > 2.0 {
            let x = upper.left.max(lower.left) - 5.0;
            let y = [upper.bottom - 3.0, lower.top + 3.0];
            let line = vec![(upper.left, y[0]), (x, y[0]), (x, y[1]), (lower.left, y[1])];
            scene.line(line, Pen::full(theme.ink_2, 1.2).dashed(&[3.0, 3.0]));
        }
    }
}

fn draw_blocks(train: &Train, scene: &mut Scene, theme: &Theme, plan: &Plan, taken: &mut Taken) {
    let colour = theme.hue(train.hue, None);
    let blocks = train.wheels.iter().enumerate().filter_map(|(at, wheel)| Some((wheel, plan.block(train, at, wheel)?)));
    let (on_path, off): (Vec<_>, Vec<_>) = blocks.partition(|(wheel, _)| wheel.is_on_path);
    for (_, block) in off {
        scene.line(block.edge(), Pen::full(theme.ink_3, 1.3));
        taken.keep(block);
    }
    for (_, block) in on_path {
        scene.fill(block.corners(), theme.sheet);
        scene.fill(block.corners(), Ink { colour, cover: 0.18 });
        scene.line(block.edge(), Pen::full(colour, 2.2));
        taken.keep(block);
    }
}

fn draw_hubs(train: &Train, scene: &mut Scene, theme: &Theme, plan: &Plan, taken: &mut Taken) {
    let size = plan.scale.figures_px;
    for coupling in &train.couplings {
        let width = Face::Text.width_px(&coupling.name, size);
        let Some(hub) = plan.hub(train, coupling, width) else { continue };
        let colour = if coupling.is_on_path { theme.hue(train.hue, None) } else { theme.ink };
        scene.fill(hub.corners(), theme.sheet);
        scene.line(hub.edge(), Pen::full(colour, if coupling.is_on_path { 2.2 } else { 1.4 }));
        let at = (f64::midpoint(hub.left, hub.right), f64::midpoint(hub.top, hub.bottom) + size * 0.35);
        let label = Text::new(&coupling.name, at, Face::Text, size, colour).anchored(Anchor::Middle);
        if taken.is_clear(&label.bounds()) || hub.width() > width {
            scene.text(label);
        }
        taken.keep(hub);
    }
}

/// A tooth count inside its block, away from the other shaft; outside where the block is too low.
fn write_count(train: &Train, theme: &Theme, plan: &Plan, (at, wheel): (usize, &Wheel), taken: &mut Taken) -> Option<Text> {
    let block = plan.block(train, at, wheel)?;
    let line = train.shaft_of(wheel)?.line;
    let (size, y) = (plan.scale.figures_px, plan.y(line));
    let half_rod = plan.thickness() / 2.0;
    let fits = block.height() / 2.0 - half_rod > size + 4.0;
    let baseline = match (line, fits) {
        (Line::Upper, true) => y - half_rod - 6.0,
        (Line::Upper, false) => block.top - 4.0,
        (_, true) => y + half_rod + 6.0 + size * 0.72,
        (_, false) => block.bottom + 4.0 + size * 0.72,
    };
    let count =
        Text::new(wheel.teeth.to_string(), (f64::midpoint(block.left, block.right), baseline), Face::StrongFigures, size, theme.ink);
    let count = count.anchored(Anchor::Middle);
    if !fits {
        taken.keep(count.bounds());
    }
    Some(count)
}

/// A gear's name and speed: beside it, above or below it, or its speed alone.
fn name_wheel(train: &Train, theme: &Theme, plan: &Plan, (at, wheel): (usize, &Wheel), taken: &mut Taken) -> Vec<Text> {
    let (Some(block), Some(shaft)) = (plan.block(train, at, wheel), train.shaft_of(wheel)) else { return Vec::new() };
    let colour = if wheel.is_on_path { theme.hue(train.hue, None) } else { theme.ink_2 };
    let label = Label { plan, name: &wheel.name, rpm: &wheel.rpm, colour };
    let (x, y) = (f64::midpoint(block.left, block.right), plan.y(shaft.line));
    let line = plan.scale.words_px + 1.0;
    let beside = if shaft.line == Line::Upper { y - plan.thickness() / 2.0 - 7.0 } else { y + plan.thickness() / 2.0 + 8.0 + 2.0 * line };
    let sets = [
        label.stacked((block.right + 6.0, beside), Anchor::Start),
        label.stacked((block.left - 6.0, beside), Anchor::End),
        label.stacked((x, block.top - 5.0), Anchor::Middle),
        label.stacked((x, block.bottom + 4.0 + 2.0 * line), Anchor::Middle),
        label.alone((x, block.top - 5.0)),
        label.alone((x, block.top - 5.0 - line)),
    ];
    taken.choose_set(sets)
}

struct Label<'a> {
    plan: &'a Plan,
    name: &'a str,
    rpm: &'a str,
    colour: Colour,
}

impl Label<'_> {
    /// The name over the speed, the lower line's baseline at `at`.
    fn stacked(&self, at: (f64, f64), anchor: Anchor) -> Vec<Text> {
        let scale = self.plan.scale;
        let rpm = Text::new(self.rpm, at, Face::Figures, scale.figures_px, self.colour).anchored(anchor);
        let lift = if self.rpm.is_empty() { 0.0 } else { scale.figures_px + 3.0 };
        let name = Text::new(self.name, (at.0, at.1 - lift), Face::Text, scale.words_px, self.colour).anchored(anchor);
        [name, rpm].into_iter().filter(|text| !text.words.is_empty()).collect()
    }

    /// The speed alone, or the name where there is none.
    fn alone(&self, at: (f64, f64)) -> Vec<Text> {
        let scale = self.plan.scale;
        let (words, face, size) =
            if self.rpm.is_empty() { (self.name, Face::Text, scale.words_px) } else { (self.rpm, Face::Figures, scale.figures_px) };
        vec![Text::new(words, at, face, size, self.colour).anchored(Anchor::Middle)]
    }
}

/// Each shaft's name and speed: at its end, else over it between gears; those without room share the foot of the picture.
fn name_shafts(train: &Train, theme: &Theme, plan: &Plan, foot: f64, taken: &mut Taken) -> Vec<Text> {
    let mut labels = Vec::new();
    let mut left: Vec<String> = Vec::new();
    for shaft in train.shafts.iter().filter(|shaft| !shaft.name.is_empty() || !shaft.rpm.is_empty()) {
        let colour = if shaft.is_on_path { theme.hue(train.hue, None) } else { theme.ink_2 };
        let words = format!("{} {}", shaft.name, shaft.rpm).trim().to_owned();
        let placed = taken.choose_set(shaft_forms(shaft, &words, plan, colour));
        if placed.is_empty() {
            left.push(words);
        }
        labels.extend(placed);
    }
    let at = (2.0, foot - 5.0);
    let shared = Text::new(left.join(", "), at, Face::Strong, plan.scale.words_px, theme.hue(train.hue, None));
    labels.extend((!left.is_empty() && taken.is_clear(&shared.bounds())).then_some(shared));
    labels
}

fn shaft_forms(shaft: &Shaft, words: &str, plan: &Plan, colour: Colour) -> Vec<Vec<Text>> {
    let (rod, size) = (plan.rod(shaft), plan.scale.words_px);
    let (over, under) = (rod.top - 7.0, rod.bottom + 6.0 + size * 0.75);
    let level = plan.y(shaft.line) + size * 0.35;
    let ends = [
        (Anchor::Start, rod.right + 7.0, level),
        (Anchor::End, rod.right, over),
        (Anchor::End, rod.right, under),
        (Anchor::Start, rod.left, over),
        (Anchor::Start, rod.left, under),
        (Anchor::End, rod.left - 7.0, level),
    ];
    let between = (1..40).rev().map(|part| rod.left + rod.width() * f64::from(part) / 40.0);
    let set = |words: &str, anchor, at| Text::new(words, at, Face::Strong, size, colour).anchored(anchor);
    let in_line = ends.into_iter().map(|(anchor, x, y)| vec![set(words, anchor, (x, y))]);
    let stacked = between.flat_map(|x| {
        [under, over - size - 2.0]
            .map(|y| vec![set(&shaft.name, Anchor::Middle, (x, y)), set(&shaft.rpm, Anchor::Middle, (x, y + size + 2.0))])
    });
    in_line.chain(stacked).collect()
}
