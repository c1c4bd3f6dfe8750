//! The torque that teeth and bearings are judged at.

use super::{Offered, Options, Unchosen};
use crate::toothload::duty::TorqueFrom;

impl Options for TorqueFrom {
    fn offered() -> Vec<Offered<Self>> {
        vec![
            Offered { value: Self::Engine, word: "", says: "as typed, else the engine’s greatest" },
            Offered { value: Self::Grip, word: "grip", says: "what the tyres hold in 1st" },
        ]
    }

    fn unchosen() -> Unchosen<Self> {
        Unchosen::Taken(Self::Engine)
    }
}
