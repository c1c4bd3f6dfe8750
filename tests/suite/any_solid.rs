//! Solids on a bench: true involute gears, and discs, flanges, bearings, nuts and wheels, as outlines through a thickness; and the dice
//! they are thrown with.

use std::f64::consts::{PI, TAU};

/// Random numbers from a seed (the splitmix64 generator of Steele, Lea and Flood, 2014).
#[derive(Debug)]
pub(super) struct Dice(u64);

impl Dice {
    pub(super) fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x5851_f42d_4c95_7f2d)
    }

    fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// From 0 to 1.
    pub(super) fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub(super) fn within(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }

    pub(super) fn whole(&mut self, least: usize, most: usize) -> usize {
        least + (self.bits() % (most - least + 1) as u64) as usize
    }

    pub(super) fn chance(&mut self, of: f64) -> bool {
        self.share() < of
    }

    /// About normal, with a deviation of 1.
    pub(super) fn normal(&mut self) -> f64 {
        (0..4).map(|_| self.share() - 0.5).sum::<f64>() * 3f64.sqrt()
    }
}

/// What stands on a bench, seen from above; its radius is 1.
#[derive(Debug)]
pub(super) enum Outline {
    /// Half the angle of a tooth at radii from root to tip, the tip being 1.
    Gear {
        teeth: f64,
        root: f64,
        half: Vec<f64>,
        chipped: Vec<(f64, f64)>,
    },
    Disc,
    /// A ring of round holes or balls: how many, how far out, how large.
    Holes(f64, f64, f64),
    Balls(f64, f64, f64),
    Sides(f64),
    Spokes(f64),
}

/// An outline through a thickness.
#[derive(Debug)]
pub(super) struct Solid {
    pub(super) outline: Outline,
    pub(super) radius: f64,
    pub(super) bore: f64,
    pub(super) turned: f64,
    pub(super) bottom: f64,
    pub(super) top: f64,
    pub(super) bright: f64,
    /// How strong the marks of the lathe are, and how fine.
    pub(super) marks: (f64, f64),
}

pub(super) fn long(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}

fn involute(angle: f64) -> f64 {
    angle.tan() - angle
}

impl Outline {
    /// A true involute gear: half the angle of a tooth at a radius is that at the pitch circle, and the difference of the involutes
    /// (ISO 21771:2007, 4.6); below the base circle the flank goes straight in.
    pub(super) fn gear(teeth: usize, dice: &mut Dice) -> Self {
        let z = teeth as f64;
        let pressure = [14.5f64, 20.0, 20.0, 25.0][dice.whole(0, 3)].to_radians();
        let shift = if teeth < 17 { dice.within(0.2, 0.5) } else { dice.within(-0.2, 0.4) };
        let (addendum, dedendum) = if dice.chance(0.2) { (0.8, 1.0) } else { (1.0, 1.25) };
        let (tip, root, base) = (z / 2.0 + addendum + shift * 0.8, z / 2.0 - dedendum + shift, z / 2.0 * pressure.cos());
        let thin = dice.within(0.0, 0.08);
        let at_pitch = (PI / 2.0 - thin + 2.0 * shift * pressure.tan()) / z;
        let half = |radius: f64| {
            let angle = if radius <= base { 0.0 } else { (base / radius).acos() };
            let fillet = (1.0 - (radius - root) / 0.35).max(0.0).powi(2) * 0.35 / radius;
            at_pitch + involute(pressure) - involute(angle) + fillet
        };
        let table = (0..=40).map(|place| half(root + (tip - root) * f64::from(place) / 40.0).max(0.0)).collect();
        Self::Gear { teeth: z, root: root / tip, half: table, chipped: Vec::new() }
    }

    /// How far a place lies within the outline of radius 1; below nothing it lies outside.
    fn within(&self, x: f64, y: f64, turned: f64) -> f64 {
        let radius = long(x, y);
        let angle = || y.atan2(x) - turned;
        match self {
            Self::Gear { teeth, root, half, chipped } => {
                if radius >= 1.0 || radius <= *root {
                    return if radius >= 1.0 { 1.0 - radius } else { root - radius + 0.02 };
                }
                let (turn, pitch) = (angle(), TAU / teeth);
                let off = turn - pitch * (turn / pitch).round();
                let place = (radius - root) / (1.0 - root) * 40.0;
                let (low, share) = (place.floor(), place.fract());
                let at = |place: f64| half[(place as usize).min(40)];
                let mut width = at(low) * (1.0 - share) + at(low + 1.0) * share;
                for (at, less) in chipped {
                    if (turn - at).sin().abs() < 0.5 * pitch && (turn - at).cos() > 0.0 && radius > root + (1.0 - root) * less {
                        width = -0.1;
                    }
                }
                ((width - off.abs()) * radius).min(1.0 - radius)
            }
            Self::Disc => 1.0 - radius,
            Self::Holes(many, out, large) | Self::Balls(many, out, large) => {
                let (turn, pitch) = (angle(), TAU / many);
                let off = turn - pitch * (turn / pitch).round();
                let hole = long(radius * off.cos() - out, radius * off.sin()) - large;
                if matches!(self, Self::Holes(..)) {
                    (1.0 - radius).min(hole)
                } else {
                    let between = radius > out - large * 0.75 && radius < out + large * 0.75;
                    if between { -hole } else { 1.0 - radius }
                }
            }
            Self::Sides(many) => {
                let (turn, pitch) = (angle(), TAU / many);
                let off = turn - pitch * (turn / pitch).round();
                (PI / many).cos() - radius * off.cos()
            }
            Self::Spokes(many) => {
                let (turn, pitch) = (angle(), TAU / many);
                let off = turn - pitch * (turn / pitch).round();
                if (0.3..=0.85).contains(&radius) { (0.2 - off.abs()) * radius } else { 1.0 - radius }
            }
        }
    }
}

impl Solid {
    pub(super) fn within(&self, x: f64, y: f64) -> f64 {
        let scaled = self.radius * self.outline.within(x / self.radius, y / self.radius, self.turned);
        scaled.min(long(x, y) - self.bore)
    }
}

/// Uneven brightness without a pattern, about −1 to 1: values at the corners of squares, mixed between them.
pub(super) fn uneven(x: f64, y: f64, seed: u64) -> f64 {
    let (left, top) = (x.floor(), y.floor());
    let corner = |dx: f64, dy: f64| {
        let mut dice = Dice::new(seed ^ (((left + dx) as i64 as u64) << 32) ^ ((top + dy) as i64 as u64 & 0xffff_ffff));
        dice.within(-1.0, 1.0)
    };
    let soft = |share: f64| share * share * (3.0 - 2.0 * share);
    let (across, down) = (soft(x - left), soft(y - top));
    let row = |dy: f64| corner(0.0, dy) * (1.0 - across) + corner(1.0, dy) * across;
    row(0.0) * (1.0 - down) + row(1.0) * down
}

pub(super) fn rough(x: f64, y: f64, seed: u64) -> f64 {
    (uneven(x, y, seed) + 0.5 * uneven(2.1 * x, 2.1 * y, seed + 1) + 0.25 * uneven(4.3 * x, 4.3 * y, seed + 2)) / 1.4
}
