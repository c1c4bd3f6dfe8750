//! A part of the catalogue put into a setup, and whether a setup has it already.

use super::{Chosen, Gearbox, Setup, Speedo, Swap};
use crate::catalogue::{Column, Entry, Part, PartKind};
use crate::gearing::{self, write};
use crate::speedometer::{Role, SpeedoGear};
use crate::swap::BoxSize;
use crate::units::{System, Typed};

impl Setup {
    /// Takes a part; what it replaces is lost, all else stays as typed.
    ///
    /// ```
    /// use layshaft::catalogue::{Column, Entry, PartKind};
    /// use layshaft::job::Setup;
    /// let mut setup = Setup::default();
    /// setup.take_part(&Entry::new(PartKind::RingAndPinion).with(Column::Drive, "43/11"));
    /// assert_eq!(setup.final_drive, "43/11");
    /// ```
    pub fn take_part(&mut self, entry: &Entry) {
        match entry.kind {
            PartKind::GearSet => self.gearbox = Gearbox::picked(entry),
            PartKind::RingAndPinion => entry.title().clone_into(&mut self.final_drive),
            PartKind::Tyre => {
                // The catalogue reads bare numbers in inches, whatever the sheet is read in.
                self.tyre = Typed::new(entry.title(), System::Inch);
                self.tread_lost = Typed::default();
            }
            PartKind::SpeedometerGear => {
                if let Ok(Part::SpeedometerGear(gear)) = entry.part() {
                    self.speedo.take(&gear);
                }
            }
            PartKind::CaseFamily => self.swap.take_sizes(entry),
            PartKind::SmallPart => {}
        }
    }

    /// Whether the part is what the setup has now.
    pub fn has_part(&self, entry: &Entry) -> bool {
        let title = entry.title().trim();
        match entry.kind {
            PartKind::GearSet => !self.gearbox.altered && !title.is_empty() && self.gearbox.name == entry.title(),
            PartKind::RingAndPinion => self.final_drive.trim() == title,
            PartKind::Tyre => self.tyre.text.trim().eq_ignore_ascii_case(title),
            PartKind::SpeedometerGear => matches!(entry.part(), Ok(Part::SpeedometerGear(gear)) if self.speedo.has(&gear)),
            PartKind::CaseFamily => self.swap.has_sizes(entry),
            PartKind::SmallPart => false,
        }
    }
}

impl Gearbox {
    /// A gearbox as it would be typed, under a name.
    pub fn counted(name: impl Into<String>, gearbox: &gearing::Gearbox) -> Self {
        let layout = gearbox.layout();
        let reverse = gearbox.reverse();
        Self {
            name: name.into(),
            altered: false,
            layout,
            constant: gearbox.constant().map_or_else(String::new, |mesh| write::constant(mesh, layout)),
            gears: gearbox.gears().iter().map(|gear| write::gear(*gear, layout)).collect(),
            reverse: reverse.map_or_else(String::new, |reverse| write::reverse(reverse, layout)),
            idler: gearbox.reverse_gears().map_or_else(String::new, |reverse| write::idler(reverse.idler)),
        }
    }
}

impl Swap {
    /// Where a size is typed; none of the oil, which is in words.
    fn size_mut(&mut self, size: BoxSize) -> Option<&mut Typed> {
        Some(match size {
            BoxSize::Length => &mut self.length,
            BoxSize::Mount => &mut self.mount,
            BoxSize::Lever => &mut self.lever,
            BoxSize::Nose => &mut self.nose,
            BoxSize::Spigot => &mut self.spigot,
            BoxSize::InputSpline => &mut self.input_spline,
            BoxSize::OutputSpline => &mut self.output_spline,
            BoxSize::Flange => &mut self.flange,
            BoxSize::Holes => &mut self.holes,
            BoxSize::Outline => &mut self.outline,
            BoxSize::Travel => &mut self.release_travel,
            BoxSize::Weight => &mut self.weight,
            BoxSize::Oil => return None,
        })
    }

    /// Takes the sizes of a case family; one that is not measured there becomes blank, for it was another box's.
    fn take_sizes(&mut self, entry: &Entry) {
        for size in BoxSize::ALL {
            let text = entry.text(Column::Size(size)).trim();
            match self.size_mut(size) {
                Some(typed) => *typed = Typed::new(text, entry.size_units()),
                None => text.clone_into(&mut self.oil),
            }
        }
    }

    /// Whether the sizes are those of a case family.
    fn has_sizes(&self, entry: &Entry) -> bool {
        let mut taken = self.clone();
        taken.take_sizes(entry);
        // A blank size says nothing of what it is in.
        let (mut own, mut same) = (self.clone(), true);
        for size in BoxSize::ALL {
            let pair = own.size_mut(size).zip(taken.size_mut(size));
            same &= pair.is_none_or(|(own, theirs)| own == theirs || (own.is_blank() && theirs.is_blank()));
        }
        same && own.oil == taken.oil && BoxSize::ALL.into_iter().any(|size| !entry.text(Column::Size(size)).trim().is_empty())
    }

    /// The sizes as an entry for a case family; none where nothing is measured, or bare numbers are partly in inches and partly in
    /// millimetres.
    ///
    /// ```
    /// use layshaft::catalogue::Column;
    /// use layshaft::job::Swap;
    /// use layshaft::swap::BoxSize;
    /// use layshaft::units::{System, Typed};
    /// let swap = Swap { length: Typed::new("600", System::Metric), ..Swap::default() };
    /// let entry = swap.as_case_family("Long case").ok_or("nothing measured")?;
    /// assert_eq!([entry.text(Column::Size(BoxSize::Length)), entry.text(Column::Units)], ["600", "mm"]);
    /// # Ok::<(), &str>(())
    /// ```
    pub fn as_case_family(&self, name: &str) -> Option<Entry> {
        let mut swap = self.clone();
        let mut entry = Entry::started(PartKind::CaseFamily).with(Column::Name, name);
        let mut units: Option<System> = None;
        for size in BoxSize::ALL {
            let Some(typed) = swap.size_mut(size).filter(|typed| !typed.is_blank()) else { continue };
            if *units.get_or_insert(typed.units) != typed.units {
                return None;
            }
            entry.set(Column::Size(size), typed.text.trim());
        }
        entry.set(Column::Size(BoxSize::Oil), self.oil.trim());
        Some(entry.with(Column::Units, if units? == System::Metric { "mm" } else { "in" }))
    }
}

/// What stands for a count that is not known yet; it is no number, so the field asks for it.
const UNKNOWN: [&str; 2] = ["drive", "driven"];

impl Speedo {
    /// The counts as typed: drive, driven, and perhaps an adapter's two.
    fn counts(&self) -> Vec<String> {
        let parts = self.gears.split(|c: char| !c.is_alphanumeric()).map(str::to_ascii_lowercase);
        parts.filter(|part| !part.is_empty() && !matches!(part.as_str(), "x" | "adapter" | "and" | "with")).collect()
    }

    /// Takes a gear or an adapter in the place of the one of its role; a gear still unknown is named by its role.
    fn take(&mut self, gear: &SpeedoGear) {
        let mut counts = self.counts().into_iter();
        let mut pair = UNKNOWN.map(|role| counts.next().unwrap_or_else(|| role.to_owned()));
        let mut adapter = counts.next().zip(counts.next());
        let [drive, driven] = &mut pair;
        match gear.role {
            Role::Drive => {
                *drive = gear.teeth.to_string();
                self.hand = gear.hand.map(Chosen::of).unwrap_or_default();
            }
            Role::Driven => *driven = gear.teeth.to_string(),
            Role::Adapter => adapter = gear.second.map(|second| (gear.teeth.to_string(), second.to_string())),
        }
        let behind = adapter.map_or_else(String::new, |(first, second)| format!(" x {first}/{second}"));
        self.gears = format!("{drive}/{driven}{behind}");
    }

    fn has(&self, gear: &SpeedoGear) -> bool {
        let counts = self.counts();
        let is_at = |at: usize, teeth: u16| counts.get(at).is_some_and(|count| *count == teeth.to_string());
        match gear.role {
            Role::Drive => is_at(0, gear.teeth),
            Role::Driven => is_at(1, gear.teeth),
            Role::Adapter => is_at(2, gear.teeth) && gear.second.is_some_and(|second| is_at(3, second)),
        }
    }
}
