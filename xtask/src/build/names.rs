//! File names that carry a hash, and rewriting the references to them.

use anyhow::{Result, ensure};

use super::hash;

const DIGITS: usize = 16;

/// `fonts/x.woff2` with some content becomes `fonts/x.0123456789abcdef.woff2`.
pub(super) fn hashed(name: &str, content: &[u8]) -> String {
    tagged(name, &hash::hex(content))
}

/// A name that carries a hash which stands for more than one file.
pub(super) fn tagged(name: &str, hash: &str) -> String {
    let (stem, ending) = name.rsplit_once('.').unwrap_or((name, ""));
    format!("{stem}.{hash}.{ending}")
}

/// Does the name carry a hash, so that the file behind it never changes?
pub fn is_hashed(path: &str) -> bool {
    let file = path.rsplit('/').next().unwrap_or(path);
    let mut parts = file.rsplit('.');
    let _ending = parts.next();
    parts.next().is_some_and(|part| part.len() == DIGITS && part.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b)))
}

/// Replaces references to a file by its new name. They stand in quotes, with or without `./` in front.
///
/// Errors: the text does not mention the file at all, so it would load one that is not there.
pub(super) fn refer(text: &str, from: &str, to: &str, inside: &str) -> Result<String> {
    let mut answer = text.to_owned();
    for (before, after) in [("\"", '"'), ("'", '\''), ("\"./", '"'), ("'./", '\'')] {
        answer = answer.replace(&format!("{before}{from}{after}"), &format!("{before}{to}{after}"));
    }
    ensure!(answer != text, "{inside} does not mention \"{from}\"");
    Ok(answer)
}

/// Replaces the name of a module where it is imported, and nowhere else.
///
/// Errors: the text does not import it.
pub(super) fn import_from(text: &str, from: &str, to: &str, inside: &str) -> Result<String> {
    let mut answer = text.to_owned();
    for quote in ['"', '\''] {
        answer = answer.replace(&format!("from {quote}{from}{quote}"), &format!("from {quote}{to}{quote}"));
    }
    ensure!(answer != text, "{inside} does not import \"{from}\"");
    Ok(answer)
}

#[cfg(test)]
mod tests {
    use super::{hashed, import_from, is_hashed, refer};

    #[test]
    fn a_hashed_name_is_known_again() {
        assert_eq!(hashed("icons/mark.svg", b"a"), "icons/mark.af63dc4c8601ec8c.svg");
        assert!(is_hashed("/below/icons/mark.af63dc4c8601ec8c.svg"));
        for plain in ["index.html", "sw.js", "/", "mark.deadbeef.svg", "a.AF63DC4C8601EC8C.js"] {
            assert!(!is_hashed(plain), "{plain}");
        }
    }

    #[test]
    fn references_follow_the_new_name() {
        assert_eq!(refer("import('./app.js'), \"app.js\"", "app.js", "app.1.js", "boot.js").unwrap(), "import('./app.1.js'), \"app.1.js\"");
        assert_eq!(refer("nothing", "app.js", "app.1.js", "boot.js").unwrap_err().to_string(), "boot.js does not mention \"app.js\"");
    }

    #[test]
    fn an_import_is_renamed_where_it_is_imported_only() {
        let text = "import * as one from \"./a.js\"; const names = { \"./a.js\": one };";
        let renamed = "import * as one from \"./a.1.js\"; const names = { \"./a.js\": one };";
        assert_eq!(import_from(text, "./a.js", "./a.1.js", "b.js").unwrap(), renamed);
        assert_eq!(import_from("", "./a.js", "./a.1.js", "b.js").unwrap_err().to_string(), "b.js does not import \"./a.js\"");
    }
}
