//! The pictures and the style sheet speak of the same colours.
//!
//! In `src/chart/palette.rs` a colour stands on one line behind its name, as `INK: Colour = Colour(0x1c, 0x25, 0x30)`, `ink: 0x1c2530`,
//! `ink: Rgb(28, 37, 48)` or `ink: "#1c2530"`; the style sheet calls it `--ink`. Lines behind a name that contains `dark` are of the dark theme,
//! which is the second value the style sheet gives a role, in a rule of its own or by `light-dark(#1c2530, #ece7da)`.

use super::{Finding, Source, Sources};

const PALETTE: &str = "src/chart/palette.rs";
const TOKENS: &str = "style/tokens.css";

/// Every colour of the palette is the style sheet's, in both themes.
pub(super) fn check(sources: &Sources) -> Vec<Finding> {
    let (Some(palette), Some(tokens)) = (sources.find(PALETTE), sources.find(TOKENS)) else { return Vec::new() };
    let mut findings = Vec::new();
    let mut dark = false;
    for (line, code) in palette.code() {
        if let Some(name) = declared(code) {
            dark = name.to_lowercase().contains("dark");
        }
        let Some((name, colour)) = named_colour(code) else { continue };
        let role = name.to_lowercase().trim_start_matches("dark_").replace('_', "-");
        let expected = values(tokens, &role);
        let theirs = if dark { expected.last() } else { expected.first() };
        if theirs != Some(&colour) {
            let theirs = theirs.map_or("nothing".to_owned(), |value| format!("#{value:06x}"));
            let says = format!("`{name}` is #{colour:06x} here, and --{role} is {theirs} in {TOKENS}; make them equal");
            findings.push(Finding::new(palette, line, says));
        }
    }
    findings
}

/// The name behind `const`, `static`, `mod` or `fn`.
fn declared(code: &str) -> Option<&str> {
    let mut words = code.split(|c: char| !c.is_alphanumeric() && c != '_').filter(|word| !word.is_empty());
    words.by_ref().find(|word| ["const", "static", "mod", "fn"].contains(word))?;
    words.find(|word| *word != "fn")
}

/// The name and the colour of a line that has both.
fn named_colour(code: &str) -> Option<(&str, u32)> {
    let (before, after) = code.split_once(':')?;
    let name = before.split_whitespace().last()?;
    Some((name, colour_in(after)?))
}

fn colour_in(text: &str) -> Option<u32> {
    if let Some((_, hex)) = text.split_once('#') {
        return u32::from_str_radix(hex.get(..6)?, 16).ok();
    }
    if let Some((_, rest)) = text.split_once('(') {
        let parts: Vec<u32> = rest.split([',', ')']).take(3).filter_map(|part| number(part.trim())).collect();
        if let [red, green, blue] = parts[..] {
            return Some((red << 16) | (green << 8) | blue);
        }
        return parts.first().copied();
    }
    let value = text.rsplit('=').next()?.trim().trim_end_matches([',', ';']);
    value.starts_with("0x").then(|| number(value))?
}

fn number(text: &str) -> Option<u32> {
    let text = text.replace('_', "");
    text.strip_prefix("0x").map_or_else(|| text.parse().ok(), |hex| u32::from_str_radix(hex, 16).ok())
}

/// Every value the style sheet gives a role, in order.
fn values(tokens: &Source, role: &str) -> Vec<u32> {
    let name = format!("--{role}:");
    let texts = tokens.text.match_indices(&name).filter_map(|(at, _)| tokens.text[at + name.len()..].split([';', '}']).next());
    texts.flat_map(|text| text.split('#').skip(1)).filter_map(|hex| u32::from_str_radix(hex.get(..6)?, 16).ok()).collect()
}

#[cfg(test)]
mod tests {
    use super::{PALETTE, Sources, TOKENS, check};

    const SHEET: &str = ":root{--ink: #1c2530; --ink-2:#56606c;} @media dark{:root{--ink:#f0ece2}}";

    #[track_caller]
    fn finds(palette: &str, expected: &[&str]) {
        let says: Vec<String> = check(&Sources::of(&[(PALETTE, palette), (TOKENS, SHEET)])).into_iter().map(|f| f.says).collect();
        assert_eq!(says, expected, "{palette}");
    }

    #[test]
    fn equal_colours_pass_in_every_spelling() {
        for line in ["pub const INK: Rgb = Rgb(0x1c, 0x25, 0x30);", "ink: 0x1c_2530,", "ink: RGBColor(28, 37, 48),", "ink: \"#1c2530\","] {
            finds(line, &[]);
        }
        finds("pub const INK_2: Rgb = Rgb(0x56, 0x60, 0x6c);", &[]);
        finds("pub const DARK: Palette = Palette {\n    ink: Rgb(0xf0, 0xec, 0xe2),\n};", &[]);
    }

    #[test]
    fn both_themes_may_stand_in_one_value() {
        let sheet = ":root{--ink: light-dark(#1c2530, #ece7da);}";
        let palette = "const LIGHT: T = T {\n    ink: C(0x1c_2530),\n};\nconst DARK: T = T {\n    ink: C(0xec_e7da),\n};";
        assert_eq!(check(&Sources::of(&[(PALETTE, palette), (TOKENS, sheet)])).len(), 0);
    }

    #[test]
    fn differing_colours_are_found() {
        finds("ink: 0x1c2531,", &["`ink` is #1c2531 here, and --ink is #1c2530 in style/tokens.css; make them equal"]);
        finds("dye: 0x000001,", &["`dye` is #000001 here, and --dye is nothing in style/tokens.css; make them equal"]);
    }
}
