//! What is typed about engine, car and run. Every text may stay blank but mass and torque: what is missing is stood in for, and marked.

use serde::{Deserialize, Serialize};

use crate::units::Typed;

macro_rules! texts {
    ($($(#[$doc:meta])* $field:ident $variant:ident $path:literal;)*) => {
        /// The texts about engine, car and run, and what is chosen.
        #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
        #[serde(default)]
        pub struct Pull {
            $($(#[$doc])* #[serde(skip_serializing_if = "Typed::is_blank")] pub $field: Typed,)*
            /// The driven wheels: `front`, `all`, or anything else for the rear.
            pub drive: String,
            /// The standard that a measured curve is corrected to; blank for none.
            pub standard: String,
            /// The rule of the upshifts: `thrust`, `chosen` for the shift rpm of the sheet, or anything else for the quickest run.
            pub rule: String,
        }

        /// The texts about engine, car and run.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum PullField {
            $($(#[$doc])* $variant,)*
        }

        impl PullField {
            /// The path by which a [`crate::problem::Problem`] names this field.
            pub fn path(self) -> &'static str {
                match self { $(Self::$variant => $path,)* }
            }

            pub(super) fn slot(self, pull: &mut Pull) -> &mut Typed {
                match self { $(Self::$variant => &mut pull.$field,)* }
            }

            /// The text as typed.
            pub fn typed(self, pull: &Pull) -> &Typed {
                match self { $(Self::$variant => &pull.$field,)* }
            }
        }
    };
}

texts! {
    /// Mass with driver and load.
    mass Mass "mass";
    /// Share of the weight on the driven axle.
    driven_share DrivenShare "driven-share";
    /// Distance between the axles.
    wheelbase Wheelbase "wheelbase";
    /// Height of the centre of gravity.
    gravity_height GravityHeight "gravity-height";
    /// Drag coefficient times frontal area.
    drag_area DragArea "drag-area";
    /// Rolling resistance over weight.
    rolling Rolling "rolling-resistance";
    /// Greatest grip of the tyres over load.
    grip Grip "grip";
    /// Share that one gear mesh passes on.
    mesh_efficiency MeshEfficiency "mesh-efficiency";
    /// Share that the final drive passes on.
    axle_efficiency AxleEfficiency "axle-efficiency";
    /// Inertia of engine, flywheel and clutch cover.
    engine_inertia EngineInertia "engine-inertia";
    /// Inertia of the box, reduced to its input shaft.
    box_inertia BoxInertia "box-inertia";
    /// Inertia of all wheels together.
    wheel_inertia WheelInertia "wheel-inertia";
    /// Mass of a trailer.
    trailer Trailer "trailer";
    /// Rows of a dynamometer or points of a curve: rpm and torque or power.
    rows Rows "dyno-rows";
    /// Peak torque.
    peak_torque PeakTorque "peak-torque";
    /// Engine speed of peak torque.
    peak_torque_at PeakTorqueAt "peak-torque-at";
    /// Peak power.
    peak_power PeakPower "peak-power";
    /// Engine speed of peak power.
    peak_power_at PeakPowerAt "peak-power-at";
    /// The engine speed that is not to be passed.
    limit Limit "rev-limit";
    /// The share of peak power that still counts as the power band.
    band_share BandShare "band-share";
    /// Barometric pressure of the test.
    air_pressure AirPressure "air-pressure";
    /// Air temperature of the test.
    air_temperature AirTemperature "air-temperature";
    /// Relative humidity of the test.
    air_humidity AirHumidity "air-humidity";
    /// Engine speed held at a standing start.
    launch Launch "launch";
    /// Time without thrust in each shift.
    shift_time ShiftTime "shift-time";
    /// The speeds whose time is asked for, parted by semicolons.
    speeds Speeds "run-speeds";
    /// The speed at which a rolling start begins.
    roll_from RollFrom "roll-from";
    /// The speed at which a rolling start ends.
    roll_to RollTo "roll-to";
    /// The gear of a rolling start.
    roll_gear RollGear "roll-gear";
}
