//! The labels of the shift chart: where each climb ends, the shift line, the cruising speed and its dots.
use super::{Climb, ClimbGear, ShiftChart, short};
use crate::{
    chart::{
        face::Face,
        frame::{Frame, Scale},
        palette::{Colour, Theme, leading},
        place::Taken,
        readout::{groups, letters, short_letters},
        scene::{Anchor, Pen, Rect, Scene, Spot, Text},
    },
    units::number::show,
};

const MARKS: &[f64] = &[3.0, 3.0];

/// One label above the shift line: who, which gear, how fast.
struct Peak {
    slots: Vec<usize>,
    gear: String,
    speed: f64,
}

/// Pixels wanted above the shift line.
pub(super) fn headroom(chart: &ShiftChart, frame: &Frame) -> f64 {
    let scale = Scale::of(frame.plot.right);
    let y = frame.y.place(chart.shift_rpm);
    let mut taken = Taken::new(Rect::new(frame.plot.left + 1.0, f64::NEG_INFINITY, frame.plot.right + 20.0, frame.plot.bottom));
    taken.keep(shift_line(chart, frame, scale, crate::chart::LIGHT).bounds().grown(3.0));
    let labels =
        peaks(chart, scale.is_narrow).into_iter().filter_map(|peak| peak.choose(frame, y, scale, crate::chart::LIGHT.ink, &mut taken));
    labels.map(|label| y - label.bounds().top).fold(0.0, f64::max) + 4.0
}

pub(super) fn draw(chart: &ShiftChart, scene: &mut Scene, theme: &Theme, frame: &Frame) {
    let scale = Scale::of(scene.size.0);
    let mut taken = Taken::new(Rect::new(frame.plot.left + 1.0, 0.0, scene.size.0, frame.plot.bottom));
    taken.keep(frame.title_box());
    draw_shift_line(chart, scene, theme, frame, &mut taken);
    let y = frame.y.place(chart.shift_rpm);
    for peak in peaks(chart, scale.is_narrow) {
        let colour = leading(&peak.slots, chart.focus).map_or(theme.ink, |slot| theme.focused(slot, chart.focus));
        if let Some(label) = peak.choose(frame, y, scale, colour, &mut taken) {
            scene.text_over(label, theme.sheet);
        }
    }
    for climb in &chart.setups {
        taken.keep_off(&chart.teeth(climb, frame));
    }
    draw_cruise(chart, scene, theme, frame, &mut taken);
}

fn shift_line(chart: &ShiftChart, frame: &Frame, scale: Scale, theme: Theme) -> Text {
    let at = (frame.plot.left + 6.0, frame.y.place(chart.shift_rpm) - 7.0);
    Text::new(format!("shift at {}", show(chart.shift_rpm, 0)), at, Face::Text, scale.words_px, theme.ink_2)
}

fn draw_shift_line(chart: &ShiftChart, scene: &mut Scene, theme: &Theme, frame: &Frame, taken: &mut Taken) {
    let y = frame.y.place(chart.shift_rpm);
    scene.rule((frame.plot.left, y), (frame.plot.right, y), Pen::full(theme.ink, 1.0).dashed(MARKS));
    let label = shift_line(chart, frame, Scale::of(scene.size.0), *theme);
    taken.keep(label.bounds().grown(3.0));
    scene.text_over(label, theme.sheet);
}

/// Where climbs end, those that end together as one; of a setup brought forward (or alone) every gear.
/// Where there is little room, a setup brought forward is the only one labelled.
fn peaks(chart: &ShiftChart, is_narrow: bool) -> Vec<Peak> {
    let alone = if let [only] = chart.setups.as_slice() { Some(only.slot) } else { None };
    let whole = chart.focus.or(alone);
    let is_whole = |climb: &&Climb| Some(climb.slot) == whole;
    let front = chart.setups.iter().filter(is_whole).flat_map(|climb| {
        climb.rising().into_iter().rev().map(|gear| Peak { slots: vec![climb.slot], gear: gear.name.clone(), speed: gear.speed_at_shift })
    });
    let ends = chart.setups.iter().filter(|climb| !is_whole(climb)).filter_map(|climb| Some((climb.slot, *climb.rising().last()?)));
    let alike = |(_, a): (usize, &ClimbGear), (_, b): (usize, &ClimbGear)| {
        a.name == b.name && show(a.speed_at_shift, 1) == show(b.speed_at_shift, 1)
    };
    let together = |group: Vec<(usize, &ClimbGear)>| {
        let (_, gear) = group.first()?;
        Some(Peak { slots: group.iter().map(|(slot, _)| *slot).collect(), gear: gear.name.clone(), speed: gear.speed_at_shift })
    };
    let mut others: Vec<Peak> = groups(ends, alike).into_iter().filter_map(together).collect();
    crate::order::by(&mut others, |a, b| b.speed.total_cmp(&a.speed));
    if is_narrow && chart.focus.is_some() {
        others.clear();
    }
    front.chain(others).collect()
}

impl Peak {
    /// Its label at the first place that is free: ending at its peak, row by row away from the line, then shorter.
    fn choose(&self, frame: &Frame, y: f64, scale: Scale, colour: Colour, taken: &mut Taken) -> Option<Text> {
        let x = frame.x.place(self.speed);
        let speed = show(self.speed, 1);
        let wordings = [format!("{}, {}, {speed}", letters(&self.slots), self.gear), format!("{} {speed}", short_letters(&self.slots))];
        let rows = if scale.is_narrow { 6 } else { 5 };
        let spots = (0..rows).flat_map(|row| {
            let at = y - 8.0 - f64::from(row) * (scale.words_px + 3.0);
            [(Anchor::End, 4.0), (Anchor::Middle, 0.0), (Anchor::Start, -4.0)].map(|(anchor, dx)| Spot { anchor, at: (x + dx, at) })
        });
        let wordings = wordings.map(|words| Text::new(words, (x, y), Face::Strong, scale.words_px, colour));
        taken.choose_wording(&wordings, &spots.collect::<Vec<_>>())
    }
}

/// The line at the cruising speed, drawn below all else.
pub(super) fn draw_cruise_line(chart: &ShiftChart, scene: &mut Scene, theme: &Theme, frame: &Frame) {
    if let (Some(speed), false) = (chart.cruise_speed, chart.cruising().is_empty()) {
        let x = frame.x.place(speed);
        scene.rule((x, frame.plot.top), (x, frame.plot.bottom), Pen::full(theme.ink_3, 1.0).dashed(MARKS));
    }
}

fn draw_cruise(chart: &ShiftChart, scene: &mut Scene, theme: &Theme, frame: &Frame, taken: &mut Taken) {
    let dots = chart.cruising();
    let (Some(speed), false) = (chart.cruise_speed, dots.is_empty()) else { return };
    let scale = Scale::of(scene.size.0);
    let x = frame.x.place(speed);
    taken.keep_off(&[(x, frame.plot.top), (x, frame.plot.bottom)]);
    let together = groups(dots, |(_, a), (_, b)| show(a, 0) == show(b, 0));
    for group in &together {
        draw_dot(chart, scene, theme, frame, group);
        if let Some((_, rpm)) = group.first() {
            taken.keep(Rect::new(x, frame.y.place(*rpm), x, frame.y.place(*rpm)).grown(6.5));
        }
    }
    for group in &together {
        name_dot(chart, scene, theme, frame, group, taken);
    }
    let words =
        if scale.is_narrow { format!("cruise at {}", short(speed)) } else { format!("cruise at {}: top gear marked", short(speed)) };
    let sides = [(Anchor::Start, 8.0), (Anchor::End, -8.0)];
    let heights = [frame.plot.bottom - 8.0, frame.plot.bottom - 26.0, 2.0 + scale.words_px * 0.8, frame.y.place(chart.shift_rpm) + 20.0];
    let places = heights.into_iter().flat_map(|y| sides.map(|(anchor, dx)| (anchor, (x + dx, y))));
    let texts = places.map(|(anchor, at)| Text::new(&words, at, Face::Text, scale.words_px, theme.ink_2).anchored(anchor));
    if let Some(label) = taken.choose(texts) {
        scene.text_over(label, theme.sheet);
    }
}

/// A dot, ringed by the sheet so that it stands off lines; those that fall together lie one within the other.
fn draw_dot(chart: &ShiftChart, scene: &mut Scene, theme: &Theme, frame: &Frame, group: &[(usize, f64)]) {
    let (Some(speed), Some((_, rpm))) = (chart.cruise_speed, group.first()) else { return };
    let at = frame.place(speed, *rpm);
    let widest = 5.0 + 1.8 * f64::from(u8::try_from(group.len() - 1).unwrap_or(0));
    scene.disc(at, widest + 1.5, theme.sheet);
    for ((slot, _), inward) in group.iter().zip(0..) {
        scene.disc(at, widest - 1.8 * f64::from(inward), theme.focused(*slot, chart.focus));
    }
}

fn name_dot(chart: &ShiftChart, scene: &mut Scene, theme: &Theme, frame: &Frame, group: &[(usize, f64)], taken: &mut Taken) {
    let (Some(speed), Some((_, rpm))) = (chart.cruise_speed, group.first()) else { return };
    let scale = Scale::of(scene.size.0);
    let slots: Vec<usize> = group.iter().map(|(slot, _)| *slot).collect();
    let (x, y) = frame.place(speed, *rpm);
    let colour = leading(&slots, chart.focus).map_or(theme.ink, |slot| theme.focused(slot, chart.focus));
    let half = scale.words_px * 0.34;
    let forms = [format!("{}, {}", letters(&slots), show(*rpm, 0)), format!("{} {}", short_letters(&slots), show(*rpm, 0))];
    let places = [
        (Anchor::Start, 11.0, 0.0),
        (Anchor::End, -11.0, 0.0),
        (Anchor::Start, 11.0, 9.0),
        (Anchor::Start, 11.0, -9.0),
        (Anchor::End, -11.0, 9.0),
        (Anchor::End, -11.0, -9.0),
    ];
    let texts = forms.iter().flat_map(|words| {
        places.map(|(anchor, dx, dy)| Text::new(words, (x + dx, y + half + dy), Face::Strong, scale.words_px, colour).anchored(anchor))
    });
    if let Some(label) = taken.choose(texts) {
        scene.text_over(label, theme.sheet);
    }
}
