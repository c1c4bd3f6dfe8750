//! Tones on an axis of pitch, equal distances equal ratios: a named stem for each, what was heard across the whole height.
use super::{
    Picture,
    face::Face,
    frame::{self, Axis, Scale},
    palette::{Hue, Theme},
    place::Taken,
    readout::{Group, ReadOut, Table},
    scene::{Anchor, Pen, Point, Rect, Scene, Size, Text, Window},
    ticks,
};
use crate::units::number::show;

/// The data of a picture of tones.
#[derive(Clone, Debug, PartialEq)]
pub struct Spectrum {
    /// What the picture is called.
    pub title: String,
    /// What the height of a stem means, for instance `how well it fits`.
    pub height: String,
    /// The tones, those that are named first, first.
    pub tones: Vec<Stem>,
    /// What was heard: its pitch and its name.
    pub heard: Option<(f64, String)>,
}

/// One tone.
#[derive(Clone, Debug, PartialEq)]
pub struct Stem {
    /// Its colour.
    pub hue: Hue,
    /// What makes it.
    pub name: String,
    /// How often it repeats, in Hz.
    pub hertz: f64,
    /// How high its stem stands: 0 to 1.
    pub share: f64,
}

/// How the picture is divided at one size.
struct Plan {
    scale: Scale,
    x: Axis,
    plot: Rect,
    steps: Vec<f64>,
}

impl Spectrum {
    /// The tones that have a place on the axis.
    fn placed(&self) -> impl Iterator<Item = &Stem> {
        self.tones.iter().filter(|tone| tone.hertz.is_finite() && tone.hertz > 0.0)
    }

    fn heard_at(&self) -> Option<f64> {
        self.heard.as_ref().map(|(hertz, _)| *hertz).filter(|hertz| hertz.is_finite() && *hertz > 0.0)
    }

    fn plan(&self, size: Size) -> Plan {
        let scale = Scale::of(size.0);
        let values = || self.placed().map(|tone| tone.hertz).chain(self.heard_at());
        let (least, greatest) = values().fold((f64::INFINITY, 0.0_f64), |(least, most), value| (least.min(value), most.max(value)));
        let (least, greatest) = if greatest > 0.0 { (least / 1.4, greatest * 1.4) } else { (10.0, 1_000.0) };
        let top = 14.0 + scale.words_px;
        let bottom = (size.1 - if scale.is_narrow { 44.0 } else { 48.0 }).max(top + 1.0);
        let plot = Rect::new(4.0, top, (size.0 - 4.0).max(5.0), bottom);
        let x = Axis::by_ratio((least, plot.left), (greatest, plot.right));
        let steps = ticks::ratio_steps(least, greatest, scale.gap_px * 0.8, |value| x.place(value));
        Plan { scale, x, plot, steps }
    }

    fn draw_axis(&self, scene: &mut Scene, theme: &Theme, plan: &Plan) {
        let Plan { scale, plot, .. } = plan;
        for step in &plan.steps {
            let x = plan.x.place(*step);
            scene.rule((x, plot.top), (x, plot.bottom), Pen::full(theme.rule_soft, 1.0));
            let decimals = usize::from(*step < 1.0);
            let words =
                Text::new(show(*step, decimals), (x, plot.bottom + 7.0 + scale.figures_px), Face::Figures, scale.figures_px, theme.ink_2)
                    .anchored(Anchor::Middle);
            let bounds = words.bounds();
            if bounds.left >= 0.0 && bounds.right <= scene.size.0 {
                scene.text(words);
            }
        }
        scene.rule((plot.left, plot.bottom), (plot.right, plot.bottom), Pen::full(theme.ink, 1.0));
        scene.text(self.height_title(plan, theme));
        let at = (plot.right, plot.bottom + 24.0 + scale.words_px + 3.0);
        scene.text(Text::new("frequency, Hz", at, Face::Text, scale.words_px, theme.ink_2).anchored(Anchor::End));
    }

    fn height_title(&self, plan: &Plan, theme: &Theme) -> Text {
        Text::new(&self.height, (2.0, 2.0 + plan.scale.words_px * 0.8), Face::Text, plan.scale.words_px, theme.ink_2)
    }
}

impl Plan {
    /// The stem of a tone, from its top to the axis.
    fn stem(&self, tone: &Stem) -> [Point; 2] {
        let x = self.x.place(tone.hertz);
        let high = self.plot.height() * 0.9 * tone.share.clamp(0.04, 1.0);
        [(x, self.plot.bottom - high), (x, self.plot.bottom)]
    }

    /// Where a name may stand: beside the top of its stem, then further down, then above it.
    fn names(&self, tone: &Stem, theme: &Theme) -> Vec<Text> {
        let [(x, top), (_, foot)] = self.stem(tone);
        let size = self.scale.words_px;
        let words = format!("{} {}", tone.name, show(tone.hertz, usize::from(tone.hertz < 100.0)));
        let rows = (0..12_u8).map(|row| top + size * 0.8 + f64::from(row) * (size + 3.0)).take_while(|y| *y < foot - 2.0);
        let above = (0..8_u8).map(|row| top - 7.0 - f64::from(row) * (size + 3.0)).take_while(|y| *y > self.plot.top + size);
        let beside = rows.flat_map(|y| [(Anchor::Start, x + 7.0, y), (Anchor::End, x - 7.0, y)]);
        let over = above.flat_map(|y| [(Anchor::Middle, x, y), (Anchor::Start, x - 4.0, y), (Anchor::End, x + 4.0, y)]);
        let face = if tone.hue == Hue::Dye { Face::Strong } else { Face::Text };
        let text = |(anchor, x, y): (Anchor, f64, f64)| Text::new(&words, (x, y), face, size, theme.hue(tone.hue, None)).anchored(anchor);
        beside.chain(over).map(text).collect()
    }
}

impl Picture for Spectrum {
    fn axis_unit(&self) -> Option<&str> {
        Some("Hz")
    }

    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        if Scale::of(width).is_narrow { 300.0 } else { 320.0 }
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let plan = self.plan(size);
        self.draw_axis(&mut scene, theme, &plan);
        let mut taken = Taken::new(Rect::new(2.0, 0.0, size.0 - 2.0, plan.plot.bottom - 1.0));
        taken.keep(self.height_title(&plan, theme).bounds().grown(4.0));
        for tone in self.placed() {
            let [top, foot] = plan.stem(tone);
            let is_first = tone.hue == Hue::Dye;
            scene.rule(top, foot, Pen::full(theme.hue(tone.hue, None), if is_first { plan.scale.stroke_px + 0.8 } else { 1.6 }));
            taken.keep_off(&[top, foot]);
        }
        let mut names: Vec<Text> = Vec::new();
        if let (Some(hertz), Some((_, name))) = (self.heard_at(), &self.heard) {
            let x = plan.x.place(hertz);
            let colour = theme.hue(Hue::Caution, None);
            scene.rule((x, plan.plot.top), (x, plan.plot.bottom), Pen::full(colour, 1.4).dashed(&[3.0, 3.0]));
            taken.keep_off(&[(x, plan.plot.top), (x, plan.plot.bottom)]);
            let places = [(Anchor::Start, x + 7.0), (Anchor::End, x - 7.0)];
            let y = plan.plot.top + plan.scale.words_px;
            let text = |(anchor, x)| Text::new(name, (x, y), Face::Text, plan.scale.words_px, colour).anchored(anchor);
            names.extend(taken.choose_free(places.map(text)));
        }
        for tone in self.placed() {
            names.extend(taken.choose_free(plan.names(tone, theme)));
        }
        for name in names {
            scene.text_over(name, theme.sheet);
        }
        scene.window = Some(Window { plot: plan.plot, x: plan.x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let heard = self.heard.iter().map(|(hertz, name)| format!("{name}: {} Hz.", show(*hertz, 0)));
        heard.chain(self.placed().map(|tone| format!("{}: {} Hz.", tone.name, show(tone.hertz, 1)))).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let away = |tone: &Stem| (tone.hertz / x).ln().abs();
        let mut near: Vec<&Stem> = self.placed().collect();
        crate::order::by(&mut near, |a, b| away(a).total_cmp(&away(b)));
        let reading = |tone: &&Stem| Group::alone(&tone.name, format!("{} Hz", show(tone.hertz, 1)));
        ReadOut { at: format!("{} Hz", show(x, 0)), groups: near.iter().take(2).map(reading).collect() }
    }

    fn stops(&self) -> Vec<f64> {
        frame::stops(self.placed().map(|tone| tone.hertz).chain(self.heard_at()))
    }

    fn table(&self) -> Table {
        let mut table = Table::new(["tone", "frequency_hz"]);
        table.rows.extend(self.placed().map(|tone| vec![tone.name.clone(), tone.hertz.to_string()]));
        table
    }
}
