//! How a bore and its shaft fit, cold and hot, and what makes them fit as they should.

use super::read::Seated;
use crate::fits::iso286::Field;
use crate::fits::seat::{Seat, Stands};
use crate::fits::slip::{self, Slip};
use crate::fits::{Material, PlayRange, temperature};
use crate::units::{Length, ThermodynamicTemperature};

/// What is known of a bore and its shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// Both as measured.
    pub seat: Seat,
    /// The room between them at the bench.
    pub clearance: Length,
    /// The same in a box at work.
    pub warm: Option<Length>,
    /// The clearance wanted, and how the fit stands against it.
    pub wanted: Option<(PlayRange, Stands)>,
    /// The deviations that a code allows bore and shaft.
    pub fields: Option<[Field; 2]>,
    /// What the figure of the shaft may have been meant as, where the two cannot be of one seat.
    pub slip: Option<Slip>,
    /// How warm the outer part must be for a press fit to drop together, and how cold the shaft instead.
    pub assembly: Option<Assembly>,
}

/// What brings a press fit together without force: one of the two.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assembly {
    /// The outer part warmed.
    pub oven: ThermodynamicTemperature,
    /// The shaft chilled; none where no cold is enough.
    pub chill: Option<ThermodynamicTemperature>,
    /// What the bore is in and what the shaft is made of.
    pub materials: [Material; 2],
}

impl Fit {
    /// What is known of the two that are typed.
    pub fn of(seated: &Seated) -> Option<Self> {
        // Between needles and their shaft there is no seat to be judged.
        if seated.needle.is_some() {
            return None;
        }
        let seat = Seat { bore: seated.bore.clone()?, shaft: seated.shaft.clone()? };
        let clearance = seat.clearance();
        let [bench, working] = seated.temperatures;
        let is_one = slip::is_of_one_seat(clearance);
        let materials = seated.materials.filter(|_| is_one);
        let warm = materials.map(|materials| seat.clearance_warm(materials, temperature::warmer_k(working, bench)));
        let wanted = seated.wanted.as_ref().filter(|_| is_one).map(|(_, range)| (*range, seat.stands(*range)));
        let fields = seated.wanted.as_ref().zip(seated.nominal).and_then(|((wanted, _), size)| wanted.fields(size));
        let slip = slip::of_shaft(seat.bore.mean(), seat.shaft.mean());
        let assembly = materials.and_then(|materials| {
            let [bore, shaft] = materials;
            Some(Assembly { oven: seat.oven(bore, bench)?, chill: seat.chill(shaft, bench), materials })
        });
        Some(Self { seat, clearance, warm, wanted, fields, slip, assembly })
    }

    /// Whether bore and shaft can be of one seat at all.
    pub fn is_of_one_seat(&self) -> bool {
        slip::is_of_one_seat(self.clearance)
    }

    /// Whether what must run free grips when hot, or what must hold comes loose.
    pub fn turns_when_hot(&self) -> Option<Turn> {
        let (range, _) = self.wanted?;
        let warm = self.warm?;
        let nothing = Length::default();
        if range.least >= nothing && warm < nothing {
            return Some(Turn::Grips);
        }
        (range.greatest <= nothing && warm > nothing).then_some(Turn::Loose)
    }
}

/// What heat does to a fit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// What must run free grips.
    Grips,
    /// What must hold comes loose.
    Loose,
}
