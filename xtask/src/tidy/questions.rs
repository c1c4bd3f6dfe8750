//! Inside a question's folder files stand in the order read, answer, rows and pictures; none uses a later one.

use super::{Finding, Sources};

/// The files of a question by their stage. What is not named here may be used and may use anything of its folder.
const STAGES: [(&str, usize); 8] =
    [("read", 0), ("parse", 0), ("inputs", 0), ("answer", 1), ("rows", 2), ("sentence", 2), ("rests", 2), ("pictures", 2)];

/// No file of a question uses one of a later stage of the same question.
pub(super) fn check(sources: &Sources) -> Vec<Finding> {
    let mut findings = Vec::new();
    for source in sources.program() {
        let Some((question, file)) = place(&source.path) else { continue };
        let Some(own) = stage(file) else { continue };
        for (line, text) in source.code() {
            let is_used =
                |name: &str| text.contains(&format!("questions::{question}::{name}")) || text.contains(&format!("super::{name}::"));
            for (name, stage) in STAGES {
                if stage > own && is_used(name) {
                    findings.push(Finding::new(
                        source,
                        line,
                        format!("`{file}` of the question `{question}` uses its `{name}`, which comes later"),
                    ));
                }
            }
        }
    }
    findings
}

/// The question and the file of a path: `src/questions/pull/rows/run.rs` is of `rows` of `pull`.
fn place(path: &str) -> Option<(&str, &str)> {
    let mut parts = path.strip_prefix("src/questions/")?.split('/');
    let (question, file) = (parts.next()?, parts.next()?);
    Some((question, file.trim_end_matches(".rs")))
}

fn stage(file: &str) -> Option<usize> {
    STAGES.iter().find(|(name, _)| *name == file).map(|(_, stage)| *stage)
}

#[cfg(test)]
mod tests {
    use super::{Sources, check};

    #[track_caller]
    fn finds(path: &str, text: &str, many: usize) {
        assert_eq!(check(&Sources::of(&[(path, text)])).len(), many, "{path}: {text}");
    }

    #[test]
    fn a_file_uses_only_earlier_ones() {
        finds("src/questions/pull/read.rs", "use super::answer::Pull;", 1);
        finds("src/questions/pull/read/engine.rs", "use crate::questions::pull::rows::rows;", 1);
        finds("src/questions/pull/rows/run.rs", "use crate::questions::pull::answer::Pull;", 0);
        finds("src/questions/pull/mod.rs", "pub use answer::Pull;", 0);
    }
}
