//! Parts that leave the shop's shelf with a job, and come back where that was a slip.

use super::{Catalogue, Column, Entry, PartKind};

/// What left the shelf of one entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OffShelf {
    /// The kind of the entry.
    pub kind: PartKind,
    /// Its id.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// How many left.
    pub many: u32,
    /// How many are still there.
    pub remain: u32,
}

impl Entry {
    /// How many there are on the shelf; none where nobody counted them.
    pub fn count(&self) -> Option<u32> {
        self.text(Column::Quantity).trim().parse().ok()
    }
}

impl Catalogue {
    /// The catalogue with parts taken off the shelf, as many as a car has of each, and what was taken.
    ///
    /// Only what is the shop's own and counted is taken, and no more than there is.
    pub fn take_off(&self, parts: &[&Entry]) -> (Self, Vec<OffShelf>) {
        let mut after = self.clone();
        let mut taken = Vec::new();
        for part in parts.iter().filter(|part| part.own) {
            let Some(count) = part.count().filter(|count| *count > 0) else { continue };
            let many = part.kind.on_a_car().min(count);
            let remain = count - many;
            after = after.counted(part.kind, &part.id, remain);
            taken.push(OffShelf { kind: part.kind, id: part.id.clone(), name: part.title().to_owned(), many, remain });
        }
        (after, taken)
    }

    /// The catalogue with what was taken off the shelf back on it; an entry that is gone since stays gone.
    #[must_use]
    pub fn put_back(&self, taken: &[OffShelf]) -> Self {
        taken.iter().fold(self.clone(), |after, part| {
            let count = after.get(part.kind, &part.id).and_then(Entry::count).unwrap_or(0);
            after.counted(part.kind, &part.id, count.saturating_add(part.many))
        })
    }
}

/// What was taken, in a sentence: `Off the shelf: Corner four (1 left), 4 of 185/70R14 (none left).`
pub fn said(taken: &[OffShelf]) -> String {
    let one = |part: &OffShelf| {
        let many = if part.many == 1 { String::new() } else { format!("{} of ", part.many) };
        let remain = if part.remain == 0 { "none".to_owned() } else { part.remain.to_string() };
        format!("{many}{} ({remain} left)", part.name)
    };
    format!("Off the shelf: {}.", taken.iter().map(one).collect::<Vec<_>>().join(", "))
}
