//! What of a job differs from another, in a few words: what an undone step was about.

use super::{Job, Setup};

impl Job {
    /// What differs from another state of the same job, in a few words: `gear set of B`, `the car or engine`.
    pub fn what_differs(&self, other: &Self) -> String {
        if self.setups.len() != other.setups.len() {
            return "setups added or removed".into();
        }
        let differing = self.setups.iter().zip(&other.setups).enumerate().find(|(_, (ours, theirs))| ours != theirs);
        if let Some((column, (ours, theirs))) = differing {
            return format!("{} of {}", part_that_differs(ours, theirs), Self::letter(column));
        }
        let parts = [
            (self.title != other.title, "the title"),
            (self.shift != other.shift, "the shift rpm"),
            (self.cruise != other.cruise, "the cruise speed"),
            (self.units != other.units, "the units"),
            (self.pull != other.pull, "the car or its engine"),
            (self.bench != other.bench, "the bench"),
            (self.inside != other.inside, "what is looked at inside the box"),
            (self.speedo != other.speedo, "the dial"),
            (self.swap != other.swap, "the tunnel or slip"),
            (self.wishes != other.wishes, "the wishes"),
        ];
        parts.into_iter().find_map(|(differs, words)| differs.then_some(words)).unwrap_or("notes of the job").into()
    }
}

fn part_that_differs(ours: &Setup, theirs: &Setup) -> &'static str {
    let parts = [
        (ours.id != theirs.id, "the order of the columns, from the place"),
        (ours.name != theirs.name, "the name"),
        (ours.gearbox.name != theirs.gearbox.name, "the gear set"),
        (ours.gearbox != theirs.gearbox, "the tooth counts"),
        (ours.final_drive != theirs.final_drive, "the ring and pinion"),
        (ours.stages != theirs.stages, "the extra stages"),
        (ours.tyre != theirs.tyre || ours.tread_lost != theirs.tread_lost, "the tyre"),
        (ours.speedo != theirs.speedo, "the speedometer gears"),
        (ours.swap != theirs.swap, "the sizes of the box"),
    ];
    parts.into_iter().find_map(|(differs, words)| differs.then_some(words)).unwrap_or("the inside")
}
