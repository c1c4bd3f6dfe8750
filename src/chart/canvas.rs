//! Pictures on a canvas of the page: strokes, dots and texts drawn straight onto its context, areas filled by plotters-canvas.
//!
//! The browser's own dashes are used, strokes of one style are joined to one path, and a style is set only when it changes. Texts wait
//! until something lies over them, so that a row of rules with its numbers is one path and one run of texts. Places are those of every
//! other surface, to a quarter of a device pixel; rules are moved onto whole device pixels.
use super::{
    ChartError, Picture, Theme,
    dash::usable,
    face::Face,
    paint::{HANG, rgb},
    scene::{Anchor, Ink, Mark, Pen, Point, Rect, Size, Text, Window},
};
use plotters_backend::{BackendColor, BackendCoord, DrawingBackend};
use plotters_canvas::CanvasBackend;
use wasm_bindgen::{JsCast, JsValue};
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
    let mut surface = Surface::new(canvas, pixels, ratio * UNITS).ok_or_else(|| ChartError::Surface("no drawing context".to_owned()))?;
    scene.marks.iter().try_for_each(|mark| surface.draw(mark)).and_then(|()| surface.present()).map_err(refused)?;
    Ok(scene.window)
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the value is clamped to what a canvas can have")]
fn device_pixels(length: f64) -> u32 {
    length.round().clamp(0.0, 16_384.0) as u32
}

/// What the browser said when it refused to draw.
#[expect(clippy::needless_pass_by_value, reason = "an error is mapped by a function of its value")]
fn refused(said: JsValue) -> ChartError {
    ChartError::Surface(format!("{said:?}"))
}

type Drawn = Result<(), JsValue>;

/// What is being gathered into one path, and how it looks.
#[derive(Clone, Copy, PartialEq)]
enum Open {
    /// Strokes of an ink, width in units and dash pattern.
    Strokes(Ink, f64, &'static [f64]),
    /// Dots of an ink.
    Dots(Ink),
}

struct Surface<'a> {
    context: CanvasRenderingContext2d,
    canvas: HtmlCanvasElement,
    /// What fills areas, made for the first of them: most pictures have none.
    areas: Option<CanvasBackend>,
    /// How many units make a CSS pixel.
    units: f64,
    open: Option<Open>,
    stroke: Option<Ink>,
    width: f64,
    dash: &'static [f64],
    fill: Option<Ink>,
    font: Option<(Face, f64)>,
    align: &'static str,
    /// Texts that are not drawn yet, with the boxes they fill in CSS pixels.
    texts: Vec<(&'a Text, Rect)>,
}

impl<'a> Surface<'a> {
    fn new(canvas: &HtmlCanvasElement, [width, height]: [u32; 2], units: f64) -> Option<Self> {
        if canvas.width() != width || canvas.height() != height {
            canvas.set_width(width);
            canvas.set_height(height);
        }
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        context.set_transform(1.0, 0.0, 0.0, 1.0, 0.0, 0.0).ok()?;
        context.clear_rect(0.0, 0.0, f64::from(width), f64::from(height));
        context.scale(UNITS.recip(), UNITS.recip()).ok()?;
        context.set_line_join("round");
        context.set_line_dash(&js_sys::Array::new()).ok()?;
        context.set_text_baseline("alphabetic");
        Some(Self {
            context,
            canvas: canvas.clone(),
            areas: None,
            units,
            open: None,
            stroke: None,
            width: 0.0,
            dash: &[],
            fill: None,
            font: None,
            align: "",
            texts: Vec::with_capacity(64),
        })
    }

    fn draw(&mut self, mark: &'a Mark) -> Drawn {
        match mark {
            Mark::Rule { from, to, pen } => self.rule(*from, *to, pen),
            Mark::Line { points, pen } => self.line(points, pen),
            Mark::Fill { outline, ink } => self.area(outline, *ink),
            Mark::Disc { centre, radius, ink } => self.disc(*centre, *radius, *ink),
            Mark::Text(text) => {
                self.texts.push((text, text.bounds().grown(1.0)));
                Ok(())
            }
        }
    }

    /// Everything that still waits.
    fn present(&mut self) -> Drawn {
        self.flush();
        self.write()
    }

    fn rule(&mut self, from: Point, to: Point, pen: &Pen) -> Drawn {
        self.make_way(&[from, to], pen.width_px)?;
        let pixels = (whole(pen.width_px * self.units).max(1.0) / UNITS).round().max(1.0);
        let (mut from, mut to) = (self.place(from), self.place(to));
        if from == to {
            return Ok(());
        }
        self.begin_strokes(pen, pixels * UNITS, &[from, to])?;
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

    fn line(&mut self, points: &[Point], pen: &Pen) -> Drawn {
        self.make_way(points, pen.width_px)?;
        self.begin_strokes(pen, whole(pen.width_px * self.units).max(1.0), points)?;
        self.through(points);
        Ok(())
    }

    /// Lays the open path through points, equal neighbours dropped.
    fn through(&self, points: &[Point]) {
        let mut last = None;
        for point in points {
            let at = self.place(*point);
            match last {
                None => self.context.move_to(at.0, at.1),
                Some(before) if before == at => {}
                Some(_) => self.context.line_to(at.0, at.1),
            }
            last = Some(at);
        }
    }

    fn area(&mut self, outline: &[Point], ink: Ink) -> Drawn {
        self.make_way(outline, 0.0)?;
        self.flush();
        // It sets a style of its own.
        self.fill = None;
        let corners: Vec<BackendCoord> = outline.iter().map(|point| corner(self.place(*point))).collect();
        let colour = BackendColor { rgb: rgb(ink.colour), alpha: ink.cover };
        if self.areas.is_none() {
            self.areas = CanvasBackend::with_canvas_object(self.canvas.clone());
        }
        let areas = self.areas.as_mut().ok_or_else(|| JsValue::from_str("no drawing context"))?;
        areas.fill_polygon(corners, &colour).map_err(|said| JsValue::from_str(&said.to_string()))
    }

    fn disc(&mut self, centre: Point, radius: f64, ink: Ink) -> Drawn {
        self.make_way(&[centre], 2.0 * radius)?;
        if self.begin(Open::Dots(ink)) {
            self.set_fill(ink);
        }
        let ((x, y), radius) = (self.place(centre), whole(radius * self.units).abs());
        self.context.move_to(x + radius, y);
        self.context.arc(x, y, radius, 0.0, std::f64::consts::TAU)
    }

    /// Draws the texts that wait, where what comes next would lie over one of them.
    fn make_way(&mut self, points: &[Point], width_px: f64) -> Drawn {
        if self.texts.is_empty() {
            return Ok(());
        }
        let next = Rect::around(points).grown(0.5 * width_px);
        if self.texts.iter().any(|(_, taken)| next.meets(taken)) {
            self.flush();
            self.write()?;
        }
        Ok(())
    }

    fn write(&mut self) -> Drawn {
        for (text, _) in std::mem::take(&mut self.texts) {
            let size = text.size_px * self.units;
            if self.font != Some((text.face, size)) {
                self.context.set_font(&format!("{} {size}px {}", text.face.weight(), text.face.family()));
                self.font = Some((text.face, size));
            }
            let align = match text.anchor {
                Anchor::Start => "left",
                Anchor::Middle => "center",
                Anchor::End => "right",
            };
            if align != self.align {
                self.context.set_text_align(align);
                self.align = align;
            }
            self.set_fill(text.colour.into());
            let (x, top) = self.place((text.at.0, text.at.1 - HANG * text.size_px));
            self.context.fill_text(&text.words, x, top + HANG * size)?;
        }
        Ok(())
    }

    /// Begins strokes through these points, whose length decides whether a pattern can be seen.
    fn begin_strokes(&mut self, pen: &Pen, width: f64, points: &[Point]) -> Drawn {
        let dash = usable(points, pen.dash);
        if !self.begin(Open::Strokes(pen.ink, width, dash)) {
            return Ok(());
        }
        if self.stroke != Some(pen.ink) {
            self.context.set_stroke_style_str(&css(pen.ink));
            self.stroke = Some(pen.ink);
        }
        if self.width.to_bits() != width.to_bits() {
            self.context.set_line_width(width);
            self.width = width;
        }
        if self.dash != dash {
            let lengths: js_sys::Array = dash.iter().map(|length| JsValue::from_f64(length * self.units)).collect();
            self.context.set_line_dash(&lengths)?;
            self.dash = dash;
        }
        Ok(())
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
            Some(Open::Dots(_)) => self.context.fill(),
            None => {}
        }
    }

    fn set_fill(&mut self, ink: Ink) {
        if self.fill != Some(ink) {
            self.context.set_fill_style_str(&css(ink));
            self.fill = Some(ink);
        }
    }

    /// A place in whole units.
    fn place(&self, (x, y): Point) -> Point {
        (whole(x * self.units), whole(y * self.units))
    }
}

/// A place in whole units as plotters counts them.
#[expect(clippy::cast_possible_truncation, reason = "a place is whole and at most a million")]
fn corner((x, y): Point) -> BackendCoord {
    (x as i32, y as i32)
}

/// The nearest whole unit, kept to what a surface can have; not a number becomes 0.
fn whole(value: f64) -> f64 {
    if value.is_nan() { 0.0 } else { value.round().clamp(-1e6, 1e6) }
}

/// The place of a rule of this many device pixels that is nearest to `units` and covers whole pixels.
fn crisp(units: f64, pixels: f64) -> f64 {
    let half = pixels / 2.0 % 1.0;
    ((units / UNITS - half).round() + half) * UNITS
}

fn css(ink: Ink) -> String {
    if ink.cover < 1.0 {
        let super::palette::Colour(red, green, blue) = ink.colour;
        format!("rgba({red},{green},{blue},{})", ink.cover)
    } else {
        ink.colour.css()
    }
}
