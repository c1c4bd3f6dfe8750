//! The pictures of the sheet, drawn alike on a canvas, as SVG and as a bitmap.
//!
//! Each picture is plain data ([`ladder::Ladder`], [`shift::ShiftChart`] …) that answers the questions of [`Picture`]: how it looks at a
//! size (a [`scene::Scene`] with every label in its place), what it says in words, what stands under a pointer, and its table.
//! [`paint::paint`] puts any scene on any plotters backend; [`svg_text`] writes one; `canvas` paints one in the page.
//! Titles and legends are the page's; here labels stand on the lines themselves.
pub mod bars;
#[cfg(target_arch = "wasm32")]
pub mod canvas;
pub mod dash;
pub mod face;
pub mod frame;
pub mod framed;
pub mod ladder;
pub mod lines;
pub mod order_map;
pub mod own_size;
pub mod paint;
pub mod palette;
pub mod pattern;
pub mod place;
pub mod readout;
pub mod recorded;
pub mod rect;
pub mod scatter;
pub mod scene;
pub mod shapes;
pub mod shift;
pub mod spans;
pub mod spectrum;
mod svg;
pub mod ticks;
pub mod train;
pub mod turning;
pub mod views;

pub use paint::ChartError;
pub use palette::{DARK, LIGHT, Theme};

use plotters::{coord::Shift, drawing::DrawingArea, drawing::IntoDrawingArea};
use plotters_backend::DrawingBackend;
use readout::{ReadOut, Table};
use scene::{Scene, Size};

/// A picture as plain data: how it looks, and the same facts without looking.
pub trait Picture: Send + Sync {
    /// What the picture is called, as a heading would say it.
    fn title(&self) -> String;
    /// How high it wants to be at this width, in CSS pixels.
    fn height(&self, width: f64) -> f64;
    /// How it looks at a size in CSS pixels.
    fn scene(&self, theme: &Theme, size: Size) -> Scene;
    /// The same facts in sentences, one to a setup or series.
    fn describe(&self) -> Vec<String>;
    /// The unit of the axis along the picture, where it has one. Pictures over road speed share the speed looked at.
    fn axis_unit(&self) -> Option<&str> {
        None
    }
    /// What stands under a pointer at the value `x` of the axis along the picture.
    fn read_out(&self, x: f64) -> ReadOut;
    /// The values worth stopping at when the pointer is moved by keys, rising.
    fn stops(&self) -> Vec<f64>;
    /// The figures behind the picture.
    fn table(&self) -> Table;
    /// What it shows at its own size, to be saved for a machine or a printer.
    fn own_size(&self) -> Option<&own_size::OwnSize> {
        None
    }
    /// The picture after a finger went along it to that value of its axis, where what it shows turns.
    fn turned(&self, _to: f64) -> Option<Box<dyn Picture>> {
        None
    }
}

/// Draws a picture over the whole of a drawing area, `units` of the backend's units to a CSS pixel.
///
/// # Errors
/// Where the backend refuses to draw.
pub fn draw<DB: DrawingBackend>(picture: &dyn Picture, theme: &Theme, area: &DrawingArea<DB, Shift>, units: f64) -> Result<(), ChartError> {
    let (width, height) = area.dim_in_pixel();
    let scene = picture.scene(theme, (f64::from(width) / units, f64::from(height) / units));
    paint::paint(&scene, area, units)
}

/// A picture as the text of an SVG file on its sheet colour, its size in CSS pixels.
///
/// # Errors
/// Never in practice: writing to a text does not fail; the type is that of every backend.
pub fn svg_text(picture: &dyn Picture, theme: &Theme, (width, height): (u32, u32)) -> Result<String, ChartError> {
    let mut scene = picture.scene(theme, (f64::from(width), f64::from(height)));
    let sheet = scene::Rect::new(0.0, 0.0, f64::from(width), f64::from(height));
    scene.marks.insert(0, scene::Mark::Fill { outline: sheet.corners(), ink: theme.sheet.into() });
    let mut out = String::new();
    let size = (width.saturating_mul(10), height.saturating_mul(10));
    paint::paint(&scene, &svg::Svg::new(&mut out, size, &picture.title()).into_drawing_area(), svg::UNITS)?;
    Ok(out)
}
