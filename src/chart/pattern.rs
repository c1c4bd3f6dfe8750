//! Contact patterns on the teeth of a ring gear, side by side: each flank with the patch that the paint shows, the one chosen framed.
use super::{
    Picture,
    face::Face,
    frame::{Axis, Scale},
    palette::Theme,
    readout::{Group, ReadOut, Reading, Table},
    scene::{Anchor, Ink, Pen, Point, Rect, Scene, Size, Text, Window},
};

/// The data of a picture of contact patterns.
#[derive(Clone, Debug, PartialEq)]
pub struct Patterns {
    /// What the picture is called.
    pub title: String,
    /// The flanks, left to right.
    pub flanks: Vec<Flank>,
    /// Whether the toe, the inner and lower end of a tooth, lies at the left.
    pub toe_is_left: bool,
}

/// A flank with its patch.
#[derive(Clone, Debug, PartialEq)]
pub struct Flank {
    /// What the pattern is called.
    pub name: String,
    /// What is done about it.
    pub means: String,
    /// The middle of the patch: from toe to heel, and from root to tip, each from 0 to 1.
    pub middle: Point,
    /// Whether it was chosen.
    pub is_chosen: bool,
}

/// How high a tooth stands at its toe, as a share of its heel.
const TOE: f64 = 0.68;
/// Half of a patch along and up the tooth, as shares of it.
const PATCH: (f64, f64) = (0.22, 0.2);
/// Corners of a patch.
const CORNERS: u32 = 24;
/// A tooth's height to its room.
const TALL: f64 = 0.42;

/// A place on a flank, from toe to heel and from root to tip, in a box: the toe at its left, or at its right.
fn place(room: Rect, (along, up): Point, toe_is_left: bool) -> Point {
    let tip = TOE + (1.0 - TOE) * along;
    let x = if toe_is_left { along } else { 1.0 - along };
    (room.left + x * (room.right - room.left), room.bottom - up * tip * (room.bottom - room.top))
}

impl Patterns {
    fn many(&self) -> f64 {
        f64::from(u32::try_from(self.flanks.len().max(1)).unwrap_or(1))
    }

    fn index(&self, x: f64) -> Option<usize> {
        (0_u32..).zip(0..self.flanks.len()).find(|(at, _)| x < f64::from(*at + 1)).map(|(_, index)| index)
    }

    /// The flank at a value of the axis.
    pub fn at(&self, x: f64) -> Option<&Flank> {
        self.flanks.get(self.index(x)?)
    }

    fn draw(&self, scene: &mut Scene, theme: &Theme, flank: &Flank, room: Rect, scale: &Scale) {
        let corner = |at| place(room, at, self.toe_is_left);
        let outline: Vec<Point> = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)].map(corner).to_vec();
        scene.fill(outline.clone(), Ink { colour: theme.ink_3, cover: 0.16 });
        let patch = (0..CORNERS).map(|step| {
            let turn = f64::from(step) / f64::from(CORNERS) * std::f64::consts::TAU;
            corner((flank.middle.0 + PATCH.0 * turn.cos(), flank.middle.1 + PATCH.1 * turn.sin()))
        });
        scene.fill(patch.collect(), Ink { colour: theme.dye, cover: if flank.is_chosen { 0.9 } else { 0.5 } });
        let closed = outline.iter().copied().chain(outline.first().copied()).collect();
        let pen = if flank.is_chosen { Pen::full(theme.dye, 2.6) } else { Pen::full(theme.ink_2, 1.2) };
        scene.line(closed, pen);
        let colour = if flank.is_chosen { theme.dye } else { theme.ink };
        let face = if flank.is_chosen { Face::Strong } else { Face::Text };
        let at = (f64::midpoint(room.left, room.right), room.bottom + 6.0 + scale.words_px);
        scene.text(Text::new(&flank.name, at, face, scale.words_px, colour).anchored(Anchor::Middle));
    }
}

impl Picture for Patterns {
    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        let scale = Scale::of(width);
        width.min(760.0) / self.many() * TALL + 3.0 * scale.words_px + 34.0
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let scale = Scale::of(size.0);
        let wide = size.0.min(760.0);
        let left = (size.0 - wide) / 2.0;
        let x = Axis::even((0.0, left), (self.many(), left + wide));
        let head = scale.words_px + 12.0;
        let foot = size.1 - scale.words_px * 2.0 - 10.0;
        let ends = if self.toe_is_left { ["toe at the left", "heel at the right"] } else { ["heel at the left", "toe at the right"] };
        let [first, last] = ends;
        scene.text(Text::new(first, (left + 6.0, scale.words_px), Face::Text, scale.figures_px, theme.ink_2));
        scene.text(Text::new(last, (left + wide - 6.0, scale.words_px), Face::Text, scale.figures_px, theme.ink_2).anchored(Anchor::End));
        for (at, flank) in (0_u32..).zip(&self.flanks) {
            let room = Rect::new(x.place(f64::from(at)) + 6.0, head, x.place(f64::from(at) + 1.0) - 6.0, foot);
            self.draw(&mut scene, theme, flank, room, &scale);
        }
        scene.window = Some(Window { plot: Rect::new(left, 0.0, left + wide, size.1), x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let one = |flank: &Flank| format!("{}{}: {}.", flank.name, if flank.is_chosen { ", as it is here" } else { "" }, flank.means);
        self.flanks.iter().map(one).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let flank = self.at(x);
        let name = flank.map(|flank| flank.name.clone()).unwrap_or_default();
        let reading =
            flank.map(|flank| Reading { label: flank.means.clone(), value: String::new(), stands_out: flank.is_chosen, is_beyond: false });
        ReadOut { at: name, groups: vec![Group { slot: None, name: String::new(), readings: reading.into_iter().collect() }] }
    }

    fn stops(&self) -> Vec<f64> {
        (0_u32..).zip(&self.flanks).map(|(at, _)| f64::from(at) + 0.5).collect()
    }

    fn table(&self) -> Table {
        let mut table = Table::new(["pattern", "what_to_do", "chosen"]);
        table.rows = self.flanks.iter().map(|flank| vec![flank.name.clone(), flank.means.clone(), flank.is_chosen.to_string()]).collect();
        table
    }
}
