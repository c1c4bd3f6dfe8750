//! Imports never climb: a room may use only the rooms below it.

use super::{Finding, Sources};

/// The rooms from low to high, as data flows. A new room gets its place here.
const ROOMS: &[&str] = &[
    "worded",
    "order",
    "problem",
    "spreadsheet",
    "sliced",
    "ledger",
    "qr",
    "units",
    "gearing",
    "tyre",
    "speedometer",
    "motion",
    "driveline",
    "swap",
    "sound",
    "toothload",
    "toothform",
    "counting",
    "fits",
    "checklist",
    "faults",
    "catalogue",
    "job",
    "finder",
    "sheet",
    "chart",
    "questions",
    "wanted",
    "app",
];
/// The map and the door: they name every room and belong to none.
const ABOVE_ALL: [&str; 2] = ["lib", "main"];

/// What the app leaves to the questions: it shows and edits, the trade is none of its business.
const NOT_IN_APP: [&str; 12] =
    ["gearing", "tyre", "speedometer", "motion", "driveline", "swap", "sound", "toothload", "toothform", "counting", "fits", "faults"];

/// A room imports only `crate::` rooms that stand before it.
pub(super) fn check(sources: &Sources) -> Vec<Finding> {
    let mut findings = Vec::new();
    for source in sources.program() {
        let room = room_of(&source.path);
        if ABOVE_ALL.contains(&room) {
            continue;
        }
        let Some(floor) = floor(room) else {
            findings.push(Finding::new(
                source,
                1,
                format!("the room `{room}` has no place yet: give it one in ROOMS in xtask/src/tidy/rooms.rs"),
            ));
            continue;
        };
        for (line, text) in statements(source) {
            for used in rooms_used(&text) {
                if floor_is_above(used, floor) {
                    let says =
                        format!("`{room}` uses `{used}`, which stands above it; move what is needed down, or give it as an argument");
                    findings.push(Finding::new(source, line, says));
                }
                if room == "app" && NOT_IN_APP.contains(&used) {
                    findings.push(Finding::new(source, line, format!("the app uses `{used}`: let a question answer, and show that")));
                }
            }
        }
    }
    findings
}

/// Lines of code; an import over several lines is one, with the number of its first.
fn statements(source: &super::Source) -> Vec<(usize, String)> {
    let mut statements: Vec<(usize, String)> = Vec::new();
    let mut is_open = false;
    for (line, text) in source.lines() {
        let text = super::source::without_comment(text);
        match statements.last_mut().filter(|_| is_open) {
            Some((_, whole)) => whole.push_str(text),
            None => statements.push((line, text.to_owned())),
        }
        is_open = statements.last().is_some_and(|(_, whole)| {
            let whole = whole.trim_start();
            (whole.starts_with("use ") || whole.starts_with("pub use ")) && !whole.contains(';')
        });
    }
    statements
}

fn floor(room: &str) -> Option<usize> {
    ROOMS.iter().position(|name| *name == room)
}

fn floor_is_above(used: &str, own: usize) -> bool {
    floor(used).is_some_and(|floor| floor > own)
}

/// `src/gearing/mesh.rs` and `src/gearing.rs` are both of the room `gearing`.
fn room_of(path: &str) -> &str {
    let inside = path.strip_prefix("src/").unwrap_or(path);
    inside.split('/').next().unwrap_or(inside).trim_end_matches(".rs")
}

/// The rooms named behind `crate::` in a line, one or several in braces.
fn rooms_used(line: &str) -> Vec<&str> {
    let mut used = Vec::new();
    for (at, word) in line.match_indices("crate::") {
        let rest = &line[at + word.len()..];
        match rest.strip_prefix('{') {
            Some(list) => used.extend(list.split([',', '}']).map(first_word)),
            None => used.push(first_word(rest)),
        }
    }
    used
}

fn first_word(text: &str) -> &str {
    let text = text.trim_start();
    text.split(|c: char| !c.is_alphanumeric() && c != '_').next().unwrap_or(text)
}

#[cfg(test)]
mod tests {
    use super::{Sources, check};

    #[track_caller]
    fn finds(path: &str, text: &str, expected: &[usize]) {
        let lines: Vec<usize> =
            check(&Sources::of(&[(path, text)])).iter().map(|f| f.place.rsplit(':').next().unwrap().parse().unwrap()).collect();
        assert_eq!(lines, expected, "{text}");
    }

    #[test]
    fn a_low_room_does_not_use_a_higher_one() {
        finds("src/gearing/mesh.rs", "use crate::units::Speed;\nuse crate::tyre::Tyre;", &[2]);
        finds("src/tyre.rs", "use crate::{gearing::Mesh, job::Job};", &[1]);
        finds("src/tyre.rs", "use crate::{\n    gearing::Mesh,\n    job::Job,\n};", &[1]);
        finds("src/app/heads.rs", "use crate::motion::Car;", &[1]);
        finds("src/questions/mod.rs", "use crate::job::Job;\nuse crate::catalogue::GearSet;", &[]);
        finds("src/units.rs", "/// See [`crate::app`].", &[]);
        finds("src/lib.rs", "use crate::app;", &[]);
    }

    #[test]
    fn an_unknown_room_asks_for_its_place() {
        finds("src/attic.rs", "//! Attic.", &[1]);
    }
}
