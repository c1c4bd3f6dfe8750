//! Rows put into order stand as the standard library's own stable sort puts them.

use std::cmp::Reverse;

use layshaft::order;
use proptest::prelude::*;

/// Rows with few different keys, so that many are equal, each told from the others by its number.
fn any_rows() -> impl Strategy<Value = Vec<(u8, usize)>> {
    proptest::collection::vec(0_u8..6, 0..80).prop_map(|keys| keys.into_iter().zip(0..).collect())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn as_the_standard_library_sorts(rows in any_rows()) {
        let mut expected = rows.clone();
        expected.sort_by_key(|row| row.0);
        let mut by_key = rows.clone();
        order::by_key(&mut by_key, |row| row.0);
        prop_assert_eq!(&by_key, &expected);
        let mut by = rows;
        order::by(&mut by, |one, other| one.0.cmp(&other.0));
        prop_assert_eq!(&by, &expected);
    }

    #[test]
    fn backwards_equal_rows_still_keep_their_order(rows in any_rows()) {
        let mut sorted = rows;
        order::by_key(&mut sorted, |row| Reverse(row.0));
        let kept = sorted.windows(2).all(|pair| pair[0].0 > pair[1].0 || (pair[0].0 == pair[1].0 && pair[0].1 < pair[1].1));
        prop_assert!(kept, "{:?}", sorted);
    }
}
