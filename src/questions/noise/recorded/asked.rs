//! What is asked of a recording: which parts may be heard in it, and how fast the engine turned as far as that was typed.

use std::sync::Arc;

use super::{Clip, Listening};
use crate::gearing::speeds::Selected;
use crate::questions::Source;
use crate::questions::noise::answer::{Going, Noise};
use crate::questions::noise::read::{At, Told};
use crate::sound::Origin;
use crate::sound::recording::Run;
use crate::sound::recording::makers::makers;
use crate::units::AngularVelocity;

/// What is asked of a recording.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// The parts, in the order in which the run has them.
    pub(super) origins: Vec<Origin>,
    run: Run,
}

/// How fast an engine turns at least and at most, in turns a second, for its orders to be told apart: slower than idle no tone stands out.
const TURNS: (f64, f64) = (5.0, 250.0);
/// A sweep may rise or fall by this factor; the trial went to 2.2, where the speed was lost in one of five.
const WIDEST: f64 = 2.5;

impl Asked {
    /// What is asked of a recording of what is typed.
    ///
    /// # Errors
    /// What is missing, as a sentence.
    pub fn of(source: Source<'_>) -> Result<Self, String> {
        let told = Told::of(source.job);
        let selected = told.selected.ok_or("Choose the gear it was recorded in.")?;
        let at = told.at.filter(|_| told.is_at_typed).ok_or("Type the speed or rpm at which it was recorded.")?;
        if told.until.is_none() && !source.job.bench.noise.until.is_blank() {
            return Err("The speed at its end cannot be read: type it as the one at its beginning, or clear it.".into());
        }
        let is_road = |at: At| matches!(at, At::Road(_));
        if selected == Selected::Neutral && (is_road(at) || told.until.is_some_and(is_road)) {
            return Err("In neutral the road speed does not tell how fast the engine turns: type its rpm, such as 2,500 rpm.".into());
        }
        let noise = Noise::of(source, &told).map_err(|why| format!("{}.", crate::problem::capital(&why)))?;
        let going = Going { analysis: noise.analysis, gearbox: noise.gearbox, selected, stages_in: &noise.stages_in };
        let end = told.until.map_or(Ok(noise.moment.engine), |until| going.at(until).map(|(moment, _)| moment.engine))?;
        let turns = [noise.moment.engine, end].map(turns);
        let (least, most) = TURNS;
        let [from, to] = turns;
        if turns.iter().any(|turns| !(least..=most).contains(turns)) {
            return Err(format!(
                "The engine would turn {} rpm: check gear and speed.",
                crate::units::number::show(60.0 * if (least..=most).contains(&from) { to } else { from }, 0)
            ));
        }
        if (to / from).max(from / to) > WIDEST {
            return Err("From one end to the other is too far to follow: record a part of it, such as 30 to 45 mph.".into());
        }
        let (origins, makers) = makers(&noise.orders, selected).into_iter().unzip();
        Ok(Self { origins, run: Run { turns, cylinders: told.cylinders, makers } })
    }

    /// Begins to listen.
    pub fn listen(&self, clip: Arc<Clip>) -> Listening {
        Listening::new(clip, self.run.clone())
    }

    /// Whether the speed rises or falls on the way.
    pub fn is_sweep(&self) -> bool {
        let [from, to] = self.run.turns;
        (to / from).ln().abs() > 0.02
    }

    /// How far what was found lies from what was typed, as a share of it.
    pub(super) fn off(&self, found: f64) -> f64 {
        let [from, to] = self.run.turns;
        found / f64::midpoint(from, to) - 1.0
    }

    pub(super) fn cylinders(&self) -> u8 {
        self.run.cylinders
    }
}

fn turns(speed: AngularVelocity) -> f64 {
    speed.get::<uom::si::angular_velocity::revolution_per_second>()
}
