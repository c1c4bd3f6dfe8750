//! Made-up recordings: a random car, one guilty part, its harmonics and side tones, the engine, every other part ten to twenty dB lower,
//! broad noise, a wandering speed, and a typed speed that is wrong by up to 3 %. Seeded: the same number gives the same recording.
//!
//! They show that the way is worked out as it was tried, not how cars sound: profiles and levels are those the method expects.

use std::f64::consts::TAU;

use layshaft::sound::recording::Run;
use layshaft::sound::recording::share_out::{Kind, Maker};

/// Samples a second.
pub(crate) const RATE: f64 = 12_000.0;

/// A recording, and what is right about it.
pub(crate) struct Made {
    pub(crate) samples: Vec<f32>,
    pub(crate) run: Run,
    /// The place of the guilty part.
    pub(crate) guilty: usize,
    /// The engine's mean turns a second.
    pub(crate) turns: f64,
    /// Which parts are pairs that turn without load.
    pub(crate) idle: Vec<bool>,
}

/// Two to the 53rd.
const TO_THE_53RD: f64 = 9_007_199_254_740_992.0;

/// Splitmix64: enough for a made-up noise.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        #[expect(clippy::cast_precision_loss, reason = "53 bits")]
        let share = ((z ^ (z >> 31)) >> 11) as f64;
        share / TO_THE_53RD
    }

    fn between(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.next()
    }

    fn whole(&mut self, from: f64, to: f64) -> f64 {
        self.between(from, to + 1.0).floor().min(to)
    }

    fn normal(&mut self) -> f64 {
        (-2.0 * self.next().max(1e-300).ln()).sqrt() * (TAU * self.next()).cos()
    }
}

/// A car's parts: the input pair, the pairs of its gears, ring and pinion, driveshaft, joints, tyre, four bearings; its cylinders; and which
/// of its pairs turn without load. `again`, the same car in another gear.
fn car(dice: &mut Dice, again: bool) -> (Vec<Maker>, u8, Vec<bool>) {
    let (input, lay) = (dice.whole(20.0, 27.0), dice.whole(28.0, 36.0));
    let sum = input + lay;
    let cluster = input / lay;
    let gears: Vec<(f64, f64)> = (0..3)
        .map(|gear| {
            let own = (sum * [0.33, 0.42, 0.49][gear] + dice.whole(-1.0, 1.0)).round();
            (sum - own, own)
        })
        .collect();
    // One of the gears but first, or direct.
    let selected = dice.whole(1.0, 3.0);
    let selected = if again { selected % 3.0 + 1.0 } else { selected };
    let ratio = if selected > 2.5 {
        1.0
    } else {
        let (main, own) = gears[if selected < 1.5 { 1 } else { 2 }];
        main / own / cluster
    };
    let output = 1.0 / ratio;
    let (pinion, ring) = (dice.whole(9.0, 13.0), dice.whole(37.0, 43.0));
    let wheel = output * pinion / ring;
    let maker = |kind, order, sides| Maker { kind, order, sides };
    let mut makers = vec![maker(Kind::Mesh, input, vec![1.0, cluster])];
    makers.extend(gears.iter().map(|(main, own)| maker(Kind::Mesh, own * cluster, vec![cluster, own * cluster / main])));
    makers.push(maker(Kind::Mesh, pinion * output, vec![output, wheel]));
    makers.push(maker(Kind::Driveshaft, output, Vec::new()));
    makers.push(maker(Kind::Joint, 2.0 * output, Vec::new()));
    makers.push(maker(Kind::Tyre, wheel, Vec::new()));
    for shaft in [1.0, cluster, output, wheel] {
        let (balls, ratio) = (dice.whole(8.0, 14.0), dice.between(0.17, 0.24));
        let inner = shaft * balls / 2.0 * (1.0 + ratio);
        makers.push(maker(Kind::Bearing { inner }, shaft * balls / 2.0 * (1.0 - ratio), vec![shaft]));
    }
    let engaged = if selected > 2.5 {
        0
    } else if selected < 1.5 {
        2
    } else {
        3
    };
    let idle = (0..makers.len()).map(|place| if place == 0 { engaged == 0 } else { place < 4 && place != engaged }).collect();
    (makers, if dice.next() < 0.7 { 4 } else { 6 }, idle)
}

/// The guilty part: a pair three times of ten, ring and pinion a quarter, shaft, joints and tyre a quarter, a bearing the rest.
fn guilty(dice: &mut Dice) -> usize {
    let throw = dice.next();
    let bearing = 8 + usize::from(dice.next() < 0.5) + 2 * usize::from(dice.next() < 0.5);
    match throw {
        t if t < 0.11 => 0,
        t if t < 0.25 => 1 + usize::from(dice.next() < 0.6) + usize::from(dice.next() < 0.4),
        t if t < 0.52 => 4,
        t if t < 0.60 => 5,
        t if t < 0.68 => 6,
        t if t < 0.77 => 7,
        _ => bearing,
    }
}

/// The broad noise: falling from 300 Hz on, and a little that does not.
struct Noise {
    low: f64,
}

impl Noise {
    const POLE: f64 = 0.855;
    const WHITE: f64 = 0.1;

    fn next(&mut self, dice: &mut Dice) -> f64 {
        self.low = Self::POLE * self.low + (1.0 - Self::POLE) * dice.normal();
        self.low + Self::WHITE * dice.normal()
    }

    /// Its power in the third of an octave about a frequency.
    fn power(hertz: f64) -> f64 {
        let turn = TAU * hertz / RATE;
        let low = (1.0 - Self::POLE).powi(2) / (1.0 - 2.0 * Self::POLE * turn.cos() + Self::POLE * Self::POLE);
        (low + Self::WHITE * Self::WHITE) * 0.231_6 * hertz / (RATE / 2.0)
    }
}

/// Tones as order and amplitude.
fn tones(dice: &mut Dice, makers: &[Maker], cylinders: u8, guilty: usize, decibel: f64, turns: f64) -> Vec<(f64, f64)> {
    let amplitude = |order: f64, decibel: f64| (2.0 * Noise::power(order * turns) * 10_f64.powf(decibel / 10.0)).sqrt();
    let mut tones = Vec::new();
    let firing = dice.between(3.0, 15.0);
    let first = f64::from(cylinders) / 2.0;
    let engine = amplitude(first, firing);
    tones.extend((1..=16_u8).map(|k| (first * f64::from(k), engine / f64::from(k))));
    let half = dice.between(8.0, 14.0);
    tones.extend((1..=60_u8).map(|k| (f64::from(k) / 2.0, engine * 10_f64.powf(-half / 20.0) * (f64::from(k) / 4.0).max(1.0).powf(-0.65))));
    for (place, maker) in makers.iter().enumerate() {
        let is_guilty = place == guilty;
        if matches!(maker.kind, Kind::Bearing { .. }) && !is_guilty {
            continue;
        }
        let level = if is_guilty { decibel } else { decibel - dice.between(10.0, 20.0) };
        let slip = if matches!(maker.kind, Kind::Bearing { .. }) { dice.between(0.98, 1.0) } else { 1.0 };
        let loudest = amplitude(maker.order * slip, level);
        let profile: &[f64] = match maker.kind {
            Kind::Mesh | Kind::Bearing { .. } => &[1.0, 0.4, 0.2, 0.1],
            Kind::Driveshaft => &[1.0, 0.2, 0.07],
            Kind::Joint => &[1.0, 0.25],
            Kind::Tyre => &[1.0, 0.6, 0.4, 0.25, 0.15, 0.1],
        };
        for (k, power) in (1..=u8::MAX).zip(profile) {
            let off = if k == 1 { 0.0 } else { dice.between(-3.0, 3.0) };
            let own = loudest * power.sqrt() * 10_f64.powf(off / 20.0);
            let order = maker.order * slip * f64::from(k);
            tones.push((order, own));
            for side in &maker.sides {
                let beside = own * 10_f64.powf(-dice.between(6.0, 14.0) / 20.0);
                tones.extend([(order - side, beside), (order + side, beside)]);
            }
        }
    }
    tones
}

/// The recording of a number in the first gear that is looked at, see [`made_in`].
pub(crate) fn made(seed: u64, is_steady: bool, seconds: f64, decibel: f64) -> Made {
    made_in(seed, is_steady, seconds, decibel, false)
}

/// The recording of a number: so many seconds, steady or a sweep by a factor of 1.3 to 1.6, the guilty line so many dB over the noise.
/// `again`, the same car with the same guilty part at the same rpm in another gear, where a pair without load is no louder than the innocent.
pub(crate) fn made_in(seed: u64, is_steady: bool, seconds: f64, decibel: f64, again: bool) -> Made {
    let mut dice = Dice(seed.wrapping_mul(0x2545_f491_4f6c_dd1d));
    let (makers, cylinders, idle) = car(&mut dice, again);
    let guilty = guilty(&mut dice);
    let from = dice.between(30.0, 50.0);
    let to = if is_steady { from } else { from * dice.between(1.3, 1.6) };
    let typed = [from, to].map(|speed| speed * (1.0 + dice.between(-0.03, 0.03)));
    let typed = if is_steady { [typed[0]; 2] } else { typed };
    let (wow, period, begins) = (dice.between(0.005, 0.015), dice.between(5.0, 10.0), dice.next());
    let heard = if again && idle[guilty] { usize::MAX } else { guilty };
    let tones = tones(&mut dice, &makers, cylinders, heard, decibel, f64::midpoint(from, to));
    let phases: Vec<f64> = tones.iter().map(|_| dice.next()).collect();
    let mut noise = Noise { low: 0.0 };
    let many = (seconds * RATE).round();
    let (mut turns, mut place, mut sum) = (0.0, 0.0, Vec::new());
    while place < many {
        let time = place / RATE;
        let speed = (from + (to - from) * time / seconds) * (1.0 + wow * (TAU * (time / period + begins)).sin());
        turns += speed / RATE;
        let tone: f64 = tones.iter().zip(&phases).map(|((order, loud), phase)| loud * (TAU * (order * turns + phase).fract()).sin()).sum();
        sum.push(tone + noise.next(&mut dice));
        place += 1.0;
    }
    let most = sum.iter().fold(0.0_f64, |most, sample| most.max(sample.abs()));
    #[expect(clippy::cast_possible_truncation, reason = "samples are kept so")]
    let samples = sum.iter().map(|sample| (0.5 * sample / most) as f32).collect();
    Made { samples, run: Run { turns: typed, cylinders, makers }, guilty, turns: turns / seconds, idle }
}
