//! The guard against formulas: a cell that a spreadsheet would calculate is written with an apostrophe before it.
//!
//! A text with apostrophes of its own before such a sign gets one more, so that taking one off always gives the text back.
//! Common practice, no published source.

/// Whether a spreadsheet could take the text, its leading apostrophes and blanks set aside, for a formula.
fn looks_like_formula(text: &str) -> bool {
    let bare = text.trim_start_matches(|c: char| c == '\'' || c.is_whitespace());
    bare.starts_with(['=', '+', '-', '@', '＝', '＋', '－', '＠'])
}

/// The text as it is written into a file.
pub(super) fn on(text: &str) -> String {
    if looks_like_formula(text) { format!("'{text}") } else { text.to_owned() }
}

/// The text as it was before [`on`].
pub(super) fn off(text: &str) -> &str {
    text.strip_prefix('\'').filter(|_| looks_like_formula(text)).unwrap_or(text)
}
