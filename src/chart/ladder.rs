//! The gear ladder: every gear of every setup on one axis where equal distance is an equal percentage step,
//! and between two rungs the share of the engine speed lost on that upshift.
use super::{
    Picture,
    face::Face,
    frame::{self, Axis, Scale},
    palette::{self, Theme},
    place::{Wish, centres},
    readout::{Group, ReadOut, Reading, Table},
    scene::{Anchor, Pen, Rect, Scene, Size, Text, Window},
    ticks,
};
use crate::units::number::show;

/// The gear ladder's data.
#[derive(Clone, Debug, PartialEq)]
pub struct Ladder {
    /// One row to a setup.
    pub setups: Vec<Rungs>,
    /// The engine speed of every upshift, in rpm.
    pub shift_rpm: f64,
    /// The unit of the speeds, for instance `mph`.
    pub speed_unit: String,
    /// The place of the setup brought forward; the others are greyed.
    pub focus: Option<usize>,
    /// Whether the ratios stand along the bottom.
    pub has_axis: bool,
}

/// One setup's row.
#[derive(Clone, Debug, PartialEq)]
pub struct Rungs {
    /// Its place among the setups, from 0.
    pub slot: usize,
    /// What the setup is called; read out, the row itself has the letter alone.
    pub name: String,
    /// Its forward gears, first to top.
    pub gears: Vec<Rung>,
}

/// One gear.
#[derive(Clone, Debug, PartialEq)]
pub struct Rung {
    /// What it is called, for instance `1st`.
    pub name: String,
    /// Input turns to one output turn. A gear without a ratio above zero is left out.
    pub ratio: f64,
    /// The road speed at the shift point in [`Ladder::speed_unit`], where it is known.
    pub speed_at_shift: Option<f64>,
}

impl Rungs {
    fn usable(&self) -> impl Iterator<Item = &Rung> {
        self.gears.iter().filter(|rung| rung.ratio > 0.0 && rung.ratio.is_finite())
    }

    /// Each upshift: the two gears, and the share of engine speed lost from one to the other.
    fn upshifts(&self) -> impl Iterator<Item = (&Rung, &Rung, f64)> {
        self.usable().zip(self.usable().skip(1)).map(|(low, high)| (low, high, 1.0 - high.ratio / low.ratio))
    }
}

/// From row to row.
const PITCH_PX: f64 = 62.0;
/// From the top to the first row.
const FIRST_PX: f64 = 32.0;
/// Below the last row's figures.
const AXIS_PX: f64 = 44.0;

/// How tall the picture of so many setups is.
pub fn height(setups: usize) -> f64 {
    foot(setups) + AXIS_PX
}

/// Where the last row's figures end and the grid may stop.
fn foot(setups: usize) -> f64 {
    let rows = u16::try_from(setups).unwrap_or(u16::MAX).max(1);
    FIRST_PX + f64::from(rows - 1) * PITCH_PX + 30.0
}

impl Ladder {
    /// Least and greatest ratio of all setups, parted a little where there is but one.
    fn ends(&self) -> Option<(f64, f64)> {
        let ratios = || self.setups.iter().flat_map(Rungs::usable).map(|rung| rung.ratio);
        let (least, greatest) = (ratios().reduce(f64::min)?, ratios().reduce(f64::max)?);
        Some(if greatest / least < 1.05 { (least / 1.2, greatest * 1.2) } else { (least, greatest) })
    }

    fn axis(&self, width: f64) -> Option<Axis> {
        let (least, greatest) = self.ends()?;
        Some(Axis::by_ratio((greatest, 46.0), (least, (width - 22.0).max(47.0))))
    }

    fn foot(&self) -> f64 {
        foot(self.setups.len())
    }

    fn draw_axis(&self, scene: &mut Scene, theme: &Theme, x: &Axis, scale: Scale) {
        let steps = ticks::ratio_steps(x.to.0, x.from.0, scale.figures_px * 3.2, |ratio| x.place(ratio));
        let (foot, decimals) = (self.foot(), steps.iter().map(|ratio| ticks::decimals(*ratio)).max().unwrap_or(0));
        for ratio in &steps {
            let at = x.place(*ratio);
            scene.rule((at, 4.0), (at, foot), Pen::full(theme.rule_soft, 1.0));
            let words = show(*ratio, decimals);
            let at = (at, foot + 6.0 + scale.figures_px);
            scene.text(Text::new(words, at, Face::Figures, scale.figures_px, theme.ink_2).anchored(Anchor::Middle));
        }
        scene.rule((0.0, foot), (scene.size.0, foot), Pen::full(theme.rule, 1.0));
        let at = (scene.size.0 - 2.0, foot + 6.0 + scale.figures_px + scale.words_px + 4.0);
        scene.text(Text::new("gear ratio", at, Face::Text, scale.words_px, theme.ink_2).anchored(Anchor::End));
    }

    fn draw_row(&self, scene: &mut Scene, theme: &Theme, row: &Row<'_>) {
        let (rungs, y) = (row.rungs, row.y);
        let colour = theme.focused(rungs.slot, self.focus);
        let letter = palette::letter(rungs.slot);
        scene.text(Text::new(letter, (8.0, y + 5.0), Face::Strong, row.scale.words_px + 1.0, colour));
        let places = || rungs.usable().map(|rung| row.x.place(rung.ratio));
        if let (Some(first), Some(last)) = (places().reduce(f64::min), places().reduce(f64::max)) {
            scene.rule((first, y), (last, y), Pen::full(colour, 2.0).dashed(palette::dash(rungs.slot)));
        }
        for at in places() {
            scene.rule((at, y - 9.0), (at, y + 9.0), Pen::full(colour, 4.0));
        }
        let is_back = self.focus.is_some_and(|focus| focus != rungs.slot);
        row.name_rungs(scene, if is_back { theme.ink_3 } else { theme.ink }, theme.sheet);
        row.name_losses(scene, theme);
    }

    fn rows(&self, x: Axis, scale: Scale) -> impl Iterator<Item = Row<'_>> {
        let heights = (0..).map(|at| FIRST_PX + f64::from(at) * PITCH_PX);
        self.setups.iter().zip(heights).map(move |(rungs, y)| Row { rungs, y, x, scale })
    }
}

/// One setup's row as it lies in the picture.
struct Row<'a> {
    rungs: &'a Rungs,
    y: f64,
    x: Axis,
    scale: Scale,
}

impl Row<'_> {
    /// Names and ratios above the rungs; where they crowd they move apart, then the names go, then the ratios.
    fn name_rungs(&self, scene: &mut Scene, colour: palette::Colour, cover: palette::Colour) {
        let mut rungs: Vec<&Rung> = self.rungs.usable().collect();
        crate::order::by(&mut rungs, |a, b| b.ratio.total_cmp(&a.ratio));
        let long = |rung: &Rung| format!("{} {}", rung.name, show(rung.ratio, 3));
        let ratio = |rung: &Rung| show(rung.ratio, 3);
        let short = |rung: &Rung| rung.name.chars().take_while(char::is_ascii_digit).collect::<String>();
        let forms: [&dyn Fn(&Rung) -> String; 3] = [&long, &ratio, &short];
        for form in forms {
            let words: Vec<String> = rungs.iter().map(|rung| form(rung)).collect();
            let wish = |(rung, words): (&&Rung, &String)| Wish {
                centre: self.x.place(rung.ratio),
                width: Face::Text.width_px(words, self.scale.words_px) + 12.0,
            };
            let wishes: Vec<Wish> = rungs.iter().zip(&words).map(wish).collect();
            let Some(centres) = centres(&wishes, 24.0, scene.size.0) else { continue };
            for (words, centre) in words.into_iter().zip(centres) {
                let at = (centre, self.y - 14.0);
                scene.text_over(Text::new(words, at, Face::Text, self.scale.words_px, colour).anchored(Anchor::Middle), cover);
            }
            return;
        }
    }

    /// The share of the engine speed lost, below and between the rungs; a figure that would leave its gap is left to the table.
    fn name_losses(&self, scene: &mut Scene, theme: &Theme) {
        let size = self.scale.figures_px;
        let mut losses: Vec<Loss> = self.rungs.upshifts().map(|upshift| Loss::of(upshift, &self.x, size)).collect();
        crate::order::by(&mut losses, |a, b| a.wish.centre.total_cmp(&b.wish.centre));
        while !losses.is_empty() {
            let wishes: Vec<Wish> = losses.iter().map(|loss| loss.wish).collect();
            let places = centres(&wishes, 24.0, scene.size.0).unwrap_or_default();
            if losses.iter().zip(&places).filter(|(loss, centre)| loss.owns(**centre)).count() == losses.len() {
                for (loss, centre) in losses.into_iter().zip(places) {
                    let text = Text::new(loss.words, (centre, self.y + 9.0 + size), Face::Figures, size, theme.ink_2);
                    scene.text_over(text.anchored(Anchor::Middle), theme.sheet);
                }
                return;
            }
            let Some(least) = losses.iter().map(Loss::gap).reduce(f64::min) else { return };
            losses.retain(|loss| loss.gap() > least);
        }
    }
}

struct Loss {
    words: String,
    wish: Wish,
    between: (f64, f64),
}

impl Loss {
    fn of((low, high, share): (&Rung, &Rung, f64), x: &Axis, size_px: f64) -> Self {
        let words = format!("{} %", signed(-share * 100.0));
        let (from, to) = (x.place(low.ratio), x.place(high.ratio));
        let width = Face::Figures.width_px(&words, size_px) + 8.0;
        Self { words, wish: Wish { centre: f64::midpoint(from, to), width }, between: (from.min(to), from.max(to)) }
    }

    fn gap(&self) -> f64 {
        self.between.1 - self.between.0
    }

    /// Whether a label centred here still belongs to its gap.
    fn owns(&self, centre: f64) -> bool {
        (self.between.0 - 2.0..=self.between.1 + 2.0).contains(&centre)
    }
}

/// What an upshift loses: in rpm, or of the engine speed where no shift point is known.
fn lost(share: f64, shift_rpm: f64) -> String {
    if shift_rpm > 0.0 { signed(-share * shift_rpm) } else { format!("{} %", signed(-share * 100.0)) }
}

/// A change with its sign, for instance `−2,100`.
fn signed(change: f64) -> String {
    let text = show(change, 0);
    if change > 0.5 { format!("+{text}") } else { text }
}

impl Picture for Ladder {
    fn title(&self) -> String {
        "Gear ladder".to_owned()
    }

    fn height(&self, _: f64) -> f64 {
        self.foot() + if self.has_axis { AXIS_PX } else { 0.0 }
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        let scale = Scale::of(size.0);
        let Some(x) = self.axis(size.0) else { return scene };
        if self.has_axis {
            self.draw_axis(&mut scene, theme, &x, scale);
        }
        for row in self.rows(x, scale) {
            self.draw_row(&mut scene, theme, &row);
        }
        scene.window = Some(Window { plot: Rect::new(x.from.1, 4.0, x.to.1, self.foot()), x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let tell = |rungs: &Rungs| {
            let gears: Vec<String> = rungs.usable().map(|rung| format!("{} {}", rung.name, show(rung.ratio, 3))).collect();
            let (unit, at) = if self.shift_rpm > 0.0 {
                (" rpm", format!(" at {} rpm", show(self.shift_rpm, 0)))
            } else {
                (" of the engine speed", String::new())
            };
            let losses: Vec<String> = rungs
                .upshifts()
                .map(|(low, high, share)| format!("{} to {} {}{unit}", low.name, high.name, lost(share, self.shift_rpm)))
                .collect();
            let shifts = if losses.is_empty() { String::new() } else { format!(" Upshifts{at}: {}.", losses.join(", ")) };
            let gears = if gears.is_empty() { "no gear known".to_owned() } else { gears.join(", ") };
            format!("{}, {}: {gears}.{shifts}", palette::letter(rungs.slot), rungs.name)
        };
        self.setups.iter().map(tell).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let group = |rungs: &Rungs| {
            let off = |rung: &Rung| (rung.ratio / x).ln().abs();
            let nearest = rungs.usable().map(off).reduce(f64::min).unwrap_or(f64::NAN);
            let reading = |rung: &Rung| {
                let speed =
                    rung.speed_at_shift.map(|speed| format!(", {} {} at {}", show(speed, 1), self.speed_unit, show(self.shift_rpm, 0)));
                let value = show(rung.ratio, 3) + &speed.unwrap_or_default();
                Reading { label: rung.name.clone(), value, stands_out: off(rung) <= nearest, is_beyond: false }
            };
            Group { slot: Some(rungs.slot), name: rungs.name.clone(), readings: rungs.usable().map(reading).collect() }
        };
        ReadOut { at: format!("ratio {}", show(x, 3)), groups: self.setups.iter().map(group).collect() }
    }

    fn stops(&self) -> Vec<f64> {
        frame::stops(self.setups.iter().flat_map(Rungs::usable).map(|rung| rung.ratio))
    }

    fn table(&self) -> Table {
        let speed = format!("speed_at_shift_{}", frame::unit_key(&self.speed_unit));
        let mut table = Table::new(["setup", "name", "gear", "ratio", "upshift_loss_rpm", &speed]);
        for rungs in &self.setups {
            let losses = rungs.upshifts().map(|(_, _, share)| Some(share * self.shift_rpm)).chain([None]);
            for (rung, loss) in rungs.usable().zip(losses) {
                let figure = |value: Option<f64>| value.map(|value| value.to_string()).unwrap_or_default();
                let setup = palette::letter(rungs.slot).to_string();
                let cells =
                    [setup, rungs.name.clone(), rung.name.clone(), rung.ratio.to_string(), figure(loss), figure(rung.speed_at_shift)];
                table.rows.push(cells.to_vec());
            }
        }
        table
    }
}
