//! The name of every text that can be typed, so that one widget edits them all and every problem finds its place.

use super::{BenchField, DesignText, InsideField, Job, PullField, Setup, SetupId, WishText};
use crate::units::{System, Typed};

/// One text of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Field {
    /// A text that all setups share.
    Job(JobField),
    /// A text of one setup.
    Setup(SetupId, SetupField),
    /// A text of one wish, counted from 0.
    Wish(usize, WishText),
    /// A text of the gear set to be designed.
    Design(DesignText),
}

/// The texts that all setups share.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum JobField {
    /// What the job is called.
    Title,
    /// Whose job it is.
    Customer,
    /// The car, in words.
    Car,
    /// Anything worth keeping.
    Notes,
    /// The engine speed of each upshift.
    Shift,
    /// The road speed of a steady cruise.
    Cruise,
    /// What the speedometer's dial expects.
    Dial,
    /// The true speed at which the speedometer's readings are shown.
    SpeedoCheck,
    /// A text about engine, car or run.
    Pull(PullField),
    /// A text of the bench.
    Bench(BenchField),
    /// The input speed looked at inside the box.
    InsideAt,
    /// The time a synchroniser is given.
    SyncTime,
    /// Limits of the user's own for the lining.
    LiningLimits,
}

/// The texts of one setup. Places are counted from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SetupField {
    /// What the setup is called.
    Name,
    /// The constant pair.
    Constant,
    /// A forward gear.
    Gear(usize),
    /// The outer gears of reverse.
    Reverse,
    /// The reverse idler.
    Idler,
    /// The final drive.
    FinalDrive,
    /// The name of an extra stage.
    StageName(usize),
    /// The drive of an extra stage.
    Stage(usize),
    /// The tyre.
    Tyre,
    /// How much tread has worn off.
    TreadLost,
    /// The speedometer gears.
    SpeedoGears,
    /// Readings of the dial beside true speeds.
    RoadCheck,
    /// A text about the inside of the box.
    Inside(InsideField),
    /// The gears without a synchroniser.
    Unsynchronised,
}

/// Where a field's text is kept.
enum Slot<'a> {
    Plain(&'a mut String),
    Quantity(&'a mut Typed),
}

impl JobField {
    /// The path by which a [`crate::problem::Problem`] names this field.
    pub fn path(self) -> &'static str {
        match self {
            Self::Title => "title",
            Self::Customer => "customer",
            Self::Car => "car",
            Self::Notes => "notes",
            Self::Shift => "shift",
            Self::Cruise => "cruise",
            Self::Dial => "dial",
            Self::SpeedoCheck => "speedo-check",
            Self::Pull(field) => field.path(),
            Self::Bench(field) => field.path(),
            Self::InsideAt => "inside-at",
            Self::SyncTime => "sync-time",
            Self::LiningLimits => "lining-limits",
        }
    }

    fn slot(self, job: &mut Job) -> Slot<'_> {
        match self {
            Self::Title => Slot::Plain(&mut job.title),
            Self::Customer => Slot::Plain(&mut job.customer),
            Self::Car => Slot::Plain(&mut job.car),
            Self::Notes => Slot::Plain(&mut job.notes),
            Self::Shift => Slot::Quantity(&mut job.shift),
            Self::Cruise => Slot::Quantity(&mut job.cruise),
            Self::Dial => Slot::Quantity(&mut job.speedo.dial),
            Self::SpeedoCheck => Slot::Quantity(&mut job.speedo.check),
            Self::Pull(field) => Slot::Quantity(field.slot(&mut job.pull)),
            Self::Bench(field) => Slot::Plain(field.slot(&mut job.bench)),
            Self::InsideAt => Slot::Quantity(&mut job.inside.at),
            Self::SyncTime => Slot::Quantity(&mut job.inside.shift_time),
            Self::LiningLimits => Slot::Plain(&mut job.inside.lining_limits),
        }
    }

    fn text(self, job: &Job) -> &str {
        match self {
            Self::Title => &job.title,
            Self::Customer => &job.customer,
            Self::Car => &job.car,
            Self::Notes => &job.notes,
            Self::Shift => &job.shift.text,
            Self::Cruise => &job.cruise.text,
            Self::Dial => &job.speedo.dial.text,
            Self::SpeedoCheck => &job.speedo.check.text,
            Self::Pull(field) => &field.typed(&job.pull).text,
            Self::Bench(field) => field.text(&job.bench),
            Self::InsideAt => &job.inside.at.text,
            Self::SyncTime => &job.inside.shift_time.text,
            Self::LiningLimits => &job.inside.lining_limits,
        }
    }
}

impl SetupField {
    /// The path by which a [`crate::problem::Problem`] names this field.
    pub fn path(self) -> String {
        match self {
            Self::Name => "name".into(),
            Self::Constant => "constant".into(),
            Self::Gear(at) => format!("gear.{}", at + 1),
            Self::Reverse => "reverse".into(),
            Self::Idler => "idler".into(),
            Self::FinalDrive => "final-drive".into(),
            Self::StageName(at) => format!("stage.{}.name", at + 1),
            Self::Stage(at) => format!("stage.{}", at + 1),
            Self::Tyre => "tyre".into(),
            Self::TreadLost => "tread-lost".into(),
            Self::SpeedoGears => "speedo-gears".into(),
            Self::RoadCheck => "road-check".into(),
            Self::Inside(field) => field.path().into(),
            Self::Unsynchronised => "unsynchronised".into(),
        }
    }

    fn slot(self, setup: &mut Setup) -> Option<Slot<'_>> {
        Some(match self {
            Self::Name => Slot::Plain(&mut setup.name),
            Self::Constant => Slot::Plain(&mut setup.gearbox.constant),
            Self::Gear(at) => Slot::Plain(setup.gearbox.gears.get_mut(at)?),
            Self::Reverse => Slot::Plain(&mut setup.gearbox.reverse),
            Self::Idler => Slot::Plain(&mut setup.gearbox.idler),
            Self::FinalDrive => Slot::Plain(&mut setup.final_drive),
            Self::StageName(at) => Slot::Plain(&mut setup.stages.get_mut(at)?.name),
            Self::Stage(at) => Slot::Plain(&mut setup.stages.get_mut(at)?.drive),
            Self::Tyre => Slot::Quantity(&mut setup.tyre),
            Self::TreadLost => Slot::Quantity(&mut setup.tread_lost),
            Self::SpeedoGears => Slot::Plain(&mut setup.speedo.gears),
            Self::RoadCheck => Slot::Quantity(&mut setup.speedo.road_check),
            Self::Inside(field) => Slot::Quantity(field.slot(&mut setup.inside)),
            Self::Unsynchronised => Slot::Plain(&mut setup.inside.unsynchronised),
        })
    }

    fn text(self, setup: &Setup) -> Option<&str> {
        Some(match self {
            Self::Name => &setup.name,
            Self::Constant => &setup.gearbox.constant,
            Self::Gear(at) => setup.gearbox.gears.get(at)?,
            Self::Reverse => &setup.gearbox.reverse,
            Self::Idler => &setup.gearbox.idler,
            Self::FinalDrive => &setup.final_drive,
            Self::StageName(at) => &setup.stages.get(at)?.name,
            Self::Stage(at) => &setup.stages.get(at)?.drive,
            Self::Tyre => &setup.tyre.text,
            Self::TreadLost => &setup.tread_lost.text,
            Self::SpeedoGears => &setup.speedo.gears,
            Self::RoadCheck => &setup.speedo.road_check.text,
            Self::Inside(field) => &field.typed(&setup.inside).text,
            Self::Unsynchronised => &setup.inside.unsynchronised,
        })
    }

    /// Whether the field is one of the gearbox's tooth counts.
    fn is_gearbox(self) -> bool {
        matches!(self, Self::Constant | Self::Gear(_) | Self::Reverse | Self::Idler)
    }
}

impl Field {
    /// A short name for the page: unique inside a job, without blanks.
    pub fn slug(self) -> String {
        match self {
            Self::Job(field) => field.path().to_owned(),
            Self::Setup(id, field) => format!("s{}-{}", id.0, field.path().replace('.', "-")),
            Self::Wish(row, text) => text.path(row).replace('.', "-"),
            Self::Design(text) => text.path().replace('.', "-"),
        }
    }
}

impl Job {
    /// The text of a field; `None` where there is no such setup, gear or stage.
    pub fn text(&self, field: Field) -> Option<&str> {
        match field {
            Field::Job(field) => Some(field.text(self)),
            Field::Setup(id, field) => field.text(self.setup(id)?),
            Field::Wish(row, text) => Some(text.text(self.wishes.rows.get(row)?)),
            Field::Design(text) => Some(text.text(&self.wishes.design)),
        }
    }

    /// Puts a text into a field, typed under the units the sheet is read in now. Nothing happens where there is no such field.
    pub fn type_text(&mut self, field: Field, text: String) {
        let units: System = self.units;
        let slot = match field {
            Field::Job(field) => Some(field.slot(self)),
            Field::Setup(id, field) => self.setup_mut(id).and_then(|setup| {
                if field.is_gearbox() && field.text(setup).is_some_and(|kept| kept != text) {
                    setup.gearbox.altered = true;
                }
                field.slot(setup)
            }),
            Field::Wish(row, field) => {
                if let Some(wish) = self.wishes.rows.get_mut(row) {
                    field.put(wish, text, units);
                }
                return;
            }
            Field::Design(field) => Some(Slot::Plain(field.slot(&mut self.wishes.design))),
        };
        match slot {
            Some(Slot::Plain(kept)) => *kept = text,
            Some(Slot::Quantity(kept)) => *kept = Typed::new(text, units),
            None => {}
        }
    }
}
