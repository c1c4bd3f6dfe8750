//! What a gear set to be designed must keep to, read from what was typed.

use crate::finder::design::{Brief, BriefError, Target, pairs};
use crate::finder::number::{Bounds, NumberError, bare, whole};
use crate::gearing::Teeth;
use crate::job::{DesignBrief, DesignText};
use crate::problem::Problem;

impl Brief {
    /// Reads a brief.
    ///
    /// # Errors
    /// Every field that cannot be used, and what does not fit together.
    pub fn read(typed: &DesignBrief) -> Result<Self, Vec<Problem>> {
        let mut reader = Reader::default();
        let teeth = (f64::from(Teeth::LEAST), f64::from(Teeth::GREATEST));
        let sum = reader.whole(DesignText::Sum, &typed.sum, (2.0 * teeth.0, 2.0 * teeth.1));
        let least_teeth = reader.whole(DesignText::LeastTeeth, &typed.least_teeth, teeth);
        let most_teeth = reader.whole(DesignText::MostTeeth, &typed.most_teeth, teeth);
        let gears = reader.whole(DesignText::Gears, &typed.gears, (1.0, 8.0));
        let first = reader.number(DesignText::First, &typed.first, (0.2, 20.0));
        let top = reader.number(DesignText::Top, &typed.top, (0.2, 20.0));
        let growth = reader.number(DesignText::Growth, &typed.growth, (0.8, 1.6));
        let all = (sum.zip(least_teeth).zip(most_teeth), gears.zip(first).zip(top).zip(growth));
        let (Some(((sum, least_teeth), most_teeth)), Some((((gears, first), top), growth))) = all else { return Err(reader.problems) };
        let gears = u8::try_from(gears).unwrap_or(1);
        let brief = Self { sum, least_teeth, most_teeth, layout: typed.layout, target: Target::Steps { first, top, gears, growth } };
        if pairs(&brief).is_empty() {
            let why = BriefError::NoPair { sum, least: least_teeth, most: most_teeth };
            return Err(vec![Problem::stop(DesignText::Sum.path(), &why)]);
        }
        if gears > 1 && first <= top {
            return Err(vec![Problem::stop(DesignText::First.path(), &BriefError::NotFalling)]);
        }
        if brief.target.ratios().windows(2).any(|pair| matches!(pair, [lower, higher] if higher >= lower)) {
            return Err(vec![Problem::stop(DesignText::Growth.path(), &BriefError::TurnsOver { growth })]);
        }
        Ok(brief)
    }
}

/// Reads the fields and keeps what is wrong with them.
#[derive(Default)]
struct Reader {
    problems: Vec<Problem>,
}

impl Reader {
    fn number(&mut self, text: DesignText, typed: &str, bounds: Bounds) -> Option<f64> {
        self.keep(text, bare(typed, bounds))
    }

    fn whole(&mut self, text: DesignText, typed: &str, bounds: Bounds) -> Option<u16> {
        self.keep(text, whole(typed, bounds))
    }

    fn keep<T>(&mut self, text: DesignText, read: Result<T, NumberError>) -> Option<T> {
        read.map_err(|why| self.problems.push(Problem::stop(text.path(), &why))).ok()
    }
}
