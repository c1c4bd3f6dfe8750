//! Reading the wishes of a job: typed ranges become wishes, or a sentence says why not; wishes that contradict each other are told.

mod contradiction;
mod ready;

use crate::finder::inputs::Given;
use crate::finder::number::{bare, percent, whole};
use crate::finder::wish::{Measure, Strength, Wish};
use crate::gearing::{GearNumber, Layout};
use crate::job::inputs::wishes::{Ends, WEIGHTS};
use crate::job::inputs::{GEARS, Kind};
use crate::job::{self, InputId, InputProblem, WishKind, WishText};
use crate::problem::{Explain, Problem};
use crate::questions::Source;
use crate::units::number::clip;
use crate::units::{AngularVelocity, Length, Limits, Measured, Time, Typed, UnitError, Velocity, limits};
pub use contradiction::Contradiction;
pub use ready::NotReady;
use uom::si::{angular_velocity::revolution_per_minute, length::meter, time::second, velocity::meter_per_second};

/// The wishes of a job, as far as they could be read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Asked {
    /// What to search by: the job's own wishes first, then those that go without saying.
    pub wishes: Vec<Wish>,
    /// The row of the job that each of its own wishes came from.
    pub rows: Vec<usize>,
    /// What is wrong or contradicts itself, by their fields.
    pub problems: Vec<InputProblem>,
}

/// A range, its ends infinite where nothing was typed.
type Range = (f64, f64);

impl Asked {
    /// What a job gives to the search, and its wishes read beside that.
    pub fn of_source(source: Source<'_>) -> (Given, Self) {
        let given = Given::of_source(source);
        let asked = Self::of(&source.job.wishes, &given, source.conditions.cruise);
        (given, asked)
    }

    /// Reads wishes; `cruise` is the sheet's cruise speed, for those that name none.
    pub fn of(wishes: &job::Wishes, given: &Given, cruise: Option<Velocity>) -> Self {
        let mut asked = Self::default();
        for (row, typed) in wishes.rows.iter().take(job::wishes::MOST_WISHES).enumerate() {
            let mut reader = Reader { typed, row, problems: &mut asked.problems };
            let wish = reader.wish(cruise);
            let Some(wish) = wish else { continue };
            if let Some(why) = ready::missing(&wish, given) {
                asked.problems.push(Problem::caution((row, WishText::Least).into(), &why));
            } else {
                asked.wishes.push(wish);
                asked.rows.push(row);
            }
        }
        let found = contradiction::among(&asked.wishes, &asked.rows, given);
        asked.imply(given);
        asked.problems.extend(found.into_iter().map(|(row, why)| Problem::caution((row, WishText::Least).into(), &why)));
        asked
    }
}

/// So little that it only decides between what is as good otherwise. Common practice, no published source.
const IMPLIED_WEIGHT: f64 = 0.1;

impl Asked {
    /// Adds what goes without saying: rather from stock than ordered, rather the tyre that is on the car, and no box for a car that is
    /// driven at its other end.
    fn imply(&mut self, given: &Given) {
        let mut add = |measure: Measure| {
            if self.wishes.iter().all(|wish| wish.measure != measure) {
                self.wishes.push(Wish::prefer(measure, f64::NEG_INFINITY, 0.0, IMPLIED_WEIGHT));
            }
        };
        add(Measure::ToOrder);
        if given.fitted.is_some() {
            add(Measure::OtherTyre);
        }
        let says_layout = self.wishes.iter().any(|wish| matches!(wish.measure, Measure::OtherLayout(_)));
        if let Some(fitted) = given.fitted_set.as_ref().filter(|_| !says_layout) {
            let two_shafts = fitted.layout == Layout::TwoShaft;
            self.wishes.push(Wish::must(Measure::OtherEnd { two_shafts }, f64::NEG_INFINITY, 0.0));
        }
    }

    /// The first problem of a field.
    pub fn problem_at(&self, field: impl Into<InputId>) -> Option<&InputProblem> {
        let field = field.into();
        self.problems.iter().find(|problem| problem.field == field)
    }
}

/// Nothing was typed that a wish could be made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoRange;

explain! { NoRange:
    _ => "the wish has neither a least nor a greatest value", "type one of them, or both, or remove the wish";
}

/// A range whose least is above its greatest.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Crossed {
    /// Least, as typed.
    pub least: String,
    /// Greatest, as typed.
    pub greatest: String,
}

explain! { Crossed:
    error => format!("the least, {}, is above the greatest, {}", clip(&error.least), clip(&error.greatest)), "exchange them, or clear one";
}

struct Reader<'a> {
    typed: &'a job::Wish,
    row: usize,
    problems: &'a mut Vec<InputProblem>,
}

impl Reader<'_> {
    fn wish(&mut self, cruise: Option<Velocity>) -> Option<Wish> {
        let measure = self.measure(cruise)?;
        let (least, greatest) = self.range()?;
        let strength = if self.typed.must { Strength::Must } else { Strength::Prefer(self.weight()?) };
        Some(Wish { measure, least, greatest, strength })
    }

    fn measure(&mut self, cruise: Option<Velocity>) -> Option<Measure> {
        Some(match self.typed.kind {
            WishKind::CruiseRpm => Measure::CruiseRpm(self.speed(cruise)?),
            WishKind::FirstOverall => Measure::FirstOverall,
            WishKind::StartGrade => Measure::StartGrade,
            WishKind::LargestDrop => Measure::LargestDrop,
            WishKind::SpeedAtShift => Measure::SpeedAtShift(self.gear()?),
            WishKind::Landing => Measure::Landing,
            WishKind::TopSpeed => Measure::TopSpeed,
            WishKind::TimeToSpeed => Measure::TimeToSpeed(self.speed(None)?),
            WishKind::TimeOverDistance => Measure::TimeOverDistance(self.distance()?),
            WishKind::Speedometer => Measure::Speedometer,
            WishKind::TyreDiameter => Measure::TyreDiameter,
            WishKind::KeepTyre => Measure::OtherTyre,
            WishKind::KeepAxle => Measure::OtherAxle,
            WishKind::KeepGearSet => Measure::OtherGearSet,
            WishKind::FewParts => Measure::PartsChanged,
            WishKind::SameCase => Measure::OtherCase,
            WishKind::InStock => Measure::ToOrder,
            WishKind::GearCount => Measure::GearCount,
            WishKind::Layout => Measure::OtherLayout(self.typed.layout),
        })
    }

    fn range(&mut self) -> Option<Range> {
        let about = self.typed.kind.about();
        if about.ends == Ends::Neither {
            return Some((f64::NEG_INFINITY, 0.0));
        }
        let range = match (self.typed.kind, about.kind) {
            (_, Kind::Number("%", bounds)) => self.ends(|typed| percent(&typed.text, bounds)),
            (_, Kind::Number(_, bounds)) => self.ends(|typed| bare(&typed.text, bounds)),
            (_, Kind::Whole(bounds)) => self.ends(|typed| whole(&typed.text, bounds).map(f64::from)),
            (WishKind::CruiseRpm | WishKind::Landing, _) => {
                self.ends(|typed| quantity(typed, &limits::WISHED_RPM, |v: AngularVelocity| v.get::<revolution_per_minute>()))
            }
            (WishKind::SpeedAtShift | WishKind::TopSpeed, _) => {
                self.ends(|typed| quantity(typed, &limits::WISHED_SPEED, |v: Velocity| v.get::<meter_per_second>()))
            }
            (WishKind::TimeToSpeed | WishKind::TimeOverDistance, _) => {
                self.ends(|typed| quantity(typed, &limits::WISHED_TIME, |v: Time| v.get::<second>()))
            }
            _ => self.ends(|typed| quantity(typed, &limits::DIAMETER, |v: Length| v.get::<meter>())),
        };
        let (least, greatest) = range?;
        if least > greatest {
            let crossed = Crossed { least: self.typed.least.text.clone(), greatest: self.typed.greatest.text.clone() };
            self.problems.push(Problem::stop((self.row, WishText::Least).into(), &crossed));
            return None;
        }
        if least.is_infinite() && greatest.is_infinite() {
            self.problems.push(Problem::stop((self.row, WishText::Least).into(), &NoRange));
            return None;
        }
        Some((least, greatest))
    }

    fn ends<E: Explain>(&mut self, read: impl Fn(&Typed) -> Result<f64, E>) -> Option<Range> {
        let least = self.end(&self.typed.least, WishText::Least, f64::NEG_INFINITY, &read);
        let greatest = self.end(&self.typed.greatest, WishText::Greatest, f64::INFINITY, &read);
        Some((least?, greatest?))
    }

    fn end<E: Explain>(&mut self, typed: &Typed, text: WishText, open: f64, read: impl Fn(&Typed) -> Result<f64, E>) -> Option<f64> {
        if typed.is_blank() { Some(open) } else { self.keep(text, read(typed)) }
    }

    fn keep<T>(&mut self, text: WishText, read: Result<T, impl Explain>) -> Option<T> {
        read.map_err(|why| self.problems.push(Problem::stop((self.row, text).into(), &why))).ok()
    }

    /// The speed it is asked at; the other where nothing was typed.
    fn speed(&mut self, other: Option<Velocity>) -> Option<Velocity> {
        match other {
            Some(other) if self.typed.at.is_blank() => Some(other),
            _ => self.keep(WishText::At, self.typed.at.read(&limits::WISHED_SPEED)),
        }
    }

    /// A bare number is metres: nobody times a run over so many inches.
    fn distance(&mut self) -> Option<Length> {
        let at = &self.typed.at;
        let bare = !at.is_blank() && at.text.trim().chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | ' '));
        let at = if bare { Typed::new(format!("{} m", at.text.trim()), at.units) } else { at.clone() };
        self.keep(WishText::At, at.read(&limits::WISHED_DISTANCE))
    }

    fn gear(&mut self) -> Option<GearNumber> {
        let gear = self.keep(WishText::At, whole(&self.typed.at.text, GEARS))?;
        usize::from(gear).checked_sub(1).map(GearNumber::at)
    }

    fn weight(&mut self) -> Option<f64> {
        if self.typed.weight.trim().is_empty() {
            Some(job::wishes::USUAL_WEIGHT)
        } else {
            self.keep(WishText::Weight, bare(&self.typed.weight, WEIGHTS))
        }
    }
}

/// A quantity as a plain number.
fn quantity<Q: Measured>(typed: &Typed, limits: &Limits<Q>, take: impl Fn(Q) -> f64) -> Result<f64, UnitError> {
    typed.read::<Q>(limits).map(take)
}
