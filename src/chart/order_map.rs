//! A recording over time: time across, frequency up, the darker the louder; the tones of named parts as lines that follow the speed.
use super::{
    Picture,
    face::Face,
    frame::{self, Along, Frame, Scale},
    palette::{Hue, Theme},
    place::Taken,
    readout::{Group, ReadOut, Table},
    scene::{Anchor, Ink, Pen, Rect, Scene, Size, Text, Window},
};
use crate::units::number::show;

/// The data of an order map.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderMap {
    /// What the picture is called.
    pub title: String,
    /// How long the recording is, in seconds.
    pub seconds: f64,
    /// The frequency at its upper end, in Hz.
    pub most: f64,
    /// Levels in dB over the noise: a column for each stretch of time, in it a row for each stretch of frequency, from 0 up.
    pub columns: Vec<Vec<f64>>,
    /// The tones of parts, those that are named first, first.
    pub traces: Vec<Trace>,
}

/// The tone of a part over time.
#[derive(Clone, Debug, PartialEq)]
pub struct Trace {
    /// Its colour.
    pub hue: Hue,
    /// What makes it.
    pub name: String,
    /// Times in seconds and frequencies in Hz, rising in time.
    pub points: Vec<(f64, f64)>,
}

/// Levels from nothing to the darkest, in dB over the noise: the loudest of some bins of mere noise stands near the first.
const LEVELS: (f64, f64) = (6.0, 24.0);
/// How much the darkest covers.
const DARKEST: f64 = 0.8;

impl OrderMap {
    fn frame(&self, size: Size) -> Frame {
        let along = Along { least: 0.0, greatest: self.seconds.max(0.1), title: "time, s".into() };
        let up = Along { least: 0.0, greatest: self.most.max(1.0), title: "frequency, Hz".into() };
        Frame::new(size, &along, &up, 6.0)
    }

    fn draw_levels(&self, scene: &mut Scene, frame: &Frame, theme: &Theme) {
        let Rect { left, top, right, bottom } = frame.plot;
        let wide = (right - left) / count(self.columns.len());
        let (quiet, loud) = LEVELS;
        let mut from = left;
        for column in &self.columns {
            let high = (bottom - top) / count(column.len());
            let mut foot = bottom;
            for level in column {
                let cover = DARKEST * ((level - quiet) / (loud - quiet)).clamp(0.0, 1.0);
                if cover > 0.03 {
                    let outline = vec![(from, foot), (from + wide, foot), (from + wide, foot - high), (from, foot - high)];
                    scene.fill(outline, Ink { colour: theme.ink, cover });
                }
                foot -= high;
            }
            from += wide;
        }
    }
}

impl Trace {
    /// The points inside the picture.
    fn inside(&self, most: f64) -> impl Iterator<Item = (f64, f64)> + '_ {
        self.points.iter().copied().filter(move |(_, hertz)| *hertz > 0.0 && *hertz <= most)
    }

    /// The frequency at a time.
    fn at(&self, seconds: f64) -> Option<f64> {
        let away = |point: &&(f64, f64)| (point.0 - seconds).abs();
        self.points.iter().min_by(|a, b| away(a).total_cmp(&away(b))).map(|(_, hertz)| *hertz)
    }

    fn ends(&self) -> Option<(f64, f64)> {
        self.points.first().zip(self.points.last()).map(|((_, from), (_, to))| (*from, *to))
    }

    /// Where its name may stand: above its line, from the right to the left.
    fn names(&self, frame: &Frame, most: f64, scale: &Scale, theme: &Theme) -> Vec<Text> {
        let face = if self.hue == Hue::Dye { Face::Strong } else { Face::Text };
        let points: Vec<(f64, f64)> = self.inside(most).collect();
        let text = |(seconds, hertz): &(f64, f64)| {
            let (x, y) = frame.place(*seconds, *hertz);
            let colour = theme.hue(self.hue, None);
            [y - 6.0, y + scale.words_px + 3.0]
                .map(|y| Text::new(&self.name, (x - 4.0, y), face, scale.words_px, colour).anchored(Anchor::End))
        };
        points.iter().rev().step_by(3).flat_map(text).collect()
    }
}

impl Picture for OrderMap {
    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        Scale::of(width).field_height()
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let frame = self.frame(size);
        let scale = Scale::of(size.0);
        frame.draw(&mut scene, theme);
        self.draw_levels(&mut scene, &frame, theme);
        let mut taken = Taken::new(frame.plot);
        let mut names: Vec<Text> = Vec::new();
        for trace in &self.traces {
            let points = trace.inside(self.most).map(|(seconds, hertz)| frame.place(seconds, hertz)).collect();
            let width = if trace.hue == Hue::Dye { 2.2 } else { 1.2 };
            scene.line(points, Pen::full(theme.hue(trace.hue, None), width).dashed(&[5.0, 4.0]));
        }
        for trace in &self.traces {
            names.extend(taken.choose_free(trace.names(&frame, self.most, &scale, theme)));
        }
        for name in names {
            scene.text_over(name, theme.sheet);
        }
        scene.window = Some(Window { plot: frame.plot, x: frame.x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let ends = |trace: &Trace| trace.ends().map(|(from, to)| format!("{}: from {} to {} Hz.", trace.name, show(from, 0), show(to, 0)));
        self.traces.iter().filter_map(ends).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let group = |trace: &Trace| Some(Group::alone(&trace.name, format!("{} Hz", show(trace.at(x)?, 0))));
        ReadOut { at: format!("{} s", show(x, 1)), groups: self.traces.iter().take(2).filter_map(group).collect() }
    }

    fn stops(&self) -> Vec<f64> {
        frame::stops(self.traces.first().into_iter().flat_map(|trace| trace.points.iter().map(|(seconds, _)| *seconds)))
    }

    fn table(&self) -> Table {
        let mut table = Table::new(["tone", "time_s", "frequency_hz"]);
        for trace in &self.traces {
            table.rows.extend(trace.points.iter().map(|(seconds, hertz)| vec![trace.name.clone(), show(*seconds, 1), show(*hertz, 1)]));
        }
        table
    }
}

#[expect(clippy::cast_precision_loss, reason = "columns and rows are some dozens")]
fn count(of: usize) -> f64 {
    of.max(1) as f64
}
