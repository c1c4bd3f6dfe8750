//! The tables of ISO 286-1: size steps, standard tolerances, fundamental deviations; and the formula behind the tolerances.
//!
//! IT6 to IT8, f, g, h, n, p, r, s and u were read in independent places (*Machine Drawing*, Narayana, Kannaiah and Venkata Reddy, table
//! 15.2; open lookup data of ISO 286-2; a catalogue's h table); other grades and letters, and sizes above 120 mm, are from memory of the
//! standard's own table.

use std::ops::RangeInclusive;

/// The grades that are here.
pub const GRADES: RangeInclusive<usize> = 4..=12;
/// The greatest size, in millimetres.
pub const MOST_MM: f64 = 250.0;

/// The upper ends of the size steps, in mm: over the one before, up to and including it.
const STEPS: [f64; 10] = [3.0, 6.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0, 180.0, 250.0];
/// The steps that the deviations of c and of r to u divide further.
const SUBSTEPS: [f64; 16] = [3.0, 6.0, 10.0, 18.0, 24.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 140.0, 160.0, 180.0, 250.0];

/// Standard tolerances in µm, grades 3 to 12, a row a step. The standard’s own formula is not the table, see the tests: that rounds some
/// rows otherwise, and always holds.
const TOLERANCES: [[f64; 10]; 10] = [
    [2.0, 3.0, 4.0, 6.0, 10.0, 14.0, 25.0, 40.0, 60.0, 100.0],
    [2.5, 4.0, 5.0, 8.0, 12.0, 18.0, 30.0, 48.0, 75.0, 120.0],
    [2.5, 4.0, 6.0, 9.0, 15.0, 22.0, 36.0, 58.0, 90.0, 150.0],
    [3.0, 5.0, 8.0, 11.0, 18.0, 27.0, 43.0, 70.0, 110.0, 180.0],
    [4.0, 6.0, 9.0, 13.0, 21.0, 33.0, 52.0, 84.0, 130.0, 210.0],
    [4.0, 7.0, 11.0, 16.0, 25.0, 39.0, 62.0, 100.0, 160.0, 250.0],
    [5.0, 8.0, 13.0, 19.0, 30.0, 46.0, 74.0, 120.0, 190.0, 300.0],
    [6.0, 10.0, 15.0, 22.0, 35.0, 54.0, 87.0, 140.0, 220.0, 350.0],
    [8.0, 12.0, 18.0, 25.0, 40.0, 63.0, 100.0, 160.0, 250.0, 400.0],
    [10.0, 14.0, 20.0, 29.0, 46.0, 72.0, 115.0, 185.0, 290.0, 460.0],
];
/// The grade of the first column.
const FIRST_GRADE: usize = 3;

/// The position of a field against the size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Letter {
    /// Far below.
    C,
    /// Well below.
    D,
    /// Below.
    E,
    /// Running.
    F,
    /// Close running.
    G,
    /// At the size.
    H,
    /// Evenly about it.
    Js,
    /// A little above.
    K,
    /// Above.
    M,
    /// Above.
    N,
    /// Light press.
    P,
    /// Press.
    R,
    /// Medium press.
    S,
    /// Heavy press.
    T,
    /// Shrunk on.
    U,
}

/// From where a shaft's field is measured, in µm from the size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Base {
    /// Its upper deviation, nothing or below.
    Upper(f64),
    /// Its lower deviation, nothing or above.
    Lower(f64),
    /// It lies evenly.
    Even,
}

impl Letter {
    const ALL: [(&'static str, Self); 15] = [
        ("c", Self::C),
        ("d", Self::D),
        ("e", Self::E),
        ("f", Self::F),
        ("g", Self::G),
        ("h", Self::H),
        ("js", Self::Js),
        ("k", Self::K),
        ("m", Self::M),
        ("n", Self::N),
        ("p", Self::P),
        ("r", Self::R),
        ("s", Self::S),
        ("t", Self::T),
        ("u", Self::U),
    ];

    /// The letter of a word in small letters.
    pub fn read(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|(known, _)| *known == word).map(|(_, letter)| letter)
    }

    /// In small letters.
    pub fn word(self) -> &'static str {
        Self::ALL.into_iter().find(|(_, letter)| *letter == self).map_or("", |(word, _)| word)
    }

    /// The shaft deviations in µm whose steps are those of the tolerances: upper ones for d to g, lower ones for k to p.
    fn plain(self) -> Option<&'static [f64; 10]> {
        Some(match self {
            Self::D => &[-20.0, -30.0, -40.0, -50.0, -65.0, -80.0, -100.0, -120.0, -145.0, -170.0],
            Self::E => &[-14.0, -20.0, -25.0, -32.0, -40.0, -50.0, -60.0, -72.0, -85.0, -100.0],
            Self::F => &[-6.0, -10.0, -13.0, -16.0, -20.0, -25.0, -30.0, -36.0, -43.0, -50.0],
            Self::G => &[-2.0, -4.0, -5.0, -6.0, -7.0, -9.0, -10.0, -12.0, -14.0, -15.0],
            Self::K => &[0.0, 1.0, 1.0, 1.0, 2.0, 2.0, 2.0, 3.0, 3.0, 4.0],
            Self::M => &[2.0, 4.0, 6.0, 7.0, 8.0, 9.0, 11.0, 13.0, 15.0, 17.0],
            Self::N => &[4.0, 8.0, 10.0, 12.0, 15.0, 17.0, 20.0, 23.0, 27.0, 31.0],
            Self::P => &[6.0, 12.0, 15.0, 18.0, 22.0, 26.0, 32.0, 37.0, 43.0, 50.0],
            _ => return None,
        })
    }

    /// The shaft deviations in µm whose steps are divided further: upper ones for c, lower ones for r to u. Beyond 180 mm the standard
    /// divides again and they are left out; nothing stands where it has none.
    fn divided(self) -> Option<&'static [f64; 15]> {
        const NONE: f64 = f64::NAN;
        Some(match self {
            Self::C => {
                &[-60.0, -70.0, -80.0, -95.0, -110.0, -110.0, -120.0, -130.0, -140.0, -150.0, -170.0, -180.0, -200.0, -210.0, -230.0]
            }
            Self::R => &[10.0, 15.0, 19.0, 23.0, 28.0, 28.0, 34.0, 34.0, 41.0, 43.0, 51.0, 54.0, 63.0, 65.0, 68.0],
            Self::S => &[14.0, 19.0, 23.0, 28.0, 35.0, 35.0, 43.0, 43.0, 53.0, 59.0, 71.0, 79.0, 92.0, 100.0, 108.0],
            Self::T => &[NONE, NONE, NONE, NONE, NONE, 41.0, 48.0, 54.0, 66.0, 75.0, 91.0, 104.0, 122.0, 134.0, 146.0],
            Self::U => &[18.0, 23.0, 28.0, 33.0, 41.0, 48.0, 60.0, 70.0, 87.0, 102.0, 124.0, 144.0, 170.0, 190.0, 210.0],
            _ => return None,
        })
    }
}

/// A size step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    step: usize,
    substep: usize,
}

impl Step {
    /// The step of a size in mm: over the end of the one before, up to and including its own.
    pub fn of(size_mm: f64) -> Option<Self> {
        let place = |ends: &[f64]| ends.iter().position(|end| size_mm <= end + 1e-9);
        if size_mm <= 0.0 { None } else { Some(Self { step: place(&STEPS)?, substep: place(&SUBSTEPS)? }) }
    }

    /// The standard tolerance of a grade, in µm.
    pub fn tolerance(self, grade: usize) -> Option<f64> {
        TOLERANCES.get(self.step)?.get(grade.checked_sub(FIRST_GRADE)?).copied()
    }

    /// The fundamental deviation of a shaft; none where the standard has none at this size, or it is not here.
    pub fn deviation(self, letter: Letter, grade: usize) -> Option<Base> {
        let value = letter.plain().and_then(|row| row.get(self.step)).or_else(|| letter.divided()?.get(self.substep)).copied();
        match letter {
            Letter::H => Some(Base::Upper(0.0)),
            Letter::Js => Some(Base::Even),
            Letter::C | Letter::D | Letter::E | Letter::F | Letter::G => value.map(Base::Upper),
            // k is moved in grades 4 to 7 alone.
            Letter::K if !(4..=7).contains(&grade) => Some(Base::Lower(0.0)),
            _ => value.filter(|value| value.is_finite()).map(Base::Lower),
        }
    }

    /// The upper deviation of a hole that is tighter than H, from the lower one of the shaft of the same letter; none where the standard
    /// has none.
    pub fn hole_upper(self, letter: Letter, grade: usize, shaft_lower: f64) -> Option<f64> {
        let delta = || Some(self.tolerance(grade)? - self.tolerance(grade.checked_sub(1)?)?);
        let is_smallest = self.step == 0;
        match letter {
            // K holes are moved by the shaft's deviation of grades 4 to 7 up to grade 8; above it they are for 3 mm and less alone.
            Letter::K if grade > 8 => is_smallest.then_some(0.0),
            Letter::K | Letter::M | Letter::N if is_smallest => Some(-shaft_lower),
            Letter::K => Some(delta()? - Letter::K.plain()?.get(self.step)?),
            Letter::M | Letter::N if grade <= 8 => Some(delta()? - shaft_lower),
            Letter::N => Some(0.0),
            Letter::M => Some(-shaft_lower),
            _ if grade <= 7 && !is_smallest => Some(delta()? - shaft_lower),
            _ => Some(-shaft_lower),
        }
    }
}
