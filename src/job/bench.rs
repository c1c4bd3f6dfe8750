//! What is typed at the bench: counted teeth, turns, a printed ladder, and the sets whose parts are mixed.

use serde::{Deserialize, Serialize};

macro_rules! texts {
    ($($(#[$doc:meta])* $field:ident $variant:ident $path:literal;)*) => {
        /// The texts of the bench, and what is chosen there.
        #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
        #[serde(default)]
        pub struct Bench {
            $($(#[$doc])* #[serde(skip_serializing_if = "String::is_empty")] pub $field: String,)*
            /// The gear whose turns were read: `1` to `8`, `r`, or blank where it is not known.
            #[serde(skip_serializing_if = "String::is_empty")]
            pub turned_gear: String,
            /// Whether one wheel of the axle was held: `held`, or blank.
            #[serde(skip_serializing_if = "String::is_empty")]
            pub wheel: String,
            /// The layout of what lies on the bench: `output-reduced`, `two-shaft`, or blank.
            #[serde(skip_serializing_if = "String::is_empty")]
            pub layout: String,
        }

        /// The texts of the bench.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum BenchField {
            $($(#[$doc])* $variant,)*
        }

        impl BenchField {
            /// The path by which a [`crate::problem::Problem`] names this field.
            pub fn path(self) -> &'static str {
                match self { $(Self::$variant => $path,)* }
            }

            pub(super) fn slot(self, bench: &mut Bench) -> &mut String {
                match self { $(Self::$variant => &mut bench.$field,)* }
            }

            /// The text as typed.
            pub fn text(self, bench: &Bench) -> &str {
                match self { $(Self::$variant => &bench.$field,)* }
            }
        }
    };
}

texts! {
    /// The constant pair as counted; a count not known is a question mark.
    constant Constant "bench-constant";
    /// 1st gear as counted.
    first First "bench-1";
    /// 2nd gear as counted.
    second Second "bench-2";
    /// 3rd gear as counted.
    third Third "bench-3";
    /// 4th gear as counted.
    fourth Fourth "bench-4";
    /// 5th gear as counted.
    fifth Fifth "bench-5";
    /// 6th gear as counted.
    sixth Sixth "bench-6";
    /// Reverse as counted, without its idler.
    reverse Reverse "bench-reverse";
    /// Counts whose place is not known.
    anywhere Anywhere "bench-anywhere";
    /// Turns of the input.
    input_turns InputTurns "bench-input-turns";
    /// Turns of the output that they gave.
    output_turns OutputTurns "bench-output-turns";
    /// How uncertain those are; blank for a reading by eye.
    uncertainty Uncertainty "bench-uncertainty";
    /// Turns of the driveshaft.
    shaft_turns ShaftTurns "bench-shaft-turns";
    /// Turns of the wheel that they gave.
    wheel_turns WheelTurns "bench-wheel-turns";
    /// How uncertain those are; blank for a reading by eye.
    wheel_uncertainty WheelUncertainty "bench-wheel-uncertainty";
    /// Printed ratios, lowest gear first.
    ladder Ladder "bench-ladder";
    /// The fewest teeth a gear of it may have; blank for 12.
    fewest Fewest "bench-fewest";
    /// The most teeth a gear of it may have; blank for 60.
    most Most "bench-most";
    /// The gear set the input gear comes from.
    mix_input MixInput "bench-mix-input";
    /// The gear set the cluster comes from.
    mix_cluster MixCluster "bench-mix-cluster";
    /// The gear set the mainshaft gears come from.
    mix_gears MixGears "bench-mix-gears";
}
