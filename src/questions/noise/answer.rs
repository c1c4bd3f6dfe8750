//! The tones of a setup while the noise is heard, and the parts that fit it.

use super::read::{At, Told};
use crate::gearing::speeds::Selected;
use crate::gearing::teeth::decimal;
use crate::gearing::{Gearbox, Layout};
use crate::questions::setup::without_sign;
use crate::questions::{Analysis, Source, needs, needs_in};
use crate::sound::by_ear::{Suspect, leaders, rank};
use crate::sound::tell_apart::{Test, test};
use crate::sound::{Heard, Moment, Orders, Rotating};
use crate::units::common::{rolling_speed, rpm, wheel_speed};
use crate::units::{AngularVelocity, Velocity};

/// What is known of a noise.
#[derive(Clone, Debug)]
pub struct Noise<'a> {
    /// The setup it is asked of.
    pub analysis: &'a Analysis,
    /// Its gearbox.
    pub gearbox: &'a Gearbox,
    /// The tones of that setup in every gear.
    pub orders: Orders,
    /// What is said of it.
    pub heard: Heard,
    /// How fast engine and output turn.
    pub moment: Moment,
    /// How fast the car rolls, where tyre and axle are known.
    pub road: Option<Velocity>,
    /// Every part that turns, the best fit first.
    pub suspects: Vec<Suspect>,
}

/// The idle of an engine, for what it does while the car rolls in neutral: common practice, no published source.
pub fn usual_idle() -> AngularVelocity {
    rpm(800.0)
}

impl<'a> Noise<'a> {
    /// What is known of the noise that is told.
    ///
    /// # Errors
    /// What is still needed, in words.
    pub fn of(source: Source<'a>, told: &Told) -> Result<Self, String> {
        let column = told.column.min(source.setups.len().saturating_sub(1));
        let analysis = source.setups.get(column).ok_or("needs a setup")?;
        let gearbox = analysis.setup.gearbox.as_ref().ok_or_else(|| needs(analysis))?;
        let selected = told.selected.ok_or("needs the gear it is heard in")?;
        let at = told.at.ok_or("needs the speed it is heard at")?;
        let rotating = Rotating {
            gearbox,
            stages: analysis.setup.stages.as_deref().unwrap_or_default(),
            axle: analysis.setup.final_drive,
            cylinders: told.cylinders,
            bearings: &told.bearings,
            has_driveshaft: gearbox.layout() != Layout::TwoShaft || !analysis.setup.shaft.pieces.is_empty(),
        };
        let orders = Orders::of(&rotating);
        if orders.tones(selected).is_empty() {
            return Err(format!("{} has no {}: choose another gear", analysis.setup.letter, super::names::gear(selected)));
        }
        let (moment, road) = moment(analysis, gearbox, selected, at)?;
        let heard = heard(told, selected, moment);
        let suspects = rank(&heard, &orders, moment);
        Ok(Self { analysis, gearbox, orders, heard, moment, road, suspects })
    }

    /// The parts that fit as well as the first; none where nothing is said of the noise, or nothing fits.
    pub fn leaders(&self) -> &[Suspect] {
        if self.heard.says_something() { leaders(&self.suspects) } else { &[] }
    }

    /// The test that tells a suspect from the next.
    pub fn test(&self, one: &Suspect, other: &Suspect) -> Test {
        test([&one.tone, &other.tone], &self.heard, &self.orders, self.moment)
    }
}

fn heard(told: &Told, selected: Selected, moment: Moment) -> Heard {
    Heard {
        selected,
        stands: moment.output == AngularVelocity::default(),
        kind: told.kind,
        there: told.there.clone(),
        gone: told.gone.clone(),
        load: told.load,
        goes_with: told.goes_with,
        clutch: told.clutch,
        pitch: told.pitch,
    }
}

/// How fast all turns: in gear the one speed gives the other, in neutral a typed rpm means a standing car, a road speed an idling engine.
fn moment(analysis: &Analysis, gearbox: &Gearbox, selected: Selected, at: At) -> Result<(Moment, Option<Velocity>), String> {
    let setup = &analysis.setup;
    let behind = setup.rolling.as_ref().zip(setup.behind_gearbox()).map(|(rolling, behind)| (rolling.circumference, decimal(behind)));
    let ratio = match selected {
        Selected::Gear(gear) => gearbox.ratio(gear),
        Selected::Reverse => gearbox.reverse_ratio(),
        Selected::Neutral => None,
    };
    let ratio = ratio.map(|ratio| decimal(without_sign(ratio)));
    let lacking = || match selected {
        Selected::Gear(gear) => needs_in(analysis, gear),
        _ => needs(analysis),
    };
    Ok(match at {
        At::Road(road) => {
            let (circumference, behind) = behind.ok_or_else(lacking)?;
            let output = wheel_speed(road, circumference) * behind;
            let engine = ratio.map_or_else(usual_idle, |ratio| output * ratio);
            (Moment { engine, output }, Some(road))
        }
        At::Engine(engine) => {
            let output = ratio.map_or_else(AngularVelocity::default, |ratio| engine / ratio);
            (Moment { engine, output }, behind.map(|(circumference, behind)| rolling_speed(output / behind, circumference)))
        }
    })
}
