//! Dots for what was found, judged by two measures; those that nothing beats in both are joined and named: the front.
use super::{
    Picture,
    face::Face,
    frame::{self, Along, Frame, Scale},
    lines::Measure,
    palette::{Hue, Theme},
    place::Taken,
    readout::{Group, ReadOut, Reading, Table},
    scene::{Anchor, Ink, Pen, Point, Rect, Scene, Size, Text, Window},
};

/// The data of a scatter.
#[derive(Clone, Debug, PartialEq)]
pub struct Scatter {
    /// What the picture is called.
    pub title: String,
    /// The measure along the bottom.
    pub x: Measure,
    /// The measure up the left side.
    pub y: Measure,
    /// What was found; setups among it stand out by their letters.
    pub found: Vec<Found>,
    /// The place of the setup brought forward; the others are greyed.
    pub focus: Option<usize>,
}

/// One dot.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// Whose it is.
    pub hue: Hue,
    /// What it is; a setup's letter is put before it.
    pub name: String,
    /// Its two measures.
    pub at: (f64, f64),
    /// Whether nothing found beats it in both measures.
    pub is_on_front: bool,
}

impl Found {
    fn full_name(&self) -> String {
        self.hue.naming(&self.name)
    }

    fn stands_out(&self) -> bool {
        self.is_on_front || self.hue.slot().is_some()
    }
}

impl Scatter {
    fn known(&self) -> impl Iterator<Item = &Found> {
        self.found.iter().filter(|found| found.at.0.is_finite() && found.at.1.is_finite())
    }

    /// The front in order of the measure along the bottom.
    fn front(&self) -> Vec<&Found> {
        let mut front: Vec<&Found> = self.known().filter(|found| found.is_on_front).collect();
        crate::order::by(&mut front, |a, b| a.at.0.total_cmp(&b.at.0));
        front
    }

    fn front_line(&self, frame: &Frame) -> Vec<Point> {
        self.front().iter().map(|found| frame.place(found.at.0, found.at.1)).collect()
    }

    /// The dot nearest to a place in a picture of this size, where one lies within reach; all in CSS pixels.
    pub fn nearest(&self, size: Size, (x, y): Point, reach: f64) -> Option<usize> {
        let frame = self.frame(size);
        let away = |found: &Found| {
            let (right, down) = frame.place(found.at.0, found.at.1);
            (right - x).hypot(down - y)
        };
        let dots = self.found.iter().enumerate().map(|(at, found)| (at, away(found))).filter(|(_, away)| *away <= reach);
        dots.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(at, _)| at)
    }

    fn frame(&self, size: Size) -> Frame {
        let along = Along::closely(self.known().map(|found| found.at.0), self.x.title());
        let up = Along::closely(self.known().map(|found| found.at.1), self.y.title());
        Frame::new(size, &along, &up, 0.0)
    }

    fn draw_dots(&self, scene: &mut Scene, theme: &Theme, frame: &Frame) {
        for found in self.known().filter(|found| !found.stands_out()) {
            scene.disc(frame.place(found.at.0, found.at.1), 3.0, Ink { colour: theme.hue(found.hue, self.focus), cover: 0.55 });
        }
        scene.line(self.front_line(frame), Pen::full(theme.ink_2, 1.4).dashed(&[4.0, 3.0]));
        for found in self.known().filter(|found| found.stands_out()) {
            let at = frame.place(found.at.0, found.at.1);
            scene.disc(at, 7.0, theme.sheet);
            scene.disc(at, 5.5, theme.hue(found.hue, self.focus));
        }
    }

    fn draw_names(&self, scene: &mut Scene, theme: &Theme, frame: &Frame) {
        let size = Scale::of(scene.size.0).words_px;
        let mut taken = Taken::new(Rect::new(frame.plot.left + 2.0, 0.0, scene.size.0, frame.plot.bottom - 1.0));
        taken.keep(frame.title_box());
        let shown = || self.known().filter(|found| found.stands_out()).map(|found| (found, frame.place(found.at.0, found.at.1)));
        shown().for_each(|(_, (x, y))| taken.keep(Rect::new(x, y, x, y).grown(7.0)));
        taken.keep_off(&self.front_line(frame));
        for (found, (x, y)) in shown() {
            let places =
                [(Anchor::Start, x + 10.0, y), (Anchor::End, x - 10.0, y), (Anchor::Middle, x, y - 14.0), (Anchor::Middle, x, y + 16.0)];
            let text = |(anchor, x, y): (Anchor, f64, f64)| {
                let colour = theme.hue(found.hue, self.focus);
                Text::new(found.full_name(), (x, y + size * 0.34), Face::Strong, size, colour).anchored(anchor)
            };
            if let Some(name) = taken.choose(places.map(text)) {
                scene.text_over(name, theme.sheet);
            }
        }
    }
}

/// How many of the nearest are read out.
const READ_OUT: usize = 4;

impl Picture for Scatter {
    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        Scale::of(width).field_height()
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let frame = self.frame(size);
        frame.draw(&mut scene, theme);
        self.draw_dots(&mut scene, theme, &frame);
        self.draw_names(&mut scene, theme, &frame);
        scene.window = Some(Window { plot: frame.plot, x: frame.x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let count = format!("{} found, {} of them on the front.", self.found.len(), self.front().len());
        let tell = |found: &&Found| {
            format!("{}: {} {}, {} {}.", found.full_name(), self.x.name, self.x.value(found.at.0), self.y.name, self.y.value(found.at.1))
        };
        let setups: Vec<&Found> = self.known().filter(|found| found.hue.slot().is_some() && !found.is_on_front).collect();
        std::iter::once(count).chain(self.front().iter().map(tell)).chain(setups.iter().map(tell)).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let mut near: Vec<&Found> = self.known().filter(|found| found.stands_out()).collect();
        crate::order::by(&mut near, |a, b| (a.at.0 - x).abs().total_cmp(&(b.at.0 - x).abs()));
        near.truncate(READ_OUT);
        let reading = |measure: &Measure, value: f64| Reading::plain(&measure.name, measure.value(value));
        let group = |found: &Found| Group {
            slot: found.hue.slot(),
            name: found.full_name(),
            readings: vec![reading(&self.x, found.at.0), reading(&self.y, found.at.1)],
        };
        ReadOut { at: self.x.value(x), groups: near.into_iter().map(group).collect() }
    }

    fn stops(&self) -> Vec<f64> {
        frame::stops(self.known().filter(|found| found.stands_out()).map(|found| found.at.0))
    }

    fn table(&self) -> Table {
        let mut table = Table::new(["name", &self.x.key(), &self.y.key(), "on_front"]);
        let row = |found: &Found| vec![found.full_name(), found.at.0.to_string(), found.at.1.to_string(), found.is_on_front.to_string()];
        table.rows = self.found.iter().map(row).collect();
        table
    }
}
