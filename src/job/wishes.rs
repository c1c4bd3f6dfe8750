//! What the customer wishes for, as typed: rows for the finder, and what a gear set to be designed must keep to.
//!
//! Nothing is read here. [`super::inputs::wishes`] is its table, and has the wish itself.

use serde::{Deserialize, Serialize};

use super::document::document;
use super::inputs::wishes::{Ends, Wish};
use crate::gearing::Layout;
use crate::units::{System, Typed, number};

/// The most wishes of a job.
pub const MOST_WISHES: usize = 14;

/// How much a preference counts where nothing else is typed. Common practice, no published source.
pub const USUAL_WEIGHT: f64 = 5.0;

/// What a wish is about.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum WishKind {
    /// Engine rpm in top gear at a steady road speed.
    #[default]
    CruiseRpm,
    /// First gear times everything behind the box.
    FirstOverall,
    /// The steepest grade first gear starts on.
    StartGrade,
    /// The largest share of engine rpm lost on an upshift.
    LargestDrop,
    /// Road speed at the shift rpm in one gear.
    SpeedAtShift,
    /// The lowest engine rpm at which an upshift lands.
    Landing,
    /// Top speed.
    TopSpeed,
    /// Time from rest to a speed.
    TimeToSpeed,
    /// Time from rest over a distance.
    TimeOverDistance,
    /// What the speedometer reads too much or too little, with the best gears of the shelf.
    Speedometer,
    /// The tyre's diameter.
    TyreDiameter,
    /// The fitted tyre stays.
    KeepTyre,
    /// The gear set of setup A stays.
    KeepGearSet,
    /// The final drive of setup A stays.
    KeepAxle,
    /// Few parts are changed.
    FewParts,
    /// The gear set goes into the case of setup A.
    SameCase,
    /// Only what is in stock.
    InStock,
    /// The number of forward gears.
    GearCount,
    /// How the box is laid out.
    Layout,
}

/// What a gear set to be designed must keep to, as typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct DesignBrief {
    /// The tooth sum of every pair.
    pub sum: String,
    /// The fewest teeth of a gear.
    pub least_teeth: String,
    /// The most teeth of a gear.
    pub most_teeth: String,
    /// The number of forward gears.
    pub gears: String,
    /// The ratio of first.
    pub first: String,
    /// The ratio of top.
    pub top: String,
    /// By how much each lower step is wider than the one above it; 1 is a geometric ladder.
    pub growth: String,
    /// How the box is laid out.
    pub layout: Layout,
}

impl Default for DesignBrief {
    fn default() -> Self {
        let text = str::to_owned;
        Self {
            sum: text("55"),
            least_teeth: text("15"),
            most_teeth: text("40"),
            gears: text("4"),
            first: text("2.6"),
            top: text("1"),
            growth: text("1.1"),
            layout: Layout::InputReduced,
        }
    }
}

document! {
    /// What the customer wishes for.
    pub struct Wishes {
        /// The wishes, in the order they were made.
        pub rows: Vec<Wish>,
        /// The gear set to be designed.
        pub design: DesignBrief,
    }
}

impl WishKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 19] = [
        Self::CruiseRpm,
        Self::FirstOverall,
        Self::LargestDrop,
        Self::SpeedAtShift,
        Self::Landing,
        Self::StartGrade,
        Self::TopSpeed,
        Self::TimeToSpeed,
        Self::TimeOverDistance,
        Self::Speedometer,
        Self::TyreDiameter,
        Self::KeepTyre,
        Self::KeepAxle,
        Self::KeepGearSet,
        Self::FewParts,
        Self::SameCase,
        Self::InStock,
        Self::GearCount,
        Self::Layout,
    ];

    /// Whether it is asked as a must unless the customer says otherwise: what it is about is not a matter of more or less.
    fn is_usually_a_must(self) -> bool {
        self.about().ends == Ends::Neither || matches!(self, Self::FewParts | Self::GearCount)
    }
}

impl Wish {
    /// A wish of that kind with nothing typed yet.
    pub fn new(kind: WishKind, units: System) -> Self {
        let blank = || Typed::new("", units);
        let must = kind.is_usually_a_must();
        Self {
            kind,
            least: blank(),
            greatest: blank(),
            at: blank(),
            layout: Layout::default(),
            must,
            weight: number::show(USUAL_WEIGHT, 0),
        }
    }

    /// The same with a range.
    #[must_use]
    pub fn between(mut self, least: &str, greatest: &str) -> Self {
        self.least.text = least.into();
        self.greatest.text = greatest.into();
        self
    }
}
