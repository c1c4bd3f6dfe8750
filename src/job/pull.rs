//! What is typed about engine, car and run; [`super::inputs::car`] is its table.

use super::choice::{Chosen, ShiftBy};
use super::document::document;
use crate::motion::atmosphere::Standard;
use crate::motion::car::Drive;
use crate::motion::curve::rows::MeasuredAt;
use crate::units::Typed;

document! {
    /// The texts about engine, car and run, and what is chosen. All but mass and torque or power may stay blank.
    pub struct Pull {}
    left out while blank {
        /// Mass with driver and load.
        pub mass: Typed,
        /// Share of the weight on the driven axle.
        pub driven_share: Typed,
        /// Distance between the axles.
        pub wheelbase: Typed,
        /// Height of the centre of gravity.
        pub gravity_height: Typed,
        /// Drag coefficient times frontal area.
        pub drag_area: Typed,
        /// Rolling resistance over weight.
        pub rolling: Typed,
        /// Greatest grip of the tyres over load.
        pub grip: Typed,
        /// Share that one gear mesh passes on.
        pub mesh_efficiency: Typed,
        /// Share that the final drive passes on.
        pub axle_efficiency: Typed,
        /// Inertia of engine, flywheel and clutch cover.
        pub engine_inertia: Typed,
        /// Inertia of the box, reduced to its input shaft.
        pub box_inertia: Typed,
        /// Inertia of all wheels together.
        pub wheel_inertia: Typed,
        /// Mass of a trailer.
        pub trailer: Typed,
        /// Height above the sea of where the car is driven.
        pub altitude: Typed,
        /// Rows of a dynamometer or points of a curve: rpm and torque or power.
        pub rows: Typed,
        /// The engine's greatest torque, from a data sheet.
        pub peak_torque: Typed,
        /// Engine speed of peak torque.
        pub peak_torque_at: Typed,
        /// The engine's greatest power, from a data sheet.
        pub peak_power: Typed,
        /// Engine speed of peak power.
        pub peak_power_at: Typed,
        /// The engine speed that is not to be passed.
        pub limit: Typed,
        /// The share of peak power that still counts as the power band.
        pub band_share: Typed,
        /// Barometric pressure of the test.
        pub air_pressure: Typed,
        /// Air temperature of the test.
        pub air_temperature: Typed,
        /// Relative humidity of the test.
        pub air_humidity: Typed,
        /// Engine speed held at a standing start.
        pub launch: Typed,
        /// Time without thrust in each shift.
        pub shift_time: Typed,
        /// The speeds whose time is asked for, separated by semicolons.
        pub speeds: Typed,
        /// The speed at which a rolling start begins.
        pub roll_from: Typed,
        /// The speed at which a rolling start ends.
        pub roll_to: Typed,
        /// The gear of a rolling start.
        pub roll_gear: Typed,
    }
    always written {
        /// The driven wheels; blank for what is usual for the layout.
        pub drive: Chosen<Drive>,
        /// Where a measured curve was measured; blank for what its head says, else at the engine.
        pub curve_at: Chosen<MeasuredAt>,
        /// The standard that a measured curve is corrected to.
        pub standard: Chosen<Standard>,
        /// The rule of the upshifts; blank for the quickest run.
        pub rule: Chosen<ShiftBy>,
    }
}
