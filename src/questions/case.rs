//! Does each setup's gear set go into the case of setup A? By the case its set is known for, else by layout, tooth sums and pitch.

use super::alike::{gathered, listed, say};
use super::{Known, Shelves, Source};
use crate::catalogue::Entry;
use crate::catalogue::case::{CaseFit, CaseNeeds, fit};
use crate::gearing::check::SUM_TOLERANCE;
use crate::gearing::geometry::pair_cuts::PairAt;
use crate::gearing::{Gearbox, Mesh};
use crate::job;
use crate::questions::Analysis;
use crate::sheet::said::mark;
use crate::sheet::{Cell, Piece, Row};
use crate::units::common::in_millimetres;
use crate::units::{Length, number};

/// What setup A asks of its case; none where it has no gears yet.
pub fn of_first(source: Source<'_>) -> Option<CaseNeeds> {
    needs(source, source.setups.first()?)
}

/// What a setup asks of a case; none where none of its gears is typed.
fn needs(source: Source<'_>, analysis: &Analysis) -> Option<CaseNeeds> {
    let typed = &source.job.setup(analysis.setup.id)?.gearbox;
    if typed.gears.iter().all(|gear| gear.trim().is_empty()) {
        return None;
    }
    let module = analysis.setup.inside.cut.as_ref().map(crate::gearing::geometry::Cut::transverse_module);
    Some(needs_of(analysis.setup.gearbox.as_ref(), known_as(typed, source.shelves), module))
}

/// What a gearbox asks of a case; `set` is the set of the shelf that it is, where it is one.
fn needs_of(gearbox: Option<&Gearbox>, set: Option<&Entry>, module: Option<Length>) -> CaseNeeds {
    let families = set.map(|set| set.text(crate::catalogue::Column::Case)).unwrap_or_default();
    CaseNeeds::of(gearbox, families, module)
}

/// The case families that a setup's gear set goes into, by the shelf; none where the shelf does not know the set, or names none of it.
pub fn families(source: Source<'_>, analysis: &Analysis) -> Vec<String> {
    let typed = source.job.setup(analysis.setup.id).map(|setup| &setup.gearbox);
    typed.and_then(|typed| known_as(typed, source.shelves)).map_or_else(Vec::new, |set| needs_of(None, Some(set), None).families)
}

/// The set of the shelf that a gearbox was picked as, unless its counts were changed since.
fn known_as<'a>(typed: &job::Gearbox, shelves: Shelves<'a>) -> Option<&'a Entry> {
    let known = |known: &&Known<Gearbox>| !typed.altered && known.entry.title() == typed.name;
    shelves.known_sets.iter().find(known).map(|known| &known.entry)
}

/// Whether the gear set of a column, counted from 0, goes into A's case; none for A itself and its equals, and where either has no gears
/// yet.
pub fn fit_of(source: Source<'_>, column: usize) -> Option<CaseFit> {
    let own = source.setups.get(column).filter(|_| column > 0 && !has_the_same_gears(source, column))?;
    Some(fit(&needs(source, own)?, &of_first(source)?))
}

/// Whether a column has the very gears of A.
fn has_the_same_gears(source: Source<'_>, column: usize) -> bool {
    let gears = |column: usize| {
        let typed = &source.job.setup(source.setups.get(column)?.setup.id)?.gearbox;
        Some((typed.layout, &typed.constant, &typed.gears))
    };
    gears(0) == gears(column)
}

/// A row that says it of every setup: what A's case is known by, and what goes into it.
pub fn row(source: Source<'_>) -> Option<Row> {
    let first = of_first(source).filter(|_| source.setups.len() > 1)?;
    let mut row = source.row("case", "Goes into A’s case", |_| Cell::default());
    for (column, cell) in row.cells.iter_mut().enumerate() {
        *cell = match fit_of(source, column) {
            _ if column == 0 => reference(&first),
            Some(fit) => told(&fit),
            None if has_the_same_gears(source, column) => Cell::line([Piece::words("the same gears")]),
            None => Cell::default(),
        };
    }
    Some(row)
}

/// What A's case is known by.
fn reference(needs: &CaseNeeds) -> Cell {
    let families = listed(&needs.families);
    let sums = needs.teeth.map(
        |(_, (least, greatest))| {
            if least == greatest { format!("tooth sum {least}") } else { format!("tooth sums {least} to {greatest}") }
        },
    );
    let said: Vec<String> = [Some(families), sums].into_iter().flatten().filter(|text| !text.is_empty()).collect();
    if said.is_empty() { Cell::absent("teeth not readable") } else { Cell::line([Piece::words(said.join(", "))]) }
}

/// The answer for one setup: good only where name, or sums and pitch, say so.
pub fn told(fit: &CaseFit) -> Cell {
    let words = fit.words('A');
    Cell::line([match fit {
        CaseFit::Named { .. } | CaseFit::BySums { is_pitch_known: true } => Piece::good(words),
        CaseFit::BySums { is_pitch_known: false } | CaseFit::No(_) => Piece::words(words),
        CaseFit::Unknown => Piece::Absent(words),
    }])
}

/// `[B] goes into [A]’s case; [C] does not (made for another case: Redshank long case).` Nothing where there is nothing to say.
pub fn said(source: Source<'_>) -> Option<String> {
    let fits: Vec<(usize, CaseFit)> = (1..source.setups.len()).filter_map(|column| Some((column, fit_of(source, column)?))).collect();
    let of =
        |wanted: fn(&CaseFit) -> bool| -> Vec<usize> { fits.iter().filter(|(_, fit)| wanted(fit)).map(|(column, _)| *column).collect() };
    let mut said: Vec<String> = Vec::new();
    // The case is named once, in the first clause.
    let into = |said: &[String]| if said.is_empty() { format!(" into {}’s case", mark(0)) } else { String::new() };
    let named = of(|fit| matches!(fit, CaseFit::Named { .. }));
    if !named.is_empty() {
        said.push(format!("{}{}", say(&named, "goes", "go"), into(&said)));
    }
    let by_sums = of(|fit| matches!(fit, CaseFit::BySums { .. }));
    if !by_sums.is_empty() {
        said.push(format!(
            "{}{} by {} tooth sums",
            say(&by_sums, "goes", "go"),
            into(&said),
            if by_sums.len() == 1 { "its" } else { "their" }
        ));
    }
    for (reason, columns) in gathered(fits.iter().filter_map(|(column, fit)| Some((*column, fit.misfit()?.reason())))) {
        let go = if said.is_empty() { " go" } else { "" };
        said.push(format!("{} not{go}{} ({reason})", say(&columns, "does", "do"), into(&said)));
    }
    (!said.is_empty()).then(|| format!("{}.", said.join("; ")))
}

/// The distances of the shafts that the pairs of a box ask for without profile shift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Centres {
    least: Length,
    greatest: Length,
    /// Whether profile shift takes up what they differ by.
    pub agree: bool,
}

impl Centres {
    /// `71.2 to 71.9 mm`.
    pub fn words(&self) -> String {
        let [least, greatest] = [self.least, self.greatest].map(|length| number::show(in_millimetres(length), 1));
        if least == greatest { format!("{least} mm") } else { format!("{least} to {greatest} mm") }
    }
}

/// The centre distances of a box of which a pair is cut otherwise; none where all are cut alike, so that tooth sums tell it.
///
/// Two agree within a normal module: what a pair takes up by shifting its profiles (see [`SUM_TOLERANCE`]).
pub fn centres(analysis: &Analysis) -> Option<Centres> {
    let inside = &analysis.setup.inside;
    let pairs: Vec<(PairAt, Mesh)> =
        analysis.setup.gearbox.as_ref()?.pairs_of_gears().map(|(gear, mesh)| (PairAt::of_gear(gear), mesh)).collect();
    if !pairs.iter().any(|(at, _)| inside.is_cut_otherwise(*at)) {
        return None;
    }
    let centres = pairs.iter().map(|(at, mesh)| inside.reference_centre(*at, *mesh)).collect::<Option<Vec<Length>>>()?;
    let least = centres.iter().copied().reduce(Length::min)?;
    let greatest = centres.iter().copied().reduce(Length::max)?;
    let module = inside.cut.as_ref()?.normal_module();
    Some(Centres { least, greatest, agree: greatest - least <= module * f64::from(SUM_TOLERANCE) / 2.0 })
}
