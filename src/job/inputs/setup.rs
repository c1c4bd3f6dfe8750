//! The inputs of each setup: gearbox, axle, stages, tyre, speedometer gears, and the inside of its box.

use super::{Bounds, Kind, Row, inputs, no_unit, notation, quantity, teeth, whole, words};
use crate::gearing::geometry::Cut;
use crate::job::{Inside, Setup, Shaft, Swap};
use crate::toothload::synchroniser::Cone;
use crate::units::{Angle, Length, Measured, System, limits, number};

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

inputs! {
    /// The texts of one setup about the inside of its box.
    InsideField of inside: Inside;

    /// Normal module, or diametral pitch.
    Pitch at pitch: Row::new("pitch", "module or pitch", Kind::Notation(pitch_unit));
    /// Helix angle.
    Helix at helix: quantity("helix", "helix angle", &limits::HELIX).or(|job| limits::bare(Angle::default(), job.units));
    /// Normal pressure angle.
    Pressure at pressure: quantity("pressure-angle", "pressure angle", &limits::PRESSURE_ANGLE)
        .or(|job| limits::bare(Cut::usual_pressure_angle(), job.units));
    /// Centre distance.
    Centre at centre: quantity("centre", "centre distance", &limits::CENTRE_DISTANCE).or(|_| "by the counts".into());
    /// Face width.
    Face at face: quantity("face-width", "face width", &limits::FACE_WIDTH);
    /// Inertia of all that hangs on the input.
    Inertia at inertia: quantity("input-inertia", "inertia to synchronise, at the input", &limits::INPUT_INERTIA).or(|_| "estimated".into());
    /// Mean diameter of the cones.
    ConeDiameter at cone_diameter: quantity("cone-diameter", "mean diameter of the cones", &limits::CONE_DIAMETER);
    /// Width of the lining.
    ConeWidth at cone_width: quantity("cone-width", "width of the lining", &limits::LINING_WIDTH);
    /// The angle of the cones to the shaft.
    ConeAngle at cone_angle: quantity("cone-angle", "angle of the cones to the shaft", &limits::CONE_ANGLE)
        .or(|job| limits::bare(Cone::usual_half_angle(), job.units));
    /// The friction of the cones.
    ConeFriction at cone_friction: quantity("cone-friction", "friction of the cones", &limits::CONE_FRICTION)
        .or(|_| limits::shown(Cone::USUAL_FRICTION));
    /// How many cones of a synchroniser work at once.
    Cones at cones: whole("cones", "cones of each synchroniser", CONES).or(|_| "1".into());
    /// The outer diameter of the clutch plate.
    ClutchDiameter at clutch_diameter: quantity("clutch-diameter", "clutch plate, outer diameter", &limits::CLUTCH_DIAMETER).like("200 mm");
    /// The pairs that are cut otherwise.
    PairCuts at pair_cuts: notation("pair-cuts", "pairs cut otherwise", no_unit).like("1st 8 DP 0°; R 7 DP; 2nd x 0.3");
    /// The two bearings of the countershaft.
    Bearings at bearings: notation("bearings", "the cluster’s bearings: place, C, ball, roller or taper", no_unit).like("0 28 kN ball; 175 24 kN roller");
    /// The two bearings of the mainshaft.
    MainBearings at main_bearings: notation("main-bearings", "the mainshaft’s bearings", no_unit).like("45 16 kN roller; 180 26 kN ball");
    /// The two bearings of the input shaft.
    InputBearings at input_bearings: notation("input-bearings", "the input shaft’s bearings", no_unit).like("-60 9 kN needle; 8 25 kN ball");
    /// Where the gears sit along it.
    Places at places: notation("gear-places", "where its gears sit", no_unit).like("input 22; 2nd 110; 1st 150");
}

inputs! {
    /// The texts of one setup about its driveshaft.
    ShaftField of shaft: Shaft;

    /// From joint centre to joint centre.
    Lengths at lengths: Row::new("shaft-length", "between joint centres", Kind::Quantities(&limits::SHAFT_LENGTH))
        .needed();
    /// The tube's outside diameter.
    Outside at outside: quantity("shaft-outside", "outside of the tube", &limits::TUBE_OUTSIDE).needed();
    /// The tube's wall.
    Wall at wall: quantity("shaft-wall", "wall of the tube", &limits::TUBE_WALL).needed();
    /// The slope of engine and gearbox.
    GearboxSlope at gearbox_slope: notation("gearbox-slope", "slope of engine and gearbox", degrees).like("3 down");
    /// The slopes of the shaft's pieces.
    Slopes at slopes: notation("shaft-slope", "slope of the shaft", degrees).like("5 down");
    /// Where the axle's nose points.
    PinionSlope at pinion_slope: notation("pinion-slope", "slope of the axle’s nose", degrees).like("3 up");
    /// Modulus and density of a material of one's own.
    OwnMaterial at own_material: notation("shaft-own-material", "own material", |_, _| Some("GPa; kg/m³")).like("120; 1,600");
    /// How far the axle's nose rises under drive.
    Windup at windup: quantity("axle-windup", "nose rises under drive", &limits::WINDUP).or(|_| "0".into());
    /// The driveline with the axle hanging.
    Droop at droop: notation("axle-droop", "axle drops; nose then", no_unit).like("4 in; nose 1 up");
    /// One shim of the centre bearing.
    Shim at shim: quantity("bearing-shim", "one shim of the centre bearing", &limits::SHIM);
    /// What an indicator swings by.
    RunOut at run_out: quantity("shaft-run-out", "run-out at the middle", &limits::RUN_OUT);
}

inputs! {
    /// The sizes of one setup's box.
    SwapField of swap: Swap;

    /// To the output flange.
    Length at length: quantity("box-length", "case face to output flange", &limits::FROM_FACE);
    /// To the mount.
    Mount at mount: quantity("box-mount", "case face to mount", &limits::FROM_FACE);
    /// To the lever.
    Lever at lever: quantity("box-lever", "case face to lever", &limits::FROM_FACE);
    /// To the nose of the input shaft.
    Nose at nose: quantity("box-nose", "case face to nose of the input shaft", &limits::FROM_FACE);
    /// What runs in the pilot bush.
    Spigot at spigot: quantity("box-spigot", "spigot diameter", &limits::FIT_DIAMETER);
    /// The splines of the input.
    InputSpline at input_spline: notation("box-input-spline", "input spline: count x outside", bare).like("10 x 1 1/8");
    /// The splines of the output.
    OutputSpline at output_spline: notation("box-output-spline", "output spline: count x outside", bare).like("27 x 1 1/8");
    /// The bolt holes.
    Holes at holes: notation("box-holes", "bolt holes, across: up, or a name", bare);
    /// The top of the case.
    Outline at outline: notation("box-outline", "top of the case, distance: height", bare).like("0: 6; 12: 4");
    /// What it weighs.
    Weight at weight: quantity("box-weight", "weight of the box", &limits::BOX_WEIGHT);
    /// The width of the axle.
    AxleWidth at axle_width: quantity("axle-width", "axle, wheel face to wheel face", &limits::AXLE_WIDTH);
    /// The backspace of its wheels.
    Backspace at backspace: quantity("backspace", "wheel face to inner rim edge", &limits::BACKSPACE);
    /// The splines of a half shaft.
    HalfShaft at half_shaft: notation("half-shaft-spline", "half shaft spline: count x outside", bare);
    /// Its oil.
    Oil at oil: words("box-oil", "gearbox oil");
    /// The oil of its overdrive.
    OverdriveOil at overdrive_oil: words("overdrive-oil", "overdrive oil");
    /// The oil of the axle.
    AxleOil at axle_oil: words("axle-oil", "axle oil");
    /// How far the release bearing travels.
    Travel at release_travel: quantity("release-travel", "release travel", &limits::RELEASE_TRAVEL);
    /// The holes of the output flange.
    Flange at flange: notation("box-flange", "output flange: holes, or a name", bare);
}

/// The unit of bare lengths in a line.
#[expect(clippy::unnecessary_wraps, reason = "the notation of other inputs can name its own unit")]
pub(super) fn bare(_: &str, system: System) -> Option<&'static str> {
    Some(Length::usual(system).symbol)
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
