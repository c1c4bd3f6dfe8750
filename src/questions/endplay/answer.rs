//! The play a stack leaves, cold and hot, and the packs of shims that bring it where it is wanted.

use super::read::Measured;
use crate::fits::shims::{Found, Pack, search};
use crate::fits::slip::{self, Slip};
use crate::fits::stack::Heat;
use crate::fits::{PlayRange, ShimsGo, Stack, read};
use crate::job::Bench;
use crate::units::{Length, System, Typed};

/// How many packs are shown.
pub const MOST_PACKS: usize = 8;

/// What is known of a stack.
#[derive(Clone, Debug, PartialEq)]
pub struct Play {
    /// The stack.
    pub stack: Stack,
    /// The play it leaves without shims, at the bench.
    pub gap: Length,
    /// What case and parts are made of, and how warm they get.
    pub heat: Option<Heat>,
    /// How much more play there is hot, without shims.
    pub opens: Option<Length>,
    /// The figure that may be a slip, where the gap cannot be: its place, the slip, and the gap it would leave.
    pub slip: Option<(usize, Slip, Length)>,
    /// The shims for the play wanted.
    pub shims: Option<Shims>,
}

/// What the shims must do, and what of the kit does it.
#[derive(Clone, Debug, PartialEq)]
pub struct Shims {
    /// Where they stand.
    pub go: ShimsGo,
    /// The play wanted.
    pub wanted: PlayRange,
    /// The least and the greatest thickness that does it.
    pub needed: [Length; 2],
    /// What of the kit does it.
    pub found: Found,
    /// Whether the kit would do it if its bare figures were of the other system.
    pub other_system: Option<System>,
}

impl Play {
    /// What is known of the stack that is typed.
    pub fn of(bench: &Bench, measured: &Measured) -> Option<Self> {
        let stack = measured.stack.clone()?;
        let (gap, heat) = (stack.gap(), measured.heat());
        let opens = heat.map(|heat| stack.opens_when_hot(heat));
        let slip = slip::of_stack(&stack);
        let shims = measured.wanted.zip(measured.go).filter(|_| slip::is_plausible(gap));
        let shims = shims.map(|(wanted, go)| Shims::of(bench, measured, gap, wanted, go));
        Some(Self { stack, gap, heat, opens, slip, shims })
    }

    /// The play with a pack in place: at the bench, and hot where that is known.
    pub fn with(&self, shims: &Shims, pack: &Pack) -> (Length, Option<Length>) {
        let thickness = pack.thickness();
        let cold = shims.go.play(self.gap, thickness);
        let hot = self.heat.zip(self.opens).map(|(heat, opens)| {
            let grown = thickness + heat.inside.growth(thickness, heat.warmer_k);
            shims.go.play(self.gap + opens, grown)
        });
        (cold, hot)
    }
}

impl Shims {
    fn of(bench: &Bench, measured: &Measured, gap: Length, wanted: PlayRange, go: ShimsGo) -> Self {
        let found = search(gap, wanted, &measured.kit, go, MOST_PACKS);
        let other_system = found.landing.is_empty().then(|| in_other_system(&bench.endplay.kit, gap, wanted, go)).flatten();
        Self { go, wanted, needed: go.needed(gap, wanted), found, other_system }
    }

    /// Whether shims can do it at all: no pack is thinner than nothing.
    pub fn can_do(&self) -> bool {
        let [_, most] = self.needed;
        most >= Length::default()
    }
}

/// The other system, where the kit read in it lands.
fn in_other_system(kit: &Typed, gap: Length, wanted: PlayRange, go: ShimsGo) -> Option<System> {
    let other = match kit.units {
        System::Inch => System::Metric,
        System::Metric => System::Inch,
    };
    let (shims, errors) = read::kit(&Typed::new(kit.text.clone(), other));
    let lands = || search(gap, wanted, &shims, go, 1).landing.iter().any(|pack| !pack.sizes.is_empty());
    (errors.is_empty() && !shims.is_empty() && lands()).then_some(other)
}
