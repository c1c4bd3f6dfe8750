//! Nothing leaves the page's own origin, no style hides in the markup, and no machine's paths are written down.

use super::source::without_comment;
use super::{Finding, Source, Sources};

/// Names, not addresses: no browser ever fetches them.
const NAMESPACES: [&str; 1] = ["http://www.w3.org/"];

/// Checks the program, the page and its files for addresses, style attributes and paths of one machine.
pub(super) fn check(sources: &Sources) -> Vec<Finding> {
    let mut findings = Vec::new();
    for source in sources.all() {
        if ships(source) {
            findings.extend(addresses(source));
        }
        if source.path.starts_with("src/app") || source.path == "index.html" {
            findings.extend(style_attributes(source));
        }
        findings.extend(machine_paths(source));
    }
    findings
}

/// Does the file, or what it says, reach the browser?
fn ships(source: &Source) -> bool {
    ["src/", "style/", "public/", "index.html"].iter().any(|place| source.path.starts_with(place))
}

fn addresses(source: &Source) -> Vec<Finding> {
    let outside = |line: &str| {
        let mut places = line.match_indices("http://").chain(line.match_indices("https://"));
        places.any(|(at, _)| !NAMESPACES.iter().any(|name| line[at..].starts_with(name)))
    };
    let lines = source.lines().filter(|(_, line)| outside(without_comment(line)));
    lines.map(|(line, _)| Finding::new(source, line, "an address of another origin; nothing is fetched from elsewhere")).collect()
}

fn style_attributes(source: &Source) -> Vec<Finding> {
    let lines = source.lines().filter(|(_, line)| without_comment(line).contains("style=\""));
    lines
        .map(|(line, _)| Finding::new(source, line, "the content policy blocks style attributes: use a class, or `style:width=`"))
        .collect()
}

/// Folders of one machine mean nothing on another.
fn machine_paths(source: &Source) -> Vec<Finding> {
    let folders = ["work", "root", "home", "tmp"].map(|name| format!("/{name}/"));
    let names_one = |line: &str| {
        let begins = |at: usize| !line[..at].ends_with(|c: char| c.is_alphanumeric() || c == '.' || c == '_' || c == '-');
        folders.iter().any(|folder| line.match_indices(folder.as_str()).any(|(at, _)| begins(at)))
    };
    let lines = source.lines().filter(|(_, line)| names_one(line));
    lines.map(|(line, _)| Finding::new(source, line, "a path of one machine; name the place relative to the project")).collect()
}

#[cfg(test)]
mod tests {
    use super::{Sources, check};

    #[track_caller]
    fn finds(path: &str, text: &str, expected: usize) {
        let findings = check(&Sources::of(&[(path, text)]));
        assert_eq!(findings.len(), expected, "{text}: {findings:?}");
    }

    #[test]
    fn addresses_are_found_outside_comments() {
        finds("src/a.rs", "fetch(\"https://example.org/x\")", 1);
        finds("src/a.rs", "/// Source: https://example.org/x", 0);
        finds("src/a.rs", "let x = 1; // see https://example.org/x", 0);
        finds("public/icons/a.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\">", 0);
    }

    #[test]
    fn style_attributes_are_found_in_the_app() {
        finds("src/app/a.rs", "<div style=\"width:1px\">", 1);
        finds("src/app/a.rs", "<div style:width=\"1px\">", 0);
    }

    #[test]
    fn paths_of_one_machine_are_found() {
        finds("README.md", &format!("see {}x", "/ho".to_owned() + "me/"), 1);
        finds("README.md", &format!("see docs{}x", "/ho".to_owned() + "me/"), 0);
    }
}
