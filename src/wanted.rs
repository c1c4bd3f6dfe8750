//! A figure asked backwards: which single change from the shelf makes it so?
//!
//! The figure is any figure of any question, by its key. Every part of the catalogue is put into the setup in turn, the question is
//! answered anew, and the nearest are kept: nothing is known here of what a figure means, so a new question can be asked backwards as it
//! stands. The work goes in slices ([`Search::advance`]).

use crate::catalogue::{Catalogue, Entry, PartKind};
use crate::job::{Job, SetupId};
use crate::questions::{self, Place, Question, Shelves, Source};
use crate::sheet::{Cell, Figure, Piece, Reader, Words};
use crate::speedometer::SpeedoGear;

/// How many changes are kept.
pub const KEPT: usize = 6;

/// One part that brings the figure near the value wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// What would be fitted, as it stands in the catalogue.
    pub part: Entry,
    /// The figure's value then, in the unit it is shown in.
    pub value: f64,
    /// The figure then, as it is read.
    pub shown: String,
    /// What else changes, as `rpm at 70 mph 3,907 → 3,348`.
    pub also: Vec<String>,
}

/// The search for one figure of one setup.
#[derive(Clone, Debug)]
pub struct Search {
    job: Job,
    words: Words,
    gears: Vec<SpeedoGear>,
    question: &'static Question,
    key: String,
    wanted: f64,
    now: Option<f64>,
    parts: Vec<Entry>,
    tried: usize,
    best: Vec<Change>,
}

impl Search {
    /// A search for the part that makes the figure `key` of a setup `wanted`, in the unit the figure is shown in.
    ///
    /// None where the setup has no such figure.
    ///
    /// ```
    /// use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
    /// use layshaft::job::demo;
    /// use layshaft::sheet::Words;
    /// use layshaft::wanted::Search;
    /// # fn example() -> Option<()> {
    /// let axle = |teeth| Entry::new(PartKind::RingAndPinion).with(Column::Drive, teeth);
    /// let shelf = Catalogue::empty().add_all(vec![axle("37/11"), axle("41/11")]);
    /// let job = demo::job();
    /// let mut search = Search::new(&job, job.setups.first()?.id, Words::Us, &shelf, "cruise_rpm", 3_400.0)?;
    /// while !search.advance(10) {}
    /// // At 70 mph a 185/70R14, which rolls 1.8788 m, turns 31.2928 × 60 ÷ 1.8788 = 999.34 times a minute; top gear is direct: × 37/11.
    /// let best = search.best();
    /// assert_eq!(best.first().map(|change| (change.part.title(), change.shown.as_str())), Some(("37/11", "3,361 rpm")));
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn new(job: &Job, setup: SetupId, words: Words, catalogue: &Catalogue, key: &str, wanted: f64) -> Option<Self> {
        let alone = Job { setups: vec![job.setup(setup)?.clone()], ..job.clone() };
        let gears = catalogue.speedometer_gears();
        let mut compared = questions::LIST.iter().filter(|question| question.place == Place::Compare);
        let question = compared.find(|question| figure_of(&alone, &gears, words, question, key).is_some())?;
        let now = figure_of(&alone, &gears, words, question, key).map(|figure| figure.value);
        let fitted = alone.setups.first()?;
        let parts =
            PartKind::FITTED.into_iter().flat_map(|kind| catalogue.entries(kind)).filter(|part| !fitted.has_part(part)).cloned().collect();
        Some(Self { job: alone, words, gears, question, key: key.into(), wanted, now, parts, tried: 0, best: Vec::new() })
    }

    /// Tries up to `many` further parts; answers whether all are tried.
    pub fn advance(&mut self, many: usize) -> bool {
        let slice: Vec<Entry> = self.parts.iter().skip(self.tried).take(many).cloned().collect();
        self.tried += slice.len();
        for part in slice {
            self.try_part(part);
        }
        self.tried >= self.parts.len()
    }

    fn try_part(&mut self, part: Entry) {
        let Some(job) = self.with(&part) else { return };
        let Some(figure) = figure_of(&job, &self.gears, self.words, self.question, &self.key) else { return };
        let is_moved = self.now.is_none_or(|now| (figure.value - now).abs() > 1e-9 * now.abs().max(1.0));
        let off = (figure.value - self.wanted).abs();
        if !is_moved || !off.is_finite() {
            return;
        }
        let at = self.best.partition_point(|kept| (kept.value - self.wanted).abs() <= off);
        if at < KEPT {
            self.best.insert(at, Change { part, value: figure.value, shown: figure.text(), also: Vec::new() });
            self.best.truncate(KEPT);
        }
    }

    fn with(&self, part: &Entry) -> Option<Job> {
        let mut job = self.job.clone();
        job.setups.first_mut()?.take_part(part);
        Some(job)
    }

    /// The nearest changes found so far, each with what else it changes.
    pub fn best(&self) -> Vec<Change> {
        let before = stations(&self.job, &self.gears, self.words);
        let told = |change: &Change| {
            let after = self.with(&change.part).map(|job| stations(&job, &self.gears, self.words)).unwrap_or_default();
            let also = before.iter().zip(after).filter(|((id, ..), _)| *id != self.question.id);
            let moved = also.filter_map(|((_, label, then), (_, _, now))| (*then != now).then(|| format!("{label} {then} → {now}")));
            Change { also: moved.collect(), ..change.clone() }
        };
        self.best.iter().map(told).collect()
    }
}

/// What is read of a job of one setup.
fn with_source<T>(job: &Job, gears: &[SpeedoGear], words: Words, read: impl FnOnce(Source<'_>) -> T) -> T {
    let shelves = Shelves { speedometer_gears: gears, ..Shelves::default() };
    let answers = questions::analyse_job(job, shelves);
    read(Source::new(job, &answers, shelves, Reader { units: job.units, words }))
}

/// The figure of a key in a question, for the one setup of a job.
fn figure_of(job: &Job, gears: &[SpeedoGear], words: Words, question: &Question, key: &str) -> Option<Figure> {
    with_source(job, gears, words, |source| {
        let rows = (question.deciding)(source).into_iter().chain((question.rows)(source));
        rows.filter_map(|row| row.cells.into_iter().next()).find_map(|cell| figure_in(cell, key))
    })
}

fn figure_in(cell: Cell, key: &str) -> Option<Figure> {
    cell.lines.into_iter().flatten().find_map(|piece| match piece {
        Piece::Figure(figure) if figure.key == key => Some(*figure),
        _ => None,
    })
}

/// The figure that stands for each question: its id, its label and the figure.
fn stations(job: &Job, gears: &[SpeedoGear], words: Words) -> Vec<(&'static str, String, String)> {
    with_source(job, gears, words, |source| {
        let compared = questions::LIST.iter().filter(|question| question.place == Place::Compare && question.id != "find");
        let told = |question: &Question| {
            let station = (question.station)(source);
            let figure = station.figures.into_iter().next().flatten().unwrap_or_else(|| "–".into());
            (question.id, station.label, figure)
        };
        compared.map(told).collect()
    })
}
