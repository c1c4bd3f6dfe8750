//! Whether an entry as typed can stand in the catalogue, and as what; what is doubtful about it.

use super::{Column, Entry, LineError, Part};
use crate::gearing::check;
use crate::problem::Problem;

impl Entry {
    /// The entry as the catalogue takes it: cells without outer blanks, choices written one way. It is taken whole or not at all.
    ///
    /// # Errors
    /// Everything that is wrong, each at its column.
    pub fn checked(&self) -> Result<Self, Vec<Problem>> {
        let mut entry = self.clone();
        let mut problems = Vec::new();
        for column in self.kind.columns() {
            match column.read(self.text(column)) {
                Ok(text) => entry.set(column, text),
                Err(why) => problems.push(Problem::stop(column.name(), &why)),
            }
        }
        entry.settle_stock(self.text(Column::InStock));
        if entry.kind.is_named() && entry.title().is_empty() {
            let column = entry.kind.title();
            problems.push(Problem::stop(column.name(), &LineError::Blank { column }));
        }
        let unread = entry.part().err().unwrap_or_default();
        let news: Vec<Problem> = unread.into_iter().filter(|one| problems.iter().all(|known| known.field != one.field)).collect();
        problems.extend(news);
        if problems.is_empty() { Ok(entry) } else { Err(problems) }
    }

    /// Makes quantity and stock agree: how many there are may be written in either, and of none there is none in stock.
    fn settle_stock(&mut self, typed: &str) {
        if self.text(Column::Quantity).is_empty()
            && let Ok(count) = Column::Quantity.read(typed)
        {
            self.set(Column::Quantity, count);
        }
        match (self.text(Column::Quantity), self.text(Column::InStock)) {
            ("0", _) | ("", "") => self.put_in_stock(false),
            (_, "") => self.put_in_stock(true),
            _ => {}
        }
    }

    /// What wants a second look about an entry that can be used.
    pub fn doubts(&self) -> Vec<Problem> {
        match self.part() {
            Ok(Part::GearSet(gearbox)) => check::doubts(&gearbox).iter().map(|doubt| Problem::caution("gears", doubt)).collect(),
            _ => Vec::new(),
        }
    }

    /// What is wrong with an entry being written, each with its column, and what is doubtful about it.
    pub fn problems(&self) -> Vec<Problem> {
        match self.checked() {
            Ok(entry) => entry.doubts(),
            Err(problems) => problems,
        }
    }
}

/// The first problem of one column.
pub fn problem_at(column: Column, problems: &[Problem]) -> Option<&Problem> {
    problems.iter().find(|problem| problem.field == column.name())
}
