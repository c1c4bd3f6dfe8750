//! Level spans on one axis, a row each: what a tolerance allows against what was measured.
use super::{
    Picture,
    face::Face,
    frame::{self, Along, Axis, Scale},
    lines::Measure,
    palette::{Hue, Theme},
    readout::{Group, ReadOut, Reading, Table},
    scene::{Anchor, Ink, Pen, Scene, Size, Text},
};
use crate::units::number::show;

/// The data of a picture of spans.
#[derive(Clone, Debug, PartialEq)]
pub struct Spans {
    /// What the picture is called.
    pub title: String,
    /// What the axis measures.
    pub measure: Measure,
    /// The spans from top to bottom.
    pub spans: Vec<Span>,
}

/// One span.
#[derive(Clone, Debug, PartialEq)]
pub struct Span {
    /// Its colour.
    pub hue: Hue,
    /// What it is.
    pub name: String,
    /// Its lower end.
    pub least: f64,
    /// Its upper end.
    pub greatest: f64,
    /// Points on it, for instance readings; none where the whole of it is meant.
    pub marks: Vec<f64>,
}

/// The thickness of a span.
const THICK_PX: f64 = 16.0;
/// Between a row and the next.
const GAP_PX: f64 = 12.0;

impl Span {
    /// Whether its ends can be drawn.
    fn is_drawn(&self) -> bool {
        self.least.is_finite() && self.greatest.is_finite()
    }
}

/// How the picture is divided at one size.
struct Plan {
    scale: Scale,
    x: Axis,
    steps: Vec<f64>,
    pitch: f64,
    foot: f64,
}

impl Spans {
    fn plan(&self, width: f64) -> Plan {
        let scale = Scale::of(width);
        let ends = self.spans.iter().flat_map(|span| [span.least, span.greatest]);
        let along = Along::closely(ends.chain([0.0]), self.measure.title());
        // The number at either end of the axis is as wide as its digits.
        let side = Face::Figures.width_px(&show(along.greatest.abs().max(along.least.abs()), 2), scale.figures_px) / 2.0 + 8.0;
        let x = Axis::even((along.least, side), (along.greatest, (width - side).max(side + 1.0)));
        let steps = frame::level_steps(&along, x.length(), scale.gap_px, scale.figures_px);
        // The name stands above its span, the ends beside the name.
        let pitch = scale.words_px + 4.0 + THICK_PX + GAP_PX;
        let rows = u16::try_from(self.spans.len()).unwrap_or(u16::MAX);
        Plan { scale, x, steps, pitch, foot: 4.0 + pitch * f64::from(rows) }
    }

    fn ends(&self, span: &Span) -> String {
        let [least, greatest] = [span.least, span.greatest].map(|end| crate::units::number::show_signed(end, self.measure.decimals));
        if least == greatest { least } else { format!("{least} to {greatest}") }
    }

    fn draw_axis(&self, scene: &mut Scene, theme: &Theme, plan: &Plan) {
        for step in &plan.steps {
            let x = plan.x.place(*step);
            let pen = if *step == 0.0 { Pen::full(theme.ink, 1.0) } else { Pen::full(theme.rule_soft, 1.0) };
            scene.rule((x, 4.0), (x, plan.foot), pen);
            let at = (x, plan.foot + 7.0 + plan.scale.figures_px);
            let words = frame::label(*step, &plan.steps);
            scene.text(Text::new(words, at, Face::Figures, plan.scale.figures_px, theme.ink_2).anchored(Anchor::Middle));
        }
        let at = (scene.size.0 - 2.0, plan.foot + 12.0 + plan.scale.figures_px + plan.scale.words_px);
        scene.text(Text::new(self.measure.title(), at, Face::Text, plan.scale.words_px, theme.ink_2).anchored(Anchor::End));
    }

    fn draw_span(&self, scene: &mut Scene, theme: &Theme, plan: &Plan, span: &Span, top: f64) {
        let colour = theme.hue(span.hue, None);
        let baseline = top + plan.scale.words_px * 0.8;
        let name = Text::new(span.name.clone(), (2.0, baseline), Face::Text, plan.scale.words_px, colour);
        let behind = 2.0 + name.width() + 10.0;
        scene.text_over(name, theme.sheet);
        if !span.is_drawn() {
            return;
        }
        scene.text_over(Text::new(self.ends(span), (behind, baseline), Face::Figures, plan.scale.figures_px, theme.ink), theme.sheet);
        let (left, right) = (plan.x.place(span.least), plan.x.place(span.greatest));
        let upper = top + plan.scale.words_px + 4.0;
        // A span without width still shows.
        let block = super::scene::Rect::new(left - 0.75, upper, right + 0.75, upper + THICK_PX);
        scene.fill(block.corners(), Ink { colour, cover: if span.marks.is_empty() { 0.3 } else { 0.12 } });
        scene.line(block.edge(), Pen::full(colour, 1.0));
        for mark in span.marks.iter().filter(|mark| mark.is_finite()) {
            scene.disc((plan.x.place(*mark), upper + THICK_PX / 2.0), 4.0, colour);
        }
    }
}

impl Picture for Spans {
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
        self.draw_axis(&mut scene, theme, &plan);
        let tops = (0..).map(|row| 4.0 + plan.pitch * f64::from(row));
        for (span, top) in self.spans.iter().zip(tops) {
            self.draw_span(&mut scene, theme, &plan, span, top);
        }
        scene
    }

    fn describe(&self) -> Vec<String> {
        let unit = &self.measure.unit;
        self.spans.iter().filter(|span| span.is_drawn()).map(|span| format!("{}: {} {unit}.", span.name, self.ends(span))).collect()
    }

    fn read_out(&self, _: f64) -> ReadOut {
        let group = |span: &Span| {
            let value = format!("{} {}", self.ends(span), self.measure.unit);
            let reading = Reading::plain(&self.measure.name, value);
            Group { slot: span.hue.slot(), name: span.name.clone(), readings: vec![reading] }
        };
        ReadOut { at: self.title.clone(), groups: self.spans.iter().filter(|span| span.is_drawn()).map(group).collect() }
    }

    fn stops(&self) -> Vec<f64> {
        Vec::new()
    }

    fn table(&self) -> Table {
        let key = self.measure.key();
        let mut table = Table::new(["name", &format!("least_{key}"), &format!("greatest_{key}")]);
        table.rows = self.spans.iter().map(|span| vec![span.name.clone(), span.least.to_string(), span.greatest.to_string()]).collect();
        table
    }
}
