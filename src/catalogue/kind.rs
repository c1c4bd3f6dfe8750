//! The kinds of part, one row each: what they are called, their columns, what tells two of them apart, and the invented demo data.

use super::Entry;
use super::column::Column::{
    self, Case, Constant, CountedBy, CountedOn, Currency, Designation, Drive, Hand, Housing, Id, Idler, InStock, Layout, Maker, Name, Note,
    Origin, PartNumber, Place, Price, Quantity, ReorderAt, Reverse, Role, Second, Size, Teeth, Thickness, Units,
};
use super::part::{self, Part};
use crate::problem::Problem;
use crate::swap::BoxSize;

/// What can be kept in the catalogue; each has columns and a file of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartKind {
    /// The gears of a gearbox.
    GearSet,
    /// The ring and pinion of an axle.
    RingAndPinion,
    /// A tyre size.
    Tyre,
    /// A speedometer gear or adapter.
    SpeedometerGear,
    /// The sizes of a case family, measured once.
    CaseFamily,
    /// What a build uses up: a bearing, a seal, a ring, a shim.
    SmallPart,
}

struct KindRow {
    /// What it is called where the shop's own entries are kept.
    id: &'static str,
    /// One of them and several, in a sentence.
    words: [&'static str; 2],
    /// Its columns, but for those that every kind has.
    columns: &'static [Column],
    /// The columns without which a file says nothing of this kind.
    needed: &'static [Column],
    /// What an entry is called by.
    title: Column,
    /// What tells it apart from another of the same title: the title itself where people know the part by its name.
    label: Column,
    /// An entry as it might be, but for the columns that every kind has.
    example: &'static [(Column, &'static str)],
    /// The built-in file.
    demo: &'static str,
    /// What the texts of an entry say.
    read: fn(&Entry) -> Result<Part, Vec<Problem>>,
}

/// Columns that every kind has behind its own.
const SHELF: [Column; 9] = [PartNumber, Price, Currency, Quantity, ReorderAt, Place, Note, Origin, InStock];
/// What might stand in them.
const ON_SHELF: [(Column, &str); 8] = [
    (PartNumber, "A-101"),
    (Price, "120.00"),
    (Currency, "EUR"),
    (Quantity, "2"),
    (ReorderAt, "1"),
    (Place, "rack 3"),
    (Note, "an example: this line is not read"),
    (InStock, "yes"),
];

static GEAR_SET: KindRow = KindRow {
    id: "gear-set",
    words: ["gear set", "gear sets"],
    columns: &[
        Name,
        Maker,
        Case,
        Layout,
        Constant,
        Column::Gear(1),
        Column::Gear(2),
        Column::Gear(3),
        Column::Gear(4),
        Column::Gear(5),
        Column::Gear(6),
        Column::Gear(7),
        Column::Gear(8),
        Reverse,
        Idler,
        CountedBy,
        CountedOn,
    ],
    needed: &[Name, Column::Gear(1)],
    title: Name,
    label: Name,
    example: &[
        (Name, "Close four"),
        (Case, "long case"),
        (Constant, "27/28"),
        (Column::Gear(1), "37/18"),
        (Column::Gear(2), "32/23"),
        (Column::Gear(3), "29/26"),
        (Column::Gear(4), "direct"),
        (Reverse, "33/16"),
        (Idler, "19"),
        (CountedBy, "J.W."),
        (CountedOn, "2026-11-28"),
    ],
    demo: include_str!("data/gear_sets.csv"),
    read: part::gear_set,
};

static RING_AND_PINION: KindRow = KindRow {
    id: "ring-and-pinion",
    words: ["ring and pinion pair", "ring and pinion pairs"],
    columns: &[Drive, CountedBy, CountedOn],
    needed: &[Drive],
    title: Drive,
    label: Note,
    example: &[(Drive, "43/11"), (CountedBy, "J.W."), (CountedOn, "2026-11-28")],
    demo: include_str!("data/rings_and_pinions.csv"),
    read: part::ring_and_pinion,
};

static TYRE: KindRow = KindRow {
    id: "tyre",
    words: ["tyre", "tyres"],
    columns: &[Designation],
    needed: &[Designation],
    title: Designation,
    label: Note,
    example: &[(Designation, "185/70R14")],
    demo: include_str!("data/tyres.csv"),
    read: part::tyre,
};

static SPEEDOMETER_GEAR: KindRow = KindRow {
    id: "speedometer-gear",
    words: ["speedometer gear", "speedometer gears"],
    columns: &[Name, Role, Teeth, Second, Housing, Hand, CountedBy, CountedOn],
    needed: &[Name, Role, Teeth, Housing],
    title: Name,
    label: Name,
    example: &[(Name, "Driven 20"), (Role, "driven"), (Teeth, "20"), (Housing, "small"), (Hand, "left"), (CountedBy, "J.W.")],
    demo: include_str!("data/speedometer_gears.csv"),
    read: part::speedometer_gear,
};

static CASE_FAMILY: KindRow = KindRow {
    id: "case-family",
    words: ["case family", "case families"],
    columns: &[
        Name,
        Maker,
        Units,
        Size(BoxSize::Length),
        Size(BoxSize::Mount),
        Size(BoxSize::Lever),
        Size(BoxSize::Nose),
        Size(BoxSize::Spigot),
        Size(BoxSize::InputSpline),
        Size(BoxSize::OutputSpline),
        Size(BoxSize::Flange),
        Size(BoxSize::Holes),
        Size(BoxSize::Outline),
        Size(BoxSize::Travel),
        Size(BoxSize::Weight),
        Size(BoxSize::Oil),
    ],
    needed: &[Name, Units],
    title: Name,
    label: Name,
    example: &[
        (Name, "long case"),
        (Units, "in"),
        (Size(BoxSize::Length), "23 5/8"),
        (Size(BoxSize::Mount), "16 1/2"),
        (Size(BoxSize::Lever), "12"),
        (Size(BoxSize::InputSpline), "10 x 1 1/8"),
        (Size(BoxSize::Outline), "0: 6; 12: 4 1/2"),
    ],
    demo: include_str!("data/case_families.csv"),
    read: part::case_family,
};

static SMALL_PART: KindRow = KindRow {
    id: "small-part",
    words: ["bearing, seal or shim", "bearings, seals, shims"],
    columns: &[Name, Maker, Units, Thickness],
    needed: &[Name, Thickness],
    title: Name,
    label: Name,
    example: &[(Name, "Shim 0.10"), (Units, "mm"), (Thickness, "0.10")],
    demo: include_str!("data/small_parts.csv"),
    read: part::small_part,
};

impl PartKind {
    /// Every kind.
    pub const ALL: [Self; 6] = [Self::GearSet, Self::RingAndPinion, Self::Tyre, Self::SpeedometerGear, Self::SmallPart, Self::CaseFamily];

    /// The kinds that are fitted to a car, and not only measured.
    pub const FITTED: [Self; 4] = [Self::GearSet, Self::RingAndPinion, Self::Tyre, Self::SpeedometerGear];

    fn about(self) -> &'static KindRow {
        match self {
            Self::GearSet => &GEAR_SET,
            Self::RingAndPinion => &RING_AND_PINION,
            Self::Tyre => &TYRE,
            Self::SpeedometerGear => &SPEEDOMETER_GEAR,
            Self::CaseFamily => &CASE_FAMILY,
            Self::SmallPart => &SMALL_PART,
        }
    }

    /// What it is called where the shop's own entries are kept: `gear-set`.
    pub fn id(self) -> &'static str {
        self.about().id
    }

    /// What several of them are called in a sentence: `gear sets`.
    pub fn plural(self) -> &'static str {
        let [_, several] = self.about().words;
        several
    }

    /// What so many of them are called in a sentence: `gear set` for one.
    ///
    /// ```
    /// use layshaft::catalogue::PartKind;
    /// assert_eq!((PartKind::GearSet.word(1), PartKind::GearSet.word(2)), ("gear set", "gear sets"));
    /// ```
    pub fn word(self, many: usize) -> &'static str {
        let [one, several] = self.about().words;
        if many == 1 { one } else { several }
    }

    /// Whether a setup takes it over; what a build uses up is listed in its record.
    pub fn goes_into_a_setup(self) -> bool {
        self != Self::SmallPart
    }

    /// How many of it a car has: four tyres, and one of all else.
    pub fn on_a_car(self) -> u32 {
        if self == Self::Tyre { 4 } else { 1 }
    }

    /// The columns of a file of this kind, in the order they are written: the id first.
    pub fn columns(self) -> impl Iterator<Item = Column> {
        std::iter::once(Id).chain(self.about().columns.iter().copied()).chain(SHELF)
    }

    /// The columns without which a file says nothing of this kind.
    pub(super) fn needed(self) -> &'static [Column] {
        self.about().needed
    }

    /// The column of what an entry is called by.
    pub(super) fn title(self) -> Column {
        self.about().title
    }

    /// The column that tells an entry apart from another of the same title.
    pub(super) fn label(self) -> Column {
        self.about().label
    }

    /// Whether people know a part by its name, so that an own entry must not share one with a built-in entry.
    pub(super) fn is_named(self) -> bool {
        self.title() == self.label()
    }

    /// The text of the built-in file: invented demo data.
    pub fn demo(self) -> &'static str {
        self.about().demo
    }

    /// An entry as it might be, for whoever fills in a file.
    pub fn example(self) -> Entry {
        let texts = self.about().example.iter().chain(&ON_SHELF);
        texts.fold(Entry::new(self), |entry, (column, text)| entry.with(*column, *text))
    }

    /// What the texts of an entry of this kind say.
    pub(super) fn read(self, entry: &Entry) -> Result<Part, Vec<Problem>> {
        (self.about().read)(entry)
    }
}
