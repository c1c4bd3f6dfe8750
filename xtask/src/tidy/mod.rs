//! The rules of the house that no compiler checks: door signs, imports that never climb, file sizes, the style sheet's palette.
//!
//! Each rule looks at the sources as text and answers findings; a finding says where, what and what to do.

mod merges;
mod origins;
mod palette;
mod questions;
mod rooms;
mod signs;
mod source;

use std::fmt;

use anyhow::{Result, bail};

use source::{Source, Sources};

/// One breach of a rule.
#[derive(Debug, PartialEq, Eq)]
struct Finding {
    place: String,
    says: String,
}

impl Finding {
    fn new(source: &Source, line: usize, says: impl Into<String>) -> Self {
        Self { place: format!("{}:{line}", source.path), says: says.into() }
    }
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.says)
    }
}

/// Checks the sources of the project.
///
/// # Errors
/// At least one finding; all are printed.
pub fn run() -> Result<()> {
    let sources = Sources::read()?;
    let rules = [merges::check, signs::check, rooms::check, questions::check, origins::check, palette::check];
    let findings: Vec<Finding> = rules.iter().flat_map(|rule| rule(&sources)).collect();
    for finding in &findings {
        println!("{finding}");
    }
    if !findings.is_empty() {
        bail!("{} findings in {} files; each says above what to do", findings.len(), sources.all().len());
    }
    println!("{} files are tidy", sources.all().len());
    Ok(())
}
