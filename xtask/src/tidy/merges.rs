//! No file holds the marks of a merge that was not finished.

use super::{Finding, Sources};

/// Looks for the marks version control leaves where two changes met.
pub(super) fn check(sources: &Sources) -> Vec<Finding> {
    let marks = ['<', '>'].map(|sign| format!("{} ", sign.to_string().repeat(7)));
    let mut findings = Vec::new();
    for source in sources.all() {
        let marked = source.lines().filter(|(_, line)| marks.iter().any(|mark| line.starts_with(mark.as_str())));
        findings.extend(
            marked.map(|(line, _)| Finding::new(source, line, "two changes met here and nobody chose; choose, and take the marks away")),
        );
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::{Sources, check};

    #[test]
    fn marks_are_found_in_any_file() {
        let text = format!("a\n{} HEAD\nb\n=======\nc\n{} other", "<".repeat(7), ">".repeat(7));
        assert_eq!(check(&Sources::of(&[("style/a.css", &text)])).len(), 2);
        assert_eq!(check(&Sources::of(&[("README.md", "Title\n=======")])).len(), 0);
    }
}
