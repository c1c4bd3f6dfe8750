//! The answer of Gears in a sentence: whose steps are closer, whose 1st is taller, where a gap is left.

use crate::gearing::ladder::Character;
use crate::gearing::teeth::decimal;
use crate::gearing::{GearNumber, Ladder};
use crate::questions::alike::{self, by_figure, listed, rounded};
use crate::questions::case;
use crate::questions::missing::{self, Want};
use crate::questions::{Analysis, Source};
use crate::sheet::Said;
use crate::sheet::said::{mark, marks};
use crate::units::number;

/// The most setups that are each held against the first; more are only ranked.
const MOST_AGAINST: usize = 3;

/// The sentence.
pub fn said(source: Source<'_>) -> Said {
    with(source, case::said(source).unwrap_or_default())
}

/// The sentence before the shelf is there: whether a set goes into a case is asked of the shelf first, so nothing is said of it yet.
pub fn said_without_shelf(source: Source<'_>) -> Said {
    with(source, String::new())
}

fn with(source: Source<'_>, case: String) -> Said {
    let steps: Vec<Steps<'_>> = (0..).zip(source.setups).filter_map(|(column, analysis)| Steps::of(column, analysis)).collect();
    let answer = match steps.as_slice() {
        [] => return Said::new(nothing(source)),
        [one] => one.alone(),
        [first, others @ ..] if steps.len() <= MOST_AGAINST => against(first, others),
        _ => ranked(source),
    };
    Said::of([answer, super::stepped::said(source), case, missing::said(source, &[TEETH], "every ratio").unwrap_or_default()])
}

/// What a setup must have before its steps are known.
const TEETH: Want<'static> = ("the missing tooth counts", &|analysis| analysis.gears().ladder.is_none());

/// What to do where no setup has a gear set.
fn nothing(source: Source<'_>) -> &'static str {
    let begun = source.setups.iter().any(|analysis| analysis.setup.gears.iter().any(Option::is_some));
    if begun { "Type the missing tooth counts to get every ratio." } else { "Choose a gearbox, or type its tooth counts." }
}

/// The steps of one setup as they are shown.
struct Steps<'a> {
    column: usize,
    ladder: &'a Ladder,
    character: Option<Character>,
    /// Each drop in percent, as it is shown.
    drops: Vec<f64>,
    /// First gear's overall ratio.
    first: Option<f64>,
}

impl<'a> Steps<'a> {
    fn of(column: usize, analysis: &'a Analysis) -> Option<Self> {
        let gears = analysis.gears();
        let ladder = gears.ladder.as_ref()?;
        let drops = ladder.drops().into_iter().map(|drop| rounded(100.0 * drop, 0)).collect();
        Some(Self { column, ladder, character: gears.character, drops, first: gears.first_overall().map(decimal) })
    }

    /// One setup by itself.
    fn alone(&self) -> String {
        let mark = mark(self.column);
        let first = self.first.map_or_else(String::new, |first| format!("; 1st gear is {} overall", number::show(first, 2)));
        if let Some(Character::Inverted(gear)) = self.character {
            return format!("{mark}: {}.", out_of_order(gear));
        }
        match self.drops.as_slice() {
            [] => format!("{mark} has one gear{first}."),
            [one] => format!("{mark} drops {} % from 1st to 2nd{first}.", number::show(*one, 0)),
            [one, rest @ ..] => {
                let gap = self.gap().map_or_else(String::new, |gap| format!(", with a wider gap {}", gap.between()));
                format!("{mark} drops {} % from 1st to 2nd, then {}{gap}{first}.", number::show(*one, 0), percents(rest))
            }
        }
    }

    /// The step that is wider than the one before it.
    fn gap(&self) -> Option<Gap> {
        let Some(Character::Uneven(gear)) = self.character else { return None };
        Some(Gap { gear, drop: *gear.of(&self.drops)? })
    }

    /// What is said of this setup beside the first; nothing where the two read alike.
    fn beside(&self, first: &Self) -> Option<Clause> {
        if let Some(Character::Inverted(gear)) = self.character {
            return Some(Clause::new("is", "are", format!("out of order: {}", out_of_order(gear))));
        }
        let launch = self.launch(first);
        let Some(mut clause) = self.steps(first) else {
            return launch.map(|launch| Clause::new("has", "have", format!("the same steps, every gear {launch}")));
        };
        let join = if self.drops.len() == first.drops.len() { " with" } else { ", and" };
        let launch = match launch {
            Some(launch) => format!("{join} {} {launch} 1st", article(&launch)),
            None if self.first.is_some() && first.first.is_some() => format!("{join} the same 1st"),
            None => String::new(),
        };
        clause.rest.push_str(&launch);
        if let Some(gap) = self.gap().filter(|gap| first.gap().as_ref() != Some(gap)) {
            let drop = number::show(gap.drop, 0);
            clause.rest.extend([", but ", article(&drop), " ", &drop, " % gap ", &gap.between()]);
        }
        Some(clause)
    }

    /// `14 % taller`; nothing where the two read alike.
    fn launch(&self, first: &Self) -> Option<String> {
        let (own, first) = (self.first?, first.first?);
        if number::show(own, 2) == number::show(first, 2) {
            return None;
        }
        let way = if own < first { "taller" } else { "shorter" };
        let share = number::show(100.0 * (own / first - 1.0).abs(), 0);
        Some(if share == "0" { format!("slightly {way}") } else { format!("{share} % {way}") })
    }

    /// How the steps differ from the first's; nothing where they read alike.
    fn steps(&self, first: &Self) -> Option<Clause> {
        if self.drops.len() != first.drops.len() {
            return Some(Clause::new("has", "have", self.gears_and_top()));
        }
        let pairs = || self.drops.iter().copied().zip(first.drops.iter().copied());
        let from = pairs().position(|(own, first)| own.total_cmp(&first).is_ne())?;
        let (own, others): (Vec<f64>, Vec<f64>) = pairs().skip(from).unzip();
        let place = if from == 0 { " throughout".to_owned() } else { format!(" above {}", GearNumber::at(from)) };
        let rest = format!("up{place} ({} for {})", percents(&own), plain(&others));
        if pairs().skip(from).all(|(own, first)| own < first) {
            return Some(Clause::new("closes", "close", rest));
        }
        if pairs().skip(from).all(|(own, first)| own > first) {
            return Some(Clause::new("opens", "open", rest));
        }
        Some(Clause::new("drops", "drop", format!("{} for {}", percents(&self.drops), plain(&first.drops))))
    }

    /// `5 gears, top 0.857`.
    fn gears_and_top(&self) -> String {
        let many = self.ladder.ratios().len();
        let top = number::show(self.ladder.ratios().last().map_or(0.0, |top| decimal(*top)), 3);
        if many == 1 { format!("one gear, {top}") } else { format!("{many} gears, top {top}") }
    }

    /// `: 32, 25 and 20 % drops, 1st 9.64 overall`.
    fn in_short(&self) -> String {
        let drops = (!self.drops.is_empty()).then(|| format!("drops of {}", percents(&self.drops)));
        let first = self.first.map(|first| format!("1st {} overall", number::show(first, 2)));
        let said: Vec<String> = drops.into_iter().chain(first).collect();
        if said.is_empty() { String::new() } else { format!(": {}", said.join(", ")) }
    }
}

/// What one setup does, or several.
#[derive(PartialEq)]
struct Clause {
    one: &'static str,
    many: &'static str,
    rest: String,
}

impl Clause {
    fn new(one: &'static str, many: &'static str, rest: String) -> Self {
        Self { one, many, rest }
    }
}

/// A step that is wider than the one before it.
#[derive(PartialEq)]
struct Gap {
    /// The gear it is shifted from.
    gear: GearNumber,
    /// In percent, as it is shown.
    drop: f64,
}

impl Gap {
    fn between(&self) -> String {
        format!("from {} to {}", self.gear, self.gear.next())
    }
}

/// Said where the next gear is no faster than a gear.
fn out_of_order(gear: GearNumber) -> String {
    format!("{} is not faster than {gear}, so check the counts", gear.next())
}

/// Every setup held against the first.
fn against(first: &Steps<'_>, others: &[Steps<'_>]) -> String {
    let mut said: Vec<(Option<Clause>, Vec<usize>)> = vec![(None, vec![first.column])];
    for other in others {
        let clause = other.beside(first);
        match said.iter_mut().find(|(known, _)| *known == clause) {
            Some((_, columns)) => columns.push(other.column),
            None => said.push((clause, vec![other.column])),
        }
    }
    let sentence = |(clause, columns): &(Option<Clause>, Vec<usize>)| match clause {
        Some(clause) => Some(format!("{} {}.", alike::say(columns, clause.one, clause.many), clause.rest)),
        None if columns.len() > 1 => Some(format!("{} geared alike{}.", alike::say(columns, "is", "are"), first.in_short())),
        None => None,
    };
    said.iter().filter_map(sentence).collect::<Vec<_>>().join(" ")
}

/// Who is closest and widest, and whose 1st is shortest and tallest.
fn ranked(source: Source<'_>) -> String {
    let spreads = by_figure(source, 2, |analysis| analysis.gears().spread().map(decimal));
    let firsts = by_figure(source, 2, |analysis| analysis.gears().first_overall().map(decimal));
    let spread = match spreads.as_slice() {
        [close, .., wide] => format!(
            "{} closest, {} from 1st to top, {} widest, {}.",
            close.say("is", "are"),
            close.shown,
            wide.say("is", "are"),
            wide.shown
        ),
        [all] => format!("{} alike from 1st to top, {}.", all.say("is", "are"), all.shown),
        [] => String::new(),
    };
    let first = match firsts.as_slice() {
        [tall, .., short] => format!(
            "1st is shortest in {}, {} overall, and tallest in {}, {}.",
            marks(&short.columns),
            short.shown,
            marks(&tall.columns),
            tall.shown
        ),
        [all] if all.columns.len() > 1 => format!("1st is {} overall in all of them.", all.shown),
        _ => String::new(),
    };
    [spread, first].into_iter().filter(|said| !said.is_empty()).collect::<Vec<_>>().join(" ")
}

/// `25 and 20`.
fn plain(percents: &[f64]) -> String {
    listed(&percents.iter().map(|percent| number::show(*percent, 0)).collect::<Vec<_>>())
}

/// `25 and 20 %`.
fn percents(percents: &[f64]) -> String {
    format!("{} %", plain(percents))
}

/// `a`, or `an` before a number that begins with a vowel when it is read aloud.
fn article(number: &str) -> &'static str {
    let digits: String = number.chars().take_while(char::is_ascii_digit).collect();
    if digits.starts_with('8') || matches!(digits.as_str(), "11" | "18") { "an" } else { "a" }
}
