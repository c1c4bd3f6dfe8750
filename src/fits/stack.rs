//! A stack of measured parts along a shaft: what is left between them, how sure that is, and how it is when the box is hot.

use super::Material;
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// One line of a stack: a part that was measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it is called.
    pub name: String,
    /// How long it is along the shaft.
    pub length: Length,
    /// How far off that may be, either way.
    pub tolerance: Length,
    /// How many of it stand in the stack.
    pub count: u32,
    /// Whether it makes room (the case, a gasket) or takes it up.
    pub makes_room: bool,
}

impl Part {
    /// The length of all of them.
    pub fn total(&self) -> Length {
        self.length * f64::from(self.count)
    }
}

/// Parts that stand one behind another between two faces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stack {
    /// The parts in the order they were typed.
    pub parts: Vec<Part>,
}

/// What a case and what stands in it are made of, and how much warmer than at the bench they are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heat {
    /// What makes room.
    pub case: Material,
    /// What takes it up, shims included.
    pub inside: Material,
    /// Kelvin above the bench.
    pub warmer_k: f64,
}

impl Stack {
    /// The room left along the shaft, below nothing where the parts are longer than what they go into.
    ///
    /// Model: gap = Σ n·L of what makes room − Σ n·L of what takes it up. Source: Shigley, *Mechanical Engineering Design*, 1-14.
    pub fn gap(&self) -> Length {
        self.room() - self.taken()
    }

    /// What makes room, added up.
    pub fn room(&self) -> Length {
        self.total(true)
    }

    /// What takes it up, added up.
    pub fn taken(&self) -> Length {
        self.total(false)
    }

    fn total(&self, makes_room: bool) -> Length {
        self.parts.iter().filter(|part| part.makes_room == makes_room).map(Part::total).fold(Length::default(), |sum, total| sum + total)
    }

    /// How far off the gap can be where every part lies at its worst: Σ n·t.
    pub fn worst_case(&self) -> Length {
        self.parts.iter().map(|part| part.tolerance * f64::from(part.count)).fold(Length::default(), |sum, total| sum + total)
    }

    /// How far off the gap is likely to be: √Σ n·t², the parts independent of one another and as often long as short.
    ///
    /// Source: Shigley, *Mechanical Engineering Design*, 1-14 (statistical stack).
    pub fn root_sum_square(&self) -> Length {
        let squares = self.parts.iter().map(|part| in_millimetres(part.tolerance).powi(2) * f64::from(part.count));
        millimetres(squares.sum::<f64>().sqrt())
    }

    /// How much more room there is when the box is hot: ΔT × (α of the case × what makes room − α of what is inside × what takes it up).
    ///
    /// Left out: that case and shaft are not equally hot. Source: any textbook of machine elements (linear growth).
    pub fn opens_when_hot(&self, heat: Heat) -> Length {
        heat.case.growth(self.room(), heat.warmer_k) - heat.inside.growth(self.taken(), heat.warmer_k)
    }

    /// Whether any part was typed with a tolerance.
    pub fn has_tolerances(&self) -> bool {
        self.worst_case() > Length::default()
    }
}
