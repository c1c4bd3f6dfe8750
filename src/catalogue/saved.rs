//! The shop's own entries as a text to be kept: open JSON with a schema version, read again by every later version.
//!
//! Built-in entries are never written. A newer text than this version knows is refused, never cut down; a text that is
//! refused is the caller's to set aside untouched.

use serde::ser::{Serialize, SerializeMap, Serializer};
use serde_json::Value;

use super::{Catalogue, Column, Entry, PartKind};

/// The version this program writes.
pub const SCHEMA: u32 = 2;

/// The lists of version 1, one for each kind there was.
const LISTS: [(&str, PartKind); 4] = [
    ("gear_sets", PartKind::GearSet),
    ("axles", PartKind::RingAndPinion),
    ("tyres", PartKind::Tyre),
    ("speedometer_gears", PartKind::SpeedometerGear),
];

/// Why a text holds no entries of the shop's own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SavedError {
    /// Not JSON, or not of this shape: what the parser says, with line and column.
    NotEntries(String),
    /// Written by a newer version: the version it names.
    Newer(u64),
}

explain! { SavedError:
    Self::NotEntries(detail) => format!("the shop's own entries cannot be read ({detail})"),
        "save the text that was set aside, and import the entries from an exported file";
    Self::Newer(schema) => format!("the shop's own entries were kept by a newer version (shape {schema}, this one knows {SCHEMA})"),
        "load the page again to get the newer version; the entries stay as they are";
}

/// The shop's own entries alone, `{"schema": 2, "entries": [{"kind": "tyre", "id": …, "designation": …}]}`.
impl Serialize for Catalogue {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(2))?;
        map.serialize_entry("schema", &SCHEMA)?;
        map.serialize_entry("entries", self.own.as_slice())?;
        map.end()
    }
}

/// An entry as its columns, those with nothing in them left out.
impl Serialize for Entry {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("kind", self.kind.id())?;
        for column in self.kind.columns().filter(|column| !self.text(*column).is_empty()) {
            map.serialize_entry(column.name(), self.text(column))?;
        }
        map.end()
    }
}

/// The shop's own entries as text, ready to be kept.
pub fn to_text(catalogue: &Catalogue) -> String {
    serde_json::to_string(catalogue).unwrap_or_default()
}

/// The built-in catalogue with the shop's own entries of a text.
///
/// # Errors
/// When the text is not of this shape, or from a newer version.
pub fn from_text(text: &str) -> Result<Catalogue, SavedError> {
    from_value(&serde_json::from_str(text).map_err(|error| not_entries(error.to_string()))?)
}

/// The built-in catalogue with the shop's own entries of a JSON value, those of version 1 too.
///
/// # Errors
/// When it is not of this shape, or from a newer version.
pub fn from_value(value: &Value) -> Result<Catalogue, SavedError> {
    let own = match value.get("schema").and_then(Value::as_u64) {
        None => return Err(not_entries("it names no schema")),
        Some(schema) if schema > u64::from(SCHEMA) => return Err(SavedError::Newer(schema)),
        Some(0 | 1) => {
            let lists = LISTS.map(|(name, kind)| Ok(list(value, name)?.iter().map(|member| entry(kind, member)).collect()));
            lists.into_iter().collect::<Result<Vec<Vec<Entry>>, SavedError>>()?.concat()
        }
        Some(_) => list(value, "entries")?.iter().map(entry_of_a_kind).collect::<Result<_, _>>()?,
    };
    Ok(Catalogue::built_in().with_own(own))
}

fn not_entries(detail: impl Into<String>) -> SavedError {
    SavedError::NotEntries(detail.into())
}

/// The members of a list of objects, none where there is no such list.
fn list<'a>(value: &'a Value, name: &str) -> Result<&'a [Value], SavedError> {
    match value.get(name) {
        None => Ok(&[]),
        Some(Value::Array(list)) if list.iter().all(Value::is_object) => Ok(list),
        Some(_) => Err(not_entries(format!("{name} is no list of entries"))),
    }
}

pub(super) fn entry_of_a_kind(object: &Value) -> Result<Entry, SavedError> {
    let named = object.get("kind").and_then(Value::as_str).unwrap_or_default();
    let kind =
        PartKind::ALL.into_iter().find(|kind| kind.id() == named).ok_or_else(|| not_entries(format!("“{named}” is no kind of part")))?;
    Ok(entry(kind, object))
}

/// An entry as it was kept, whatever its texts say. In version 1 the gears were a list, and a speedometer gear lay one deeper.
fn entry(kind: PartKind, object: &Value) -> Entry {
    let object = |name: &str| object.get(name).or_else(|| object.get("gear")?.get(name));
    let listed = |gear: u8| object("gears")?.get(usize::from(gear).checked_sub(1)?);
    kind.columns().fold(Entry::new(kind), |entry, column| {
        let deeper = if let Column::Gear(gear) = column { listed(gear) } else { None };
        entry.with(column, object(column.name()).or(deeper).map(text).unwrap_or_default())
    })
}

/// A value as the text of a column.
fn text(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Bool(true) => "yes".into(),
        Value::Bool(false) => "no".into(),
        Value::Number(number) => number.to_string(),
        _ => String::new(),
    }
}

/// What is to be kept and shown where a page shows `ours`: its entries as they are, or, where another page wrote `kept` since
/// this one last read or wrote `last`, what the other page keeps with the changes that were made here since.
///
/// # Errors
/// When the kept text cannot be read: then it must not be written over.
pub fn together(kept: Option<&str>, last: &Catalogue, ours: &Catalogue) -> Result<Catalogue, SavedError> {
    let Some(theirs) = kept.map(from_text).transpose()? else { return Ok(ours.clone()) };
    Ok(if theirs == *last { ours.clone() } else { theirs.with_changes(last, ours) })
}
