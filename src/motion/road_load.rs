//! What holds the car back at a speed: rolling resistance, the grade and the air, as one quadratic in speed.

/// Road load on one grade: `level + linear·v + square·v²`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct RoadLoad {
    /// Rolling resistance at a crawl, and the grade (N).
    pub(super) level: f64,
    /// What rolling resistance grows by with speed (N per m/s).
    pub(super) linear: f64,
    /// The air (N per (m/s)²).
    pub(super) square: f64,
}

impl RoadLoad {
    /// Road load (N) at a speed (m/s).
    pub(super) fn at(&self, v: f64) -> f64 {
        self.rolling_and_grade_at(v) + self.air_at(v)
    }

    /// The same at every speed by a factor.
    pub(super) fn scaled(&self, by: f64) -> Self {
        Self { level: by * self.level, linear: by * self.linear, square: by * self.square }
    }

    /// The part that is not the air's (N).
    pub(super) fn rolling_and_grade_at(&self, v: f64) -> f64 {
        self.level + self.linear * v
    }

    /// The part that grows with speed (N).
    pub(super) fn growing_at(&self, v: f64) -> f64 {
        self.linear * v + self.air_at(v)
    }

    /// The air's part (N).
    pub(super) fn air_at(&self, v: f64) -> f64 {
        self.square * v * v
    }
}
