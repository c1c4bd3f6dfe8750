//! What one planning leaves for the next.

use std::sync::Arc;

use super::grid::Known;
use crate::motion::run::Start;
use crate::motion::shift::{self, Rule, Shift};
use crate::motion::vehicle::Vehicle;
use crate::units::Time;

/// What was found out about one vehicle while its runs were planned: plans for other goals are found sooner on it, and come out the same.
#[derive(Clone, Debug, Default)]
pub struct Ground {
    shifts: Option<(Rule, Vec<Shift>)>,
    known: Option<(Start, Time, Arc<Known>)>,
}

impl Ground {
    /// A vehicle of which nothing is known but its shifts, judged one by one.
    pub fn new(vehicle: &Vehicle, rule: Rule) -> Self {
        Self { shifts: Some((rule, shift::shifts(vehicle, rule))), known: None }
    }

    /// The shifts of the vehicle, judged one by one.
    pub fn shifts(&self, vehicle: &Vehicle, rule: Rule) -> Vec<Shift> {
        let known = self.shifts.as_ref().filter(|(known, _)| *known == rule);
        known.map_or_else(|| shift::shifts(vehicle, rule), |(_, shifts)| shifts.clone())
    }

    /// What is known of a start.
    pub(super) fn known(&self, start: Start, shift_time: Time) -> Option<&Known> {
        self.known.as_ref().filter(|(at, time, _)| (*at, *time) == (start, shift_time)).map(|(.., known)| &**known)
    }

    /// The same with what is known of a start now.
    pub(super) fn knowing(self, start: Start, shift_time: Time, known: Arc<Known>) -> Self {
        Self { known: Some((start, shift_time, known)), ..self }
    }
}
