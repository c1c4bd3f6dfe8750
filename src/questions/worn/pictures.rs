//! Good, watch, renew: a part drawn three times side by side, how far it is worn told by its outline, not to scale.

use super::read::Typed;
use crate::chart::palette::Hue;
use crate::chart::scene::Point;
use crate::chart::shapes::{Body, Guide, Shapes};
use crate::faults::wear::State;
use crate::questions::Source;

/// What is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// A tooth across.
    TipLand,
    /// A flank.
    Pits,
    /// A sliding tooth from above.
    Taper,
    /// A dog tooth from above.
    Corner,
    /// A shaft from the side.
    Ridge,
    /// A ring on its cone.
    RingGap,
    /// A fork in its groove.
    Fork,
}

/// From one drawing to the next.
const STEP: f64 = 3.2;
const PIT_CORNERS: [Point; 6] = [(1.0, 0.0), (0.4, 0.8), (-0.5, 0.9), (-1.0, 0.1), (-0.4, -0.8), (0.6, -0.7)];
/// Where pits begin, worst last.
const PITS: [Point; 9] = [(0.5, 0.9), (1.2, 1.1), (1.6, 0.8), (0.8, 1.2), (0.3, 1.2), (1.0, 0.8), (1.4, 1.3), (0.6, 0.6), (1.75, 1.15)];

impl Part {
    /// Its row in the table of worn parts, what the picture is called, and how far each drawing is worn, from 0 to 1.
    fn about(self) -> (&'static str, &'static str) {
        match self {
            Self::TipLand => ("tip-land", "The tip of a tooth"),
            Self::Pits => ("pits", "Pits on a flank"),
            Self::Taper => ("taper", "A sliding tooth from above"),
            Self::Corner => ("corner", "A dog tooth from above"),
            Self::Ridge => ("ridge", "A countershaft where its rollers run"),
            Self::RingGap => ("ring-gap", "A ring on its cone"),
            Self::Fork => ("fork", "A fork in its groove"),
        }
    }

    /// The outlines of the part, worn so far from 0 to 1.
    fn outlines(self, worn: f64) -> Vec<Vec<Point>> {
        match self {
            Self::TipLand => {
                let tip = 0.45 * (1.0 - 0.85 * worn);
                vec![vec![(0.0, 0.0), (0.3 + 0.2 * worn, 1.1), (1.0 - tip, 2.0), (1.0 + tip, 2.0), (1.7 - 0.2 * worn, 1.1), (2.0, 0.0)]]
            }
            Self::Pits => {
                let pits = PITS.iter().take(if worn > 0.9 {
                    9
                } else if worn > 0.1 {
                    2
                } else {
                    0
                });
                let size = 0.06 + 0.07 * worn;
                let pit = |(x, y): &Point| PIT_CORNERS.iter().map(|(right, up)| (x + size * right, y + size * up)).collect();
                std::iter::once(vec![(0.0, 0.0), (0.0, 2.0), (2.0, 2.0), (2.0, 0.0)]).chain(pits.map(pit)).collect()
            }
            Self::Taper => vec![vec![(0.0, 0.4), (0.0, 1.6), (2.0, 1.6 - 0.4 * worn), (2.0, 0.4 + 0.4 * worn)]],
            Self::Corner => vec![vec![(0.4, 0.0), (0.4, 1.3 - 0.8 * worn), (1.0, 2.0 - 0.25 * worn), (1.6, 1.3), (1.6, 0.0)]],
            Self::Ridge => {
                let step = 0.35 * worn;
                vec![vec![(0.0, 0.5), (0.0, 1.5), (0.5, 1.5), (0.5, 1.5 - step), (1.5, 1.5 - step), (1.5, 1.5), (2.0, 1.5), (2.0, 0.5)]]
            }
            Self::RingGap => {
                let gap = 0.55 * (1.0 - 0.92 * worn);
                let ring = vec![(0.0, 0.7), (0.0, 1.7), (0.6, 1.7), (0.6, 0.9)];
                let gear = vec![(0.6 + gap, 0.9), (0.6 + gap, 2.0), (2.0, 2.0), (2.0, 0.0), (0.0, 0.0), (0.0, 0.6)];
                vec![ring, gear]
            }
            Self::Fork => {
                let play = 0.05 + 0.3 * worn;
                let groove = vec![(0.0, 0.0), (0.0, 1.2), (0.5, 1.2), (0.5, 0.4), (1.5, 0.4), (1.5, 1.2), (2.0, 1.2), (2.0, 0.0)];
                vec![groove, vec![(0.5 + play, 0.5), (0.5 + play, 2.0), (1.5 - play, 2.0), (1.5 - play, 0.5)]]
            }
        }
    }
}

/// A part, good, to be watched and to be renewed; the one that was measured so stands out.
pub fn part(source: Source<'_>, part: Part) -> Shapes {
    let (id, title) = part.about();
    let typed = Typed::of(source.job);
    let stands = typed.judged().into_iter().find(|(wear, ..)| wear.id == id).map(|(.., state)| state);
    let (mut bodies, mut guides) = (Vec::new(), Vec::new());
    for (at, (state, name, worn)) in
        (0_u32..).zip([(State::Good, "good", 0.0), (State::Watch, "watch", 0.45), (State::Scrap, "renew", 1.0)])
    {
        let right = STEP * f64::from(at);
        let hue = if stands == Some(state) { Hue::Dye } else { Hue::Muted };
        let moved = |outline: Vec<Point>| outline.into_iter().map(|(x, y)| (x + right, y)).collect();
        bodies.extend(part.outlines(worn).into_iter().map(|outline| Body { name: name.into(), hue, outline: moved(outline) }));
        guides.push(Guide { name: name.into(), points: vec![(right, -0.35), (right + 2.0, -0.35)] });
    }
    let measured = match stands {
        Some(State::Good) => " Yours is good.",
        Some(State::Watch) => " Yours is to be watched.",
        Some(State::Scrap) => " Yours is to be renewed.",
        None => "",
    };
    Shapes {
        title: title.into(),
        unit: "of its half width".into(),
        bodies,
        guides,
        says: vec![format!("Left good, middle to be watched, right to be renewed; not to scale.{measured}")],
        ..Shapes::default()
    }
}
