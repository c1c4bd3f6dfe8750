//! Wishes that cannot be met together, whatever the catalogue holds.

use crate::finder::inputs::Given;
use crate::finder::wish::{Measure, Strength, Wish};
use uom::si::length::meter;

/// Two musts that exclude each other; the wishes are counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Contradiction {
    /// Their ranges of one figure do not meet.
    Apart {
        /// The earlier wish.
        first: usize,
        /// The later one.
        second: usize,
    },
    /// The fitted tyre is to stay, but its diameter is outside the range.
    FittedTyre {
        /// The wish about the diameter.
        diameter: usize,
        /// The wish to keep the tyre.
        keep: usize,
    },
    /// Two layouts at once.
    Layouts {
        /// The earlier wish.
        first: usize,
        /// The later one.
        second: usize,
    },
}

/// What to do, whichever two contradict each other.
const ONE_GIVES_WAY: &str = "make one of them a preference, or change its range; until then the nearest misses are listed";

explain! { Contradiction:
    Self::Apart { first, second } => format!("wishes {first} and {second} contradict each other: no value lies in both ranges"),
        ONE_GIVES_WAY;
    Self::FittedTyre { diameter, keep } =>
        format!("wishes {diameter} and {keep} contradict each other: the fitted tyre is outside that diameter"),
        ONE_GIVES_WAY;
    Self::Layouts { first, second } => format!("wishes {first} and {second} contradict each other: a box has one layout"), ONE_GIVES_WAY;
}

/// The contradictions among musts, each at the row of its later wish.
pub(super) fn among(wishes: &[Wish], rows: &[usize], given: &Given) -> Vec<(usize, Contradiction)> {
    let musts: Vec<(usize, &Wish)> = rows.iter().copied().zip(wishes).filter(|(_, wish)| wish.strength == Strength::Must).collect();
    let mut found = Vec::new();
    for (at, (row, wish)) in musts.iter().enumerate() {
        let earlier = musts.iter().take(at);
        found.extend(earlier.filter_map(|(other, earlier)| Some((*row, between((*other, earlier), (*row, wish), given)?))));
    }
    found
}

fn between((first, a): (usize, &Wish), (second, b): (usize, &Wish), given: &Given) -> Option<Contradiction> {
    let (first_number, second_number) = (first + 1, second + 1);
    let is_apart = a.least > b.greatest || b.least > a.greatest;
    match (a.measure, b.measure) {
        (Measure::OtherLayout(layout), Measure::OtherLayout(other)) if layout != other => {
            Some(Contradiction::Layouts { first: first_number, second: second_number })
        }
        (Measure::TyreDiameter, Measure::OtherTyre) if excludes_fitted(a, given) => {
            Some(Contradiction::FittedTyre { diameter: first_number, keep: second_number })
        }
        (Measure::OtherTyre, Measure::TyreDiameter) if excludes_fitted(b, given) => {
            Some(Contradiction::FittedTyre { diameter: second_number, keep: first_number })
        }
        (one, other) if one == other && is_apart => Some(Contradiction::Apart { first: first_number, second: second_number }),
        _ => None,
    }
}

fn excludes_fitted(wish: &Wish, given: &Given) -> bool {
    given.fitted.as_ref().is_some_and(|tyre| wish.miss(tyre.diameter.get::<meter>()) > 0.0)
}
