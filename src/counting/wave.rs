//! How much of a ring repeats so many times around: the score of a trial count, and its phase all around.
//!
//! Seven circles from root to tip are read, each in [`SEGMENTS`] parts. In each part the share of the trial count is taken, and then all
//! parts are added up, so that a phase that slips by a tooth once around cancels, and a part that is hidden only lowers the sum. Brightness
//! is added squared, since relief lit from a side changes its sign around the gear; edges are added with the sign of root or tip, which
//! tells a count from its neighbours.

use std::f64::consts::TAU;
use std::iter::Sum;
use std::ops::{AddAssign, Mul};

use rustfft::num_complex::Complex;

use super::field::{Field, Texel};
use super::ring::{AROUND, Ring, TURNS};
use crate::sound::recording::places::{below, near, real};

/// Parts of a ring.
pub(super) const SEGMENTS: usize = 64;
/// Up to so many teeth, every other place around is enough.
const FEW: usize = 32;
/// Circles from root to tip.
const CIRCLES: usize = 7;
/// What mere texture scores after it was fitted, over the root of the count: fewer teeth are fewer parts that must agree.
const TEXTURE: f64 = 0.45;

/// A trial count, with what is the same for every ring it is tried on.
pub(super) struct Wave {
    pub(super) teeth: usize,
    /// Places in a part.
    length: usize,
    /// One turn of the pointer for each tooth.
    pointer: Vec<Complex<f64>>,
    /// How a part is mixed with its neighbours, about three teeth wide.
    kernel: Vec<f64>,
    /// Half the places that are smoothed over.
    half: usize,
}

/// What is read of a ring for a trial count.
pub(super) struct Reading {
    /// How much of brightness and edges repeats so often, 0 to about 2; more than nothing is more than texture.
    pub(super) score: f64,
    /// The edges' share in each part, with its phase: 1 is all of it.
    pub(super) parts: Vec<Complex<f64>>,
}

impl Wave {
    pub(super) fn new(teeth: usize) -> Self {
        let length = if teeth <= FEW { AROUND / 2 } else { AROUND } / SEGMENTS;
        let places = length * SEGMENTS;
        let angle = |place: usize| -TAU * real(place * teeth % places) / real(places);
        let pointer = (0..places).map(|place| Complex::cis(angle(place))).collect();
        let width = 0.6 * (3.0 * real(SEGMENTS) / (2.0 * real(teeth))).max(1.0);
        let reach = near((2.5 * width).ceil()).min(SEGMENTS / 2 - 1);
        let kernel: Vec<f64> = (0..=2 * reach).map(|place| (-0.5 * ((real(place) - real(reach)) / width).powi(2)).exp()).collect();
        let sum: f64 = kernel.iter().sum();
        let kernel = kernel.into_iter().map(|weight| weight / sum).collect();
        Self { teeth, length, pointer, kernel, half: below(real(places) / (10.0 * real(teeth))) }
    }

    /// The radius of the tips over that half-way up the teeth: an addendum is about a module.
    pub(super) fn tips(&self) -> f64 {
        1.0 + 2.0 / real(self.teeth)
    }

    /// What a ring says to this count.
    pub(super) fn read(&self, field: &Field, ring: &Ring) -> Reading {
        let mut light = Vec::with_capacity(CIRCLES);
        let mut light_energy = vec![0.0; SEGMENTS];
        let (mut edges, mut edge_energy, mut weights) = (vec![Complex::ZERO; SEGMENTS], vec![0.0; SEGMENTS], 0.0);
        for (height, row) in self.circles(field, ring) {
            let weight = height.signum() * height.abs().powf(0.7);
            weights += weight * weight;
            let shares = self.shares(&row);
            add(&mut edges, shares.iter().map(|share| share.edges * weight));
            add(&mut edge_energy, shares.iter().map(|share| share.edge_energy));
            add(&mut light_energy, shares.iter().map(|share| share.light_energy));
            light.push(shares.iter().map(|share| share.light).collect::<Vec<_>>());
        }
        let light_energy = self.floored(&light_energy);
        let squares = light.iter().flat_map(|row| squares(&self.mixed(row), &light_energy));
        let scale = (2.0 / real(self.length)).sqrt();
        let parts: Vec<Complex<f64>> = self
            .mixed(&edges)
            .into_iter()
            .zip(self.floored(&edge_energy))
            .map(|(share, energy)| share * scale / (weights * energy).sqrt())
            .collect();
        let of_light = 2.0 / real(self.length) * mean(squares);
        Reading { score: of_light + mean(parts.iter().copied()) - TEXTURE / real(self.teeth).sqrt(), parts }
    }

    /// The circles from root to tip: how high each lies, −1 to 1, and what stands around it.
    fn circles(&self, field: &Field, ring: &Ring) -> impl Iterator<Item = (f64, Vec<Texel>)> {
        let towards: Vec<(f64, f64)> = TURNS.iter().step_by(AROUND / self.pointer.len()).map(|turn| ring.towards(*turn)).collect();
        (0..CIRCLES).map(move |circle| {
            let height = (real(circle) - 3.0) / 3.0;
            let radii = 1.0 + 1.9 * height / real(self.teeth);
            let row: Vec<Texel> = towards.iter().map(|(x, y)| field.at(ring.x + radii * x, ring.y + radii * y)).collect();
            (height, self.smoothed(row))
        })
    }

    /// How much of the brightness of each circle repeats so often, from root to tip.
    pub(super) fn by_circle(&self, field: &Field, ring: &Ring) -> Vec<f64> {
        let of_circle = |(_, row): (f64, Vec<Texel>)| {
            let shares = self.shares(&row);
            let light: Vec<Complex<f64>> = shares.iter().map(|share| share.light).collect();
            let energy: Vec<f64> = shares.iter().map(|share| share.light_energy).collect();
            2.0 / real(self.length) * mean(squares(&self.mixed(&light), &self.floored(&energy)).into_iter())
        };
        self.circles(field, ring).map(of_circle).collect()
    }

    /// A row of places, each the mean of those about a fifth of a tooth around it: thin edges of large teeth would lose to their overtones.
    fn smoothed(&self, row: Vec<Texel>) -> Vec<Texel> {
        if self.half == 0 {
            return row;
        }
        let many = real(2 * self.half + 1);
        let (first, last) = (row.get(..self.half + 1).unwrap_or_default(), row.get(row.len() - self.half..).unwrap_or_default());
        let mut sum = [0.0; 2];
        for [a, b] in last.iter().chain(first) {
            sum = [sum[0] + a, sum[1] + b];
        }
        let leave = last.iter().chain(&row);
        let come = row.iter().skip(self.half + 1).chain(first);
        leave
            .zip(come)
            .take(row.len())
            .map(|(leave, come)| {
                let mean = [sum[0] / many, sum[1] / many];
                sum = [sum[0] + come[0] - leave[0], sum[1] + come[1] - leave[1]];
                mean
            })
            .collect()
    }

    /// What each part of a row has of the count.
    fn shares(&self, row: &[Texel]) -> Vec<Share> {
        let of_part = |(row, pointer): (&[Texel], &[Complex<f64>])| {
            let mut share = Share::default();
            for ([light, edge], pointer) in row.iter().zip(pointer) {
                share.light += pointer * light;
                share.light_energy += light * light;
                share.edges += pointer * edge;
                share.edge_energy += edge * edge;
            }
            share
        };
        row.chunks_exact(self.length).zip(self.pointer.chunks_exact(self.length)).map(of_part).collect()
    }

    /// Each part mixed with its neighbours.
    fn mixed<T: Copy + Mul<f64, Output = T> + Sum<T>>(&self, parts: &[T]) -> Vec<T> {
        let reach = self.kernel.len() / 2;
        let row: Vec<T> = parts.iter().cycle().skip(SEGMENTS - reach).take(SEGMENTS + 2 * reach).copied().collect();
        row.windows(self.kernel.len()).map(|near| near.iter().zip(&self.kernel).map(|(part, weight)| *part * *weight).sum()).collect()
    }

    /// The energy of each part, mixed, and never next to nothing.
    fn floored(&self, energy: &[f64]) -> Vec<f64> {
        let floor = 0.15 * energy.iter().sum::<f64>() / real(SEGMENTS) + 1e-9;
        self.mixed(energy).into_iter().map(|energy| energy + floor).collect()
    }
}

/// What one part of a circle has of a count, and its energy.
#[derive(Clone, Copy, Default)]
struct Share {
    light: Complex<f64>,
    light_energy: f64,
    edges: Complex<f64>,
    edge_energy: f64,
}

fn add<T: AddAssign>(sums: &mut [T], all: impl Iterator<Item = T>) {
    sums.iter_mut().zip(all).for_each(|(sum, one)| *sum += one);
}

/// Squared, so that a change of sign between light and dark does not matter, over the energy.
fn squares(shares: &[Complex<f64>], energy: &[f64]) -> Vec<Complex<f64>> {
    shares.iter().zip(energy).map(|(share, energy)| share * share / energy).collect()
}

/// How large the mean over all parts of a ring is.
fn mean(parts: impl Iterator<Item = Complex<f64>>) -> f64 {
    (parts.sum::<Complex<f64>>() / real(SEGMENTS)).norm()
}
