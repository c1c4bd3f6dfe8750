//! Whether an entry as typed can stand in the catalogue, and as what; what is doubtful about it.

use super::{Column, Entry, LineError, Part, PartKind, money};
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
        if let Err(why) = entry.settle_price() {
            problems.push(Problem::stop(Column::Price.name(), &why));
        }
        if let Err(why) = entry.settle_layout() {
            problems.push(Problem::stop(Column::Layout.name(), &why));
        }
        for column in self.kind.columns().filter(|column| problems.iter().all(|known| known.field != column.name())).collect::<Vec<_>>() {
            match column.read(entry.text(column)) {
                Ok(text) => entry.set(column, text),
                Err(why) => problems.push(Problem::stop(column.name(), &why)),
            }
        }
        entry.settle_stock(self.text(Column::InStock));
        if entry.kind.is_named() && entry.title().is_empty() {
            let column = entry.kind.title();
            problems.push(Problem::stop(column.name(), &LineError::Blank(column)));
        }
        let unread = entry.part().err().unwrap_or_default();
        let news: Vec<Problem> = unread.into_iter().filter(|one| problems.iter().all(|known| known.field != one.field)).collect();
        problems.extend(news);
        if problems.is_empty() { Ok(entry) } else { Err(problems) }
    }

    /// Takes a currency that stands with the price into its own column.
    fn settle_price(&mut self) -> Result<(), LineError> {
        let Some(money::Typed { amount, currency: Some(price) }) = money::read(self.text(Column::Price)) else { return Ok(()) };
        let currency = self.text(Column::Currency).trim().to_ascii_uppercase();
        if !currency.is_empty() && currency != price {
            return Err(LineError::TwoCurrencies { price, currency });
        }
        self.set(Column::Price, amount);
        self.set(Column::Currency, price);
        Ok(())
    }

    /// Writes the layout of a gear set that names none, where its counts leave no choice.
    fn settle_layout(&mut self) -> Result<(), LineError> {
        if self.kind != PartKind::GearSet || !self.text(Column::Layout).trim().is_empty() {
            return Ok(());
        }
        let layout = self.plain_layout().ok_or(LineError::LayoutOpen)?;
        self.set(Column::Layout, layout.id());
        Ok(())
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
