//! The inputs of each setup: gearbox, axle, stages, tyre, speedometer gears, and the inside of its box.

use super::{Bounds, Kind, Row, inputs, length_unit, no_unit, notation, quantity, teeth, whole, words};
use crate::driveline::{Ends, TubeMaterial, Yokes};
use crate::gearing::TakeOff;
use crate::gearing::geometry::Cut;
use crate::job::Setup;
use crate::job::choice::Chosen;
use crate::job::document::document;
use crate::speedometer::{Hand, Tap};
use crate::swap::Release;
use crate::toothload::synchroniser::Cone;
use crate::units::{Angle, Length, Measured, System, Typed, limits, number};

inputs! {
    /// The texts of one setup. Places are counted from 0.
    SetupField of setup: Setup, with {
        /// A text about the inside of the box.
        Inside(InsideField) at inside;
        /// A text about its driveshaft.
        Shaft(ShaftField) at shaft;
        /// A size of its box.
        Swap(SwapField) at swap;
    };

    /// What the setup is called.
    Name at name: words("name", "name");
    /// The constant pair.
    Constant at gearbox.constant: teeth("constant", "constant pair").needed();
    /// A forward gear.
    Gear[at in gearbox.gears]: teeth("gear.#", "# gear").needed();
    /// The outer gears of reverse.
    Reverse at gearbox.reverse: teeth("reverse", "reverse").like("33/16");
    /// The reverse idler.
    Idler at gearbox.idler: teeth("idler", "reverse idler").like("19");
    /// The final drive.
    FinalDrive at final_drive: teeth("final-drive", "ring and pinion: teeth or ratio").needed();
    /// The name of an extra stage.
    StageName[at in stages => name]: words("stage.#.name", "name of the # extra stage").like("overdrive");
    /// The drive of an extra stage.
    Stage[at in stages => drive]: teeth("stage.#", "# extra stage: teeth or ratio, driven over driver").like("0.78").needed();
    /// The gears an extra stage can be switched in.
    StageGears[at in stages => gears]: notation("stage.#.gears", "gears the # extra stage is switched in", no_unit).like("3 4");
    /// The ratio of an extra stage at rest.
    StageRest[at in stages => rest]: teeth("stage.#.rest", "# extra stage when it is out").or(|_| "1".into());
    /// The tyre.
    Tyre at tyre: notation("tyre", "tyre: size, or what it rolls", bare_length).needed();
    /// How much tread has worn off.
    TreadLost at tread_lost: quantity("tread-lost", "tread worn off", &limits::TREAD_LOST).or(|_| "0".into());
    /// The speedometer gears.
    SpeedoGears at speedo.gears: teeth("speedo-gears", "speedometer drive and driven gear").like("8/28");
    /// Readings of the dial beside true speeds.
    RoadCheck at speedo.road_check: notation("road-check", "road check: dial and true speed", no_unit).like("60 57; 70 66");
    /// The gears without a synchroniser.
    Unsynchronised at inside.unsynchronised: notation("unsynchronised", "gears without a synchroniser", no_unit).or(|_| "none".into());
}

document! {
    /// The cut of the gears and the synchronisers of one setup.
    pub struct Inside, InsideField of inside {
        /// Normal module, or diametral pitch.
        pitch: Typed, Pitch: Row::new("pitch", "module or pitch", Kind::Notation(pitch_unit));
        /// Helix angle.
        helix: Typed, Helix: quantity("helix", "helix angle", &limits::HELIX).or(|job| limits::bare(Angle::default(), job.units));
        /// Normal pressure angle.
        pressure: Typed, Pressure: quantity("pressure-angle", "pressure angle", &limits::PRESSURE_ANGLE)
            .or(|job| limits::bare(Cut::usual_pressure_angle(), job.units));
        /// Centre distance of countershaft and mainshaft.
        centre: Typed, Centre: quantity("centre", "centre distance", &limits::CENTRE_DISTANCE).or(|_| "by the counts".into());
        /// Face width of the gears.
        face: Typed, Face: quantity("face-width", "face width", &limits::FACE_WIDTH);
        /// Inertia of all that hangs on the input, referred to the input shaft; blank for an estimate.
        inertia: Typed, Inertia: quantity("input-inertia", "inertia to synchronise, at the input", &limits::INPUT_INERTIA)
            .or(|_| "estimated".into());
        /// Mean diameter of the cones.
        cone_diameter: Typed, ConeDiameter: quantity("cone-diameter", "mean diameter of the cones", &limits::CONE_DIAMETER);
        /// Width of the lining.
        cone_width: Typed, ConeWidth: quantity("cone-width", "width of the lining", &limits::LINING_WIDTH);
    }
    left out while blank {
        /// The angle of the cones to the shaft.
        cone_angle: Typed, ConeAngle: quantity("cone-angle", "angle of the cones to the shaft", &limits::CONE_ANGLE)
            .or(|job| limits::bare(Cone::usual_half_angle(), job.units));
        /// The friction of the cones.
        cone_friction: Typed, ConeFriction: quantity("cone-friction", "friction of the cones", &limits::CONE_FRICTION)
            .or(|_| limits::shown(Cone::USUAL_FRICTION));
        /// How many cones of a synchroniser work at once; blank for one.
        cones: String, Cones: whole("cones", "cones of each synchroniser", CONES).or(|_| "1".into());
        /// The outer diameter of the clutch plate.
        clutch_diameter: Typed, ClutchDiameter: quantity("clutch-diameter", "clutch plate, outer diameter", &limits::CLUTCH_DIAMETER)
            .like("200 mm");
        /// The pairs that are cut otherwise: `1st 8 DP 0°; R 7 DP; 2nd x 0.3; 3rd left; 4th face 14 mm`; blank for none.
        pair_cuts: Typed, PairCuts: notation("pair-cuts", "pairs cut otherwise", no_unit).like("1st 8 DP 0°; R 7 DP; 2nd x 0.3");
        /// The two bearings of the countershaft: `0 28 kN ball; 175 24 kN roller`, `0 40 kN taper Y 1.6; 175 45 kN taper Y 1.5`; blank where they are not looked at.
        bearings: Typed, Bearings: notation("bearings", "the cluster’s bearings: place, C, ball, roller or taper", no_unit)
            .like("0 28 kN ball; 175 24 kN roller");
        /// Where the gears sit along it: `input 22; 2nd 110; 1st 150`.
        places: Typed, Places: notation("gear-places", "where its gears sit", no_unit).like("input 22; 2nd 110; 1st 150");
        /// The two bearings of the mainshaft, the output: `45 16 kN roller; 180 26 kN ball`.
        main_bearings: Typed, MainBearings: notation("main-bearings", "the mainshaft’s bearings", no_unit)
            .like("45 16 kN roller; 180 26 kN ball");
        /// The two bearings of the input shaft of a box with a countershaft.
        input_bearings: Typed, InputBearings: notation("input-bearings", "the input shaft’s bearings", no_unit)
            .like("-60 9 kN needle; 8 25 kN ball");
        /// The hand of the teeth on the countershaft; of a two-shaft box, on the input shaft.
        hand: Chosen<Hand>;
    }
    always written {
        /// The gears without a synchroniser: `1`, `1 2` or blank for none.
        unsynchronised: String;
    }
}

document! {
    /// The shaft of one setup.
    pub struct Shaft, ShaftField of shaft {
        /// From joint centre to joint centre, a length for each piece.
        lengths: Typed, Lengths: Row::new("shaft-length", "between joint centres", Kind::Quantities(&limits::SHAFT_LENGTH)).needed();
        /// The tube's outside diameter.
        outside: Typed, Outside: quantity("shaft-outside", "outside of the tube", &limits::TUBE_OUTSIDE).needed();
        /// The tube's wall.
        wall: Typed, Wall: quantity("shaft-wall", "wall of the tube", &limits::TUBE_WALL).needed();
        /// What the tube is made of; blank for steel.
        material: Chosen<TubeMaterial>;
        /// How the gearbox's output falls towards the rear at ride height: `3 down`, `3 down, 1 right`.
        gearbox_slope: String, GearboxSlope: notation("gearbox-slope", "slope of engine and gearbox", degrees).like("3 down");
        /// The same of the shaft, for each piece, parted by semicolons.
        slopes: String, Slopes: notation("shaft-slope", "slope of the shaft", degrees).like("5 down");
        /// How the axle's nose points: `3 up`.
        pinion_slope: String, PinionSlope: notation("pinion-slope", "slope of the axle’s nose", degrees).like("3 up");
        /// How the yokes at both ends of a piece stand to each other; blank for in line.
        yokes: Chosen<Yokes>;
    }
    left out while blank {
        /// How its ends are held; blank for a joint each.
        ends: Chosen<Ends>;
        /// Modulus and density of a tube of one's own material: `120; 1,600`.
        own_material: String, OwnMaterial: notation("shaft-own-material", "own material", |_, _| Some("GPa; kg/m³")).like("120; 1,600");
        /// How far the axle's nose rises under drive.
        windup: Typed, Windup: quantity("axle-windup", "nose rises under drive", &limits::WINDUP).or(|_| "0".into());
        /// With the axle hanging: how far it drops, or how the last piece slopes then; behind a semicolon the axle's nose.
        droop: String, Droop: notation("axle-droop", "axle drops; nose then", no_unit).like("4 in; nose 1 up");
        /// The thickness of one shim of the centre bearing.
        shim: Typed, Shim: quantity("bearing-shim", "one shim of the centre bearing", &limits::SHIM);
        /// What an indicator swings by at the middle of the tube.
        run_out: Typed, RunOut: quantity("shaft-run-out", "run-out at the middle", &limits::RUN_OUT);
    }
}

document! {
    /// The sizes of one setup's box, all lengths from the case face that bolts to the clutch housing or engine.
    pub struct Swap, SwapField of swap {
        /// To the output flange, or the joint centre of a sliding yoke at ride height.
        length: Typed, Length: quantity("box-length", "case face to output flange", &limits::FROM_FACE);
        /// To the mount.
        mount: Typed, Mount: quantity("box-mount", "case face to mount", &limits::FROM_FACE);
        /// To the lever.
        lever: Typed, Lever: quantity("box-lever", "case face to lever", &limits::FROM_FACE);
        /// To the nose of the input shaft, forwards.
        nose: Typed, Nose: quantity("box-nose", "case face to nose of the input shaft", &limits::FROM_FACE);
        /// The diameter that runs in the pilot bush.
        spigot: Typed, Spigot: quantity("box-spigot", "spigot diameter", &limits::FIT_DIAMETER);
        /// The splines that carry the clutch plate: count, outside, root.
        input_spline: Typed, InputSpline: notation("box-input-spline", "input spline: count x outside", length_unit).like("10 x 1 1/8");
        /// The splines of the output.
        output_spline: Typed, OutputSpline: notation("box-output-spline", "output spline: count x outside", length_unit).like("27 x 1 1/8");
        /// The bolt holes of the case face, across and up from the shaft, or a name for them.
        holes: Typed, Holes: notation("box-holes", "bolt holes, across: up, or a name", length_unit);
        /// The top of the case above the shaft's line, station by station.
        outline: Typed, Outline: notation("box-outline", "top of the case, distance: height", length_unit).like("0: 6; 12: 4");
        /// What it weighs, dry.
        weight: Typed, Weight: quantity("box-weight", "weight of the box", &limits::BOX_WEIGHT);
        /// Where the clutch fork comes out.
        release: Chosen<Release>;
        /// Between the faces of the axle that its wheels are bolted to.
        axle_width: Typed, AxleWidth: quantity("axle-width", "axle, wheel face to wheel face", &limits::AXLE_WIDTH);
        /// From the face of the wheel to the inner edge of its rim.
        backspace: Typed, Backspace: quantity("backspace", "wheel face to inner rim edge", &limits::BACKSPACE);
        /// The splines of a half shaft.
        half_shaft: Typed, HalfShaft: notation("half-shaft-spline", "half shaft spline: count x outside", length_unit);
        /// Its oil in words: class, viscosity, quantity.
        oil: String, Oil: words("box-oil", "gearbox oil");
        /// The oil of its overdrive, where that has its own.
        overdrive_oil: String, OverdriveOil: words("overdrive-oil", "overdrive oil");
        /// The oil of the axle.
        axle_oil: String, AxleOil: words("axle-oil", "axle oil");
        /// How far the release bearing travels.
        release_travel: Typed, Travel: quantity("release-travel", "release travel", &limits::RELEASE_TRAVEL);
        /// The holes of the output flange, across and up from the shaft, or a name for them.
        flange: Typed, Flange: notation("box-flange", "output flange: holes, or a name", length_unit);
    }
}

document! {
    /// What belongs to one setup.
    pub struct Speedo {
        /// Drive and driven teeth, and perhaps an adapter's.
        pub gears: String,
        /// Readings of the dial beside true speeds.
        pub road_check: Typed,
        /// The hand of the drive gear; blank where unknown.
        pub hand: Chosen<Hand>,
        /// Where the driven gear stands and its cable leaves; blank where unknown.
        pub tap: Chosen<Tap>,
        /// Where the drive gear sits; blank for the driveshaft.
        pub take_off: Chosen<TakeOff>,
    }
}

/// How many cones a synchroniser can have.
const CONES: Bounds = (1.0, 3.0);

/// The unit of a tyre that is typed as a length alone; a size has its own.
fn bare_length(text: &str, system: System) -> Option<&'static str> {
    number::read_decimal(text.trim()).map(|_| Length::usual(system).symbol)
}

/// What a slope without a unit is in.
#[expect(clippy::unnecessary_wraps, reason = "the notation of other inputs can name its own unit")]
fn degrees(_: &str, _: System) -> Option<&'static str> {
    Some("°")
}

/// What a bare number is: a diametral pitch, or a module.
#[expect(clippy::unnecessary_wraps, reason = "the notation of other inputs can name its own unit")]
pub(super) fn pitch_unit(_: &str, system: System) -> Option<&'static str> {
    Some(if system == System::Inch { "DP" } else { "mm" })
}
