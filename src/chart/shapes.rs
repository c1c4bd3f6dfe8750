//! Shapes to scale: filled outlines, dashed guides, and what is laid against them in the colour of contact, each with its name.
use super::{
    Picture,
    frame::{Axis, Scale},
    own_size::OwnSize,
    palette::{Hue, Theme},
    place::Taken,
    readout::{Group, ReadOut, Reading, Table},
    rect::Rect,
    scene::{Anchor, Ink, Pen, Point, Scene, Size, Text, Window},
    turning::Turning,
};
use crate::chart::face::Face;
use crate::units::number::show;

/// The data of a picture of shapes. All places are to the right and up, in one unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shapes {
    /// What the picture is called.
    pub title: String,
    /// The unit of all lengths.
    pub unit: String,
    /// The shapes, the hindmost first.
    pub bodies: Vec<Body>,
    /// Guides behind what touches.
    pub guides: Vec<Guide>,
    /// What is laid against the shapes.
    pub laid: Vec<Laid>,
    /// Where it touches.
    pub contacts: Vec<Point>,
    /// What the picture says in words.
    pub says: Vec<String>,
    /// The same at its own size, to be saved.
    pub own_size: Option<OwnSize>,
    /// How they turn together; none where they stand.
    pub turning: Option<Turning>,
}

/// A filled outline.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// What it is.
    pub name: String,
    /// How it is tinted.
    pub hue: Hue,
    /// Its corners in order.
    pub outline: Vec<Point>,
}

/// A dashed line with its name at its right end.
#[derive(Clone, Debug, PartialEq)]
pub struct Guide {
    /// Its name with its figure: `tip 3.120`.
    pub name: String,
    /// Its corners, left to right.
    pub points: Vec<Point>,
}

/// A full line in the colour of contact.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// Its corners.
    pub points: Vec<Point>,
}

/// Room on every side.
const MARGIN_PX: f64 = 10.0;
/// The highest that it is drawn, its words aside.
const MOST_HIGH_PX: f64 = 340.0;

/// Least and greatest to the right and up.
#[derive(Clone, Copy)]
struct Bounds {
    least: Point,
    greatest: Point,
}

impl Shapes {
    fn points(&self) -> impl Iterator<Item = Point> + '_ {
        // Shapes that turn leave the picture at its edges, which stay where they are.
        let frame = self.turning.iter().flat_map(|turning| &turning.frame);
        let bodies = self.bodies.iter().filter(|_| self.turning.is_none()).flat_map(|body| &body.outline).chain(frame);
        let guides = self.guides.iter().flat_map(|guide| &guide.points);
        let laid = self.laid.iter().flat_map(|laid| &laid.points);
        bodies.chain(guides).chain(laid).chain(&self.contacts).copied().filter(|(x, y)| x.is_finite() && y.is_finite())
    }

    fn bounds(&self) -> Bounds {
        let none = Bounds { least: (0.0, 0.0), greatest: (1.0, 1.0) };
        let joined = self.points().fold(None, |bounds: Option<Bounds>, (x, y)| {
            let Bounds { least, greatest } = bounds.unwrap_or(Bounds { least: (x, y), greatest: (x, y) });
            Some(Bounds { least: (least.0.min(x), least.1.min(y)), greatest: (greatest.0.max(x), greatest.1.max(y)) })
        });
        joined.unwrap_or(none)
    }

    fn px_per_length(&self, width: f64, height: f64) -> f64 {
        let Bounds { least, greatest } = self.bounds();
        let by_width = (width - 2.0 * MARGIN_PX).max(1.0) / (greatest.0 - least.0).max(1e-9);
        by_width.min(height.max(1.0) / (greatest.1 - least.1).max(1e-9))
    }

    /// The words above the picture, one line each, cut where they do not fit.
    fn captions(&self, width: f64, scale: &Scale) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        for words in self.says.iter().flat_map(|says| says.split(' ').map(str::to_owned).chain([String::from("\n")])) {
            let line = match lines.last_mut() {
                Some(line) if words != "\n" => line,
                _ if words == "\n" => {
                    lines.push(String::new());
                    continue;
                }
                _ => {
                    lines.push(words);
                    continue;
                }
            };
            let longer = if line.is_empty() { words.clone() } else { format!("{line} {words}") };
            if Face::Text.width_px(&longer, scale.words_px) <= width - 2.0 * MARGIN_PX {
                *line = longer;
            } else {
                lines.push(words);
            }
        }
        lines.retain(|line| !line.is_empty());
        lines
    }

    fn head_px(&self, width: f64) -> f64 {
        let scale = Scale::of(width);
        let lines = self.captions(width, &scale).len();
        (0..lines).map(|_| scale.words_px * 1.35).sum::<f64>() + 8.0
    }
}

impl Picture for Shapes {
    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        let Bounds { least, greatest } = self.bounds();
        let scale = self.px_per_length(width, MOST_HIGH_PX);
        self.head_px(width) + (greatest.1 - least.1) * scale + 2.0 * MARGIN_PX
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let words = Scale::of(size.0);
        let head = self.head_px(size.0);
        for (line, at) in self.captions(size.0, &words).into_iter().zip(1_u32..) {
            let place = (MARGIN_PX, f64::from(at) * words.words_px * 1.35);
            scene.text(Text::new(line, place, Face::Text, words.words_px, theme.ink_2));
        }
        let Bounds { least, greatest } = self.bounds();
        let scale = self.px_per_length(size.0, size.1 - head - 2.0 * MARGIN_PX);
        let left = (size.0 - (greatest.0 - least.0) * scale) / 2.0;
        let place = |(x, y): Point| (left + (x - least.0) * scale, head + MARGIN_PX + (greatest.1 - y) * scale);
        for body in &self.bodies {
            let outline: Vec<Point> = body.outline.iter().copied().map(place).collect();
            let colour = theme.hue(body.hue, None);
            scene.fill(outline.clone(), Ink { colour, cover: 0.14 });
            let closed = outline.iter().copied().chain(outline.first().copied()).collect();
            scene.line(closed, Pen::full(theme.ink, 1.4));
        }
        let mut taken = Taken::new(Rect::new(0.0, head, size.0, size.1));
        for guide in &self.guides {
            let points: Vec<Point> = guide.points.iter().copied().map(place).collect();
            scene.line(points.clone(), Pen::full(theme.ink_3, 1.0).dashed(&[4.0, 3.0]));
        }
        for laid in &self.laid {
            let points: Vec<Point> = laid.points.iter().copied().map(place).collect();
            scene.line(points, Pen::full(theme.dye, 2.4));
        }
        for contact in &self.contacts {
            let at = place(*contact);
            scene.disc(at, 4.5, theme.dye);
            taken.keep(Rect::new(at.0, at.1, at.0, at.1).grown(6.0));
        }
        for guide in &self.guides {
            let ends = guide.points.last().copied().map(place).into_iter().chain(guide.points.first().copied().map(place));
            let label = |at: Point, anchor| Text::new(&guide.name, at, Face::Text, words.figures_px, theme.ink_2).anchored(anchor);
            let tries = ends.flat_map(|(x, y)| {
                let offs = [-6.0, 14.0, -20.0, 28.0];
                offs.map(|off| (x.clamp(MARGIN_PX, size.0 - MARGIN_PX), y + off, x > size.0 / 2.0))
            });
            let texts = tries.map(|(x, y, is_right)| label((x, y), if is_right { Anchor::End } else { Anchor::Start }));
            if let Some(text) = taken.choose_free(texts) {
                scene.text_over(text, theme.sheet);
            }
        }
        let x = Axis::even((least.0, left), (greatest.0, left + (greatest.0 - least.0) * scale));
        scene.window = Some(Window { plot: Rect::new(x.from.1, head, x.to.1, size.1), x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let named = |names: Vec<&str>| names.join(", ");
        let guides = named(self.guides.iter().map(|guide| guide.name.as_str()).collect());
        self.says.iter().cloned().chain((!guides.is_empty()).then(|| format!("{guides} {}.", self.unit))).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let reading = |guide: &Guide| Reading::plain(&guide.name, String::new());
        let group = Group { slot: None, name: String::new(), readings: self.guides.iter().map(reading).collect() };
        ReadOut { at: format!("{} {}", show(x, 2), self.unit), groups: vec![group] }
    }

    fn stops(&self) -> Vec<f64> {
        if let Some(turning) = &self.turning {
            return (-12_i32..=12).map(|step| f64::from(step) / 12.0 * turning.pitch).collect();
        }
        super::frame::stops(self.contacts.iter().map(|(x, _)| *x))
    }

    fn table(&self) -> Table {
        let unit = super::frame::unit_key(&self.unit);
        let mut table = Table::new(["shape", &format!("right_{unit}"), &format!("up_{unit}")]);
        for body in &self.bodies {
            table.rows.extend(body.outline.iter().map(|(x, y)| vec![body.name.clone(), x.to_string(), y.to_string()]));
        }
        table
    }

    fn own_size(&self) -> Option<&OwnSize> {
        self.own_size.as_ref()
    }

    fn turned(&self, to: f64) -> Option<Box<dyn Picture>> {
        self.turned_by(to).map(|shapes| Box::new(shapes) as _)
    }
}
