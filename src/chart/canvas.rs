//! Pictures on a canvas of the page: a backend over plotters-canvas that draws strokes and texts itself.
//!
//! plotters counts in whole units, and plotters-canvas makes each of them a pixel, so curves get stairs and rules blur. Here a device
//! pixel has four units, rules are moved onto whole device pixels, strokes or dots of one style are joined to one path, and a style is
//! set only when it changes. Other shapes are left to plotters-canvas, which draws them well.
use super::{
    ChartError, Picture, Theme,
    paint::{self, HANG, PLOTTERS_SIZE},
    scene::{Size, Window},
};
use plotters::drawing::IntoDrawingArea;
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind, FontStyle, text_anchor::HPos,
};
use plotters_canvas::CanvasBackend;
use wasm_bindgen::JsCast;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// How many units make a device pixel.
const UNITS: f64 = 4.0;

/// Draws a picture on a canvas of this size in CSS pixels, `ratio` device pixels to each, and answers where a pointer may ask for values.
///
/// The canvas is given the device pixels it needs; its size on the page is the style sheet's. Nothing is drawn without width or height.
///
/// # Errors
/// Where the browser gives no drawing context or refuses to draw.
pub fn paint_on(
    canvas: &HtmlCanvasElement,
    picture: &dyn Picture,
    theme: &Theme,
    size: Size,
    ratio: f64,
) -> Result<Option<Window>, ChartError> {
    let pixels = [size.0, size.1].map(|length| device_pixels(length * ratio));
    if pixels.contains(&0) {
        return Ok(None);
    }
    let scene = picture.scene(theme, size);
    let surface = Surface::new(canvas, pixels).ok_or_else(|| ChartError::Surface("no drawing context".to_owned()))?;
    paint::paint(&scene, &surface.into_drawing_area(), ratio * UNITS)?;
    Ok(scene.window)
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the value is clamped to what a canvas can have")]
fn device_pixels(length: f64) -> u32 {
    length.round().clamp(0.0, 16_384.0) as u32
}

/// What is being gathered into one path, and how it looks.
#[derive(Clone, Copy, PartialEq)]
enum Open {
    /// Strokes of a colour, cover and width in units.
    Strokes((u8, u8, u8), f64, u32),
    /// Dots of a colour and cover.
    Dots((u8, u8, u8), f64),
}

struct Surface {
    context: CanvasRenderingContext2d,
    shapes: CanvasBackend,
    size: (u32, u32),
    open: Option<Open>,
    fill: Option<BackendColor>,
    font: String,
    align: &'static str,
}

/// Why the browser refused to draw.
#[derive(Debug)]
struct Refused(String);

impl std::fmt::Display for Refused {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Refused {}

type Drawn = Result<(), DrawingErrorKind<Refused>>;

fn refused(error: impl std::fmt::Debug) -> DrawingErrorKind<Refused> {
    DrawingErrorKind::DrawingError(Refused(format!("{error:?}")))
}

impl Surface {
    fn new(canvas: &HtmlCanvasElement, [width, height]: [u32; 2]) -> Option<Self> {
        if canvas.width() != width || canvas.height() != height {
            canvas.set_width(width);
            canvas.set_height(height);
        }
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        context.set_transform(1.0, 0.0, 0.0, 1.0, 0.0, 0.0).ok()?;
        context.clear_rect(0.0, 0.0, f64::from(width), f64::from(height));
        context.scale(UNITS.recip(), UNITS.recip()).ok()?;
        context.set_line_join("round");
        context.set_text_baseline("alphabetic");
        let shapes = CanvasBackend::with_canvas_object(canvas.clone())?;
        let size = (width.saturating_mul(4), height.saturating_mul(4));
        Some(Self { context, shapes, size, open: None, fill: None, font: String::new(), align: "" })
    }

    fn begin_strokes(&mut self, color: BackendColor, width: u32) {
        if self.begin(Open::Strokes(color.rgb, color.alpha, width)) {
            self.context.set_stroke_style_str(&css(color));
            self.context.set_line_width(f64::from(width));
        }
    }

    fn begin_dots(&mut self, color: BackendColor) {
        if self.begin(Open::Dots(color.rgb, color.alpha)) {
            self.set_fill(color);
        }
    }

    /// Begins a path unless the one being built is of that kind; answers whether it did.
    fn begin(&mut self, wanted: Open) -> bool {
        if self.open == Some(wanted) {
            return false;
        }
        self.flush();
        self.context.begin_path();
        self.open = Some(wanted);
        true
    }

    fn flush(&mut self) {
        match self.open.take() {
            Some(Open::Strokes(..)) => self.context.stroke(),
            Some(Open::Dots(..)) => self.context.fill(),
            None => {}
        }
    }

    /// Finishes the open path and lets plotters-canvas draw, which sets styles of its own.
    fn shape<E: std::fmt::Debug>(&mut self, draw: impl FnOnce(&mut CanvasBackend) -> Result<(), E>) -> Drawn {
        self.flush();
        self.fill = None;
        draw(&mut self.shapes).map_err(refused)
    }

    fn set_fill(&mut self, color: BackendColor) {
        if self.fill.is_none_or(|fill| fill.rgb != color.rgb || (fill.alpha - color.alpha).abs() > 0.0) {
            self.context.set_fill_style_str(&css(color));
            self.fill = Some(color);
        }
    }
}

impl DrawingBackend for Surface {
    type ErrorType = Refused;

    fn get_size(&self) -> (u32, u32) {
        self.size
    }

    fn ensure_prepared(&mut self) -> Drawn {
        Ok(())
    }

    fn present(&mut self) -> Drawn {
        self.flush();
        Ok(())
    }

    fn draw_pixel(&mut self, place: BackendCoord, color: BackendColor) -> Drawn {
        self.shape(|shapes| shapes.draw_pixel(place, color))
    }

    fn draw_line<S: BackendStyle>(&mut self, from: BackendCoord, to: BackendCoord, style: &S) -> Drawn {
        let pixels = (f64::from(style.stroke_width()) / UNITS).round().max(1.0);
        self.begin_strokes(style.color(), device_pixels(pixels * UNITS));
        let (mut from, mut to) = ((f64::from(from.0), f64::from(from.1)), (f64::from(to.0), f64::from(to.1)));
        if (from.0 - to.0).abs() < 1.0 {
            from.0 = crisp(from.0, pixels);
            to.0 = from.0;
        } else if (from.1 - to.1).abs() < 1.0 {
            from.1 = crisp(from.1, pixels);
            to.1 = from.1;
        }
        self.context.move_to(from.0, from.1);
        self.context.line_to(to.0, to.1);
        Ok(())
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, path: I, style: &S) -> Drawn {
        self.begin_strokes(style.color(), style.stroke_width());
        let mut path = path.into_iter().map(|(x, y)| (f64::from(x), f64::from(y)));
        if let Some((x, y)) = path.next() {
            self.context.move_to(x, y);
        }
        path.for_each(|(x, y)| self.context.line_to(x, y));
        Ok(())
    }

    fn draw_rect<S: BackendStyle>(&mut self, from: BackendCoord, to: BackendCoord, style: &S, fill: bool) -> Drawn {
        self.shape(|shapes| shapes.draw_rect(from, to, style, fill))
    }

    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, corners: I, style: &S) -> Drawn {
        self.shape(|shapes| shapes.fill_polygon(corners, style))
    }

    fn draw_circle<S: BackendStyle>(&mut self, centre: BackendCoord, radius: u32, style: &S, fill: bool) -> Drawn {
        if fill {
            let (x, y, radius) = (f64::from(centre.0), f64::from(centre.1), f64::from(radius));
            self.begin_dots(style.color());
            self.context.move_to(x + radius, y);
            return self.context.arc(x, y, radius, 0.0, std::f64::consts::TAU).map_err(refused);
        }
        self.shape(|shapes| shapes.draw_circle(centre, radius, style, fill))
    }

    fn draw_text<S: BackendTextStyle>(&mut self, words: &str, style: &S, (x, y): BackendCoord) -> Drawn {
        self.flush();
        let size = style.size() / PLOTTERS_SIZE;
        let weight = if matches!(style.style(), FontStyle::Bold) { 600 } else { 400 };
        let font = format!("{weight} {size}px {}", style.family().as_str());
        if font != self.font {
            self.context.set_font(&font);
            self.font = font;
        }
        let align = match style.anchor().h_pos {
            HPos::Left => "left",
            HPos::Center => "center",
            HPos::Right => "right",
        };
        if align != self.align {
            self.context.set_text_align(align);
            self.align = align;
        }
        self.set_fill(style.color());
        self.context.fill_text(words, f64::from(x), f64::from(y) + HANG * size).map_err(refused)
    }
}

/// The place of a rule of this many device pixels that is nearest to `units` and covers whole pixels.
fn crisp(units: f64, pixels: f64) -> f64 {
    let half = pixels / 2.0 % 1.0;
    ((units / UNITS - half).round() + half) * UNITS
}

fn css(color: BackendColor) -> String {
    let (red, green, blue) = color.rgb;
    if color.alpha < 1.0 { format!("rgba({red},{green},{blue},{})", color.alpha) } else { super::palette::Colour(red, green, blue).css() }
}
