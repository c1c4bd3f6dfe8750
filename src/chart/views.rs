//! A chain of rods seen from the side and from above, to scale: rods as bars, the joints between them as dots, all of them named.
use super::{
    Picture,
    face::Face,
    frame::{self, Axis, Scale},
    palette::{Hue, Theme},
    place::Taken,
    readout::{Group, ReadOut, Reading, Table},
    scene::{Anchor, Pen, Point, Rect, Scene, Size, Text, Window},
};
use crate::units::number::show;

/// The data of a chain of rods.
#[derive(Clone, Debug, PartialEq)]
pub struct Views {
    /// What the picture is called.
    pub title: String,
    /// Whose it is.
    pub hue: Hue,
    /// The unit of all lengths; empty where they are only in proportion.
    pub unit: String,
    /// The joints, the first leftmost.
    pub joints: Vec<Joint>,
    /// The views, one below the other.
    pub views: Vec<View>,
}

/// A joint of the chain.
#[derive(Clone, Debug, PartialEq)]
pub struct Joint {
    /// What it is called, for instance `front`.
    pub name: String,
    /// What is said of it, for instance `1.8°`.
    pub says: String,
}

/// The chain from one side.
#[derive(Clone, Debug, PartialEq)]
pub struct View {
    /// From where, for instance `from the side`.
    pub name: String,
    /// The ends of the rods, one more than there are rods: along the picture and up.
    pub ends: Vec<(f64, f64)>,
    /// What is said of each rod.
    pub rods: Vec<String>,
}

/// Room in a view above and below what it shows, for labels.
const ABOVE_PX: f64 = 58.0;
const BELOW_PX: f64 = 34.0;
/// Room at either side.
const MARGIN_PX: f64 = 12.0;
/// The highest that all views together are drawn, labels aside.
const MOST_HIGH_PX: f64 = 300.0;

impl Joint {
    fn words(&self) -> String {
        format!("{} {}", self.name, self.says).trim().to_owned()
    }
}

impl View {
    fn known(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        self.ends.iter().copied().filter(|(x, y)| x.is_finite() && y.is_finite())
    }

    /// The lowest and the highest of it.
    fn up(&self) -> (f64, f64) {
        bounds(self.known().map(|(_, y)| y))
    }

    fn span(&self) -> f64 {
        let (low, high) = self.up();
        high - low
    }
}

impl Views {
    fn along(&self) -> (f64, f64) {
        bounds(self.views.iter().flat_map(View::known).map(|(x, _)| x))
    }

    fn labels_px(&self) -> f64 {
        self.views.iter().map(|_| ABOVE_PX + BELOW_PX).sum()
    }

    /// Pixels to a unit of length where so many may be used up and down.
    fn px_per_length(&self, width: f64, height: f64) -> f64 {
        let (from, to) = self.along();
        let across: f64 = self.views.iter().map(View::span).sum();
        let by_width = (width - 2.0 * MARGIN_PX).max(1.0) / (to - from).max(1e-9);
        if across > 0.0 { by_width.min(height.max(1.0) / across) } else { by_width }
    }

    /// The joints with their place along the picture.
    fn joints_along(&self) -> impl Iterator<Item = (&Joint, f64)> {
        let ends = self.views.first().map(|view| view.ends.as_slice()).unwrap_or_default();
        self.joints.iter().zip(ends.iter().skip(1).map(|(x, _)| *x))
    }
}

/// Least and greatest of the values; nothing to nothing where there are none.
fn bounds(values: impl Iterator<Item = f64>) -> (f64, f64) {
    let ends = values.fold(None, |ends: Option<(f64, f64)>, value| {
        Some(ends.map_or((value, value), |(least, greatest)| (least.min(value), greatest.max(value))))
    });
    ends.unwrap_or((0.0, 0.0))
}

/// One view with its place in the picture.
struct Drawn<'a> {
    views: &'a Views,
    view: &'a View,
    /// Its ends in pixels.
    ends: Vec<Point>,
    /// Where it begins, from the top.
    top: f64,
    scale: Scale,
}

impl Drawn<'_> {
    fn draw(&self, scene: &mut Scene, theme: &Theme, taken: &mut Taken) {
        let colour = theme.hue(self.views.hue, None);
        if let (Some(first), Some(last)) = (self.ends.get(1), self.ends.last()) {
            scene.rule((first.0, first.1), (last.0, first.1), Pen::full(theme.rule, 1.0).dashed(&[3.0, 3.0]));
        }
        let rods = self.ends.windows(2).count();
        for (at, rod) in self.ends.windows(2).enumerate() {
            let is_held = at == 0 || at + 1 == rods;
            scene.line(rod.to_vec(), Pen::full(if is_held { theme.ink } else { colour }, if is_held { 7.0 } else { 4.0 }));
            taken.keep_off(rod);
        }
        for (x, y) in self.between() {
            scene.disc((x, y), 7.0, theme.sheet);
            scene.disc((x, y), 5.0, theme.ink);
            taken.keep(Rect::new(x, y, x, y).grown(8.0));
        }
        let name = Text::new(&self.view.name, (2.0, self.top + self.scale.words_px), Face::Text, self.scale.words_px, theme.ink_2);
        taken.keep(name.bounds().grown(2.0));
        scene.text(name);
    }

    /// The joints: the ends that two rods share.
    fn between(&self) -> impl Iterator<Item = Point> + '_ {
        self.ends.iter().copied().skip(1).take(self.ends.len().saturating_sub(2))
    }

    fn labels(&self, theme: &Theme, taken: &mut Taken) -> Vec<Text> {
        let colour = theme.hue(self.views.hue, None);
        let size = self.scale.words_px;
        let joints = self.between().zip(&self.views.joints);
        let mut labels: Vec<Text> = Vec::new();
        for (place, joint) in joints {
            let words = joint.words();
            let text = |(at, anchor)| Text::new(&words, at, Face::Strong, size, theme.ink).anchored(anchor);
            labels.extend(taken.choose_free(about(place, size, 1.0).map(text)));
        }
        for (rod, words) in self.ends.windows(2).zip(&self.view.rods) {
            let [from, to] = rod else { continue };
            let middle = (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1));
            let text = |(at, anchor)| Text::new(words, at, Face::Text, size, colour).anchored(anchor);
            labels.extend(taken.choose_free(about(middle, size, -1.0).map(text)));
        }
        labels
    }
}

/// Places of a label about a point: above it first where `first` is 1, below it first where it is −1.
fn about((x, y): Point, size: f64, first: f64) -> impl Iterator<Item = (Point, Anchor)> {
    let baseline = move |off: f64| if off > 0.0 { y - off } else { y - off + size * 0.74 };
    let offs = [14.0, -14.0, 32.0, -32.0].map(move |off| off * first);
    offs.into_iter().flat_map(move |off| [Anchor::Middle, Anchor::Start, Anchor::End].map(|anchor| ((x, baseline(off)), anchor)))
}

impl Picture for Views {
    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        let scale = self.px_per_length(width, MOST_HIGH_PX);
        self.labels_px() + self.views.iter().map(View::span).sum::<f64>() * scale
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let scale = self.px_per_length(size.0, size.1 - self.labels_px());
        let (from, to) = self.along();
        let left = (size.0 - (to - from) * scale) / 2.0;
        let mut top = 0.0;
        let mut taken = Taken::new(Rect::new(0.0, 0.0, size.0, size.1));
        let mut drawn = Vec::new();
        for view in &self.views {
            let (_, high) = view.up();
            let place = |(x, y): (f64, f64)| (left + (x - from) * scale, top + ABOVE_PX + (high - y) * scale);
            let ends = view.known().map(place).collect();
            drawn.push(Drawn { views: self, view, ends, top, scale: Scale::of(size.0) });
            top += ABOVE_PX + view.span() * scale + BELOW_PX;
        }
        for view in &drawn {
            view.draw(&mut scene, theme, &mut taken);
        }
        let labels: Vec<Text> = drawn.iter().flat_map(|view| view.labels(theme, &mut taken)).collect();
        for label in labels {
            scene.text(label);
        }
        let x = Axis::even((from, left), (to, left + (to - from) * scale));
        scene.window = Some(Window { plot: Rect::new(x.from.1, 0.0, x.to.1, size.1), x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let joints: Vec<String> = self.joints.iter().map(Joint::words).collect();
        let joints = format!("{}: {}.", self.hue.naming("joints"), joints.join(", "));
        std::iter::once(joints).chain(self.views.iter().map(|view| format!("{}: {}.", view.name, view.rods.join(", ")))).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let nearest = self.joints_along().min_by(|(_, a), (_, b)| (a - x).abs().total_cmp(&(b - x).abs()));
        let reading = |(joint, _): (&Joint, f64)| Reading {
            label: joint.name.clone(),
            value: joint.says.clone(),
            stands_out: true,
            is_beyond: false,
        };
        let at = nearest.map_or_else(String::new, |(_, at)| format!("{} {}", show(at, 1), self.unit).trim_end().to_owned());
        let group = Group { slot: self.hue.slot(), name: String::new(), readings: nearest.map(reading).into_iter().collect() };
        ReadOut { at, groups: vec![group] }
    }

    fn stops(&self) -> Vec<f64> {
        frame::stops(self.joints_along().map(|(_, x)| x))
    }

    fn table(&self) -> Table {
        let length = |word: &str| if self.unit.is_empty() { word.to_owned() } else { format!("{word}_{}", frame::unit_key(&self.unit)) };
        let mut table = Table::new(["view", "rod", &length("from_along"), &length("from_up"), &length("to_along"), &length("to_up")]);
        for view in &self.views {
            let rods = view.ends.windows(2).zip(&view.rods);
            table.rows.extend(rods.filter_map(|(ends, rod)| {
                let [from, to] = ends else { return None };
                let places = [from.0, from.1, to.0, to.1].map(|place| place.to_string());
                Some([view.name.clone(), rod.clone()].into_iter().chain(places).collect())
            }));
        }
        table
    }
}
