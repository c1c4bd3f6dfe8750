//! The pictures that hang on the sheet, so that paper can show the same ones.

use std::sync::Arc;

use leptos::prelude::*;

use crate::app::widgets::chart::pixels;
use crate::chart::palette::Colour;
use crate::chart::{self, LIGHT, Picture, Theme};

/// How wide a picture stands on paper, in CSS pixels; the style sheet fits it to the page.
pub const WIDTH: f64 = 700.0;

/// The colours of paper.
pub const PAPER: Theme = Theme { sheet: Colour(255, 255, 255), paper: Colour(255, 255, 255), ..LIGHT };

/// A picture of the sheet.
#[derive(Clone)]
pub struct Hung {
    /// Its name on the page.
    pub name: &'static str,
    /// What stands above it.
    pub caption: Signal<String>,
    /// Draws it as SVG for paper.
    pub svg: Arc<dyn Fn() -> Option<String> + Send + Sync>,
}

/// The pictures of the sheet, in the order in which they were hung.
#[derive(Clone, Copy, Default)]
pub struct Pictures(StoredValue<Vec<Hung>>);

impl Pictures {
    /// Hangs a picture for as long as what calls this is on the page.
    pub fn hang<P: Picture + Send + Sync + 'static>(self, name: &'static str, caption: Signal<String>, picture: Memo<P>) {
        let svg = Arc::new(move || picture.try_with_untracked(|picture| drawn(picture)).flatten());
        self.0.update_value(|hung| hung.push(Hung { name, caption, svg }));
        on_cleanup(move || {
            let _ = self.0.try_update_value(|hung| hung.retain(|other| other.name != name));
        });
    }

    /// The pictures inside a section of the page.
    pub fn of_section(self, section: &str) -> Vec<Hung> {
        let document = web_sys::window().and_then(|window| window.document());
        let is_inside = |hung: &&Hung| {
            let figure = document.as_ref().and_then(|document| document.get_element_by_id(&format!("picture-{}", hung.name)));
            figure.and_then(|figure| figure.closest(&format!("section[id=\"{section}\"]")).ok().flatten()).is_some()
        };
        self.0.with_value(|hung| hung.iter().filter(is_inside).cloned().collect())
    }
}

/// A picture as SVG for paper, as high as it wants to be.
pub fn drawn(picture: &dyn Picture) -> Option<String> {
    drawn_at(picture, picture.height(WIDTH))
}

/// A picture as SVG for paper at a height.
pub fn drawn_at(picture: &dyn Picture, height: f64) -> Option<String> {
    chart::svg_text(picture, &PAPER, (pixels(WIDTH), pixels(height))).ok()
}
