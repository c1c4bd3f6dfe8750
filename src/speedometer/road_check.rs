//! A road check: what the dial showed against what was true, and what that says about gears and dial.

use crate::units::{Length, Time, Velocity, common};

/// The dial beside the truth, at one steady speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// What the dial showed.
    pub dial: Velocity,
    /// What was true: by a satellite receiver, or by mile posts and a watch.
    pub truth: Velocity,
}

impl Reading {
    /// A reading at a steady dial, timed between posts: true speed = way / time (3,600 / seconds in mph over a mile).
    pub fn timed(dial: Velocity, way: Length, time: Time) -> Self {
        Self { dial, truth: way / time }
    }
}

/// What the readings say is wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Nothing that these readings can show.
    True,
    /// A steady share: gears, tyre or axle.
    Ratio,
    /// A steady amount: a bent needle or a dial off its zero.
    Offset,
    /// Both.
    RatioAndOffset,
    /// The readings do not lie on a line: a sticking, slipping or swinging dial, or a slip in writing.
    Unsteady,
    /// One speed only: the share is known there, but not whether it is a share or an amount.
    OneSpeed,
}

/// What least squares makes of the readings.
#[derive(Clone, Debug, PartialEq)]
pub struct RoadCheck {
    /// What is wrong.
    pub verdict: Verdict,
    /// Dial over true for the gears: the slope of the line where an offset was found, else of the line through zero.
    pub ratio: f64,
    /// What the dial shows too much whatever the speed; zero unless the verdict has an offset.
    pub offset: Velocity,
    /// Dial over true by least squares through zero: Σdv / Σv².
    pub ratio_through_zero: f64,
    /// The line by least squares with its offset; `None` where all speeds are equal.
    pub line: Option<Line>,
    /// What each dial reading is above the fit that was taken, in the order given.
    pub residuals: Vec<Velocity>,
    /// Root of the mean square of the residuals.
    pub scatter: Velocity,
    /// Readings at which the dial showed less than at a lower true speed, by their place.
    pub fell_back: Vec<usize>,
}

/// A line dial = slope × true + offset.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// What the dial gains for each unit of true speed: 1 where gears, tyre and axle are right.
    pub slope: f64,
    /// What it shows too much at every speed.
    pub offset: Velocity,
    /// The standard error of the slope, from the greater of the scatter and [`READ_TO_M_PER_S`].
    pub slope_error: f64,
    /// The standard error of the offset.
    pub offset_error: Velocity,
}

/// How closely a dial is read: half a mile per hour, one standard deviation. Common practice, no published source.
pub const READ_TO_M_PER_S: f64 = 0.223_52;

/// An error is believed when it is more than so many of its standard errors.
const BELIEVED: f64 = 2.0;

/// Residuals of more than so many times [`READ_TO_M_PER_S`] do not come from reading the dial.
const UNSTEADY: f64 = 4.0;

/// Why readings say nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoadCheckError {
    /// There are none.
    None,
    /// A speed that is no speed: its place, from 1.
    NotASpeed(usize),
}

explain! { RoadCheckError:
    Self::None => "no reading is given", "type at least one reading of the dial with the true speed, better three at speeds well apart";
    Self::NotASpeed(place) => format!("reading {place} is no speed above zero"), "type the dial and the true speed, both above zero";
}

/// What the readings say about gears and dial.
///
/// Model: dial = ratio × true + offset. The line through zero and the free line are fitted by least squares. An offset is believed
/// where the free line's offset is more than twice its standard error; a ratio likewise. Readings off the taken line by more than
/// 2 mph, or a dial that fell back while the car went faster by more than reading error, are called unsteady.
/// One speed tells a ratio there and no more.
/// Source: least squares, any textbook of statistics; thresholds are common practice without published source.
///
/// # Errors
/// When there is no reading, or a speed is not a number above zero.
///
/// ```
/// use layshaft::speedometer::{Reading, Verdict, road_check::RoadCheckError, solve_road_check};
/// use layshaft::units::unit;
/// let reading = |dial, truth| Reading { dial: unit::MPH.of(dial), truth: unit::MPH.of(truth) };
/// let check = solve_road_check(&[reading(40.0, 38.0), reading(60.0, 57.0)])?;
/// assert_eq!(check.verdict, Verdict::Ratio);
/// // 19 teeth × 60/57
/// assert_eq!(check.driven_wanted(19).round(), 20.0);
/// # Ok::<(), RoadCheckError>(())
/// ```
pub fn solve_road_check(readings: &[Reading]) -> Result<RoadCheck, RoadCheckError> {
    let points = points(readings)?;
    let through_zero = through_zero(&points);
    let line = free_line(&points);
    let offset_believed = line.is_some_and(|line| line.offset.abs() > line.offset_error * BELIEVED);
    let (ratio, offset) = match line {
        Some(line) if offset_believed => (line.slope, line.offset.value),
        _ => (through_zero.0, 0.0),
    };
    let residuals: Vec<f64> = points.iter().map(|(truth, dial)| dial - ratio * truth - offset).collect();
    let fell_back = fallen(&points);
    let ratio_error = match line {
        Some(line) if offset_believed => line.slope_error,
        _ => through_zero.1,
    };
    let unsteady = !fell_back.is_empty() || residuals.iter().any(|residual| residual.abs() > UNSTEADY * READ_TO_M_PER_S) || ratio <= 0.0;
    let ratio_believed = (ratio - 1.0).abs() > BELIEVED * ratio_error;
    Ok(RoadCheck {
        verdict: verdict(unsteady, line.is_none(), (ratio_believed, offset_believed)),
        ratio,
        offset: common::metres_per_second(offset),
        ratio_through_zero: through_zero.0,
        line,
        scatter: common::metres_per_second(root_mean_square(&residuals)),
        residuals: residuals.into_iter().map(common::metres_per_second).collect(),
        fell_back,
    })
}

fn verdict(unsteady: bool, one_speed: bool, (ratio, offset): (bool, bool)) -> Verdict {
    match (ratio, offset) {
        _ if unsteady => Verdict::Unsteady,
        _ if one_speed => Verdict::OneSpeed,
        (true, true) => Verdict::RatioAndOffset,
        (true, false) => Verdict::Ratio,
        (false, true) => Verdict::Offset,
        (false, false) => Verdict::True,
    }
}

/// True and dial speed of each reading, m/s.
fn points(readings: &[Reading]) -> Result<Vec<(f64, f64)>, RoadCheckError> {
    if readings.is_empty() {
        return Err(RoadCheckError::None);
    }
    let point = |(at, reading): (usize, &Reading)| {
        let (truth, dial) = (reading.truth.value, reading.dial.value);
        let fine = truth.is_finite() && dial.is_finite() && truth > 0.0 && dial > 0.0;
        if fine { Ok((truth, dial)) } else { Err(RoadCheckError::NotASpeed(at + 1)) }
    };
    readings.iter().enumerate().map(point).collect()
}

/// Slope of the line through zero and its standard error.
fn through_zero(points: &[(f64, f64)]) -> (f64, f64) {
    let squares: f64 = points.iter().map(|(truth, _)| truth * truth).sum();
    let slope = points.iter().map(|(truth, dial)| truth * dial).sum::<f64>() / squares;
    let residuals: Vec<f64> = points.iter().map(|(truth, dial)| dial - slope * truth).collect();
    (slope, READ_TO_M_PER_S.max(root_mean_square(&residuals)) / squares.sqrt())
}

/// The line with an offset; `None` where the true speeds are equal, to a thousandth.
#[expect(clippy::cast_precision_loss, reason = "a road check has a handful of readings")]
fn free_line(points: &[(f64, f64)]) -> Option<Line> {
    let count = points.len() as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / count;
    let (mean_truth, mean_dial) = (mean(|point| point.0), mean(|point| point.1));
    let spread: f64 = points.iter().map(|(truth, _)| (truth - mean_truth).powi(2)).sum();
    if spread <= count * (1e-3 * mean_truth).powi(2) {
        return None;
    }
    let slope = points.iter().map(|(truth, dial)| (truth - mean_truth) * (dial - mean_dial)).sum::<f64>() / spread;
    let offset = mean_dial - slope * mean_truth;
    let residuals: Vec<f64> = points.iter().map(|(truth, dial)| dial - slope * truth - offset).collect();
    let scatter = READ_TO_M_PER_S.max(root_mean_square(&residuals));
    let offset_error = scatter * (1.0 / count + mean_truth * mean_truth / spread).sqrt();
    Some(Line {
        slope,
        offset: common::metres_per_second(offset),
        slope_error: scatter / spread.sqrt(),
        offset_error: common::metres_per_second(offset_error),
    })
}

#[expect(clippy::cast_precision_loss, reason = "a road check has a handful of readings")]
fn root_mean_square(values: &[f64]) -> f64 {
    (values.iter().map(|value| value * value).sum::<f64>() / values.len().max(1) as f64).sqrt()
}

/// Readings at which the dial showed clearly less than at a lower true speed.
fn fallen(points: &[(f64, f64)]) -> Vec<usize> {
    let lower_shown_more = |(truth, dial): (f64, f64)| {
        points.iter().any(|(other_truth, other_dial)| *other_truth < truth && *other_dial > dial + 2.0 * READ_TO_M_PER_S)
    };
    points.iter().enumerate().filter(|(_, point)| lower_shown_more(**point)).map(|(at, _)| at).collect()
}

impl RoadCheck {
    /// The driven count that mends the ratio, as a fraction of a tooth: a dial that reads high wants more teeth, N × ratio.
    pub fn driven_wanted(&self, fitted: u16) -> f64 {
        f64::from(fitted) * self.ratio
    }

    /// Whether the readings tell what the gears do: the share of a single speed, or that of a line they lie on.
    pub fn is_believed(&self) -> bool {
        self.verdict != Verdict::Unsteady
    }
}
