//! The columns of the catalogue's files, one row each: reading, writing, searching, the form of an entry and its checks go by them.

use super::error::LineError;
use super::money;
use crate::gearing::Layout;
use crate::speedometer::{Hand, Role};
use crate::spreadsheet::one_line;
use crate::swap::BoxSize;

/// A column: something that can be said of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Column {
    /// What it is called by inside the program; it stays when the entry is edited.
    Id,
    /// The name people know it by.
    Name,
    /// Who made it.
    Maker,
    /// The case families a gear set goes into, parted by semicolons; blank where none is named.
    Case,
    /// How a gearbox is laid out.
    Layout,
    /// The constant pair: the gear on the input or output line over the countershaft's. Blank in a two-shaft box.
    Constant,
    /// A forward gear, counted from 1, as [`crate::gearing::read::gear`] takes it.
    Gear(u8),
    /// The two gears of reverse in the same order, blank where they are not known.
    Reverse,
    /// The reverse idler: nothing, its count, or entry and exit counts of a compound idler.
    Idler,
    /// Ring over pinion such as `43/11`, or a plain ratio.
    Drive,
    /// What stands on a tyre's sidewall, such as `185/70R14`.
    Designation,
    /// What a speedometer gear is for.
    Role,
    /// The teeth of a speedometer gear; of an adapter, those of the gear on the gearbox's side.
    Teeth,
    /// Of an adapter, the teeth of the gear on the cable's side.
    Second,
    /// The group of speedometer gears that fit the same housing.
    Housing,
    /// Which way the teeth of a speedometer gear wind.
    Hand,
    /// What bare sizes are in.
    Units,
    /// A size of a case.
    Size(BoxSize),
    /// How thick a shim is; blank of what is no shim.
    Thickness,
    /// The number it is ordered by.
    PartNumber,
    /// What one costs.
    Price,
    /// In which money, three letters as in ISO 4217.
    Currency,
    /// How many there are; none means that it is not in stock.
    Quantity,
    /// At how many it is time to order more.
    ReorderAt,
    /// Where it lies in the store.
    Place,
    /// Who counted its teeth.
    CountedBy,
    /// On which day they were counted.
    CountedOn,
    /// The shop that told of it; blank where it is this one.
    Origin,
    /// What tells it apart from another of the same name or size, or a word on its use.
    Note,
    /// Whether one is on the shelf.
    InStock,
}

/// What a column holds, and how it is chosen.
#[derive(Clone, Copy, Debug)]
pub enum Holds {
    /// Words as they come.
    Words,
    /// Counts, a ratio or a size, which only the entry as a whole can judge.
    Figure,
    /// One of a few.
    Choice(&'static Choices),
    /// A sum of money.
    Price,
    /// Three letters that stand for a currency.
    Currency,
    /// How many there are.
    Quantity,
    /// Yes or no.
    Stock,
}

/// What is chosen from.
#[derive(Debug)]
pub struct Choices {
    /// Each as it is written in a file, and in words.
    pub options: &'static [(&'static str, &'static str)],
    /// The likeliest, which a new entry begins with.
    pub start: &'static str,
    read: fn(&str) -> Option<&'static str>,
}

/// A column's row in the table.
#[derive(Clone, Copy, Debug)]
pub struct ColumnRow {
    /// What it is called in the header of a file.
    pub name: &'static str,
    /// What it is called beside its field and in a sentence.
    pub word: &'static str,
    /// What may be written in it, which decides how it is edited and checked.
    pub holds: Holds,
    /// What a blank field shows as an example.
    pub example: &'static str,
}

static LAYOUTS: Choices = Choices {
    options: &[
        (Layout::InputReduced.id(), Layout::InputReduced.words()),
        (Layout::OutputReduced.id(), Layout::OutputReduced.words()),
        (Layout::TwoShaft.id(), Layout::TwoShaft.words()),
    ],
    start: Layout::InputReduced.id(),
    read: |text| layout(text).map(Layout::id),
};
static ROLES: Choices = Choices {
    options: &[("drive", "drive"), ("driven", "driven"), ("adapter", "adapter")],
    start: "driven",
    read: |text| Role::read(text).map(Role::word),
};
static HANDS: Choices = Choices {
    options: &[("", "not known"), ("left", "left"), ("right", "right")],
    start: "",
    read: |text| if text.is_empty() { Some("") } else { Hand::read(text).map(Hand::word) },
};
static UNITS: Choices = Choices {
    options: &[("in", "inches, pounds"), ("mm", "millimetres, kilograms")],
    start: "in",
    read: |text| match text.to_ascii_lowercase().as_str() {
        "" | "in" => Some("in"),
        "mm" => Some("mm"),
        _ => None,
    },
};

/// The most characters one cell may have.
pub(super) const LONGEST_CELL: usize = 500;

const GEARS: [(&str, &str, &str); 8] = [
    ("gear_1", "1st", "37/18"),
    ("gear_2", "2nd", ""),
    ("gear_3", "3rd", ""),
    ("gear_4", "4th", "direct"),
    ("gear_5", "5th", ""),
    ("gear_6", "6th", ""),
    ("gear_7", "7th", ""),
    ("gear_8", "8th", ""),
];

impl Column {
    /// The forward gears, lowest first; as many as a gearbox can have.
    pub const GEARS: [Self; 8] =
        [Self::Gear(1), Self::Gear(2), Self::Gear(3), Self::Gear(4), Self::Gear(5), Self::Gear(6), Self::Gear(7), Self::Gear(8)];

    /// The column's row.
    pub fn about(self) -> ColumnRow {
        use Holds::{Choice, Currency, Figure, Price, Quantity, Stock, Words};
        let (name, word, holds, example) = match self {
            Self::Id => ("id", "id", Words, ""),
            Self::Name => ("name", "name", Words, ""),
            Self::Maker => ("maker", "maker", Words, ""),
            Self::Case => ("case", "case", Words, ""),
            Self::Layout => ("layout", "layout", Choice(&LAYOUTS), ""),
            Self::Constant => ("constant", "constant pair", Figure, "25/30"),
            Self::Gear(gear) => {
                let (name, word, example) = GEARS.get(usize::from(gear).saturating_sub(1)).copied().unwrap_or_default();
                (name, word, Figure, example)
            }
            Self::Reverse => ("reverse", "reverse", Figure, "33/16"),
            Self::Idler => ("idler", "reverse idler", Figure, "19"),
            Self::Drive => ("drive", "ring and pinion", Figure, "43/11"),
            Self::Designation => ("designation", "size", Figure, "185/70R14"),
            Self::Role => ("role", "role", Choice(&ROLES), ""),
            Self::Teeth => ("teeth", "tooth count", Figure, "20"),
            Self::Second => ("second", "second count", Figure, ""),
            Self::Housing => ("housing", "housing", Words, ""),
            Self::Hand => ("hand", "hand", Choice(&HANDS), ""),
            Self::Units => ("units", "sizes in", Choice(&UNITS), ""),
            Self::Size(size) => {
                let (name, word, example) = size.about();
                (name, word, Figure, example)
            }
            Self::Thickness => ("thickness", "thickness of a shim", Figure, "0.10"),
            Self::PartNumber => ("part_number", "part number", Words, ""),
            Self::Price => ("price", "price", Price, "120.00"),
            Self::Currency => ("currency", "currency", Currency, "EUR"),
            Self::Quantity => ("quantity", "quantity", Quantity, "1"),
            Self::ReorderAt => ("reorder_at", "reorder at", Quantity, "0"),
            Self::Place => ("place", "place in the store", Words, "rack 3"),
            Self::CountedBy => ("counted_by", "teeth counted by", Words, ""),
            Self::CountedOn => ("counted_on", "counted on", Words, "2026-11-28"),
            Self::Origin => ("origin", "came from", Words, ""),
            Self::Note => ("note", "note", Words, ""),
            Self::InStock => ("in_stock", "in stock", Stock, ""),
        };
        ColumnRow { name, word, holds, example }
    }

    /// What it is called in the header of a file.
    pub fn name(self) -> &'static str {
        self.about().name
    }

    /// What a new entry begins with.
    pub(super) fn start(self) -> &'static str {
        match self.about().holds {
            Holds::Choice(choices) => choices.start,
            Holds::Stock => "yes",
            _ => "",
        }
    }

    /// Whether a header names this column: letters and digits count, capitals, blanks and dashes do not.
    pub(super) fn is_called(self, name: &str) -> bool {
        plain(self.name()) == plain(name)
    }

    /// The text of a cell as an entry keeps it.
    ///
    /// # Errors
    /// When it is longer than is kept, none of what is chosen from, or not what the column holds.
    pub(super) fn read(self, text: &str) -> Result<String, LineError> {
        let text = one_line(text);
        let characters = text.chars().count();
        match self.about().holds {
            _ if characters > LONGEST_CELL => Err(LineError::TooLong(characters)),
            Holds::Choice(choices) => match (choices.read)(&text) {
                Some(choice) => Ok(choice.to_owned()),
                None if text.is_empty() => Err(LineError::Blank(self)),
                None => Err(LineError::Choice { column: self, text }),
            },
            Holds::Words | Holds::Figure => Ok(text),
            _ if text.is_empty() => Ok(text),
            Holds::Price => price(text),
            Holds::Currency => currency(text),
            Holds::Quantity => quantity(self, text),
            Holds::Stock => stock(text),
        }
    }
}

/// A number that is not negative, and nothing else.
fn price(text: String) -> Result<String, LineError> {
    if money::hundredths(&text).is_some() { Ok(text) } else { Err(LineError::Price(text)) }
}

/// Three letters, whichever; written as capitals.
fn currency(text: String) -> Result<String, LineError> {
    let is_code = text.len() == 3 && text.bytes().all(|b| b.is_ascii_alphabetic());
    if is_code { Ok(text.to_ascii_uppercase()) } else { Err(LineError::Currency(text)) }
}

/// A whole number below a million, without noughts before it.
fn quantity(column: Column, text: String) -> Result<String, LineError> {
    let is_count = text.bytes().all(|b| b.is_ascii_digit());
    let count = text.parse::<u32>().ok().filter(|count| is_count && *count < 1_000_000);
    count.map(|count| count.to_string()).ok_or(LineError::Quantity { column, text })
}

/// Yes or no; how many there are means yes.
fn stock(text: String) -> Result<String, LineError> {
    let said = match text.to_ascii_lowercase().as_str() {
        "no" | "n" | "false" | "-" => "no",
        "yes" | "y" | "true" | "x" => "yes",
        count if count.bytes().all(|b| b.is_ascii_digit()) => {
            if count.bytes().any(|b| b != b'0') {
                "yes"
            } else {
                "no"
            }
        }
        _ => return Err(LineError::YesOrNo(text)),
    };
    Ok(said.to_owned())
}

/// The layout that a text names, without regard to case, blanks and dashes.
pub(super) fn layout(text: &str) -> Option<Layout> {
    Layout::ALL.into_iter().find(|layout| plain(layout.id()) == plain(text))
}

/// A name as two are compared: letters and digits in lower case.
fn plain(name: &str) -> String {
    name.chars().filter(|c| c.is_alphanumeric()).map(|c| c.to_ascii_lowercase()).collect()
}
