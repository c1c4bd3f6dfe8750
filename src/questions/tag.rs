//! The tag that is tied to a finished box: what is in it, and its job as a link.

use crate::gearing::GearNumber;
use crate::gearing::teeth::decimal;
use crate::job::{Job, Setup};
use crate::questions::swap::oil;
use crate::questions::{Analysis, Source, customer};
use crate::sheet::Sheet;
use crate::units::number;

/// What stands on a tag.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tag {
    /// The job and the car.
    pub about: Vec<String>,
    /// What is fitted: a part and what it is.
    pub fitted: Vec<(String, String)>,
    /// Each gear: its name, its teeth as typed, its ratio.
    pub gears: Vec<[String; 3]>,
    /// What goes along as a link: title, car and this setup alone.
    pub carried: Job,
}

impl Tag {
    /// Where the oil is written by hand, unless it is among what is fitted.
    pub fn room_for_oil(&self) -> &'static str {
        if self.fitted.iter().any(|(part, _)| part == oil::GEARBOX) { "" } else { " Oil:" }
    }
}

/// The tag of the setup that the job names for the customer; none where none of its gears is typed.
pub fn tag(source: Source<'_>, sheet: &Sheet) -> Option<Tag> {
    let setup = source.job.setup_for_customer()?;
    let analysis = source.setups.iter().find(|analysis| analysis.setup.id == setup.id)?;
    let gears = gears(setup, analysis);
    if gears.is_empty() {
        return None;
    }
    let mut fitted = customer::page(source, sheet)?.fitted;
    if !setup.speedo.gears.trim().is_empty() {
        fitted.push((source.reader.words.say("Speedometer gears"), setup.speedo.gears.clone()));
    }
    let about = [&source.job.title, &source.job.car, &setup.name];
    let about = about.into_iter().filter(|text| !text.trim().is_empty()).cloned().collect();
    Some(Tag { about, fitted, gears, carried: carried(source.job, setup) })
}

fn gears(setup: &Setup, analysis: &Analysis) -> Vec<[String; 3]> {
    let shown = |ratio| number::show(decimal(ratio).abs(), 3);
    let forward = GearNumber::each(&setup.gearbox.gears).filter(|(_, typed)| !typed.trim().is_empty());
    let mut gears: Vec<[String; 3]> = forward
        .map(|(gear, typed)| [gear.to_string(), typed.trim().to_owned(), analysis.setup.ratio(gear).map(shown).unwrap_or_default()])
        .collect();
    if !gears.is_empty() && !setup.gearbox.constant.trim().is_empty() {
        gears.insert(0, ["Constant pair".into(), setup.gearbox.constant.trim().to_owned(), String::new()]);
    }
    if !gears.is_empty() && !setup.gearbox.reverse.trim().is_empty() {
        let ratio = analysis.setup.gearbox.as_ref().and_then(crate::gearing::Gearbox::reverse_ratio).map(shown);
        gears.push(["Reverse".into(), setup.gearbox.reverse.trim().to_owned(), ratio.unwrap_or_default()]);
    }
    gears
}

/// The job with that setup alone, and without what only the shop needs.
fn carried(job: &Job, setup: &Setup) -> Job {
    Job {
        title: job.title.clone(),
        car: job.car.clone(),
        shift: job.shift.clone(),
        cruise: job.cruise.clone(),
        setups: vec![setup.clone()],
        next_setup: job.next_setup,
        ..crate::job::demo::empty(job.units)
    }
}
