//! One style sheet out of the many in `style/`, in an order that is written down here.

use std::path::Path;

use anyhow::{Context, Result};

/// These come first, in this order: the faces and the roles that all others draw on.
const FIRST: [&str; 3] = ["fonts.css", "tokens.css", "boot.css"];
/// This comes last: paper overrules the screen.
const LAST: &str = "print.css";

/// Joins the sheets: the first ones, all others by name, the last one.
pub(super) fn joined(folder: &Path) -> Result<String> {
    let mut names = sheets(folder)?;
    names.sort_by_key(|name| (place(name), name.clone()));
    let mut css = String::new();
    for name in names {
        let sheet = std::fs::read_to_string(folder.join(&name)).with_context(|| format!("cannot read style/{name}"))?;
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
    let first = FIRST.iter().position(|first| *first == name);
    first.unwrap_or(if name == LAST { usize::MAX } else { FIRST.len() })
}

#[cfg(test)]
mod tests {
    #[test]
    fn roles_come_first_and_paper_last() {
        let mut names = ["print.css", "heads.css", "tokens.css", "chart.css", "fonts.css"];
        names.sort_by_key(|name| (super::place(name), *name));
        assert_eq!(names, ["fonts.css", "tokens.css", "chart.css", "heads.css", "print.css"]);
    }
}
