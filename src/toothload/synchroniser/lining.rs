//! What a lining bears for each square millimetre, against limits that the user sets.

use super::{Absorbed, Cone};
use crate::problem::Explain;
use crate::units::limits::shown;
use crate::units::{AngularVelocity, PowerPerArea, Pressure, Velocity, WorkPerArea, number};

/// What a lining bears at one shift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stress {
    /// Slip work for each area.
    pub work: WorkPerArea,
    /// Mean power for each area.
    pub power: PowerPerArea,
    /// Sliding speed at the start.
    pub sliding: Velocity,
    /// Pressure at the mean torque.
    pub pressure: Pressure,
}

/// What a lining bears when a cone takes that up over a speed difference.
pub(super) fn stress(cone: &Cone, absorbed: &Absorbed, difference: AngularVelocity) -> Stress {
    let area = cone.area();
    Stress {
        work: absorbed.work / area,
        power: absorbed.mean_power / area,
        sliding: Velocity::new::<uom::si::velocity::meter_per_second>(difference.value.abs() * cone.mean_diameter.value / 2.0),
        pressure: cone.pressure(absorbed.mean_torque),
    }
}

/// The usual pairings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LiningKind {
    /// Brass on steel.
    Brass,
    /// Molybdenum on steel.
    Molybdenum,
    /// A sintered lining on steel.
    Sintered,
}

/// What a lining is allowed. Values are the user's to set; [`Lining::of`] only fills the fields.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lining {
    /// The pairing.
    pub name: &'static str,
    /// Sliding speed, in m/s.
    pub sliding_m_per_s: f64,
    /// Pressure allowed on the lining, in N/mm².
    pub pressure_n_per_mm2: f64,
    /// Work for each area, in J/mm².
    pub work_j_per_mm2: f64,
    /// Power for each area, in W/mm².
    pub power_w_per_mm2: f64,
}

impl Lining {
    /// Where the usual figures come from; to be shown beside them.
    pub const SOURCE: &'static str = "from memory, no published source read: replace by the maker's figures";

    /// Usual figures, all from memory, no published source read.
    pub fn of(kind: LiningKind) -> Self {
        let usual = |name, sliding_m_per_s, pressure_n_per_mm2, work_j_per_mm2, power_w_per_mm2| Self {
            name,
            sliding_m_per_s,
            pressure_n_per_mm2,
            work_j_per_mm2,
            power_w_per_mm2,
        };
        match kind {
            LiningKind::Brass => usual("brass on steel", 5.0, 3.0, 0.09, 0.45),
            LiningKind::Molybdenum => usual("molybdenum on steel", 7.0, 6.0, 0.53, 0.84),
            LiningKind::Sintered => usual("sintered on steel", 9.0, 7.0, 1.0, 1.5),
        }
    }

    /// The limits as they would be typed; read back by [`Lining::read`].
    pub fn as_typed(&self) -> String {
        let limits = [self.sliding_m_per_s, self.pressure_n_per_mm2, self.work_j_per_mm2, self.power_w_per_mm2];
        limits.map(shown).join(" ")
    }

    /// What a lining with limits of the user's own is called.
    pub const OWN: &'static str = "as typed";

    /// Limits as typed: sliding speed in m/s, pressure in N/mm², work in J/mm² and power in W/mm², with blanks between.
    ///
    /// # Errors
    /// When the text is not four numbers above nothing.
    pub fn read(text: &str) -> Result<Self, LimitsError> {
        let number = |part: &str| number::read_decimal(&part.replace(',', ".")).filter(|value| *value > 0.0);
        let numbers: Option<Vec<f64>> = text.split_whitespace().map(number).collect();
        match numbers.as_deref() {
            Some([sliding_m_per_s, pressure_n_per_mm2, work_j_per_mm2, power_w_per_mm2]) => Ok(Self {
                name: Self::OWN,
                sliding_m_per_s: *sliding_m_per_s,
                pressure_n_per_mm2: *pressure_n_per_mm2,
                work_j_per_mm2: *work_j_per_mm2,
                power_w_per_mm2: *power_w_per_mm2,
            }),
            _ => Err(LimitsError(text.trim().to_owned())),
        }
    }

    /// Every limit that a stress passes.
    pub fn exceeded(&self, stress: &Stress) -> Vec<Exceeded> {
        let rows = [
            ("sliding speed", "m/s", stress.sliding.value, self.sliding_m_per_s),
            ("pressure", "N/mm²", stress.pressure.value / 1e6, self.pressure_n_per_mm2),
            ("work per lining area", "J/mm²", stress.work.value / 1e6, self.work_j_per_mm2),
            ("power per lining area", "W/mm²", stress.power.value / 1e6, self.power_w_per_mm2),
        ];
        let over = rows.into_iter().filter(|(_, _, value, limit)| value > limit);
        over.map(|(word, unit, value, limit)| Exceeded { word, unit, value, limit }).collect()
    }
}

/// A text that is no set of limits: what was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LimitsError(pub String);

explain! { LimitsError:
    Self(text) => format!("“{}” does not give four limits of a lining", number::clip(text)),
        "type sliding speed in m/s, pressure in N/mm², work in J/mm² and power in W/mm², such as 5 3 0.09 0.45";
}

/// A limit that was passed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exceeded {
    /// Which figure.
    pub word: &'static str,
    /// The unit of both values.
    pub unit: &'static str,
    /// What it comes to.
    pub value: f64,
    /// What is allowed.
    pub limit: f64,
}

impl Explain for Exceeded {
    fn what(&self) -> String {
        let (value, limit) = (number::show(self.value, 2), number::show(self.limit, 2));
        format!("the synchroniser's {} is {value} {unit}, over the {limit} {unit} set as its limit", self.word, unit = self.unit)
    }

    fn what_to_do(&self) -> String {
        "shift at a lower rpm, allow more time, or fit a larger or better lined ring".into()
    }
}
