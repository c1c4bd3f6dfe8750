//! The two typefaces of the sheet and how wide their texts are, so that labels find their places without asking a browser.
//!
//! Widths are the faces' own advance widths (thousandths of the size), so a picture is laid out alike on a canvas, as SVG and
//! as a bitmap, on every machine. Kerning is left out: it only narrows, by less than a pixel at these sizes.

/// What a text is set in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Face {
    /// Words.
    Text,
    /// Words that stand out.
    Strong,
    /// Numbers, every digit equally wide.
    Figures,
    /// Numbers that stand out.
    StrongFigures,
}

/// The family list of words, as a style sheet writes it.
pub const TEXT_FAMILY: &str = "Barlow Semi Condensed, system-ui, sans-serif";

/// The family list of numbers, as a style sheet writes it.
pub const FIGURES_FAMILY: &str = "Red Hat Mono, ui-monospace, monospace";

impl Face {
    /// The family list, as a style sheet writes it.
    pub fn family(self) -> &'static str {
        match self {
            Self::Text | Self::Strong => TEXT_FAMILY,
            Self::Figures | Self::StrongFigures => FIGURES_FAMILY,
        }
    }

    /// The weight, as a style sheet writes it.
    pub fn weight(self) -> u16 {
        if self.is_strong() { 600 } else { 400 }
    }

    /// Whether the heavier weight is used.
    pub fn is_strong(self) -> bool {
        matches!(self, Self::Strong | Self::StrongFigures)
    }

    /// From ascender to descender for a size of one: what rasterisers call the scale of a face.
    pub fn line_per_size(self) -> f64 {
        match self {
            Self::Text | Self::Strong => 1.2,
            Self::Figures | Self::StrongFigures => 1.323,
        }
    }

    /// How wide a text is in pixels when set at `size_px`.
    pub fn width_px(self, text: &str, size_px: f64) -> f64 {
        let thousandths: u32 = text.chars().map(|c| u32::from(self.advance(c))).sum();
        f64::from(thousandths) * size_px / 1000.0
    }

    /// The advance of one character in thousandths of the size. A character outside the table counts as a wide one.
    fn advance(self, c: char) -> u16 {
        let table = match self {
            Self::Text => &TEXT,
            Self::Strong => &STRONG,
            Self::Figures | Self::StrongFigures => return 600,
        };
        match c {
            '·' => 220,
            '×' => 413,
            '−' | '÷' => 471,
            '–' => 422,
            '…' => 755,
            '°' => 370,
            '′' | '″' => 487,
            _ => usize::try_from(u32::from(c).wrapping_sub(32)).ok().and_then(|at| table.get(at)).copied().unwrap_or(850),
        }
    }
}

/// Advance widths of the characters from blank to tilde, Barlow Semi Condensed 400.
#[rustfmt::skip]
const TEXT: [u16; 95] = [
    200, 285, 249, 624, 488, 815, 600, 125, 241, 241, 379, 471, 221, 354, 234, 367, 504, 303, 469, 462, 483, 461, 462, 419, 472, 461, 275, 252, 471, 471,
    471, 415, 794, 508, 538, 526, 542, 517, 486, 532, 563, 237, 501, 531, 482, 618, 585, 539, 517, 510, 528, 500, 496, 562, 514, 751, 511, 496, 472, 341,
    367, 341, 423, 430, 188, 462, 484, 461, 484, 470, 317, 474, 482, 232, 223, 453, 206, 737, 482, 480, 490, 490, 329, 428, 315, 480, 427, 638, 426, 414,
    403, 288, 155, 288, 481,
];

/// Advance widths of the characters from blank to tilde, Barlow Semi Condensed 600.
#[rustfmt::skip]
const STRONG: [u16; 95] = [
    200, 302, 315, 642, 501, 802, 635, 153, 298, 298, 380, 465, 232, 364, 242, 417, 509, 313, 488, 478, 522, 478, 479, 440, 484, 480, 304, 266, 465, 465,
    465, 456, 789, 552, 542, 533, 545, 513, 489, 537, 557, 243, 512, 549, 493, 627, 588, 544, 526, 521, 537, 513, 516, 557, 540, 771, 538, 528, 480, 366,
    417, 366, 439, 457, 213, 478, 498, 477, 498, 484, 333, 490, 491, 235, 231, 478, 219, 747, 491, 490, 502, 502, 342, 446, 328, 489, 460, 677, 466, 446,
    412, 334, 180, 334, 501,
];
