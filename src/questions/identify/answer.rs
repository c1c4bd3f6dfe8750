//! What lies on the bench, and does it belong together? From counts, from turns, from a printed ladder, and for parts of several sets.
//!
//! Each question is answered by itself from what was typed and the candidates of the catalogue; the search from a printed ladder
//! back to teeth takes longer and is only set up here.

use crate::gearing::identify::Candidate;
use crate::gearing::identify::counts::{ByCounts, Counted, by_counts};
use crate::gearing::identify::ladder::{LadderSearch, Wish, WishError};
use crate::gearing::identify::printed::{self, FigureError};
use crate::gearing::identify::reading::{Interval, Reading, ReadingError, by_eye, turns};
use crate::gearing::identify::tooth_pairs::{Counts, Pairs, pairs_in};
use crate::gearing::identify::turns::{ByTurns, Turned, axles_by_turns, by_turns};
use crate::gearing::mix::{Donor, MixError, Mixed, Mixture, mix};
use crate::gearing::part::Part;
use crate::gearing::read::{self, GearTextError};
use crate::gearing::{FinalDrive, Gearbox, Layout, Teeth};
use crate::job::choice::Wheels;
use crate::job::inputs::Kept;
use crate::job::{Bench, BenchField, InputProblem};
use crate::problem::{Explain, Problem};

/// What a reading of turns says.
#[derive(Clone, Debug, PartialEq)]
pub struct Reads {
    /// The ratios it leaves.
    pub interval: Interval,
    /// The candidates, ranked.
    pub ranked: ByTurns,
    /// The tooth pairs it leaves, smallest first.
    pub pairs: Pairs,
}

/// The layout of what lies on the bench.
pub fn layout(bench: &Bench) -> Layout {
    bench.layout.value().unwrap_or_default()
}

/// The candidates that fit the counted teeth, and what else to count. Counts that cannot be read are left out and said.
pub fn from_counts(bench: &Bench, candidates: &[Candidate<'_>], problems: &mut Vec<InputProblem>) -> Option<ByCounts> {
    let counted = counted(bench, problems);
    (!counted.is_empty()).then(|| by_counts(&counted, candidates))
}

/// The text of a field.
fn text(bench: &Bench, field: BenchField) -> &str {
    field.kept(bench).map_or("", Kept::text)
}

const GEARS: [BenchField; 6] =
    [BenchField::First, BenchField::Second, BenchField::Third, BenchField::Fourth, BenchField::Fifth, BenchField::Sixth];

fn counted(bench: &Bench, problems: &mut Vec<InputProblem>) -> Vec<Counted> {
    let layout = layout(bench);
    let mut counted = Vec::new();
    let mut take = |field: BenchField, [line, counter]: [Part; 2]| match pair(text(bench, field)) {
        Ok(teeth) => {
            let places = [Some(line), Some(counter)].into_iter().zip(teeth);
            counted.extend(places.filter_map(|(at, teeth)| teeth.map(|teeth| Counted { at, teeth })));
        }
        Err(why) => problems.push(Problem::stop(field.into(), &why)),
    };
    let lines = |driver: Part, driven: Part, line_drives: bool| if line_drives { [driver, driven] } else { [driven, driver] };
    take(BenchField::Constant, lines(Part::ConstantDriver, Part::ConstantDriven, layout != Layout::OutputReduced));
    for (gear, field) in GEARS.into_iter().enumerate() {
        take(field, lines(Part::Driver(gear), Part::Driven(gear), layout == Layout::OutputReduced));
    }
    take(BenchField::Reverse, lines(Part::ReverseDriver, Part::ReverseDriven, layout == Layout::OutputReduced));
    for text in bench.anywhere.split(|c: char| c.is_whitespace() || matches!(c, ',' | ';')).filter(|text| !text.is_empty()) {
        match read::count(text) {
            Ok(teeth) => counted.push(Counted { at: None, teeth }),
            Err(why) => problems.push(Problem::stop(BenchField::Anywhere.into(), &why)),
        }
    }
    counted
}

/// `37/18`, `37/?`, `?/18`, or nothing.
fn pair(text: &str) -> Result<[Option<Teeth>; 2], GearTextError> {
    if text.trim().is_empty() {
        return Ok([None, None]);
    }
    if !text.contains('?') {
        return read::counts(text).map(|(line, counter)| [Some(line), Some(counter)]);
    }
    let mut parts = text.split('/').map(|part| if part.trim() == "?" { Ok(None) } else { read::count(part).map(Some) });
    match (parts.next(), parts.next(), parts.next()) {
        (Some(line), Some(counter), None) => Ok([line?, counter?]),
        _ => Err(GearTextError::NotAPair { text: text.trim().to_owned() }),
    }
}

/// What turning the gearbox says; `None` where nothing was typed.
pub fn from_turns(bench: &Bench, candidates: &[Candidate<'_>]) -> Option<Result<Reads, ReadingError>> {
    let reading = reading([&bench.input_turns, &bench.output_turns, &bench.uncertainty])?;
    Some(reading.map(|reading| {
        let interval = reading.interval();
        let selected = bench.turned_gear.value().map(|gear| gear.0);
        let ranked = by_turns(&[Turned { selected, interval }], candidates);
        Reads { interval, ranked, pairs: pairs_in(&interval, &Counts::of_gearbox()) }
    }))
}

/// What turning the axle says; with one wheel held the other turns twice as far.
pub fn from_axle(bench: &Bench, drives: &[FinalDrive]) -> Option<Result<Reads, ReadingError>> {
    let wheels = bench.wheel.value()?;
    let reading = reading([&bench.shaft_turns, &bench.wheel_turns, &bench.wheel_uncertainty])?;
    Some(reading.map(|reading| {
        let interval = if wheels == Wheels::OneHeld { reading.interval_with_one_wheel_held() } else { reading.interval() };
        Reads { interval, ranked: axles_by_turns(interval, drives), pairs: pairs_in(&interval, &Counts::of_axle()) }
    }))
}

fn reading([input, output, uncertainty]: [&String; 3]) -> Option<Result<Reading, ReadingError>> {
    if input.trim().is_empty() && output.trim().is_empty() {
        return None;
    }
    let uncertain = || if uncertainty.trim().is_empty() { Ok(by_eye()) } else { turns(uncertainty) };
    Some(turns(input).and_then(|input| Reading::new(input, turns(output)?, uncertain()?)))
}

/// The candidates whose ratios print as a ladder says, and the search for every combination of teeth that does.
pub struct FromLadder {
    /// The printed figures.
    pub figures: Vec<printed::Figure>,
    /// The candidates, ranked.
    pub ranked: Vec<printed::Match>,
}

/// Reads a printed ladder; `None` where nothing was typed.
pub fn from_ladder(bench: &Bench, candidates: &[Candidate<'_>]) -> Option<Result<FromLadder, FigureError>> {
    (!bench.ladder.trim().is_empty()).then(|| {
        let figures = printed::figures(&bench.ladder)?;
        Ok(FromLadder { ranked: printed::by_printed(&figures, candidates), figures })
    })
}

/// What is wrong with the tooth limits of a printed ladder; the usual limit is taken for such a one.
pub fn limit_problems(bench: &Bench) -> Vec<InputProblem> {
    let wrong = |(field, usual): (BenchField, u16)| {
        let why = tooth_limit(bench, field, usual).err()?;
        Some(Problem::stood_in(field.into(), &why, &format!("the usual limit of {usual} is taken")))
    };
    [(BenchField::Fewest, Wish::FEWEST), (BenchField::Most, Wish::MOST)].into_iter().filter_map(wrong).collect()
}

/// A tooth limit as typed, the usual one where it is blank.
fn tooth_limit(bench: &Bench, field: BenchField, usual: u16) -> Result<u16, GearTextError> {
    let text = text(bench, field);
    if text.trim().is_empty() { Ok(usual) } else { read::count(text).map(Teeth::count) }
}

/// The search back to teeth for a printed ladder.
///
/// # Errors
/// When the wish cannot be: limits that cross, figures that no box has.
pub fn ladder_search(bench: &Bench, figures: Vec<printed::Figure>) -> Result<LadderSearch, WishError> {
    let mut wish = Wish::new(layout(bench), figures);
    wish.fewest = tooth_limit(bench, BenchField::Fewest, Wish::FEWEST).unwrap_or(Wish::FEWEST);
    wish.most = tooth_limit(bench, BenchField::Most, Wish::MOST).unwrap_or(Wish::MOST);
    LadderSearch::new(wish)
}

/// Parts of up to three sets put together; `None` until the cluster's set is chosen. A set not chosen is the cluster's.
pub fn mixed(bench: &Bench, find: impl Fn(&str) -> Option<Gearbox>) -> Option<Result<Mixed, MixError>> {
    (!bench.mix_cluster.is_empty()).then(|| mixture(bench, find))
}

fn mixture<'a>(bench: &'a Bench, find: impl Fn(&str) -> Option<Gearbox>) -> Result<Mixed, MixError> {
    let chosen = |name: &str| find(name).ok_or_else(|| MixError::NoSuchSet { set: name.to_owned() });
    let or_cluster = |name: &'a str| if name.is_empty() { bench.mix_cluster.as_str() } else { name };
    let [cluster_name, input_name, gears_name] = [bench.mix_cluster.as_str(), or_cluster(&bench.mix_input), or_cluster(&bench.mix_gears)];
    let (cluster, input, gears) = (chosen(cluster_name)?, chosen(input_name)?, chosen(gears_name)?);
    let donor = |name, gearbox| Donor { name, gearbox, cut: None };
    let donors = vec![donor(gears_name, &gears); gears.gears().len()];
    let (constant, cluster) = (donor(input_name, &input), donor(cluster_name, &cluster));
    mix(&Mixture { constant, cluster, gears: &donors, sum: None, centre: None })
}

/// A refusal as a problem of a field.
pub fn refused(field: BenchField, why: &impl Explain) -> InputProblem {
    Problem::stop(field.into(), why)
}
