//! What is typed about engine, car and run; [`super::inputs::car`] is its table.

use serde::{Deserialize, Serialize};

use super::choice::{Chosen, ShiftBy};
use crate::motion::atmosphere::Standard;
use crate::motion::car::Drive;
use crate::motion::curve::rows::MeasuredAt;
use crate::units::Typed;

/// The texts about engine, car and run, and what is chosen. All but mass and torque or power may stay blank.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Pull {
    /// Mass with driver and load.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub mass: Typed,
    /// Share of the weight on the driven axle.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub driven_share: Typed,
    /// Distance between the axles.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub wheelbase: Typed,
    /// Height of the centre of gravity.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub gravity_height: Typed,
    /// Drag coefficient times frontal area.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub drag_area: Typed,
    /// Rolling resistance over weight.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub rolling: Typed,
    /// Greatest grip of the tyres over load.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub grip: Typed,
    /// Share that one gear mesh passes on.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub mesh_efficiency: Typed,
    /// Share that the final drive passes on.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub axle_efficiency: Typed,
    /// Inertia of engine, flywheel and clutch cover.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub engine_inertia: Typed,
    /// Inertia of the box, reduced to its input shaft.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub box_inertia: Typed,
    /// Inertia of all wheels together.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub wheel_inertia: Typed,
    /// Mass of a trailer.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub trailer: Typed,
    /// Height above the sea of where the car is driven.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub altitude: Typed,
    /// Rows of a dynamometer or points of a curve: rpm and torque or power.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub rows: Typed,
    /// The engine's greatest torque, from a data sheet.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub peak_torque: Typed,
    /// Engine speed of peak torque.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub peak_torque_at: Typed,
    /// The engine's greatest power, from a data sheet.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub peak_power: Typed,
    /// Engine speed of peak power.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub peak_power_at: Typed,
    /// The engine speed that is not to be passed.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub limit: Typed,
    /// The share of peak power that still counts as the power band.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub band_share: Typed,
    /// Barometric pressure of the test.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub air_pressure: Typed,
    /// Air temperature of the test.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub air_temperature: Typed,
    /// Relative humidity of the test.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub air_humidity: Typed,
    /// Engine speed held at a standing start.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub launch: Typed,
    /// Time without thrust in each shift.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub shift_time: Typed,
    /// The speeds whose time is asked for, separated by semicolons.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub speeds: Typed,
    /// The speed at which a rolling start begins.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub roll_from: Typed,
    /// The speed at which a rolling start ends.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub roll_to: Typed,
    /// The gear of a rolling start.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub roll_gear: Typed,
    /// The driven wheels; blank for what is usual for the layout.
    pub drive: Chosen<Drive>,
    /// Where a measured curve was measured; blank for what its head says, else at the engine.
    pub curve_at: Chosen<MeasuredAt>,
    /// The standard that a measured curve is corrected to.
    pub standard: Chosen<Standard>,
    /// The rule of the upshifts; blank for the quickest run.
    pub rule: Chosen<ShiftBy>,
}
