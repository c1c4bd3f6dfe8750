//! Level bars from a zero line, one to a setup or candidate: countershaft speed, a speedometer's error with the band the law allows.
use super::{
    Picture,
    face::Face,
    frame::{self, Along, Axis, Scale},
    lines::Measure,
    palette::{Colour, Hue, Theme},
    readout::{Group, ReadOut, Reading, Table},
    scene::{Anchor, Ink, Pen, Rect, Scene, Size, Text},
};
use crate::units::number::show;

/// The data of a picture of bars.
#[derive(Clone, Debug, PartialEq)]
pub struct Bars {
    /// What the picture is called.
    pub title: String,
    /// The axis along the bars, with its unit.
    pub measure: Measure,
    /// The bars from top to bottom.
    pub bars: Vec<Bar>,
    /// A stretch shaded behind the bars, for instance what the law allows.
    pub zone: Option<Zone>,
    /// The place of the setup brought forward; the others are greyed.
    pub focus: Option<usize>,
}

/// A value with its label and whose it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// Whose it is.
    pub hue: Hue,
    /// What it is; a setup's letter is put before it.
    pub name: String,
    /// How long it is; one that is not a number has no bar.
    pub value: f64,
    /// What stands behind the value, for instance `fits, 6 : 20`; may be empty.
    pub note: String,
}

/// A shaded stretch of the axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// Its lower end.
    pub least: f64,
    /// Its upper end.
    pub greatest: f64,
    /// What it is, for instance `allowed`.
    pub name: String,
    /// Its colour.
    pub hue: Hue,
}

impl Bar {
    fn full_name(&self) -> String {
        self.hue.naming(&self.name)
    }
}

/// How the picture is divided at one size.
struct Plan {
    scale: Scale,
    x: Axis,
    steps: Vec<f64>,
    /// From bar to bar, and the thickness of one.
    pitch: f64,
    thickness: f64,
    /// Where the first bar's row begins, and where the last ends.
    top: f64,
    foot: f64,
    /// The room for names at the left; none where they stand above their bars.
    names: f64,
}

impl Bars {
    fn along(&self) -> Along {
        let ends = self.measure.ends.filter(|(least, greatest)| least < greatest && (greatest - least).is_finite());
        let zone = self.zone.iter().flat_map(|zone| [zone.least, zone.greatest]);
        let values = self.bars.iter().map(|bar| bar.value).chain(zone).chain([0.0]);
        ends.map_or_else(
            || Along::covering(values, self.measure.title()),
            |(least, greatest)| Along { least, greatest, title: self.measure.title() },
        )
    }

    fn plan(&self, width: f64) -> Plan {
        let scale = Scale::of(width);
        let widest = self.bars.iter().map(|bar| Face::Text.width_px(&bar.full_name(), scale.words_px)).fold(0.0, f64::max);
        let names = if widest < 0.3 * width { widest + 12.0 } else { 0.0 };
        let along = self.along();
        let room = self.bars.iter().map(|bar| Face::Figures.width_px(&self.value_words(bar), scale.figures_px)).fold(0.0, f64::max) + 8.0;
        // Values stand beyond their bars, so bars on either side of zero want room for them there.
        let below = if self.bars.iter().any(|bar| bar.value < 0.0) { room } else { 6.0 };
        let (left, right) = (names + below, width - room);
        let x = Axis::even((along.least, left), (along.greatest, right.max(left + 1.0)));
        let steps = frame::level_steps(&along, x.length(), scale.gap_px * 1.2, scale.figures_px);
        let above = if names > 0.0 { 0.0 } else { scale.words_px + 3.0 };
        let thickness = 16.0;
        let (pitch, top) = (thickness + 14.0 + above, if self.zone.is_some() { scale.words_px + 10.0 } else { 6.0 });
        let rows = u16::try_from(self.bars.len()).unwrap_or(u16::MAX);
        Plan { scale, x, steps, pitch, thickness, top, foot: top + pitch * f64::from(rows), names }
    }

    fn value_words(&self, bar: &Bar) -> String {
        let value = show(bar.value, self.measure.decimals);
        let signed = if self.has_both_signs() && bar.value > 0.0 { format!("+{value}") } else { value };
        if bar.note.is_empty() { signed } else { format!("{signed} {}", bar.note) }
    }

    fn has_both_signs(&self) -> bool {
        let along = self.along();
        along.least < 0.0 && along.greatest > 0.0
    }

    fn draw_axis(&self, scene: &mut Scene, theme: &Theme, plan: &Plan) {
        for step in &plan.steps {
            let x = plan.x.place(*step);
            scene.rule((x, plan.top), (x, plan.foot), Pen::full(theme.rule_soft, 1.0));
            let at = (x, plan.foot + 7.0 + plan.scale.figures_px);
            let words = frame::label(*step, &plan.steps);
            scene.text(Text::new(words, at, Face::Figures, plan.scale.figures_px, theme.ink_2).anchored(Anchor::Middle));
        }
        let at = (scene.size.0 - 2.0, plan.foot + 12.0 + plan.scale.figures_px + plan.scale.words_px);
        scene.text(Text::new(self.measure.title(), at, Face::Text, plan.scale.words_px, theme.ink_2).anchored(Anchor::End));
    }

    fn draw_zone(&self, scene: &mut Scene, theme: &Theme, plan: &Plan) {
        let Some(zone) = &self.zone else { return };
        let plot = Rect::new(plan.x.from.1, plan.top, plan.x.to.1, plan.foot);
        let ends = [zone.least, zone.greatest].map(|value| plan.x.place(value).max(plot.left).min(plot.right));
        let [left, right] = ends;
        let colour = theme.hue(zone.hue, self.focus);
        scene.fill(Rect::new(left, plan.top, right, plan.foot).corners(), Ink { colour, cover: 0.13 });
        let half = Face::Text.width_px(&zone.name, plan.scale.words_px) / 2.0;
        let middle = f64::midpoint(left, right).max(half).min(scene.size.0 - half);
        let at = (middle, plan.top - 5.0);
        scene.text(Text::new(&zone.name, at, Face::Text, plan.scale.words_px, colour).anchored(Anchor::Middle));
    }

    fn draw_bar(&self, scene: &mut Scene, theme: &Theme, plan: &Plan, bar: &Bar, top: f64) {
        let colour = theme.hue(bar.hue, self.focus);
        let size = plan.scale.words_px;
        let y = top + plan.pitch - 7.0 - plan.thickness / 2.0;
        let baseline = y + size * 0.34;
        let place = if plan.names > 0.0 { (2.0, baseline) } else { (2.0, top + 4.0 + size * 0.76) };
        let face = if bar.hue.slot().is_some() { Face::Strong } else { Face::Text };
        scene.text_over(Text::new(bar.full_name(), place, face, size, colour), theme.sheet);
        if !bar.value.is_finite() {
            return;
        }
        let within = |value: f64| plan.x.place(value).max(plan.x.from.1).min(plan.x.to.1);
        let (zero, end) = (within(0.0), within(bar.value));
        let block = Rect::new(zero.min(end), y - plan.thickness / 2.0, zero.max(end), y + plan.thickness / 2.0);
        scene.fill(block.corners(), Ink { colour, cover: 0.85 });
        self.write_value(scene, bar, plan, (end, y), theme.ink);
    }

    fn write_value(&self, scene: &mut Scene, bar: &Bar, plan: &Plan, (end, y): (f64, f64), colour: Colour) {
        let size = plan.scale.figures_px;
        let (x, anchor) = if bar.value < 0.0 { (end - 6.0, Anchor::End) } else { (end + 6.0, Anchor::Start) };
        scene.text(Text::new(self.value_words(bar), (x, y + size * 0.34), Face::Figures, size, colour).anchored(anchor));
    }
}

impl Picture for Bars {
    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        let plan = self.plan(width);
        plan.foot + 18.0 + plan.scale.figures_px + plan.scale.words_px
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let plan = self.plan(size.0);
        self.draw_zone(&mut scene, theme, &plan);
        self.draw_axis(&mut scene, theme, &plan);
        let zero = plan.x.place(0.0);
        if (plan.x.from.1..=plan.x.to.1).contains(&zero) {
            scene.rule((zero, plan.top), (zero, plan.foot), Pen::full(theme.ink, 1.0));
        }
        let tops = (0..).map(|row| plan.top + plan.pitch * f64::from(row));
        for (bar, top) in self.bars.iter().zip(tops) {
            self.draw_bar(&mut scene, theme, &plan, bar, top);
        }
        scene
    }

    fn describe(&self) -> Vec<String> {
        let zone = self
            .zone
            .iter()
            .map(|zone| format!("{}: {} to {}.", zone.name, self.measure.value(zone.least), self.measure.value(zone.greatest)));
        let bar = |bar: &Bar| {
            let note = if bar.note.is_empty() { String::new() } else { format!(", {}", bar.note) };
            format!("{}: {}{note}.", bar.full_name(), self.measure.value(bar.value))
        };
        self.bars.iter().map(bar).chain(zone).collect()
    }

    fn read_out(&self, _: f64) -> ReadOut {
        let group = |bar: &Bar| {
            let reading = Reading::plain(&self.measure.name, self.measure.value(bar.value));
            Group { slot: bar.hue.slot(), name: bar.full_name(), readings: vec![reading] }
        };
        ReadOut { at: self.title.clone(), groups: self.bars.iter().map(group).collect() }
    }

    fn stops(&self) -> Vec<f64> {
        Vec::new()
    }

    fn table(&self) -> Table {
        let mut table = Table::new(["name", &self.measure.key(), "note"]);
        table.rows = self.bars.iter().map(|bar| vec![bar.full_name(), bar.value.to_string(), bar.note.clone()]).collect();
        table
    }
}
