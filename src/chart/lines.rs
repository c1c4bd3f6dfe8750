//! Lines over a common axis: thrust over speed, a dial's reading over the true speed, torque over engine speed, speed over time.
//!
//! Labels stand on the lines; bands are shaded (what the law allows), guides cross the plot (a limit, the cruising speed), dots mark points.
use super::{
    Picture,
    frame::{self, Along, Frame, Scale},
    palette::{Hue, Theme},
    readout::{Group, ReadOut, Reading, Table},
    scene::{Ink, Pen, Point, Scene, Size, Window},
    ticks,
};
use crate::units::number::show;

mod labels;

/// The data of a picture of lines.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lines {
    /// What the picture is called.
    pub title: String,
    /// The axis along the bottom.
    pub x: Measure,
    /// The axis up the left side.
    pub y: Measure,
    /// The lines, the first lowest.
    pub series: Vec<Series>,
    /// Shaded bands, below the lines.
    pub bands: Vec<Band>,
    /// Straight lines across the plot.
    pub guides: Vec<Guide>,
    /// Marked points, above the lines.
    pub dots: Vec<Dot>,
    /// The place of the setup brought forward; the others are greyed.
    pub focus: Option<usize>,
}

/// What an axis measures.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Measure {
    /// Of what, for instance `road speed`.
    pub name: String,
    /// The unit, for instance `mph`; empty for a plain number.
    pub unit: String,
    /// Digits behind the point when a value is read out.
    pub decimals: usize,
    /// Least and greatest value shown; `None` covers the data.
    pub ends: Option<(f64, f64)>,
}

/// One line.
#[derive(Clone, Debug, PartialEq)]
pub struct Series {
    /// Whose it is.
    pub hue: Hue,
    /// What it is, for instance `3rd`; a setup's letter is put before it.
    pub name: String,
    /// Its points, rising in x.
    pub points: Vec<(f64, f64)>,
}

/// A shaded band between two lines over the same stretch.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// Its colour.
    pub hue: Hue,
    /// What it is, for instance `allowed`.
    pub name: String,
    /// Its lower edge, rising in x.
    pub lower: Vec<(f64, f64)>,
    /// Its upper edge, rising in x.
    pub upper: Vec<(f64, f64)>,
}

/// A straight line across the whole plot.
#[derive(Clone, Debug, PartialEq)]
pub struct Guide {
    /// Where it stands.
    pub at: At,
    /// What it is, for instance `cruise at 70`.
    pub name: String,
    /// Its colour.
    pub hue: Hue,
}

/// Where a guide stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum At {
    /// Upright, at a value of the axis along the bottom.
    X(f64),
    /// Level, at a value of the axis up the side.
    Y(f64),
}

/// A marked point.
#[derive(Clone, Debug, PartialEq)]
pub struct Dot {
    /// Where.
    pub at: (f64, f64),
    /// What it is, for instance `top speed 118.2`.
    pub name: String,
    /// Its colour.
    pub hue: Hue,
}

impl Measure {
    pub(super) fn title(&self) -> String {
        if self.unit.is_empty() { self.name.clone() } else { format!("{}, {}", self.name, self.unit) }
    }

    /// A value with its unit and digits.
    pub fn value(&self, value: f64) -> String {
        format!("{} {}", show(value, self.decimals), self.unit).trim_end().to_owned()
    }

    pub(super) fn key(&self) -> String {
        let unit = if self.unit.is_empty() { String::new() } else { format!("_{}", frame::unit_key(&self.unit)) };
        format!("{}{unit}", frame::unit_key(&self.name))
    }

    fn along(&self, values: impl Iterator<Item = f64>) -> Along {
        let ends = self.ends.filter(|(least, greatest)| least < greatest && (greatest - least).is_finite());
        match ends {
            Some((least, greatest)) => Along { least, greatest, title: self.title() },
            None => Along::covering(values, self.title()),
        }
    }
}

impl Series {
    /// The value at `x`, on the straight line between the points either side.
    pub fn value_at(&self, x: f64) -> Option<f64> {
        let between = self.points.windows(2).find_map(|pair| match pair {
            [from, to] if from.0 <= x && x <= to.0 && from.0 < to.0 => Some((*from, *to)),
            _ => None,
        });
        between.map(|(from, to)| from.1 + (to.1 - from.1) * (x - from.0) / (to.0 - from.0)).filter(|y| y.is_finite())
    }

    /// Its name with the setup's letter.
    fn full_name(&self) -> String {
        self.hue.naming(&self.name)
    }
}

impl Lines {
    fn points(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        let dots = self.dots.iter().map(|dot| dot.at);
        self.series.iter().flat_map(|series| series.points.iter().copied()).chain(dots)
    }

    fn frame(&self, size: Size) -> Frame {
        let upright = self.guides.iter().filter_map(|guide| if let At::X(x) = guide.at { Some(x) } else { None });
        let level = self.guides.iter().filter_map(|guide| if let At::Y(y) = guide.at { Some(y) } else { None });
        let along = self.x.along(self.points().map(|(x, _)| x).chain(upright));
        let up = self.y.along(self.points().map(|(_, y)| y).chain(level));
        Frame::new(size, &along, &up, 0.0)
    }

    fn draw_bands(&self, scene: &mut Scene, theme: &Theme, frame: &Frame) {
        for band in &self.bands {
            let edge = band.lower.iter().chain(band.upper.iter().rev());
            let known = edge.filter(|(x, y)| x.is_finite() && y.is_finite());
            let outline: Vec<Point> = known.map(|(x, y)| frame.plot.nearest(frame.place(*x, *y))).collect();
            if outline.len() > 2 {
                scene.fill(outline, Ink { colour: theme.hue(band.hue, self.focus), cover: 0.13 });
            }
        }
    }

    fn draw_guides(&self, scene: &mut Scene, theme: &Theme, frame: &Frame) {
        for (guide, (from, to)) in self.guides.iter().filter_map(|guide| Some((guide, guide.ends(frame)?))) {
            scene.rule(from, to, Pen::full(theme.hue(guide.hue, self.focus), 1.0).dashed(&[3.0, 3.0]));
        }
    }

    fn draw_series(&self, scene: &mut Scene, pieces: &[Vec<Vec<Point>>], theme: &Theme, stroke_px: f64) {
        let is_back = |series: &&Series| self.focus.is_some() && series.hue.slot().is_some() && series.hue.slot() != self.focus;
        let placed = || self.series.iter().zip(pieces);
        let (back, front) = (placed().filter(|(series, _)| is_back(series)), placed().filter(|(series, _)| !is_back(series)));
        for (series, pieces) in back.chain(front) {
            let width = if is_back(&series) { 1.4 } else { stroke_px };
            let pen = Pen::full(theme.hue(series.hue, self.focus), width).dashed(series.hue.dash());
            for piece in pieces {
                scene.line(piece.clone(), pen);
            }
        }
    }
}

impl Series {
    /// What of the line lies inside the plot.
    fn pieces(&self, frame: &Frame) -> Vec<Vec<Point>> {
        let places: Vec<Point> = self.points.iter().map(|(x, y)| frame.place(*x, *y)).collect();
        frame.plot.clipped_line(&places)
    }
}

impl Guide {
    fn ends(&self, frame: &Frame) -> Option<(Point, Point)> {
        let plot = frame.plot;
        match self.at {
            At::X(x) => {
                let x = frame.x.place(x);
                (plot.left..=plot.right).contains(&x).then_some(((x, plot.top), (x, plot.bottom)))
            }
            At::Y(y) => {
                let y = frame.y.place(y);
                (plot.top..=plot.bottom).contains(&y).then_some(((plot.left, y), (plot.right, y)))
            }
        }
    }
}

impl Picture for Lines {
    fn axis_unit(&self) -> Option<&str> {
        Some(&self.x.unit)
    }

    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        if Scale::of(width).is_narrow { 300.0 } else { 330.0 }
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let frame = self.frame(size);
        self.draw_bands(&mut scene, theme, &frame);
        frame.draw(&mut scene, theme);
        self.draw_guides(&mut scene, theme, &frame);
        let pieces: Vec<Vec<Vec<Point>>> = self.series.iter().map(|series| series.pieces(&frame)).collect();
        self.draw_series(&mut scene, &pieces, theme, Scale::of(size.0).stroke_px);
        labels::draw(self, &pieces, &mut scene, theme, &frame);
        scene.window = Some(Window { plot: frame.plot, x: frame.x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let at = |(x, y): &(f64, f64)| format!("{} at {}", self.y.value(*y), self.x.value(*x));
        let series = |series: &Series| {
            let known: Vec<&(f64, f64)> = series.points.iter().filter(|(x, y)| x.is_finite() && y.is_finite()).collect();
            let peak = known.iter().max_by(|a, b| a.1.total_cmp(&b.1));
            match (known.first(), known.last(), peak) {
                (Some(first), Some(last), Some(peak)) => {
                    format!("{}: from {} to {}, highest {}.", series.full_name(), at(first), at(last), at(peak))
                }
                _ => format!("{}: no figures.", series.full_name()),
            }
        };
        let guide = |guide: &Guide| match guide.at {
            At::X(x) => format!("{}: {}.", guide.name, self.x.value(x)),
            At::Y(y) => format!("{}: {}.", guide.name, self.y.value(y)),
        };
        let dot = |dot: &Dot| format!("{}: {}.", dot.name, at(&dot.at));
        self.series.iter().map(series).chain(self.guides.iter().map(guide)).chain(self.dots.iter().map(dot)).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let mut groups: Vec<Group> = Vec::new();
        for series in &self.series {
            let Some(y) = series.value_at(x) else { continue };
            let slot = series.hue.slot();
            let reading = Reading::plain(&series.name, self.y.value(y));
            match groups.iter_mut().find(|group| slot.is_some() && group.slot == slot) {
                Some(group) => group.readings.push(reading),
                None => groups.push(Group { slot, name: series.full_name(), readings: vec![reading] }),
            }
        }
        ReadOut { at: self.x.value(x), groups }
    }

    fn stops(&self) -> Vec<f64> {
        let marks = self.guides.iter().filter_map(|guide| if let At::X(x) = guide.at { Some(x) } else { None });
        let along = self.x.along(self.points().map(|(x, _)| x));
        let steps = ticks::round_steps(along.least, along.greatest, 40.0);
        frame::stops(steps.into_iter().chain(marks).chain(self.dots.iter().map(|dot| dot.at.0)))
    }

    fn table(&self) -> Table {
        let mut table = Table::new(["series", &self.x.key(), &self.y.key()]);
        for series in &self.series {
            table.rows.extend(series.points.iter().map(|(x, y)| vec![series.full_name(), x.to_string(), y.to_string()]));
        }
        table
    }
}
