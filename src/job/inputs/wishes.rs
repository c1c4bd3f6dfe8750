//! The inputs of the finder: the texts of a wish, which depend on what the wish is about, and of a gear set to be designed.

use super::{Bounds, COUNTS, GEARS, Kind, Row, inputs, quantity, whole};
use crate::gearing::Layout;
use crate::job::Job;
use crate::job::document::document;
use crate::job::wishes::{DesignBrief, USUAL_WEIGHT, WishKind};
use crate::units::{Typed, limits, number};

document! {
    /// One wish, as typed.
    pub struct Wish, WishText of wish {
        /// What it is about.
        kind: WishKind;
        /// Least allowed; blank where there is no least.
        least: Typed, Least: Row::new("least", "at least", Kind::Number("", ANY));
        /// Greatest allowed; blank where there is no greatest.
        greatest: Typed, Greatest: Row::new("greatest", "at most", Kind::Number("", ANY));
        /// The speed, distance or gear it is asked at; blank where the sheet's own is meant.
        at: Typed, At: Row::new("at", "at", Kind::Number("", ANY));
        /// The layout wished for, where it is about that.
        layout: Layout;
        /// Whether it must be met; else it is a preference.
        must: bool;
        /// How much a preference counts beside the others, 1 to 10.
        weight: String, Weight: Row::new("weight", "weight", Kind::Number("", WEIGHTS)).or(|_| number::show(USUAL_WEIGHT, 0));
    }
}

/// How much a preference can count.
pub const WEIGHTS: Bounds = (1.0, 10.0);

/// Bounds that a wish's kind narrows.
const ANY: Bounds = (f64::NEG_INFINITY, f64::INFINITY);

/// The ends of its range that a wish asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// It has no range: it is met or not.
    Neither,
    /// The least alone.
    Least,
    /// The greatest alone.
    Greatest,
    /// Both ends of the range.
    Both,
}

/// What is typed for a kind of wish.
#[derive(Clone, Copy, Debug)]
pub struct Wished {
    /// The wish in a few words.
    pub words: &'static str,
    /// What it is asked at, where it is.
    pub at: Option<Row>,
    /// The ends of its range that are asked for.
    pub ends: Ends,
    /// What kind of number an end is.
    pub kind: Kind,
}

impl Wished {
    const fn new(words: &'static str, ends: Ends, kind: Kind) -> Self {
        Self { words, at: None, ends, kind }
    }

    const fn yes_or_no(words: &'static str) -> Self {
        Self::new(words, Ends::Neither, Kind::Words)
    }

    const fn asked(self, at: Row) -> Self {
        Self { at: Some(at), ..self }
    }
}

impl WishKind {
    /// What is typed for it: the table of wishes.
    pub fn about(self) -> Wished {
        const RPM: Kind = Kind::Quantity(&limits::WISHED_RPM);
        const SPEED: Kind = Kind::Quantity(&limits::WISHED_SPEED);
        const TIME: Kind = Kind::Quantity(&limits::WISHED_TIME);
        let speed = |label| quantity("at", label, &limits::WISHED_SPEED);
        // A bare distance is metres in either system: nobody times a run over so many inches.
        let metres = Row::new("at", "over", Kind::Number("m", (limits::WISHED_DISTANCE.least, limits::WISHED_DISTANCE.greatest)));
        match self {
            Self::CruiseRpm => Wished::new("rpm in top gear", Ends::Both, RPM).asked(speed("at").or(cruise)),
            Self::FirstOverall => Wished::new("1st gear, overall", Ends::Both, Kind::Number("", (0.1, 500.0))),
            Self::StartGrade => Wished::new("grade to start on", Ends::Least, Kind::Number("%", (0.0, 100.0))),
            Self::LargestDrop => Wished::new("largest rpm drop of a shift", Ends::Greatest, Kind::Number("%", (0.0, 90.0))),
            Self::SpeedAtShift => Wished::new("speed at the shift rpm", Ends::Both, SPEED).asked(whole("at", "in gear", GEARS).needed()),
            Self::Landing => Wished::new("every shift lands at", Ends::Least, RPM),
            Self::TopSpeed => Wished::new("top speed", Ends::Least, SPEED),
            Self::TimeToSpeed => Wished::new("time from rest to a speed", Ends::Greatest, TIME).asked(speed("to").needed()),
            Self::TimeOverDistance => Wished::new("time from rest over a distance", Ends::Greatest, TIME).asked(metres.needed()),
            Self::Speedometer => Wished::new("speedometer reads high by", Ends::Both, Kind::Number("%", (-50.0, 50.0))),
            Self::TyreDiameter => Wished::new("tyre diameter", Ends::Both, Kind::Quantity(&limits::DIAMETER)),
            Self::KeepTyre => Wished::yes_or_no("the tyre of setup A stays"),
            Self::KeepAxle => Wished::yes_or_no("the axle of setup A stays"),
            Self::KeepGearSet => Wished::yes_or_no("the gear set of setup A stays"),
            Self::FewParts => Wished::new("parts changed, of gear set, axle and tyre", Ends::Greatest, Kind::Whole((0.0, 3.0))),
            Self::SameCase => Wished::yes_or_no("the gears go into A’s case"),
            Self::InStock => Wished::yes_or_no("only what is in stock"),
            Self::GearCount => Wished::new("number of forward gears", Ends::Both, Kind::Whole(GEARS)),
            Self::Layout => Wished::yes_or_no("layout of the box"),
        }
    }
}

/// The cruise speed, where it can be read.
fn cruise(job: &Job) -> String {
    job.cruise.read(&limits::CRUISE_SPEED).map_or_else(|_| String::new(), |cruise| limits::bare(cruise, job.units))
}

impl WishText {
    /// Its row for a kind of wish.
    pub fn row_of(self, kind: WishKind) -> Row {
        let wished = kind.about();
        match self {
            Self::Least if wished.ends == Ends::Both => Row { label: "from", kind: wished.kind, ..self.row() },
            Self::Greatest if wished.ends == Ends::Both => Row { label: "to", kind: wished.kind, ..self.row() },
            Self::Least | Self::Greatest => Row { kind: wished.kind, ..self.row() },
            Self::At => wished.at.unwrap_or_else(|| self.row()),
            Self::Weight => self.row(),
        }
    }
}

/// The sums two gears can have.
const SUMS: Bounds = (2.0 * COUNTS.0, 2.0 * COUNTS.1);
/// The ratios a gear of a box can have.
const RATIOS: Bounds = (0.2, 20.0);

inputs! {
    /// The texts of a gear set to be designed.
    DesignText of brief: DesignBrief;

    /// The tooth sum.
    Sum at sum: whole("design.sum", "tooth sum of each pair", SUMS).needed();
    /// The fewest teeth.
    LeastTeeth at least_teeth: whole("design.least-teeth", "fewest teeth", COUNTS).needed();
    /// The most teeth.
    MostTeeth at most_teeth: whole("design.most-teeth", "most teeth", COUNTS).needed();
    /// The number of forward gears.
    Gears at gears: whole("design.gears", "forward gears", GEARS).needed();
    /// The ratio of first.
    First at first: Row::new("design.first", "1st", Kind::Number("", RATIOS)).needed();
    /// The ratio of top.
    Top at top: Row::new("design.top", "top", Kind::Number("", RATIOS)).needed();
    /// How the steps grow.
    Growth at growth: Row::new("design.growth", "each lower step wider by ×", Kind::Number("", (0.8, 1.6))).needed();
}
