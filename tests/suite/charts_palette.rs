//! The colours of the pictures: readable, apart from one another for every eye, and never mistaken for a caution or a link.
use layshaft::chart::{
    DARK, LIGHT, Theme,
    palette::{Colour, DASHES, LETTERS},
};

const THEMES: [(&Theme, &str); 2] = [(&LIGHT, "light"), (&DARK, "dark")];

/// WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (what must be seen of a picture).
const TEXT_CONTRAST: f64 = 4.5;
const LINE_CONTRAST: f64 = 3.0;

#[test]
fn published_contrast_of_black_and_white() {
    // WCAG 2.2, "contrast ratio": from 1 to 21.
    assert!((Colour(0, 0, 0).contrast(Colour(255, 255, 255)) - 21.0).abs() < 1e-9);
    assert!((Colour(9, 90, 190).contrast(Colour(9, 90, 190)) - 1.0).abs() < 1e-9);
    // Often given as the lightest grey that may carry text on white: #767676, 4.54 (from memory).
    assert!((Colour(0x76, 0x76, 0x76).contrast(Colour(255, 255, 255)) - 4.54).abs() < 0.005);
}

#[test]
fn texts_and_lines_stand_out_from_the_sheet() {
    for (theme, name) in THEMES {
        let named = [theme.ink, theme.ink_2, theme.ink_3, theme.dye, theme.caution, theme.stop, theme.ok];
        for colour in named.into_iter().chain(theme.setups()) {
            for ground in [theme.sheet, theme.paper] {
                let contrast = colour.contrast(ground);
                assert!(contrast >= TEXT_CONTRAST.max(LINE_CONTRAST), "{name}: {} on {} has {contrast:.2}", colour.css(), ground.css());
            }
        }
    }
}

/// A colour in Oklab, a hundred times. Source: Ottosson, "A perceptual color space for image processing", 2020 (from memory).
fn oklab([red, green, blue]: [f64; 3]) -> [f64; 3] {
    let long = (0.412_221_470_8 * red + 0.536_332_536_3 * green + 0.051_445_992_9 * blue).max(0.0).cbrt();
    let medium = (0.211_903_498_2 * red + 0.680_699_545_1 * green + 0.107_396_956_6 * blue).max(0.0).cbrt();
    let short = (0.088_302_461_9 * red + 0.281_718_837_6 * green + 0.629_978_700_5 * blue).max(0.0).cbrt();
    [
        100.0 * (0.210_454_255_3 * long + 0.793_617_785_0 * medium - 0.004_072_046_8 * short),
        100.0 * (1.977_998_495_1 * long - 2.428_592_205_0 * medium + 0.450_593_709_9 * short),
        100.0 * (0.025_904_037_1 * long + 0.782_771_766_2 * medium - 0.808_675_766_0 * short),
    ]
}

/// How eyes see linear red, green and blue. Source: Machado, Oliveira and Fernandes 2009, severity 1 (from memory).
const EYES: [(&str, [[f64; 3]; 3]); 3] = [
    ("full colour sight", [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]]),
    ("red-blind", [[0.152_286, 1.052_583, -0.204_868], [0.114_503, 0.786_281, 0.099_216], [-0.003_882, -0.048_116, 1.051_998]]),
    ("green-blind", [[0.367_322, 0.860_646, -0.227_968], [0.280_085, 0.672_501, 0.047_413], [-0.011_820, 0.042_940, 0.968_881]]),
];

fn seen(colour: Colour, eyes: [[f64; 3]; 3]) -> [f64; 3] {
    let linear = [colour.0, colour.1, colour.2].map(|channel| Colour(channel, channel, channel).luminance());
    oklab(eyes.map(|row| row.iter().zip(linear).map(|(share, channel)| share * channel).sum::<f64>().clamp(0.0, 1.0)))
}

fn apart(one: [f64; 3], other: [f64; 3]) -> f64 {
    one.iter().zip(other).map(|(a, b)| (a - b).powi(2)).sum::<f64>().sqrt()
}

/// About twice what is just seen side by side; letters and dashes do the rest.
const LEAST_APART: f64 = 5.0;

#[test]
fn no_two_setups_fall_together_for_any_eye() {
    for (theme, name) in THEMES {
        let setups = theme.setups();
        for (at, one) in setups.iter().enumerate() {
            for other in setups.iter().skip(at + 1) {
                for (eyes, matrix) in EYES {
                    let distance = apart(seen(*one, matrix), seen(*other, matrix));
                    assert!(distance >= LEAST_APART, "{name}, {eyes}: {} and {} are {distance:.1} apart", one.css(), other.css());
                }
            }
        }
    }
}

#[test]
fn setups_are_never_mistaken_for_a_caution_or_a_link() {
    for (theme, name) in THEMES {
        for setup in theme.setups() {
            for role in [theme.caution, theme.stop, theme.dye] {
                let (_, full) = EYES[0];
                let distance = apart(seen(setup, full), seen(role, full));
                assert!(distance >= LEAST_APART, "{name}: {} and {} are {distance:.1} apart", setup.css(), role.css());
            }
        }
    }
}

#[test]
fn letters_and_dashes_tell_setups_apart_too() {
    for at in 0..LETTERS.len() {
        for other in at + 1..LETTERS.len() {
            assert_ne!(LETTERS[at], LETTERS[other]);
            assert_ne!(DASHES[at], DASHES[other]);
        }
    }
}
