//! A text in the reader's words: each word replaced where it stands alone, nothing else touched.

use layshaft::sheet::Words;
use layshaft::sheet::words::TABLE;
use proptest::prelude::*;

/// The plain way: at every place where a word may begin, the first row of the table that fits.
fn slowly(words: Words, text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let (mut said, mut at, mut quoted) = (String::new(), 0, false);
    while at < chars.len() {
        quoted = (quoted || chars[at] == '“') && chars[at] != '”';
        let begins = !quoted && (at == 0 || !chars[at - 1].is_alphanumeric());
        let fits = |ours: &str| {
            let end = at + ours.chars().count();
            end <= chars.len()
                && chars[at..end].iter().collect::<String>().eq_ignore_ascii_case(ours)
                && chars.get(end).is_none_or(|next| !next.is_alphanumeric())
        };
        if let Some((ours, us, uk)) = TABLE.iter().find(|(ours, ..)| begins && fits(ours)) {
            let word = if words == Words::Us { us } else { uk };
            said += &if chars[at].is_uppercase() { layshaft::problem::capital(word) } else { (*word).to_owned() };
            at += ours.chars().count();
        } else {
            said.push(chars[at]);
            at += 1;
        }
    }
    said
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_word_is_said_and_nothing_else_touched(
        parts in prop::collection::vec(prop_oneof![
            3 => prop::sample::select(TABLE.iter().map(|(ours, ..)| (*ours).to_owned()).collect::<Vec<_>>()),
            1 => prop::sample::select(TABLE.iter().map(|(ours, ..)| layshaft::problem::capital(ours)).collect::<Vec<_>>()),
            2 => prop::sample::select(vec![" ".to_owned(), "s".into(), "“".into(), "”".into(), ", ".into(), "1".into(), "é".into(), "-".into()]),
            1 => "\\PC{0,6}",
        ], 0..12),
        is_us in any::<bool>(),
    ) {
        let text = parts.concat();
        let words = if is_us { Words::Us } else { Words::Uk };
        prop_assert_eq!(words.say(&text), slowly(words, &text));
    }
}
