//! What the texts of an entry say, in the terms of the trade: a gearbox, a final drive, a tyre, a speedometer gear.

use super::Entry;
use super::column::{Column, layout};
use super::error::LineError;
use crate::gearing::{FinalDrive, Gear, Gearbox, Idler, Layout, read};
use crate::problem::{Explain, Problem};
use crate::speedometer::{Hand, Role, SpeedoGear};
use crate::swap::BoxSize;
use crate::tyre::{self, Tyre};
use crate::units::{self, Length, System, limits};

/// A part whose texts can be used.
#[derive(Clone, Debug, PartialEq)]
pub enum Part {
    /// The gearbox that a gear set makes.
    GearSet(Gearbox),
    /// The final drive that ring and pinion make.
    RingAndPinion(FinalDrive),
    /// The tyre of a size.
    Tyre(Tyre),
    /// A speedometer gear or adapter.
    SpeedometerGear(SpeedoGear),
    /// The sizes of a case family, all of which can be read.
    CaseFamily,
    /// What a build uses up; of a shim, how thick it is.
    SmallPart(Option<Length>),
}

impl Entry {
    /// The part that the entry's texts tell.
    ///
    /// # Errors
    /// One problem for each column that cannot be used, named by [`Column::name`].
    pub fn part(&self) -> Result<Part, Vec<Problem>> {
        self.kind.read(self)
    }

    /// The gearbox that a gear set makes; nothing where its counts make none.
    ///
    /// ```
    /// use layshaft::catalogue::{Column, Entry, PartKind};
    /// use layshaft::gearing::Ratio;
    /// let set = Entry::started(PartKind::GearSet).with(Column::Constant, "25/30");
    /// let set = set.with(Column::Gear(1), "37/18").with(Column::Gear(2), "direct");
    /// // 30/25 × 37/18, and direct
    /// assert_eq!(set.gearbox().map(|gearbox| gearbox.ratios()), Some(vec![Ratio::new(37, 15), Ratio::new(1, 1)]));
    /// ```
    pub fn gearbox(&self) -> Option<Gearbox> {
        match self.part() {
            Ok(Part::GearSet(gearbox)) => Some(gearbox),
            _ => None,
        }
    }

    /// The final drive that ring and pinion make; nothing where their text tells none.
    ///
    /// ```
    /// use layshaft::catalogue::{Column, Entry, PartKind};
    /// use layshaft::gearing::{FinalDrive, Ratio};
    /// let entry = Entry::new(PartKind::RingAndPinion).with(Column::Drive, "43/11");
    /// assert_eq!(entry.final_drive().map(FinalDrive::ratio), Some(Ratio::new(43, 11)));
    /// ```
    pub fn final_drive(&self) -> Option<FinalDrive> {
        match self.part() {
            Ok(Part::RingAndPinion(drive)) => Some(drive),
            _ => None,
        }
    }

    /// The layout of a gear set, the usual one where it names none.
    pub fn layout(&self) -> Layout {
        layout(self.text(Column::Layout)).unwrap_or_default()
    }

    /// What bare sizes are in.
    pub fn size_units(&self) -> System {
        if self.text(Column::Units) == "mm" { System::Metric } else { System::Inch }
    }

    /// The texts of a gear set's forward gears, lowest first.
    pub fn gears(&self) -> Vec<String> {
        let gears = Column::GEARS.map(|gear| self.text(gear));
        let many = gears.iter().rposition(|gear| !gear.is_empty()).map_or(0, |last| last + 1);
        gears.into_iter().take(many).map(str::to_owned).collect()
    }
}

/// The texts of an entry as they are read, and what is wrong with them.
struct Reader<'a> {
    entry: &'a Entry,
    problems: Vec<Problem>,
}

impl<'a> Reader<'a> {
    fn of(entry: &'a Entry) -> Self {
        Self { entry, problems: Vec::new() }
    }

    fn read<T, E: Explain>(&mut self, column: Column, read: impl FnOnce(&'a str) -> Result<T, E>) -> Option<T> {
        read(self.entry.text(column)).map_err(|why| self.problems.push(Problem::stop(column.name(), &why))).ok()
    }

    /// What a column says that may be blank.
    fn optional<T, E: Explain>(&mut self, column: Column, read: impl FnOnce(&'a str) -> Result<T, E>) -> Option<T> {
        if self.entry.text(column).trim().is_empty() { None } else { self.read(column, read) }
    }

    /// What a column says that is one of a few.
    fn choice<T>(&mut self, column: Column, read: impl FnOnce(&'a str) -> Option<T>) -> Option<T> {
        self.read(column, |text| read(text).ok_or_else(|| LineError::Choice { column, text: text.to_owned() }))
    }
}

pub(super) fn gear_set(entry: &Entry) -> Result<Part, Vec<Problem>> {
    let mut reader = Reader::of(entry);
    let Some(layout) = reader.choice(Column::Layout, layout) else { return Err(reader.problems) };
    let many = entry.gears().len();
    let gears: Vec<Gear> =
        Column::GEARS.into_iter().take(many).filter_map(|gear| reader.read(gear, |text| read::gear(text, layout))).collect();
    let constant = match layout {
        Layout::TwoShaft => reader.optional(Column::Constant, |text| read::constant(text, layout)),
        Layout::InputReduced | Layout::OutputReduced => {
            reader.read(Column::Constant, |text| read::constant_of(text, layout, &gears)).flatten()
        }
    };
    let idler = reader.read(Column::Idler, read::idler);
    let reverse = reader.optional(Column::Reverse, |text| read::reverse(text, idler.unwrap_or(Idler::Plain(None)), layout));
    if !reader.problems.is_empty() {
        return Err(reader.problems);
    }
    let gearbox = Gearbox::new(layout, constant, gears, reverse);
    gearbox.map(Part::GearSet).map_err(|why| vec![Problem::stop(Column::Layout.name(), &why)])
}

pub(super) fn ring_and_pinion(entry: &Entry) -> Result<Part, Vec<Problem>> {
    let mut reader = Reader::of(entry);
    reader.read(Column::Drive, read::final_drive).map(Part::RingAndPinion).ok_or(reader.problems)
}

/// A bare number in a size is one of inches, whatever the sheet is read in.
pub(super) fn tyre(entry: &Entry) -> Result<Part, Vec<Problem>> {
    let mut reader = Reader::of(entry);
    reader.read(Column::Designation, |text| tyre::read(text, System::default())).map(Part::Tyre).ok_or(reader.problems)
}

pub(super) fn speedometer_gear(entry: &Entry) -> Result<Part, Vec<Problem>> {
    let mut reader = Reader::of(entry);
    let role = reader.choice(Column::Role, Role::read);
    let teeth = reader.read(Column::Teeth, teeth);
    let second = reader.optional(Column::Second, self::teeth);
    let hand = match entry.text(Column::Hand) {
        "" => None,
        _ => reader.choice(Column::Hand, Hand::read),
    };
    if role.is_some_and(|role| role != Role::Adapter) && entry.text(Column::Housing).is_empty() {
        reader.problems.push(Problem::stop(Column::Housing.name(), &LineError::Blank(Column::Housing)));
    }
    if let Some(role) = role
        && entry.text(Column::Second).is_empty() == (role == Role::Adapter)
    {
        reader.problems.push(Problem::stop(Column::Second.name(), &LineError::Second(role)));
    }
    let (Some(role), Some(teeth), true) = (role, teeth, reader.problems.is_empty()) else { return Err(reader.problems) };
    let [name, housing, note] = [Column::Name, Column::Housing, Column::Note].map(|column| entry.text(column).to_owned());
    Ok(Part::SpeedometerGear(SpeedoGear { name, role, teeth, second, housing, hand, in_stock: entry.in_stock(), own: entry.own, note }))
}

/// A thickness that is there can be read.
pub(super) fn small_part(entry: &Entry) -> Result<Part, Vec<Problem>> {
    let mut reader = Reader::of(entry);
    let name = reader.read(Column::Name, |text| if text.trim().is_empty() { Err(LineError::Blank(Column::Name)) } else { Ok(()) });
    let thickness = reader.optional(Column::Thickness, |text| units::read(text, entry.size_units(), &limits::SHIM));
    if name.is_some() && reader.problems.is_empty() { Ok(Part::SmallPart(thickness)) } else { Err(reader.problems) }
}

/// The sizes of a case family; what is not measured is blank.
pub(super) fn case_family(entry: &Entry) -> Result<Part, Vec<Problem>> {
    let mut reader = Reader::of(entry);
    let system = entry.size_units();
    for size in BoxSize::ALL {
        reader.optional(Column::Size(size), |text| size.check(text, system));
    }
    if reader.problems.is_empty() { Ok(Part::CaseFamily) } else { Err(reader.problems) }
}

fn teeth(text: &str) -> Result<u16, LineError> {
    let count = text.parse().ok().filter(|teeth| SpeedoGear::allows(*teeth));
    count.ok_or_else(|| LineError::Teeth(text.to_owned()))
}
