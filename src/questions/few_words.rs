//! A few words to send: the setup that is meant for the customer, in five to eight lines of plain text. Needs no engine.
//!
//! A line whose figures are not there is left out; nothing is said of a customer or of notes.

use crate::catalogue::case::CaseFit;
use crate::gearing::GearNumber;
use crate::gearing::teeth::decimal;
use crate::job::{Job, Setup};
use crate::questions::customer::{USUAL_CAUTION, gear_set};
use crate::questions::road::answer::InGear;
use crate::questions::{Analysis, Source, case, dial, short};
use crate::units::common::{in_rpm, show_rpm};
use crate::units::{Measured, Velocity, number, show};

/// The lines, in the reader's words; none where the job has no setup.
pub fn lines(source: Source<'_>) -> Vec<String> {
    let Some((column, setup, analysis)) = chosen(source) else { return Vec::new() };
    let seen = Seen { source, column, setup, analysis };
    let lines = [
        Some(seen.title()),
        seen.gear_set(),
        seen.axle_and_tyre(),
        seen.cruise(),
        seen.speeds(),
        seen.case(),
        seen.speedometer(),
        Some(first_sentence(USUAL_CAUTION)),
    ];
    lines.into_iter().flatten().map(|line| source.reader.words.say(&line)).collect()
}

/// The lines as one text.
pub fn text(source: Source<'_>) -> String {
    lines(source).join("\n")
}

fn chosen(source: Source<'_>) -> Option<(usize, &Setup, &Analysis)> {
    let setup = source.job.setup_for_customer()?;
    let column = source.setups.iter().position(|analysis| analysis.setup.id == setup.id)?;
    Some((column, setup, source.setups.get(column)?))
}

fn first_sentence(text: &str) -> String {
    text.split_inclusive('.').next().unwrap_or(text).to_owned()
}

/// The setup that is told.
struct Seen<'a> {
    source: Source<'a>,
    column: usize,
    setup: &'a Setup,
    analysis: &'a Analysis,
}

impl Seen<'_> {
    /// `Fernhill coupé: Close`.
    fn title(&self) -> String {
        let car = self.source.job.car.trim();
        if car.is_empty() { self.setup.name.clone() } else { format!("{car}: {}", self.setup.name) }
    }

    /// `Gear set: Curlew four, close; ratios 2.132, 1.443, 1.157 and 1.000.`
    fn gear_set(&self) -> Option<String> {
        let ratios = self.analysis.gears().ratios.iter().copied().collect::<Option<Vec<_>>>().filter(|ratios| !ratios.is_empty())?;
        let shown: Vec<String> = ratios.into_iter().map(|ratio| number::show(decimal(ratio).abs(), 3)).collect();
        Some(format!("Gear set: {}; ratios {}.", gear_set(&self.setup.gearbox), shown.join(" ")))
    }

    /// `Ring and pinion 43/11, 3.909; tyre 185/70R14.`
    fn axle_and_tyre(&self) -> Option<String> {
        let axle = self.analysis.setup.final_drive.map(|axle| {
            let ratio = number::show(decimal(axle.ratio()), 3);
            let typed = self.setup.final_drive.trim();
            if typed.contains('/') { format!("ring and pinion {typed}, {ratio}") } else { format!("ring and pinion {ratio}") }
        });
        let tyre = self.analysis.setup.tyre.as_ref().map(|_| format!("tyre {}", self.setup.tyre.text.trim()));
        let parts: Vec<String> = axle.into_iter().chain(tyre).collect();
        (!parts.is_empty()).then(|| format!("{}.", crate::problem::capital(&parts.join("; "))))
    }

    /// `At 70 mph in top the engine turns 3,348 rpm, 559 fewer than with As it came.`
    fn cruise(&self) -> Option<String> {
        let shown = |analysis: &Analysis| analysis.road().cruise_in_top().map(|speed| in_rpm(speed).round());
        let own = shown(self.analysis)?;
        let first = self.source.setups.first().and_then(shown).filter(|_| self.column > 0);
        let beside = match (first, self.source.job.setups.first()) {
            (Some(first), Some(setup)) if (own - first).abs() < 0.5 => format!(", as with {}", setup.name),
            (Some(first), Some(setup)) => {
                let way = if own < first { "fewer" } else { "more" };
                format!(", {} {way} than with {}", number::show((own - first).abs(), 0), setup.name)
            }
            _ => String::new(),
        };
        Some(format!("At {} in top the engine turns {} rpm{beside}.", short::cruise_text(self.source), number::show(own, 0)))
    }

    /// `At 6,500 rpm 1st does 54.6 mph and 4th 116.5 mph; the biggest drop is 32 %, 1st to 2nd.`
    fn speeds(&self) -> Option<String> {
        let unit = Velocity::usual(self.source.reader.units);
        let gears = &self.analysis.road().gears;
        let at = |in_gear: &InGear| in_gear.at_shift.map(|speed| show(&speed, unit, 1));
        let [first, .., top] = gears.as_slice() else { return None };
        let last = GearNumber::lowest(gears.len()).next_back()?;
        let shift = show_rpm(self.source.conditions.shift?);
        let speeds = format!("At {shift} rpm 1st does {} and {last} {}", at(first)?, at(top)?);
        let drop = self
            .analysis
            .gears()
            .deepest_drop()
            .map(|(gear, drop)| format!("; the biggest drop is {} %, {gear} to {}", number::show(100.0 * drop, 0), gear.next()));
        Some(format!("{speeds}{}.", drop.unwrap_or_default()))
    }

    /// `It goes into the case of As it came.`
    fn case(&self) -> Option<String> {
        let first = &self.source.job.setups.first()?.name;
        Some(match case::fit_of(self.source, self.column)? {
            CaseFit::Named { .. } => format!("It goes into the case of {first}."),
            CaseFit::BySums { .. } => format!("By its tooth sums it goes into the case of {first}; the pitch is to be measured."),
            CaseFit::No(misfit) => format!("It does not go into the case of {first}: {}.", misfit.reason()),
            CaseFit::Unknown => return None,
        })
    }

    /// `The speedometer reads 4.3 % slow at a true 60 mph: fit the 26-tooth driven gear, keep the 8-tooth drive, and it reads 3.0 % fast.`
    fn speedometer(&self) -> Option<String> {
        Some(format!("The speedometer {}.", dial::sentence::of_setup(self.source, self.analysis)?))
    }
}

/// The letter of the setup that the words are about; none where the job has no setup.
pub fn about(job: &Job) -> Option<char> {
    let setup = job.setup_for_customer()?;
    job.setups.iter().position(|each| each.id == setup.id).map(Job::letter)
}
