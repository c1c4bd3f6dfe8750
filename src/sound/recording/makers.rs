//! The parts of a driveline as makers of lines: the tones of a gear by orders of the engine.

use super::share_out::{Kind, Maker};
use crate::gearing::Ratio;
use crate::gearing::speeds::Selected;
use crate::gearing::teeth::decimal;
use crate::sound::Orders;
use crate::sound::tone::{Origin, Race, Tone};

/// What may be heard in a gear, each with its orders. What hangs on the road while the engine runs free has none, and a bearing has them
/// where its geometry is given.
pub fn makers(orders: &Orders, selected: Selected) -> Vec<(Origin, Maker)> {
    let Some(engine) = orders.tone(selected, Origin::Engine) else { return Vec::new() };
    let order = |origin: Origin| orders.tone(selected, origin)?.per(engine);
    let maker = |tone: &Tone| {
        let kind = match tone.origin {
            Origin::Pair(_) | Origin::Stage(_) | Origin::FinalDrive => Kind::Mesh,
            Origin::Driveshaft => Kind::Driveshaft,
            Origin::Joint => Kind::Joint,
            Origin::Tyre => Kind::Tyre,
            Origin::Bearing(at, Race::Outer) => Kind::Bearing { inner: order(Origin::Bearing(at, Race::Inner))? },
            _ => return None,
        };
        let sides = tone.beside.iter().filter(|turn| turn.of_output == Ratio::from_integer(0)).map(|turn| decimal(turn.of_input).abs());
        let sides = sides.filter(|side| *side > 0.0).collect();
        Some((tone.origin, Maker { kind, order: order(tone.origin).filter(|order| *order > 0.0)?, sides }))
    };
    orders.tones(selected).iter().filter_map(maker).collect()
}
