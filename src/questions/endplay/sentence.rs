//! The answer in a sentence or two: which shims to fit, what play they leave cold and hot, or why nothing lands.

use super::answer::{Play, Shims};
use super::read::Measured;
use super::rows::{pack_said, range, said, warm};
use crate::fits::ShimsGo;
use crate::fits::shims::Pack;
use crate::fits::slip::{self, Slip};
use crate::job::{EndPlayField, InputId};
use crate::questions::{Source, Station};
use crate::sheet::Said;
use crate::units::Length;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let measured = Measured::of_source(source);
    let Some(play) = Play::of(&source.job.bench, &measured) else { return Station::at_bench("from a measured stack") };
    let best = play.shims.as_ref().and_then(|shims| Some((shims, shims.found.landing.first()?)));
    Station::at_bench(match best {
        Some((shims, pack)) => format!("{}: {}", pack_said(&measured.kit, pack), said(source, play.with(shims, pack).0)),
        None => format!("{} without shims", said(source, play.gap)),
    })
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let bench = &source.job.bench;
    let measured = Measured::of_source(source);
    let Some(play) = Play::of(bench, &measured) else { return unread(&measured) };
    if !slip::is_plausible(play.gap) {
        return Said::of([does_not_close(source, &play)]);
    }
    let shims = play.shims.as_ref().map(|shims| shims_said(source, &measured, &play, shims));
    Said::of(shims.unwrap_or_else(|| bare_said(source, &measured, &play)))
}

/// What is said of a stack that cannot be read.
fn unread(measured: &Measured) -> Said {
    let stack = InputId::from(EndPlayField::Stack);
    let problem = measured.problems.iter().find(|problem| problem.field == stack);
    Said::of(problem.map(|problem| format!("The stack cannot be added up. {}", problem.sentence())))
}

fn does_not_close(source: Source<'_>, play: &Play) -> String {
    let off = if play.gap < Length::default() {
        format!("the parts are {} longer than what they go into", said(source, -play.gap))
    } else {
        format!("{} are left over", said(source, play.gap))
    };
    let slip = play.slip.and_then(|(at, slip, gap)| Some(slip_said(source, &play.stack.parts.get(at)?.name, slip, gap)));
    let advice = slip.unwrap_or_else(|| "check each length and its unit, and whether a part is missing or typed twice".into());
    format!("The stack does not close: {off}; {advice}{}", if advice.ends_with('?') { "" } else { "." })
}

/// `is “case depth” in inches? It would then leave 0.35 mm.`
pub(super) fn slip_said(source: Source<'_>, name: &str, slip: Slip, gap: Length) -> String {
    let would = said(source, gap);
    match slip {
        Slip::MeantInMm => format!("if “{name}” is in mm, {would} would be left: is it?"),
        Slip::MeantInInches => format!("if “{name}” is in inches, {would} would be left: is it?"),
        Slip::TenTimesTooLarge | Slip::TenTimesTooSmall => {
            format!("if the point of “{name}” stands one place off, {would} would be left: does it?")
        }
    }
}

/// What is said where no range or no kit is typed.
fn bare_said(source: Source<'_>, measured: &Measured, play: &Play) -> Vec<String> {
    let hot = play.opens.map_or_else(String::new, |opens| format!(", {} at {}", said(source, play.gap + opens), warm(source, measured)));
    vec![
        format!("Without shims the play is {} at the bench{hot}.", said(source, play.gap)),
        "Type the end play wanted to choose shims.".into(),
    ]
}

fn shims_said(source: Source<'_>, measured: &Measured, play: &Play, shims: &Shims) -> Vec<String> {
    let wanted = range(source, [shims.wanted.least, shims.wanted.greatest]);
    if !shims.can_do() {
        let do_this = match shims.go {
            ShimsGo::InTheStack => "Fit a thinner washer, or have one ground.",
            ShimsGo::UnderTheCover => "Fit a thicker washer.",
        };
        return vec![format!("No shim helps: without any the play is {}, and {wanted} is wanted. {do_this}", said(source, play.gap))];
    }
    let [least, most] = shims.needed.map(|needed| needed.max(Length::default()));
    let needed = range(source, [least, most]);
    if let Some(pack) = shims.found.landing.first() {
        return landing(source, measured, play, shims, pack);
    }
    if measured.kit.is_empty() {
        return vec![format!(
            "For {wanted} it takes {needed} of shims. Type what is left in the drawer, or put the shims on Shelf, to choose."
        )];
    }
    let nearest = shims.found.nearest.as_ref().map_or_else(String::new, |pack| {
        format!(" {} comes nearest and leaves {}.", pack_said(&measured.kit, pack), said(source, play.with(shims, pack).0))
    });
    vec![format!("Nothing in the drawer lands in {wanted}: it takes {needed} of shims.{nearest}")]
}

fn landing(source: Source<'_>, measured: &Measured, play: &Play, shims: &Shims, pack: &Pack) -> Vec<String> {
    let (cold, hot) = play.with(shims, pack);
    let hot_said = hot.map_or_else(String::new, |hot| format!(", {} at {}", said(source, hot), warm(source, measured)));
    let fit = if pack.sizes.is_empty() { "No shims are needed".into() } else { format!("Fit {}", pack_said(&measured.kit, pack)) };
    let first = format!("{fit}: {} of end play at the bench{hot_said}.", said(source, cold));
    let turns = hot.filter(|hot| (*hot < Length::default()) != (cold < Length::default()) && cold != Length::default());
    let turned = turns.map_or_else(String::new, |hot| {
        if hot < Length::default() { "Hot it is preload.".into() } else { "Hot the preload is gone.".into() }
    });
    let worst = play.stack.worst_case();
    let is_sure = shims.wanted.holds(cold - worst) && shims.wanted.holds(cold + worst);
    let unsure = if is_sure { String::new() } else { "At worst it lies outside: measure again once assembled.".into() };
    vec![first, turned, unsure]
}
