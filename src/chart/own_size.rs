//! A closed outline at its own size: an SVG in millimetres with a scale that checks the printer, and a DXF for a wire machine or a laser.
//!
//! The DXF is the text of release 12 with one layer and one closed polyline, which every reader takes. The crate there is for it brings the
//! whole format, hundreds of entities with their readers, for a header and a list of points: a few lines here do. The suite reads what they
//! write with that crate.

use crate::sheet::markup::escaped;
use std::fmt::Write;

use super::scene::Point;

/// A closed outline in mm, to the right and up, and what it is.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnSize {
    /// What it is, in words; stands under the outline on paper.
    pub title: String,
    /// Its corners in order, the last joined to the first.
    pub outline: Vec<Point>,
}

/// How long the scale under the outline is, in mm.
const SCALE_MM: f64 = 50.0;
/// White around the outline.
const MARGIN_MM: f64 = 2.0;
/// The room of the scale and the words.
const FOOT_MM: f64 = 16.0;

impl OwnSize {
    /// Least and greatest to the right and up.
    fn bounds(&self) -> (Point, Point) {
        let none = (f64::INFINITY, f64::NEG_INFINITY);
        let span = |of: fn(&Point) -> f64| self.outline.iter().map(of).fold(none, |(least, most), at| (least.min(at), most.max(at)));
        let ((left, right), (low, high)) = (span(|point| point.0), span(|point| point.1));
        if left.is_finite() && low.is_finite() { ((left, low), (right, high)) } else { ((0.0, 0.0), (0.0, 0.0)) }
    }

    /// As an SVG in mm, one unit a mm, with a line of 50 mm and one of 2 in to lay a rule against once it is printed.
    pub fn svg(&self) -> String {
        let ((left, low), (right, high)) = self.bounds();
        let wide = (right - left).max(SCALE_MM) + 2.0 * MARGIN_MM;
        let tall = high - low + 2.0 * MARGIN_MM + FOOT_MM;
        let (from_left, from_top) = (f64::midpoint(left, right) - wide / 2.0, -high - MARGIN_MM);
        let mut text = String::from("<svg xmlns=\"http://www.w3.org/2000/svg\"");
        // Writing to a text does not fail.
        let _ = write!(text, " width=\"{wide:.3}mm\" height=\"{tall:.3}mm\"");
        let _ = write!(text, " viewBox=\"{from_left:.3} {from_top:.3} {wide:.3} {tall:.3}\">\n<title>{}</title>\n", escaped(&self.title));
        text.push_str("<path id=\"outline\" fill=\"none\" stroke=\"#000\" stroke-width=\"0.1\" d=\"");
        for (at, (x, y)) in self.outline.iter().enumerate() {
            let _ = write!(text, "{}{x:.4} {:.4}", if at == 0 { "M" } else { "L" }, -y);
        }
        text.push_str("Z\"/>\n");
        self.write_scale(&mut text, (from_left + MARGIN_MM, -low + MARGIN_MM + 4.0));
        text.push_str("</svg>\n");
        text
    }

    fn write_scale(&self, text: &mut String, (x, y): Point) {
        text.push_str("<g id=\"scale\" fill=\"none\" stroke=\"#000\" stroke-width=\"0.2\">");
        for (at, length_mm) in [(y, SCALE_MM), (y + 3.0, 50.8)] {
            let _ = write!(text, "<path d=\"M{x:.3} {:.3}v2M{x:.3} {at:.3}h{length_mm}m0 -1v2\"/>", at - 1.0);
        }
        let _ = write!(text, "</g>\n<g font-family=\"sans-serif\" font-size=\"2.6\"><text x=\"{x:.3}\" y=\"{:.3}\">", y + 7.5);
        text.push_str("Print at 100 %. The lines must measure 50 mm and 2 in.</text>");
        let _ = writeln!(text, "<text x=\"{x:.3}\" y=\"{:.3}\">{}</text></g>", y + 11.0, escaped(&self.title));
    }

    /// As a DXF of release 12, one unit a mm; `$INSUNITS` says so to readers that know it, `$EXTMIN` and `$EXTMAX` how large it is.
    pub fn dxf(&self) -> String {
        let ((left, low), (right, high)) = self.bounds();
        let mut text = String::from("0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1009\n9\n$INSUNITS\n70\n4\n");
        // Writing to a text does not fail.
        let _ = write!(text, "9\n$EXTMIN\n10\n{left:.6}\n20\n{low:.6}\n30\n0.0\n");
        let _ = write!(text, "9\n$EXTMAX\n10\n{right:.6}\n20\n{high:.6}\n30\n0.0\n");
        text.push_str("0\nENDSEC\n0\nSECTION\n2\nENTITIES\n");
        text.push_str("0\nPOLYLINE\n8\nOUTLINE\n66\n1\n70\n1\n10\n0.0\n20\n0.0\n30\n0.0\n");
        for (x, y) in &self.outline {
            let _ = write!(text, "0\nVERTEX\n8\nOUTLINE\n10\n{x:.6}\n20\n{y:.6}\n30\n0.0\n");
        }
        text.push_str("0\nSEQEND\n8\nOUTLINE\n0\nENDSEC\n0\nEOF\n");
        text
    }
}
