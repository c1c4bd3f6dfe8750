//! The inputs of the bench: counted teeth, turns, a printed ladder, and the sets whose parts are mixed.

use super::build::BuildField;
use super::cutter::CutterField;
use super::endplay::EndPlayField;
use super::faults::FaultsField;
use super::fits::FitsField;
use super::measure::MeasureField;
use super::noise::NoiseField;
use super::setting::SettingField;
use super::{COUNTS, inputs, no_unit, notation, part, quantity, teeth, whole};
use crate::catalogue::PartKind;
use crate::fits::temperature;
use crate::gearing::identify::ladder::Wish;
use crate::gearing::identify::reading::by_eye;
use crate::job::{Bench, Job};
use crate::units::limits;

inputs! {
    /// The texts of the bench.
    BenchField of bench: Bench, with {
        /// A text about end play.
        EndPlay(EndPlayField) at endplay;
        /// A text about a fit.
        Fits(FitsField) at fits;
        /// A text about setting.
        Setting(SettingField) at setting;
        /// A text about a measured gear.
        Measure(MeasureField) at measure;
        /// A text about a gear to be cut.
        Cutter(CutterField) at cutter;
        /// A text about a noise.
        Noise(NoiseField) at noise;
        /// A text about a fault.
        Faults(FaultsField) at faults;
        /// A text about the build.
        Build(BuildField) at build;
    };

    /// The constant pair as counted; a count not known is a question mark.
    Constant at constant: teeth("bench-constant", "input pair").like("?/30");
    /// 1st gear as counted.
    First at first: teeth("bench-1", "1st").like("37/?");
    /// 2nd gear as counted.
    Second at second: teeth("bench-2", "2nd");
    /// 3rd gear as counted.
    Third at third: teeth("bench-3", "3rd");
    /// 4th gear as counted.
    Fourth at fourth: teeth("bench-4", "4th");
    /// 5th gear as counted.
    Fifth at fifth: teeth("bench-5", "5th");
    /// 6th gear as counted.
    Sixth at sixth: teeth("bench-6", "6th");
    /// Reverse as counted, without its idler.
    Reverse at reverse: teeth("bench-reverse", "reverse").like("33/16");
    /// Counts whose place is not known.
    Anywhere at anywhere: teeth("bench-anywhere", "place not known").like("23 18");
    /// Turns of the input.
    InputTurns at input_turns: notation("bench-input-turns", "input turns", no_unit).like("10");
    /// Turns of the output that they gave.
    OutputTurns at output_turns: notation("bench-output-turns", "output turns", no_unit).like("4 1/5");
    /// How uncertain those are; blank for a reading by eye.
    Uncertainty at uncertainty: notation("bench-uncertainty", "give or take", no_unit).or(judged_by_eye);
    /// Turns of the driveshaft.
    ShaftTurns at shaft_turns: notation("bench-shaft-turns", "driveshaft turns", no_unit).like("10");
    /// Turns of the wheel that they gave.
    WheelTurns at wheel_turns: notation("bench-wheel-turns", "wheel turns", no_unit).like("2 1/2");
    /// How uncertain those are; blank for a reading by eye.
    WheelUncertainty at wheel_uncertainty: notation("bench-wheel-uncertainty", "give or take", no_unit).or(judged_by_eye);
    /// What is stamped on an axle or its tag.
    Tag at tag: teeth("bench-tag", "tag or stamp of an axle").like("43 1?");
    /// Turns of the speedometer's cable over a measured stretch.
    Cable at cable: notation("bench-cable", "cable turns over a stretch", no_unit).like("12 1/4 in 52.8 ft");
    /// Turns over a distance that stand on the dial.
    Dial at dial: quantity("bench-dial", "turns per distance on the dial", &limits::DIAL_CONSTANT);
    /// Printed ratios, lowest gear first.
    Ladder at ladder: notation("bench-ladder", "printed ratios", no_unit).like("2.47 1.67 1.24 1.00");
    /// The fewest teeth a gear of it may have.
    Fewest at fewest: whole("bench-fewest", "teeth from", COUNTS).or(|_| Wish::FEWEST.to_string());
    /// The most teeth a gear of it may have.
    Most at most: whole("bench-most", "teeth to", COUNTS).or(|_| Wish::MOST.to_string());
    /// The gear set the input gear comes from.
    MixInput at mix_input: part("bench-mix-input", "input gear from", PartKind::GearSet).or(cluster);
    /// The gear set the cluster comes from.
    MixCluster at mix_cluster: part("bench-mix-cluster", "cluster from", PartKind::GearSet);
    /// The gear set the mainshaft gears come from.
    MixGears at mix_gears: part("bench-mix-gears", "mainshaft gears from", PartKind::GearSet).or(cluster);
    /// How warm the parts were when they were measured.
    MeasuredAt at measured_at: quantity("bench-measured-at", "measured at", &limits::BENCH_TEMPERATURE)
        .or(|job| limits::bare(temperature::bench(), job.units));
    /// How warm the box gets.
    WarmsTo at warms_to: quantity("bench-warms-to", "box warms to", &limits::WORKING_TEMPERATURE)
        .or(|job| limits::bare(temperature::working(), job.units));
}

fn judged_by_eye(_: &Job) -> String {
    by_eye().to_string()
}

fn cluster(job: &Job) -> String {
    job.bench.mix_cluster.clone()
}
