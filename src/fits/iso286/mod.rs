//! Fits of ISO 286: what a code such as `H7/g6` allows at a size, from the standard's own tables.
//!
//! The tables stand in [`table`]; its formulas only explain them, for the standard rounds some rows otherwise. Letters and grades that
//! gearboxes have are here: c to u, grades 4 to 12, up to 250 mm.

pub mod table;

use table::{Base, Step};

use super::error::CodeError;
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// Half of a fit: a hole or a shaft by its letter and grade.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Half {
    /// Whether it is a hole; holes are written in capitals.
    pub is_hole: bool,
    letter: table::Letter,
    grade: usize,
}

/// A fit: a hole and a shaft.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Code {
    /// The hole.
    pub hole: Half,
    /// The shaft.
    pub shaft: Half,
}

/// The sizes that a half allows, as deviations from the nominal size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// The lower one.
    pub lower: Length,
    /// The upper one.
    pub upper: Length,
}

impl Code {
    /// Reads a fit: `H7/g6`. Holes are meant by the capital, or by the first place where both are written alike.
    ///
    /// # Errors
    /// When it is no pair, or a letter or grade is not known here.
    pub fn read(text: &str) -> Result<Self, CodeError> {
        let text = text.trim();
        let (first, second) = text.split_once(['/', '-']).ok_or_else(|| CodeError::NoPair(text.to_owned()))?;
        let is_swapped = first.trim().starts_with(char::is_lowercase) && second.trim().starts_with(char::is_uppercase);
        let (hole, shaft) = if is_swapped { (second, first) } else { (first, second) };
        Ok(Self { hole: Half::read(hole, true)?, shaft: Half::read(shaft, false)? })
    }

    /// As it is written: `H7/g6`.
    pub fn written(&self) -> String {
        format!("{}/{}", self.hole.written(), self.shaft.written())
    }

    /// The fields of hole and shaft at a size.
    ///
    /// # Errors
    /// When the standard has no such field at the size, or the size is beyond the tables here.
    pub fn fields(&self, size: Length) -> Result<[Field; 2], CodeError> {
        Ok([self.hole.field(size)?, self.shaft.field(size)?])
    }
}

impl Half {
    fn read(text: &str, is_hole: bool) -> Result<Self, CodeError> {
        let text = text.trim();
        let unknown = || CodeError::Unknown { text: text.to_owned(), is_hole };
        let end = text.find(|c: char| c.is_ascii_digit()).ok_or_else(unknown)?;
        let (letter, grade) = text.split_at_checked(end).ok_or_else(unknown)?;
        let letter = table::Letter::read(&letter.trim().to_ascii_lowercase()).ok_or_else(unknown)?;
        let grade = grade.trim().parse().ok().filter(|grade| table::GRADES.contains(grade)).ok_or_else(unknown)?;
        Ok(Self { is_hole, letter, grade })
    }

    /// As it is written: `H7`, `g6`.
    pub fn written(&self) -> String {
        let letter = self.letter.word();
        if self.is_hole { format!("{}{}", letter.to_ascii_uppercase(), self.grade) } else { format!("{letter}{}", self.grade) }
    }

    /// The field at a size.
    ///
    /// Model: the fundamental deviation of the letter, and the standard tolerance of the grade on the far side of it; js lies evenly about
    /// the size. A hole has the shaft's deviation with its sign turned; one that is tighter than H also moves by Δ = IT(n) − IT(n − 1),
    /// for K, M and N up to grade 8 and P and tighter up to grade 7, above 3 mm.
    ///
    /// # Errors
    /// When there is no such field, or the size is beyond the tables here.
    pub fn field(&self, size: Length) -> Result<Field, CodeError> {
        let step = Step::of(in_millimetres(size)).ok_or(CodeError::Beyond(table::MOST_MM))?;
        let none = || CodeError::NotAtThisSize(self.written());
        let width = step.tolerance(self.grade).ok_or_else(none)?;
        let base = step.deviation(self.letter, self.grade).ok_or_else(none)?;
        let (lower, upper) = match (base, self.is_hole) {
            (Base::Even, _) => (-width / 2.0, width / 2.0),
            (Base::Upper(upper), false) => (upper - width, upper),
            (Base::Lower(lower), false) => (lower, lower + width),
            // A hole looser than H: its lower deviation is the shaft's upper one, turned.
            (Base::Upper(upper), true) => (-upper, -upper + width),
            (Base::Lower(lower), true) => {
                let upper = step.hole_upper(self.letter, self.grade, lower).ok_or_else(none)?;
                (upper - width, upper)
            }
        };
        Ok(Field { lower: microns(lower), upper: microns(upper) })
    }
}

impl Field {
    /// How wide it is.
    pub fn width(self) -> Length {
        self.upper - self.lower
    }
}

fn microns(value: f64) -> Length {
    millimetres(value * 1e-3)
}
