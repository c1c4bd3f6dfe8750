//! A speedometer gear or adapter on the shelf.

use serde::{Deserialize, Serialize};

use super::entry::{Entry, Kind, kept};
use super::line;
use super::shelf::Shelf;
use super::table::Row;
use crate::problem::{Explain, Problem};
use crate::speedometer::{Hand, Role, SpeedoGear};
use crate::units::number::clip;

pub(super) const COLUMNS: &[&str] = &["id", "name", "role", "teeth", "second", "housing", "hand", "note", "in_stock"];

/// A speedometer gear or adapter.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SpeedoEntry {
    /// The id, which stays when the entry is edited.
    #[serde(default)]
    pub id: String,
    /// The gear itself.
    pub gear: SpeedoGear,
    /// Whether it is the shop's own, not built in.
    #[serde(skip)]
    pub own: bool,
}

impl Shelf<SpeedoEntry> {
    /// The gears alone, in the order of [`Shelf::all`].
    pub fn gears(&self) -> Vec<SpeedoGear> {
        self.all().map(|entry| entry.gear.clone()).collect()
    }
}

/// Why a line or an entry is no speedometer gear.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SpeedoLineError {
    /// Neither drive, driven nor adapter.
    Role {
        /// What was written.
        text: String,
    },
    /// A count outside [`SpeedoGear::LEAST`] to [`SpeedoGear::GREATEST`].
    Teeth {
        /// What was written.
        text: String,
    },
    /// Neither left nor right.
    Hand {
        /// What was written.
        text: String,
    },
    /// An adapter with one count, or a gear with two.
    Second {
        /// What it is for.
        role: Role,
    },
}

impl Explain for SpeedoLineError {
    fn what(&self) -> String {
        match self {
            Self::Role { text } => format!("“{}” is no role of a speedometer gear", clip(text)),
            Self::Teeth { text } => format!("“{}” is not a tooth count of a speedometer gear", clip(text)),
            Self::Hand { text } => format!("“{}” is not the hand of a gear", clip(text)),
            Self::Second { role: Role::Adapter } => "an adapter has two tooth counts, and the second is missing".into(),
            Self::Second { role } => format!("a {} gear has one tooth count, and two are given", role.word()),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Role { .. } => "write drive, driven or adapter".into(),
            Self::Teeth { .. } => format!("write a count from {} to {}", SpeedoGear::LEAST, SpeedoGear::GREATEST),
            Self::Hand { .. } => "write left or right, or leave it blank".into(),
            Self::Second { role: Role::Adapter } => "write the teeth of the gear on the cable's side as the second count".into(),
            Self::Second { .. } => "leave the second count blank".into(),
        }
    }
}

impl Entry for SpeedoEntry {
    const KIND: Kind = Kind::SpeedometerGears;
    const NAMED: bool = true;
    const KEY: &'static [&'static str] = &["name"];

    kept!(gear.in_stock, gear.name);

    fn cells(&self) -> Vec<String> {
        let gear = &self.gear;
        vec![
            self.id.clone(),
            gear.name.clone(),
            gear.role.word().to_owned(),
            gear.teeth.to_string(),
            gear.second.map_or_else(String::new, |second| second.to_string()),
            gear.housing.clone(),
            gear.hand.map_or_else(String::new, |hand| hand.word().to_owned()),
            gear.note.clone(),
            line::yes_or_no(gear.in_stock),
        ]
    }

    fn from_row(row: &Row) -> Result<Self, Vec<Problem>> {
        let mut problems = row.too_long();
        let name = row.needed("name", &mut problems);
        let adapter = Role::read(&row.text("role")) == Some(Role::Adapter);
        let housing = if adapter { row.text("housing") } else { row.needed("housing", &mut problems) };
        let in_stock = row.in_stock(&mut problems);
        let second = row.text("second");
        let mut keep = |column: &str, why: SpeedoLineError| problems.push(Problem::stop(column, &why));
        let role = self::role(&row.text("role")).map_err(|why| keep("role", why)).ok();
        let teeth = self::teeth(&row.text("teeth")).map_err(|why| keep("teeth", why)).ok();
        let second = optional(&second, self::teeth).map_err(|why| keep("second", why)).ok();
        let hand = optional(&row.text("hand"), self::hand).map_err(|why| keep("hand", why)).ok();
        let (Some(role), Some(teeth), Some(second), Some(hand)) = (role, teeth, second, hand) else { return Err(problems) };
        let gear = SpeedoGear { name, role, teeth, second, housing, hand, in_stock, note: row.text("note") };
        let entry = Self { id: row.text("id"), gear, own: false };
        problems.extend(entry.problems());
        if problems.is_empty() { Ok(entry) } else { Err(problems) }
    }

    fn problems(&self) -> Vec<Problem> {
        let gear = &self.gear;
        let count = |column: &'static str, teeth: u16| {
            (!SpeedoGear::allows(teeth)).then(|| Problem::stop(column, &SpeedoLineError::Teeth { text: teeth.to_string() }))
        };
        let paired = gear.second.is_some() == (gear.role == Role::Adapter);
        let paired = (!paired).then(|| Problem::stop("second", &SpeedoLineError::Second { role: gear.role }));
        count("teeth", gear.teeth).into_iter().chain(gear.second.and_then(|second| count("second", second))).chain(paired).collect()
    }

    fn built_in() -> &'static [Self] {
        super::built_in::speedometer_gears()
    }
}

fn role(text: &str) -> Result<Role, SpeedoLineError> {
    Role::read(text).ok_or_else(|| SpeedoLineError::Role { text: text.to_owned() })
}

fn hand(text: &str) -> Result<Hand, SpeedoLineError> {
    Hand::read(text).ok_or_else(|| SpeedoLineError::Hand { text: text.to_owned() })
}

fn teeth(text: &str) -> Result<u16, SpeedoLineError> {
    let count = text.parse().ok().filter(|teeth| SpeedoGear::allows(*teeth));
    count.ok_or_else(|| SpeedoLineError::Teeth { text: text.to_owned() })
}

/// What a cell tells, or nothing where it is blank.
fn optional<T>(text: &str, read: impl Fn(&str) -> Result<T, SpeedoLineError>) -> Result<Option<T>, SpeedoLineError> {
    if text.is_empty() { Ok(None) } else { read(text).map(Some) }
}
