//! Made-up photographs of gears and of things that are none, from a seed: what a phone above a bench sees.
//!
//! Solids lie on a bench and are seen by a pinhole camera. Light comes from a side and from all round, with shadows; then come shine, dirt, chips, a hand, blur and noise.

#![expect(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss,
    reason = "counts of teeth and pixels are small, and pixels are not negative"
)]

use std::f64::consts::{PI, TAU};
use std::fmt::Write;

#[path = "any_solid.rs"]
mod any_solid;

use any_solid::{Dice, Outline, Solid, long, rough, uneven};

/// How hard a picture is, or that it shows no gear.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Level {
    /// As the page asks for it: flat, on paper that is lighter or darker, in soft light.
    Easy,
    /// Tilted up to 6°, on any ground, in light from a side; dirt, shine, a tooth chipped, a hand, a second ring may come.
    Medium,
    /// Tilted up to 10°, in hard light, on ground as bright as the gear; most of that comes, and a fifth hidden.
    Hard,
    /// Out of focus, dark, mostly hidden, or with teeth of a few pixels.
    Bad,
    NoGear,
}

/// A picture, with what was asked of it.
pub(crate) struct Made {
    pub width: usize,
    pub values: Vec<f64>,
    /// Teeth; none where it is no gear.
    pub teeth: Option<usize>,
    /// The circle as a person places it: centre and radius in pixels.
    pub placed: (f64, f64, f64),
    /// What it shows, in words.
    pub what: String,
    /// Pixels from tooth to tooth.
    pub pitch: f64,
}

/// What a bench looks like.
#[derive(Debug)]
enum Ground {
    Paper,
    Wood(f64),
    Metal,
}

/// What lies there, and how it is lit.
#[derive(Debug)]
struct Scene {
    solids: Vec<Solid>,
    bottom: f64,
    ground: Ground,
    ground_bright: f64,
    light: [f64; 3],
    direct: f64,
    ambient: f64,
    slope: (f64, f64),
    shine: Option<(f64, f64, f64, f64)>,
    dirt: f64,
    fingers: Vec<(f64, f64, f64)>,
    /// How much of the light from all round the gaps lose.
    closed: f64,
    seed: u64,
}

impl Scene {
    fn solid_at(&self, x: f64, y: f64, height: f64) -> Option<&Solid> {
        self.solids.iter().find(|solid| height <= solid.top && height >= solid.bottom && solid.within(x, y) > 0.0)
    }

    /// Whether the light's way from a place is stopped.
    fn is_shaded(&self, x: f64, y: f64, height: f64, spread: [f64; 2]) -> bool {
        let top = self.solids.iter().map(|solid| solid.top).fold(f64::MIN, f64::max);
        (1..=5).any(|step| {
            let up = (top - height) * (f64::from(step) - 0.5) / 5.0;
            let way = up / self.light[2];
            let (x, y) = (x + way * (self.light[0] + spread[0]), y + way * (self.light[1] + spread[1]));
            up > 1e-6 && self.solid_at(x, y, height + up).is_some()
        })
    }

    /// The brightness of a solid's face at a place.
    fn face(&self, solid: &Solid, x: f64, y: f64) -> f64 {
        let radius = long(x, y);
        let (strong, fine) = solid.marks;
        let marks = strong * (radius * fine + 2.0 * uneven(x * 3.0, y * 3.0, self.seed + 40)).sin()
            + 0.06 * rough(x * 6.0, y * 6.0, self.seed + 41);
        let shine =
            self.shine.map_or(0.0, |(sx, sy, size, strength)| strength * (-((x - sx).powi(2) + (y - sy).powi(2)) / (size * size)).exp());
        let dirt = if self.dirt > 0.0 { ((rough(x * 5.0, y * 5.0, self.seed + 42) - 0.75 + self.dirt) * 6.0).clamp(0.0, 1.0) } else { 0.0 };
        let bright = solid.bright * (1.0 + marks) * (self.ambient + self.direct * self.light[2]) + shine;
        bright * (1.0 - 0.75 * dirt)
    }

    fn bench(&self, x: f64, y: f64, spread: [f64; 2]) -> f64 {
        let texture = match self.ground {
            Ground::Paper => 0.02 * rough(x * 9.0, y * 9.0, self.seed + 50),
            Ground::Wood(turn) => {
                let (along, across) = (x * turn.cos() + y * turn.sin(), y * turn.cos() - x * turn.sin());
                0.25 * rough(along * 1.2, across * 14.0, self.seed + 51)
                    + 0.1 * (across * 9.0 + 2.0 * uneven(along, across, self.seed + 52)).sin()
            }
            Ground::Metal => 0.25 * rough(x * 4.0, y * 4.0, self.seed + 53) + 0.1 * rough(x * 20.0, y * 20.0, self.seed + 54),
        };
        let far = self.solids.iter().map(|solid| long(x, y) - solid.radius).fold(f64::MAX, f64::min);
        let open = 1.0 - self.closed * (1.0 - (far / 0.25).clamp(0.0, 1.0));
        let direct = if self.is_shaded(x, y, self.bottom, spread) { 0.0 } else { self.direct * self.light[2] };
        self.ground_bright * (1.0 + texture) * (self.ambient * open + direct)
    }

    /// The brightness of a side, darker the deeper it lies.
    fn side(&self, solid: &Solid, x: f64, y: f64, depth: f64) -> f64 {
        let step = 0.004;
        let (ax, ay) = (solid.within(x - step, y) - solid.within(x + step, y), solid.within(x, y - step) - solid.within(x, y + step));
        let steep = long(ax, ay).max(1e-9);
        let towards = ((ax * self.light[0] + ay * self.light[1]) / steep).max(0.0);
        solid.bright * (self.ambient * (0.75 - 0.4 * depth) + self.direct * towards)
    }

    fn finger(&self, x: f64, y: f64) -> Option<f64> {
        self.fingers.iter().find_map(|(angle, wide, reach)| {
            let (along, across) = (x * angle.cos() + y * angle.sin(), y * angle.cos() - x * angle.sin());
            let inside = if along < *reach { long(along - reach, across) } else { across.abs() };
            (inside < *wide).then(|| {
                0.62 * (1.0 - 0.45 * (across / wide).powi(2))
                    * (self.ambient + self.direct * 0.8)
                    * (1.0 + 0.05 * rough(x * 8.0, y * 8.0, self.seed + 60))
            })
        })
    }

    /// What a ray from the camera meets.
    fn seen(&self, camera: [f64; 3], ray: [f64; 3], spread: [f64; 2]) -> f64 {
        let at = |height: f64| {
            let way = (height - camera[2]) / ray[2];
            (camera[0] + way * ray[0], camera[1] + way * ray[1])
        };
        let (x, y) = at(0.0);
        let uneven_light = 1.0 + self.slope.0 * x + self.slope.1 * y;
        if let Some(finger) = self.finger(x, y) {
            return finger * uneven_light;
        }
        for solid in &self.solids {
            let (x, y) = at(solid.top);
            if long(x, y) > solid.radius + 1.0 {
                continue;
            }
            if solid.within(x, y) > 0.0 {
                let shade = if solid.top < -1e-6 && self.is_shaded(x, y, solid.top, spread) { 0.55 } else { 1.0 };
                return self.face(solid, x, y) * uneven_light * shade;
            }
            for step in 1..=6 {
                let depth = f64::from(step) / 6.0;
                let (x, y) = at(solid.top - (solid.top - solid.bottom) * depth);
                if solid.within(x, y) > 0.0 {
                    return self.side(solid, x, y, depth) * uneven_light;
                }
            }
        }
        let (x, y) = at(self.bottom);
        self.bench(x, y, spread) * uneven_light
    }
}

/// A picture of a level from a seed.
pub(crate) fn made(level: Level, seed: u64) -> Made {
    made_of(level, seed, false)
}

/// A picture of a level from a seed; `again` is a second one of the same gear on the same bench, turned by a third, with the hand elsewhere.
pub(crate) fn made_of(level: Level, seed: u64, again: bool) -> Made {
    let mut dice = Dice::new(seed);
    let hardness = match level {
        Level::Easy => 0.0,
        Level::Medium => 1.0,
        Level::Hard => 2.0,
        Level::Bad => 1.5,
        Level::NoGear => dice.within(0.0, 1.5),
    };
    let teeth = dice.whole(10, 60);
    let (mut scene, what) = scene(level, hardness, teeth, seed, &mut dice);
    let is_small = level == Level::Bad && dice.chance(0.4);
    let least = if is_small { 20.0 } else { ((11.0 - 1.5 * hardness) * real(teeth) / TAU).max(55.0) };
    let radius =
        if is_small { dice.within(least, 0.6 * real(teeth)) } else { dice.within(least, (185.0 - 40.0 * hardness).max(least + 5.0)) };
    if again {
        scene.solids.iter_mut().for_each(|solid| solid.turned += TAU / 3.0);
        scene.fingers.iter_mut().for_each(|(at, ..)| *at += 2.5);
        scene.seed += 77;
        dice = Dice::new(seed + 7_700_000);
    }
    let pitch = TAU * radius / real(teeth);
    let (width, values, placed) = taken(&scene, level, hardness, radius, &mut dice);
    Made { width, values, placed, teeth: (level != Level::NoGear).then_some(teeth), what, pitch }
}

/// The gear, with a ring above or below it where there is one; or something that is no gear.
fn solids(level: Level, hardness: f64, teeth: usize, bright: f64, dice: &mut Dice) -> (Vec<Solid>, String) {
    let thick = dice.within(0.12, 0.25 + 0.15 * hardness);
    let marks = (dice.within(0.0, 0.03 + 0.05 * hardness), dice.within(60.0, 300.0));
    let bore = dice.within(0.15, 0.45);
    let solid = |outline: Outline, radius: f64, (bottom, top): (f64, f64), turned: f64, bright: f64| Solid {
        outline,
        radius,
        bore,
        turned,
        bottom,
        top,
        bright,
        marks,
    };
    let turned = dice.within(0.0, TAU);
    if level == Level::NoGear {
        let (outline, name) = match dice.whole(0, 6) {
            0 => (Outline::Disc, "a disc"),
            1 => (Outline::Holes(real(dice.whole(4, 16)), dice.within(0.6, 0.85), dice.within(0.04, 0.1)), "a flange"),
            2 => (Outline::Balls(real(dice.whole(7, 16)), dice.within(0.68, 0.76), dice.within(0.1, 0.16)), "a bearing"),
            3 => (Outline::Sides(real(dice.whole(4, 8))), "a nut"),
            4 => (Outline::Spokes(real(dice.whole(3, 6))), "a wheel"),
            5 => return (Vec::new(), "a bare bench".into()),
            _ => (Outline::Disc, "a disc under a hand"),
        };
        return (vec![solid(outline, 1.0, (-thick, 0.0), turned, bright)], name.into());
    }
    let mut outline = Outline::gear(teeth, dice);
    if let Outline::Gear { chipped, .. } = &mut outline {
        let most = if hardness < 1.0 { 0 } else { 1 + usize::from(hardness > 1.0) };
        *chipped = (0..dice.whole(0, most)).map(|_| (dice.within(0.0, TAU), dice.within(0.0, 0.7))).collect();
    }
    let mut solids = vec![solid(outline, 1.0, (-thick, 0.0), turned, bright)];
    let mut what = format!("{teeth} teeth");
    if dice.chance(0.2 * hardness) {
        let (radius, between) = match dice.whole(0, 2) {
            0 => (dice.within(0.5, 0.82), (0.0, dice.within(0.1, 0.3))),
            1 => (dice.within(0.6, 0.95), (-thick - dice.within(0.15, 0.3), -thick)),
            _ => (dice.within(1.15, 1.4), (-thick - dice.within(0.15, 0.3), -thick)),
        };
        let other = (9..200).find(|other| real(*other) >= real(teeth) * radius * 0.97).unwrap_or(9);
        let _ = write!(what, ", a ring of {other} at {radius:.2}");
        let outline = Outline::gear(other, dice);
        let (turned, bright) = (dice.within(0.0, TAU), bright * dice.within(0.85, 1.1));
        solids.push(solid(outline, radius, between, turned, bright));
    }
    (solids, what)
}

fn scene(level: Level, hardness: f64, teeth: usize, seed: u64, dice: &mut Dice) -> (Scene, String) {
    // A gear lies on paper that is darker or lighter; in hard pictures it may be as bright as what it lies on.
    let is_dark = dice.chance(0.5);
    let bright = if is_dark { dice.within(0.5, 0.85) } else { dice.within(0.35, if hardness < 1.5 { 0.5 } else { 0.7 }) };
    let (mut solids, mut what) = solids(level, hardness, teeth, bright, dice);
    solids.sort_by(|a, b| b.top.total_cmp(&a.top));
    let bottom = solids.iter().map(|solid| solid.bottom).fold(-0.05, f64::min);
    let mut ground_bright = if is_dark { dice.within(0.1, bright - 0.25) } else { dice.within(0.85, 1.0) };
    if hardness > 1.2 && dice.chance(0.4) {
        ground_bright = bright * dice.within(0.75, 1.15);
    }
    let ground = match dice.whole(0, 2) {
        1 if hardness > 0.5 => Ground::Wood(dice.within(0.0, PI)),
        2 if hardness > 0.5 => Ground::Metal,
        _ => Ground::Paper,
    };
    let (from, high) = (dice.within(0.0, TAU), dice.within(1.2 - 0.3 * hardness, 1.4 - 0.1 * hardness));
    let shine =
        dice.chance(0.3 * hardness).then(|| (dice.within(-0.9, 0.9), dice.within(-0.9, 0.9), dice.within(0.2, 0.5), dice.within(0.2, 0.6)));
    let dirt = if dice.chance(0.4 * hardness) { dice.within(0.05, 0.12 + 0.15 * hardness) } else { 0.0 };
    if dirt > 0.0 {
        what += ", dirty";
    }
    let hidden = match level {
        Level::Bad if dice.chance(0.4) => dice.within(0.55, 0.7),
        _ if what.ends_with("a hand") || dice.chance(0.3 * hardness) => dice.within(0.05, 0.1 + 0.06 * hardness),
        _ => 0.0,
    };
    if hidden > 0.0 {
        let _ = write!(what, ", {:.0} % hidden", 100.0 * hidden);
    }
    let scene = Scene {
        solids,
        bottom,
        ground,
        ground_bright,
        light: [from.cos() * high.cos(), from.sin() * high.cos(), high.sin()],
        direct: dice.within(0.1, 0.3 + 0.25 * hardness),
        ambient: dice.within(0.55, 0.75),
        slope: (dice.within(-0.15, 0.15) * hardness, dice.within(-0.15, 0.15) * hardness),
        shine,
        dirt,
        fingers: fingers(hidden, dice),
        closed: 0.15 + 0.15 * hardness,
        seed,
    };
    (scene, what)
}

/// Fingers beside one another that hide a share of the rim: one of half-width w hides about 2 w of the rim’s 6.28.
fn fingers(hidden: f64, dice: &mut Dice) -> Vec<(f64, f64, f64)> {
    let many = (hidden * TAU / 0.35).ceil().min(4.0);
    let (at, wide) = (dice.within(0.0, TAU), hidden * TAU / many.max(1.0));
    let places = [0.0, 1.0, 2.0, 3.0].into_iter().filter(|place| *place < many);
    places.map(|place| (at + (place + 0.5 - many / 2.0) * wide, 0.46 * wide, dice.within(0.55, 0.85))).collect()
}

/// A square picture of the scene, and the circle that a person places on it.
fn taken(scene: &Scene, level: Level, hardness: f64, radius: f64, dice: &mut Dice) -> (usize, Vec<f64>, (f64, f64, f64)) {
    let distance = dice.within(9.0 - 1.5 * hardness, 14.0);
    let (tilt, about) = (dice.within(0.0, 2.0 + 4.0 * hardness).to_radians(), dice.within(0.0, TAU));
    // The camera's axes in the scene: a turn by the tilt about a line at an angle.
    let turn = |v: [f64; 3]| {
        let (u, w) = (v[0] * about.cos() + v[1] * about.sin(), v[1] * about.cos() - v[0] * about.sin());
        let (w, z) = (w * tilt.cos() - v[2] * tilt.sin(), w * tilt.sin() + v[2] * tilt.cos());
        [u * about.cos() - w * about.sin(), u * about.sin() + w * about.cos(), z]
    };
    let camera = turn([0.0, 0.0, distance]);
    let width = (2.7 * radius) as usize;
    let mut off = || real(width) / 2.0 + dice.within(-0.06, 0.06) * (1.0 + hardness) * radius;
    let middle = (off(), off());
    let focal = radius * distance;
    // How large the light is: a window, down to a bare lamp.
    let soft = 0.35 - 0.15 * hardness;
    let mut values = Vec::with_capacity(width * width);
    for (y, x) in (0..width).flat_map(|y| (0..width).map(move |x| (real(y), real(x)))) {
        let mut sum = 0.0;
        for (dx, dy) in [(0.25, 0.2), (0.75, 0.8)] {
            let ray = turn([(x + dx - middle.0) / focal, (y + dy - middle.1) / focal, -1.0]);
            sum += scene.seen(camera, ray, [soft * dice.within(-1.0, 1.0), soft * dice.within(-1.0, 1.0)]);
        }
        values.push(sum / 2.0);
    }
    let is_soft = level == Level::Bad && dice.chance(0.5);
    blurred(&mut values, width, if is_soft { dice.within(2.5, 4.0) * radius / 80.0 } else { dice.within(0.4, 0.7 + 0.4 * hardness) });
    let is_dark = level == Level::Bad && dice.chance(0.3);
    let exposure = if is_dark { dice.within(0.03, 0.1) } else { dice.within(0.7, 1.0) };
    let noise = dice.within(1.0, 3.0 + 4.0 * hardness);
    for value in &mut values {
        *value = (255.0 * *value * exposure + noise * dice.normal()).round().clamp(0.0, 255.0);
    }
    let slip = 0.012 + 0.008 * hardness;
    let mut slipped = |to: f64| to + slip * radius * dice.normal();
    let placed = (slipped(middle.0), slipped(middle.1), slipped(radius));
    (width, values, placed)
}

/// Out of focus by a Gaussian of so many pixels, along the rows and then along the columns.
fn blurred(values: &mut Vec<f64>, width: usize, sigma: f64) {
    let reach = (2.5 * sigma).ceil() as usize;
    let kernel: Vec<f64> = (0..=2 * reach).map(|place| (-0.5 * ((real(place) - real(reach)) / sigma).powi(2)).exp()).collect();
    let sum: f64 = kernel.iter().sum();
    for _ in 0..2 {
        let along = |(x, y): (usize, usize)| {
            let at = |place: usize| values[y * width + (x + place).saturating_sub(reach).min(width - 1)];
            kernel.iter().enumerate().map(|(place, weight)| weight * at(place)).sum::<f64>() / sum
        };
        // Row and column change places each time.
        *values = (0..width).flat_map(|x| (0..width).map(move |y| (x, y))).map(along).collect();
    }
}

fn real(count: usize) -> f64 {
    count as f64
}
