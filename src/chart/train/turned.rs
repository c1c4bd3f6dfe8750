//! A train turned by hand: the teeth of every gear as they come round, how far each shaft has turned, and a marked tooth of each pair in
//! the power path, followed until the same two teeth meet again.
use std::f64::consts::{FRAC_PI_2, TAU};

use super::{Line, Train, Wheel, drawing, layout::Plan};
use crate::chart::{
    Picture,
    face::Face,
    frame::{Axis, Scale},
    palette::Theme,
    readout::{Group, ReadOut, Reading, Table},
    scene::{Anchor, Pen, Rect, Scene, Size, Text, Window},
    ticks,
};
use crate::units::number;

/// A train, how its parts turn together, and how far it has been turned.
#[derive(Clone, Debug, PartialEq)]
pub struct Turned {
    /// What turns. The speeds of its shafts and gears are not shown.
    pub train: Train,
    /// For each gear, its turns for one turn of the input, less than zero for the other way round.
    pub wheels: Vec<f64>,
    /// For each shaft, the same; none where it has no name of its own.
    pub shafts: Vec<Option<f64>>,
    /// The pairs in the power path, a tooth of each gear marked where they mesh at the start.
    pub marked: Vec<Marked>,
    /// The turns of the input after which all of them meet at once again; none where that is beyond counting.
    pub all_meet: Option<f64>,
    /// How far the input is turned.
    pub turns: f64,
}

/// A pair whose meeting teeth are marked.
#[derive(Clone, Debug, PartialEq)]
pub struct Marked {
    /// Its gears, by their places in the train.
    pub wheels: (usize, usize),
    /// Which pair it is, for instance `2nd`.
    pub name: String,
    /// The turns of the input from one meeting of the two teeth to the next.
    pub every: f64,
    /// The same as turns of its driving gear, a whole number.
    pub driver_turns: u32,
    /// How many ways the pair can be put together: 1 where every tooth meets every tooth.
    pub common_factor: u32,
}

/// More turns than this are not laid along one picture.
const MOST_TURNS: f64 = 60.0;
/// Meetings of a pair that are marked on the scale, and stopped at by keys.
const MOST_MEETINGS: f64 = 120.0;
/// Below the train: the scale.
const SCALE_PX: f64 = 46.0;
/// How near to a meeting counts as there, in turns of the input.
const NEAR: f64 = 1e-6;

impl Marked {
    /// How many turns of the input are left until the two teeth meet, 0 where they do.
    fn left(&self, turns: f64) -> f64 {
        let left = self.every - turns.rem_euclid(self.every);
        if left < NEAR || self.every - left < NEAR { 0.0 } else { left }
    }

    fn meetings(&self, most: f64) -> impl Iterator<Item = f64> {
        let many = (most / self.every + NEAR).floor().clamp(0.0, MOST_MEETINGS);
        std::iter::successors(Some(0.0), |meeting| Some(meeting + 1.0))
            .take_while(move |meeting| *meeting <= many)
            .map(|meeting| meeting * self.every)
    }

    /// `input pair 30/25: the marked teeth meet every 6 turns of the input (5 turns of …)`.
    fn said(&self, train: &Train) -> Option<String> {
        let (driver, driven) = (train.wheels.get(self.wheels.0)?, train.wheels.get(self.wheels.1)?);
        let hunts = if self.common_factor == 1 {
            "every tooth meets every tooth before that".into()
        } else {
            format!("each tooth meets one in {} of the other gear", self.common_factor)
        };
        Some(format!(
            "{} {}/{}: the marked teeth meet every {} of the input, {} of the gear with {} teeth; {hunts}.",
            self.name,
            driven.teeth,
            driver.teeth,
            turns(self.every),
            turns(f64::from(self.driver_turns)),
            driver.teeth,
        ))
    }
}

/// `6 turns`, `38.4 turns`.
fn turns(many: f64) -> String {
    let words = if (many - 1.0).abs() < NEAR { "turn" } else { "turns" };
    format!("{} {words}", few_digits(many))
}

/// Up to three digits behind the point, none that says nothing.
fn few_digits(value: f64) -> String {
    let decimals = (0..3).find(|decimals| is_round(value, *decimals)).unwrap_or(3);
    number::show(value, decimals)
}

fn is_round(value: f64, decimals: usize) -> bool {
    let scale = 10_f64.powi(i32::try_from(decimals).unwrap_or(0));
    (value * scale - (value * scale).round()).abs() < NEAR * scale
}

impl Turned {
    /// How far the scale goes: until every pair has met once again, or as far as can be told apart.
    fn most(&self) -> f64 {
        let longest = self.marked.iter().map(|marked| marked.every).filter(|every| *every <= MOST_TURNS).fold(2.0_f64, f64::max);
        longest.ceil()
    }

    /// The angle at which a gear's marked tooth stands, from the side that faces the viewer, upwards.
    fn angle(&self, at: usize, wheel: &Wheel) -> Option<f64> {
        let line = self.train.shafts.get(wheel.shaft)?.line;
        // The upper line's gears mesh at their foot, the others at their head.
        let start = if line == Line::Upper { -FRAC_PI_2 } else { FRAC_PI_2 };
        Some(start - TAU * (self.turns * self.wheels.get(at)?).rem_euclid(1.0))
    }

    fn is_marked(&self, at: usize) -> bool {
        self.marked.iter().any(|marked| marked.wheels.0 == at || marked.wheels.1 == at)
    }

    /// The teeth of a gear as they are seen from the side: nearer to each other towards its edges.
    fn draw_teeth(&self, scene: &mut Scene, theme: &Theme, at: usize, wheel: &Wheel, block: Rect) {
        let Some(angle) = self.angle(at, wheel).filter(|_| wheel.teeth > 0) else { return };
        let (middle, radius) = (f64::midpoint(block.top, block.bottom), block.height() / 2.0 - 1.0);
        let across = |scene: &mut Scene, angle: f64, pen: Pen| {
            let y = middle - radius * angle.sin();
            scene.line(vec![(block.left + 1.5, y), (block.right - 1.5, y)], pen);
        };
        let colour = if wheel.is_on_path { theme.hue(self.train.hue, None) } else { theme.ink_3 };
        for tooth in 1..wheel.teeth {
            let tooth = angle + TAU * f64::from(tooth) / f64::from(wheel.teeth);
            if tooth.cos() > 0.0 {
                across(scene, tooth, Pen::full(crate::chart::scene::Ink { colour, cover: 0.45 }, 1.0));
            }
        }
        let (own, is_seen) = (self.is_marked(at), angle.cos() > -1e-9);
        match (own, is_seen) {
            (true, true) => across(scene, angle, Pen::full(theme.dye, 4.0)),
            (true, false) => across(scene, angle, Pen::full(theme.dye, 1.6).dashed(&[3.0, 3.0])),
            (false, true) => across(scene, angle, Pen::full(crate::chart::scene::Ink { colour, cover: 0.45 }, 1.0)),
            (false, false) => {}
        }
    }

    /// The turns of the input along the foot of the picture, with every meeting of marked teeth.
    fn draw_scale(&self, scene: &mut Scene, theme: &Theme, scale: Scale) -> Axis {
        let (width, height) = scene.size;
        let x = Axis::even((0.0, 14.0), (self.most(), width - 14.0));
        let top = height - SCALE_PX + 8.0;
        scene.rule((x.from.1, top), (x.to.1, top), Pen::full(theme.rule, 1.0));
        for meeting in self.marked.iter().flat_map(|marked| marked.meetings(self.most())) {
            let at = x.place(meeting);
            scene.rule((at, top - 7.0), (at, top), Pen::full(theme.dye, 2.0));
        }
        let steps = ticks::round_steps(0.0, self.most(), (x.length() / 70.0).max(2.0));
        let decimals = ticks::decimals(steps.get(1).copied().unwrap_or(1.0));
        for step in steps {
            let at = (x.place(step), top + 4.0 + scale.figures_px);
            scene.text(Text::new(number::show(step, decimals), at, Face::Figures, scale.figures_px, theme.ink_2).anchored(Anchor::Middle));
        }
        let label =
            |words: &str| Text::new(words, (width - 2.0, height - 4.0), Face::Text, scale.words_px, theme.ink_2).anchored(Anchor::End);
        let (long, short) = (label("turns of the input; a blue mark where marked teeth meet"), label("turns of the input"));
        scene.text(if long.width() < width - 4.0 { long } else { short });
        x
    }

    /// The train with how far its shafts have turned in place of their speeds.
    fn counted(&self) -> Train {
        let mut train = self.train.clone();
        for (shaft, rate) in train.shafts.iter_mut().zip(&self.shafts) {
            shaft.rpm = rate.map_or_else(String::new, |rate| number::show((self.turns * rate).abs(), 2));
        }
        for wheel in &mut train.wheels {
            wheel.rpm.clear();
        }
        train
    }

    /// Each named shaft with its turns for one of the input.
    fn named_shafts(&self) -> impl Iterator<Item = (&str, f64)> {
        self.train.shafts.iter().zip(&self.shafts).filter_map(|(shaft, rate)| Some((shaft.name.as_str(), (*rate)?)))
    }
}

impl Picture for Turned {
    fn title(&self) -> String {
        format!("{}, turned by hand", self.train.title)
    }

    fn height(&self, width: f64) -> f64 {
        self.train.height(width) + SCALE_PX
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let train = self.counted();
        let Some(plan) = Plan::of(&train, (size.0, size.1 - SCALE_PX)) else { return scene };
        drawing::draw_with(&train, &mut scene, theme, &plan, &|scene, at, wheel, block| self.draw_teeth(scene, theme, at, wheel, block));
        let x = self.draw_scale(&mut scene, theme, plan.scale);
        scene.window = Some(Window { plot: Rect::new(x.from.1, 0.0, x.to.1, size.1), x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let way = |rate: f64| if rate < 0.0 { ", the other way round" } else { "" };
        let shafts = self.named_shafts().map(|(name, rate)| format!("{name} {}{}", few_digits(rate.abs()), way(rate))).collect::<Vec<_>>();
        let first = (!shafts.is_empty()).then(|| format!("For one turn of the input: {}.", shafts.join("; ")));
        let pairs = self.marked.iter().filter_map(|marked| marked.said(&self.train));
        let all = self.all_meet.filter(|_| self.marked.len() > 1);
        let all = all.map(|all| format!("After {} of the input all marked teeth stand as at first.", turns(all)));
        first.into_iter().chain(pairs).chain(all).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let reading = |label: String, value: String, stands_out: bool| Reading { label, value, stands_out, is_beyond: false };
        let shafts = self.named_shafts().map(|(name, rate)| reading(name.to_owned(), number::show((x * rate).abs(), 2), false));
        let pairs = self.marked.iter().map(|marked| {
            let left = marked.left(x);
            let value = if left == 0.0 { "marked teeth meet".into() } else { format!("meet in {} turns", number::show(left, 2)) };
            reading(marked.name.clone(), value, left == 0.0)
        });
        let readings = shafts.chain(pairs).collect();
        ReadOut {
            at: format!("{} turns of the input", number::show(x, 2)),
            groups: vec![Group { slot: self.train.hue.slot(), name: String::new(), readings }],
        }
    }

    fn stops(&self) -> Vec<f64> {
        let most = self.most();
        let quarters = std::iter::successors(Some(0.0), |turns| Some(turns + 0.25)).take_while(|turns| *turns <= most);
        crate::chart::frame::stops(quarters.chain(self.marked.iter().flat_map(|marked| marked.meetings(most))))
    }

    fn table(&self) -> Table {
        let mut table =
            Table::new(["pair", "driver_teeth", "driven_teeth", "meets_every_input_turns", "meets_every_driver_turns", "common_factor"]);
        let row = |marked: &Marked| {
            let teeth = |at: usize| self.train.wheels.get(at).map(|wheel| wheel.teeth.to_string()).unwrap_or_default();
            let (driver, driven) = marked.wheels;
            let every = format!("{:.6}", marked.every);
            vec![
                marked.name.clone(),
                teeth(driver),
                teeth(driven),
                every,
                marked.driver_turns.to_string(),
                marked.common_factor.to_string(),
            ]
        };
        table.rows = self.marked.iter().map(row).collect();
        table
    }

    fn turned(&self, to: f64) -> Option<Box<dyn Picture>> {
        to.is_finite().then(|| Box::new(Self { turns: to.clamp(0.0, self.most()), ..self.clone() }) as _)
    }
}
