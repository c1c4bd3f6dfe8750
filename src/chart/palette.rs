//! The colours of every picture: one role, one meaning, in a light and a dark theme, equal to the style sheet's variables.
//!
//! Setup colours, caution colours and the link colour never meet; a setup also has its letter and its dash pattern,
//! so nothing is told by colour alone. Setup colours were chosen so that no pair falls together for the three common
//! kinds of colour blindness (distance in Oklab after the simulation of Machado, Oliveira and Fernandes, 2009).

/// A colour as red, green and blue, each 0 to 255, in sRGB.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Colour(pub u8, pub u8, pub u8);

impl Colour {
    const fn hex(code: u32) -> Self {
        let [_, red, green, blue] = code.to_be_bytes();
        Self(red, green, blue)
    }

    /// The colour as a style sheet writes it, for instance `#0068a8`.
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
    /// The setups in order: `--a` to `--f`.
    pub setups: [Colour; SETUPS],
}

impl Theme {
    /// The colour of the setup in place `slot`.
    pub fn setup(&self, slot: usize) -> Colour {
        self.setups.get(slot).copied().unwrap_or(self.ink_2)
    }

    /// The colour of a setup when another may be brought forward: its own, or grey.
    pub fn focused(&self, slot: usize, focus: Option<usize>) -> Colour {
        if focus.is_none_or(|chosen| chosen == slot) { self.setup(slot) } else { self.ink_3 }
    }
}

/// Warm paper and ink.
pub const LIGHT: Theme = Theme {
    paper: Colour::hex(0x00f7_f4ec),
    sheet: Colour::hex(0x00ff_fdf8),
    rule: Colour::hex(0x00d9_d3c4),
    rule_soft: Colour::hex(0x00eb_e6da),
    ink: Colour::hex(0x001c_2530),
    ink_2: Colour::hex(0x0056_606c),
    ink_3: Colour::hex(0x0068_717c),
    dye: Colour::hex(0x001f_3f8a),
    caution: Colour::hex(0x00b4_5309),
    stop: Colour::hex(0x00b3_261e),
    ok: Colour::hex(0x002f_6b3c),
    setups: [
        Colour::hex(0x0000_68a8),
        Colour::hex(0x009a_2a7b),
        Colour::hex(0x0000_765a),
        Colour::hex(0x0050_6be0),
        Colour::hex(0x006c_4302),
        Colour::hex(0x0005_4744),
    ],
};

/// The same roles on a dark sheet.
pub const DARK: Theme = Theme {
    paper: Colour::hex(0x0011_171e),
    sheet: Colour::hex(0x0018_2028),
    rule: Colour::hex(0x003d_4753),
    rule_soft: Colour::hex(0x0029_333d),
    ink: Colour::hex(0x00ec_e7da),
    ink_2: Colour::hex(0x00b3_bac2),
    ink_3: Colour::hex(0x008d_96a0),
    dye: Colour::hex(0x008f_b0ff),
    caution: Colour::hex(0x00f2_a24b),
    stop: Colour::hex(0x00ff_8a7d),
    ok: Colour::hex(0x007c_c48c),
    setups: [
        Colour::hex(0x004a_a3ea),
        Colour::hex(0x00f7_b3e0),
        Colour::hex(0x0022_b58c),
        Colour::hex(0x008f_7bf2),
        Colour::hex(0x00d7_e06a),
        Colour::hex(0x00b8_f2ec),
    ],
};
