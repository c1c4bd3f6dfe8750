//! What was seen when one end was turned: turns, with their uncertainty, and the exact interval of ratio they leave.

use crate::gearing::printed::PrintedRatio;
use crate::gearing::teeth::{Ratio, decimal};
use crate::units::number;

/// The finest part of a turn that a reading keeps: a millionth.
const MILLION: i128 = 1_000_000;

/// How well a part of a turn is judged by eye against a mark: a twentieth. Common practice, no published source.
pub fn by_eye() -> Ratio {
    Ratio::new(1, 20)
}

/// Turns of the input and of the output, each with its uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reading {
    input: Ratio,
    output: Ratio,
    input_uncertainty: Ratio,
    output_uncertainty: Ratio,
}

/// Why turns tell nothing.
#[derive(Clone, Debug, PartialEq)]
pub enum ReadingError {
    /// Nothing was typed.
    Blank,
    /// A text that is no number of turns: what was typed.
    NotTurns(String),
    /// No turns, or fewer than none.
    NoTurns,
    /// An uncertainty below nothing.
    NegativeUncertainty,
    /// The uncertainty is as large as what was counted.
    TooUncertain {
        /// The turns counted.
        turns: Ratio,
        /// Their uncertainty.
        uncertainty: Ratio,
        /// The turns of the other end.
        other: Ratio,
    },
}

explain! { ReadingError:
    Self::Blank => "no turns are given", "type turns up to 100,000, such as 10 or 4.2 or 4 1/5";
    Self::NotTurns(text) => format!("“{}” is not a number of turns", number::clip(text)),
        "type turns up to 100,000, such as 10 or 4.2 or 4 1/5";
    Self::NoTurns => "an end that does not turn tells no ratio", "turn on until both ends have moved, and type both counts";
    Self::NegativeUncertainty => "an uncertainty cannot be less than nothing",
        "type 0 for an exact count, or a part of a turn such as 0.05";
    Self::TooUncertain { turns, uncertainty, other } =>
        format!("an uncertainty of {} turns is no smaller than the {} turns counted", shown(*uncertainty), shown(*turns)),
        {
                let times = (*uncertainty * Ratio::from_integer(10) / *turns).ceil();
                format!("turn further: with {} turns of the other end a tenth of the reading is uncertain", shown(*other * times))
            };
}

fn shown(turns: Ratio) -> String {
    let text = number::show(decimal(turns), 3);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// Reads a number of turns: `10`, `4.2`, `4 1/5`, `4,2`. Kept to the millionth of a turn.
///
/// # Errors
/// When it is no number from 0 to 100 000.
pub fn turns(text: &str) -> Result<Ratio, ReadingError> {
    if text.trim().is_empty() {
        return Err(ReadingError::Blank);
    }
    let wrong = || ReadingError::NotTurns(text.trim().to_owned());
    let (readings, rest) = number::leading(text).ok_or_else(wrong)?;
    if !matches!(rest.trim().to_lowercase().as_str(), "" | "turn" | "turns") {
        return Err(wrong());
    }
    readings.into_iter().flatten().find_map(exact).ok_or_else(wrong)
}

/// A number of turns to the millionth; `None` outside 0 to 100 000.
#[expect(clippy::cast_possible_truncation, reason = "the value is checked to be below 10^11")]
pub fn exact(value: f64) -> Option<Ratio> {
    (0.0..=100_000.0).contains(&value).then(|| Ratio::new((value * 1e6).round() as i128, MILLION))
}

impl Reading {
    /// Turns of the input that gave turns of the output, and how uncertain the output's are.
    ///
    /// # Errors
    /// When an end did not turn, or the uncertainty leaves nothing of the reading.
    pub fn new(input: Ratio, output: Ratio, output_uncertainty: Ratio) -> Result<Self, ReadingError> {
        Self::with_uncertainties(input, output, Ratio::from_integer(0), output_uncertainty)
    }

    /// Turns of both ends, both uncertain.
    ///
    /// # Errors
    /// As [`Reading::new`].
    pub fn with_uncertainties(
        input: Ratio,
        output: Ratio,
        input_uncertainty: Ratio,
        output_uncertainty: Ratio,
    ) -> Result<Self, ReadingError> {
        let zero = Ratio::from_integer(0);
        if input <= zero || output <= zero {
            return Err(ReadingError::NoTurns);
        }
        if input_uncertainty < zero || output_uncertainty < zero {
            return Err(ReadingError::NegativeUncertainty);
        }
        for (turns, uncertainty, other) in [(input, input_uncertainty, output), (output, output_uncertainty, input)] {
            if uncertainty >= turns {
                return Err(ReadingError::TooUncertain { turns, uncertainty, other });
            }
        }
        Ok(Self { input, output, input_uncertainty, output_uncertainty })
    }

    /// The ratios (input turns for one output turn) that the reading leaves, ends included:
    /// (n − uₙ) / (k + uₖ) to (n + uₙ) / (k − uₖ).
    pub fn interval(&self) -> Interval {
        Interval {
            least: (self.input - self.input_uncertainty) / (self.output + self.output_uncertainty),
            greatest: (self.input + self.input_uncertainty) / (self.output - self.output_uncertainty),
        }
    }

    /// The same for an axle of which one wheel is held: the free wheel turns twice as far as the ring, so the ratio is twice
    /// what pinion and wheel say. Follows from the differential: the ring turns at the mean of both wheels.
    pub fn interval_with_one_wheel_held(&self) -> Interval {
        let Interval { least, greatest } = self.interval();
        Interval { least: least * Ratio::from_integer(2), greatest: greatest * Ratio::from_integer(2) }
    }
}

/// An interval of ratio, both ends inside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Interval {
    /// The lower end.
    pub least: Ratio,
    /// The upper end.
    pub greatest: Ratio,
}

impl Interval {
    /// Whether a ratio lies inside, whatever its sign.
    pub fn contains(&self, ratio: Ratio) -> bool {
        let size = size(ratio);
        self.least <= size && size <= self.greatest
    }

    /// The interval in which a printed figure may lie so that the ratio behind it lies in this one.
    #[must_use]
    pub fn widened(&self, printed: &PrintedRatio) -> Self {
        Self { least: self.least - printed.half_unit(), greatest: self.greatest + printed.half_unit() }
    }

    /// How far a ratio lies outside, as a share of the nearer end; 0 inside.
    pub fn distance(&self, ratio: Ratio) -> f64 {
        let size = size(ratio);
        if size < self.least {
            1.0 - decimal(size / self.least)
        } else if size > self.greatest {
            decimal(size / self.greatest) - 1.0
        } else {
            0.0
        }
    }

    /// How far a ratio lies from the middle, as a share of the middle.
    pub fn off_centre(&self, ratio: Ratio) -> f64 {
        let middle = (self.least + self.greatest) / Ratio::from_integer(2);
        (decimal(size(ratio) / middle) - 1.0).abs()
    }
}

/// A ratio without its sign.
pub fn size(ratio: Ratio) -> Ratio {
    if ratio < Ratio::from_integer(0) { -ratio } else { ratio }
}
