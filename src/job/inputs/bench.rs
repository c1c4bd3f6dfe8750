//! What is typed at the bench: counted teeth, turns, a printed ladder, the sets whose parts are mixed; the parts of it have files of
//! their own.

use super::build::{Build, BuildField};
use super::cutter::{Cutter, CutterField};
use super::endplay::{EndPlay, EndPlayField};
use super::faults::{Faults, FaultsField};
use super::fits::{Fits, FitsField};
use super::measure::{Measure, MeasureField};
use super::noise::{Noise, NoiseField};
use super::setting::{Setting, SettingField};
use super::{COUNTS, no_unit, notation, part, quantity, teeth, whole};
use crate::catalogue::PartKind;
use crate::fits::temperature;
use crate::gearing::Layout;
use crate::gearing::identify::ladder::Wish;
use crate::gearing::identify::reading::by_eye;
use crate::job::Job;
use crate::job::choice::{Chosen, TurnedGear, Wheels};
use crate::job::document::document;
use crate::units::Typed;
use crate::units::limits;

document! {
    /// The texts of the bench, and what is chosen there. Whatever is blank is left out of a file.
    pub struct Bench, BenchField of bench {}
    left out while blank {
        /// The constant pair as counted; a count not known is a question mark.
        constant: String, Constant: teeth("bench-constant", "input pair").like("?/30");
        /// 1st gear as counted.
        first: String, First: teeth("bench-1", "1st").like("37/?");
        /// 2nd gear as counted.
        second: String, Second: teeth("bench-2", "2nd");
        /// 3rd gear as counted.
        third: String, Third: teeth("bench-3", "3rd");
        /// 4th gear as counted.
        fourth: String, Fourth: teeth("bench-4", "4th");
        /// 5th gear as counted.
        fifth: String, Fifth: teeth("bench-5", "5th");
        /// 6th gear as counted.
        sixth: String, Sixth: teeth("bench-6", "6th");
        /// Reverse as counted, without its idler.
        reverse: String, Reverse: teeth("bench-reverse", "reverse").like("33/16");
        /// Counts whose place is not known.
        anywhere: String, Anywhere: teeth("bench-anywhere", "place not known").like("23 18");
        /// How often the input was turned, as it would be said: `10`, `nearly 3`.
        input_turns: String, InputTurns: notation("bench-input-turns", "input turns", no_unit).like("10");
        /// Turns of the output that they gave.
        output_turns: String, OutputTurns: notation("bench-output-turns", "output turns", no_unit).like("4 1/5");
        /// How uncertain those are; blank for a reading by eye.
        uncertainty: String, Uncertainty: notation("bench-uncertainty", "give or take", no_unit).or(judged_by_eye);
        /// Turns of the driveshaft.
        shaft_turns: String, ShaftTurns: notation("bench-shaft-turns", "driveshaft turns", no_unit).like("10");
        /// Turns of the wheel that they gave.
        wheel_turns: String, WheelTurns: notation("bench-wheel-turns", "wheel turns", no_unit).like("2 1/2");
        /// How uncertain those are; blank for a reading by eye.
        wheel_uncertainty: String, WheelUncertainty: notation("bench-wheel-uncertainty", "give or take", no_unit).or(judged_by_eye);
        /// What is stamped on an axle or its tag.
        tag: String, Tag: teeth("bench-tag", "tag or stamp of an axle").like("43 1?");
        /// Turns of the speedometer's cable over a measured stretch.
        cable: Typed, Cable: notation("bench-cable", "cable turns over a stretch", no_unit).like("12 1/4 in 52.8 ft");
        /// Turns over a distance that stand on the dial.
        dial: Typed, Dial: quantity("bench-dial", "turns per distance on the dial", &limits::DIAL_CONSTANT);
        /// Printed ratios, lowest gear first.
        ladder: String, Ladder: notation("bench-ladder", "printed ratios", no_unit).like("2.47 1.67 1.24 1.00");
        /// The fewest teeth a gear of it may have; blank for 12.
        fewest: String, Fewest: whole("bench-fewest", "teeth from", COUNTS).or(|_| Wish::FEWEST.to_string());
        /// The most teeth a gear of it may have; blank for 60.
        most: String, Most: whole("bench-most", "teeth to", COUNTS).or(|_| Wish::MOST.to_string());
        /// The gear set the input gear comes from.
        mix_input: String, MixInput: part("bench-mix-input", "input gear from", PartKind::GearSet).or(cluster);
        /// The gear set the cluster comes from.
        mix_cluster: String, MixCluster: part("bench-mix-cluster", "cluster from", PartKind::GearSet);
        /// The gear set the mainshaft gears come from.
        mix_gears: String, MixGears: part("bench-mix-gears", "mainshaft gears from", PartKind::GearSet).or(cluster);
        /// The gear whose turns were read; blank where it is not known.
        turned_gear: Chosen<TurnedGear>;
        /// Whether one wheel of the axle was held.
        wheel: Chosen<Wheels>;
        /// The layout of what lies on the bench.
        layout: Chosen<Layout>;
        /// How warm the parts were when they were measured; blank for 20 °C.
        measured_at: Typed, MeasuredAt: quantity("bench-measured-at", "measured at", &limits::BENCH_TEMPERATURE)
            .or(|job| limits::bare(temperature::bench(), job.units));
        /// How warm the box gets; blank for 90 °C.
        warms_to: Typed, WarmsTo: quantity("bench-warms-to", "box warms to", &limits::WORKING_TEMPERATURE)
            .or(|job| limits::bare(temperature::working(), job.units));
        /// A stack of measured parts, and the shims for it.
        endplay: EndPlay => EndPlay(EndPlayField);
        /// A bore and a shaft as measured.
        fits: Fits => Fits(FitsField);
        /// The setting of bearings and gears.
        setting: Setting => Setting(SettingField);
        /// A gear as measured.
        measure: Measure => Measure(MeasureField);
        /// A gear to be cut.
        cutter: Cutter => Cutter(CutterField);
        /// What a noise is like.
        noise: Noise => Noise(NoiseField);
        /// What is said of a fault, and what was tried.
        faults: Faults => Faults(FaultsField);
        /// The order of work, and what was read at each step.
        build: Build => Build(BuildField);
    }
}

fn judged_by_eye(_: &Job) -> String {
    by_eye().to_string()
}

fn cluster(job: &Job) -> String {
    job.bench.mix_cluster.clone()
}
