//! Pictures as paper shows them: black on white, as lines.

use crate::app::widgets::chart::pixels;
use crate::chart::palette::Colour;
use crate::chart::{self, LIGHT, Picture, Theme};

/// How wide a picture stands on paper, in CSS pixels; the style sheet fits it to the page.
pub const WIDTH: f64 = 700.0;

/// The colours of paper.
pub const PAPER: Theme = Theme { sheet: Colour(255, 255, 255), paper: Colour(255, 255, 255), ..LIGHT };

/// A picture as SVG for paper, as high as it wants to be.
pub fn drawn(picture: &dyn Picture) -> Option<String> {
    drawn_at(picture, picture.height(WIDTH))
}

/// How wide and how high one of two pictures side by side stands.
const SMALL: (f64, f64) = (400.0, 160.0);

/// A picture as SVG for paper, one of two side by side.
pub fn small(picture: &dyn Picture) -> Option<String> {
    let (wide, high) = SMALL;
    chart::svg_text(picture, &PAPER, (pixels(wide), pixels(high))).ok()
}

/// A picture as SVG for paper at a height.
pub fn drawn_at(picture: &dyn Picture, height: f64) -> Option<String> {
    chart::svg_text(picture, &PAPER, (pixels(WIDTH), pixels(height))).ok()
}
