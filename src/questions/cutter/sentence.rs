//! The answer in a sentence or two: the gear in the words of a drawing, its limits, and the first thing that is wrong with it.

use super::answer::{Fault, Order};
use super::read::Wanted;
use crate::gearing::Mesh;
use crate::gearing::hunting::{Hunting, hunting_beside};
use crate::problem::{Explain, capital};
use crate::questions::alike::either;
use crate::questions::measure::said::{cut, length};
use crate::questions::{Source, Station};
use crate::sheet::Said;
use crate::toothform::split::Split;
use crate::units::{limits, number, unit};

/// What a rule of the split is called.
pub(super) fn rule_said(rule: Split) -> &'static str {
    match rule {
        Split::EqualSliding => "modules: split so that both slide alike at the roots",
        Split::EqualStrength => "modules: split so that both roots are equally strong (Lewis)",
        Split::Halves => "modules: split in halves",
        Split::NoUndercut => "modules: as little as leaves the smaller gear whole",
    }
}

/// `12 DP`, `module 2.5`.
fn pitch_said(order: &Order) -> String {
    if let Some(pitch) = order.wanted.pitch {
        return pitch.said();
    }
    let module = unit::MM.number(order.gear.cut.normal_module());
    let per_inch = 25.4 / module;
    if (per_inch - per_inch.round()).abs() < 1e-6 {
        format!("{} DP", limits::shown(per_inch.round()))
    } else {
        format!("module {}", limits::shown(module))
    }
}

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let order = Order::of(&source.job.bench);
    Station::at_bench(
        order.map_or_else(|| "a gear to be made".into(), |order| format!("{} teeth, {}", order.gear.teeth, pitch_said(&order))),
    )
}

/// What the blank fields were taken from.
pub fn taken(source: Source<'_>) -> String {
    let wanted = Wanted::of(&source.job.bench);
    match (wanted.is_measured, wanted.teeth, wanted.module) {
        (true, ..) => "What is blank comes from Measure a gear.".into(),
        (false, Some(_), Some(_)) => String::new(),
        (false, ..) => "Type teeth and pitch, or measure a gear first.".into(),
    }
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let Some(order) = Order::of(&source.job.bench) else { return Said::default() };
    let [upper, lower] = order.span_limits();
    let gear = format!(
        "{} teeth, {}, {}, profile shift {}: {} over the tips, {} to {} over {} teeth.",
        order.gear.teeth,
        pitch_said(&order),
        cut(&order.gear.cut, order.wanted.hand, true),
        number::show_signed(order.gear.shift, 3),
        length(source, order.tip),
        length(source, lower),
        length(source, upper),
        order.over
    );
    Said::of([gear, wrong_said(source, &order)])
}

fn wrong_said(source: Source<'_>, order: &Order) -> String {
    if let Some((why, reference)) = &order.no_pair {
        let wants =
            reference.map_or_else(String::new, |centre| format!(": these counts want {} without profile shift", length(source, centre)));
        return format!("No profile shift brings it to its mate: {}{wants}.", why.what());
    }
    order.faults().into_iter().next().map_or_else(String::new, |fault| match fault {
        Fault::Undercut(teeth, least) => {
            format!("The {teeth}-tooth gear is undercut: it wants a profile shift of {} at least.", number::show_signed(least, 2))
        }
        Fault::Pointed(teeth, _) => format!("The {teeth}-tooth gear is pointed: less profile shift, or lower tips."),
        Fault::Interference(teeth, _) => format!("The mate’s tips reach below the involute of the {teeth}-tooth gear."),
        Fault::Contact(ratio) => format!("Its contact ratio is {}, below 1.2.", number::show(ratio, 2)),
        Fault::RelievedContact(ratio) => format!("With its tip relief the contact ratio is {}, below 1.2.", number::show(ratio, 2)),
        Fault::NoRow(_) => "DIN 3967’s rows do not reach it: the backlash is taken instead.".into(),
        Fault::Relief(..) => "Tip relief cannot begin there.".into(),
        Fault::NotHunting(mesh) => format!("{}.", capital(&not_hunting(mesh))),
    })
}

/// Which factor the counts of a pair share, and which counts beside them would hunt.
pub(super) fn not_hunting(mesh: Mesh) -> String {
    let common = Hunting::of(mesh).common_factor;
    let beside: Vec<String> = hunting_beside(mesh).into_iter().map(|pair| format!("{}/{}", pair.driver, pair.driven)).collect();
    let instead = if beside.is_empty() { String::new() } else { format!(": {} would hunt", either(&beside)) };
    format!("{} and {} teeth share a factor of {common}, so the same teeth meet again and again{instead}", mesh.driver, mesh.driven)
}
