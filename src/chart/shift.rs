//! The shift chart: each setup climbs to the shift point, drops to where the next gear picks up, and climbs again.
use super::{
    Picture,
    frame::{self, Along, Frame, Scale},
    palette::{self, Theme},
    readout::{Group, ReadOut, Reading, Table},
    scene::{Pen, Point, Scene, Size, Window},
    ticks,
};
use crate::units::number::show;

mod labels;

/// The shift chart's data.
#[derive(Clone, Debug, PartialEq)]
pub struct ShiftChart {
    /// One line to a setup.
    pub setups: Vec<Climb>,
    /// The engine speed of every upshift, in rpm.
    pub shift_rpm: f64,
    /// The road speed marked for cruising, in [`ShiftChart::unit`].
    pub cruise_speed: Option<f64>,
    /// The unit of every road speed, for instance `mph`.
    pub unit: String,
    /// The place of the setup brought forward; the others are greyed.
    pub focus: Option<usize>,
}

/// One setup's line.
#[derive(Clone, Debug, PartialEq)]
pub struct Climb {
    /// Its place among the setups, from 0.
    pub slot: usize,
    /// What the setup is called.
    pub name: String,
    /// Its forward gears, first to top.
    pub gears: Vec<ClimbGear>,
}

/// A gear and the speed it is left at.
#[derive(Clone, Debug, PartialEq)]
pub struct ClimbGear {
    /// What it is called, for instance `1st`.
    pub name: String,
    /// The road speed at the shift point, in [`ShiftChart::unit`]. A gear without one above zero is left out.
    pub speed_at_shift: f64,
}

impl Climb {
    fn usable(&self) -> impl Iterator<Item = &ClimbGear> {
        self.gears.iter().filter(|gear| gear.speed_at_shift > 0.0 && gear.speed_at_shift.is_finite())
    }

    /// The gears a climb goes through: each faster than all before it.
    fn rising(&self) -> Vec<&ClimbGear> {
        let mut rising: Vec<&ClimbGear> = Vec::new();
        for gear in self.usable() {
            if rising.last().is_none_or(|last| last.speed_at_shift < gear.speed_at_shift) {
                rising.push(gear);
            }
        }
        rising
    }

    fn top(&self) -> Option<&ClimbGear> {
        self.usable().last()
    }
}

/// A road speed without idle digits: `70`, `112.7`.
fn short(speed: f64) -> String {
    show(speed, usize::from((speed - speed.round()).abs() >= 0.05))
}

/// How far past the shift point the cruising speed may lie and still be shown.
const PAST_SHIFT: f64 = 1.3;

impl ShiftChart {
    /// Engine speed at a road speed in a gear, in rpm.
    fn rpm(&self, speed: f64, gear: &ClimbGear) -> f64 {
        self.shift_rpm * speed / gear.speed_at_shift
    }

    /// Each setup's engine speed in its top gear at the cruising speed, where the picture can show it.
    fn cruising(&self) -> Vec<(usize, f64)> {
        let Some(speed) = self.cruise_speed.filter(|speed| *speed > 0.0 && speed.is_finite()) else { return Vec::new() };
        let rpm = |climb: &Climb| Some((climb.slot, self.rpm(speed, climb.top()?)));
        self.setups.iter().filter_map(rpm).filter(|(_, rpm)| *rpm <= PAST_SHIFT * self.shift_rpm).collect()
    }

    /// Engine speeds just after each upshift.
    fn landings(&self) -> impl Iterator<Item = f64> + '_ {
        let of_climb = |climb: &Climb| {
            let gears = climb.rising();
            gears
                .windows(2)
                .filter_map(|two| if let [low, high] = two { Some(self.rpm(low.speed_at_shift, high)) } else { None })
                .collect::<Vec<_>>()
        };
        self.setups.iter().flat_map(of_climb)
    }

    /// From a round engine speed below everything shown to a round one above.
    fn up(&self) -> Along {
        let highest = self.cruising().into_iter().map(|(_, rpm)| rpm).fold(self.shift_rpm, f64::max);
        let lowest = self.cruising().into_iter().map(|(_, rpm)| rpm).chain(self.landings()).fold(self.shift_rpm * 0.6, f64::min);
        let step = ticks::round_step(0.0, self.shift_rpm, 10.0).unwrap_or(1000.0);
        let least = ((lowest - 0.25 * step) / step).floor().max(0.0) * step;
        Along { least, greatest: (highest / step - 1e-9).ceil() * step, title: "engine rpm".to_owned() }
    }

    /// From standstill to a little past the fastest speed shown.
    fn along(&self) -> Along {
        let speeds = self.setups.iter().flat_map(Climb::usable).map(|gear| gear.speed_at_shift);
        let cruise = self.cruise_speed.filter(|_| !self.cruising().is_empty()).unwrap_or(0.0);
        let fastest = speeds.fold(cruise, f64::max);
        let step = ticks::round_step(0.0, fastest, 15.0).unwrap_or(10.0);
        Along { least: 0.0, greatest: (fastest * 1.02 / step).ceil() * step, title: format!("road speed, {}", self.unit) }
    }

    /// The saw teeth of one setup.
    fn teeth(&self, climb: &Climb, frame: &Frame) -> Vec<Point> {
        let least_rpm = frame.y.from.0;
        let mut speed_before = None;
        let mut line = Vec::new();
        for gear in climb.rising() {
            let speed = speed_before.unwrap_or(gear.speed_at_shift * least_rpm / self.shift_rpm);
            line.push(frame.place(speed, self.rpm(speed, gear)));
            line.push(frame.place(gear.speed_at_shift, self.shift_rpm));
            speed_before = Some(gear.speed_at_shift);
        }
        line
    }

    fn draw_teeth(&self, scene: &mut Scene, theme: &Theme, frame: &Frame, scale: Scale) {
        let is_back = |climb: &&Climb| self.focus.is_some_and(|focus| focus != climb.slot);
        let (back, front): (Vec<&Climb>, Vec<&Climb>) = self.setups.iter().partition(is_back);
        for climb in back.into_iter().chain(front) {
            let width = if is_back(&climb) { 1.4 } else { scale.stroke_px };
            let pen = Pen::full(theme.focused(climb.slot, self.focus), width).dashed(palette::dash(climb.slot));
            scene.line(self.teeth(climb, frame), pen);
        }
    }

    /// The picture's frame, with room above the shift line for its labels.
    fn frame(&self, size: Size) -> Frame {
        let (along, up) = (self.along(), self.up());
        let tight = Frame::new(size, &along, &up, 0.0);
        let room = tight.y.place(self.shift_rpm) - tight.plot.top;
        let wanted = labels::headroom(self, &tight);
        Frame::new(size, &along, &up, (wanted - room).max(0.0))
    }

    fn is_drawable(&self) -> bool {
        self.shift_rpm > 0.0 && self.shift_rpm.is_finite() && self.setups.iter().any(|climb| climb.top().is_some())
    }
}

impl Picture for ShiftChart {
    fn axis_unit(&self) -> Option<&str> {
        Some(&self.unit)
    }

    fn title(&self) -> String {
        "Shift chart".to_owned()
    }

    fn height(&self, width: f64) -> f64 {
        if Scale::of(width).is_narrow { 320.0 } else { 350.0 }
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        if !self.is_drawable() {
            return scene;
        }
        let frame = self.frame(size);
        frame.draw(&mut scene, theme);
        labels::draw_cruise_line(self, &mut scene, theme, &frame);
        self.draw_teeth(&mut scene, theme, &frame, Scale::of(size.0));
        labels::draw(self, &mut scene, theme, &frame);
        scene.window = Some(Window { plot: frame.plot, x: frame.x });
        scene
    }

    fn describe(&self) -> Vec<String> {
        let tell = |climb: &Climb| {
            let gears = climb.rising();
            let speeds: Vec<String> = gears.iter().map(|gear| format!("{} {}", gear.name, show(gear.speed_at_shift, 1))).collect();
            let landings: Vec<String> = gears
                .windows(2)
                .filter_map(|two| {
                    if let [low, high] = two {
                        Some(format!("{} at {}", high.name, show(self.rpm(low.speed_at_shift, high), 0)))
                    } else {
                        None
                    }
                })
                .collect();
            let picks = if landings.is_empty() { String::new() } else { format!(" Picks up {} rpm.", landings.join(", ")) };
            let cruise = self
                .cruise_speed
                .zip(climb.top())
                .map(|(speed, top)| format!(" At {} {} in {}: {} rpm.", short(speed), self.unit, top.name, show(self.rpm(speed, top), 0)));
            let speeds = if speeds.is_empty() { "no speed known".to_owned() } else { format!("{} {}", speeds.join(", "), self.unit) };
            let shift = show(self.shift_rpm, 0);
            format!("{}, {}, at {shift} rpm: {speeds}.{picks}{}", palette::letter(climb.slot), climb.name, cruise.unwrap_or_default())
        };
        self.setups.iter().map(tell).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let group = |climb: &Climb| {
            // A climb uses the first gear that is not yet past the shift point.
            let used = climb.usable().find(|gear| x <= gear.speed_at_shift);
            let reading = |gear: &ClimbGear| {
                let rpm = self.rpm(x, gear);
                let stands_out = used.is_some_and(|used| std::ptr::eq(used, gear));
                Reading { label: gear.name.clone(), value: format!("{} rpm", show(rpm, 0)), stands_out, is_beyond: rpm > self.shift_rpm }
            };
            Group { slot: Some(climb.slot), name: climb.name.clone(), readings: climb.usable().map(reading).collect() }
        };
        ReadOut { at: format!("{} {}", show(x, 1), self.unit), groups: self.setups.iter().map(group).collect() }
    }

    fn stops(&self) -> Vec<f64> {
        let speeds = self.setups.iter().flat_map(Climb::usable).map(|gear| gear.speed_at_shift);
        let along = self.along();
        frame::stops(speeds.chain(self.cruise_speed).chain(ticks::round_steps(along.least, along.greatest, 30.0)))
    }

    fn table(&self) -> Table {
        let unit = frame::unit_key(&self.unit);
        let (at_shift, per_1000) = (format!("speed_at_shift_{unit}"), format!("speed_per_1000_rpm_{unit}"));
        let mut table = Table::new(["setup", "name", "gear", &at_shift, &per_1000, "rpm_at_cruise"]);
        for climb in &self.setups {
            for gear in climb.usable() {
                let cruise = self.cruise_speed.map(|speed| self.rpm(speed, gear).to_string()).unwrap_or_default();
                let per_1000 = gear.speed_at_shift / self.shift_rpm * 1000.0;
                let setup = palette::letter(climb.slot).to_string();
                let cells = [setup, climb.name.clone(), gear.name.clone(), gear.speed_at_shift.to_string(), per_1000.to_string(), cruise];
                table.rows.push(cells.to_vec());
            }
        }
        table
    }
}
