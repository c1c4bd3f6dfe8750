//! The tones of a setup while the noise is heard, and the parts that fit it.

use num_traits::CheckedMul;

use super::read::{At, Told};
use crate::gearing::speeds::Selected;
use crate::gearing::stage::MOST_SWITCHED;
use crate::gearing::teeth::decimal;
use crate::gearing::{Gearbox, Layout, Ratio, Stage};
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
    /// The extra stages that are switched in, by their places.
    pub stages_in: Vec<usize>,
    /// What the gear is called with them in: `overdrive`; empty with all at rest.
    pub called: String,
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
        let (stages_in, called) = stages_in(analysis, told.stages_in, selected)?;
        let rotating = Rotating {
            gearbox,
            stages: analysis.setup.stages.as_deref().unwrap_or_default(),
            stages_in: &stages_in,
            axle: analysis.setup.final_drive,
            cylinders: told.cylinders,
            bearings: &told.bearings,
            has_driveshaft: gearbox.layout() != Layout::TwoShaft || !analysis.setup.shaft.pieces.is_empty(),
        };
        let orders = Orders::of(&rotating);
        if orders.tones(selected).is_empty() {
            return Err(format!("{} has no {}: choose another gear", analysis.setup.letter, selected));
        }
        let (moment, road) = Going { analysis, gearbox, selected, stages_in: &stages_in }.at(at)?;
        let heard = heard(told, selected, moment);
        let suspects = rank(&heard, &orders, moment);
        Ok(Self { analysis, gearbox, orders, heard, stages_in, called, moment, road, suspects })
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

/// The stages that are in, by their places, and what the gear is called with them.
fn stages_in(analysis: &Analysis, asked: [bool; 2], selected: Selected) -> Result<(Vec<usize>, String), String> {
    let Some(stages) = analysis.setup.stages.as_deref().filter(|_| asked.contains(&true)) else { return Ok((Vec::new(), String::new())) };
    let letter = analysis.setup.letter;
    let switched: Vec<(usize, &Stage)> = stages.iter().enumerate().filter(|(_, stage)| stage.changes()).take(MOST_SWITCHED).collect();
    if asked.iter().skip(switched.len()).any(|is_in| *is_in) {
        let has = if switched.is_empty() { "no stage that is switched" } else { "one stage that is switched" };
        return Err(format!("{letter} has {has}: choose what is in anew"));
    }
    let is_in: Vec<(usize, &Stage)> = switched.into_iter().zip(asked).filter_map(|(stage, is_in)| is_in.then_some(stage)).collect();
    let named = |stage: &Stage| stage.called().0;
    if let Selected::Gear(gear) = selected
        && let Some((_, out)) = is_in.iter().find(|(_, stage)| stage.switch.is_none_or(|switch| !switch.used_in.contains(gear)))
    {
        return Err(format!("the {} of {letter} is not switched in {gear}: choose another gear, or leave it at rest", named(out)));
    }
    let names: Vec<&str> = is_in.iter().map(|(_, stage)| named(stage)).collect();
    Ok((is_in.iter().map(|(at, _)| *at).collect(), names.join(" and ")))
}

/// A setup on its way in a gear.
#[derive(Clone, Copy, Debug)]
pub struct Going<'a> {
    /// The setup.
    pub analysis: &'a Analysis,
    /// Its gearbox.
    pub gearbox: &'a Gearbox,
    /// Its gear.
    pub selected: Selected,
    /// The extra stages that are switched in.
    pub stages_in: &'a [usize],
}

impl Going<'_> {
    /// How fast all turns: in gear the one speed gives the other, in neutral a typed rpm means a standing car, a road speed an idling
    /// engine.
    ///
    /// # Errors
    /// What is still needed, in words.
    pub fn at(self, at: At) -> Result<(Moment, Option<Velocity>), String> {
        let setup = &self.analysis.setup;
        let behind = setup.rolling.as_ref().zip(self.behind()).map(|(rolling, behind)| (rolling.circumference, decimal(behind)));
        let ratio = match self.selected {
            Selected::Gear(gear) => self.gearbox.ratio(gear),
            Selected::Reverse => self.gearbox.reverse_ratio(),
            Selected::Neutral => None,
        };
        let ratio = ratio.map(|ratio| decimal(without_sign(ratio)));
        let lacking = || match self.selected {
            Selected::Gear(gear) => needs_in(self.analysis, gear),
            _ => needs(self.analysis),
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

    /// All that stands behind the gearbox, without sign.
    fn behind(self) -> Option<Ratio> {
        let stages = self.analysis.setup.stages.as_deref().unwrap_or_default();
        let factors = self.stages_in.iter().map(|at| stages.get(*at).and_then(Stage::factor));
        factors.fold(self.analysis.setup.behind_gearbox(), |behind, factor| behind?.checked_mul(&factor?))
    }
}
