//! The answer of Find in a sentence: which setup meets most wishes, what it misses, and who fails a must-have.

use super::{Asked, evaluate, words};
use crate::finder::wish::Strength;
use crate::finder::{Given, Wish};
use crate::questions::alike::{Alike, by_figure, say, together};
use crate::questions::{Analysis, Source};
use crate::sheet::Said;
use crate::sheet::said::marks;

/// The most setups of which the worst miss is named.
const MOST_NAMED: usize = 3;

/// The sentence.
pub fn said(source: Source<'_>) -> Said {
    let (given, asked) = Asked::of_source(source);
    let wishes: Vec<&Wish> = asked.wishes.iter().take(asked.rows.len()).collect();
    if wishes.is_empty() {
        return Said::new(nothing(source));
    }
    let judged = Judged { source, given: &given, wishes: &wishes };
    let passes = by_figure(source, 0, |analysis| judged.fails_a_must(analysis).is_none().then(|| judged.met(analysis)).flatten());
    Said::of([judged.most(&passes), judged.failing(), judged.search(&passes)])
}

/// What to do where nothing is asked for that can be read.
fn nothing(source: Source<'_>) -> &'static str {
    if source.job.wishes.rows.is_empty() {
        "Add what the customer wants: rpm at a speed, 1st gear, drops, speedometer, tyre."
    } else {
        "Type the range of a wish to see which setup meets it."
    }
}

/// The setups held against the wishes that can be read.
struct Judged<'a> {
    source: Source<'a>,
    given: &'a Given,
    wishes: &'a [&'a Wish],
}

impl Judged<'_> {
    /// How far a setup is from a wish, in words; none where it meets it, or where its figure is not known.
    fn short_of(&self, analysis: &Analysis, wish: &Wish) -> Option<String> {
        let value = evaluate::on_sheet(self.source, analysis, wish, self.given)?;
        let units = self.source.reader.units;
        let short = words::shortfall(wish, value, units)?;
        Some(if wish.measure.is_flag() { short } else { format!("{}, {short}", words::name(wish.measure, units)) })
    }

    /// How many wishes a setup meets; none where no figure of it is known.
    fn met(&self, analysis: &Analysis) -> Option<f64> {
        let known: Vec<&&Wish> =
            self.wishes.iter().filter(|wish| evaluate::on_sheet(self.source, analysis, wish, self.given).is_some()).collect();
        (!known.is_empty()).then(|| known.iter().filter(|wish| self.short_of(analysis, wish).is_none()).map(|_| 1.0).sum())
    }

    /// The first must-have that a setup fails.
    fn fails_a_must(&self, analysis: &Analysis) -> Option<String> {
        self.wishes.iter().filter(|wish| wish.strength == Strength::Must).find_map(|wish| self.short_of(analysis, wish))
    }

    /// `[A] meets most wishes, 5 of 6; furthest off is rpm in top at 70 mph, 607 rpm too high. [B] meets 4, [C] 3.`
    fn most(&self, groups: &[Alike]) -> String {
        let Some((best, others)) = groups.split_last() else { return String::new() };
        let many = self.wishes.len();
        let also = also(others);
        let meets = best.say("meets", "meet");
        match (best.shown == many.to_string(), others.is_empty()) {
            (true, _) if many == 1 => format!("{meets} the wish.{also}"),
            (true, _) => format!("{meets} all {many} wishes.{also}"),
            (false, true) => format!("{meets} {} of {many} wishes{}.", best.shown, self.furthest_off(best)),
            (false, false) => format!("{meets} most wishes, {} of {many}{}.{also}", best.shown, self.furthest_off(best)),
        }
    }

    /// `; furthest off is rpm in top at 70 mph, 607 rpm too high, in [A]`: the wish that each setup of a group misses by most.
    fn furthest_off(&self, group: &Alike) -> String {
        let mut found: Vec<(String, Vec<usize>)> = Vec::new();
        for column in group.columns.iter().take(MOST_NAMED) {
            let worst = self.source.setups.get(*column).and_then(|analysis| self.worst_miss(analysis));
            let Some(worst) = worst else { continue };
            match found.iter_mut().find(|(known, _)| *known == worst) {
                Some((_, columns)) => columns.push(*column),
                None => found.push((worst, vec![*column])),
            }
        }
        match found.as_slice() {
            [] => String::new(),
            [(worst, _)] => format!("; furthest off is {worst}"),
            several => {
                let each: Vec<String> = several.iter().map(|(worst, columns)| format!("{worst} in {}", marks(columns))).collect();
                format!("; furthest off is {}", each.join("; "))
            }
        }
    }

    /// The wish that a setup misses by most, each miss counted in steps that matter alike.
    fn worst_miss(&self, analysis: &Analysis) -> Option<String> {
        let steps = |wish: &Wish| {
            evaluate::on_sheet(self.source, analysis, wish, self.given).map_or(0.0, |value| wish.miss(value) / wish.measure.step())
        };
        let missed = self.wishes.iter().copied().filter(|wish| self.short_of(analysis, wish).is_some());
        missed.max_by(|one, other| steps(one).total_cmp(&steps(other))).and_then(|wish| self.short_of(analysis, wish))
    }

    /// `[C] fails a must-have: tyre diameter 0.40 in too high.`
    fn failing(&self) -> String {
        let found = together(self.source, |analysis| self.fails_a_must(analysis));
        found.iter().map(|(why, columns)| format!("{} a must-have: {why}.", say(columns, "fails", "fail"))).collect::<Vec<_>>().join(" ")
    }

    /// What to do where no setup meets everything.
    fn search(&self, groups: &[Alike]) -> String {
        let met = groups.last().is_some_and(|best| best.shown == self.wishes.len().to_string());
        if met { String::new() } else { "Search the catalogue for what meets more.".into() }
    }
}

/// ` [B] meets 4, [C] 3.`: the others, those that meet most first.
fn also(others: &[Alike]) -> String {
    let group = |(place, group): (usize, &Alike)| {
        if place == 0 {
            format!("{} {}", group.say("meets", "meet"), group.shown)
        } else {
            format!("{} {}", marks(&group.columns), group.shown)
        }
    };
    let others: Vec<String> = others.iter().rev().enumerate().map(group).collect();
    if others.is_empty() { String::new() } else { format!(" {}.", others.join(", ")) }
}
