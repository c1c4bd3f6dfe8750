//! How a box is used: which gear is engaged for how long, how hard it is pulled, how fast the engine turns.
//!
//! The three cycles are common practice and from memory, no published source: they tell one box from another, and no owner drives by them.

/// What a car is used for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Duty {
    /// Roads, mostly in top.
    #[default]
    Road,
    /// Hill climbs and circuits.
    Hill,
    /// A trailer behind.
    Towing,
}

/// What torque teeth and bearings are judged at.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TorqueFrom {
    /// The one typed, else the engine's greatest.
    #[default]
    Engine,
    /// What the driven tyres hold in 1st: no more comes through the box for long, whatever the engine gives.
    Grip,
}

/// A share of the time in one gear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stint {
    /// Share of the time, 0 to 1.
    pub time: f64,
    /// Share of the torque that teeth and bearings are judged at.
    pub torque: f64,
    /// Share of the shift rpm.
    pub speed: f64,
}

const fn stint(time: f64, torque: f64, speed: f64) -> Stint {
    Stint { time, torque, speed }
}

impl Duty {
    /// Top, the next, the one below, and all the others together.
    pub fn from_top(self) -> [Stint; 4] {
        match self {
            Self::Road => [stint(0.60, 0.30, 0.45), stint(0.22, 0.45, 0.50), stint(0.12, 0.60, 0.55), stint(0.06, 0.80, 0.60)],
            Self::Hill => [stint(0.10, 0.80, 0.80), stint(0.35, 0.90, 0.85), stint(0.35, 0.95, 0.85), stint(0.20, 1.00, 0.85)],
            Self::Towing => [stint(0.40, 0.60, 0.55), stint(0.30, 0.75, 0.60), stint(0.18, 0.85, 0.65), stint(0.12, 0.95, 0.65)],
        }
    }

    /// The cycle of a box with so many gears, from first up; all times together are the whole. A box of fewer than four has the others' time
    /// shared out among its gears.
    ///
    /// ```
    /// use layshaft::toothload::duty::Duty;
    /// // Of five gears the lower two share the last 6 % of the time.
    /// let times: Vec<f64> = Duty::Road.over(5).iter().map(|stint| stint.time).collect();
    /// assert_eq!(times, [0.03, 0.03, 0.12, 0.22, 0.60]);
    /// ```
    pub fn over(self, gears: usize) -> Vec<Stint> {
        let [top, next, below, others] = self.from_top();
        let upper = [top, next, below];
        let others = Stint { time: others.time / count(gears.saturating_sub(upper.len()).max(1)), ..others };
        let all = (0..gears).rev().map(|from_top| upper.get(from_top).copied().unwrap_or(others));
        let whole: f64 = if gears > upper.len() { 1.0 } else { all.clone().map(|stint| stint.time).sum() };
        all.map(|stint| Stint { time: stint.time / whole, ..stint }).collect()
    }
}

/// A count of gears as a number.
fn count(gears: usize) -> f64 {
    u32::try_from(gears).map_or(f64::INFINITY, f64::from)
}
