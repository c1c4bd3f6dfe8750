//! The options of every choice: the value, its word in a file, its words on the page.

use super::{Listed, Options, Unchosen};
use crate::driveline::{Ends, Margin, TubeMaterial, Yokes};
use crate::fits::ring_pinion::{MarkSense, Pattern};
use crate::fits::tapered::{BearingState, Mounting};
use crate::fits::{Material, ShimsGo};
use crate::gearing::speeds::Selected;
use crate::gearing::{GearNumber, Layout, StageKind, TakeOff};
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
use crate::toothload::duty::{Duty, TorqueFrom};
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

const LAWS: usize = law::BANDS.len();

#[expect(clippy::indexing_slicing, reason = "the compiler works these out, and refuses a place that is not there")]
impl Options for Law {
    const LISTED: &'static [Listed] = &{
        let mut listed = [("", ""); LAWS];
        let mut at = 0;
        while at < LAWS {
            listed[at] = (law::BANDS[at].id, law::BANDS[at].name);
            at += 1;
        }
        listed
    };
    const VALUES: &'static [Self] = &{
        let mut values = [Self(&law::BANDS[0]); LAWS];
        let mut at = 0;
        while at < LAWS {
            values[at] = Self(&law::BANDS[at]);
            at += 1;
        }
        values
    };
    const UNCHOSEN: Unchosen = Unchosen::Nothing("usual for your country");
}

impl Options for NoiseSetup {
    const LISTED: &'static [Listed] = &[("", "A"), ("b", "B"), ("c", "C"), ("d", "D"), ("e", "E"), ("f", "F")];
    const VALUES: &'static [Self] = &[Self(0), Self(1), Self(2), Self(3), Self(4), Self(5)];
    const UNCHOSEN: Unchosen = Unchosen::Taken(0);

    fn many(job: &Job) -> usize {
        job.setups.len()
    }
}

macro_rules! options {
    ($($type:ident, $unchosen:expr, { $($value:expr, $word:expr, $says:expr;)* })*) => {
        $(
            impl Options for $type {
                const LISTED: &'static [Listed] = &[$(($word, $says)),*];
                const VALUES: &'static [Self] = &[$($value),*];
                const UNCHOSEN: Unchosen = $unchosen;
            }
        )*
    };
}

/// The forward gears, and what else a box can stand in.
macro_rules! gears {
    ($($type:ident, $unchosen:expr, [$($more:ident $word:literal $says:literal),*];)*) => {
        $(
            options! {
                $type, $unchosen, {
                    Self(Selected::Gear(GearNumber::at(0))), "1", "1st";
                    Self(Selected::Gear(GearNumber::at(1))), "2", "2nd";
                    Self(Selected::Gear(GearNumber::at(2))), "3", "3rd";
                    Self(Selected::Gear(GearNumber::at(3))), "4", "4th";
                    Self(Selected::Gear(GearNumber::at(4))), "5", "5th";
                    Self(Selected::Gear(GearNumber::at(5))), "6", "6th";
                    Self(Selected::Gear(GearNumber::at(6))), "7", "7th";
                    Self(Selected::Gear(GearNumber::at(7))), "8", "8th";
                    $(Self(Selected::$more), $word, $says;)*
                }
            }
        )*
    };
}

gears! {
    LookedGear, Unchosen::Taken(1), [Neutral "n" "neutral", Reverse "r" "reverse"];
    TurnedGear, Unchosen::Nothing("gear not known"), [Reverse "r" "reverse"];
    HeardGear, Unchosen::Nothing("choose a gear"), [Neutral "n" "neutral", Reverse "r" "reverse"];
}

options! {
    Stock, Unchosen::Taken(0), {
        Self::Whole, "", "whole shelf";
        Self::InStock, "yes", "in stock only";
    }

    OmittedAspect, Unchosen::Taken(0), {
        Self::Eighty, "", "80";
        Self::EightyTwo, "82", "82";
    }

    Drive, Unchosen::Nothing("usual for the layout"), {
        Self::Rear, "rear", "rear wheels";
        Self::Front, "front", "front wheels";
        Self::All, "all", "all wheels";
    }

    MeasuredAt, Unchosen::Nothing("as its head says"), {
        Self::Engine, "engine", "at the engine";
        Self::Wheels, "wheels", "at the wheels";
    }

    Standard, Unchosen::Nothing("as measured"), {
        Self::SaeJ1349, "sae-j1349", "to SAE J1349";
        Self::Iso1585, "iso-1585", "to ISO 1585";
        Self::Din70020, "din-70020", "to DIN 70020";
    }

    ShiftBy, Unchosen::Taken(0), {
        Self::Quickest, "", "the quickest run";
        Self::Thrust, "thrust", "equal thrust";
        Self::ShiftRpm, "chosen", "the shift rpm";
    }

    Duty, Unchosen::Taken(0), {
        Self::Road, "", "the road";
        Self::Hill, "hill", "hill climbs";
        Self::Towing, "towing", "towing";
    }

    TorqueFrom, Unchosen::Taken(0), {
        Self::Engine, "", "as typed, else the engine’s greatest";
        Self::Grip, "grip", "what the tyres hold in 1st";
    }

    Wheels, Unchosen::Taken(0), {
        Self::BothFree, "", "both wheels free";
        Self::OneHeld, "held", "one wheel held";
    }

    Layout, Unchosen::Taken(0), {
        Self::InputReduced, "", Self::InputReduced.words();
        Self::OutputReduced, Self::OutputReduced.id(), Self::OutputReduced.words();
        Self::TwoShaft, Self::TwoShaft.id(), Self::TwoShaft.words();
    }

    CaseMaterial, Unchosen::Taken(0), {
        Self(Material::Aluminium), "", "aluminium";
        Self(Material::Magnesium), "magnesium", "magnesium";
        Self(Material::CastIron), "cast-iron", "cast iron";
    }

    BoreMaterial, Unchosen::Taken(0), {
        Self(Material::Aluminium), "", "aluminium";
        Self(Material::Magnesium), "magnesium", "magnesium";
        Self(Material::CastIron), "cast-iron", "cast iron";
        Self(Material::Steel), "steel", "steel";
        Self(Material::Bronze), "bronze", "bronze";
        Self(Material::Brass), "brass", "brass";
    }

    ShaftMaterial, Unchosen::Taken(0), {
        Self(Material::Steel), "", "steel";
        Self(Material::CastIron), "cast-iron", "cast iron";
        Self(Material::Bronze), "bronze", "bronze";
        Self(Material::Brass), "brass", "brass";
        Self(Material::Aluminium), "aluminium", "aluminium";
    }

    ShimsGo, Unchosen::Taken(0), {
        Self::InTheStack, "", "between the parts: they take play up";
        Self::UnderTheCover, "cover", "under the cover: they give play";
    }

    Mounting, Unchosen::Taken(0), {
        Self::FaceToFace, "", "cups held from outside (face to face)";
        Self::BackToBack, "back-to-back", "cones held from outside (back to back)";
    }

    BearingState, Unchosen::Taken(0), {
        Self::New, "", "new, without the seal";
        Self::NewSealed, "new-sealed", "new, with the seal";
        Self::Used, "used", "used, without the seal";
        Self::UsedSealed, "used-sealed", "used, with the seal";
    }

    MarkSense, Unchosen::Taken(0), {
        Self::PlusTakesOff, "", "plus takes off the shim";
        Self::PlusPutsOn, "plus-on", "plus puts on the shim";
    }

    LiningKind, Unchosen::Taken(0), {
        Self::Brass, "", "brass on steel";
        Self::Molybdenum, "molybdenum", "molybdenum on steel";
        Self::Sintered, "sintered", "sintered on steel";
    }

    Rack, Unchosen::Taken(0), {
        Self::A, "", Self::A.said();
        Self::B, "B", Self::B.said();
        Self::C, "C", Self::C.said();
        Self::D, "D", Self::D.said();
        Self::Stub, "stub", Self::Stub.said();
    }

    Split, Unchosen::Taken(0), {
        Self::EqualSliding, "", "so that both slide alike at the roots";
        Self::EqualStrength, "equal-strength", "so that both roots are equally strong";
        Self::Halves, "halves", "in halves";
        Self::NoUndercut, "no-undercut", "as little as leaves the smaller gear whole";
    }

    TubeMaterial, Unchosen::Taken(0), {
        Self::Steel, "", "steel";
        Self::Aluminium, "aluminium", "aluminium";
        Self::CarbonFibre, "carbon-fibre", "carbon fibre";
    }

    Yokes, Unchosen::Taken(0), {
        Self::InLine, "", Self::InLine.word();
        Self::FirstTurned, "first-turned", Self::FirstTurned.word();
        Self::LastTurned, "last-turned", Self::LastTurned.word();
    }

    Ends, Unchosen::Taken(0), {
        Self::Joints, "", "a joint at each end";
        Self::OneHeld, "one-held", "one end held stiffly";
        Self::BothHeld, "held", "both ends held stiffly";
    }

    Margin, Unchosen::Taken(0), {
        Self::Cars, "", "70 % of critical, cars";
        Self::Shops, "75", "75 %, common in shops";
        Self::Industrial, "65", "65 %, runs all day";
        Self::ClearOfJoints, "50", "50 %, clear of the joints";
    }

    Release, Unchosen::Nothing("side not known"), {
        Self::Left, "left", Self::Left.word();
        Self::Right, "right", Self::Right.word();
        Self::Around, "around", Self::Around.word();
    }

    StageKind, Unchosen::Nothing("extra stage"), {
        Self::Overdrive, "overdrive", "overdrive unit";
        Self::RangeBox, "range-box", "range box or splitter";
        Self::TransferBox, "transfer-box", "transfer box";
        Self::TwoSpeedAxle, "two-speed-axle", "two-speed axle";
        Self::DropGears, "drop-gears", "drop gears";
        Self::HubReduction, "hub-reduction", "hub reduction";
    }

    TakeOff, Unchosen::Taken(0), {
        Self::Shaft, "", "the driveshaft, behind the extra stages";
        Self::Gearbox, "gearbox", "the gearbox, before the extra stages";
        Self::Stage(0), "stage-1", "behind the 1st extra stage";
        Self::Stage(1), "stage-2", "behind the 2nd extra stage";
        Self::Stage(2), "stage-3", "behind the 3rd extra stage";
        Self::Wheel, "wheel", "a wheel";
    }

    StagesIn, Unchosen::Taken(0), {
        Self([false; 2]), "", "at rest";
        Self([true, false]), "1", "in";
        Self([false, true]), "2", "the 2nd one in";
        Self([true; 2]), "both", "both in";
    }

    Kind, Unchosen::Nothing("choose what it is like"), {
        Self::Whine, "whine", "whine";
        Self::Growl, "growl", "growl";
        Self::Rumble, "rumble", "rumble";
        Self::Clatter, "clatter", "clatter or knock";
        Self::Boom, "boom", "boom";
        Self::WheelShake, "wheel", "vibration in the steering wheel";
        Self::FloorShake, "floor", "vibration in floor or seat";
    }

    Load, Unchosen::Nothing("not sure"), {
        Self::Pulling, "pulling", "pulling";
        Self::Coasting, "coasting", "coasting";
        Self::Both, "both", "both";
    }

    GoesWith, Unchosen::Nothing("not sure"), {
        Self::Engine, "engine", "engine speed";
        Self::Shaft, "shaft", "driveshaft speed";
        Self::Wheel, "wheel", "each turn of the wheels";
    }

    Clutch, Unchosen::Nothing("not tried"), {
        Self::Goes, "goes", "it goes away";
        Self::Stays, "stays", "it stays";
        Self::Comes, "comes", "it is there only then";
    }

    Hand, Unchosen::Nothing("hand not known"), {
        Self::Right, Self::Right.word(), "right-hand gear";
        Self::Left, Self::Left.word(), "left-hand gear";
    }

    Tap, Unchosen::Nothing("side not known"), {
        Self::LeftUp, "left-up", "on the left, cable up";
        Self::LeftDown, "left-down", "on the left, cable down";
        Self::RightUp, "right-up", "on the right, cable up";
        Self::RightDown, "right-down", "on the right, cable down";
        Self::AboveLeft, "above-left", "above, cable to the left";
        Self::AboveRight, "above-right", "above, cable to the right";
        Self::BelowLeft, "below-left", "below, cable to the left";
        Self::BelowRight, "below-right", "below, cable to the right";
    }

    Pattern, Unchosen::Nothing("not read"), {
        Self::Good, "good", "good";
        Self::Heel, "heel", "heel";
        Self::Toe, "toe", "toe";
        Self::High, "high", "high";
        Self::Low, "low", "low";
    }
}
