//! The table of inputs: everything that can be typed, a row each.
//!
//! A row says what an input is called, what kind of text it takes, what a blank one means and where its text is kept; in the parts of
//! the document, which are declared here, it is the member too. Path, slug, unit, placeholder, the texts the tests try and the problems
//! beside a field all follow from the row, so a new input is a row here: [`shared`] for what all setups share, [`car`] for engine, car and run, [`mod@bench`],
//! [`endplay`], [`faults`], [`fits`], [`measure`], [`cutter`], [`noise`], [`setting`] and [`build`] for what is measured, made, heard and
//! done there, [`setup`] for each setup, [`wishes`] for the finder.
//! What is chosen from a few has its own table in [`super::choice`].

pub mod bench;
pub mod build;
pub mod car;
pub mod cutter;
pub mod endplay;
pub mod faults;
pub mod fits;
pub mod measure;
pub mod noise;
pub mod setting;
pub mod setup;
pub mod shared;
pub mod wishes;

use super::Job;
use crate::catalogue::PartKind;
use crate::gearing::{Gearbox, Teeth};
use crate::units::{AnyLimits, Length, Measured, System, Typed};

/// One row of the table.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// The input's name in files of problems and on the page, which never changes; `#` stands for a place counted from 1.
    pub id: &'static str,
    /// What it is called beside its field; `#` stands for 1st, 2nd …
    pub label: &'static str,
    /// What kind of text it takes.
    pub kind: Kind,
    /// What it means where nothing is typed.
    pub blank: Blank,
    /// A text as it may be typed, where that helps.
    pub example: Option<&'static str>,
}

/// The least and the greatest number that is taken.
pub type Bounds = (f64, f64);

/// The numbers of forward gears.
pub const GEARS: Bounds = (1.0, 8.0);
/// The counts a gear can have.
const COUNTS: Bounds = (8.0, 150.0);
const _: () = assert!(Gearbox::MOST_GEARS == 8 && Teeth::LEAST == 8 && Teeth::GREATEST == 150, "the bounds above are those of the trade");

/// What kind of text an input takes.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// Words: nothing is read from them.
    Words,
    /// The name of a part of the catalogue.
    Part(PartKind),
    /// Several lines.
    Lines,
    /// Tooth counts, such as `37/18`.
    Teeth,
    /// A number with its unit, inside its limits.
    Quantity(&'static dyn AnyLimits),
    /// Several of one quantity, separated by semicolons.
    Quantities(&'static dyn AnyLimits),
    /// A number that always means the same unit, which stands behind it; empty for none.
    Number(&'static str, Bounds),
    /// A whole number.
    Whole(Bounds),
    /// A notation of its own, with the unit that its text is meant in.
    Notation(fn(&str, System) -> Option<&'static str>),
}

/// What an input means where nothing is typed.
#[derive(Clone, Copy, Debug)]
pub enum Blank {
    /// Nothing, and nothing is missing.
    Nothing,
    /// What depends on it cannot be said.
    Needed,
    /// The same as this text, in the units the job is read in; empty where it depends on something that is not typed yet.
    Taken(fn(&Job) -> String),
}

impl Row {
    const fn new(id: &'static str, label: &'static str, kind: Kind) -> Self {
        Self { id, label, kind, blank: Blank::Nothing, example: None }
    }

    /// The row of an input without which something cannot be said.
    const fn needed(self) -> Self {
        Self { blank: Blank::Needed, ..self }
    }

    /// The row of an input that is taken for something where it is blank.
    const fn or(self, taken: fn(&Job) -> String) -> Self {
        Self { blank: Blank::Taken(taken), ..self }
    }

    /// The row with an example.
    const fn like(self, example: &'static str) -> Self {
        Self { example: Some(example), ..self }
    }

    /// What stands in the blank field: what it is taken for, else an example.
    pub fn placeholder(&self, job: &Job) -> String {
        match self.blank {
            Blank::Taken(taken) => taken(job),
            Blank::Nothing | Blank::Needed => self.example.map_or_else(String::new, |example| format!("e.g. {example}")),
        }
    }
}

impl Kind {
    /// Whether a number stands in the field and nothing else but its unit.
    pub fn is_number(self) -> bool {
        matches!(self, Self::Quantity(_) | Self::Number(..) | Self::Whole(_))
    }

    /// The unit of a bare number in a text; none where there is none, or where the text names its own.
    pub fn unit(self, text: &str, system: System) -> Option<&'static str> {
        if text.chars().any(char::is_alphabetic) {
            return None;
        }
        match self {
            Self::Quantity(limits) | Self::Quantities(limits) => Some(limits.symbol(system)).filter(|symbol| !symbol.is_empty()),
            Self::Number(unit, _) => Some(unit).filter(|unit| !unit.is_empty()),
            Self::Notation(unit) => unit(text, system),
            Self::Words | Self::Part(_) | Self::Lines | Self::Teeth | Self::Whole(_) => None,
        }
    }

    /// The bounds of a number that is no quantity.
    pub fn bounds(self) -> Option<Bounds> {
        match self {
            Self::Number(_, bounds) | Self::Whole(bounds) => Some(bounds),
            _ => None,
        }
    }
}

const fn words(id: &'static str, label: &'static str) -> Row {
    Row::new(id, label, Kind::Words)
}

const fn part(id: &'static str, label: &'static str, kind: PartKind) -> Row {
    Row::new(id, label, Kind::Part(kind))
}

const fn teeth(id: &'static str, label: &'static str) -> Row {
    Row::new(id, label, Kind::Teeth)
}

const fn quantity(id: &'static str, label: &'static str, limits: &'static dyn AnyLimits) -> Row {
    Row::new(id, label, Kind::Quantity(limits))
}

const fn whole(id: &'static str, label: &'static str, bounds: Bounds) -> Row {
    Row::new(id, label, Kind::Whole(bounds))
}

const fn notation(id: &'static str, label: &'static str, unit: fn(&str, System) -> Option<&'static str>) -> Row {
    Row::new(id, label, Kind::Notation(unit))
}

/// The unit of a notation without one.
fn no_unit(_: &str, _: System) -> Option<&'static str> {
    None
}

/// The unit of a notation of lengths.
#[expect(clippy::unnecessary_wraps, reason = "the notation of other inputs can name its own unit, or has none")]
fn length_unit(_: &str, system: System) -> Option<&'static str> {
    Some(Length::usual(system).symbol)
}

/// A text as the document keeps it: alone, or with the system its bare numbers are meant in.
pub trait Kept {
    /// As it was typed.
    fn text(&self) -> &str;
    /// The system its bare numbers are meant in; none where they mean the same in both.
    fn units(&self) -> Option<System>;
    /// Puts another text in its place, typed under `units`.
    fn put(&mut self, text: String, units: System);
}

impl Kept for String {
    fn text(&self) -> &str {
        self
    }

    fn units(&self) -> Option<System> {
        None
    }

    fn put(&mut self, text: String, _: System) {
        *self = text;
    }
}

impl Kept for Typed {
    fn text(&self) -> &str {
        &self.text
    }

    fn units(&self) -> Option<System> {
        Some(self.units)
    }

    fn put(&mut self, text: String, units: System) {
        *self = Self::new(text, units);
    }
}

/// Makes the inputs of one part of the document from rows: `Variant at member: row;`, or `Variant[at in list => member]: row;` for one
/// that stands in a list as often as that is long. `with { … }` takes in the inputs of a part of that part.
macro_rules! inputs {
    (
        $(#[$doc:meta])* $name:ident of $root:ident: $part:ty
            $(, with { $($(#[$group_doc:meta])* $group:ident($inner:ty) at $($group_path:ident).+;)* })?;
        $($(#[$row_doc:meta])* $variant:ident $([$at:ident in $($list:ident).+ $(=> $leaf:ident)?])? $(at $($path:ident).+)?: $row:expr;)*
    ) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum $name {
            $($($(#[$group_doc])* $group($inner),)*)?
            $($(#[$row_doc])* $variant $(($crate::job::inputs::inputs!(@index $at)))?,)*
        }

        impl $name {
            /// Every one that this part of a document has.
            pub fn all($root: &$part) -> Vec<Self> {
                // A part without lists has all its inputs always.
                let _ = $root;
                let mut all = Vec::new();
                $($(all.extend(<$inner>::all(&$root.$($group_path).+).into_iter().map(Self::$group));)*)?
                $($crate::job::inputs::inputs!(@all all $root $variant $([$($list).+])?);)*
                all
            }

            /// Its row in the table.
            pub fn row(self) -> $crate::job::inputs::Row {
                match self {
                    $($(Self::$group(inner) => inner.row(),)*)?
                    $(Self::$variant $(($crate::job::inputs::inputs!(@any $at)))? => $row,)*
                }
            }

            /// Its place in a list, counted from 0, where it stands in one.
            pub fn place(self) -> Option<usize> {
                match self {
                    $($(Self::$group(inner) => inner.place(),)*)?
                    $(Self::$variant $(($at))? => $crate::job::inputs::inputs!(@place $($at)?),)*
                }
            }

            /// The name by which problems and tests know it: `gear.2`.
            pub fn path(self) -> String {
                let number = self.place().map_or_else(String::new, |at| (at + 1).to_string());
                self.row().id.replace('#', &number)
            }

            /// Where its text is kept; none where the list it stands in is shorter.
            pub fn kept(self, $root: &$part) -> Option<&dyn $crate::job::inputs::Kept> {
                match self {
                    $($(Self::$group(inner) => inner.kept(&$root.$($group_path).+),)*)?
                    $(Self::$variant $(($at))? => $crate::job::inputs::inputs!(@kept $root $([$at in $($list).+ $(=> $leaf)?])? $(at $($path).+)?),)*
                }
            }

            /// As `kept`, to be changed.
            pub(crate) fn kept_mut(self, $root: &mut $part) -> Option<&mut dyn $crate::job::inputs::Kept> {
                match self {
                    $($(Self::$group(inner) => inner.kept_mut(&mut $root.$($group_path).+),)*)?
                    $(Self::$variant $(($at))? => $crate::job::inputs::inputs!(@kept_mut $root $([$at in $($list).+ $(=> $leaf)?])? $(at $($path).+)?),)*
                }
            }
        }
    };
    (@index $at:ident) => { usize };
    (@any $at:ident) => { _ };
    (@place) => { None };
    (@place $at:ident) => { Some($at) };
    (@all $all:ident $root:ident $variant:ident) => { $all.extend([Self::$variant]) };
    (@all $all:ident $root:ident $variant:ident [$($list:ident).+]) => { $all.extend((0..$root.$($list).+.len()).map(Self::$variant)) };
    (@kept $root:ident at $($path:ident).+) => { Some(&$root.$($path).+) };
    (@kept $root:ident [$at:ident in $($list:ident).+]) => { Some($root.$($list).+.get($at)?) };
    (@kept $root:ident [$at:ident in $($list:ident).+ => $leaf:ident]) => { Some(&$root.$($list).+.get($at)?.$leaf) };
    (@kept_mut $root:ident at $($path:ident).+) => { Some(&mut $root.$($path).+) };
    (@kept_mut $root:ident [$at:ident in $($list:ident).+]) => { Some($root.$($list).+.get_mut($at)?) };
    (@kept_mut $root:ident [$at:ident in $($list:ident).+ => $leaf:ident]) => { Some(&mut $root.$($list).+.get_mut($at)?.$leaf) };
}
pub(crate) use inputs;
