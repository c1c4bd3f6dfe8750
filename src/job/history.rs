//! Undo and redo: one step per field edit or change, not per key.

use super::{Field, Job};

/// How many steps are kept.
pub const DEPTH: usize = 300;

/// The steps behind and before the job as it is now.
#[derive(Clone, Debug, Default)]
pub struct History {
    past: Vec<Job>,
    future: Vec<Job>,
    open: Option<Field>,
}

impl History {
    /// Keeps `before`, the job as it was, ahead of typing into `field`. Keys typed into the same field without leaving it are one step.
    pub fn before_typing(&mut self, before: &Job, field: Field) {
        if self.open != Some(field) {
            self.keep(before);
            self.open = Some(field);
        }
    }

    /// Keeps `before`, the job as it was, ahead of any other change.
    pub fn before_change(&mut self, before: &Job) {
        self.keep(before);
        self.open = None;
    }

    /// Ends the step of the field being typed into, as when it loses the focus.
    pub fn close(&mut self) {
        self.open = None;
    }

    /// Goes one step back; answers the job as it was.
    ///
    /// ```
    /// use layshaft::job::{History, demo};
    /// use layshaft::units::System;
    /// let (mut job, mut history) = (demo::empty(System::Inch), History::default());
    /// history.before_change(&job);
    /// job.title = "The blue van".into();
    /// assert_eq!(history.undo(&job).map(|job| job.title).as_deref(), Some("New job"));
    /// assert!(history.can_redo());
    /// ```
    pub fn undo(&mut self, now: &Job) -> Option<Job> {
        let before = self.past.pop()?;
        self.open = None;
        self.future.push(now.clone());
        Some(before)
    }

    /// Goes one step forward again.
    pub fn redo(&mut self, now: &Job) -> Option<Job> {
        let after = self.future.pop()?;
        self.open = None;
        self.past.push(now.clone());
        Some(after)
    }

    /// Whether there is a step to undo.
    pub fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// Whether there is a step to redo.
    pub fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }

    fn keep(&mut self, job: &Job) {
        if self.past.len() >= DEPTH {
            self.past.remove(0);
        }
        self.past.push(job.clone());
        self.future.clear();
    }
}
