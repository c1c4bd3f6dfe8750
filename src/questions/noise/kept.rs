//! The recordings that were kept with the job: which part they name, alone and taken together, without their sound.

use super::answer::{Going, Noise};
use super::names;
use super::read::At;
use super::sentence::Asked;
use crate::questions::alike::listed;
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::sound::Moment;
use crate::sound::kept::{Kept, Ranked, rank};
use crate::sound::recording::Sureness;
use crate::sound::recording::makers::makers;
use crate::units::common::show_rpm;
use crate::units::number;

/// The most parts that are named.
const NAMED: usize = 3;
/// Levels below this are no line: all lines of the part together are a tenth of the noise about them.
const FAINT: f64 = -10.0;
/// Source of what several recordings say together.
const TOGETHER: &str = "a part that would be heard loses what it stands below the loudest, one that would be quiet what the loudest stands above the loudest recording less 8 dB; common practice, no published source";

/// The parts by recordings, the one that fits best first; recordings of a gear that the box has not are left out.
pub(super) fn ranked(noise: &Noise<'_>, kept: &[&Kept]) -> Vec<Ranked> {
    let with_moment: Vec<(&Kept, Moment)> = kept.iter().filter_map(|kept| Some((*kept, moment(noise, kept)?))).collect();
    let mut parts = Vec::new();
    for (kept, _) in &with_moment {
        for (origin, _) in makers(&noise.orders, kept.selected) {
            if !parts.contains(&origin) {
                parts.push(origin);
            }
        }
    }
    rank(&with_moment, &parts, &noise.orders)
}

fn moment(noise: &Noise<'_>, kept: &Kept) -> Option<Moment> {
    let going = Going { analysis: noise.analysis, gearbox: noise.gearbox, selected: kept.selected, stages_in: &noise.stages_in };
    Some(going.at(At::Engine(kept.engine)).ok()?.0)
}

/// How sure the first of them is.
pub(super) fn sureness(ranked: &[Ranked]) -> Sureness {
    match ranked.first() {
        Some(first) if first.level > FAINT => Sureness::of_fits(ranked.iter().map(|part| part.fits)),
        _ => Sureness::Nothing,
    }
}

impl Asked<'_> {
    /// `the 3rd gear pair`, or `the 3rd gear pair or the input pair`; nothing where nothing stands out.
    pub(super) fn by_recordings(&self, ranked: &[Ranked]) -> Option<String> {
        let many = match sureness(ranked) {
            Sureness::Nothing => return None,
            Sureness::Clear => 1,
            Sureness::OneOfThese => NAMED,
        };
        let likely = |part: &&Ranked| part.fits > ranked.first().map_or(0.0, |first| first.fits) - Sureness::SPREAD * 2.0;
        let named = ranked.iter().take(many).filter(likely);
        let named: Vec<String> = named.map(|part| names::the(self.source, self.told, self.noise, part.origin)).collect();
        Some(listed(&named).replacen(" and ", " or ", 1))
    }

    /// `The 2 recordings kept together fit the 3rd gear pair.`; none where none is kept.
    pub(super) fn kept_said(&self) -> Option<String> {
        let kept: Vec<&Kept> = self.told.kept.iter().collect();
        let which = match kept.as_slice() {
            [] => return None,
            [one] => format!("The recording kept in {}", one.selected),
            _ => format!("The {} recordings kept together", kept.len()),
        };
        Some(match (self.by_recordings(&ranked(self.noise, &kept)), kept.len()) {
            (Some(named), 1) => format!("{which} has {named}."),
            (Some(named), _) => format!("{which} fit {named}."),
            (None, 1) => format!("{which} has no part that stands out."),
            (None, _) => format!("{which} fit no part."),
        })
    }

    /// A row for what all recordings say together, then one for each.
    pub(super) fn kept_rows(&self) -> Vec<Row> {
        let kept: Vec<&Kept> = self.told.kept.iter().collect();
        let all = (!kept.is_empty()).then(|| {
            let label = if kept.len() == 1 { "Recording kept" } else { "Recordings kept, together" };
            Row::of_one("recordings", label, self.cell(&ranked(self.noise, &kept), "recordings", kept.len() > 1))
        });
        let each = kept.iter().enumerate().filter(|_| kept.len() > 1).map(|(at, one)| {
            let label = format!("Kept: {} at {} rpm", one.selected, show_rpm(one.engine));
            let cell = self.cell(&ranked(self.noise, &[one]), &format!("recording_{}", at + 1), false);
            Row::of_one(format!("recording-{}", at + 1), label, cell)
        });
        all.into_iter().chain(each).collect()
    }

    fn cell(&self, ranked: &[Ranked], key: &str, together: bool) -> Cell {
        let line = |part: &Ranked| {
            let name = names::bare(self.source, self.told, self.noise, part.origin);
            let (value, words, formula) = if together {
                (-part.fits, "off the best fit", "sum over the recordings")
            } else {
                (part.level, "over the noise about it", "all its lines that no other part explains")
            };
            let figure = Figure::number(format!("noise.{key}.{}_db", names::key(part.origin)), value, 1).in_unit("dB");
            let figure = figure.by(formula, format!("{name}: {} dB", number::show(value, 1)), TOGETHER);
            vec![Piece::words(name), figure.into(), Piece::words(words)]
        };
        let cell = ranked.iter().take(NAMED).map(line).fold(Cell::default(), Cell::and);
        if cell.lines.is_empty() { Cell::absent("no gear of this box") } else { cell }
    }
}
