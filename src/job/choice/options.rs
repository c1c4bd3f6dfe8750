//! The options of every choice: the value, its word in a file, its words on the page.

use super::{Offered, Options, Unchosen};
use crate::driveline::{Ends, Margin, TubeMaterial, Yokes};
use crate::fits::ring_pinion::MarkSense;
use crate::fits::tapered::{BearingState, Mounting};
use crate::fits::{Material, ShimsGo};
use crate::gearing::speeds::Selected;
use crate::gearing::{Layout, StageKind, TakeOff};
use crate::job::Job;
use crate::motion::atmosphere::Standard;
use crate::motion::car::Drive;
use crate::motion::curve::rows::MeasuredAt;
use crate::sound::{Clutch, GoesWith, Kind, Load};
use crate::speedometer::law::{self, Band};
use crate::speedometer::{Hand, Tap};
use crate::swap::Release;
use crate::toothform::split::Split;
use crate::toothform::standard::Rack;
use crate::toothload::duty::Duty;
use crate::toothload::synchroniser::LiningKind;
use crate::tyre::OmittedAspect;

/// The rule of the upshifts in a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShiftBy {
    /// All shifts of a run together, for the least time.
    Quickest,
    /// Equal thrust before and after.
    Thrust,
    /// The shift rpm of the job.
    ShiftRpm,
}

/// The speedometer gears that are proposed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stock {
    /// All on the shelf.
    Whole,
    /// Those in stock.
    InStock,
}

/// How an axle was turned at the bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wheels {
    /// Both wheels turned.
    BothFree,
    /// One was held, so that the other turned twice as fast.
    OneHeld,
}

/// What a gearbox case is cast of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CaseMaterial(pub Material);

/// What a bore is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BoreMaterial(pub Material);

/// What sits in a bore.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ShaftMaterial(pub Material);

/// The gear that is looked at inside the box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LookedGear(pub Selected);

/// The gear a noise is heard in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeardGear(pub Selected);

/// The setup a noise is asked of, by its column counted from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoiseSetup(pub usize);

/// Which of the extra stages that can be switched are in while a noise is heard: the first, the second.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct StagesIn(pub [bool; 2]);

/// The gear whose turns were read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TurnedGear(pub Selected);

/// The rule a speedometer is judged by.
#[derive(Clone, Copy, Debug)]
pub struct Law(pub &'static Band);

impl PartialEq for Law {
    fn eq(&self, other: &Self) -> bool {
        self.0.id == other.0.id
    }
}

impl Eq for Law {}

impl Options for Law {
    fn offered() -> Vec<Offered<Self>> {
        law::BANDS.iter().map(|band| Offered { value: Self(band), word: band.id, says: band.name }).collect()
    }

    fn unchosen() -> Unchosen<Self> {
        Unchosen::Nothing("usual for your country")
    }
}

/// The words of the forward gears.
const GEARS: [(&str, &str); 8] =
    [("1", "1st"), ("2", "2nd"), ("3", "3rd"), ("4", "4th"), ("5", "5th"), ("6", "6th"), ("7", "7th"), ("8", "8th")];

fn forward() -> impl Iterator<Item = (Selected, &'static str, &'static str)> {
    GEARS.into_iter().enumerate().map(|(gear, (word, says))| (Selected::Gear(gear), word, says))
}

const REVERSE: (Selected, &str, &str) = (Selected::Reverse, "r", "reverse");

impl Options for LookedGear {
    fn offered() -> Vec<Offered<Self>> {
        let all = forward().chain([(Selected::Neutral, "n", "neutral"), REVERSE]);
        all.map(|(gear, word, says)| Offered { value: Self(gear), word, says }).collect()
    }

    fn unchosen() -> Unchosen<Self> {
        Unchosen::Taken(Self(Selected::Gear(1)))
    }
}

impl Options for TurnedGear {
    fn offered() -> Vec<Offered<Self>> {
        forward().chain([REVERSE]).map(|(gear, word, says)| Offered { value: Self(gear), word, says }).collect()
    }

    fn unchosen() -> Unchosen<Self> {
        Unchosen::Nothing("gear not known")
    }
}

impl Options for HeardGear {
    fn offered() -> Vec<Offered<Self>> {
        let all = forward().chain([(Selected::Neutral, "n", "neutral"), REVERSE]);
        all.map(|(gear, word, says)| Offered { value: Self(gear), word, says }).collect()
    }

    fn unchosen() -> Unchosen<Self> {
        Unchosen::Nothing("choose a gear")
    }
}

/// The words and letters of the setups.
const LETTERS: [(&str, &str); 6] = [("", "A"), ("b", "B"), ("c", "C"), ("d", "D"), ("e", "E"), ("f", "F")];

impl Options for NoiseSetup {
    fn offered() -> Vec<Offered<Self>> {
        LETTERS.into_iter().enumerate().map(|(column, (word, says))| Offered { value: Self(column), word, says }).collect()
    }

    fn unchosen() -> Unchosen<Self> {
        Unchosen::Taken(Self(0))
    }

    fn many(job: &Job) -> usize {
        job.setups.len()
    }
}

macro_rules! options {
    ($($type:ident, $unchosen:ident($of:expr) { $($value:expr, $word:expr, $says:expr;)* })*) => {
        $(
            impl Options for $type {
                fn offered() -> Vec<Offered<Self>> {
                    vec![$(Offered { value: $value, word: $word, says: $says }),*]
                }

                fn unchosen() -> Unchosen<Self> {
                    Unchosen::$unchosen($of)
                }
            }
        )*
    };
}

options! {
    Stock, Taken(Self::Whole) {
        Self::Whole, "", "whole shelf";
        Self::InStock, "yes", "in stock only";
    }

    OmittedAspect, Taken(Self::Eighty) {
        Self::Eighty, "", "80";
        Self::EightyTwo, "82", "82";
    }

    Drive, Nothing("usual for the layout") {
        Self::Rear, "rear", "rear wheels";
        Self::Front, "front", "front wheels";
        Self::All, "all", "all wheels";
    }

    MeasuredAt, Nothing("as its head says") {
        Self::Engine, "engine", "at the engine";
        Self::Wheels, "wheels", "at the wheels";
    }

    Standard, Nothing("as measured") {
        Self::SaeJ1349, "sae-j1349", "to SAE J1349";
        Self::Iso1585, "iso-1585", "to ISO 1585";
        Self::Din70020, "din-70020", "to DIN 70020";
    }

    ShiftBy, Taken(Self::Quickest) {
        Self::Quickest, "", "the quickest run";
        Self::Thrust, "thrust", "equal thrust";
        Self::ShiftRpm, "chosen", "the shift rpm";
    }

    Duty, Taken(Self::Road) {
        Self::Road, "", "the road";
        Self::Hill, "hill", "hill climbs";
        Self::Towing, "towing", "towing";
    }

    Wheels, Taken(Self::BothFree) {
        Self::BothFree, "", "both wheels free";
        Self::OneHeld, "held", "one wheel held";
    }

    Layout, Taken(Self::default()) {
        Self::InputReduced, "", Self::InputReduced.words();
        Self::OutputReduced, Self::OutputReduced.id(), Self::OutputReduced.words();
        Self::TwoShaft, Self::TwoShaft.id(), Self::TwoShaft.words();
    }

    CaseMaterial, Taken(Self(Material::Aluminium)) {
        Self(Material::Aluminium), "", "aluminium";
        Self(Material::Magnesium), "magnesium", "magnesium";
        Self(Material::CastIron), "cast-iron", "cast iron";
    }

    BoreMaterial, Taken(Self(Material::Aluminium)) {
        Self(Material::Aluminium), "", "aluminium";
        Self(Material::Magnesium), "magnesium", "magnesium";
        Self(Material::CastIron), "cast-iron", "cast iron";
        Self(Material::Steel), "steel", "steel";
        Self(Material::Bronze), "bronze", "bronze";
        Self(Material::Brass), "brass", "brass";
    }

    ShaftMaterial, Taken(Self(Material::Steel)) {
        Self(Material::Steel), "", "steel";
        Self(Material::CastIron), "cast-iron", "cast iron";
        Self(Material::Bronze), "bronze", "bronze";
        Self(Material::Brass), "brass", "brass";
        Self(Material::Aluminium), "aluminium", "aluminium";
    }

    ShimsGo, Taken(Self::InTheStack) {
        Self::InTheStack, "", "between the parts: they take play up";
        Self::UnderTheCover, "cover", "under the cover: they give play";
    }

    Mounting, Taken(Self::FaceToFace) {
        Self::FaceToFace, "", "cups held from outside (face to face)";
        Self::BackToBack, "back-to-back", "cones held from outside (back to back)";
    }

    BearingState, Taken(Self::New) {
        Self::New, "", "new, without the seal";
        Self::NewSealed, "new-sealed", "new, with the seal";
        Self::Used, "used", "used, without the seal";
        Self::UsedSealed, "used-sealed", "used, with the seal";
    }

    MarkSense, Taken(Self::PlusTakesOff) {
        Self::PlusTakesOff, "", "plus takes off the shim";
        Self::PlusPutsOn, "plus-on", "plus puts on the shim";
    }

    LiningKind, Taken(Self::Brass) {
        Self::Brass, "", "brass on steel";
        Self::Molybdenum, "molybdenum", "molybdenum on steel";
        Self::Sintered, "sintered", "sintered on steel";
    }

    Rack, Taken(Self::A) {
        Self::A, "", Self::A.said();
        Self::B, "B", Self::B.said();
        Self::C, "C", Self::C.said();
        Self::D, "D", Self::D.said();
        Self::Stub, "stub", Self::Stub.said();
    }

    Split, Taken(Self::EqualSliding) {
        Self::EqualSliding, "", "so that both slide alike at the roots";
        Self::Halves, "halves", "in halves";
        Self::NoUndercut, "no-undercut", "as little as leaves the smaller gear whole";
    }

    TubeMaterial, Taken(Self::Steel) {
        Self::Steel, "", "steel";
        Self::Aluminium, "aluminium", "aluminium";
        Self::CarbonFibre, "carbon-fibre", "carbon fibre";
    }

    Yokes, Taken(Self::InLine) {
        Self::InLine, "", Self::InLine.word();
        Self::FirstTurned, "first-turned", Self::FirstTurned.word();
        Self::LastTurned, "last-turned", Self::LastTurned.word();
    }

    Ends, Taken(Self::Joints) {
        Self::Joints, "", "a joint at each end";
        Self::OneHeld, "one-held", "one end held stiffly";
        Self::BothHeld, "held", "both ends held stiffly";
    }

    Margin, Taken(Self::Cars) {
        Self::Cars, "", "70 % of critical, cars";
        Self::Shops, "75", "75 %, common in shops";
        Self::Industrial, "65", "65 %, runs all day";
        Self::ClearOfJoints, "50", "50 %, clear of the joints";
    }

    Release, Nothing("side not known") {
        Self::Left, "left", Self::Left.word();
        Self::Right, "right", Self::Right.word();
        Self::Around, "around", Self::Around.word();
    }

    StageKind, Nothing("extra stage") {
        Self::Overdrive, "overdrive", "overdrive unit";
        Self::RangeBox, "range-box", "range box or splitter";
        Self::TransferBox, "transfer-box", "transfer box";
        Self::TwoSpeedAxle, "two-speed-axle", "two-speed axle";
        Self::DropGears, "drop-gears", "drop gears";
        Self::HubReduction, "hub-reduction", "hub reduction";
    }

    TakeOff, Taken(Self::Shaft) {
        Self::Shaft, "", "the driveshaft, behind the extra stages";
        Self::Gearbox, "gearbox", "the gearbox, before the extra stages";
        Self::Stage(0), "stage-1", "behind the 1st extra stage";
        Self::Stage(1), "stage-2", "behind the 2nd extra stage";
        Self::Stage(2), "stage-3", "behind the 3rd extra stage";
        Self::Wheel, "wheel", "a wheel";
    }

    StagesIn, Taken(Self([false; 2])) {
        Self([false; 2]), "", "at rest";
        Self([true, false]), "1", "in";
        Self([false, true]), "2", "the 2nd one in";
        Self([true; 2]), "both", "both in";
    }

    Kind, Nothing("choose what it is like") {
        Self::Whine, "whine", "whine";
        Self::Growl, "growl", "growl";
        Self::Rumble, "rumble", "rumble";
        Self::Clatter, "clatter", "clatter or knock";
        Self::Boom, "boom", "boom";
        Self::WheelShake, "wheel", "vibration in the steering wheel";
        Self::FloorShake, "floor", "vibration in floor or seat";
    }

    Load, Nothing("not sure") {
        Self::Pulling, "pulling", "pulling";
        Self::Coasting, "coasting", "coasting";
        Self::Both, "both", "both";
    }

    GoesWith, Nothing("not sure") {
        Self::Engine, "engine", "engine speed";
        Self::Shaft, "shaft", "driveshaft speed";
        Self::Wheel, "wheel", "each turn of the wheels";
    }

    Clutch, Nothing("not tried") {
        Self::Goes, "goes", "it goes away";
        Self::Stays, "stays", "it stays";
        Self::Comes, "comes", "it is there only then";
    }

    Hand, Nothing("hand not known") {
        Self::Right, Self::Right.word(), "right-hand gear";
        Self::Left, Self::Left.word(), "left-hand gear";
    }

    Tap, Nothing("side not known") {
        Self::LeftUp, "left-up", "on the left, cable up";
        Self::LeftDown, "left-down", "on the left, cable down";
        Self::RightUp, "right-up", "on the right, cable up";
        Self::RightDown, "right-down", "on the right, cable down";
        Self::AboveLeft, "above-left", "above, cable to the left";
        Self::AboveRight, "above-right", "above, cable to the right";
        Self::BelowLeft, "below-left", "below, cable to the left";
        Self::BelowRight, "below-right", "below, cable to the right";
    }
}
