//! Two style sheets out of the many in `style/`, in an order that is written down here: what the first screen needs, and the rest.

use std::path::Path;

use anyhow::{Context, Result};

/// These come first, in this order: the faces and the roles that all others draw on.
const FIRST: [&str; 3] = ["fonts.css", "tokens.css", "boot.css"];
/// What no first screen shows follows once the program runs; in this order, since paper overrules the screen.
const MORE: [&str; 7] = ["book.css", "catalogue.css", "count.css", "find.css", "listen.css", "steps.css", "print.css"];

/// The sheets as they are sent.
pub(super) struct Joined {
    /// What a first visit waits for.
    pub(super) first: String,
    /// What follows.
    pub(super) more: String,
}

/// Joins the sheets: the first ones and all others by name; and those that follow.
pub(super) fn joined(folder: &Path) -> Result<Joined> {
    let mut names = sheets(folder)?;
    names.retain(|name| !MORE.contains(&name.as_str()));
    names.sort_by_key(|name| (place(name), name.clone()));
    Ok(Joined { first: text_of(folder, &names)?, more: text_of(folder, &MORE)? })
}

fn text_of(folder: &Path, names: &[impl AsRef<str>]) -> Result<String> {
    let mut css = String::new();
    for name in names.iter().map(AsRef::as_ref) {
        let sheet = std::fs::read_to_string(folder.join(name)).with_context(|| format!("cannot read style/{name}"))?;
        css.push_str(sheet.trim_end());
        css.push('\n');
    }
    Ok(css)
}

fn sheets(folder: &Path) -> Result<Vec<String>> {
    let entries = std::fs::read_dir(folder).with_context(|| format!("cannot read the folder {}", folder.display()))?;
    let names = entries.flatten().map(|entry| entry.file_name().to_string_lossy().into_owned());
    Ok(names.filter(|name| Path::new(name).extension().is_some_and(|ending| ending == "css")).collect())
}

fn place(name: &str) -> usize {
    FIRST.iter().position(|first| *first == name).unwrap_or(FIRST.len())
}

#[cfg(test)]
mod tests {
    #[test]
    fn roles_come_first_and_paper_last() {
        let mut names = ["heads.css", "tokens.css", "chart.css", "fonts.css"];
        names.sort_by_key(|name| (super::place(name), *name));
        assert_eq!(names, ["fonts.css", "tokens.css", "chart.css", "heads.css"]);
        let joined = super::joined(&crate::shell::project().join("style")).unwrap();
        assert!(joined.first.contains("@font-face") && !joined.first.contains("@page"));
        assert!(joined.more.find(".step").is_some_and(|steps| joined.more.find("@page").is_some_and(|paper| paper > steps)));
    }
}
