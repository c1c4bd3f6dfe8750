//! The job: the one document, holding what was typed and nothing that can be worked out from it.
//!
//! [`Job`] is the whole; [`inputs`] is the table of everything that can be typed, [`choice`] that of what is chosen from a few; [`field`] addresses them all;
//! [`edit`] holds the changes that are not typing;
//! [`history`] undoes and redoes; [`mod@file`] writes and reads it, old versions included; [`demo`] is the invented first job.
//! [`book`] is the book of jobs, [`listing`] its list, [`backup`] the whole book in a file, [`photographs`] what goes with it; [`link`] carries a job in a link,
//! [`incoming`] tells what a file from outside holds, [`kept`] how what an older store holds comes among the rest;
//! [`wishes`] is what the customer asks for, [`mod@line`] fills a box from one line.
//! Nothing here parses a figure: that is the next room's, [`crate::questions`].

pub mod backup;
pub mod book;
pub mod calendar;
pub mod choice;
pub mod demo;
mod differs;
pub mod document;
pub mod edit;
pub mod field;
pub mod file;
pub mod history;
pub mod incoming;
pub mod inputs;
pub mod kept;
pub mod line;
pub mod link;
pub mod listing;
mod part;
pub mod parts;
pub mod photographs;
mod quote;
pub mod wishes;

use serde::{Deserialize, Serialize};

pub use crate::gearing::{Layout, Place, StageKind};
/// The most forward gears of one box.
pub const MOST_GEARS: usize = crate::gearing::Gearbox::MOST_GEARS;
use crate::tyre::OmittedAspect;
use crate::units::{System, Typed};
pub use choice::{Choice, Chosen, JobChoice, SetupChoice};
pub use field::{Field, InputId, InputProblem};
pub use history::History;
pub use inputs::bench::{Bench, BenchField};
pub use inputs::build::{Build, BuildField};
pub use inputs::car::{Pull, PullField};
pub use inputs::cutter::{Cutter, CutterField};
pub use inputs::endplay::{EndPlay, EndPlayField};
pub use inputs::faults::{Faults, FaultsField};
pub use inputs::fits::{Fits, FitsField};
pub use inputs::measure::{Measure, MeasureField};
pub use inputs::noise::{Noise, NoiseField};
pub use inputs::setting::{Setting, SettingField};
pub use inputs::setup::{Inside, InsideField, SetupField, Shaft, ShaftField, Speedo, Swap, SwapField};
pub use inputs::shared::{DrivelineShared, InsideShared, JobField, SpeedoShared, SwapShared};
pub use inputs::wishes::{DesignText, Wish, WishText};
pub use quote::Quote;
pub use wishes::{DesignBrief, WishKind, Wishes};

/// The most setups that stand side by side on one sheet.
pub const MOST_SETUPS: usize = 6;

/// The most extra stages of one setup.
pub const MOST_STAGES: usize = 4;

/// What a setup is called by inside its job; never used again after the setup is removed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct SetupId(pub u32);

/// A job, as typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Job {
    /// The version of this document's shape; see [`mod@file`].
    pub schema: u32,
    /// What the job is called.
    pub title: String,
    /// Whose job it is.
    #[serde(default)]
    pub customer: String,
    /// The car, in words.
    #[serde(default)]
    pub car: String,
    /// Anything worth keeping.
    #[serde(default)]
    pub notes: String,
    /// The units the sheet is read in.
    #[serde(default)]
    pub units: System,
    /// The engine speed of each upshift.
    pub shift: Typed,
    /// The road speed of a steady cruise.
    pub cruise: Typed,
    /// The aspect ratio taken where a metric tyre size leaves it out: blank for 80.
    #[serde(default)]
    pub omitted_aspect: Chosen<OmittedAspect>,
    /// Engine, car and run.
    #[serde(default)]
    pub pull: Pull,
    /// What lies on the bench.
    #[serde(default)]
    pub bench: Bench,
    /// What is looked at inside the box.
    #[serde(default)]
    pub inside: InsideShared,
    /// What all setups share about the speedometer.
    #[serde(default)]
    pub speedo: SpeedoShared,
    /// What the shafts are judged at.
    #[serde(default)]
    pub driveline: DrivelineShared,
    /// What the car has room for.
    #[serde(default)]
    pub swap: SwapShared,
    /// What the customer wishes for.
    #[serde(default)]
    pub wishes: Wishes,
    /// What the customer is offered.
    #[serde(default)]
    pub quote: Quote,
    /// The setups being compared, in the order of their columns.
    pub setups: Vec<Setup>,
    /// The id that the next new setup gets.
    pub next_setup: u32,
    /// The setup that the customer's page shows; the first where none is named.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub for_customer: Option<SetupId>,
}

/// One setup, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Setup {
    /// Its id inside the job.
    pub id: SetupId,
    /// What it is called.
    pub name: String,
    /// The layout and the counts of its gears, as typed.
    pub gearbox: Gearbox,
    /// Its final drive: two tooth counts or a ratio.
    pub final_drive: String,
    /// Extra stages before or behind the final drive.
    #[serde(default)]
    pub stages: Vec<Stage>,
    /// Its tyre: a size, or something measured.
    pub tyre: Typed,
    /// How much tread has worn off; blank for none.
    #[serde(default)]
    pub tread_lost: Typed,
    /// The cut of its gears and its synchronisers.
    #[serde(default)]
    pub inside: Inside,
    /// Its speedometer gears and road check.
    #[serde(default)]
    pub speedo: Speedo,
    /// Its driveshaft.
    #[serde(default)]
    pub shaft: Shaft,
    /// The sizes of its box.
    #[serde(default)]
    pub swap: Swap,
}

/// A gearbox, as typed: every pair as the gear on the input or output line over the countershaft's.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Gearbox {
    /// The name of the gear set it was picked from, or one of the shop's own.
    pub name: String,
    /// Whether counts were changed since it was picked.
    #[serde(default)]
    pub altered: bool,
    /// How it is laid out.
    pub layout: Layout,
    /// The constant pair; blank for a two-shaft box.
    #[serde(default)]
    pub constant: String,
    /// The forward gears, lowest first.
    pub gears: Vec<String>,
    /// The outer gears of reverse; blank where unknown.
    #[serde(default)]
    pub reverse: String,
    /// The reverse idler: blank, one count, or the two of a compound idler.
    #[serde(default)]
    pub idler: String,
}

/// One extra stage, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Stage {
    /// What it is called.
    #[serde(default)]
    pub name: String,
    /// What it is; blank where that is not said.
    #[serde(default)]
    pub kind: Chosen<StageKind>,
    /// Where it stands.
    pub place: Place,
    /// Two tooth counts or a ratio, when it is in.
    pub drive: String,
    /// The gears it can be switched in, `all` or `always`; blank for what is usual of its kind.
    #[serde(default)]
    pub gears: String,
    /// Its ratio at rest; blank for straight through.
    #[serde(default)]
    pub rest: String,
}

impl Job {
    /// The setup of an id; `None` where it was removed.
    pub fn setup(&self, id: SetupId) -> Option<&Setup> {
        self.setups.iter().find(|setup| setup.id == id)
    }

    /// The setup of an id, to be changed.
    pub fn setup_mut(&mut self, id: SetupId) -> Option<&mut Setup> {
        self.setups.iter_mut().find(|setup| setup.id == id)
    }

    /// The setup that the customer's page shows.
    pub fn setup_for_customer(&self) -> Option<&Setup> {
        self.for_customer.and_then(|id| self.setup(id)).or_else(|| self.setups.first())
    }

    /// The letter of a column, counted from 0: A, B, C …
    ///
    /// ```
    /// use layshaft::job::Job;
    /// assert_eq!((Job::letter(0), Job::letter(2)), ('A', 'C'));
    /// ```
    pub fn letter(column: usize) -> char {
        u8::try_from(column).ok().and_then(|at| b'A'.checked_add(at)).map_or('?', char::from)
    }
}
