//! A whole line of a box in the field of one gear: which fields it fills. And what was taken where a text leaves it open.

use super::{Field, Gearbox, Job, SetupField};
use crate::gearing::read::line::{self, BoxLine, Taken};
use crate::gearing::{FinalDrive, Gear, GearNumber, Layout, read};

impl Gearbox {
    /// The box that a text in the field of a gear tells; `None` where it tells that one gear, or none.
    ///
    /// Where a constant pair is typed already, the line has one only if it has more items than the box has gears.
    pub fn line_in(&self, text: &str) -> Option<BoxLine> {
        if read::gear(text, self.layout).is_ok() {
            return None;
        }
        let forward = (!self.constant.trim().is_empty()).then_some(self.gears.len());
        line::line(text, self.layout, forward).ok().filter(|line| line.gears.len() > 1)
    }

    /// Fills the fields from a line in the field of a gear: from that gear up where the box has room for it, else the
    /// whole box. A constant or reverse pair that the line has not stays as typed.
    pub fn fill_from(&mut self, gear: GearNumber, line: BoxLine) {
        self.altered = true;
        let upper = self
            .gears
            .get_mut(gear.place()..)
            .filter(|upper| gear > GearNumber::FIRST && line.constant.is_none() && line.gears.len() <= upper.len());
        match upper {
            Some(upper) => upper.iter_mut().zip(line.gears).for_each(|(kept, typed)| *kept = typed),
            None => self.gears = line.gears,
        }
        if let Some(constant) = line.constant {
            self.constant = constant;
        }
        if let Some(reverse) = line.reverse {
            self.reverse = reverse;
        }
    }
}

impl Job {
    /// The setup's gear that a field is of and the line that stands in it, where that is more than a gear.
    pub fn line_at(&self, field: Field, text: &str) -> Option<BoxLine> {
        let Field::Setup(id, SetupField::Gear(_)) = field else { return None };
        self.setup(id)?.gearbox.line_in(text)
    }

    /// Fills a setup from the line that stands in the field of one of its gears; answers what was done, in a sentence.
    pub fn fill_line(&mut self, field: Field) -> Option<String> {
        let line = self.line_at(field, self.text(field)?)?;
        let Field::Setup(id, SetupField::Gear(gear)) = field else { return None };
        let said = said(&line);
        self.setup_mut(id)?.gearbox.fill_from(GearNumber::at(gear), line);
        Some(said)
    }

    /// What was taken where the text of a field leaves it open: `taken as 37/18`.
    ///
    /// ```
    /// use layshaft::job::{Field, SetupField, demo};
    /// use layshaft::units::System;
    /// let mut job = demo::empty(System::Inch);
    /// let first = Field::Setup(job.setups[0].id, SetupField::Gear(0));
    /// // As a number pad without a slash types it.
    /// job.type_text(first, "37.18".into());
    /// assert_eq!(job.taken(first).as_deref(), Some("taken as 37/18"));
    /// ```
    pub fn taken(&self, field: Field) -> Option<String> {
        let Field::Setup(id, of) = field else { return None };
        let text = self.text(field)?;
        let is_counts = match of {
            SetupField::Gear(_) | SetupField::Reverse => is_mesh(text, self.setup(id)?.gearbox.layout),
            SetupField::Constant => read::counts(text).is_ok(),
            SetupField::FinalDrive | SetupField::Stage(_) => matches!(read::drive(text), Ok(FinalDrive::Pair(_))),
            _ => false,
        };
        is_counts.then(|| read::point_for_slash(text))?.map(|taken| taken.to_string())
    }
}

fn is_mesh(text: &str, layout: Layout) -> bool {
    matches!(read::gear(text, layout), Ok(Gear::Mesh(_)))
}

/// `4 gears filled; 24/29 taken as the constant pair`.
fn said(line: &BoxLine) -> String {
    let filled = format!("{} gears filled from the line", line.gears.len());
    std::iter::once(filled).chain(line.taken.iter().map(Taken::words)).collect::<Vec<_>>().join("; ")
}
