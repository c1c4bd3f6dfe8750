//! The table of choices: everything that is picked from a few, a row each, so that one widget serves them all.
//!
//! A row says where a choice is kept and what follows where a file holds a word that is none of its options; the options themselves are
//! in `options`. A choice is kept (`kept`) as a short word, so that files stay readable, and blank until something is chosen.

mod chosen;
mod kept;
mod options;
mod unknown;

use super::field::InputProblem;
use super::{Job, Setup, SetupId};
use crate::driveline::{Ends, Margin, TubeMaterial, Yokes};
use crate::fits::ShimsGo;
use crate::fits::ring_pinion::{MarkSense, Pattern};
use crate::fits::tapered::{BearingState, Mounting};
use crate::gearing::{Layout, TakeOff};
use crate::motion::{atmosphere::Standard, car::Drive, curve::rows::MeasuredAt};
use crate::problem::Problem;
use crate::sound::{Clutch, GoesWith, Kind, Load};
use crate::speedometer::{Hand, Tap};
use crate::swap::Release;
use crate::toothform::{split::Split, standard::Rack};
use crate::toothload::duty::{Duty, TorqueFrom};
use crate::toothload::synchroniser::LiningKind;
use crate::tyre::OmittedAspect;
pub use chosen::{Chosen, Listed, Options, Picked, Unchosen, listed};
use chosen::{place, with_nothing};
pub use options::{
    BoreMaterial, CaseMaterial, HeardGear, Law, LookedGear, NoiseSetup, ShaftMaterial, ShiftBy, StagesIn, Stock, TurnedGear, Wheels,
};
pub use unknown::UnknownOption;

/// One choice of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Choice {
    /// A choice for all setups.
    Job(JobChoice),
    /// A choice that each setup has for itself.
    Setup(SetupId, SetupChoice),
}

/// One row of the table: all of a choice but where it is kept, whatever it is about.
#[derive(Clone, Copy)]
struct Row {
    id: &'static str,
    label: &'static str,
    listed: &'static [Listed],
    unchosen: Unchosen,
    many: fn(&Job) -> usize,
    /// What follows from a word that is no option, as the end of a sentence.
    unknown: &'static str,
}

impl Row {
    const NONE: Self = Self { id: "", label: "", listed: &[], unchosen: Unchosen::Nothing(""), many: |_| 0, unknown: "" };
}

macro_rules! choices {
    ($(#[$doc:meta])* $name:ident of $root:ident: $part:ty; $(
        $variant:ident($options:ty) at $($path:ident).+: $id:literal, $label:literal, else $unknown:literal;
    )*) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum $name {
            $(#[doc = concat!("What is kept at `", stringify!($($path).+), "`: “", $label, "” on the page.")] $variant,)*
        }

        impl $name {
            /// Every one of them.
            pub const ALL: &[Self] = &[$(Self::$variant),*];

            /// A row each, in the same order.
            const ROWS: &[Row] = &[$(Row {
                id: $id,
                label: $label,
                listed: <$options as Options>::LISTED,
                unchosen: <$options as Options>::UNCHOSEN,
                many: <$options as Options>::many,
                unknown: $unknown,
            }),*];

            fn row(self) -> Row {
                Self::ROWS.get(self as usize).copied().unwrap_or(Row::NONE)
            }

            /// The word that is kept of it.
            fn word(self, $root: &$part) -> &str {
                match self {
                    $(Self::$variant => &$root.$($path).+.word,)*
                }
            }

            fn word_mut(self, $root: &mut $part) -> &mut String {
                match self {
                    $(Self::$variant => &mut $root.$($path).+.word,)*
                }
            }
        }
    };
}

choices! {
    /// The choices for all setups.
    JobChoice of job: Job;

    Law(Law) at speedo.law: "law", "rule", else "the dial is not judged";
    SpeedoStock(Stock) at speedo.in_stock: "speedo-stock", "propose from", else "the whole shelf is taken";
    OmittedAspect(OmittedAspect) at omitted_aspect: "omitted-aspect", "series where the size gives none", else "80 is taken";
    Drive(Drive) at pull.drive: "drive", "driven", else "pull is left out";
    CurveAt(MeasuredAt) at pull.curve_at: "curve-at", "measured", else "its head is followed, and the engine taken where that does not say";
    PowerStandard(Standard) at pull.standard: "power-standard", "correction", else "nothing is corrected";
    ShiftRule(ShiftBy) at pull.rule: "shift-rule", "shift by", else "the quickest run is taken";
    TurnedGear(TurnedGear) at bench.turned_gear: "bench-turned-gear", "in", else "the gear is taken as not known";
    WheelHeld(Wheels) at bench.wheel: "bench-wheel", "with", else "the turns of the axle are not read";
    BenchLayout(Layout) at bench.layout: "bench-layout", "gearbox layout", else "a box reduced at the input is taken";
    EndPlayCase(CaseMaterial) at bench.endplay.case: "endplay-case", "case of", else "the play is not worked out hot";
    ShimsGo(ShimsGo) at bench.endplay.shims_go: "endplay-shims-go", "shims go", else "no shims are chosen";
    PairMounting(Mounting) at bench.setting.mounting: "setting-mounting", "mounted", else "the pair is not worked out hot";
    BearingState(BearingState) at bench.setting.bearings: "setting-bearings", "bearings", else "no usual torque is taken";
    MarkSense(MarkSense) at bench.setting.sense: "setting-sense", "the mark", else "no depth shim is worked out";
    PatternDrive(Pattern) at bench.setting.pattern_drive: "setting-pattern-drive", "pattern, drive side", else "the pattern is not read";
    PatternCoast(Pattern) at bench.setting.pattern_coast: "setting-pattern-coast", "pattern, coast side", else "the pattern is not read";
    FitsBore(BoreMaterial) at bench.fits.bore_material: "fits-bore-material", "bore in", else "the fit is not worked out hot";
    FitsShaft(ShaftMaterial) at bench.fits.shaft_material: "fits-shaft-material", "shaft of", else "the fit is not worked out hot";
    MeasureHand(Hand) at bench.measure.hand: "measure-hand", "hand", else "the hand is not said";
    CutterHand(Hand) at bench.cutter.hand: "cutter-hand", "hand", else "the hand is not said";
    CutterRack(Rack) at bench.cutter.rack: "cutter-rack", "rack of the tool", else "no sheet is made";
    CutterSplit(Split) at bench.cutter.split: "cutter-split", "split the profile shifts", else "they are not split";
    NoiseKind(Kind) at bench.noise.kind: "noise-kind", "it is a", else "the kind of noise is left out";
    NoiseGear(HeardGear) at bench.noise.gear: "noise-gear", "in", else "the gear is taken as not known";
    NoiseLoad(Load) at bench.noise.load: "noise-load", "when", else "pull and overrun are left out";
    NoiseSetup(NoiseSetup) at bench.noise.setup: "noise-setup", "setup", else "the first setup is taken";
    NoiseStages(StagesIn) at bench.noise.stages: "noise-stages", "overdrive, other switched stage", else "the extra stages are taken at rest";
    NoiseGoesWith(GoesWith) at bench.noise.goes_with: "noise-goes-with", "it goes with", else "what it goes with is left out";
    NoiseClutch(Clutch) at bench.noise.clutch: "noise-clutch", "clutch down", else "the clutch is left out";
    InsideGear(LookedGear) at inside.gear: "inside-gear", "gear", else "2nd is looked at";
    Lining(LiningKind) at inside.lining: "lining", "lining", else "the lining is not judged";
    TorqueFrom(TorqueFrom) at inside.torque_from: "torque-from", "torque", else "the engine’s greatest is taken";
    Duty(Duty) at inside.duty: "duty", "used for", else "bearings are not judged";
    ShaftMargin(Margin) at driveline.margin: "shaft-margin", "allow", else "the shaft is not judged";
}

choices! {
    /// The choices of one setup.
    SetupChoice of setup: Setup;

    SpeedoHand(Hand) at speedo.hand: "speedo-hand", "hand of the drive gear", else "the turning of the cable is not said";
    SpeedoTap(Tap) at speedo.tap: "speedo-tap", "side of the driven gear", else "the turning of the cable is not said";
    TakeOff(TakeOff) at speedo.take_off: "take-off", "speedometer driven from", else "the driveshaft is taken";
    ClusterHand(Hand) at inside.hand: "cluster-hand", "hand of the cluster’s teeth", else "which way thrust goes is not said";
    ShaftMaterial(TubeMaterial) at shaft.material: "shaft-material", "material of the tube", else "the shaft is left out";
    ShaftYokes(Yokes) at shaft.yokes: "shaft-yokes", "yokes of the shaft", else "the joints are not judged";
    ForkSide(Release) at swap.release: "fork-side", "clutch fork", else "its side is not compared";
    ShaftEnds(Ends) at shaft.ends: "shaft-ends", "ends of the shaft", else "its critical speed is not worked out";
}

impl Choice {
    /// Every choice of a job, in the order of the table.
    pub fn all(job: &Job) -> Vec<Self> {
        let setups = job.setups.iter().flat_map(|setup| SetupChoice::ALL.iter().map(|choice| Self::Setup(setup.id, *choice)));
        JobChoice::ALL.iter().copied().map(Self::Job).chain(setups).collect()
    }

    fn row(self) -> Row {
        match self {
            Self::Job(choice) => choice.row(),
            Self::Setup(_, choice) => choice.row(),
        }
    }

    /// What it is called beside its list.
    pub fn label(self) -> &'static str {
        self.row().label
    }

    /// The options: the word that is kept and the words that are read.
    pub fn options(self) -> Vec<Listed> {
        let Row { listed, unchosen, .. } = self.row();
        with_nothing(listed, unchosen)
    }

    /// Those of them that a job has.
    pub fn options_in(self, job: &Job) -> Vec<Listed> {
        self.options().into_iter().take((self.row().many)(job)).collect()
    }

    /// The name by which problems and tests know it, inside its setup.
    pub fn path(self) -> &'static str {
        self.row().id
    }

    /// A short name for the page: unique inside a job, without blanks.
    pub fn slug(self) -> String {
        match self {
            Self::Job(_) => self.path().to_owned(),
            Self::Setup(id, _) => format!("s{}-{}", id.0, self.path()),
        }
    }
}

impl Job {
    /// The word that is kept of a choice; none where there is no such setup.
    fn word(&self, choice: Choice) -> Option<&str> {
        match choice {
            Choice::Job(choice) => Some(choice.word(self)),
            Choice::Setup(id, choice) => self.setup(id).map(|setup| choice.word(setup)),
        }
    }

    /// The word of the option that holds now, chosen or taken; blank where none does, the file's own word where that is no option.
    pub fn chosen(&self, choice: Choice) -> &str {
        match (self.word(choice), choice.row()) {
            (Some(""), Row { listed, unchosen: Unchosen::Taken(place), .. }) => listed.get(place).map_or("", |(word, _)| *word),
            (word, _) => word.unwrap_or(""),
        }
    }

    /// Chooses by an option's word. Nothing happens where there is no such setup.
    pub fn choose(&mut self, choice: Choice, word: &str) {
        let kept = match choice {
            Choice::Job(choice) => Some(choice.word_mut(self)),
            Choice::Setup(id, choice) => self.setup_mut(id).map(|setup| choice.word_mut(setup)),
        };
        if let Some(kept) = kept {
            word.clone_into(kept);
        }
    }

    /// What is wrong with the choices: words of a file that are no options.
    pub fn unknown_choices(&self, of: impl Fn(Choice) -> bool) -> Vec<InputProblem> {
        let problem = |choice: Choice| {
            let Row { label, listed, unknown, .. } = choice.row();
            let word = self.word(choice).filter(|word| !word.is_empty() && place(listed, word).is_none())?.to_owned();
            Some(Problem::defaulted(choice.into(), &UnknownOption { word, label }, unknown))
        };
        Choice::all(self).into_iter().filter(|choice| of(*choice)).filter_map(problem).collect()
    }
}
