//! A plotters backend that writes SVG to a tenth of a CSS pixel.
//!
//! plotters' own writes whole pixels only, every dash as a shape of its own, and no weight between normal and bold. This one joins
//! strokes of one style to one path, hangs texts by their baseline and names the faces as the style sheet does.
use super::{
    paint::{HANG, PLOTTERS_SIZE},
    palette::Colour,
};
use crate::sheet::markup::escaped;
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind, FontStyle, text_anchor::HPos,
};
use std::{convert::Infallible, fmt::Write};

/// How many units make a CSS pixel.
pub(super) const UNITS: f64 = 10.0;

/// What is drawn so far.
pub(super) struct Svg<'a> {
    size: (u32, u32),
    out: &'a mut String,
    /// The style and path of strokes not yet written.
    open: Option<(String, String)>,
    is_closed: bool,
}

type Drawn = Result<(), DrawingErrorKind<Infallible>>;

impl<'a> Svg<'a> {
    /// Begins a picture of this size in units, with its title for those who cannot see it.
    pub(super) fn new(out: &'a mut String, size: (u32, u32), title: &str) -> Self {
        let (width, height) = (f64::from(size.0) / UNITS, f64::from(size.1) / UNITS);
        out.push_str("<svg xmlns=\"http://www.w3.org/2000/svg\"");
        put(out, format_args!(" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" role=\"img\">\n"));
        put(out, format_args!("<title>{}</title>\n", escaped(title)));
        out.push_str("<g fill=\"none\" stroke-linejoin=\"round\">\n");
        Self { size, out, open: None, is_closed: false }
    }

    fn stroke(&mut self, path: impl Iterator<Item = BackendCoord>, style: &impl BackendStyle) {
        let mut attributes = format!("stroke=\"{}\" stroke-width=\"{}\"", css(style.color()), Tenths(signed(style.stroke_width())));
        if style.color().alpha < 1.0 {
            put(&mut attributes, format_args!(" stroke-opacity=\"{}\"", style.color().alpha));
        }
        if self.open.as_ref().is_none_or(|(open, _)| *open != attributes) {
            self.flush();
        }
        let (_, data) = self.open.get_or_insert_with(|| (attributes, String::new()));
        put_path(data, path);
    }

    fn flush(&mut self) {
        if let Some((attributes, data)) = self.open.take() {
            put(self.out, format_args!("<path {attributes} d=\"{data}\"/>\n"));
        }
    }

    fn filled(&mut self, color: BackendColor) -> String {
        self.flush();
        let opacity = if color.alpha < 1.0 { format!(" fill-opacity=\"{}\"", color.alpha) } else { String::new() };
        format!("fill=\"{}\"{opacity}", css(color))
    }
}

impl DrawingBackend for Svg<'_> {
    type ErrorType = Infallible;

    fn get_size(&self) -> (u32, u32) {
        self.size
    }

    fn ensure_prepared(&mut self) -> Drawn {
        Ok(())
    }

    fn present(&mut self) -> Drawn {
        self.flush();
        if !self.is_closed {
            self.is_closed = true;
            self.out.push_str("</g>\n</svg>\n");
        }
        Ok(())
    }

    fn draw_pixel(&mut self, (x, y): BackendCoord, color: BackendColor) -> Drawn {
        self.fill_polygon([(x, y), (x + 1, y), (x + 1, y + 1), (x, y + 1)], &color)
    }

    fn draw_line<S: BackendStyle>(&mut self, from: BackendCoord, to: BackendCoord, style: &S) -> Drawn {
        self.stroke([from, to].into_iter(), style);
        Ok(())
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, path: I, style: &S) -> Drawn {
        self.stroke(path.into_iter(), style);
        Ok(())
    }

    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, corners: I, style: &S) -> Drawn {
        let attributes = self.filled(style.color());
        let mut data = String::new();
        put_path(&mut data, corners.into_iter());
        put(self.out, format_args!("<path {attributes} d=\"{data}Z\"/>\n"));
        Ok(())
    }

    fn draw_circle<S: BackendStyle>(&mut self, (x, y): BackendCoord, radius: u32, style: &S, fill: bool) -> Drawn {
        let attributes = if fill {
            self.filled(style.color())
        } else {
            self.flush();
            format!("stroke=\"{}\" stroke-width=\"{}\"", css(style.color()), Tenths(signed(style.stroke_width())))
        };
        put(self.out, format_args!("<circle {attributes} cx=\"{}\" cy=\"{}\" r=\"{}\"/>\n", Tenths(x), Tenths(y), Tenths(signed(radius))));
        Ok(())
    }

    fn draw_text<S: BackendTextStyle>(&mut self, words: &str, style: &S, (x, y): BackendCoord) -> Drawn {
        let size = style.size() / PLOTTERS_SIZE / UNITS;
        let baseline = f64::from(y) / UNITS + HANG * size;
        let anchor = match style.anchor().h_pos {
            HPos::Left => "",
            HPos::Center => " text-anchor=\"middle\"",
            HPos::Right => " text-anchor=\"end\"",
        };
        let weight = if matches!(style.style(), FontStyle::Bold) { " font-weight=\"600\"" } else { "" };
        let family = style.family();
        let (fill, words) = (self.filled(style.color()), escaped(words));
        let font = format!("font-family=\"{}\" font-size=\"{size}\"{weight}{anchor}", escaped(family.as_str()));
        put(self.out, format_args!("<text {fill} {font} x=\"{}\" y=\"{:.1}\">{words}</text>\n", Tenths(x), baseline));
        Ok(())
    }
}

fn put(out: &mut String, text: std::fmt::Arguments<'_>) {
    // Writing to a string cannot fail.
    let _ = out.write_fmt(text);
}

fn put_path(data: &mut String, path: impl Iterator<Item = BackendCoord>) {
    for (at, (x, y)) in path.enumerate() {
        put(data, format_args!("{}{} {}", if at == 0 { 'M' } else { 'L' }, Tenths(x), Tenths(y)));
    }
}

/// Units written as CSS pixels.
struct Tenths(i32);

impl std::fmt::Display for Tenths {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}", f64::from(self.0) / UNITS)
    }
}

fn signed(value: u32) -> i32 {
    i32::try_from(value).unwrap_or(i32::MAX)
}

fn css(color: BackendColor) -> String {
    let (red, green, blue) = color.rgb;
    Colour(red, green, blue).css()
}
