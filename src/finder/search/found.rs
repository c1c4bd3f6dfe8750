//! What a search has found so far: the results in their order, each with its figures.

use super::Search;
use super::columns::speedometer_range;
use super::plan::Figure;
use crate::finder::best::{Candidate, KEPT};
use crate::finder::motion::Driven;
use crate::finder::search::row::Row;
use crate::finder::table::{AxleRow, Pair, SetRow, TyreRow, Unread};
use crate::finder::wish::{Measure, Wish};
use uom::si::linear_number_density::per_meter;

/// One result.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// The gear set.
    pub set: SetRow,
    /// The final drive.
    pub axle: AxleRow,
    /// The tyre, that on the car among them.
    pub tyre: TyreRow,
    /// The best speedometer pair, and what it reads too much, as a share; `None` where no pair fits.
    pub pair: Option<(Pair, f64)>,
    /// Whether no other result is at least as good in every preference.
    pub on_front: bool,
    /// The result, counted from 0, that is at least as good in every preference.
    pub behind: Option<usize>,
    /// Weighted steps missed of all preferences together.
    pub score: f64,
    /// Steps missed of all musts together; 0 for what is an answer.
    pub must_missed: f64,
    /// The figure of each wish, in the order of the wishes; no number where it does not exist.
    pub figures: Vec<f64>,
    /// Steps missed of each wish, in the same order.
    pub missed: Vec<f64>,
}

/// What was found, and how sure it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The results: those on the front first, then the others, each by their score; the nearest misses where nothing meets every must.
    pub results: Vec<Standing>,
    /// Whether anything meets every must.
    pub meets: bool,
    /// How many are on the front in all, more perhaps than are listed.
    pub on_front: usize,
    /// Whether the front could be kept whole.
    pub front_complete: bool,
    /// How far the search has come.
    pub progress: super::Progress,
    /// What of the catalogue could not be read.
    pub unread: Unread,
    /// The wishes it was asked.
    pub wishes: Vec<Wish>,
}

impl Search {
    /// What has been found so far.
    pub fn found(&self) -> Found {
        let front = &self.front.members;
        let on_front = |candidate: &Candidate| front.iter().any(|member| member.rows == candidate.rows);
        let others = self.best.list.iter().filter(|candidate| !on_front(candidate));
        let ordered: Vec<&Candidate> = front.iter().chain(others).take(KEPT).collect();
        let listed_front = front.len().min(KEPT);
        let results = ordered.iter().enumerate().filter_map(|(at, candidate)| {
            let mut standing = self.standing(candidate)?;
            standing.on_front = at < listed_front;
            standing.behind = (!standing.on_front && self.meets)
                .then(|| self.front.beaten_by(&candidate.costs, candidate.score))
                .flatten()
                .filter(|by| *by < listed_front);
            Some(standing)
        });
        Found {
            results: results.collect(),
            meets: self.meets,
            on_front: front.len(),
            front_complete: self.front.is_complete,
            progress: self.progress,
            unread: self.table.unread,
            wishes: self.wishes.clone(),
        }
    }

    /// The best by weights alone, without regard to the front: rows of gear set, final drive and tyre, and the score.
    pub fn best_by_weight(&self) -> Vec<([usize; 3], f64)> {
        self.best.list.iter().map(|candidate| (candidate.rows, candidate.score)).collect()
    }

    /// The wishes it searches by.
    pub fn wishes(&self) -> &[Wish] {
        &self.wishes
    }

    fn standing(&self, candidate: &Candidate) -> Option<Standing> {
        let [set_at, axle_at, tyre_at] = candidate.rows;
        let (set, axle, tyre) = (self.table.sets.get(set_at)?, self.table.axles.get(axle_at)?, self.tyres.rows.get(tyre_at)?);
        let pair = self.best_pair(set, axle, tyre);
        let driven = self.parts(candidate.rows).and_then(|parts| Driven::new(&self.given, &parts));
        let mut figures = vec![f64::NAN; self.wishes.len()];
        let mut missed = vec![0.0; self.wishes.len()];
        for slot in &self.slots {
            let value = match &slot.figure {
                Figure::Set(values) => values.get(set_at).copied().unwrap_or(f64::NAN),
                Figure::SetTimesAxle(values) => values.get(set_at).copied().unwrap_or(f64::NAN) * axle.ratio,
                Figure::Axle(of) => of(axle),
                Figure::Error => pair.map_or(f64::NAN, |(_, error)| error),
                Figure::Engine(measure) => driven.as_ref().map_or(f64::NAN, |driven| driven.figure(*measure)),
                figure => self.along_tyres(figure, candidate.rows, axle),
            };
            if let (Some(figure), Some(steps)) = (figures.get_mut(slot.wish), missed.get_mut(slot.wish)) {
                (*figure, *steps) = (value, slot.steps(value));
            }
        }
        Some(Standing {
            set: set.clone(),
            axle: *axle,
            tyre: *tyre,
            pair,
            on_front: false,
            behind: None,
            score: candidate.score,
            must_missed: candidate.must,
            figures,
            missed,
        })
    }

    fn along_tyres(&self, figure: &Figure, [set, _, tyre]: [usize; 3], axle: &AxleRow) -> f64 {
        let (from, by, column) = Row::line(figure, set, axle);
        self.tyres.column(column).get(tyre).map_or(f64::NAN, |value| from + by * value)
    }

    /// The pair of the shelf that suits the combination best.
    fn best_pair(&self, set: &SetRow, axle: &AxleRow, tyre: &TyreRow) -> Option<(Pair, f64)> {
        let constant = self.given.dial?.constant().get::<per_meter>();
        let wanted = constant * tyre.circumference_m / self.given.turns_at_take_off(axle.ratio);
        let (least, greatest) = speedometer_range(&self.wishes);
        let (least, greatest) =
            if self.wishes.iter().any(|wish| wish.measure == Measure::Speedometer) { (least, greatest) } else { (0.0, 0.0) };
        super::pairs(&self.table, &self.wishes).get(set.housing)?.best(wanted, least, greatest)
    }
}
