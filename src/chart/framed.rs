//! A picture as it leaves the page: with its title above and the setups below, so that it can be read where nobody sees the page.

use super::Picture;
use super::face::Face;
use super::palette::{self, Theme};
use super::readout::{ReadOut, Table};
use super::scene::{Mark, Pen, Rect, Scene, Size, Text};

/// Room for the title.
const TITLE_PX: f64 = 38.0;
/// Room for one line of the legend.
const LINE_PX: f64 = 22.0;
/// Room around everything.
const MARGIN_PX: f64 = 16.0;
/// The size of the title and of the legend.
const TEXT_PX: (f64, f64) = (18.0, 15.0);

/// A picture with its title and a legend of the setups.
pub struct Framed<'a> {
    /// What is drawn inside the frame.
    pub picture: &'a dyn Picture,
    /// What stands above it.
    pub title: String,
    /// The names of the setups, in the order of their letters.
    pub setups: Vec<String>,
    /// Whether the sheet's colour is under it, for what has no ground of its own.
    pub has_ground: bool,
}

impl Framed<'_> {
    fn legend_height(&self) -> f64 {
        self.setups.iter().fold(0.0, |height, _| height + LINE_PX)
    }
}

impl Picture for Framed<'_> {
    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        TITLE_PX + self.picture.height(width - 2.0 * MARGIN_PX) + self.legend_height() + 2.0 * MARGIN_PX
    }

    fn scene(&self, theme: &Theme, (width, height): Size) -> Scene {
        let inner = (width - 2.0 * MARGIN_PX, height - TITLE_PX - self.legend_height() - 2.0 * MARGIN_PX);
        let mut scene = Scene::new((width, height));
        if self.has_ground {
            scene.fill(Rect::new(0.0, 0.0, width, height).corners(), theme.sheet);
        }
        scene.text(Text::new(self.title.clone(), (MARGIN_PX, MARGIN_PX + TEXT_PX.0), Face::Strong, TEXT_PX.0, theme.ink));
        let (right, down) = (MARGIN_PX, MARGIN_PX + TITLE_PX);
        scene.marks.extend(self.picture.scene(theme, inner).marks.into_iter().map(|mark| moved(mark, right, down)));
        let mut baseline = down + inner.1 + LINE_PX;
        for (slot, name) in self.setups.iter().enumerate() {
            let colour = theme.setup(slot);
            scene.line(
                vec![(MARGIN_PX, baseline - 5.0), (MARGIN_PX + 34.0, baseline - 5.0)],
                Pen::full(colour, 2.5).dashed(palette::dash(slot)),
            );
            let words = format!("{}  {name}", palette::letter(slot));
            scene.text(Text::new(words, (MARGIN_PX + 44.0, baseline), Face::Text, TEXT_PX.1, theme.ink));
            baseline += LINE_PX;
        }
        scene
    }

    fn describe(&self) -> Vec<String> {
        self.picture.describe()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        self.picture.read_out(x)
    }

    fn stops(&self) -> Vec<f64> {
        self.picture.stops()
    }

    fn table(&self) -> Table {
        self.picture.table()
    }
}

fn moved(mark: Mark, right: f64, down: f64) -> Mark {
    let place = |(x, y): (f64, f64)| (x + right, y + down);
    match mark {
        Mark::Rule { from, to, pen } => Mark::Rule { from: place(from), to: place(to), pen },
        Mark::Line { points, pen } => Mark::Line { points: points.into_iter().map(place).collect(), pen },
        Mark::Fill { outline, ink } => Mark::Fill { outline: outline.into_iter().map(place).collect(), ink },
        Mark::Disc { centre, radius, ink } => Mark::Disc { centre: place(centre), radius, ink },
        Mark::Text(text) => Mark::Text(Text { at: place(text.at), ..text }),
    }
}
