//! Which counts are worth a trial: rings of brightness around many centres, each as the shares of its whole turns.

use std::fmt;
use std::ops::RangeInclusive;
use std::sync::Arc;

use rustfft::num_complex::Complex;
use rustfft::{Fft, FftPlanner};

use super::field::Field;
use super::ring::{AROUND, Ring, TURNS};
use crate::sound::recording::places::real;

/// Counts that are tried at all.
pub(super) const COUNTS: RangeInclusive<usize> = 8..=72;
/// How many guesses are followed up.
const GUESSES: usize = 6;
/// How many of each list are kept for a centre.
const KEPT: usize = 4;
/// Steps of the centre each way, and their length in radii.
const STEPS: i32 = 4;
const STEP: f64 = 0.02;
/// How far apart two centres of counts beside one another must lie, in radii.
const APART: f64 = 0.03;
/// Rings for a centre, with the innermost and the outermost in radii of the placed circle.
const RINGS: usize = 22;
const INNERMOST: f64 = 0.74;
const OUTERMOST: f64 = 1.06;
/// Turns that are no teeth but a picture that is lit from a side, or a centre beside the centre.
const LOW: usize = 4;
/// How a count gathers the shares of its neighbours, which a centre beside the centre gives to them.
const GATHER: [f64; 5] = [0.4, 0.8, 1.0, 0.8, 0.4];

/// A count, where it was seen, and how much of it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Guess {
    pub(super) teeth: usize,
    pub(super) ring: Ring,
    share: f64,
}

/// What was seen from the centres that were looked from.
#[derive(Clone)]
pub(super) struct Coarse {
    fft: Arc<dyn Fft<f64>>,
    seen: Vec<Guess>,
    apart: f64,
}

impl fmt::Debug for Coarse {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_struct("Coarse").field("seen", &self.seen).finish_non_exhaustive()
    }
}

impl Coarse {
    pub(super) fn new(field: &Field) -> Self {
        Self { fft: FftPlanner::new().plan_fft_forward(AROUND), seen: Vec::new(), apart: APART * field.placed.radius }
    }

    /// The centres to look from: a disc around the placed one.
    pub(super) fn centres(field: &Field) -> Vec<(f64, f64)> {
        let all = (-STEPS..=STEPS).flat_map(|down| (-STEPS..=STEPS).map(move |across| (f64::from(across), f64::from(down))));
        let near = all.filter(|(across, down)| across.hypot(*down) < f64::from(STEPS) + 0.1);
        let step = STEP * field.placed.radius;
        near.map(|(across, down)| (field.placed.x + across * step, field.placed.y + down * step)).collect()
    }

    /// Looks at rings around a centre, and keeps the counts that show most: each by its own share, and with those of its neighbours.
    pub(super) fn look(&mut self, field: &Field, (x, y): (f64, f64)) {
        let radius = |ring: usize| field.placed.radius * (INNERMOST + (OUTERMOST - INNERMOST) * real(ring) / real(RINGS - 1));
        let rings: Vec<Vec<f64>> = (0..RINGS).map(|ring| shares(field, &Ring::flat(x, y, radius(ring)), self.fft.as_ref())).collect();
        for of in [alone, gathered] {
            let of_count = |teeth: usize| {
                let along: Vec<f64> = rings.iter().map(|shares| of(shares, teeth)).collect();
                let thirds = along.windows(3).map(|three| three.iter().sum::<f64>() / 3.0).enumerate();
                let (place, share) = thirds.max_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or_default();
                Guess { teeth, ring: Ring::flat(x, y, radius(place + 1)), share }
            };
            let mut best: Vec<Guess> = COUNTS.map(of_count).collect();
            best.sort_by(|a, b| b.share.total_cmp(&a.share));
            self.seen.extend(best.into_iter().take(KEPT));
        }
    }

    /// The likeliest counts.
    pub(super) fn guesses(&self) -> Vec<Guess> {
        let mut all = self.seen.clone();
        all.sort_by(|a, b| b.share.total_cmp(&a.share));
        chosen(&all, self.apart)
    }
}

/// The first few; of counts beside one another only two, from centres that are apart.
fn chosen(all: &[Guess], apart: f64) -> Vec<Guess> {
    let mut chosen: Vec<Guess> = Vec::new();
    for guess in all {
        let alike = chosen.iter().filter(|other| other.teeth.abs_diff(guess.teeth) <= 1);
        let is_new = alike.clone().all(|other| (other.ring.x - guess.ring.x).hypot(other.ring.y - guess.ring.y) >= apart);
        if is_new && alike.count() < 2 {
            chosen.push(*guess);
        }
        if chosen.len() == GUESSES {
            break;
        }
    }
    chosen
}

/// The share of each number of turns in the brightness around a ring.
fn shares(field: &Field, ring: &Ring, fft: &dyn Fft<f64>) -> Vec<f64> {
    let read = |turn: &(f64, f64)| {
        let (x, y) = ring.towards(*turn);
        Complex::from(field.at(ring.x + x, ring.y + y)[0])
    };
    let mut row: Vec<Complex<f64>> = TURNS.iter().map(read).collect();
    fft.process(&mut row);
    let mut powers: Vec<f64> = row.iter().take(AROUND / 2).map(Complex::norm_sqr).collect();
    powers.iter_mut().take(LOW + 1).for_each(|power| *power = 0.0);
    let sum: f64 = powers.iter().sum::<f64>().max(1e-9);
    powers.into_iter().map(|power| power / sum).collect()
}

fn alone(shares: &[f64], teeth: usize) -> f64 {
    shares.get(teeth).copied().unwrap_or(0.0)
}

fn gathered(shares: &[f64], teeth: usize) -> f64 {
    0.6 * shares.iter().skip(teeth - 2).zip(GATHER).map(|(share, weight)| share * weight).sum::<f64>()
}
