//! What a dial expects: turns of its cable over a distance, or pulses from a sender.

use crate::units::{TurnsPerDistance, number, unit};

/// The dial and how it is driven.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Dial {
    /// By a cable: turns of the cable over a distance at which it reads true.
    Cable(TurnsPerDistance),
    /// By a sender in the cable's place.
    Pulses {
        /// Pulses for each turn of the sender, above 0.
        per_turn: f64,
        /// Pulses over a distance at which it reads true.
        per_distance: TurnsPerDistance,
    },
}

impl Default for Dial {
    /// 1,000 turns per mile, the usual US cable; never taken for a dial of which nothing is known (an owner forum and a personal technical page; the SAE clause was not seen).
    fn default() -> Self {
        Self::Cable(per_mile(1_000.0))
    }
}

impl Dial {
    /// Turns of the cable, or of the sender, over a distance at which the dial reads true.
    ///
    /// ```
    /// use layshaft::speedometer::{Dial, dial::per_km};
    /// use layshaft::units::{show, unit};
    /// // 8,000 pulses at 8 a turn
    /// let tachograph = Dial::Pulses { per_turn: 8.0, per_distance: per_km(8_000.0) };
    /// assert_eq!(show(&tachograph.constant(), &unit::TURNS_KM, 0), "1,000 turns/km");
    /// ```
    pub fn constant(self) -> TurnsPerDistance {
        match self {
            Self::Cable(constant) => constant,
            Self::Pulses { per_turn, per_distance } => per_distance / per_turn,
        }
    }
}

/// Turns or pulses for each mile.
pub fn per_mile(count: f64) -> TurnsPerDistance {
    unit::TURNS_MILE.of(count)
}

/// Turns or pulses for each kilometre.
pub fn per_km(count: f64) -> TurnsPerDistance {
    unit::TURNS_KM.of(count)
}

/// Over which distance a known dial counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// The mile of 1,609.344 m.
    Mile,
    /// The kilometre.
    Km,
}

/// A constant that many dials share.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KnownDial {
    /// What it is, in a few words.
    pub name: &'static str,
    /// Turns of the cable, or pulses, over the distance.
    pub count: f64,
    /// The distance.
    pub over: Over,
    /// Of a sender, its pulses for each turn; `None` where turns of a cable are counted.
    pub per_turn: Option<f64>,
    /// Where it was read.
    pub source: &'static str,
}

impl KnownDial {
    /// Turns or pulses over a distance at which it reads true.
    pub fn constant(&self) -> TurnsPerDistance {
        match self.over {
            Over::Mile => per_mile(self.count),
            Over::Km => per_km(self.count),
        }
    }

    /// The dial, to be fitted to a train.
    pub fn dial(&self) -> Dial {
        match self.per_turn {
            None => Dial::Cable(self.constant()),
            Some(per_turn) => Dial::Pulses { per_turn, per_distance: self.constant() },
        }
    }

    /// The dial as it is typed.
    pub fn text(&self) -> String {
        let (count, over) = (number::show(self.count, 0), if self.over == Over::Mile { "mile" } else { "km" });
        match self.per_turn {
            None => format!("{count} turns/{over}"),
            Some(per_turn) => format!("{} pulses/turn {count} pulses/{over}", number::show(per_turn, 0)),
        }
    }
}

const fn cable(name: &'static str, count: f64, over: Over, source: &'static str) -> KnownDial {
    KnownDial { name, count, over, per_turn: None, source }
}

const fn sender(name: &'static str, per_turn: f64, count: f64, over: Over, source: &'static str) -> KnownDial {
    KnownDial { name, count, over, per_turn: Some(per_turn), source }
}

/// Constants that many dials share.
pub const KNOWN: [KnownDial; 7] = [
    cable("US cable", 1_000.0, Over::Mile, "owner forum and personal technical page"),
    cable("Japanese car cable", 637.0, Over::Km, "JIS D 5601-1992, figure from two pages that cite it"),
    cable("Japanese motorcycle cable", 1_400.0, Over::Km, "page citing JIS D 5601"),
    sender("tachograph", 8.0, 8_000.0, Over::Km, "OIML Bulletin LXVII(2), 2026; 8 for each turn from memory"),
    sender("sender in a US cable’s place", 4.0, 4_000.0, Over::Mile, "service-manual extracts of cars and trucks of 2000 to 2002"),
    sender("sender in a US cable’s place", 8.0, 8_000.0, Over::Mile, "shop convention, from memory"),
    sender("sender in a US cable’s place", 16.0, 16_000.0, Over::Mile, "shop convention, from memory"),
];
