//! Text as it stands in a page or a picture that is written as text.

/// A text with the letters that mean something in markup written as what they stand for.
///
/// ```
/// use layshaft::sheet::markup::escaped;
/// assert_eq!(escaped("5 < 6 & \"so\""), "5 &lt; 6 &amp; &quot;so&quot;");
/// ```
pub fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    push(&mut out, text);
    out
}

/// Puts a text into markup.
pub fn push(out: &mut String, text: &str) {
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            plain => out.push(plain),
        }
    }
}
