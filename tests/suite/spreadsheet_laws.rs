//! Tables for spreadsheets: what is written is read back, and nothing in it is calculated.

use layshaft::spreadsheet::{Table, one_line, write};
use proptest::prelude::*;

/// Writes a line of two cells and gives it as it stands behind the header.
fn written(first: &str, second: &str) -> String {
    let text = write([["one", "two"], [first, second]]);
    text.strip_prefix("one,two\r\n").and_then(|line| line.strip_suffix("\r\n")).unwrap().to_owned()
}

#[track_caller]
fn check(cell: &str, expected: &str) {
    assert_eq!(written("x", cell), format!("x,{expected}"));
}

/// What may begin a formula by common practice, no published source; quoting by RFC 4180, section 2, rules 6 and 7.
#[test]
fn a_formula_gets_an_apostrophe_and_a_number_stays_a_number() {
    check("=1+1", "'=1+1");
    check("@sum", "'@sum");
    check("-cmd", "'-cmd");
    check("  =1", "'=1");
    check("'=1", "''=1");
    check("-0.25", "-0.25");
    check("+3", "+3");
    check("-2+3", "'-2+3");
    check("−1.31 mph", "−1.31 mph");
    check("a \"b\", c", "\"a \"\"b\"\", c\"");
    check("two\r\nlines", "two lines");
}

#[test]
fn what_older_files_guarded_is_read_as_it_was() {
    let table = Table::of("note\n'-5\n'=1\n").unwrap();
    let cells: Vec<_> = table.lines.iter().map(|(_, line)| table.cells(line).unwrap().concat()).collect();
    assert_eq!(cells, ["-5", "=1"]);
}

fn cell() -> impl Strategy<Value = String> {
    prop_oneof!["['=+@\\-\"#,;\t <>0-9.a-c\r\n]{0,8}", prop::collection::vec(any::<char>(), 0..12).prop_map(String::from_iter)]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_written_is_read_back(rows in prop::collection::vec((cell(), cell()), 1..6)) {
        let rows: Vec<[String; 3]> = rows.into_iter().map(|(one, two)| ["row".to_owned(), one, two]).collect();
        let text = write(std::iter::once(&["a".to_owned(), "b".to_owned(), "c".to_owned()]).chain(&rows));
        let table = Table::of(&text).unwrap();
        prop_assert_eq!(table.lines.len(), rows.len());
        for ((_, line), row) in table.lines.iter().zip(&rows) {
            let expected: Vec<String> = row.iter().map(|cell| one_line(cell).trim().to_owned()).collect();
            prop_assert_eq!(table.cells(line).unwrap(), expected);
        }
    }
}
