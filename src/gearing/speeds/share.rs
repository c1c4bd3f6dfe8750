//! A speed as exact shares of the two speeds a gearbox can be given: its input's and its output's.

use std::ops::{Add, Div, Mul, Neg, Sub};

use crate::gearing::teeth::{Ratio, decimal};
use crate::units::AngularVelocity;

/// A speed as so many times the input's plus so many times the output's; the sign is the direction against the input's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Share {
    /// Turns for one turn of the input.
    pub of_input: Ratio,
    /// Turns for one turn of the output.
    pub of_output: Ratio,
}

impl Share {
    /// At rest.
    pub const REST: Self = Self { of_input: Ratio::new_raw(0, 1), of_output: Ratio::new_raw(0, 1) };
    /// The input itself.
    pub const INPUT: Self = Self { of_input: Ratio::new_raw(1, 1), of_output: Ratio::new_raw(0, 1) };
    /// The output itself.
    pub const OUTPUT: Self = Self { of_input: Ratio::new_raw(0, 1), of_output: Ratio::new_raw(1, 1) };

    /// The speed when input and output turn so.
    pub fn at(self, input: AngularVelocity, output: AngularVelocity) -> AngularVelocity {
        decimal(self.of_input) * input + decimal(self.of_output) * output
    }

    /// The same speed told by the input alone, once a gear ties the output to it: output = input / `ratio`.
    pub(super) fn tied(self, ratio: Ratio) -> Self {
        Self { of_input: self.of_input + self.of_output / ratio, of_output: Ratio::new_raw(0, 1) }
    }
}

impl Mul<Ratio> for Share {
    type Output = Self;

    fn mul(self, by: Ratio) -> Self {
        Self { of_input: self.of_input * by, of_output: self.of_output * by }
    }
}

impl Div<Ratio> for Share {
    type Output = Self;

    fn div(self, by: Ratio) -> Self {
        Self { of_input: self.of_input / by, of_output: self.of_output / by }
    }
}

impl Neg for Share {
    type Output = Self;

    fn neg(self) -> Self {
        Self { of_input: -self.of_input, of_output: -self.of_output }
    }
}

impl Add for Share {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self { of_input: self.of_input + other.of_input, of_output: self.of_output + other.of_output }
    }
}

impl Sub for Share {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        self + -other
    }
}
