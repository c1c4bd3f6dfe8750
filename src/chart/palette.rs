//! The colours of every picture: one role, one meaning, in a light and a dark theme, equal to the style sheet's variables.
//!
//! Setup colours, caution colours and the link colour never meet; a setup also has its letter and its dash pattern,
//! so nothing is told by colour alone. Setup colours were chosen so that no pair falls together for the three common
//! kinds of colour blindness (distance in Oklab after the simulation of Machado, Oliveira and Fernandes, 2009).

/// A colour as red, green and blue, each 0 to 255, in sRGB.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Colour(pub u8, pub u8, pub u8);

impl Colour {
    /// The colour as a style sheet writes it, for instance `#0068a8`.
    ///
    /// ```
    /// use layshaft::chart::palette::Colour;
    /// assert_eq!(Colour(0, 104, 168).css(), "#0068a8");
    /// ```
    pub fn css(self) -> String {
        format!("#{:02x}{:02x}{:02x}", self.0, self.1, self.2)
    }

    /// How light the colour is, from 0 (black) to 1 (white).
    ///
    /// Source: WCAG 2.2, "relative luminance".
    pub fn luminance(self) -> f64 {
        let linear = |channel: u8| {
            let share = f64::from(channel) / 255.0;
            if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * linear(self.0) + 0.7152 * linear(self.1) + 0.0722 * linear(self.2)
    }

    /// How strongly two colours differ, from 1 (alike) to 21 (black on white). Text wants 4.5, a line 3.
    ///
    /// Source: WCAG 2.2, "contrast ratio".
    ///
    /// ```
    /// use layshaft::chart::palette::Colour;
    /// // (1 + 0.05) ÷ (0 + 0.05)
    /// assert_eq!(Colour(0, 0, 0).contrast(Colour(255, 255, 255)).round(), 21.0);
    /// ```
    pub fn contrast(self, other: Self) -> f64 {
        let (one, two) = (self.luminance(), other.luminance());
        (one.max(two) + 0.05) / (one.min(two) + 0.05)
    }
}

/// How many setups a sheet can hold, and so how many colours, letters and dashes there are.
pub const SETUPS: usize = 6;

/// The letters of the setups in order.
pub const LETTERS: [char; SETUPS] = ['A', 'B', 'C', 'D', 'E', 'F'];

/// The dash patterns of the setups in order: lengths drawn and left out in CSS pixels, at a stroke of 2.4; empty is a full line.
pub const DASHES: [&[f64]; SETUPS] = [&[], &[9.0, 4.0], &[2.0, 4.0], &[12.0, 4.0, 2.0, 4.0], &[5.0, 3.0, 2.0, 3.0, 2.0, 3.0], &[18.0, 5.0]];

/// The letter of the setup in place `slot`; those past the sixth have none.
pub fn letter(slot: usize) -> char {
    LETTERS.get(slot).copied().unwrap_or('·')
}

/// The dash pattern of the setup in place `slot`.
pub fn dash(slot: usize) -> &'static [f64] {
    DASHES.get(slot).copied().unwrap_or(&[])
}

/// Whose colour a series, bar or dot takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Hue {
    /// The setup in this place, from 0.
    Setup(usize),
    /// What all setups share, for instance road load.
    Ink,
    /// What steps back.
    Muted,
    /// What was chosen.
    Dye,
    /// What is allowed or good.
    Ok,
    /// What wants attention.
    Caution,
    /// What cannot be.
    Stop,
}

impl Hue {
    /// The place among the setups, where it is a setup's.
    pub fn slot(self) -> Option<usize> {
        if let Self::Setup(slot) = self { Some(slot) } else { None }
    }

    /// A name with the setup's letter before it, where it is a setup's.
    pub fn naming(self, name: &str) -> String {
        match (self.slot(), name.is_empty()) {
            (Some(slot), true) => letter(slot).to_string(),
            (Some(slot), false) => format!("{}, {name}", letter(slot)),
            (None, _) => name.to_owned(),
        }
    }

    /// The dash pattern of its lines.
    pub fn dash(self) -> &'static [f64] {
        match self {
            Self::Setup(slot) => dash(slot),
            Self::Muted => &[4.0, 3.0],
            _ => &[],
        }
    }
}

/// Whose colour a label of several setups takes: the one brought forward where it is among them, else the first.
pub fn leading(slots: &[usize], focus: Option<usize>) -> Option<usize> {
    focus.filter(|focus| slots.contains(focus)).or(slots.first().copied())
}

/// One theme: the roles a picture may use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Theme {
    /// Behind everything: `--paper`.
    pub paper: Colour,
    /// Behind a picture: `--sheet`.
    pub sheet: Colour,
    /// Lines that part things: `--rule`.
    pub rule: Colour,
    /// The grid of a picture: `--rule-soft`.
    pub rule_soft: Colour,
    /// What matters most, and the axes: `--ink`.
    pub ink: Colour,
    /// Labels and titles: `--ink-2`.
    pub ink_2: Colour,
    /// What steps back, greyed setups among it: `--ink-3`.
    pub ink_3: Colour,
    /// The one brand colour, for links and what is chosen: `--dye`.
    pub dye: Colour,
    /// Something wants attention: `--caution`.
    pub caution: Colour,
    /// Something cannot be: `--stop`.
    pub stop: Colour,
    /// Judged good: `--ok`.
    pub ok: Colour,
    /// Setup A: `--a`.
    pub a: Colour,
    /// Setup B: `--b`.
    pub b: Colour,
    /// Setup C: `--c`.
    pub c: Colour,
    /// Setup D: `--d`.
    pub d: Colour,
    /// Setup E: `--e`.
    pub e: Colour,
    /// Setup F: `--f`.
    pub f: Colour,
}

impl Theme {
    /// The colours of the setups in order.
    pub fn setups(&self) -> [Colour; SETUPS] {
        [self.a, self.b, self.c, self.d, self.e, self.f]
    }

    /// The colour of the setup in place `slot`.
    pub fn setup(&self, slot: usize) -> Colour {
        self.setups().get(slot).copied().unwrap_or(self.ink_2)
    }

    /// The colour of a hue when one setup may be brought forward.
    pub fn hue(&self, hue: Hue, focus: Option<usize>) -> Colour {
        match hue {
            Hue::Setup(slot) => self.focused(slot, focus),
            Hue::Ink => self.ink,
            Hue::Muted => self.ink_3,
            Hue::Dye => self.dye,
            Hue::Ok => self.ok,
            Hue::Caution => self.caution,
            Hue::Stop => self.stop,
        }
    }

    /// The colour of a setup when another may be brought forward: its own, or grey.
    pub fn focused(&self, slot: usize, focus: Option<usize>) -> Colour {
        if focus.is_none_or(|chosen| chosen == slot) { self.setup(slot) } else { self.ink_3 }
    }
}

/// Warm paper and ink.
pub const LIGHT: Theme = Theme {
    paper: Colour(0xf7, 0xf4, 0xec),
    sheet: Colour(0xff, 0xfd, 0xf8),
    rule: Colour(0xd9, 0xd3, 0xc4),
    rule_soft: Colour(0xeb, 0xe6, 0xda),
    ink: Colour(0x1c, 0x25, 0x30),
    ink_2: Colour(0x56, 0x60, 0x6c),
    ink_3: Colour(0x68, 0x71, 0x7c),
    dye: Colour(0x1f, 0x3f, 0x8a),
    caution: Colour(0xb4, 0x53, 0x09),
    stop: Colour(0xb3, 0x26, 0x1e),
    ok: Colour(0x2f, 0x6b, 0x3c),
    a: Colour(0x00, 0x68, 0xa8),
    b: Colour(0x9a, 0x2a, 0x7b),
    c: Colour(0x00, 0x76, 0x5a),
    d: Colour(0x4a, 0x60, 0xdd),
    e: Colour(0x6c, 0x43, 0x02),
    f: Colour(0x05, 0x47, 0x44),
};

/// The same roles on a dark sheet.
pub const DARK: Theme = Theme {
    paper: Colour(0x11, 0x17, 0x1e),
    sheet: Colour(0x18, 0x20, 0x28),
    rule: Colour(0x3d, 0x47, 0x53),
    rule_soft: Colour(0x29, 0x33, 0x3d),
    ink: Colour(0xec, 0xe7, 0xda),
    ink_2: Colour(0xb3, 0xba, 0xc2),
    ink_3: Colour(0x8d, 0x96, 0xa0),
    dye: Colour(0x8f, 0xb0, 0xff),
    caution: Colour(0xf2, 0xa2, 0x4b),
    stop: Colour(0xff, 0x8a, 0x7d),
    ok: Colour(0x7c, 0xc4, 0x8c),
    a: Colour(0x4a, 0xa3, 0xea),
    b: Colour(0xf7, 0xb3, 0xe0),
    c: Colour(0x22, 0xb5, 0x8c),
    d: Colour(0x8f, 0x7b, 0xf2),
    e: Colour(0xd7, 0xe0, 0x6a),
    f: Colour(0xb8, 0xf2, 0xec),
};
