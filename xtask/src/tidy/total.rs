//! No panic on any input: the program has no word that stops it, outside its tests.

use super::{Finding, Sources};

const STOPS: [&str; 6] = [".unwrap()", ".expect(", "panic!(", "unreachable!(", "todo!(", "unimplemented!("];

/// The program's own files hold no call that can stop it.
pub(super) fn check(sources: &Sources) -> Vec<Finding> {
    let mut findings = Vec::new();
    for source in sources.program().filter(|source| !source.is_tests()) {
        for (line, code) in source.code() {
            for stop in STOPS.iter().filter(|stop| code.contains(**stop)) {
                let word = stop.trim_matches(['.', '(', ')']);
                findings.push(Finding::new(source, line, format!("`{word}` can stop the program; answer a value or a problem instead")));
            }
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::{Sources, check};

    #[test]
    fn stops_are_found_outside_tests() {
        let text = "//! Sign.\nlet x = y.unwrap();\n// never .unwrap()\n#[cfg(test)]\nmod tests { x.unwrap() }";
        let sources = Sources::of(&[("src/a.rs", text), ("src/a/tests.rs", "x.unwrap()"), ("xtask/src/a.rs", "x.unwrap()")]);
        let findings = check(&sources);
        assert_eq!(findings.len(), 1, "{findings:?}");
        assert_eq!(findings[0].place, "src/a.rs:2");
    }
}
