//! The gear train to scale: shafts as thick lines, gears as blocks as high as their tooth counts, the power path filled.
//!
//! Gears that mesh across the box share its centre distance in the ratio of their teeth, so blocks touch where pitch circles do.
//! An idler is drawn unfolded on a line of its own below; a dashed line joins it to the gear it also meshes with.
use super::{
    Picture,
    frame::Scale,
    palette::{Hue, Theme},
    readout::{Group, ReadOut, Reading, Table},
    scene::{Rect, Scene, Size},
};

mod drawing;
mod forces;
mod layout;
pub mod turned;

pub use forces::{EndThrust, Push};

/// The data of a gear train.
#[derive(Clone, Debug, PartialEq)]
pub struct Train {
    /// What the picture is called.
    pub title: String,
    /// Whose gearbox it is.
    pub hue: Hue,
    /// Every gear names one of these by its place.
    pub shafts: Vec<Shaft>,
    /// The gears.
    pub wheels: Vec<Wheel>,
    /// Which gears mesh, by their places in `wheels`.
    pub meshes: Vec<(usize, usize)>,
    /// Synchronisers and other couplings on the shafts.
    pub couplings: Vec<Coupling>,
    /// The forces on its gears, where they are shown.
    pub pushes: Vec<Push>,
    /// What is left over along its shafts, where it is shown.
    pub thrusts: Vec<EndThrust>,
}

/// Where a shaft lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Line {
    /// The upper line: input and output shaft of a countershaft box, the input shaft of a two-shaft box.
    Upper,
    /// The lower line: the countershaft, or the output shaft of a two-shaft box.
    Lower,
    /// Below both: an idler's pin.
    Idler,
}

/// A line that gears sit on.
#[derive(Clone, Debug, PartialEq)]
pub struct Shaft {
    /// What it is called, for instance `cluster`.
    pub name: String,
    /// Its speed as shown, for instance `5,417`; empty where none is known.
    pub rpm: String,
    /// Which line it lies on.
    pub line: Line,
    /// Where it begins, in slots from the left.
    pub from: f64,
    /// Where it ends, in slots.
    pub to: f64,
    /// Whether power runs through it.
    pub is_on_path: bool,
}

/// A gear.
#[derive(Clone, Debug, PartialEq)]
pub struct Wheel {
    /// Its shaft's place in [`Train::shafts`].
    pub shaft: usize,
    /// Where it sits, in slots from the left; gears that mesh share one.
    pub slot: f64,
    /// The count, which sets how large it is drawn.
    pub teeth: u32,
    /// What stands beside it, for instance `2nd`; may be empty.
    pub name: String,
    /// Its speed as shown; empty where the shaft's says enough.
    pub rpm: String,
    /// Whether power runs through it.
    pub is_on_path: bool,
}

/// A synchroniser or other coupling on a shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct Coupling {
    /// Its shaft's place in [`Train::shafts`].
    pub shaft: usize,
    /// Where it sits, in slots.
    pub slot: f64,
    /// What it couples, for instance `1–2`.
    pub name: String,
    /// Whether it is in use.
    pub is_on_path: bool,
}

impl Train {
    fn shaft_of(&self, wheel: &Wheel) -> Option<&Shaft> {
        self.shafts.get(wheel.shaft)
    }

    /// The two gears of a mesh, where both are there.
    fn pairs(&self) -> impl Iterator<Item = (&Wheel, &Wheel)> {
        self.meshes.iter().filter_map(|(one, other)| Some((self.wheels.get(*one)?, self.wheels.get(*other)?)))
    }
}

/// A shaft or gear with its speed, as words.
fn spoken(name: &str, rpm: &str) -> String {
    match (name.is_empty(), rpm.is_empty()) {
        (_, true) => name.to_owned(),
        (true, false) => format!("{rpm} rpm"),
        (false, false) => format!("{name} {rpm} rpm"),
    }
}

impl Picture for Train {
    fn title(&self) -> String {
        self.title.clone()
    }

    fn height(&self, width: f64) -> f64 {
        let idler = if self.shafts.iter().any(|shaft| shaft.line == Line::Idler) { 1.2 } else { 1.0 };
        (if Scale::of(width).is_narrow { 280.0 } else { 310.0 }) * idler
    }

    fn scene(&self, theme: &Theme, size: Size) -> Scene {
        let mut scene = Scene::new(size);
        if let Some(plan) = layout::Plan::of(self, size) {
            drawing::draw(self, &mut scene, theme, &plan);
            let plot = Rect::new(plan.x.from.1, 0.0, plan.x.to.1, size.1);
            scene.window = Some(super::scene::Window { plot, x: plan.x });
        }
        scene
    }

    fn describe(&self) -> Vec<String> {
        let shafts: Vec<String> = self.shafts.iter().map(|shaft| spoken(&shaft.name, &shaft.rpm)).collect();
        let on = |wheel: &Wheel| {
            let shaft = self.shaft_of(wheel).map(|shaft| format!(" on the {}", shaft.name)).unwrap_or_default();
            let label = spoken(&wheel.name, &wheel.rpm);
            let label = if label.is_empty() { String::new() } else { format!(" ({label})") };
            format!("{} teeth{shaft}{label}", wheel.teeth)
        };
        let pair = |(one, other): (&Wheel, &Wheel)| {
            let path = if one.is_on_path && other.is_on_path { ", in the power path" } else { "" };
            format!("{} with {}{path}.", on(one), on(other))
        };
        let pushes = self.pushes.iter().filter_map(|push| push.said(self));
        let thrusts = self.thrusts.iter().filter_map(|thrust| thrust.said(self));
        let meshes = std::iter::once(format!("Shafts: {}.", shafts.join(", "))).chain(self.pairs().map(pair));
        meshes.chain(pushes).chain(thrusts).collect()
    }

    fn read_out(&self, x: f64) -> ReadOut {
        let off = |wheel: &Wheel| (wheel.slot - x).abs();
        let nearest = self.wheels.iter().map(off).fold(f64::INFINITY, f64::min);
        let reading = |wheel: &Wheel| {
            let push = self.pushes.iter().find(|push| self.wheels.get(push.wheel) == Some(wheel));
            let shaft = self.shaft_of(wheel);
            let rpm = if wheel.rpm.is_empty() { shaft.map_or("", |shaft| shaft.rpm.as_str()) } else { &wheel.rpm };
            let rpm = if rpm.is_empty() { String::new() } else { format!(", {rpm} rpm") };
            let label = shaft.map(|shaft| shaft.name.clone()).unwrap_or_default();
            let push = push.map_or_else(String::new, |push| format!(", {}", push.listed()));
            Reading { label, value: format!("{} teeth{rpm}{push}", wheel.teeth), stands_out: wheel.is_on_path, is_beyond: false }
        };
        let here: Vec<&Wheel> = self.wheels.iter().filter(|wheel| off(wheel) <= nearest + 1e-9).collect();
        let name = here.iter().map(|wheel| wheel.name.as_str()).find(|name| !name.is_empty()).unwrap_or("").to_owned();
        let group = Group { slot: self.hue.slot(), name: name.clone(), readings: here.into_iter().map(reading).collect() };
        ReadOut { at: name, groups: vec![group] }
    }

    fn stops(&self) -> Vec<f64> {
        super::frame::stops(self.wheels.iter().map(|wheel| wheel.slot))
    }

    fn table(&self) -> Table {
        let mut table = Table::new(["shaft", "gear", "teeth", "rpm", "in_power_path"]);
        let row = |wheel: &Wheel| {
            let (shaft, rpm) = self.shaft_of(wheel).map(|shaft| (shaft.name.clone(), shaft.rpm.clone())).unwrap_or_default();
            let rpm = if wheel.rpm.is_empty() { rpm } else { wheel.rpm.clone() };
            vec![shaft, wheel.name.clone(), wheel.teeth.to_string(), rpm.replace(',', ""), wheel.is_on_path.to_string()]
        };
        table.rows = self.wheels.iter().map(row).collect();
        table
    }
}
