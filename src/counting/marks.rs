//! Where every tooth is: seen, or taken to be there because the others say so.

use std::f64::consts::TAU;

use rustfft::num_complex::Complex;

use super::field::Field;
use super::ring::Ring;
use super::wave::{SEGMENTS, Wave};
use crate::sound::recording::places::{below, real};

/// A part is seen where its edges' share is no less, and its phase no further from that of all, in rad.
const LEAST: f64 = 0.18;
const MOST_OFF: f64 = TAU / 6.0;
/// A mark stands a little outside the tips, in addenda.
const OUTSIDE: f64 = 2.2;

/// A tooth on the picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Where it stands, in pixels of the whole picture.
    pub x: f64,
    /// Where it stands, in pixels of the whole picture.
    pub y: f64,
    /// Whether it is seen; else it is taken to be there.
    pub is_seen: bool,
}

/// How a count sits on a ring.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Seat {
    /// Where the first tooth stands, in rad.
    first: f64,
    /// Which parts of the ring show teeth.
    seen: Vec<bool>,
}

impl Seat {
    pub(super) fn of(field: &Field, wave: &Wave, ring: &Ring) -> Self {
        let parts = wave.read(field, ring).parts;
        let all: Complex<f64> = parts.iter().sum();
        let seen = parts.iter().map(|part| part.norm() > LEAST && (part * all.conj()).arg().abs() < MOST_OFF).collect();
        Self { first: -all.arg() / real(wave.teeth), seen }
    }

    /// The share of the ring where teeth are seen.
    pub(super) fn share(&self) -> f64 {
        real(self.seen.iter().filter(|is_seen| **is_seen).count()) / real(SEGMENTS)
    }

    /// The longest stretch without a tooth seen, as a share of the ring.
    pub(super) fn longest_gap(&self) -> f64 {
        let (mut gap, mut longest) = (0, 0);
        for is_seen in self.seen.iter().chain(&self.seen) {
            gap = if *is_seen { 0 } else { gap + 1 };
            longest = longest.max(gap);
        }
        real(longest.min(SEGMENTS)) / real(SEGMENTS)
    }

    /// The mark of every tooth, clockwise on the picture.
    pub(super) fn marks(&self, field: &Field, ring: &Ring, teeth: usize) -> Vec<Mark> {
        let mark = |tooth: usize| {
            let turn = (self.first / TAU + real(tooth) / real(teeth)).rem_euclid(1.0);
            let (x, y) = field.in_whole(ring.place(TAU * turn, 1.0 + OUTSIDE / real(teeth)));
            let is_seen = self.seen.get(below(turn * real(SEGMENTS)).min(SEGMENTS - 1)).copied().unwrap_or(false);
            Mark { x, y, is_seen }
        };
        (0..teeth).map(mark).collect()
    }
}
