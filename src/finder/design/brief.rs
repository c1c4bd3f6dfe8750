//! What a gear set to be designed must keep to, read from what was typed.

use super::Target;
use crate::finder::number::{Bounds, NumberError, bare, whole};
use crate::gearing::{Layout, Teeth};
use crate::job::{DesignBrief, DesignText};
use crate::problem::{Explain, Problem};
use crate::units::limits::shown;

/// What a gear set to be designed must keep to.
#[derive(Clone, Debug, PartialEq)]
pub struct Brief {
    /// The tooth sum of every pair, which the centre distance gives at one pitch.
    pub sum: u16,
    /// The fewest teeth of a gear.
    pub least_teeth: u16,
    /// The most teeth of a gear.
    pub most_teeth: u16,
    /// How the box is laid out.
    pub layout: Layout,
    /// The ladder to aim at.
    pub target: Target,
}

/// Why a brief cannot be used.
#[derive(Clone, Debug, PartialEq)]
pub enum BriefError {
    /// No two counts inside the limits add up to the sum.
    NoPair {
        /// The sum.
        sum: u16,
        /// The fewest teeth.
        least: u16,
        /// The most teeth.
        most: u16,
    },
    /// First is not lower than top.
    NotFalling,
    /// A growth that turns the ladder over.
    TurnsOver {
        /// The growth.
        growth: f64,
    },
}

impl Explain for BriefError {
    fn what(&self) -> String {
        match self {
            Self::NoPair { sum, least, most } => format!("no two gears of {least} to {most} teeth add up to {sum}"),
            Self::NotFalling => "the ratio of first is not above that of top".into(),
            Self::TurnsOver { growth } => {
                format!("with a growth of {} a higher gear would be lower than the one below it", shown(*growth))
            }
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::NoPair { .. } => "change the tooth sum, or widen the limits".into(),
            Self::NotFalling => "type a larger ratio for first, or a smaller one for top".into(),
            Self::TurnsOver { .. } => "type a growth nearer 1, or fewer gears".into(),
        }
    }
}

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
        if super::pairs(&brief).is_empty() {
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
