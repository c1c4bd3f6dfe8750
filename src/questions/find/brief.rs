//! What a gear set to be designed must keep to, read from what was typed.

use crate::finder::design::{Brief, BriefError, Target, pairs};
use crate::finder::number::{Bounds, NumberError, bare, whole};
use crate::job::{DesignBrief, DesignText, InputProblem};
use crate::problem::Problem;

impl Brief {
    /// Reads a brief.
    ///
    /// # Errors
    /// Every field that cannot be used, and what does not fit together.
    pub fn read(typed: &DesignBrief) -> Result<Self, Vec<InputProblem>> {
        let mut reader = Reader::default();
        let sum = reader.read(DesignText::Sum, &typed.sum, whole);
        let least_teeth = reader.read(DesignText::LeastTeeth, &typed.least_teeth, whole);
        let most_teeth = reader.read(DesignText::MostTeeth, &typed.most_teeth, whole);
        let gears = reader.read(DesignText::Gears, &typed.gears, whole);
        let first = reader.read(DesignText::First, &typed.first, bare);
        let top = reader.read(DesignText::Top, &typed.top, bare);
        let growth = reader.read(DesignText::Growth, &typed.growth, bare);
        let all = (sum.zip(least_teeth).zip(most_teeth), gears.zip(first).zip(top).zip(growth));
        let (Some(((sum, least_teeth), most_teeth)), Some((((gears, first), top), growth))) = all else { return Err(reader.problems) };
        let gears = u8::try_from(gears).unwrap_or(1);
        let brief = Self { sum, least_teeth, most_teeth, layout: typed.layout, target: Target::Steps { first, top, gears, growth } };
        if pairs(&brief).is_empty() {
            let why = BriefError::NoPair { sum, least: least_teeth, most: most_teeth };
            return Err(vec![Problem::stop(DesignText::Sum.into(), &why)]);
        }
        if gears > 1 && first <= top {
            return Err(vec![Problem::stop(DesignText::First.into(), &BriefError::NotFalling)]);
        }
        if brief.target.ratios().windows(2).any(|pair| matches!(pair, [lower, higher] if higher >= lower)) {
            return Err(vec![Problem::stop(DesignText::Growth.into(), &BriefError::TurnsOver(growth))]);
        }
        Ok(brief)
    }
}

/// Reads the fields and keeps what is wrong with them.
#[derive(Default)]
struct Reader {
    problems: Vec<InputProblem>,
}

impl Reader {
    /// The number in a text, within the bounds of its row.
    fn read<T>(&mut self, text: DesignText, typed: &str, read: fn(&str, Bounds) -> Result<T, NumberError>) -> Option<T> {
        read(typed, text.row().kind.bounds()?).map_err(|why| self.problems.push(Problem::stop(text.into(), &why))).ok()
    }
}
