//! The picture of Swap: A's box and another over each other in side view, to scale, the case face on the left.

use crate::chart::palette::Hue;
use crate::chart::scene::Point;
use crate::chart::shapes::{Body, Guide, Shapes};
use crate::questions::{Analysis, Source};
use crate::swap::Outline;
use crate::units::{Length, Measured as _};

use super::judged::shown;

/// How high a case is drawn whose top is not measured, of its length.
const BARE_HEIGHT: f64 = 0.08;
/// How far its names stand off the shaft's line, of the length.
const OFF: f64 = 0.09;

/// A's box and the one brought forward, else the first that is measured; none where neither is.
pub fn side(source: Source<'_>, focus: Option<usize>) -> Option<Shapes> {
    let other = (1..source.setups.len()).find(|slot| source.setups.get(*slot).is_some_and(is_drawn));
    let slots: Vec<usize> = [Some(0), focus.filter(|slot| *slot > 0).or(other)].into_iter().flatten().collect();
    let boxes: Vec<(usize, &Analysis)> = slots.iter().filter_map(|slot| Some((*slot, source.setups.get(*slot)?))).collect();
    let boxes: Vec<_> = boxes.into_iter().filter(|(_, analysis)| is_drawn(analysis)).collect();
    if boxes.is_empty() {
        return None;
    }
    let unit = Length::usual(source.reader.units);
    let side = Side { source, number: |length| unit.number(length), longest: longest(source, &boxes) };
    let mut guides: Vec<Guide> = boxes.iter().zip([0.0, 1.0]).flat_map(|((_, analysis), nth)| side.marks(analysis, nth)).collect();
    guides.push(Guide { name: "shaft".into(), points: vec![(-0.05 * side.longest, 0.0), (1.15 * side.longest, 0.0)] });
    if let Some(tunnel) = &source.conditions.swap.tunnel {
        guides.push(Guide { name: "tunnel".into(), points: side.top(tunnel) });
    }
    let letters: Vec<String> = boxes.iter().map(|(_, analysis)| analysis.setup.letter.to_string()).collect();
    let bare = boxes.iter().any(|(_, analysis)| analysis.setup.swap.outline.is_none());
    let bare = if bare { " A case without measured heights is drawn as a bar." } else { "" };
    Some(Shapes {
        title: format!("{} in side view", letters.join(" and ")),
        unit: unit.symbol.into(),
        bodies: boxes.iter().map(|(slot, analysis)| side.body(*slot, analysis)).collect(),
        guides,
        says: vec![format!("To scale as measured, above the line of the shaft, the case face on the left.{bare}")],
        ..Shapes::default()
    })
}

/// Whether a box can be drawn.
fn is_drawn(analysis: &Analysis) -> bool {
    analysis.setup.swap.length.is_some() || analysis.setup.swap.outline.is_some()
}

fn longest(source: Source<'_>, boxes: &[(usize, &Analysis)]) -> f64 {
    let unit = Length::usual(source.reader.units);
    let ends = boxes.iter().flat_map(|(_, analysis)| {
        let swap = &analysis.setup.swap;
        let outline = swap.outline.iter().flat_map(|outline| outline.stations().iter().map(|(at, _)| *at));
        swap.length.into_iter().chain(outline)
    });
    ends.map(|end| unit.number(end)).fold(1.0, f64::max)
}

/// What all that is drawn shares.
struct Side<'a, F: Fn(Length) -> f64> {
    source: Source<'a>,
    /// A length in the picture's unit.
    number: F,
    longest: f64,
}

impl<F: Fn(Length) -> f64> Side<'_, F> {
    fn top(&self, outline: &Outline) -> Vec<Point> {
        outline.stations().iter().map(|(at, height)| ((self.number)(*at), (self.number)(*height))).collect()
    }

    /// The case above the shaft's line.
    fn body(&self, slot: usize, analysis: &Analysis) -> Body {
        let swap = &analysis.setup.swap;
        let height = BARE_HEIGHT * self.longest;
        let bare = || {
            let end = swap.length.map_or(self.longest, &self.number);
            vec![(0.0, height), (end, height)]
        };
        let top = swap.outline.as_ref().map_or_else(bare, |outline| self.top(outline));
        let ends = [top.last(), top.first()].map(|end| end.map_or(0.0, |(at, _)| *at));
        let outline = top.iter().copied().chain(ends.map(|at| (at, 0.0))).collect();
        Body { name: analysis.setup.letter.to_string(), hue: Hue::Setup(slot), outline }
    }

    /// Lever, mount and flange, each named with its distance; the second box's stand further off.
    fn marks(&self, analysis: &Analysis, nth: f64) -> Vec<Guide> {
        let swap = &analysis.setup.swap;
        let off = OFF * self.longest * (1.0 + nth);
        let up = (self.longest * 0.3)
            .max(swap.outline.iter().flat_map(|outline| self.top(outline)).map(|(_, height)| height).fold(0.0, f64::max));
        let mark = |what: &str, at: Option<Length>, from: f64, to: f64| {
            let (shown, at) = (shown(self.source, at?), (self.number)(at?));
            Some(Guide { name: format!("{} {what} {shown}", analysis.setup.letter), points: vec![(at, from), (at, to)] })
        };
        let marks = [
            mark("lever", swap.lever, 0.0, up + off),
            mark("mount", swap.mount, 0.0, -off),
            mark("flange", swap.length, 0.0, -2.0 * OFF * self.longest - off),
        ];
        marks.into_iter().flatten().collect()
    }
}
