//! What a file from outside holds: one job, a record of the book, or a whole book.

use super::Job;
use super::backup::{self, Backup};
use super::book::Record;
use super::file::{self, FileError};
use crate::catalogue::exchange;

/// What a file holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Incoming {
    /// A single job, to be opened.
    Job(Box<Job>),
    /// A whole book.
    Book(Box<Backup>),
}

/// Reads a file's text.
///
/// # Errors
/// When the text is too long, nothing of ours, or from a newer version.
pub fn read(text: &str) -> Result<Incoming, FileError> {
    if text.len() > backup::LONGEST {
        return Err(FileError::TooLong(text.len()));
    }
    let value = file::json(text)?;
    if backup::is_backup(&value) {
        return backup::from_value(value).map(|book| Incoming::Book(Box::new(book)));
    }
    if exchange::is_shelf(&value) {
        return Err(FileError::NotAJob("it is a shelf of another shop: bring it in under Shelf".into()));
    }
    if text.len() > file::LONGEST {
        return Err(FileError::TooLong(text.len()));
    }
    if value.get("job").is_some() {
        return Record::from_value(value).map(|record| Incoming::Job(Box::new(record.job)));
    }
    file::from_value(value).map(|job| Incoming::Job(Box::new(job)))
}

/// A file name for a job: its title in letters, digits and dashes.
pub fn file_name(title: &str, ending: &str) -> String {
    let mut name = String::new();
    for c in title.chars().flat_map(char::to_lowercase) {
        if c.is_alphanumeric() {
            name.push(c);
        } else if !name.is_empty() && !name.ends_with('-') {
            name.push('-');
        }
        if name.len() > 60 {
            break;
        }
    }
    let name = name.trim_end_matches('-');
    format!("{}.{ending}", if name.is_empty() { "job" } else { name })
}
