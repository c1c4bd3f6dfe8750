//! The sources as text: every file once, with its path from the project's folder.

use std::path::Path;

use anyhow::{Context, Result};

use crate::shell;

const FOLDERS: [&str; 6] = ["src", "style", "public", "xtask", "tests", ".ci"];
const FILES: [&str; 5] = ["Cargo.toml", "index.html", "README.md", "DEVELOPERS.md", "CHANGELOG.md"];
const TEXT: [&str; 10] = ["rs", "css", "js", "html", "md", "toml", "svg", "webmanifest", "csv", "json"];
/// Other people's files, copied as they are.
const FOREIGN: [&str; 1] = ["vendor"];

/// One file.
pub(super) struct Source {
    pub(super) path: String,
    pub(super) text: String,
}

/// All files the rules look at.
pub(super) struct Sources(Vec<Source>);

impl Sources {
    pub(super) fn read() -> Result<Self> {
        let mut sources = Vec::new();
        for name in FOLDERS.iter().chain(&FILES) {
            collect(&shell::project().join(name), &mut sources)?;
        }
        sources.sort_by(|a, b| a.path.cmp(&b.path));
        Ok(Self(sources))
    }

    #[cfg(test)]
    pub(super) fn of(files: &[(&str, &str)]) -> Self {
        Self(files.iter().map(|(path, text)| Source { path: (*path).to_owned(), text: (*text).to_owned() }).collect())
    }

    pub(super) fn all(&self) -> &[Source] {
        &self.0
    }

    /// The files of the program itself, library and app.
    pub(super) fn program(&self) -> impl Iterator<Item = &Source> {
        self.0.iter().filter(|source| source.path.starts_with("src/") && source.is("rs"))
    }

    pub(super) fn find(&self, path: &str) -> Option<&Source> {
        self.0.iter().find(|source| source.path == path)
    }
}

impl Source {
    pub(super) fn is(&self, ending: &str) -> bool {
        Path::new(&self.path).extension().is_some_and(|e| e == ending)
    }

    /// Lines with their numbers.
    pub(super) fn lines(&self) -> impl Iterator<Item = (usize, &str)> {
        self.text.lines().enumerate().map(|(index, line)| (index + 1, line))
    }

    /// Lines of code before the tests at the file's end, with comments taken off.
    pub(super) fn code(&self) -> impl Iterator<Item = (usize, &str)> {
        self.lines().take_while(|(_, line)| !line.trim_start().starts_with("#[cfg(test)]")).map(|(n, line)| (n, without_comment(line)))
    }
}

/// A line up to its comment. The two slashes of an address do not begin one.
pub(super) fn without_comment(line: &str) -> &str {
    let begins = line.match_indices("//").map(|(at, _)| at).find(|at| !line[..*at].ends_with(':'));
    let start = line.trim_start();
    let block = ["/*", "* ", "*/", "<!--"].iter().any(|mark| start.starts_with(mark));
    if block { "" } else { begins.map_or(line, |at| &line[..at]) }
}

fn collect(path: &Path, into: &mut Vec<Source>) -> Result<()> {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    if FOREIGN.contains(&name.as_ref()) {
        return Ok(());
    }
    if let Ok(entries) = std::fs::read_dir(path) {
        return entries.flatten().try_for_each(|entry| collect(&entry.path(), into));
    }
    let is_text = path.extension().is_some_and(|ending| TEXT.iter().any(|t| *t == ending)) || name == "run";
    if path.exists() && is_text {
        let text = std::fs::read_to_string(path).with_context(|| format!("{} is not readable as text", path.display()))?;
        let path = path.strip_prefix(shell::project()).unwrap_or(path).display().to_string();
        into.push(Source { path, text });
    }
    Ok(())
}
