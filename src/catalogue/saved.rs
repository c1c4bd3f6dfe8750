//! The shop's own entries as a text to be kept: open JSON with a schema version, read again by every later version.
//!
//! Built-in entries are never written. A newer text than this version knows is refused, never cut down; a text that is
//! refused is the caller's to set aside untouched.

use serde::{Deserialize, Serialize};

use super::{Axle, Catalogue, GearSet, SpeedoEntry, TyreEntry};
use crate::problem::Explain;

/// The version this program writes.
pub const SCHEMA: u32 = 1;

#[derive(Deserialize)]
struct Read {
    #[serde(default)]
    gear_sets: Vec<GearSet>,
    #[serde(default)]
    axles: Vec<Axle>,
    #[serde(default)]
    tyres: Vec<TyreEntry>,
    #[serde(default)]
    speedometer_gears: Vec<SpeedoEntry>,
}

#[derive(Serialize)]
struct Written<'a> {
    schema: u32,
    gear_sets: &'a [GearSet],
    axles: &'a [Axle],
    tyres: &'a [TyreEntry],
    speedometer_gears: &'a [SpeedoEntry],
}

/// Why a text holds no entries of the shop's own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SavedError {
    /// Not JSON, or not of this shape.
    NotEntries {
        /// What the parser says, with line and column.
        detail: String,
    },
    /// Written by a newer version.
    Newer {
        /// The version it names.
        schema: u64,
    },
}

impl Explain for SavedError {
    fn what(&self) -> String {
        match self {
            Self::NotEntries { detail } => format!("the shop's own entries cannot be read ({detail})"),
            Self::Newer { schema } => {
                format!("the shop's own entries were kept by a newer version (shape {schema}, this one knows {SCHEMA})")
            }
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::NotEntries { .. } => "save the text that was set aside, and import the entries from an exported file".into(),
            Self::Newer { .. } => "load the page again to get the newer version; the entries stay as they are".into(),
        }
    }
}

/// The shop's own entries as text, ready to be kept.
pub fn to_text(catalogue: &Catalogue) -> String {
    let written = Written {
        schema: SCHEMA,
        gear_sets: catalogue.gear_sets.own(),
        axles: catalogue.axles.own(),
        tyres: catalogue.tyres.own(),
        speedometer_gears: catalogue.speedometer_gears.own(),
    };
    serde_json::to_string(&written).unwrap_or_default()
}

/// The built-in catalogue with the shop's own entries of a text.
///
/// # Errors
/// When the text is not of this shape, or from a newer version.
pub fn from_text(text: &str) -> Result<Catalogue, SavedError> {
    let not_entries = |detail: String| SavedError::NotEntries { detail };
    let value: serde_json::Value = serde_json::from_str(text).map_err(|error| not_entries(error.to_string()))?;
    match value.get("schema").and_then(serde_json::Value::as_u64) {
        None => return Err(not_entries("it names no schema".into())),
        Some(schema) if schema > u64::from(SCHEMA) => return Err(SavedError::Newer { schema }),
        Some(_) => {}
    }
    let read: Read = serde_json::from_value(value).map_err(|error| not_entries(error.to_string()))?;
    let built_in = Catalogue::built_in();
    Ok(Catalogue {
        gear_sets: built_in.gear_sets.with_own(read.gear_sets),
        axles: built_in.axles.with_own(read.axles),
        tyres: built_in.tyres.with_own(read.tyres),
        speedometer_gears: built_in.speedometer_gears.with_own(read.speedometer_gears),
    })
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
