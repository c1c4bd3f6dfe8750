//! Changes to a job that are not typing: setups added, copied, moved and removed; a gear set picked; gears and stages added.

use super::{Chosen, Gearbox, Job, MOST_SETUPS, MOST_STAGES, Setup, SetupId, Stage};
use crate::catalogue::{Column, Entry, PartKind};
use crate::gearing::{self, Layout, StageKind};
use crate::units::Typed;

/// The direction in which a setup's column is moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Toward {
    /// Towards column A.
    Left,
    /// Away from column A.
    Right,
}

impl Job {
    fn take_id(&mut self) -> SetupId {
        let id = SetupId(self.next_setup);
        self.next_setup = self.next_setup.saturating_add(1);
        id
    }

    /// Adds an empty setup behind the others. Nothing happens where there are six.
    pub fn add_setup(&mut self) -> Option<SetupId> {
        if self.setups.len() >= MOST_SETUPS {
            return None;
        }
        let id = self.take_id();
        let gearbox = Gearbox { gears: vec![String::new(); 4], ..Gearbox::default() };
        let tyre = Typed::new("", self.units);
        self.setups.push(Setup { id, name: "New setup".into(), gearbox, tyre, ..Setup::default() });
        Some(id)
    }

    /// Copies a setup into the column beside it. Nothing happens where there are six.
    ///
    /// ```
    /// use layshaft::job::demo;
    /// use layshaft::units::System;
    /// let mut job = demo::empty(System::Inch);
    /// let first = job.setups[0].id;
    /// let copy = job.copy_setup(first).and_then(|id| job.setup(id));
    /// assert_eq!(copy.map(|setup| setup.name.as_str()), Some("New setup (2)"));
    /// ```
    pub fn copy_setup(&mut self, id: SetupId) -> Option<SetupId> {
        let at = self.setups.iter().position(|setup| setup.id == id)?;
        if self.setups.len() >= MOST_SETUPS {
            return None;
        }
        let mut copy = self.setups.get(at)?.clone();
        copy.id = self.take_id();
        copy.name = self.name_for_a_copy(&copy.name);
        let id = copy.id;
        self.setups.insert(at + 1, copy);
        Some(id)
    }

    /// `Close (2)`, or the first number behind it that no setup has yet.
    fn name_for_a_copy(&self, name: &str) -> String {
        let stem = name.rsplit_once(" (").filter(|(_, rest)| rest.strip_suffix(')').is_some_and(is_number)).map_or(name, |(stem, _)| stem);
        let is_free = |name: &String| self.setups.iter().all(|setup| setup.name != *name);
        (2..=MOST_SETUPS + 1).map(|number| format!("{stem} ({number})")).find(is_free).unwrap_or_else(|| name.to_owned())
    }

    /// Copies a setup behind all others, under its own name. Nothing happens where there are six.
    pub fn copy_setup_to_end(&mut self, id: SetupId) -> Option<SetupId> {
        if self.setups.len() >= MOST_SETUPS {
            return None;
        }
        let copy = Setup { id: self.take_id(), ..self.setup(id)?.clone() };
        let id = copy.id;
        self.setups.push(copy);
        Some(id)
    }

    /// Gives every setup the final drive of one.
    pub fn spread_axle(&mut self, id: SetupId) {
        let Some(drive) = self.setup(id).map(|setup| setup.final_drive.clone()) else { return };
        for setup in &mut self.setups {
            setup.final_drive.clone_from(&drive);
        }
    }

    /// Gives every setup the tyre of one, with the tread it has lost.
    pub fn spread_tyre(&mut self, id: SetupId) {
        let Some((tyre, lost)) = self.setup(id).map(|setup| (setup.tyre.clone(), setup.tread_lost.clone())) else { return };
        for setup in &mut self.setups {
            setup.tyre.clone_from(&tyre);
            setup.tread_lost.clone_from(&lost);
        }
    }

    /// Removes a setup; the last one stays.
    pub fn remove_setup(&mut self, id: SetupId) {
        if self.setups.len() > 1 {
            self.setups.retain(|setup| setup.id != id);
        }
    }

    /// Moves a setup one column to the left or right.
    pub fn move_setup(&mut self, id: SetupId, toward: Toward) {
        let Some(at) = self.setups.iter().position(|setup| setup.id == id) else { return };
        let to = match toward {
            Toward::Left => at.checked_sub(1),
            Toward::Right => Some(at + 1).filter(|to| *to < self.setups.len()),
        };
        if let Some(to) = to {
            self.setups.swap(at, to);
        }
    }
}

impl Gearbox {
    /// The gearbox of a gear set in the catalogue, its counts as they stand there.
    pub fn picked(set: &Entry) -> Self {
        let [name, constant, reverse, idler] =
            [Column::Name, Column::Constant, Column::Reverse, Column::Idler].map(|column| set.text(column).to_owned());
        Self { name, altered: false, layout: set.layout(), constant, gears: set.gears(), reverse, idler }
    }

    /// The gearbox as a gear set for the catalogue. A constant pair typed before the box was laid out as two-shaft is left out.
    pub fn as_set(&self) -> Entry {
        let constant = if self.layout == Layout::TwoShaft { "" } else { &self.constant };
        let set = Entry::new(PartKind::GearSet)
            .with(Column::Name, &self.name)
            .with(Column::Layout, self.layout.id())
            .with(Column::Constant, constant)
            .with(Column::Reverse, &self.reverse)
            .with(Column::Idler, &self.idler)
            .with(Column::InStock, "yes");
        // A top gear that is not counted yet is a gear all the same.
        let counted = |gear: &String| if gear.trim().is_empty() { "?".to_owned() } else { gear.clone() };
        Column::GEARS.into_iter().zip(&self.gears).fold(set, |set, (column, gear)| set.with(column, counted(gear)))
    }

    /// Adds a blank gear at the top. Nothing happens where there are eight.
    pub fn add_gear(&mut self) {
        if self.gears.len() < gearing::Gearbox::MOST_GEARS {
            self.gears.push(String::new());
            self.altered = true;
        }
    }

    /// Removes the top gear; one stays.
    pub fn remove_gear(&mut self) {
        if self.gears.len() > 1 {
            self.gears.pop();
            self.altered = true;
        }
    }

    /// Changes the layout and keeps every count as typed.
    pub fn lay_out(&mut self, layout: Layout) {
        if self.layout != layout {
            self.layout = layout;
            self.altered = true;
        }
    }
}

impl Setup {
    /// Adds a blank extra stage. Nothing happens where there are four.
    pub fn add_stage(&mut self) {
        if self.stages.len() < MOST_STAGES {
            self.stages.push(Stage::default());
        }
    }

    /// Removes an extra stage.
    pub fn remove_stage(&mut self, at: usize) {
        if at < self.stages.len() {
            self.stages.remove(at);
        }
    }
}

impl Stage {
    /// Says what it is, and puts it where such a stage stands.
    pub fn become_kind(&mut self, kind: Chosen<StageKind>) {
        if let Some(kind) = kind.value() {
            self.place = kind.place();
        }
        self.kind = kind;
    }
}

fn is_number(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}
