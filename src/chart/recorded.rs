//! The spectrum of a recording: how loud it is at every pitch over the noise about it, the tones of named parts drawn in.
use super::{
    Picture,
    face::Face,
    frame::{self, Along, Frame, Scale},
    palette::{Hue, Theme},
    place::Taken,
    readout::{Group, ReadOut, Table},
    scene::{Anchor, Pen, Rect, Scene, Size, Text, Window},
};
use crate::units::number::show;

/// The data of a recording's spectrum.
#[derive(Clone, Debug, PartialEq)]
pub struct Recorded {
    /// What the picture is called.
    pub title: String,
    /// Up to which frequency it goes, in Hz.
    pub most: f64,
    /// Frequency in Hz and level in dB over the noise, rising.
    pub levels: Vec<(f64, f64)>,
    /// The tones of parts, those that are named first, first.
    pub marks: Vec<Mark>,
}

/// The tone of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Its colour.
    pub hue: Hue,
    /// What makes it.
    pub name: String,
    /// Its frequency in Hz.
    pub hertz: f64,
}

/// Room for the names of tones above the highest level, in pixels.
const HEADROOM: f64 = 44.0;
/// The picture goes at least so high, in dB.
const LEAST_DB: f64 = 10.0;

impl Recorded {
    fn frame(&self, size: Size) -> Frame {
        let highest = self.levels.iter().map(|(_, level)| *level).fold(LEAST_DB, f64::max);
        let along = Along { least: 0.0, greatest: self.most.max(1.0), title: "frequency, Hz".into() };
        let up = Along { least: 0.0, greatest: highest, title: "over the noise, dB".into() };
        Frame::new(size, &along, &up, HEADROOM)
    }

    fn placed(&self) -> impl Iterator<Item = &Mark> {
        self.marks.iter().filter(|mark| mark.hertz > 0.0 && mark.hertz <= self.most)
    }

    /// The level nearest to a frequency.
    fn level_at(&self, hertz: f64) -> Option<f64> {
        let away = |level: &&(f64, f64)| (level.0 - hertz).abs();
        self.levels.iter().min_by(|a, b| away(a).total_cmp(&away(b))).map(|(_, level)| *level)
    }
}

impl Mark {
    fn says(&self) -> String {
        format!("{} {}", self.name, show(self.hertz, usize::from(self.hertz < 100.0)))
    }

    /// Where its name may stand: above the plot beside its line, then further down.
    fn names(&self, frame: &Frame, scale: &Scale, theme: &Theme) -> Vec<Text> {
        let x = frame.x.place(self.hertz);
        let face = if self.hue == Hue::Dye { Face::Strong } else { Face::Text };
        let words = self.says();
        let rows = (0..10_u8).map(|row| frame.plot.top - HEADROOM + scale.words_px + f64::from(row) * (scale.words_px + 4.0));
        let beside = rows.take_while(|y| *y < frame.plot.bottom).flat_map(|y| [(Anchor::Start, x + 6.0, y), (Anchor::End, x - 6.0, y)]);
        let text = |(anchor, x, y)| Text::new(&words, (x, y), face, scale.words_px, theme.hue(self.hue, None)).anchored(anchor);
        beside.map(text).collect()
    }
}

impl Picture for Recorded {
    fn axis_unit(&self) -> Option<&str> {
        Some("Hz")
    }

    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        if Scale::of(width).is_narrow { 300.0 } else { 340.0 }
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let frame = self.frame(size);
        let scale = Scale::of(size.0);
        frame.draw(&mut scene, theme);
        let mut taken = Taken::new(Rect::new(2.0, 0.0, size.0 - 2.0, frame.plot.bottom - 1.0));
        taken.keep(frame.title_box());
        for mark in self.placed() {
            let x = frame.x.place(mark.hertz);
            let ends = [(x, frame.plot.top - HEADROOM), (x, frame.plot.bottom)];
            let width = if mark.hue == Hue::Dye { 2.2 } else { 1.3 };
            scene.rule(ends[0], ends[1], Pen::full(theme.hue(mark.hue, None), width).dashed(&[4.0, 4.0]));
            taken.keep_off(&ends);
        }
        let line = self.levels.iter().map(|(hertz, level)| frame.place(*hertz, level.max(0.0))).collect();
        scene.line(line, Pen::full(theme.ink, 1.4));
        let names: Vec<Text> = self.placed().filter_map(|mark| taken.choose_free(mark.names(&frame, &scale, theme))).collect();
        for name in names {
            scene.text_over(name, theme.sheet);
        }
        scene.window = Some(Window { plot: frame.plot, x: frame.x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let level =
            |mark: &Mark| self.level_at(mark.hertz).map_or_else(String::new, |level| format!(", {} dB over the noise", show(level, 0)));
        self.placed().map(|mark| format!("{} Hz{}.", mark.says(), level(mark))).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let mut near: Vec<&Mark> = self.placed().collect();
        crate::order::by(&mut near, |a, b| (a.hertz - x).abs().total_cmp(&(b.hertz - x).abs()));
        let level = self.level_at(x).map(|level| Group::alone("over the noise", format!("{} dB", show(level, 1))));
        let next = near.first().map(|mark| Group::alone(&mark.name, format!("{} Hz", show(mark.hertz, 1))));
        ReadOut { at: format!("{} Hz", show(x, 0)), groups: level.into_iter().chain(next).collect() }
    }

    fn stops(&self) -> Vec<f64> {
        frame::stops(self.placed().map(|mark| mark.hertz))
    }

    fn table(&self) -> Table {
        let mut table = Table::new(["frequency_hz", "level_db"]);
        table.rows.extend(self.levels.iter().map(|(hertz, level)| vec![show(*hertz, 1), show(*level, 1)]));
        table
    }
}
